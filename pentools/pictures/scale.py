"""A scale bar on the outgoing copy of a picture in which a length is known."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import plain

if TYPE_CHECKING:
    from PIL.Image import Image

__all__ = ["LEAST_PX", "bar_mm", "mm_per_px", "with_bar"]

LEAST_PX = 20.0
"""A shorter length in a picture says too little of its scale: two ends set to a pixel each leave more than 5 %."""
_SHARE = 0.25  # of the picture's width that a bar takes at most


def mm_per_px(known_mm: float, known_px: float) -> float:
    """The scale of a picture in which a length is known.

    Parameters
    ----------
    known_mm : float
        The length [mm], above 0.
    known_px : float
        The same in the picture [px], at least `LEAST_PX`.

    Returns
    -------
    float
        Millimetres a pixel, true in the plane in which the length lies.

    Raises
    ------
    InputError
        If one of them cannot be.

    Examples
    --------
    >>> mm_per_px(20, 800)
    0.025
    """
    if not (math.isfinite(known_mm) and known_mm > 0):
        raise InputError("known length", "more than 0 mm", f"{known_mm:g}")
    if not (math.isfinite(known_px) and known_px >= LEAST_PX):
        raise InputError("known length in the picture", f"at least {plain(LEAST_PX)} px", f"{known_px:g}")
    return known_mm / known_px


def bar_mm(width_px: float, scale: float) -> float:
    """The length of a bar that suits a picture.

    Parameters
    ----------
    width_px : float
        Width of the picture [px], above 0.
    scale : float
        Millimetres a pixel, above 0.

    Returns
    -------
    float
        1, 2 or 5 times a power of ten [mm], the largest that takes at most a quarter of the width.

    Examples
    --------
    >>> bar_mm(1600, 0.08)
    20.0
    """
    most = _SHARE * width_px * scale
    power = 10.0 ** math.floor(math.log10(most))
    return max(step * power for step in (1.0, 2.0, 5.0) if step * power <= most * (1 + 1e-9))


def with_bar(picture: Image, scale: float) -> Image:
    """The picture with a scale bar at its lower left; the one handed in stays as it is.

    Parameters
    ----------
    picture : PIL.Image.Image
        In RGB.
    scale : float
        Millimetres a pixel of this very picture, above 0.

    Returns
    -------
    PIL.Image.Image
        A copy.
    """
    from PIL import ImageDraw, ImageFont

    made = picture.copy()
    length = bar_mm(picture.width, scale)
    long_px = length / scale
    em = max(9.0, min(picture.width, 2.2 * picture.height) / 48)
    left, low = 1.2 * em, picture.height - 1.3 * em
    words = f"{plain(length)} mm"
    draw = ImageDraw.Draw(made, "RGBA")
    font = ImageFont.load_default(em)
    ground = (
        left - 0.6 * em,
        low - 1.95 * em,
        left + max(long_px, draw.textlength(words, font)) + 0.6 * em,
        low + 0.7 * em,
    )
    draw.rectangle(ground, fill=(251, 250, 246, 225))
    thick = max(1, round(em / 9))
    ink = (31, 58, 95, 255)
    first, last = round(left), round(left + long_px) - 1  # the ends' outer edges are the length apart
    draw.rectangle((first, low, last, low + thick - 1), fill=ink)
    for x in (first, last - thick + 1):
        draw.rectangle((x, low - 0.35 * em, x + thick - 1, low + 0.35 * em + thick - 1), fill=ink)
    draw.text((left, low - 0.55 * em), words, fill=ink, font=font, anchor="ls")
    return made
