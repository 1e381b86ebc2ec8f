"""Whether a page is of print: many short marks of one height, standing in even rows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats

__all__ = ["Marks", "look_for_print"]

_FEWEST = 40
_HIGHEST_MM, _WIDEST_MM = 6.0, 7.0
_LOWEST_MM = 0.5
_EVEN_MM = 0.09  # feet of printed letters stand so even; a hand's do not
_ROW_SHARE = 0.55
_MARKS_SHARE = 0.3  # of all ink


@dataclass(frozen=True, slots=True)
class Marks:
    """The short marks of a page.

    Parameters
    ----------
    count : int
        How many [1].
    printed : bool
        Whether most of them stand in even rows.
    """

    count: int
    printed: bool


def look_for_print(mask: Flags, um_per_px: float) -> Marks:
    """Count the short marks of a page and look how they stand.

    Parameters
    ----------
    mask : array of bool
        Where ink is.
    um_per_px : float
        Size of an element [µm], above 0.

    Returns
    -------
    Marks
        Printed where most marks share their foot, to a tenth of a millimetre, with five others in a row.
    """
    import cv2

    _, _, stats, _ = cv2.connectedComponentsWithStats(mask.astype(np.uint8), connectivity=8)
    left, top, wide, high, area = (stats[1:, i].astype(np.float64) for i in range(5))
    mm = um_per_px / 1000
    marks = (high * mm < _HIGHEST_MM) & (wide * mm < _WIDEST_MM) & (high * mm > _LOWEST_MM) & (wide < 4 * high)
    if marks.sum() < _FEWEST or area[marks].sum() < _MARKS_SHARE * max(float(area.sum()), 1.0):
        return Marks(int(marks.sum()), False)
    feet, places = (top + high)[marks] * mm, left[marks] * mm
    level = _in_rows(feet, places)
    return Marks(int(marks.sum()), level > _ROW_SHARE)


def _in_rows(feet: Floats, places: Floats) -> float:
    """Share of marks that have five others on the same level within 60 mm, on a page that may lie a little askew."""
    best = 0.0
    for lean in np.linspace(-0.035, 0.035, 29):
        level = np.sort(feet - lean * places)
        after = np.searchsorted(level, level + _EVEN_MM, "right") - np.searchsorted(level, level - _EVEN_MM, "left")
        best = max(best, float(np.mean(after >= 6)))
    return best
