"""Whether a page is of print: many short marks of one height, standing in even rows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats
from pentools.calc.nib.bar import FIELD_MM, FIELD_SHAPE

__all__ = ["Marks", "look_for_print"]

_FEWEST = 40
_HIGHEST_MM, _WIDEST_MM = 6.0, 7.0
_LOWEST_MM = 0.5
_EVEN_MM = 0.09  # feet of printed letters stand so even; a hand's do not
_ROW_SHARE = 0.55
_ROW_MM = 30.0  # and this far to either side
_MARKS_SHARE = 0.3  # of all ink
_TALLEST_MM = 7.5  # a letter that rises over the others of its row
# highest letters, longest words run together, and how far off a comma stands
_LETTER_MM, _WORD_MM, _BESIDE_MM = 4.6, 12.0, 2.0


@dataclass(frozen=True, slots=True)
class Marks:
    """The short marks of a page.

    Parameters
    ----------
    count : int
        How many [1].
    printed : bool
        Whether most of them stand in even rows, and they are much of the page's ink.
    left_out : int
        How many stand in rows of print, and are no strokes [1].
    """

    count: int
    printed: bool
    left_out: int


@dataclass(frozen=True, slots=True)
class _Boxes:
    """Where things lie [mm]."""

    left: Floats
    right: Floats
    top: Floats
    foot: Floats


def look_for_print(mask: Flags, um_per_px: float) -> tuple[Marks, Flags]:
    """Count the short marks of a page and look how they stand.

    Parameters
    ----------
    mask : array of bool
        Where ink is.
    um_per_px : float
        Size of an element [µm], above 0.

    Returns
    -------
    marks : Marks
        Printed where most marks share their foot, to a tenth of a millimetre, with five others in a row.
    printed : array of bool
        Where print stands: letters of one row, and what hangs between them.
    """
    import cv2

    labels, stats = cv2.connectedComponentsWithStats(mask.astype(np.uint8), connectivity=8)[1:3]
    left, top, wide, high, area = (stats[1:, i].astype(np.float64) for i in range(5))
    mm = um_per_px / 1000
    boxes = _Boxes(left * mm, (left + wide) * mm, top * mm, (top + high) * mm)
    marks = (high * mm < _HIGHEST_MM) & (wide * mm < _WIDEST_MM) & (high * mm > _LOWEST_MM) & (wide < 4 * high)
    out = _fields(boxes, area * mm**2)
    share, much = 0.0, False
    if marks.sum() >= _FEWEST:
        share, rows = _in_rows(boxes, marks)
        much = bool(area[marks].sum() >= _MARKS_SHARE * max(float(area.sum()), 1.0))
        out |= _letters(boxes, rows)
    if not out.any():
        return Marks(int(marks.sum()), much and share > _ROW_SHARE, 0), np.zeros(mask.shape, np.bool_)
    printed = np.concatenate([[False], out])[labels]
    return Marks(int(marks.sum()), much and share > _ROW_SHARE, int(out.sum())), printed


def _in_rows(boxes: _Boxes, marks: Flags) -> tuple[float, Flags]:
    """Share of marks that have five others on the same level, on a page that may lie a little askew; and which."""
    best, sharpest, which = 0.0, -1.0, np.zeros(len(marks), np.bool_)
    feet, places = boxes.foot[marks], boxes.left[marks]
    for lean in np.linspace(-0.035, 0.035, 29):
        level = feet - lean * places
        order = np.sort(level)
        beside = np.searchsorted(order, level + _EVEN_MM, "right") - np.searchsorted(order, level - _EVEN_MM, "left")
        best = max(best, float(np.mean(beside >= 6)))
        if float(np.mean(beside)) > sharpest:  # rows are sharpest where the lean is right
            sharpest, straight, many = float(np.mean(beside)), level, beside >= 6
    which[np.nonzero(marks)[0]] = many & _mostly_level(boxes, marks, straight)
    return best, which


def _mostly_level(boxes: _Boxes, marks: Flags, level: Floats) -> Flags:
    """Marks of whose row most stand on their level: of a hand's letters a few do by chance."""
    tall, left = (boxes.foot - boxes.top)[marks], boxes.left[marks]
    over = level[None, :] - level[:, None]  # how much lower each other one stands
    beside = (np.abs(left[:, None] - left[None, :]) < _ROW_MM) & (over > -0.4) & (over - tall[None, :] < -0.4)
    even = beside & (np.abs(over) < _EVEN_MM)
    return even.sum(axis=1) > _ROW_SHARE * beside.sum(axis=1)


def _letters(boxes: _Boxes, rows: Flags) -> Flags:
    """What stands in a row of print or hangs between its letters."""
    tall = boxes.foot - boxes.top
    letters = rows & (tall < _LETTER_MM)
    near = (tall < _TALLEST_MM) & (boxes.right - boxes.left < _WORD_MM) & ~letters
    for at in np.nonzero(near)[0]:
        beside = (boxes.left[letters] < boxes.right[at] + _BESIDE_MM) & (
            boxes.right[letters] > boxes.left[at] - _BESIDE_MM
        )
        level = (boxes.top[letters] < boxes.foot[at]) & (boxes.foot[letters] > boxes.top[at])
        near[at] = bool((beside & level).any())
    return letters | near


def _fields(boxes: _Boxes, area: Floats) -> Flags:
    """The dark fields of the sheet's own bar: three and more of one size in a row, two fields from one to the next."""
    long, high = FIELD_MM, FIELD_MM / FIELD_SHAPE
    wide, tall = boxes.right - boxes.left, boxes.foot - boxes.top
    found = np.zeros(len(area), np.bool_)
    for along, across, start, level in (
        (wide, tall, boxes.left, boxes.top),
        (tall, wide, boxes.top, boxes.left),
    ):
        alike = (np.abs(area / (long * high) - 1) < 0.12) & (np.abs(along - long) < 0.6) & (across < 1.4 * high)
        ways = [start[alike][:, None] - start[alike][None, :], level[alike][:, None] - level[alike][None, :]]
        beside = (np.abs(np.abs(ways[0]) - 2 * long) < 0.06 * long) & (np.abs(ways[1]) < 0.04 * 2 * long)
        row = np.nonzero(alike)[0]
        found[row[beside.any(axis=1)]] |= bool((beside.sum(axis=1) > 1).any())
    return found
