"""A small SVG builder: one picture, its own ids, text kept as text.

One viewBox unit is one millimetre on paper, so a figure printed at its own size is to scale.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

__all__ = [
    "BRASS",
    "FONT_STACK",
    "INK",
    "JADE",
    "OXBLOOD",
    "PAPER",
    "RULE",
    "SLATE",
    "TEXT_MM",
    "Picture",
    "element",
    "number",
]

INK = "#1f3a5f"
BRASS = "#8f6614"
JADE = "#2a7565"
OXBLOOD = "#8c2f39"
SLATE = "#5b6670"
PAPER = "#fbfaf6"
RULE = "#d9d5c8"

FONT_STACK = "Arial, 'Liberation Sans', 'Helvetica Neue', Helvetica, sans-serif"
"""Faces of one width, on every machine: a label's box can be known before it is drawn."""
TEXT_MM = 3.2
"""Size of the smallest text [mm]: 9 pt is 3.175 mm."""

_SERIAL = itertools.count(1)


def number(value: float) -> str:
    """A coordinate as short text, to a hundredth of a millimetre.

    Parameters
    ----------
    value : float
        Coordinate [mm].

    Returns
    -------
    str
        For example ``"12.3"``.

    Examples
    --------
    >>> number(12.30)
    '12.3'
    >>> number(-0.001)
    '0'
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def element(tag: str, *children: str, **attributes: str | float | None) -> str:
    """One SVG element as text; attribute values are escaped, children are taken as they are.

    Parameters
    ----------
    tag : str
        Element name.
    *children : str
        Finished elements, or text that was escaped already.
    **attributes : str, float or None
        Attributes; an underscore in a name becomes a hyphen, a trailing one is dropped, None is left out.

    Returns
    -------
    str
        The element.

    Examples
    --------
    >>> element("text", "bore", x=1.5, font_size=3.2)
    '<text x="1.5" font-size="3.2">bore</text>'
    """
    parts = [tag]
    for name, value in attributes.items():
        if value is not None:
            shown = value if isinstance(value, str) else number(value)
            parts.append(f"{name.rstrip('_').replace('_', '-')}={quoteattr(shown)}")
    opening = " ".join(parts)
    return f"<{opening}>{''.join(children)}</{tag}>" if children else f"<{opening}/>"


class Picture:
    """Collects the elements of one drawing and closes them into one ``<svg>`` text.

    Parameters
    ----------
    width_mm : float
        Width on paper [mm], above 0.
    name : str
        Short word the picture's ids begin with.
    """

    def __init__(self, width_mm: float, name: str = "pen") -> None:
        self.width_mm = width_mm
        self.prefix = f"{name}-{next(_SERIAL)}"
        self._body: list[str] = []

    def add(self, *elements: str) -> None:
        """Put finished elements on top of what is there.

        Parameters
        ----------
        *elements : str
            Elements from `element`.
        """
        self._body.extend(elements)

    def line(self, points: Iterable[tuple[float, float]], **attributes: str | float | None) -> None:
        """A plain polyline.

        Parameters
        ----------
        points : iterable of (float, float)
            Corners [mm].
        **attributes : str, float or None
            SVG attributes that differ from a thin slate line.
        """
        drawn: dict[str, str | float | None] = {"fill": "none", "stroke": SLATE, "stroke_width": 0.2}
        joined = " ".join(f"{number(x)},{number(y)}" for x, y in points)
        self.add(element("polyline", points=joined, **(drawn | attributes)))

    def text(
        self,
        x: float,
        y: float,
        words: str,
        *,
        size: float = TEXT_MM,
        anchor: str = "start",
        colour: str = INK,
        bold: bool = False,
        italic: bool = False,
    ) -> None:
        """One line of text, escaped, kept as text.

        Parameters
        ----------
        x, y : float
            Foot of the text [mm].
        words : str
            What it says; any characters.
        size : float
            Height of the type [mm].
        anchor : {"start", "middle", "end"}
            Which point of the line `x` is.
        colour : str
            Fill.
        bold, italic : bool
            Weight and slope.
        """
        self.add(
            element(
                "text",
                escape(_printable(words)) or " ",
                x=x,
                y=y,
                font_size=size if size != TEXT_MM else None,
                text_anchor=None if anchor == "start" else anchor,
                fill=colour,
                font_weight="700" if bold else None,
                font_style="italic" if italic else None,
            )
        )

    def finish(self, height_mm: float, title: str, alt: str) -> str:
        """Close the picture.

        Parameters
        ----------
        height_mm : float
            Height on paper [mm].
        title, alt : str
            The finding, and the finding with its numbers; read out in place of the picture.

        Returns
        -------
        str
            One ``<svg>`` element.
        """
        return element(
            "svg",
            element("title", escape(_printable(title)), id=f"{self.prefix}-title"),
            element("desc", escape(_printable(alt)), id=f"{self.prefix}-desc"),
            *self._body,
            xmlns="http://www.w3.org/2000/svg",
            width=f"{number(self.width_mm)}mm",
            height=f"{number(height_mm)}mm",
            viewBox=f"0 0 {number(self.width_mm)} {number(height_mm)}",
            role="img",
            aria_labelledby=f"{self.prefix}-title {self.prefix}-desc",
            font_family=FONT_STACK,
            font_size=TEXT_MM,
        )


def _printable(words: str) -> str:
    return "".join(character for character in words if character >= " " or character in "\t\n")
