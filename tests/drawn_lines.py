"""Straight and round lines in exact light: coverage by the error function, so that edges lie where they are said to."""

import math

import numpy as np

from pentools.calc.nib.chains import Chains
from pentools.calc.nib.strokes import Doubt, stroke_of

UM = 25400 / 600
_erf = np.vectorize(math.erf)


def page(rows=240, columns=600, paper=0.8):
    return np.full((rows, columns), paper)


def bar(light, row, width_um, *, blur_um=35.0, ink=0.04, start=40.0, end=None, um=UM):
    """A level line of a width [µm] at a row [px], dark between two columns."""
    s = math.sqrt(2) * blur_um / um
    half = width_um / um / 2
    y, x = np.arange(light.shape[0]), np.arange(light.shape[1])
    end = light.shape[1] - 40.0 if end is None else end
    finer = (np.arange(8) - 3.5) / 8  # an element takes in the light of its whole height
    down = np.mean([0.5 * (_erf((y + f - row + half) / s) - _erf((y + f - row - half) / s)) for f in finer], axis=0)
    across = 0.5 * (_erf((x - start) / s) - _erf((x - end) / s))
    cover = down[:, None] * across[None, :]
    return light * (1 - cover) + ink * cover


def whole(light):
    """As `trace` wants it."""
    return np.round(light * 65535).astype(np.uint16)


def cross():
    mask = np.zeros((120, 200), bool)
    mask[55:62, 20:180] = True
    mask[10:110, 95:102] = True
    return mask


def chains(points, half=5.0, closed=False):
    n = len(points)
    one = np.array([closed])
    return Chains(points, np.full(n, half), np.zeros(n, bool), np.array([0, n]), one, np.array([False]))


def level_line(row=120.0, start=40, end=560):
    x = np.arange(start, end, 2.0)
    return chains(np.stack([x, np.full_like(x, row)], axis=1))


DOUBT = Doubt(0.003, 42.3)


def stroke(widths, blur=40.0, doubt=DOUBT, **more):
    n = len(widths)
    track = np.column_stack([np.arange(n), np.zeros(n), np.arange(n) * 0.06, widths])
    given = {"length_mm": n * 0.06, "closed": False, "gaps": ((), 0)} | more
    return stroke_of(track, 60.0, blur, (0.95, 0.0), doubt, **given)


def rounded(shape, middle, size_mm, degrees, *, px_mm, radius_mm=3.18):
    """Coverage of a rectangle with round corners, by the distance from its edge."""
    y, x = np.indices(shape, float)
    a = math.radians(degrees)
    x, y = x / px_mm - middle[0], y / px_mm - middle[1]
    u, v = np.abs(x * math.cos(a) + y * math.sin(a)), np.abs(-x * math.sin(a) + y * math.cos(a))
    p, q = u - size_mm[0] / 2 + radius_mm, v - size_mm[1] / 2 + radius_mm
    off = np.hypot(np.maximum(p, 0), np.maximum(q, 0)) + np.minimum(np.maximum(p, q), 0) - radius_mm
    return np.clip(0.5 - off * px_mm, 0, 1)


def with_card(
    degrees=7.0, *, px_mm=6.0, size_mm=(85.60, 53.98), radius_mm=3.18, middle=(70, 60), page_mm=(140, 120), ink=0.2
):
    """Light of a page with a card, or something like one."""
    shape = (round(page_mm[1] * px_mm), round(page_mm[0] * px_mm))
    cover = rounded(shape, middle, size_mm, degrees, px_mm=px_mm, radius_mm=radius_mm)
    grain = np.random.default_rng(8).normal(0, 0.004, shape)
    return np.clip(0.8 * (1 - cover) + ink * cover + grain, 0, 1)


def codes(light):
    """Eight bits with the usual curve."""
    curve = np.where(light <= 0.0031308, 12.92 * light, 1.055 * np.maximum(light, 1e-9) ** (1 / 2.4) - 0.055)
    return np.round(255 * np.clip(curve, 0, 1)).astype(np.uint8)
