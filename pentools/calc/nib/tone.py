"""From the codes of a picture file to the share of light that the paper sends back."""

from __future__ import annotations

from typing import Literal, TypeAlias

import numpy as np

from pentools.calc.nib.arrays import Floats

__all__ = ["FULL", "Tone", "decoding", "light_of", "srgb_to_linear"]

Tone: TypeAlias = Literal["srgb", "linear"] | float
"""The curve that a file's codes were made with: that of IEC 61966-2-1, none, or a plain power (its exponent)."""

FULL = 65535
"""Paper that sends all light back, as a whole number [1]."""


def srgb_to_linear(share: Floats) -> Floats:
    """Undo the curve of IEC 61966-2-1.

    Parameters
    ----------
    share : array
        Code over the largest code [1], 0 to 1.

    Returns
    -------
    array
        Share of light [1], 0 to 1.

    Examples
    --------
    >>> srgb_to_linear(np.array([0.0, 0.5, 1.0])).round(4).tolist()
    [0.0, 0.214, 1.0]
    """
    return np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)


def decoding(tone: Tone, largest: int) -> Floats:
    """The share of light of every code there is.

    Parameters
    ----------
    tone : {"srgb", "linear"} or float
        The file's curve; a number is the power that codes are raised to [1], 0.2 to 5.
    largest : int
        The largest code [1]: 255 or 65535.

    Returns
    -------
    array
        Share of light [1] by code.
    """
    share = np.linspace(0.0, 1.0, largest + 1)
    if tone == "srgb":
        return srgb_to_linear(share)
    return share if tone == "linear" else share**tone


def light_of(codes: Floats, tone: Tone) -> Floats:
    """The light of a page, from its codes.

    Parameters
    ----------
    codes : array of uint8 or uint16
        Greys (rows, columns), or three colours (rows, columns, 3).
    tone : Tone
        The file's curve.

    Returns
    -------
    array of uint16
        Linear brightness, 0 to `FULL`; of colours the sum in which the ink stands out most.
    """
    if codes.ndim == 2:
        return _decoded(codes, tone)
    weights = _weights(codes, tone)
    light = np.zeros(codes.shape[:2], np.float32)
    for channel, weight in enumerate(weights):
        if weight > 0.01:
            one = _decoded(np.ascontiguousarray(codes[..., channel]), tone)
            light += np.float32(weight) * one
    return np.clip(light + 0.5, 0, FULL).astype(np.uint16)


def _decoded(codes: Floats, tone: Tone) -> Floats:
    import cv2

    largest = 255 if codes.dtype == np.uint8 else FULL
    table = np.round(decoding(tone, largest) * FULL).astype(np.uint16)
    found: Floats = cv2.LUT(codes, table) if largest == 255 else table[codes]
    return found


def _weights(codes: Floats, tone: Tone) -> tuple[float, ...]:
    """How much each colour says of ink: by its own contrast over a few elements, on a thinned page."""
    import cv2

    step = max(1, codes.shape[0] // 1200)
    contrast = []
    for channel in range(3):
        some = _decoded(np.ascontiguousarray(codes[::step, ::step, channel]), tone).astype(np.float32)
        contrast.append(float(np.mean((some - cv2.blur(some, (31, 31))) ** 2)))
    total = sum(contrast)
    return tuple(value / total for value in contrast) if total > 0 else (0.3, 0.4, 0.3)
