"""Charts of a year's review: pens by month and ending, time by kind of work, filling against the usual, what was done."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.calc.books.median import Median
from pentools.figures.chart import (
    BRASS,
    INK,
    JADE,
    OXBLOOD,
    PAPER,
    RULE,
    SLATE,
    head,
    new_chart,
    say,
    texture,
    to_drawing,
)
from pentools.numbers import capital, fixed, in_words, percent
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.words import MONTHS

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.books.learning.figures_told import Chapter, Learnt
    from pentools.books.learning.learning import Learned
    from pentools.books.learning.year import Year
    from pentools.figures.drawing import Drawing

__all__ = ["activities_figure", "filling_figure", "learned_figures", "months_figure", "work_figure", "year_figures"]

_MOST_ROWS, _FEW = 12, 3
_LOOKS: dict[str, dict[str, Any]] = {
    "done": {"facecolor": INK, "edgecolor": INK},
    "done with limits": {"edgecolor": JADE, "look": "slant"},
    "stopped": {"facecolor": PAPER, "edgecolor": BRASS},
    "returned": {"edgecolor": OXBLOOD, "look": "cross"},
}
_COLOUR = {"done": INK, "done with limits": JADE, "stopped": BRASS, "returned": OXBLOOD}
_FAINT = "#e9e4d4"


def year_figures(year: Year) -> tuple[Drawing, ...]:
    """Every chart of a year that has something to show."""
    drawn = (months_figure(year), *learned_figures(year.learned))
    return tuple(one for one in drawn if one is not None)


def learned_figures(learned: Learned) -> tuple[Drawing, ...]:
    """The charts of what was learned that have something to show."""
    drawn = (work_figure(learned), filling_figure(learned), activities_figure(learned))
    return tuple(one for one in drawn if one is not None)


def months_figure(year: Year) -> Drawing | None:
    """Pens that ended, month by month, one upon another by ending; None where none ended."""
    whole = sum(year.ended.values())
    if not whole:
        return None
    totals = [sum(month.ended.values()) for month in year.months]
    most = max(totals)
    fullest = [MONTHS[n] for n, total in enumerate(totals) if total == most]
    title = f"{whole} {'pen' if whole == 1 else 'pens'} ended in {year.year}"
    title += f", most in {in_words(fullest)}" if len(fullest) < _FEW and whole > most else ""
    figure, axes = new_chart(160, 72)
    below = [0] * 12
    for key, _ in ENDINGS:
        counts = [month.ended[key] for month in year.months]
        look = dict(_LOOKS[key])
        hatch = look.pop("look", "")
        for month, (count, start) in enumerate(zip(counts, below, strict=True)):
            if count:
                axes.bar(
                    month, count, bottom=start, width=0.66, linewidth=0.8, **look, **(texture(hatch) if hatch else {})
                )
        below = [start + count for start, count in zip(below, counts, strict=True)]
    for month, total in enumerate(totals):
        if total:
            say(axes, str(total), (month, total), up=2)
    axes.set(xlim=(-0.6, 11.6), ylim=(0, 1.42 * most), xticks=range(12), yticks=[])
    axes.set_xticklabels([name[:3] for name in MONTHS])
    axes.spines["left"].set_visible(False)
    _key(axes, year)
    head(axes, title)
    by_month = "; ".join(
        f"{MONTHS[n]} {_in_endings(month.ended)}" for n, month in enumerate(year.months) if sum(month.ended.values())
    )
    return to_drawing(figure, title, f"{title}. {by_month}.")


def _key(axes: Axes, year: Year) -> None:
    """The endings that occur, each in its own look with its word and count, in a line over the bars."""
    shown = [(key, words.split(":")[0]) for key, words in ENDINGS if year.ended[key]]
    place = 0.0
    for key, words in shown:
        look = dict(_LOOKS[key])
        hatch = look.pop("look", "")
        top = axes.get_ylim()[1]
        axes.bar(
            place, 0.06 * top, bottom=0.9 * top, width=0.5, linewidth=0.8, **look, **(texture(hatch) if hatch else {})
        )
        text = f"{words}, {year.ended[key]}"
        axes.annotate(
            text, (place + 0.25, 0.93 * top), xytext=(5, 0), textcoords="offset points", va="center", color=_COLOUR[key]
        )
        place += 1.1 + 0.145 * len(text)


def _in_endings(ended: Any) -> str:
    return in_words(f"{ended[key]} {words.split(':')[0]}" for key, words in ENDINGS if ended[key])


def work_figure(learned: Learned) -> Drawing | None:
    """Minutes by kind of work, each with its interval and n; None where no kind has three."""
    chapter = learned.chapter("minutes_by_work")
    rows = _told(chapter)
    if not rows:
        return None
    first = max(rows, key=lambda row: row[0].n)
    title = f"{capital(first[0].label)} takes {fixed(first[1].median, 0)} minutes, the middle of {first[0].n} jobs"
    figure, axes = new_chart(160, 24 + 8.5 * len(rows))
    rows = sorted(rows, key=lambda row: row[1].median)
    _intervals(axes, [(one.label, one.n, told) for one, told in rows], "min")
    axes.set(xlabel="minutes: the middle job, and the interval of the true middle (95 % where n is six or more)")
    head(axes, title)
    return to_drawing(figure, title, _alt(title, chapter, rows))


def filling_figure(learned: Learned) -> Drawing | None:
    """Share filled by system with its interval, on the usual range of the table; None where no system has three."""
    chapter = learned.chapter("share_filled")
    rows = [row for row in _told(chapter) if not row[0].about["seal"]][:_MOST_ROWS]
    if not rows:
        return None
    usual = {one.label: one.more["usual_by_table"] for one, _ in rows}
    low = [one.label for one, told in rows if usual[one.label] and told.high < usual[one.label]["low"]]
    known = [one for one, _ in rows if usual[one.label]]
    none_below = f"Of {len(known)} filling {'system' if len(known) == 1 else 'systems'} none fills less than is usual"
    title = (
        f"They fill less than is usual: {in_words(low)}" if low else none_below if known else "Share filled by system"
    )
    figure, axes = new_chart(160, 26 + 8.5 * len(rows))
    for place, (one, _) in enumerate(rows):
        if band := usual[one.label]:
            axes.barh(
                place,
                100 * (band["high"] - band["low"]),
                left=100 * band["low"],
                height=0.62,
                color=_FAINT,
                edgecolor=RULE,
                linewidth=0.6,
            )
    _intervals(axes, [(one.label, one.n, told) for one, told in rows], "%", 100)
    axes.set(
        xlim=(-80, 108),
        xlabel="per cent of what it holds, middle pen and its interval; shaded: usual by the table (judged)",
    )
    axes.set_xticks(range(0, 101, 20))
    head(axes, title)
    return to_drawing(figure, title, _alt(title, chapter, rows, usual))


def activities_figure(learned: Learned) -> Drawing | None:
    """How the hours were spent, by activity; None where no minutes were entered."""
    rows = [
        (one.label, one.more["share_of_all_minutes"], one.n) for one in learned.chapter("minutes_by_activity").figures
    ]
    if not rows:
        return None
    rows.sort(key=lambda row: -row[1])
    title = f"{percent(rows[0][1])} of the time went into {rows[0][0]}"
    figure, axes = new_chart(160, 20 + 7.5 * len(rows), bars_only=True)
    for place, (name, share, n) in enumerate(rows):
        axes.barh(place, 100 * share, height=0.6, color=INK if place == 0 else RULE, edgecolor=INK, linewidth=0.6)
        say(axes, f"{name}, {percent(share)} ({n} {'job' if n == 1 else 'jobs'})", (100 * share, place), right=6)
    axes.set(
        xlim=(0, 175 * rows[0][1]),
        ylim=(len(rows) - 0.4, -0.6),
        yticks=[],
        xlabel=f"per cent of all minutes of {learned.counted} jobs",
    )
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {percent(share)}, in {n}" for name, share, n in rows) + "."
    return to_drawing(figure, title, alt)


def _told(chapter: Chapter) -> list[tuple[Learnt, Median]]:
    return [(one, one.told) for one in chapter.figures if isinstance(one.told, Median)]


def _intervals(axes: Axes, rows: list[tuple[str, int, Median]], unit: str, times: float = 1) -> None:
    """A dot at the middle on the line of its interval, with its name and n at the left."""
    most = max(times * told.high for _, _, told in rows)
    for place, (label, n, told) in enumerate(rows):
        low, middle, high = (times * value for value in (told.low, told.median, told.high))
        axes.plot(
            [low, high],
            [place, place],
            color=INK,
            linewidth=1.6,
            solid_capstyle="butt",
            linestyle="-" if told.reached else (0, (3, 1.5)),
        )
        axes.plot([middle], [place], marker="o", markersize=5.5, color=INK)
        axes.annotate(
            f"{fixed(middle, 0)} {unit}",
            (max(high, middle), place),
            xytext=(6, 0),
            textcoords="offset points",
            va="center",
            color=INK,
        )
        axes.annotate(
            f"{label}, n = {n}",
            (0, place),
            xytext=(-6, 0),
            textcoords="offset points",
            va="center",
            ha="right",
            color=SLATE,
        )
    axes.set(xlim=(-0.78 * most, 1.15 * most), ylim=(len(rows) - 0.4, -0.6), yticks=[])
    axes.set_xticks([tick for tick in axes.get_xticks() if 0 <= tick <= 1.1 * most])
    axes.spines["left"].set_visible(False)
    axes.spines["bottom"].set_bounds(0, 1.15 * most)


def _short(label: str) -> str:
    """A label without what stands in brackets."""
    return label.partition(" (")[0]


def _alt(title: str, chapter: Chapter, rows: list[tuple[Learnt, Median]], usual: dict[str, Any] | None = None) -> str:
    said = []
    for one, _ in rows:
        band = (usual or {}).get(one.label)
        beside = f", usual {percent(band['low'])} to {percent(band['high'])}" if band else ""
        said.append(f"{one.label} {chapter.words(one)}, n = {one.n}{beside}")
    return f"{title}. {'; '.join(said)}."
