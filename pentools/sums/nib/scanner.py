"""The scanner sum: a ruler scanned once, and how true the scanner's own dots an inch are."""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass
from pathlib import Path

from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.base.uncertainty import COVERAGE
from pentools.calc.nib.bar import OTHER_WAY, Bar, find_bars
from pentools.calc.nib.tone import light_of
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import fixed
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.nib.drawn_page import DRAWN_DPI, SAMPLE, drawn_ruler
from pentools.sums.nib.scale import NO_BAR, grey_of, tag_um
from pentools.sums.nib.scan_file import Scan, read_scan

__all__ = ["SCANNER", "scanner_answer"]

_ADVICE = "Scan with the resolution written into the file; a ruler, not a camera's picture, is what this is for."
_OFF_SHARE = 0.003  # what a file's dots an inch are taken to be true to
FIELDS = (
    Field("scan", "Scan of a ruler", hint="a PNG, TIFF or JPEG of a ruler in millimetres, flat and whole on the glass, such as ruler.png; or sample, one drawn by the kit", required=True),
    Field("length", "Its first to last mark", "quantity", unit="mm", low=10, high=500, hint="only for one without longer strokes at every ten, such as 100 mm"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Held:
    """A ruler held against the file; shares as the width of a line by the file's dots is off by them."""

    way: str
    um_per_px: float
    off_share: float
    u_share: float
    kind: str
    marks: int
    long_mm: float


def scanner_answer(given: Inputs) -> SumAnswer:
    """How true a scanner's dots an inch are.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object, a row a ruler; its result is a tuple of `Bar`.

    Raises
    ------
    InputError
        If the file is no picture or names no resolution, or no ruler is found on it.
    """
    name = given.text("scan", "")
    scan = _ruler() if name == SAMPLE and not Path(name).exists() else read_scan(name)
    tag = tag_um(scan)
    if tag is None:
        raise InputError("scan", "a file that names its resolution", name, _ADVICE)
    search = find_bars(grey_of(scan), light_of(scan.codes, scan.tone), given.number("length"), tag)
    if not search.bars:
        raise InputError("scan", "of a ruler that is found", name, NO_BAR[search.nearly])
    rows = [_held(bar, tag) for bar in search.bars]
    findings = gravest_first(tuple(_verdict(row) for row in rows))
    parts = [
        f"{row.way} {fixed(25400 / bar.um_per_px, 2)} dots an inch" for row, bar in zip(rows, search.bars, strict=True)
    ]
    sentence = f"By the ruler it scans {' and '.join(parts)}, where its file says {fixed(25400 / tag, 2)}."
    data = {
        "sentence": sentence,
        "file_um_per_px": tag,
        "rulers": [asdict(row) for row in rows],
        "findings": [finding.as_json() for finding in findings],
    }
    return SumAnswer(sentence, data, findings, _table(rows), search.bars)


def _ruler() -> Scan:
    """A ruler that the kit draws, on a scanner that tells the truth."""
    return Scan(drawn_ruler(), "srgb", True, (DRAWN_DPI, DRAWN_DPI), False, None, False)


def _held(bar: Bar, tag: float) -> _Held:
    along = bar.corners[1] - bar.corners[0]
    way = "across" if abs(along[0]) > abs(along[1]) else "down"
    # a ruler says how true the scanner is along itself: its other way is no doubt of that
    share = math.sqrt(max(bar.u_share**2 - OTHER_WAY**2, 0.0))
    return _Held(way, bar.um_per_px, tag / bar.um_per_px - 1, share, bar.kind, bar.marks, bar.long_mm)


def _verdict(row: _Held) -> Finding:
    off, wide = abs(row.off_share), COVERAGE * row.u_share
    word = "true" if off <= _OFF_SHARE else "cannot-tell"
    if off - wide > _OFF_SHARE:
        word = "broad" if row.off_share > 0 else "narrow"
    level: Level = "warning" if word in ("broad", "narrow") else "note"
    return Finding(level, f"nib.scanner:{word}", way=row.way, off=off, wide=wide, limit=_OFF_SHARE)


def _table(rows: list[_Held]) -> tuple[tuple[str, ...], ...]:
    head = ("way", "element by the ruler", "a line by the file reads")
    parts = [
        (
            row.way,
            f"{fixed(row.um_per_px, 3)} µm",
            f"{_signed(row.off_share)} ± {fixed(100 * COVERAGE * row.u_share, 2)} %",
        )
        for row in rows
    ]
    return (head, *parts)


def _signed(share: float) -> str:
    return f"{'+' if share > 0 else ''}{fixed(100 * share, 2)}"


SCANNER = Sum(
    "scanner",
    "Check of a scanner",
    "How true a scanner's dots an inch are: lay a ruler in millimetres on the glass, across or down, scan it, done in two minutes.",
    FIELDS,
    scanner_answer,
    "pentools sums scanner sample",
    positional="scan",
)
