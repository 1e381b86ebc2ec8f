"""Numbered tags for a condition survey: a tag before the part's name, and its words in a list under the picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pentools.errors import InputError
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.svg import BRASS, INK, JADE, OXBLOOD, PAPER, Picture, element, number
from pentools.systems.parts import part_name

__all__ = ["TAG_MM", "Mark", "draw_mark_list", "draw_tag", "mark_of"]

_TAG = 2.5
TAG_MM = 2.5 * _TAG + 0.4
"""Room that one tag takes, the widest form with its line [mm]."""
_GRAVE = (
    "3",
    "4",
    "severe",
    "serious",
    "lost",
    "grave",
    "bad",
    "major",
    "stop",
    "critical",
    "unusable",
    "missing",
    "broken",
)
_MILD = ("0", "1", "none", "ok", "good", "sound", "slight", "light", "minor", "note", "cosmetic", "fine")


@dataclass(frozen=True, slots=True)
class Mark:
    """One thing noted at one part.

    Parameters
    ----------
    number : int
        Number on its tag.
    part : str
        Part key.
    text : str
        What was found.
    severity : str
        How grave, in the survey's own word.
    """

    number: int
    part: str
    text: str
    severity: str

    @property
    def form(self) -> tuple[str, str]:
        """Shape and colour of the tag: square for grave, circle for mild, diamond for what lies between."""
        word = self.severity.strip().casefold()
        if word.startswith(_GRAVE):
            return "square", OXBLOOD
        return ("circle", JADE) if word.startswith(_MILD) else ("diamond", BRASS)


def mark_of(number_: int, part: str, text: str, severity: str) -> Mark:
    """A mark, checked.

    Parameters
    ----------
    number_ : int
        Its number, from 1.
    part : str
        Part key.
    text, severity : str
        What was found and how grave; the text must not be blank.

    Returns
    -------
    Mark
        The mark.

    Raises
    ------
    InputError
        When the part is unknown or the text blank.
    """
    part_name(part)
    if not text.strip():
        raise InputError(
            "what was found", "a few words", text, "Say what is wrong with the part, or leave the mark out."
        )
    return Mark(number_, part, text.strip(), severity.strip())


def draw_tag(picture: Picture, x: float, y: float, mark: Mark) -> None:
    """One tag: its shape and colour say how grave.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    x, y : float
        Its middle [mm].
    mark : Mark
        Whose number it bears.
    """
    form, colour = mark.form
    r = _TAG
    if form == "circle":
        outline = element("circle", cx=x, cy=y, r=r, fill=PAPER, stroke=colour, stroke_width=0.45)
    else:
        corners = (
            [(-r, -r), (r, -r), (r, r), (-r, r)]
            if form == "square"
            else [(0, -1.25 * r), (1.25 * r, 0), (0, 1.25 * r), (-1.25 * r, 0)]
        )
        points = " ".join(f"{number(x + dx)},{number(y + dy)}" for dx, dy in corners)
        outline = element("polygon", points=points, fill=PAPER, stroke=colour, stroke_width=0.45)
    picture.add(outline)
    picture.text(x, y + 1.15, str(mark.number), anchor="middle", colour=INK, bold=True)


def draw_mark_list(picture: Picture, marks: Sequence[Mark], y: float) -> float:
    """The words of the marks, numbered, under the picture.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    marks : sequence of Mark
        Some marks.
    y : float
        Where the list begins [mm].

    Returns
    -------
    float
        Where it ends [mm].
    """
    left = 1.0 + _TAG
    for mark in marks:
        words = f"{part_name(mark.part)}: {mark.text}" + (
            f" ({mark.severity.replace(' ', chr(160))})" if mark.severity else ""
        )
        lines = wrap(words, picture.width_mm - left - 7.8)
        draw_tag(picture, left + 1.5, y + 2.9, mark)
        for index, line in enumerate(lines):
            picture.text(left + 6.3, y + 4.0 + index * LINE_MM, line)
        y += max(LINE_MM * len(lines) + 0.9, TAG_MM)
    return y
