"""The chart of heatings: each against the body's limit and the sealant's softening, with the count at which to stop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, SLATE, head, new_chart, to_drawing
from pentools.numbers import capital
from pentools.record.stages.treatment.heat import JointHeat, heated_joints, joint_heat, stop_count

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["heat_figure", "heat_figures"]

LONGEST_LINE = 58


def heat_figures(job: Job) -> tuple[Drawing, ...]:
    """A chart for each joint that was warmed, the last one first; where nothing was warmed there is nothing to draw.

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
    joint : str
        Which joint; the last one that was warmed by default.

    Returns
    -------
    Drawing or None
        None where it was not warmed.
    """
    looked = (joint,) if joint else heated_joints(job)
    heat = next((one for name in looked if (one := joint_heat(job, name)) is not None and one.session), None)
    if heat is None:
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
    head(axes, title.replace("; ", ";\n") if len(title) > LONGEST_LINE else title)
    return to_drawing(figure, title, f"{title}. {_told(heat, most)}")


def _range(heat: JointHeat) -> tuple[float, float]:
    window = heat.window
    values = [one.surface_c for one in heat.session if one.surface_c is not None]
    values += [] if heat.limit_c is None else [heat.limit_c]
    values += [end for end in (window.sealant_first_c, window.sealant_full_c) if end is not None]
    return min(30.0, min(values, default=30.0) - 6), max(values, default=60.0) + 9


def _draw_limits(axes: Axes, heat: JointHeat, right: float) -> None:
    """The sealant's band and the body's limit; their words stand beside the plot, where no line can strike them through."""
    first, full = heat.window.sealant_first_c, heat.window.sealant_full_c
    labels: list[tuple[float, str, str]] = []
    if first is not None and full is not None:
        axes.axhspan(first, full, color=BRASS, alpha=0.16, linewidth=0)
        labels.append(((first + full) / 2, f"{_softens(heat)},\n{first:g} to {full:g} °C", BRASS))
    if heat.limit_c is not None:
        axes.axhline(heat.limit_c, color=OXBLOOD, linewidth=1.4)
        labels.append((heat.limit_c, f"limit of {heat.body},\n{heat.limit_c:g} °C", OXBLOOD))
    low, high = axes.get_ylim()
    least = 0.17 * (high - low)  # two lines of 9 pt
    labels.sort()
    if len(labels) == 2 and labels[1][0] - labels[0][0] < least:
        middle = (labels[0][0] + labels[1][0]) / 2
        labels = [(middle + way * least / 2, *label[1:]) for way, label in zip((-1, 1), labels, strict=True)]
    for height, text, colour in labels:
        axes.annotate(text, (right, height), xytext=(6, 0), textcoords="offset points", va="center", fontsize=9, color=colour, annotation_clip=False)  # fmt: skip


def _softens(heat: JointHeat) -> str:
    window = heat.window
    return f"{window.sealant} softens" if window.taken_as == window.sealant else f"not known: as {window.taken_as}"


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
    name = capital(heat.label)
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
    first, full = heat.window.sealant_first_c, heat.window.sealant_full_c
    if first is not None and full is not None:
        parts.append(f"{_softens(heat)} from {first:g} to {full:g} °C")
    parts.append(f"stop after {most} heatings")
    text = "; ".join(parts) + "."
    return text[0].upper() + text[1:]
