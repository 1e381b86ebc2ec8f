"""The notebook as chapters: the restorer's words, and which stages belong to them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from pentools.record.registry import STAGES
from pentools.writeup.notebook import PublishedCell, StageCell, StoryCell, cells_for
from pentools.writeup.story import heading_levels, read_text

if TYPE_CHECKING:
    from markdown_it.token import Token

    from pentools.writeup.blocks import Audience
    from pentools.writeup.photos import PhotoBook
    from pentools.writeup.story import StoryPicture, StoryText

__all__ = ["Chapter", "Outline", "Output", "StagePlace", "Words", "outline"]


@dataclass(frozen=True, slots=True)
class Words:
    """The restorer's text, as tokens with the pictures set into it."""

    tokens: tuple[Token, ...]

    @property
    def pictures(self) -> tuple[StoryPicture, ...]:
        """The pictures set into it."""
        return tuple(c.meta["picture"] for t in self.tokens for c in t.children or () if c.type == "image")


@dataclass(frozen=True, slots=True)
class StagePlace:
    """Where a stage was brought up."""

    key: str


@dataclass(frozen=True, slots=True)
class Output:
    """A stored output of a cell tagged for publishing, as the notebook keeps it."""

    output: Mapping[str, Any]


@dataclass(slots=True)
class Chapter:
    """A piece of the story with what belongs to it; one without words of the restorer's is told by its stage alone."""

    parts: list[Words | StagePlace | Output] = field(default_factory=list)

    @property
    def words(self) -> tuple[Words, ...]:
        """The restorer's words in it."""
        return tuple(part for part in self.parts if isinstance(part, Words))

    @property
    def stages(self) -> tuple[str, ...]:
        """The stages that belong to it."""
        return tuple(part.key for part in self.parts if isinstance(part, StagePlace))

    @property
    def pictures(self) -> tuple[StoryPicture, ...]:
        """The pictures that the restorer set into it."""
        return tuple(picture for part in self.words for picture in part.pictures)


@dataclass(frozen=True, slots=True)
class Outline:
    """The story in order.

    Parameters
    ----------
    title : tuple of Token
        The inside of the restorer's own title; empty where the story has none.
    chapters : tuple of Chapter
        In the notebook's order.
    left_out : tuple of str
        Pictures that could not be shown, with the reason.
    unknown : tuple of str
        Stages that the notebook asks for and this version does not know.
    """

    title: tuple[Token, ...]
    chapters: tuple[Chapter, ...]
    left_out: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()


def outline(notebook: Mapping[str, Any] | None, audience: Audience, photos: PhotoBook, *, top: int = 2) -> Outline:
    """The notebook's cells as chapters.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; without one, every stage is a chapter of its own.
    audience : {"owner", "everybody"}
        Whom it is for; private cells are the owner's.
    photos : PhotoBook
        Which pictures that audience may see.
    top : int
        Level of a chapter's heading, 2 to 5.

    Returns
    -------
    Outline
        A chapter begins with each of the restorer's highest headings. The stages of the first code cell after some
        words belong to them; a further code cell begins a chapter without words.
    """
    cells = list(cells_for(notebook, audience))
    if notebook is None:
        return Outline((), tuple(Chapter([StagePlace(key)]) for key in STAGES))
    made = _Outliner(photos, top, tuple(cell.text for cell in cells if isinstance(cell, StoryCell)))
    for cell in cells:
        made.take(cell)
    return Outline(made.title, tuple(c for c in made.chapters if c.parts), tuple(made.left_out), tuple(made.unknown))


class _Outliner:
    """Takes cell after cell."""

    def __init__(self, photos: PhotoBook, top: int, texts: tuple[str, ...]) -> None:
        levels = [level for text in texts for level in heading_levels(text)]
        self.photos, self.top = photos, top
        self.titled = levels.count(1) == 1 and texts[0].lstrip().startswith("# ")
        # one heading of the first rank is a title or stands among the chapters; several are the chapters
        self.lift = top - 2 + (1 if levels.count(1) > 1 else 0)
        self.level = top
        self.title: tuple[Token, ...] = ()
        self.chapters: list[Chapter] = [Chapter()]
        self.left_out: list[str] = []
        self.unknown: list[str] = []
        self.seen: set[str] = set()
        self.open = True  # whether a stage that comes now belongs to the last chapter

    def take(self, cell: StoryCell | StageCell | PublishedCell) -> None:
        """Put a cell where it belongs."""
        if isinstance(cell, StoryCell):
            self._take_words(cell)
        elif isinstance(cell, PublishedCell):
            self.chapters[-1].parts += [Output(output) for output in cell.outputs]
        elif cell.key not in STAGES:
            self.unknown.append(cell.key)
        elif cell.key not in self.seen:
            self.seen.add(cell.key)
            if not self.open and not cell.follows:
                self.chapters.append(Chapter())
                self.level = self.top
            self.chapters[-1].parts.append(StagePlace(cell.key))
            self.open = False

    def _take_words(self, cell: StoryCell) -> None:
        text = cell.text.strip()
        if self.titled and not self.title:
            first, _, text = text.partition("\n")
            self.title = tuple(self._read(first, cell).tokens[1].children or ())
            self.level = self.top - 1
        read = self._read(text, cell)
        self.left_out += read.left_out
        self.level = read.last_level or self.level
        for piece in _pieces(read.tokens, f"h{self.top}"):
            without_words = not self.chapters[-1].words and self.chapters[-1].stages
            if piece[0].type == "heading_open" or without_words:
                self.chapters.append(Chapter())
            self.chapters[-1].parts.append(Words(piece))
        self.open = True

    def _read(self, text: str, cell: StoryCell) -> StoryText:
        return read_text(
            text, self.photos, lift=self.lift, level_before=self.level, least=self.top, attachments=cell.attachments
        )


def _pieces(tokens: Iterable[Token], heading: str) -> Iterator[tuple[Token, ...]]:
    """The text cut before each of its highest headings."""
    piece: list[Token] = []
    for token in tokens:
        if token.type == "heading_open" and token.tag == heading and piece:
            yield tuple(piece)
            piece = []
        piece.append(token)
    if piece:
        yield tuple(piece)
