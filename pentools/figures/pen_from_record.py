"""The pen of a job, drawn in section from the dimensions in its record, with its faults marked."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.record.stages.common import SEVERITIES
from pentools.record.stages.job.intake_kinds import ARRIVAL, PART_CONDITION
from pentools.record.stages.weighing.dimensions import dimensions_of
from pentools.systems.dimensions import ASKED
from pentools.systems.parts import drawn_part, part_name, parts_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape, shape_from_measurements
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["pen_drawing", "pen_shape"]

_DRAWN_AS = {"length": "length", "depth": "barrel_depth"}  # a length is that of the sac, the tube or the cartridge
_OUTSIDE = ("nib", "feed", "section", "barrel", "cap-threads", "ink-space")


def _lengths(job: Job) -> dict[str, float]:
    """Drawn dimension -> length [mm]: the filler's own dimensions, and those taken as the pen came in."""
    found: dict[str, float] = {}
    arrival = job.newest(ARRIVAL)
    for asked, dimension in ASKED.items():
        for reading in (dimensions_of(job).get(asked), getattr(arrival, asked, None)):
            if isinstance(reading, Reading) and reading.unit == "mm" and reading.value > 0:
                found[_DRAWN_AS.get(asked, dimension.name)] = reading.value
    return found


def pen_shape(job: Job) -> PenShape | None:
    """The pen's shape from the record.

    Returns
    -------
    PenShape or None
        None where the filling system is not named; dimensions that contradict each other are left out, so that the
        drawing never stands in the way of the work.
    """
    system = job.newest(ARRIVAL).system
    if system is None or system not in SYSTEMS:
        return None
    lengths = _lengths(job)
    try:
        return shape_from_measurements(system, lengths)
    except InputError:
        kept: dict[str, float] = {}
        for name, value in lengths.items():
            try:
                shape_from_measurements(system, {**kept, name: value})
            except InputError:
                continue
            kept[name] = value
        return shape_from_measurements(system, kept)


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
    for logged in job.log(PART_CONDITION):
        noted = logged.values
        if noted.part is None or noted.seen is None or noted.severity in (None, "0"):
            continue
        part = _named_in(system, noted.part, noted.seen) or _shown_at(system, noted.part)
        if part is not None:
            marks.append((part, noted.seen, words[noted.severity].split(":")[0]))
    return marks


def _finding(marks: Sequence[tuple[str, str, str]]) -> str | None:
    """What was noted, the gravest first, as the drawing's title; None where nothing was."""
    if not marks:
        return None
    part, _, severity = max(marks, key=lambda mark: mark[2])
    faults = "1 fault was" if len(marks) == 1 else f"{len(marks)} faults were"
    return f"{faults} noted; the gravest is at the {part_name(part)}: {severity.lstrip('0123456789 ')}."


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
    highlight : sequence of str
        Parts brought out, by the survey's names or the drawing's.
    marks : sequence of (str, str, str) or None
        Part, what is wrong, how grave; None marks the faults of the condition survey, an empty one marks none.
    title : str or None
        The drawing's title; None says what was noted, where the survey's faults are marked.
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
    found = _finding(chosen) if marks is None else None
    return draw_pen(
        shape,
        PenOptions(
            title=title or found,
            highlight=bright,
            highlight_word="",
            marks=chosen,
            dimensions=dimensions,
            width_mm=width_mm,
        ),
    )
