"""Places labels beside a drawing so that none overlap and no two leaders cross.

Along one side the labels keep the order of the points they name. Leaders rise straight to a rail and fan out
from there in the same order, so they cannot cross; where one row is too narrow, labels move to rows farther
out by turns, and their leaders pass through gaps kept free in the nearer ones.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace

from pentools.errors import InputError
from pentools.figures.pen.lettering import LINE_MM, text_width_mm, wrap
from pentools.figures.pen.marks import TAG_MM, Mark
from pentools.systems.profiles import Point

__all__ = ["Label", "Placed", "place_row", "spread"]

_GAP = 1.6
_SLOT = 0.6
_FAN = 3.4
_MOST_ROWS = 5


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
    marks : tuple of Mark
        What is noted of it: their tags stand before the words.
    """

    key: str
    lines: tuple[str, ...]
    anchor: Point
    strong: bool = False
    marks: tuple[Mark, ...] = ()

    @property
    def tags_mm(self) -> float:
        """Width that the tags take before the words [mm]."""
        return TAG_MM * len(self.marks)

    def width_mm(self) -> float:
        """Width of the widest line, with the tags before it [mm]."""
        return self.tags_mm + max(text_width_mm(line, bold=self.strong) for line in self.lines)

    def height_mm(self) -> float:
        """Height of the lines, or of the tags where that is more [mm]."""
        return max(LINE_MM * len(self.lines), TAG_MM if self.marks else 0.0)

    def narrowed(self) -> Label:
        """The same label broken into as many lines as its words allow."""
        words = [word for line in self.lines for word in line.split(" ")]
        longest = max(text_width_mm(word, bold=self.strong) for word in words) + 0.2
        lines = [part for line in self.lines for part in wrap(line, longest, bold=self.strong)]
        return replace(self, lines=tuple(lines))


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

    Raises
    ------
    InputError
        When there are too many labels for the width, even in five rows.

    Notes
    -----
    Tries one row, then broken labels, then more rows. Distances grow away from the drawing.
    """
    ordered = _apart(sorted(labels, key=lambda label: label.anchor[0]), low, high)
    if not ordered:
        return [], 0.0
    broken = [label.narrowed() for label in ordered]
    for rows in range(1, _MOST_ROWS + 1):
        for chosen in (ordered, broken):
            if _fits(chosen, rows, high - low):
                return _rows(chosen, rows, low, high)
    names = ", ".join(label.key for label in labels)
    raise InputError("labels", f"few enough for {high - low:g} mm", names, "Name fewer parts, or draw wider.")


def _apart(labels: list[Label], low: float, high: float) -> list[Label]:
    xs = spread([label.anchor[0] for label in labels], [0.9] * len(labels), low, high, 0.2)
    return [replace(label, anchor=(x, label.anchor[1])) for label, x in zip(labels, xs, strict=True)]


def _widths(rest: Sequence[tuple[int, Label]], row: int, rows: int) -> list[float]:
    return [label.width_mm() if index % rows == row else _SLOT for index, label in rest]


def _fits(labels: Sequence[Label], rows: int, room: float) -> bool:
    for row in range(rows):
        rest = [(index, label) for index, label in enumerate(labels) if index % rows >= row]
        widths = _widths(rest, row, rows)
        if sum(widths) + _GAP * (len(widths) - 1) > room:
            return False
    return True


def _rows(labels: Sequence[Label], rows: int, left: float, right: float) -> tuple[list[Placed], float]:
    """Rows outwards; a label of a farther row keeps a slot for its leader in every nearer one."""
    placed: list[Placed] = []
    leaders: dict[int, list[Point]] = {index: [(label.anchor[0], 0.0)] for index, label in enumerate(labels)}
    shelf = 0.0
    for row in range(rows):
        rest = [(index, label) for index, label in enumerate(labels) if index % rows >= row]
        middles = spread([leaders[index][-1][0] for index, _ in rest], _widths(rest, row, rows), left, right)
        top = shelf + (_FAN if row == 0 else 2.8)
        high = max((label.height_mm() for index, label in rest if index % rows == row), default=0.0)
        shelf = top + high + 0.4
        for (index, label), middle in zip(rest, middles, strict=True):
            leaders[index].append((middle, top - 0.4))
            if index % rows == row:
                bottom = top + label.height_mm()
                placed.append(Placed(label, middle, top, bottom, tuple(leaders[index])))
            else:
                leaders[index].append((middle, shelf))
    return placed, shelf - 0.4
