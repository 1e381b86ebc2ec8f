"""What a page is made of before it becomes HTML: its title, its notices, the story with its stages, and its foot."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import ClassVar

from pentools.writeup.blocks import Audience, Block, Notice, Photos, Section

__all__ = ["Page", "Passage", "Placed", "each_picture_once"]


@dataclass(frozen=True, slots=True)
class Placed:
    """A section with the level its heading has on the page."""

    section: Section
    level: int = 2


@dataclass(slots=True)
class Passage:
    """A piece of the story with the stages and published outputs that follow it."""

    story: str = ""
    placed: list[Placed | str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Page:
    """Everything a page shows, before it becomes HTML.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Whom it is for.
    title : str
        The pen in a few words.
    key_facts : tuple of (label, value)
        What stands under the title.
    notices : tuple of Notice
        What stands at the head: that the job is not finished, that consent is missing.
    head, passages, foot
        Sections before the story, the story with its stages, sections after it.
    """

    audience: Audience
    title: str
    key_facts: tuple[tuple[str, str], ...]
    notices: tuple[Notice, ...]
    head: tuple[Placed, ...]
    passages: tuple[Passage, ...]
    foot: tuple[Placed, ...]

    STORY: ClassVar[str] = "The story, as it was told"

    @property
    def contents(self) -> tuple[tuple[str, str], ...]:
        """Anchor and title of every section, in the order of the page."""
        first, last = (
            [(placed.section.key.replace(" ", "-"), placed.section.title) for placed in part]
            for part in (self.head, self.foot)
        )
        return (*first, *([("story", self.STORY)] if self.passages else []), *last)


def each_picture_once(
    first: list[Section], passages: list[Passage], last: list[Section]
) -> tuple[list[Section], list[Passage], list[Section]]:
    """The same parts with a picture only where it comes first; a section left empty by that is left out."""
    seen: set[str] = set()

    def once(section: Section) -> Section:
        blocks: list[Block] = []
        for block in section.blocks:
            if isinstance(block, Photos):
                fresh = tuple(photo for photo in block.photos if photo.file not in seen)
                seen.update(photo.file for photo in fresh)
                if not fresh:
                    continue
                block = Photos(fresh)  # noqa: PLW2901 - the block as it stands on the page
            blocks.append(block)
        return replace(section, blocks=tuple(blocks))

    first = [once(section) for section in first]
    for passage in passages:
        placed = [
            replace(item, section=once(item.section)) if isinstance(item, Placed) else item for item in passage.placed
        ]
        passage.placed[:] = [item for item in placed if not isinstance(item, Placed) or item.section.blocks]
    return first, passages, [once(section) for section in last]
