"""Places labels beside a drawing so that none overlap and no two leaders cross.

Along one side the labels keep the order of the points they name. Leaders rise straight to a rail and fan out
from there in the same order, so they cannot cross; where one row is too narrow, every other label moves to a
second row and its leader passes through a gap kept free in the first.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.figures.pen.lettering import text_width_mm, wrap
from pentools.figures.pen.profiles import Point

__all__ = ["LINE_MM", "Label", "Placed", "place_row", "spread"]

LINE_MM = 3.9
"""Distance between two lines of a label [mm]."""
_GAP = 1.6
_SLOT = 1.0


@dataclass(frozen=True, slots=True)
class Label:
    """Words that name a point of the drawing.

    Parameters
    ----------
    key : str
        What is named.
    lines : tuple of str
        The words, broken or not; a single line may be broken further when room is short.
    anchor : (float, float)
        The point [mm on paper].
    strong : bool
        Whether the words are set bold, in the colour of a highlight.
    """

    key: str
    lines: tuple[str, ...]
    anchor: Point
    strong: bool = False

    def width_mm(self) -> float:
        """Width of the widest line [mm]."""
        return max(text_width_mm(line, bold=self.strong) for line in self.lines)

    def narrowed(self) -> Label:
        """The same label broken into as many lines as its words allow."""
        words = [word for line in self.lines for word in line.split(" ")]
        longest = max(text_width_mm(word, bold=self.strong) for word in words) + 0.2
        lines = [part for line in self.lines for part in wrap(line, longest, bold=self.strong)]
        return Label(self.key, tuple(lines), self.anchor, self.strong)


@dataclass(frozen=True, slots=True)
class Placed:
    """A label with its place.

    Parameters
    ----------
    label : Label
        The words.
    middle : float
        Middle of the text [mm].
    top, bottom : float
        Upper and lower edge of its box, counted away from the drawing: row offset [mm].
    leader : tuple of (float, float)
        (x, distance from the rail) along the leader, from the rail outwards [mm].
    """

    label: Label
    middle: float
    top: float
    bottom: float
    leader: tuple[Point, ...]

    @property
    def left(self) -> float:
        """Left edge of the text [mm]."""
        return self.middle - 0.5 * self.label.width_mm()

    @property
    def right(self) -> float:
        """Right edge of the text [mm]."""
        return self.middle + 0.5 * self.label.width_mm()


def spread(wanted: Sequence[float], widths: Sequence[float], low: float, high: float, gap: float = _GAP) -> list[float]:
    """Middles as near as can be to where they are wanted, in order, without overlap.

    Parameters
    ----------
    wanted : sequence of float
        Middles wished for, ascending [mm].
    widths : sequence of float
        Widths [mm].
    low, high : float
        Edges of the row [mm].
    gap : float
        Least distance between two neighbours [mm].

    Returns
    -------
    list of float
        Middles [mm]; past `high` only where the row is too narrow for all.

    Notes
    -----
    Least squares under an order constraint, solved by pooling neighbours that would overlap.

    Examples
    --------
    >>> spread([5.0, 5.0], [4.0, 4.0], 0.0, 20.0, 1.0)
    [2.5, 7.5]
    """
    if not wanted:
        return []
    offsets = [0.5 * widths[0]]
    for left, right in itertools.pairwise(widths):
        offsets.append(offsets[-1] + 0.5 * (left + right) + gap)
    pools: list[list[float]] = []
    for want, offset in zip(wanted, offsets, strict=True):
        pools.append([want - offset, 1.0])
        while len(pools) > 1 and pools[-2][0] > pools[-1][0]:
            value, count = pools.pop()
            total = pools[-1][1] + count
            pools[-1] = [(pools[-1][0] * pools[-1][1] + value * count) / total, total]
    starts = [value for value, count in pools for _ in range(int(count))]
    limit = high - (offsets[-1] + 0.5 * widths[-1])
    return [max(min(start, limit), low) + offset for start, offset in zip(starts, offsets, strict=True)]


def place_row(labels: Sequence[Label], low: float, high: float) -> tuple[list[Placed], float]:
    """Place the labels of one side.

    Parameters
    ----------
    labels : sequence of Label
        In any order.
    low, high : float
        Left and right edge of the drawing [mm].

    Returns
    -------
    tuple of (list of Placed, float)
        The labels, and the height the side takes beyond its rail [mm].

    Notes
    -----
    Tries one row, then broken labels, then two rows. Distances grow away from the drawing.
    """
    ordered = _apart(sorted(labels, key=lambda label: label.anchor[0]), low, high)
    if not ordered:
        return [], 0.0
    room = high - low
    for chosen in (ordered, [label.narrowed() for label in ordered]):
        if sum(label.width_mm() + _GAP for label in chosen) - _GAP <= room:
            return _one_row(chosen, low, high)
    return _two_rows([label.narrowed() for label in ordered], low, high)


def _apart(labels: list[Label], low: float, high: float) -> list[Label]:
    xs = spread([label.anchor[0] for label in labels], [0.9] * len(labels), low, high, 0.2)
    return [
        Label(label.key, label.lines, (x, label.anchor[1]), label.strong) for label, x in zip(labels, xs, strict=True)
    ]


def _one_row(labels: list[Label], low: float, high: float) -> tuple[list[Placed], float]:
    middles = spread([label.anchor[0] for label in labels], [label.width_mm() for label in labels], low, high)
    fan = 3.4
    placed = []
    deepest = 0.0
    for label, middle in zip(labels, middles, strict=True):
        bottom = fan + LINE_MM * len(label.lines)
        deepest = max(deepest, bottom)
        placed.append(Placed(label, middle, fan, bottom, ((label.anchor[0], 0.0), (middle, fan - 0.4))))
    return placed, deepest


def _two_rows(labels: list[Label], low: float, high: float) -> tuple[list[Placed], float]:
    near = labels[0::2]
    widths = [label.width_mm() if i % 2 == 0 else _SLOT for i, label in enumerate(labels)]
    wanted = [label.anchor[0] for label in labels]
    first = spread(wanted, widths, low, high, 0.9)
    fan = 3.4
    shelf = fan + LINE_MM * max(len(label.lines) for label in near) + 0.6
    far = labels[1::2]
    slots = first[1::2]
    second = spread(slots, [label.width_mm() for label in far], low, high)
    placed = []
    for label, middle in zip(near, first[0::2], strict=True):
        line = ((label.anchor[0], 0.0), (middle, fan - 0.4))
        placed.append(Placed(label, middle, fan, fan + LINE_MM * len(label.lines), line))
    top = shelf + 2.6
    deepest = shelf
    for label, slot, middle in zip(far, slots, second, strict=True):
        bottom = top + LINE_MM * len(label.lines)
        deepest = max(deepest, bottom)
        line4 = ((label.anchor[0], 0.0), (slot, fan - 0.4), (slot, shelf), (middle, top - 0.4))
        placed.append(Placed(label, middle, top, bottom, line4))
    return placed, deepest
