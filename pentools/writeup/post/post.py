"""A job's post: its parts in order, and every file of its folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

from pentools.decimals import in_text
from pentools.writeup.blocks import FigureBlock, Photos
from pentools.writeup.forms import Files
from pentools.writeup.outputs import PublishedOutput
from pentools.writeup.photos import PhotoBook
from pentools.writeup.post.commonmark import commonmark
from pentools.writeup.post.fragment import fragment
from pentools.writeup.post.parts import Caption, FactsList, Fold, Image, Mark, PostPart, Said, Title
from pentools.writeup.post.pictures import PictureFiles, PostPicture
from pentools.writeup.tale.chapters import Words
from pentools.writeup.tale.page import title_text
from pentools.writeup.tale.tale import EVERYBODY, FACTS_TITLE, METHODS_TITLE, Heading, Sentence, tale_of
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.writeup.story import StoryPicture
    from pentools.writeup.tale.tale import Tale, TalePart

__all__ = ["FOLDER", "post_files"]

FOLDER = "post/"
_TITLE, _CHAPTER = 2, 3


def post_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:
    """Make the post of a job: ``post.html``, ``post.md`` and the pictures; see `forms`.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; None where there is none.
    draft : bool
        Whether to make it although consent is not recorded; it says so at its head.

    Returns
    -------
    mapping of str to str or bytes
        Path below ``writeup/`` to content.
    """
    made = _Post(job)
    parts = list(made.parts(tale_of(job, notebook, draft=draft, top=_CHAPTER)))
    files: dict[str, str | bytes] = {
        f"{FOLDER}post.html": fragment(parts, made.placed),
        f"{FOLDER}post.md": commonmark(parts, made.placed),
    }
    return files | {f"{FOLDER}{name}": content for name, content in made.pictures.files.items()}


class _Post:
    """Lays the story out as parts and gathers its pictures."""

    def __init__(self, job: Job) -> None:
        self._sign = job.bench.text("bench", "decimal_sign")
        self._book = PhotoBook(job, EVERYBODY)
        self.pictures = PictureFiles(self._sign)

    def placed(self, picture: StoryPicture) -> PostPicture:
        """The file of a picture that the restorer set into the text."""
        return self.pictures.add_photo(picture.embedded, picture.alt, picture.caption or picture.alt)

    def parts(self, tale: Tale) -> Iterator[PostPart]:
        """The story's parts in order."""
        yield Title(_TITLE, title_text(tale))
        if tale.title:
            yield Said(self._shown(tale.pen))
        yield from (Mark(notice.word, notice.text) for notice in tale.notices)
        if tale.pair:
            yield from self._photos(tale.pair, pair=True)
        if tale.lead:
            yield Said(self._shown(tale.lead))
        for chapter in tale.chapters:
            yield from self._chapter(chapter)
        if tale.facts:
            yield Title(_CHAPTER, FACTS_TITLE)
            yield FactsList(tuple((label, self._shown(value)) for label, value in tale.facts))
        yield Fold(METHODS_TITLE, tuple(self._shown(text) for text in tale.methods))

    def _chapter(self, chapter: tuple[TalePart, ...]) -> Iterator[PostPart]:
        for number, part in enumerate(chapter):
            after = chapter[number + 1] if number + 1 < len(chapter) else None
            under = self._shown(after.text) if isinstance(after, Sentence) else ""
            match part:
                case Words():
                    # its pictures are numbered where they stand
                    for picture in part.pictures:
                        self.placed(picture)
                    yield part
                case Heading(text):
                    yield Title(_CHAPTER, text)
                case FigureBlock(drawing):
                    image = Image(self.pictures.add_drawing(drawing))
                    yield Caption(image, under) if under else image
                case Photos():
                    yield from self._photos(part)
                case PublishedOutput(picture=None):
                    yield part
                case PublishedOutput(picture=embedded, alt=alt) if embedded is not None:
                    yield Image(self.pictures.add_photo(embedded, alt, alt))
                case Sentence(text) if not (number and isinstance(chapter[number - 1], FigureBlock)):
                    yield Said(self._shown(text))
                case _:
                    pass

    def _photos(self, photos: Photos, *, pair: bool = False) -> Iterator[PostPart]:
        for photo in photos.photos:
            embedded = self._book.shown(photo)
            if embedded is None:
                continue
            head = photo.caption.split(":")[0]
            drawn = " Drawn, not photographed." if photo.drawn else ""
            name = head if pair else photo.alt
            picture = self.pictures.add_photo(embedded, f"{'Drawn: ' if photo.drawn else ''}{photo.alt}", name)
            yield Caption(Image(picture), f"{sentence(head if pair else photo.said)}{drawn}")

    def _shown(self, text: str) -> str:
        """A text with the bench's decimal sign, in which no line ends between a value and its uncertainty."""
        return in_text(text.replace(" ± ", "\u00a0±\u00a0"), self._sign)
