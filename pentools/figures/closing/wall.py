"""Half a page for the wall of the bench: an order of work with boxes to tick, or what an owner is told of care."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from pentools.calc.closing.care import CareLine
from pentools.figures.drawing import Drawing
from pentools.figures.pen.lettering import text_width_mm, wrap
from pentools.figures.pen.svg import BRASS, INK, OXBLOOD, RULE, SLATE, TEXT_MM, Picture, element
from pentools.numbers import capital
from pentools.sums.base import SumAnswer
from pentools.sums.closing.work import ToldOrder, ToldStep

__all__ = ["HALF_PAGE_MM", "WIDTH_MM", "care_page", "order_page"]

WIDTH_MM = 190.0
"""As wide as an A4 page with margins of 10 mm [mm]."""
HALF_PAGE_MM = 138.5
"""Half of an A4 page's height with margins of 10 mm [mm]; no page is higher."""
_SIZES_MM = (TEXT_MM, 3.0, 2.85)
"""Heights of the type [mm], the largest that fits is taken; 8 pt is 2.822 mm."""
_LEADING = 1.17
_LEFT_MM, _GAP_MM = 1.0, 4.0
_TITLE_MM = 4.2


@dataclass(frozen=True)
class _Page:
    """The type a page is set in, and where its columns stand.

    Parameters
    ----------
    size : float
        Height of the type [mm].
    split : float
        Left edge of the second column [mm].
    """

    size: float
    split: float

    @cached_property
    def line(self) -> float:
        """Distance between two lines [mm]."""
        return self.size * _LEADING

    def wrapped(self, words: str, wide: float) -> tuple[str, ...]:
        """Text in lines no wider than a measure."""
        return wrap(words, wide, self.size)

    def lines(self, picture: Picture, x: float, y: float, lines: Iterable[str], colour: str = INK) -> None:
        """Put lines below each other, the top of the first at `y`."""
        for place, line in enumerate(lines):
            picture.text(x, y + self.size + place * self.line, line, size=self.size, colour=colour)


_Draw = Callable[[Picture, _Page], float]


def order_page(told: ToldOrder) -> Drawing:
    """An order of work for the wall of the bench.

    Parameters
    ----------
    told : ToldOrder
        The order; what its materials change stands under the steps.

    Returns
    -------
    Drawing
        Half an A4 page at the most. One box for the step and one for its test; a step that closes something in has a
        bar, one that cannot be taken back says so, one that waits for an adhesive says how long.
    """
    title = f"{capital(told.label)}: how it goes {'together' if told.way == 'close' else 'apart'}"
    alt = f"{title}. " + " ".join(f"{step.number}: {step.action} {step.test}" for step in told.steps)
    return _smallest_that_fits(lambda picture, page: _order(picture, page, told, title), range(80, 116, 5), title, alt)


def care_page(answer: SumAnswer, lines: Sequence[CareLine]) -> Drawing:
    """What an owner is told, for the wall of the bench.

    Parameters
    ----------
    answer : SumAnswer
        The care sum's answer, for its sentence and what it never allows.
    lines : sequence of CareLine
        Its lines by topic.

    Returns
    -------
    Drawing
        Half an A4 page at the most: one row a line, its topic at the left, in two columns.
    """
    title = f"Care: {answer.sentence.split(':')[0]}"
    never = answer.data["never"]
    alt = f"{title}. {' '.join(line.line for line in lines)}" + (f" Never: {', '.join(never)}." if never else "")
    told = [(line.topic, line.line, INK) for line in lines]
    told += [("never", ", ".join(never), OXBLOOD)] if never else []
    return _smallest_that_fits(
        lambda picture, page: _care(picture, page, told, title), [0.5 * (WIDTH_MM + _GAP_MM)], title, alt
    )


def _smallest_that_fits(draw: _Draw, splits: Iterable[float], title: str, alt: str) -> Drawing:
    """The page in the largest type that fits half a page, its columns so that it is lowest; else the lowest of all."""
    columns, best = tuple(splits), (math.inf, Picture(WIDTH_MM, "wall"))
    for size in _SIZES_MM:
        for split in columns:
            picture = Picture(WIDTH_MM, "wall")
            high = draw(picture, _Page(size, split))
            best = min(best, (high, picture), key=lambda one: one[0])
        if best[0] <= HALF_PAGE_MM:
            break
    return Drawing(best[1].finish(best[0], title, alt), title, alt, WIDTH_MM)


# an order of work ------------------------------------------------------------------------------------------

_DO_AT = 7.6
_BOX_GAP_MM = 1.0
_BETWEEN = "  ▪  "
_FOOT = (
    "▐ closes something in", "✕ cannot be taken back", "◐ in part only", "✓ what a sound one shows",
    "common practice, some of it from memory: look at the pen first",
)  # fmt: skip
_MARKS = {"no": " ✕", "partly": " ◐"}


def _order(picture: Picture, page: _Page, told: ToldOrder, title: str) -> float:
    """Draw an order of work; its height [mm]."""
    named = ["a body that is not named" if name == "unknown" else name for name in told.materials]
    y = _head(picture, page, title, f"for {', '.join(named)}" if named else "")
    words = "test before the next" if told.way == "close" else "so before the next"
    picture.text(_DO_AT, y + page.size, "do", size=page.size, colour=SLATE, italic=True)
    picture.text(page.split, y + page.size, words, size=page.size, colour=SLATE, italic=True)
    y += page.line + 0.4
    for step in told.steps:
        y = _step(picture, page, y, step)
    y = _changes(picture, page, y, told)
    lines = page.wrapped(_BETWEEN.join(_FOOT), WIDTH_MM - 2 * _LEFT_MM)
    page.lines(picture, _LEFT_MM, y + 0.6, lines, SLATE)
    return y + 1.4 + len(lines) * page.line


def _head(picture: Picture, page: _Page, title: str, under: str) -> float:
    """The title, and what it is for beside it where there is room, else below; where the rest begins [mm]."""
    y = _TITLE_MM
    picture.text(_LEFT_MM, y, title, size=_TITLE_MM, bold=True)
    room = WIDTH_MM - 2 * _LEFT_MM - text_width_mm(title, _TITLE_MM, bold=True) - _GAP_MM
    if under and text_width_mm(under, page.size) <= room:
        picture.text(WIDTH_MM - _LEFT_MM, y, under, size=page.size, anchor="end", colour=SLATE)
    elif under:
        lines = page.wrapped(under, WIDTH_MM - 2 * _LEFT_MM)
        page.lines(picture, _LEFT_MM, y + 1.0, lines, SLATE)
        y += 0.6 + len(lines) * page.line
    return y + 1.2


def _step(picture: Picture, page: _Page, y: float, step: ToldStep) -> float:
    box = page.size * 0.9
    inset = box + _BOX_GAP_MM
    done = page.wrapped(f"{step.action}{_MARKS.get(step.undone, '')}", page.split - _DO_AT - inset - 1.5)
    test = page.wrapped(step.test.replace(" Passed: ", " ✓ ") or "–", WIDTH_MM - page.split - inset - _LEFT_MM)
    high = max(len(done), len(test)) * page.line + 0.7
    picture.line([(_LEFT_MM, y), (WIDTH_MM - _LEFT_MM, y)], stroke=RULE)
    if step.closes:
        picture.add(element("rect", x=_LEFT_MM - 1.0, y=y + 0.5, width=1.1, height=high - 0.8, fill=OXBLOOD))
    top = y + 0.25
    picture.text(_DO_AT - 1.2, top + page.size, str(step.number), size=page.size, anchor="end", bold=True)
    for left, lines in ((_DO_AT, done), (page.split, test)):
        picture.add(element("rect", x=left, y=top + 0.3, width=box, height=box, fill="none", stroke=INK, stroke_width=0.25))  # fmt: skip
        page.lines(picture, left + inset, top, lines)
    return y + high


def _changes(picture: Picture, page: _Page, y: float, told: ToldOrder) -> float:
    """What the materials change, each word once with its steps."""
    at: dict[str, list[str]] = {}
    for step in told.steps:
        for words in step.changes:
            at.setdefault(words, []).append(str(step.number))
    if not at:
        return y
    picture.line([(_LEFT_MM, y), (WIDTH_MM - _LEFT_MM, y)], stroke=RULE)
    all_of_them = _BETWEEN.join(f"{', '.join(numbers)}: {words}" for words, numbers in at.items())
    lines = page.wrapped(all_of_them, WIDTH_MM - 2 * _LEFT_MM)
    page.lines(picture, _LEFT_MM, y + 0.3, lines, BRASS)
    return y + len(lines) * page.line + 0.7


# care ------------------------------------------------------------------------------------------------------

_TOPIC_MM = 15.0


def _care(picture: Picture, page: _Page, told: Sequence[tuple[str, str, str]], title: str) -> float:
    """Draw what an owner is told, in two columns of like height; its height [mm]."""
    top = _head(picture, page, title, "")
    wide = WIDTH_MM - page.split - _LEFT_MM
    rows = [page.wrapped(words, wide - _TOPIC_MM) for _, words, _ in told]
    highs = [len(lines) * page.line + 1.2 for lines in rows]
    cut = min(range(len(rows) + 1), key=lambda place: max(sum(highs[:place]), sum(highs[place:])))
    for left, places in ((_LEFT_MM, range(cut)), (page.split, range(cut, len(rows)))):
        y, last = top, ""
        for place in places:
            topic, _, colour = told[place]
            picture.line([(left, y), (left + wide, y)], stroke=RULE)
            if topic != last:
                picture.text(left, y + 0.4 + page.size, topic, size=page.size, colour=SLATE, italic=True)
            page.lines(picture, left + _TOPIC_MM, y + 0.4, rows[place], colour)
            y, last = y + highs[place], topic
    return top + max(sum(highs[:cut]), sum(highs[cut:])) + 1.0
