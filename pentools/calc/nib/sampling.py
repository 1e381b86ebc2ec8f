"""A page read between its elements, and made small to be looked over."""

from __future__ import annotations

import numpy as np

from pentools.calc.nib.arrays import Bytes, Floats

__all__ = ["made_small", "read_at"]

_MOST_ROWS = 30000  # the interpolating library takes no more at a time
_WIDE = 1024


def read_at(light: Floats, x: Floats, y: Floats) -> Floats:
    """Brightness at places of a page, by straight interpolation; beyond its rim that of the rim.

    Parameters
    ----------
    light : array of uint16
        The page.
    x, y : array
        Columns and rows [px]; one number a place, or a table of places.

    Returns
    -------
    array of float32
        In the count of the page, of the shape of `x`.

    Examples
    --------
    >>> read_at(np.array([[0, 10], [20, 30]], np.uint16), np.array([0.5, 9.0]), np.array([0.0, 1.0])).tolist()
    [5.0, 30.0]
    """
    import cv2

    if x.ndim == 1:
        fill = -len(x) % _WIDE
        table = [np.pad(v, (0, fill), mode="edge").reshape(-1, _WIDE) for v in (x, y)] if len(x) else [x[None], y[None]]
        found: Floats = read_at(light, *table).ravel()[: len(x)]
        return found
    if not x.size:
        return np.zeros(x.shape, np.float32)
    xs, ys = x.astype(np.float32, copy=False), y.astype(np.float32, copy=False)
    parts = [
        cv2.remap(
            light, xs[i : i + _MOST_ROWS], ys[i : i + _MOST_ROWS], cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE
        )
        for i in range(0, len(xs), _MOST_ROWS)
    ]
    return np.concatenate(parts).astype(np.float32)


def made_small(grey: Bytes, longest_px: int) -> tuple[Bytes, int]:
    """A page with several elements taken together, and how many of them along a side [1].

    Parameters
    ----------
    grey : array of uint8
        The page.
    longest_px : int
        What its longer side comes to at most [px], 1 or more.
    """
    import cv2

    factor = max(1, int(np.ceil(max(grey.shape) / longest_px)))
    size = (grey.shape[1] // factor, grey.shape[0] // factor)
    small: Bytes = cv2.resize(grey[: size[1] * factor, : size[0] * factor], size, interpolation=cv2.INTER_AREA)
    return small, factor
