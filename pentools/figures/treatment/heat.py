"""The chart of heatings: each against the body's limit and the sealant's softening, with the count at which to stop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, SLATE, head, new_chart, to_drawing
from pentools.record.stages.treatment.heat import JointHeat, heated_joints, joint_heat, stop_count

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["heat_figure", "heat_figures"]


def heat_figures(job: Job) -> tuple[Drawing, ...]:
    """A chart for each joint that was looked at or warmed, the last one first.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of Drawing
        Empty where there is none.
    """
    drawn = (heat_figure(job, joint) for joint in heated_joints(job))
    return tuple(drawing for drawing in drawn if drawing is not None)


def heat_figure(job: Job, joint: str = "") -> Drawing | None:
    """The heatings of one joint's last session against its limits.

    Parameters
    ----------
    job : Job
        The job.
    joint : str
        Which joint; the last one looked at or warmed by default.

    Returns
    -------
    Drawing or None
        None where no joint was looked at, or its body is never warmed and it was not.
    """
    joints = heated_joints(job)
    heat = joint_heat(job, joint or joints[0]) if joints else None
    if heat is None or (heat.limit_c is None and not heat.session):
        return None
    title = _title(heat)
    most, _ = stop_count()
    figure, axes = new_chart(160, 72)
    right = max(most, len(heat.session)) + 0.75
    low, high = _range(heat)
    axes.set(xlim=(0.4, right), ylim=(low, high), xticks=range(1, max(most, len(heat.session)) + 1))
    axes.set(xlabel="heating of this session", ylabel="°C at the surface")
    _draw_limits(axes, heat, right)
    axes.axvline(most + 0.5, color=SLATE, linewidth=0.8, linestyle=":")
    axes.annotate(f"stop after {most}", (most + 0.5, low), xytext=(-4, 4), textcoords="offset points", ha="right", fontsize=9, color=SLATE)  # fmt: skip
    _draw_passes(axes, heat, low)
    head(axes, title)
    return to_drawing(figure, title, f"{title}. {_told(heat, most)}")


def _range(heat: JointHeat) -> tuple[float, float]:
    window = heat.window
    values = [one.surface_c for one in heat.session if one.surface_c is not None]
    values += [] if heat.limit_c is None else [heat.limit_c]
    values += [] if window is None else [window.sealant_first_c, window.sealant_full_c]
    return min(30.0, min(values) - 6), max(values) + 9


def _draw_limits(axes: Axes, heat: JointHeat, right: float) -> None:
    if heat.window is not None:
        first, full = heat.window.sealant_first_c, heat.window.sealant_full_c
        axes.axhspan(first, full, color=BRASS, alpha=0.16, linewidth=0)
        text = f"{heat.window.sealant} softens, {first:g} to {full:g} °C"
        axes.annotate(text, (0.45, full), xytext=(0, -3), textcoords="offset points", va="top", fontsize=9, color=BRASS)
    if heat.limit_c is not None:
        axes.axhline(heat.limit_c, color=OXBLOOD, linewidth=1.4)
        text = f"limit of {heat.body}, {heat.limit_c:g} °C"
        place = (right - 0.3, heat.limit_c)
        axes.annotate(
            text, place, xytext=(0, -3), textcoords="offset points", ha="right", va="top", fontsize=9, color=OXBLOOD
        )


def _draw_passes(axes: Axes, heat: JointHeat, low: float) -> None:
    for number, one in enumerate(heat.session, 1):
        if one.surface_c is None:
            axes.annotate("not\nmeasured", (number, low), xytext=(0, 20), textcoords="offset points", ha="center", fontsize=9, color=SLATE)  # fmt: skip
            continue
        over = heat.limit_c is None or one.surface_c > heat.limit_c
        colour = OXBLOOD if over else JADE if one.free else INK
        mark = "X" if over or one.broke else "D" if one.free else "o"
        axes.plot([number, number], [low, one.surface_c], color=colour, linewidth=0.8)
        axes.plot(number, one.surface_c, marker=mark, color=colour, markersize=6, linestyle="none")
        word = "broke" if one.broke else "free" if one.free else "moved" if one.moved else ""
        text = f"{one.surface_c:g}" + (f", {word}" if word else "")
        axes.annotate(text, (number, one.surface_c), xytext=(7, -4), textcoords="offset points", va="top", fontsize=9, color=colour)  # fmt: skip


def _title(heat: JointHeat) -> str:
    name = f"{heat.label[0].upper()}{heat.label[1:]}"
    if not heat.session:
        if heat.window is not None and heat.window.window_first_c is not None and heat.window.window_first_c > 0:
            return f"{name}: {heat.window.window_first_c:g} °C of room for heat"
        return f"{name}: no room for heat" if heat.window is not None else f"{name}: limit {heat.limit_c:g} °C"
    log = heat.log
    count = f"{log.passes} heating{'s' if log.passes > 1 else ''}"
    if log.hottest_c is None:
        return f"{name}: {count}, none measured"
    if heat.limit_c is None:
        return f"{name}: {count} of what is never warmed"
    room = heat.limit_c - log.hottest_c
    where = f"{-room:g} °C over the limit" if room < 0 else "at the limit" if room == 0 else f"{room:g} °C under the limit"  # fmt: skip
    end = "; it came free" if heat.session[-1].free else "; not free" if log.left == 0 else ""
    return f"{name}: {count}, the hottest {where}{end}"


def _told(heat: JointHeat, most: int) -> str:
    parts = []
    for number, one in enumerate(heat.session, 1):
        warm = "not measured" if one.surface_c is None else f"{one.surface_c:g} °C"
        then = f", broke: {one.broke}" if one.broke else ", came free" if one.free else f", moved: {one.moved}" if one.moved else ""  # fmt: skip
        parts.append(f"heating {number}: {warm}{then}")
    limit = f"{heat.body} is never warmed" if heat.limit_c is None else f"the limit of {heat.body} is {heat.limit_c:g} °C"  # fmt: skip
    parts.append(limit)
    if heat.window is not None:
        parts.append(f"{heat.window.sealant} softens from {heat.window.sealant_first_c:g} to {heat.window.sealant_full_c:g} °C")  # fmt: skip
    parts.append(f"stop after {most} heatings")
    text = "; ".join(parts) + "."
    return text[0].upper() + text[1:]
