"""The bare paper under the ink: its brightness over the page, what is ink on it, and which of the two is the darker."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats

__all__ = ["COARSE_UM", "Paper", "coarse_factor", "read_paper"]

COARSE_UM = 90.0
"""Strokes are traced on a page of elements of at most this size [µm]; judged: a line of 0.2 mm is two of them."""
_CELL_MM = 1.6
_OBJECT_MM = 9.0  # what is broader than this is no stroke but a thing lying on the page
_LEAST_CONTRAST = 0.06


@dataclass(frozen=True, slots=True)
class Paper:
    """A page made coarse for tracing, its paper known.

    Parameters
    ----------
    factor : int
        Picture elements of the page to one of the coarse page [1].
    ink : array
        Share of the paper's light that is missing [1], coarse page.
    mask : array of bool
        What is taken for ink, coarse page.
    level : array
        Brightness of bare paper [1], coarse page.
    typical_ink : float
        Share of light missing where there is ink [1]; 0 on a blank page.
    noise : float
        Scatter of bare paper [1], one standard deviation, coarse page.
    light_on_dark : bool
        True where the page was turned round: light lines on a dark ground.
    """

    factor: int
    ink: Floats
    mask: Flags
    level: Floats
    typical_ink: float
    noise: float
    light_on_dark: bool


def coarse_factor(um_per_px: float) -> int:
    """How many picture elements of the page make one of the coarse page.

    Parameters
    ----------
    um_per_px : float
        Size of a picture element [µm], above 0.

    Returns
    -------
    int
        1 or more [1].

    Examples
    --------
    >>> coarse_factor(42.33), coarse_factor(84.67), coarse_factor(21.17)
    (2, 1, 4)
    """
    return max(1, int(COARSE_UM / um_per_px + 0.02))


def read_paper(light: Floats, um_per_px: float, taken: Flags | None = None) -> Paper:
    """Find paper and ink.

    Parameters
    ----------
    light : array
        Linear brightness [1], 0 to 1, coarse page.
    um_per_px : float
        Size of a picture element of the coarse page [µm], above 0.
    taken : array of bool or None
        Where things lie that are no ink (a card), coarse page.

    Returns
    -------
    Paper
        With `factor` 1.
    """
    turned = _light_on_dark(light)
    page = 1.0 - light if turned else light
    cell = max(2, round(1000 * _CELL_MM / um_per_px))
    level = _paper_level(page, cell)
    ink = 1.0 - page / level
    if taken is not None:
        ink = np.where(taken, 0.0, ink)
    typical, noise = _contrast(ink)
    mask = ink > max(0.42 * typical, 4.0 * noise) if typical else np.zeros(ink.shape, np.bool_)
    return Paper(1, ink.astype(np.float32), mask, level, typical, noise, turned)


def _light_on_dark(light: Floats) -> bool:
    low, middle, high = np.percentile(light[::5, ::5], [0.3, 50, 99.7])
    return bool(high - middle > 2.0 * (middle - low) and middle < 0.5 * high)


def _paper_level(page: Floats, cell: int) -> Floats:
    """Brightness of bare paper: the bright part of each cell, dark things filled, then the mean of what is not ink."""
    import cv2

    rows, columns = page.shape
    high, wide = max(1, rows // cell), max(1, columns // cell)
    cut = page[: high * cell, : wide * cell].reshape(high, cell, wide, cell)
    bright = np.percentile(cut[:, ::2, :, ::2], 75, axis=(1, 3)).astype(np.float32)
    kernel = np.ones((_odd(_OBJECT_MM / _CELL_MM),) * 2, np.uint8)
    bright = cv2.morphologyEx(bright, cv2.MORPH_CLOSE, kernel, borderType=cv2.BORDER_REPLICATE)
    first = np.maximum(cv2.resize(bright, (columns, rows), interpolation=cv2.INTER_LINEAR), 1e-3)
    bare = (page > 0.8 * first).astype(np.float32)
    size = (wide, high)
    weight = cv2.GaussianBlur(cv2.resize(bare, size, interpolation=cv2.INTER_AREA), (0, 0), 1.2)
    total = cv2.GaussianBlur(cv2.resize(bare * page, size, interpolation=cv2.INTER_AREA), (0, 0), 1.2)
    small = np.where(weight > 0.02, total / np.maximum(weight, 1e-6), bright).astype(np.float32)
    level: Floats = np.maximum(cv2.resize(small, (columns, rows), interpolation=cv2.INTER_LINEAR), 1e-3)
    return level


def _odd(value: float) -> int:
    return 2 * int(value / 2) + 1


def _contrast(ink: Floats) -> tuple[float, float]:
    """How dark ink usually is and how much bare paper scatters; (0, scatter) where nothing stands out."""
    some = ink[::3, ::3].ravel()
    bare = some[np.abs(some) < 0.5]
    noise = 1.4826 * float(np.median(np.abs(bare - np.median(bare)))) if len(bare) else 1.0
    dark = some[some > max(_LEAST_CONTRAST, 5.0 * noise)]
    if len(dark) < 1e-5 * len(some) + 20:
        return 0.0, noise
    return float(np.percentile(dark, 80)), noise
