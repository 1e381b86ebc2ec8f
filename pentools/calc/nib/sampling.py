"""A page read between its elements."""

from __future__ import annotations

import numpy as np

from pentools.calc.nib.arrays import Floats

__all__ = ["read_at"]

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
