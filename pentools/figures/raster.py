"""Drawings as pixels, for places that take no SVG."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from pentools.errors import InputError

__all__ = ["LONGEST_S", "PX_PER_MM", "png_of"]

LONGEST_S = 20.0  # judged: a plot of ten thousand points takes one

PX_PER_MM = 96 / 25.4
"""A CSS pixel is 1/96 of an inch (CSS Values and Units, level 4)."""
_OUTSIDE = re.compile(r"""@import|url\(\s*["']?\s*(?!#|data:)""", re.IGNORECASE)
_TOLD = ("aria-label", "title", "alt")
_PAPER = "#ffffff"
_APART = """
import json, sys, resvg_py
try:
    import resource
    resource.setrlimit(resource.RLIMIT_AS, (2 << 30, 2 << 30))
except (ImportError, OSError, ValueError):
    pass  # a system without such limits
sys.stdout.buffer.write(bytes(resvg_py.svg_to_bytes(**json.load(sys.stdin))))
"""


def png_of(svg: str, width_px: int, *, foreign: bool = False) -> bytes:
    """A drawing as a PNG on white, with nothing in the file but pixels.

    Parameters
    ----------
    svg : str
        One ``<svg>`` element that fetches nothing.
    width_px : int
        Width [px], 1 to 8000; the height follows.
    foreign : bool
        Whether somebody else drew it: then it is drawn in a process of its own, since a drawing can be made so that it
        takes all memory or never comes to its end.

    Returns
    -------
    bytes
        The file. Letters are set with the machine's own faces; where it has none of those named, with the one that
        comes with matplotlib, so that none is lost.

    Raises
    ------
    InputError
        If the drawing refers to another file, or cannot be read; a foreign one also if it cannot be drawn in
        `LONGEST_S` seconds.
    """
    if not 1 <= width_px <= 8000:
        raise InputError("width", "1 to 8000 px", width_px)
    if _refers_outside(svg):
        raise InputError("drawing", "an SVG that refers to no other file", "one that does", "Take the reference out.")
    asked = _asked(svg, width_px)
    if foreign:
        return _drawn_apart(asked)
    import resvg_py

    try:
        return bytes(resvg_py.svg_to_bytes(**asked))
    except ValueError as error:
        raise InputError(
            "drawing", "an SVG that can be read", f"one that cannot ({error})", "Draw it again."
        ) from error


def _asked(svg: str, width_px: int) -> dict[str, Any]:
    import matplotlib as mpl

    faces = Path(mpl.get_data_path()) / "fonts" / "ttf"
    return {
        "svg_string": svg,
        "width": width_px,
        "dpi": 96,
        "background": _PAPER,
        "font_family": "DejaVu Sans",
        "sans_serif_family": "DejaVu Sans",
        "font_files": [str(faces / f"DejaVuSans{style}.ttf") for style in ("", "-Bold", "-Oblique", "-BoldOblique")],
    }


def _drawn_apart(asked: Mapping[str, Any]) -> bytes:
    """The same in a process of its own, which may come to grief."""
    import subprocess
    import sys

    try:
        done = subprocess.run(  # noqa: S603 - this very Python, and no word of the drawing on its command line
            [sys.executable, "-c", _APART],
            input=json.dumps(asked).encode(),
            capture_output=True,
            timeout=LONGEST_S,
            check=True,
        )
    except (OSError, subprocess.SubprocessError) as error:
        raise InputError(
            "drawing",
            f"an SVG that can be drawn within {LONGEST_S:.0f} s",
            "one that cannot",
            "Draw it again, plainer or smaller.",
        ) from error
    return done.stdout


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
