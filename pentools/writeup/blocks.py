"""What a section of a page is made of: plain blocks of text, tables and figures, with no HTML in them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from pentools.calc.base.findings import Finding

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing

__all__ = [
    "Audience",
    "Block",
    "Details",
    "Facts",
    "FigureBlock",
    "Findings",
    "Lead",
    "Notice",
    "Paragraph",
    "Photo",
    "Photos",
    "Quote",
    "Section",
    "Table",
]

Audience = Literal["owner", "everybody"]


@dataclass(frozen=True, slots=True)
class Lead:
    """The sentence that carries the result; the largest text of its section."""

    text: str


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Plain text; an empty line in it begins a new paragraph."""

    text: str


@dataclass(frozen=True, slots=True)
class Quote:
    """Someone's own words, with who said them."""

    text: str
    by: str = ""


@dataclass(frozen=True, slots=True)
class Notice:
    """Something the reader must not overlook, such as a hold that was released; ``word`` says what sort it is."""

    text: str
    word: str = "Note"


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its caption, heading and rows; ``numeric`` names the columns set with tabular figures."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numeric: tuple[int, ...] = ()
    source_note: str = ""


@dataclass(frozen=True, slots=True)
class Facts:
    """What is known of one thing: a label and a value a row."""

    caption: str
    rows: tuple[tuple[str, str], ...]
    source_note: str = ""


@dataclass(frozen=True, slots=True)
class FigureBlock:
    """A drawing or chart with its caption."""

    drawing: Drawing
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture from the job's photos folder, by file name; one of a pair names the file beside it and its own place.

    The place is "before" or "after"; "halves" is one picture, half of each. ``words`` are the restorer's own caption.
    """

    file: str
    alt: str
    caption: str = ""
    drawn: bool = False
    beside: str = ""
    place: str = ""
    words: str = ""

    @property
    def said(self) -> str:
        """What stands under it where its moment and view are not told: the restorer's caption, else what it shows."""
        return self.words or self.alt


@dataclass(frozen=True, slots=True)
class Photos:
    """Pictures side by side, such as before and after."""

    photos: tuple[Photo, ...]


@dataclass(frozen=True, slots=True)
class Findings:
    """Findings as a list, each with its level in words."""

    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Details:
    """Blocks that may be folded on the screen and stand open in print."""

    title: str
    blocks: tuple[Block, ...]


Block = Lead | Paragraph | Quote | Notice | Table | Facts | FigureBlock | Photos | Findings | Details


@dataclass(frozen=True, slots=True)
class Section:
    """One section of a page: a heading and its blocks; an empty one is left out."""

    key: str
    title: str
    blocks: tuple[Block, ...] = ()
