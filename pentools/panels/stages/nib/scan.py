"""From a scan in the job's folder to an entry of measured lines."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from pentools.errors import InputError
from pentools.numbers import fixed, plain
from pentools.units import Reading

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from pentools.fields import Value
    from pentools.record.job import Job
    from pentools.record.stages.nib.kinds import Writing

__all__ = ["lines_from_scan", "lines_of", "scan_path"]


def scan_path(job: Job, name: str) -> Path:
    """Where a scan lies.

    Parameters
    ----------
    name : str
        The name of a file in the job's scans folder.

    Returns
    -------
    Path
        The file.

    Raises
    ------
    InputError
        If it is not a plain file name of a picture, or there is no such file.
    """
    if not re.fullmatch(r"[\w][\w .()-]*\.(png|tiff?|jpe?g)", name, re.IGNORECASE) or ".." in name:
        raise InputError("Scan", "the file name of a PNG, TIFF or JPEG in the job's scans folder", name)
    path = job.folder / "scans" / name
    if not path.is_file():
        raise InputError(
            "Scan", "a file in the job's scans folder", name, "Put it into scans/ and save the test again."
        )
    return path


def lines_from_scan(job: Job, test: Writing) -> tuple[dict[str, Value], tuple[str, ...]]:
    """Measure the lines of a writing test.

    Parameters
    ----------
    test : Writing
        The test, with a scan.

    Returns
    -------
    values : dict
        What an entry of measured lines holds.
    warnings : tuple of str
        What is to be doubted of it.

    Raises
    ------
    InputError
        If the scan cannot be read, has no scale or no lines that can be measured, or the sum itself says stop.
    """
    import pentools

    answer = pentools.measure_lines(scan_path(job, test.scan or ""))
    stops = [finding.text for finding in answer.findings if finding.level == "stop"]
    if stops:
        raise InputError("Scan", "one whose lines can be believed", test.scan or "", " ".join(stops))
    warnings = tuple(finding.text for finding in answer.findings if finding.level == "warning")
    return {"when": test.when, "scan": test.scan, **lines_of(answer.data)}, warnings


def lines_of(data: Mapping[str, Any]) -> dict[str, Value]:
    """What the lines sum found, as an entry keeps it.

    Parameters
    ----------
    data : mapping
        The sum's data: widths and their standard uncertainties in micrometres, lengths in millimetres.

    Returns
    -------
    dict
        A ratio only where it is more than an even line of that scatter shows; a pressed line only where there is one.
    """
    pressed, ratio, floor = data.get("pressed"), data["variation_ratio"], data.get("ratio_floor") or 1.0
    metres = data["length_mm"] / 1000
    return {
        "line": _mm(data["median_width_um"], data["u_um"]),
        "pressed": None if pressed is None else _mm(pressed["width_um"], pressed["u_um"]),
        "ratio": round(ratio, 2) if ratio > floor else None,
        "strokes": len(data["strokes"]),
        "skips": data["skips"],
        "written": Reading(metres, "m", None, f"{plain(metres, 4)} m"),
    }


def _mm(width_um: float, u_um: float) -> Reading:
    width, u = width_um / 1000, u_um / 1000
    return Reading(width, "mm", u, f"{fixed(width, 4)} ± {fixed(u, 4)} mm")
