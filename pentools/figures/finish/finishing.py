"""Figures of the finish: the ladder as planned and as done against the budget, the zones, and all scales on one axis."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from pentools.calc.finish.types import Progression
from pentools.errors import InputError
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, SLATE, head, new_chart, to_drawing
from pentools.figures.finish.scales import scales_chart
from pentools.figures.pen.zones import Zone, draw_zones
from pentools.figures.pen_from_record import pen_shape
from pentools.numbers import plain
from pentools.record.stages.finish.facts import polish_refused
from pentools.record.stages.finish.kinds import ZONE
from pentools.record.stages.finish.plan import StepDone, progress_of
from pentools.record.stages.finish.removal import removed_so_far
from pentools.tables.abrasives import zones

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.record.stages.finish.kinds import Zone as LoggedZone
    from pentools.record.stages.finish.removal import Measured
    from pentools.systems.shape import PenShape

__all__ = ["ladder_figure", "ladder_of_job", "scales_chart", "zones_figures"]

_DRAWN_KINDS = {
    "plain barrel": "plain", "near an imprint": "near-imprint", "imprint": "imprint", "threads": "threads",
    "seat": "threads", "plating": "plating", "gold-filled": "gold-filled", "silver": "silver",
    "lacquer": "lacquer", "overlay": "overlay", "aluminium": "aluminium", "bare metal": "bare-metal",
}  # fmt: skip
_LARGE_FIRST = {"plain": 0, "bare-metal": 0, "near-imprint": 1}
_BEHIND = {"facecolor": "white", "edgecolor": "none", "pad": 0.6, "alpha": 0.8}
_CAP_PARTS = ("cap", "clip", "cap-band")
_ENDS = ("blind-cap", "knob", "end-cap")


def ladder_of_job(job: Job) -> Drawing | None:
    """The ladder of a job, as planned and as done.

    Returns
    -------
    Drawing or None
        None while nothing is planned, or nothing may be taken off.
    """
    progress = progress_of(job)
    if progress is None or not progress.working.steps:
        return None
    return ladder_figure(progress.working, progress.done, removed_so_far(job, progress).surest)


def ladder_figure(plan: Progression, done: Sequence[StepDone] = (), measured: Measured | None = None) -> Drawing | None:
    """Grades on a logarithmic axis against stock taken, with what the zone can spare.

    Parameters
    ----------
    done : sequence of StepDone
        What was done, in order.
    measured : Measured or None
        The surest measurement of the stock taken.

    Returns
    -------
    Drawing or None
        A bar for each step, at the finish that it leaves, as long as the stock that it takes: open as planned, full as
        done. None for a plan without steps.
    """
    if not plan.steps:
        return None
    carried_out = {s.planned.number for s in done if s.planned is not None}
    title = _ladder_title(plan, done, carried_out)
    beside = list(_beside_plan(plan, done))
    height_mm = 40.0 + 9.0 * max(len(plan.steps) + 2 * len(beside), 4)
    figure, axes = new_chart(160, height_mm)
    labels = _draw_steps(axes, plan, carried_out)
    for place, size, words in beside:
        axes.plot([place], [size], marker="D", color=OXBLOOD, markersize=6, clip_on=False, zorder=4)
        labels.append((place, size, words, OXBLOOD))
    _log_axis(axes, [size for _, size, _, _ in labels])
    _label_apart(axes, labels, height_mm - 22.0)
    _draw_budget(axes, plan, measured)
    head(axes, title)
    return to_drawing(figure, title, f"{title}. {_steps_told(plan, carried_out, measured)}")


def _draw_steps(axes: Axes, plan: Progression, carried_out: set[int]) -> list[tuple[float, float, str, str]]:
    """A bar a step; returns where each label belongs, its words and their colour."""
    labels = []
    for step in plan.steps:
        size, start = step.grade.finish_um, step.cumulative_um.typical - step.removed_um.typical
        full = step.number in carried_out
        colour, dense = (INK, 1.0) if full else (SLATE, 0.35)
        ends = [start, step.cumulative_um.typical]
        axes.plot(ends, [size, size], color=colour, linewidth=7, solid_capstyle="butt", alpha=dense)
        words = f"{step.grade.label}{', done' if full else ''}{', unmask trim' if step.unmask else ''}"
        labels.append((step.cumulative_um.typical, size, words, colour))
    return labels


def _draw_budget(axes: Axes, plan: Progression, measured: Measured | None) -> None:
    """What the zone can spare, and what was measured of it."""
    low, high = plan.budget_low_um, plan.budget_high_um
    right = max(1.3 * high, 1.9 * plan.removed_total_um.typical, 1.3 * (measured.removed_um if measured else 0.0))
    axes.axvspan(high, right, color=OXBLOOD, alpha=0.12, linewidth=0)
    axes.axvspan(low, high, color=BRASS, alpha=0.14, linewidth=0)
    axes.axvline(high, color=OXBLOOD, linewidth=1.2)
    if measured is not None:
        axes.axvline(measured.removed_um, color=JADE, linewidth=1.4, linestyle="--")
    axes.set(xlim=(0, right), xlabel="stock taken, µm a side (bars: by the plan; full: done; diamonds: not as planned)")
    _top_words(axes, measured, low, high, plan.limits.wall_mm is None)


def _steps_told(plan: Progression, carried_out: set[int], measured: Measured | None) -> str:
    steps = "; ".join(
        f"{s.grade.label}, finish {s.grade.finish_um:g} µm, {'done' if s.number in carried_out else 'planned'}, to {s.cumulative_um.typical:.3g} µm"
        for s in plan.steps
    )
    told = f"{steps}. The zone can spare {plan.budget_low_um:g} to {plan.budget_high_um:g} µm a side."
    return told if measured is None else f"{told} Measured by {measured.way}: {measured.removed_um:.2g} µm."


def _ladder_title(plan: Progression, done: Sequence[StepDone], carried_out: set[int]) -> str:
    count, spare = len(plan.steps), f"{plain(plan.budget_high_um, 3)} µm"
    if not plan.limits.zone_said:
        return (
            f"{count} steps would take about {plain(plan.removed_total_um.typical, 2)} µm; where on the pen is not said"
        )
    if not done:
        return (
            f"{count} steps take about {plain(plan.removed_total_um.typical, 2)} µm of the {spare} that can be spared"
        )
    known = [s.removed_um.typical for s in done if s.removed_um is not None]
    taken = f"about {plain(sum(known), 2)} of {spare} by the plan" if known else "what was taken is not known"
    return f"{len(carried_out)} of {count} planned steps done: {taken}"


def _beside_plan(plan: Progression, done: Sequence[StepDone]) -> Iterator[tuple[float, float, str]]:
    """Steps outside the plan, and second goes: where along the stock, at what finish, and what they were."""
    reached = 0.0
    for step in done:
        if step.planned is not None:
            reached = step.planned.cumulative_um.typical
        elif step.grade is not None:
            again = any((step.grade.scale, step.grade.name) == (s.grade.scale, s.grade.name) for s in plan.steps)
            yield (
                reached,
                step.grade.finish_um,
                f"{step.label} once more" if again else f"{step.label}, not in the plan",
            )


def _label_apart(axes: Axes, labels: Sequence[tuple[float, float, str, str]], height_mm: float) -> None:
    """Set each label beside its mark, moved down where it would run into the one above."""
    from matplotlib.transforms import offset_copy

    top, bottom = axes.get_ylim()[1], axes.get_ylim()[0]
    gap = math.log(top / bottom) * 4.6 / height_mm
    above = math.inf
    for place, size, words, colour in sorted(labels, key=lambda label: -label[1]):
        level = min(math.log(size), above - gap)
        moved = math.log(size) - level > 0.5 * gap
        above = level
        axes.annotate(
            words, (place, size), xytext=(place, math.exp(level)), textcoords=offset_copy(axes.transData, axes.get_figure(root=True), 9 if not moved else 16, 0, units="points"),
            va="center", color=colour, bbox=_BEHIND, arrowprops={"arrowstyle": "-", "color": colour, "linewidth": 0.5, "shrinkA": 1, "relpos": (0, 0.5)} if moved else None,
        )  # fmt: skip


def _log_axis(axes: Axes, sizes: Sequence[float]) -> None:
    low, high = min(sizes), max(sizes)
    axes.set_yscale("log")
    axes.set_ylim(low / 1.35, high * 1.9)
    ticks = [t for t in (0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 20, 30, 50, 100, 200) if low / 1.35 <= t <= high * 1.4]
    axes.set_yticks(ticks, [f"{t:g}" for t in ticks])
    axes.set_yticks([], minor=True)
    axes.set_ylabel("finish it leaves, µm")


def _top_words(axes: Axes, measured: Measured | None, low: float, high: float, wall_open: bool) -> None:
    from matplotlib.transforms import blended_transform_factory

    across = blended_transform_factory(axes.transData, axes.transAxes)
    axes.text(high, 0.99, "\u2002no more", transform=across, va="top", ha="left", color=OXBLOOD)
    if wall_open and high - low > 0.12 * axes.get_xlim()[1]:
        axes.text(high, 0.99, "measure the wall first\u2002", transform=across, va="top", ha="right", color=BRASS)
    if measured is not None:
        across_mm = axes.get_xlim()[1]
        right = measured.removed_um < 0.35 * across_mm
        axes.text(
            measured.removed_um, 0.02, f"\u2002measured: {measured.shown} µm\u2002", transform=across, va="bottom",
            ha="left" if right else "right", color=JADE,
        )  # fmt: skip


def zones_figures(job: Job) -> tuple[Drawing, ...]:
    """The outside of a job's pen with its zones shaded by what is allowed: open for the barrel, capped for the cap.

    Returns
    -------
    tuple of Drawing
        None to two; a zone that lies past its part, or on the nib, is not drawn. The large plain ones come first, so that
        what lies in them is seen. Where the owner said no to polishing, all of them are left as they are.
    """
    shape = pen_shape(job)
    if shape is None:
        return ()
    refused = polish_refused(job)
    drawn = []
    for capped in (False, True):
        chosen = [
            zone
            for logged in job.log(ZONE)
            if (logged.values.part in _CAP_PARTS) is capped
            and (zone := _drawable(shape, logged.values, capped, refused)) is not None
        ]
        if chosen:
            chosen.sort(key=lambda zone: (_LARGE_FIRST.get(zone.kind, 2), -_stretch_mm(zone)))
            title = _zones_title(chosen, "on the cap" if capped else "on the barrel and section", refused)
            drawn.append(draw_zones(shape, chosen, title=title, capped=capped))
    return tuple(drawn)


def _zones_title(chosen: Sequence[Zone], which: str, refused: bool) -> str:
    if refused:
        return f"No abrasive {which}: left as it is, by the owner’s wish."
    kept = sum(zone.kind not in _LARGE_FIRST or zone.words.startswith("masked") for zone in chosen)
    if len(chosen) == 1:
        return f"The one zone noted {which} {'is kept from abrasives' if kept else 'may be worked'}."
    return f"{kept} of {len(chosen)} zones {which} {'is' if kept == 1 else 'are'} kept from abrasives."


def _stretch_mm(zone: Zone) -> float:
    return math.inf if zone.end_mm is None else zone.end_mm - (zone.start_mm or 0.0)


def _drawable(shape: PenShape, noted: LoggedZone, capped: bool, refused: bool) -> Zone | None:
    if noted.zone is None or noted.part is None or noted.zone not in _DRAWN_KINDS or noted.part == "nib":
        return None
    start, end = (None if reading is None else reading.value for reading in (noted.start_mm, noted.end_mm))
    spare = zones()[noted.zone].budget_high_um
    words = "masked, no abrasive" if noted.masked is True else "no abrasive, NOT MASKED" if spare <= 0 else ""
    words = "left as it is" if refused else words
    for part in _ENDS if noted.part == "end" else (noted.part,):
        try:
            zone = Zone(_DRAWN_KINDS[noted.zone], part, start, end, words)
            draw_zones(shape, [zone], capped=capped)
        except InputError:
            continue
        return zone
    return None
