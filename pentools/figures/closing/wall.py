"""Half a page for the wall of the bench: an order of work with boxes to tick, or what an owner is told of care."""

from __future__ import annotations

from collections.abc import Sequence

from pentools.calc.closing.care import CareLine
from pentools.figures.drawing import Drawing
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.svg import BRASS, INK, OXBLOOD, RULE, SLATE, Picture, element
from pentools.numbers import capital
from pentools.sums.base import SumAnswer
from pentools.sums.closing.work import ToldOrder, ToldStep

__all__ = ["WIDTH_MM", "care_page", "order_page"]

WIDTH_MM = 180.0
"""As wide as an A4 page with its margins; most orders are not higher than half of it."""
_LEFT_MM, _BOX_MM, _GAP_MM = 1.5, 3.0, 4.0
_TITLE_MM = 4.6


def order_page(told: ToldOrder) -> Drawing:
    """An order of work for the wall of the bench.

    Parameters
    ----------
    told : ToldOrder
        The order; what its materials change stands under the steps.

    Returns
    -------
    Drawing
        One box for the step and one for its test; a step that closes something in has a bar, one that cannot be taken
        back says so, one that waits for an adhesive says how long.
    """
    way = "together" if told.way == "close" else "apart"
    title = f"{capital(told.label)}: how it goes {way}"
    picture = Picture(WIDTH_MM, "wall")
    y = _head(picture, title, _for_what(told))
    y = _columns(picture, y, told.way)
    for step in told.steps:
        y = _step(picture, y, step)
    y = _changes(picture, y, told)
    foot = "▐ closes something in    ✕ cannot be taken back    ◐ in part only    ✓ what a sound one shows"
    picture.text(_LEFT_MM, y + 3.6, foot, colour=SLATE)
    picture.text(
        _LEFT_MM, y + 3.6 + LINE_MM, "Common practice, some of it from memory: look at the pen first.", colour=SLATE
    )
    alt = f"{title}. " + " ".join(f"{step.number}: {step.action} {step.test}" for step in told.steps)
    return Drawing(picture.finish(y + 5.6 + LINE_MM, title, alt), title, alt, WIDTH_MM)


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
        One row a line, its topic at the left.
    """
    title = f"Care: {answer.sentence.split(':')[0]}"
    picture = Picture(WIDTH_MM, "wall")
    y = _head(picture, title, "")
    last = ""
    for line in lines:
        y = _row(picture, y, line.topic if line.topic != last else "", line.line, INK)
        last = line.topic
    never = answer.data["never"]
    if never:
        y = _row(picture, y, "never", ", ".join(never), OXBLOOD)
    alt = f"{title}. {' '.join(line.line for line in lines)}" + (f" Never: {', '.join(never)}." if never else "")
    return Drawing(picture.finish(y + 2.0, title, alt), title, alt, WIDTH_MM)


def _for_what(told: ToldOrder) -> str:
    named = ["a body that is not named" if name == "unknown" else name for name in told.materials]
    return f"for {', '.join(named)}" if named else ""


def _head(picture: Picture, title: str, under: str) -> float:
    y = 6.0
    picture.text(_LEFT_MM, y, title, size=_TITLE_MM, bold=True)
    if under:
        y += LINE_MM + 0.6
        picture.text(_LEFT_MM, y, under, colour=SLATE)
    return y + 2.5


def _changes(picture: Picture, y: float, told: ToldOrder) -> float:
    """What the materials change, each word once with its steps."""
    at: dict[str, list[str]] = {}
    for step in told.steps:
        for words in step.changes:
            at.setdefault(words, []).append(str(step.number))
    for words, numbers in at.items():
        picture.line([(_LEFT_MM, y), (WIDTH_MM - _LEFT_MM, y)], stroke=RULE)
        picture.text(_LEFT_MM, y + LINE_MM - 0.7, ", ".join(numbers), colour=BRASS, bold=True)
        for line in wrap(words, WIDTH_MM - 22.0):
            y += LINE_MM
            picture.text(20.0, y - 0.7, line, colour=BRASS)
        y += 1.2
    return y


_DO_AT, _TEST_AT = 10.0, 92.0
_DO_WIDE, _TEST_WIDE = _TEST_AT - _DO_AT - 2.0, WIDTH_MM - _TEST_AT - 2.0


def _columns(picture: Picture, y: float, way: str) -> float:
    picture.text(_DO_AT, y + 3.0, "do", colour=SLATE, italic=True)
    words = "test before the next" if way == "close" else "so before the next"
    picture.text(_TEST_AT, y + 3.0, words, colour=SLATE, italic=True)
    return y + 4.4


def _step(picture: Picture, y: float, step: ToldStep) -> float:
    mark = {"no": " ✕", "partly": " ◐"}.get(step.undone, "")
    done = wrap(f"{step.action}{mark}", _DO_WIDE - 4.5)
    test = wrap(step.test.replace(" Passed: ", " ✓ ") or "–", _TEST_WIDE - 4.5)
    high = max(len(done), len(test)) * LINE_MM + 1.2
    picture.line([(_LEFT_MM, y), (WIDTH_MM - _LEFT_MM, y)], stroke=RULE)
    if step.closes:
        picture.add(element("rect", x=_LEFT_MM - 1.0, y=y + 0.6, width=1.1, height=high - 1.2, fill=OXBLOOD))
    base = y + LINE_MM - 0.7
    picture.text(_LEFT_MM + 6.4, base, str(step.number), anchor="end", bold=True)
    for left in (_DO_AT, _TEST_AT):
        picture.add(element("rect", x=left, y=base - 2.6, width=_BOX_MM, height=_BOX_MM, fill="none", stroke=INK, stroke_width=0.25))  # fmt: skip
    for place, line in enumerate(done):
        picture.text(_DO_AT + 4.5, base + place * LINE_MM, line)
    for place, line in enumerate(test):
        picture.text(_TEST_AT + 4.5, base + place * LINE_MM, line)
    return y + high


def _row(picture: Picture, y: float, label: str, words: str, colour: str) -> float:
    lines = wrap(words, WIDTH_MM - 30.0)
    picture.line([(_LEFT_MM, y), (WIDTH_MM - _LEFT_MM, y)], stroke=RULE)
    base = y + _GAP_MM - 0.4
    if label:
        picture.text(_LEFT_MM, base, label, colour=SLATE, italic=True)
    for place, line in enumerate(lines):
        picture.text(25.0, base + place * LINE_MM, line, colour=colour)
    return y + len(lines) * LINE_MM + 1.4
