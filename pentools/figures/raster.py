"""Drawings as pixels, for places that take no SVG."""

from __future__ import annotations

import re
from pathlib import Path

from pentools.errors import InputError

__all__ = ["PX_PER_MM", "png_of"]

PX_PER_MM = 96 / 25.4
"""A CSS pixel is 1/96 of an inch (CSS Values and Units, level 4)."""
_FETCHED = re.compile(
    r"""\b(?:xlink:)?href\s*=\s*["']\s*(?!#|data:)|@import|<!ENTITY|url\(\s*["']?\s*(?!#|data:)""", re.IGNORECASE
)
_PAPER = "#ffffff"


def png_of(svg: str, width_px: int) -> bytes:
    """A drawing as a PNG on white, with nothing in the file but pixels.

    Parameters
    ----------
    svg : str
        One ``<svg>`` element that fetches nothing.
    width_px : int
        Width [px], 1 to 8000; the height follows.

    Returns
    -------
    bytes
        The file. Letters are set with the machine's own faces; where it has none of those named, with the one that
        comes with matplotlib, so that none is lost.

    Raises
    ------
    InputError
        If the drawing refers to another file, or cannot be read.
    """
    import matplotlib as mpl
    import resvg_py

    if not 1 <= width_px <= 8000:
        raise InputError("width", "1 to 8000 px", width_px)
    if _FETCHED.search(svg):
        raise InputError("drawing", "an SVG that refers to no other file", "one that does", "Take the reference out.")
    faces = Path(mpl.get_data_path()) / "fonts" / "ttf"
    try:
        return bytes(
            resvg_py.svg_to_bytes(
                svg_string=svg,
                width=width_px,
                dpi=96,
                background=_PAPER,
                font_family="DejaVu Sans",
                sans_serif_family="DejaVu Sans",
                font_files=[
                    str(faces / f"DejaVuSans{style}.ttf") for style in ("", "-Bold", "-Oblique", "-BoldOblique")
                ],
            )
        )
    except ValueError as error:
        raise InputError(
            "drawing", "an SVG that can be read", f"one that cannot ({error})", "Draw it again."
        ) from error
