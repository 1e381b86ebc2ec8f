"""A page of strokes drawn by the kit itself, so that the lines sum can be tried without a scanner; it says that it is drawn."""

from __future__ import annotations

import functools

import numpy as np

from pentools.calc.nib.arrays import Floats

__all__ = ["DRAWN_DPI", "SAMPLE", "drawn_page", "drawn_ruler"]

SAMPLE = "sample"
"""What is typed instead of a file's name."""
DRAWN_DPI = 600
_FINER = 4
_WIDE_MM, _HIGH_MM = 70.0, 45.0
_PAPER, _INK = 0.82, 0.04  # share of light
_BLUR_UM, _GRAIN = 32.0, 0.006


@functools.cache
def drawn_page() -> Floats:
    """Greys of 8 bits with the usual curve: three light strokes, two pressed ones, one with two skips, an eight.

    Returns
    -------
    array of uint8
        70 by 45 mm at 600 dots an inch. Light strokes are 0.42 mm, pressed ones swell from 0.42 to 0.95 mm, the skips
        are 0.4 and 0.9 mm.
    """
    import cv2

    per_mm = DRAWN_DPI * _FINER / 25.4
    ink = np.zeros((round(_HIGH_MM * per_mm), round(_WIDE_MM * per_mm)), np.uint8)
    for x, y, width in _strokes():
        way = np.gradient(np.stack([x, y], axis=1), axis=0)
        way /= np.linalg.norm(way, axis=1, keepdims=True)
        aside = (
            np.stack([-way[:, 1], way[:, 0]], axis=1) * (width[:, None] - 1 / per_mm) / 2
        )  # what is filled reaches half an element over its corners
        middle = np.stack([x, y], axis=1)
        for i in range(len(x) - 1):  # piece by piece, so that a stroke may cross itself
            corners = [
                middle[i] + aside[i],
                middle[i + 1] + aside[i + 1],
                middle[i + 1] - aside[i + 1],
                middle[i] - aside[i],
            ]
            cv2.fillConvexPoly(ink, np.round((np.array(corners) * per_mm - 0.5) * 16).astype(np.int32), 255, shift=4)
    size = (ink.shape[1] // _FINER, ink.shape[0] // _FINER)
    return _codes(cv2.resize(ink.astype(np.float32) / 255, size, interpolation=cv2.INTER_AREA))


@functools.cache
def drawn_ruler() -> Floats:
    """Greys of 8 bits with the usual curve: a ruler of 60 mm, its strokes longer at every five and ten.

    Returns
    -------
    array of uint8
        76 by 16 mm at 600 dots an inch.
    """
    import cv2

    per_mm = DRAWN_DPI * _FINER / 25.4
    ink = np.zeros((round(16 * per_mm), round(76 * per_mm)), np.float32)
    for k in range(61):
        long = 6.0 if k % 10 == 0 else 4.5 if k % 5 == 0 else 3.0
        ink[round(4 * per_mm) : round((4 + long) * per_mm), round((7.9 + k) * per_mm) : round((8.1 + k) * per_mm)] = 1.0
    size = (ink.shape[1] // _FINER, ink.shape[0] // _FINER)
    whole = ink[: size[1] * _FINER, : size[0] * _FINER]
    return _codes(cv2.resize(whole, size, interpolation=cv2.INTER_AREA))


def _codes(share: Floats) -> Floats:
    """Ink on paper, 0 to 1, as a scanner would write it: blurred, and with the paper's grain."""
    import cv2

    share = cv2.GaussianBlur(share, (0, 0), _BLUR_UM / (25400 / DRAWN_DPI))
    light = _PAPER - (_PAPER - _INK) * share
    light = light * (1 + np.random.default_rng(1936).normal(0, _GRAIN, light.shape))
    code: Floats = np.where(light <= 0.0031308, 12.92 * light, 1.055 * np.maximum(light, 1e-9) ** (1 / 2.4) - 0.055)
    page: Floats = np.round(255 * np.clip(code, 0, 1)).astype(np.uint8)
    return page


def _strokes() -> list[tuple[Floats, Floats, Floats]]:
    """Column, row and width of each stroke [mm]."""
    x = np.linspace(5.0, 65.0, 601)
    made: list[tuple[Floats, Floats, Floats]] = [(x, np.full_like(x, 5.0) + 0.01 * x, np.full_like(x, 0.42))]
    made.append((x, 10.0 + 0.8 * np.sin(x / 4), np.full_like(x, 0.42)))
    for start, end in ((5.0, 24.0), (24.4, 45.0), (45.9, 65.0)):
        part = np.linspace(start, end, 201)
        made.append((part, 15.5 + 0.01 * part, np.full_like(part, 0.42)))
    for row in (20.0, 25.0):
        made.append((x, np.full_like(x, row) - 0.012 * x, 0.42 + 0.53 * (0.5 - 0.5 * np.cos(2 * np.pi * (x - 5) / 30))))
    turn = np.linspace(0.0, 2 * np.pi, 721)
    made.append((20 + 11 * np.sin(turn), 35.5 + 9 * np.sin(turn) * np.cos(turn), np.full_like(turn, 0.42)))
    made.append((52 + 6 * np.cos(turn), 36 + 6 * np.sin(turn), np.full_like(turn, 0.42)))
    return made
