"""The pen of a job, drawn in section from the dimensions in its record, with its faults marked."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.record.stages.common import SEVERITIES
from pentools.systems.parts import drawn_part, part_name, parts_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape, shape_from_measurements
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["pen_drawing", "pen_shape"]

_INTAKE_NAMES = {
    "capped_mm": "capped_length", "cap_mm": "cap_length", "cap_outside_mm": "cap_diameter",
    "barrel_mm": "barrel_length", "barrel_outside_mm": "barrel_diameter", "section_mm": "section_length",
    "section_outside_mm": "section_diameter", "nib_mm": "nib_length", "end_mm": "end_length",
}  # fmt: skip
_FILLER_NAMES = {
    "bore": "bore", "rod": "rod", "stroke": "stroke", "outside": "sac_outside", "wall": "sac_wall",
    "reach": "breather_length", "tube": "breather_diameter", "depth": "barrel_depth", "length": "length",
}  # fmt: skip
_OUTSIDE = ("nib", "feed", "section", "barrel", "cap-threads", "ink-space")


def _lengths(job: Job) -> dict[str, float]:
    found: dict[str, float] = {}
    for names, values in (
        (_FILLER_NAMES, job.values("fill test", "dimensions")),
        (_INTAKE_NAMES, job.values("intake", "arrival")),
    ):
        for name, drawn in names.items():
            reading = values.get(name)
            if isinstance(reading, Reading) and reading.value > 0:
                found[drawn] = reading.value
    return found


def pen_shape(job: Job) -> PenShape | None:
    """The pen's shape from the record.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    PenShape or None
        None where the filling system is not named; dimensions that contradict each other are left out, so that the
        drawing never stands in the way of the work.
    """
    system = job.values("intake", "arrival")["system"]
    if system is None or str(system) not in SYSTEMS:
        return None
    lengths = _lengths(job)
    try:
        return shape_from_measurements(str(system), lengths)
    except InputError:
        kept: dict[str, float] = {}
        for name, value in lengths.items():
            try:
                shape_from_measurements(str(system), {**kept, name: value})
            except InputError:
                continue
            kept[name] = value
        return shape_from_measurements(str(system), kept)


def _shown_at(system: str, part: str) -> str | None:
    try:
        return drawn_part(system, part)
    except InputError:
        return None  # this pen has nothing of the kind


def _named_in(system: str, general: str, seen: str) -> str | None:
    """The part of the mechanism that the words themselves name, the longest name first; None where they name none."""
    if general != "filler":
        return None
    text = seen.casefold()
    named = [
        part
        for part in parts_of(system, cap=False)
        if part not in _OUTSIDE and re.search(rf"\b{re.escape(part_name(part))}\b", text)
    ]
    return max(named, key=lambda part: len(part_name(part)), default=None)


def _marks(job: Job, system: str) -> list[tuple[str, str, str]]:
    words = dict(SEVERITIES)
    marks = []
    for _, values in job.log("condition", "part"):
        grade = str(values["severity"])
        general, seen = str(values["part"]), str(values["seen"])
        part = _named_in(system, general, seen) or _shown_at(system, general)
        if part is not None and grade != "0":
            marks.append((part, seen, words[grade].split(":")[0]))
    return marks


def pen_drawing(
    job: Job,
    highlight: Sequence[str] = (),
    *,
    marks: Sequence[tuple[str, str, str]] | None = None,
    title: str | None = None,
    dimensions: Sequence[str] = (),
    width_mm: float = 160.0,
) -> Drawing | None:
    """The pen of a job in section.

    Parameters
    ----------
    job : Job
        The job.
    highlight : sequence of str
        Parts brought out, by the survey's names or the drawing's.
    marks : sequence of (str, str, str) or None
        Part, what is wrong, how grave; None marks the faults of the condition survey, an empty one marks none.
    title : str or None
        The drawing's title.
    dimensions : sequence of str
        Lengths shown with arrows.
    width_mm : float
        Width as printed [mm].

    Returns
    -------
    Drawing or None
        None where the filling system is not named.
    """
    shape = pen_shape(job)
    if shape is None:
        return None
    chosen = _marks(job, shape.system) if marks is None and not highlight else list(marks or ())
    bright = [part for name in highlight if (part := _shown_at(shape.system, name)) is not None]
    return draw_pen(
        shape,
        PenOptions(
            title=title, highlight=bright, highlight_word="", marks=chosen, dimensions=dimensions, width_mm=width_mm
        ),
    )
