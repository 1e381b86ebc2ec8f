"""Drawings as pixels, for places that take no SVG."""

from __future__ import annotations

import re
from pathlib import Path

from pentools.errors import InputError

__all__ = ["PX_PER_MM", "png_of"]

PX_PER_MM = 96 / 25.4
"""A CSS pixel is 1/96 of an inch (CSS Values and Units, level 4)."""
_OUTSIDE = re.compile(r"""@import|url\(\s*["']?\s*(?!#|data:)""", re.IGNORECASE)
_TOLD = ("aria-label", "title", "alt")
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
    if _refers_outside(svg):
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


def _refers_outside(svg: str) -> bool:
    """Whether a drawing would fetch something; what its words say is no reference, whatever they look like."""
    from xml.etree import ElementTree as Xml

    if "<!ENTITY" in svg:
        return True
    try:
        root = Xml.fromstring(svg)  # noqa: S314 - the kit's own drawing, without entities
    except Xml.ParseError:
        return False  # it cannot be read, and that is said
    for element in root.iter():
        if element.tag.rpartition("}")[2] == "style" and _OUTSIDE.search(element.text or ""):
            return True
        for name, value in element.attrib.items():
            bare = name.rpartition("}")[2]
            if bare == "href" and not value.strip().startswith(("#", "data:")):
                return True
            if bare not in _TOLD and _OUTSIDE.search(value):
                return True
    return False
