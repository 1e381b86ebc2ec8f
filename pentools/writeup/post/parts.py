"""What a post is made of, before it becomes HTML or Markdown; both are made from the same parts, so that they say the same."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from pentools.writeup.outputs import PublishedOutput
from pentools.writeup.post.pictures import PostPicture
from pentools.writeup.story import StoryPicture
from pentools.writeup.tale.chapters import Words

__all__ = ["Caption", "FactsList", "Fold", "Image", "Mark", "Placed", "PostPart", "Said", "Title"]

Placed = Callable[[StoryPicture], PostPicture]
"""The file of a picture that the restorer set into the text."""


@dataclass(frozen=True, slots=True)
class Title:
    """A heading that is not in the restorer's text, with its level."""

    level: int
    text: str


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence from the record."""

    text: str


@dataclass(frozen=True, slots=True)
class Mark:
    """What must not be overlooked, after a word that says what sort it is."""

    word: str
    text: str


@dataclass(frozen=True, slots=True)
class Image:
    """A picture by itself."""

    picture: PostPicture


@dataclass(frozen=True, slots=True)
class Caption:
    """A picture with one sentence under it."""

    image: Image
    text: str


@dataclass(frozen=True, slots=True)
class FactsList:
    """A few facts, each after its label."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Fold:
    """Paragraphs that may be folded under their title."""

    title: str
    texts: tuple[str, ...]


PostPart = Title | Words | Said | Mark | Image | Caption | FactsList | Fold | PublishedOutput
