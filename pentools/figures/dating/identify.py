"""The chart of dating evidence: one bar a feature, the years they agree on shaded, and what does not fit marked."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.spans import ANY_DAY, Span, in_words
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, PAPER, SLATE, head, new_chart, texture, to_drawing

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.calc.dating.evidence import Evidence
    from pentools.calc.dating.findings import DateRange
    from pentools.figures.drawing import Drawing

__all__ = ["evidence_figure", "years_shown"]

_DAYS_A_YEAR = 365.2425
_BEHIND = {"facecolor": PAPER, "edgecolor": "none", "pad": 0.3, "alpha": 0.85}  # so that no line runs through a word
_STYLES: dict[str, tuple[str, str, str]] = {
    "agrees": (INK, "", ""),
    "doubted": (OXBLOOD, "saltire", "does not fit"),
    "does not fit": (OXBLOOD, "saltire", "not known to be original; does not fit"),
    "unknown": (BRASS, "fine-dots", "not known to be original"),
    "replaced": (SLATE, "slant", "replaced, left out"),
    "limits nothing": (SLATE, "", "limits neither end"),
}


def evidence_figure(result: DateRange | None) -> Drawing | None:
    """Every piece of evidence as a bar of years.

    Parameters
    ----------
    result : DateRange or None
        What the evidence says.

    Returns
    -------
    Drawing or None
        Bars in the order of entry with the agreed range shaded; where the evidence contradicts itself, what is left
        if the least is doubted, said so. None without evidence, or where no piece of it sets a year.
    """
    if result is None or all(item.limits_nothing for item in result.evidence):
        return None
    from matplotlib.ticker import MaxNLocator

    agreed, doubted, words = _agreed(result)
    low, high = years_shown(result)
    title = _title(result)
    figure, axes = new_chart(160, 24 + 9.5 * len(result.evidence))
    for first, last in agreed:
        axes.axvspan(_year(first, low), _year(last, high, end=True), color=JADE, alpha=0.14, linewidth=0)
        for edge in (first, last):
            if edge is not None:
                axes.axvline(_year(edge, low, end=edge == last), color=JADE, linewidth=0.9, linestyle="--")
    told = []
    for row, item in enumerate(result.evidence):
        state = _state_of(result, row, doubted)
        told.append(_draw_row(axes, row, item, state, (low, high)))
    if words and agreed:
        first = agreed[0][0]
        axes.annotate(words, (_year(first, low), len(result.evidence) - 0.45), xytext=(3, 0), textcoords="offset points", va="center", color=JADE, bbox=_BEHIND, zorder=2)  # fmt: skip
    axes.set(
        xlim=(low, high), ylim=(len(result.evidence) - 0.05, -0.75), yticks=[], xlabel="year (each tick is 1 January)"
    )
    axes.xaxis.set_major_locator(MaxNLocator(integer=True))
    axes.spines["left"].set_visible(False)
    for text in axes.texts:
        text.set_in_layout(False)  # they stand inside the axes; measuring each for the layout would take its time
    head(axes, title)
    alt = f"{title}. " + "; ".join(told) + (f". Shaded: {words}." if words else ".")
    return to_drawing(figure, title, alt)


def years_shown(result: DateRange) -> tuple[float, float]:
    """The first and the last year of the axis: all years that are named, with room for open ends.

    Parameters
    ----------
    result : DateRange
        What the evidence says; at least one piece sets a year.

    Returns
    -------
    tuple of float
        Years; the axis does not start at zero, since a calendar has none.
    """
    named = [day for item in result.evidence for span in item.spans for day in span if day is not None]
    low, high = _decimal_year(min(named)), _decimal_year(max(named) + 1)
    room = max(2.0, 0.12 * (high - low))
    return low - room, high + room


def _decimal_year(day: int) -> float:
    date = dt.date.fromordinal(day)
    return date.year + (date - date.replace(month=1, day=1)).days / _DAYS_A_YEAR


def _year(day: int | None, open_end: float, *, end: bool = False) -> float:
    """A day as a year with decimals; the last day of a span reaches to its end, an open end to the chart's edge."""
    return open_end if day is None else _decimal_year(day + 1 if end else day)


def _agreed(result: DateRange) -> tuple[tuple[Span, ...], frozenset[int], str]:
    """What is shaded, which places are doubted for it, and what the shading means."""
    if result.spans == ANY_DAY:
        return (), frozenset(), ""
    if result.spans:
        return result.spans, frozenset(), f"agreed: {in_words(result.spans)}"
    way = result.conflicts[0]
    names = " and the ".join(way.features)
    return way.spans, frozenset(way.doubted), f"{in_words(way.spans)}, without the {names}"


def _state_of(result: DateRange, place: int, doubted: frozenset[int]) -> str:
    item = result.evidence[place]
    if item.part == "replaced":
        return "replaced"
    if item.part == "unknown":
        return "does not fit" if place in result.unknown_disagree else "unknown"
    if item.limits_nothing:
        return "limits nothing"
    return "doubted" if place in doubted else "agrees"


def _draw_row(axes: Axes, row: int, item: Evidence, state: str, shown: tuple[float, float]) -> str:
    """One feature's bar with its words above it; returns the words."""
    colour, hatching, mark = _STYLES[state]
    low, high = shown
    for first, last in item.spans:
        start, stop = _year(first, low), _year(last, high, end=True)
        filled = texture(hatching) if hatching else {"facecolor": colour if state == "agrees" else "none"}
        axes.barh(
            row, stop - start, left=start, height=0.3, edgecolor=colour,
            linewidth=0.8, zorder=3, linestyle=":" if state == "limits nothing" else "-", **filled,
        )  # fmt: skip
        for edge, place, sign in ((first, low, "<"), (last, high, ">")):
            if edge is None:
                axes.plot([place], [row], marker=sign, color=colour, markersize=6, clip_on=False)
    allows = in_words(item.spans)
    words = f"{item.feature}: {allows}, {item.certainty}" + (f" – {mark}" if mark else "")
    axes.annotate(
        words, (low, row - 0.4), xytext=(2, 0), textcoords="offset points", va="center", color=colour, bbox=_BEHIND
    )
    return words


def _title(result: DateRange) -> str:
    if not result.spans:
        way = result.conflicts[0]
        left = in_words(way.spans)
        return f"The evidence contradicts itself; without the {' and the '.join(way.features)} it allows {left}"
    return date_sentence(result).rstrip(".")
