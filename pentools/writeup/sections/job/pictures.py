"""Pictures on a page: before and after at its head, the others in their own section."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.record.stages.job.ending_kinds import PICTURE, Picture
from pentools.record.stages.job.pictures import shown_by
from pentools.writeup.blocks import Audience, Block, Photo, Photos, Section
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import releases_of
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["before_and_after", "listed_photos", "photo_among", "photo_of", "photos_beside", "pictures_of", "section"]

_MOST_PAIRS = 3


def before_and_after(job: Job, audience: Audience) -> Section:
    """The same views before and after, side by side.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        Up to three pairs of the same view; where no view was named twice, the first picture before and the last
        one after; no blocks where there is neither.
    """
    return Section(
        "before-after", "Before and after", tuple(Photos(_side_by_side(job, pair)) for pair in _pairs(job, audience))
    )


def _side_by_side(job: Job, pair: list[Picture]) -> tuple[Photo, ...]:
    """A pair's pictures, each told which one it lies beside; one without its other stands as it is."""
    photos = tuple(_photo(job, picture) for picture in pair)
    if len(photos) < 2 or photos[0].file == photos[1].file:
        return photos
    one, two = photos
    return replace(one, beside=two.file, place="before"), replace(two, beside=one.file, place="after")


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """The pictures that do not stand at the head of the page.

    Parameters
    ----------
    stage : Stage
        The pictures stage.
    audience : {"owner", "everybody"}
        Who will see the page; for "everybody" only pictures that everybody may see.

    Returns
    -------
    Section
        No blocks where there are no others.
    """
    at_head = [id_ for pair in _pairs(job, audience) for id_ in (_mark(v) for v in pair)]
    rest = tuple(_photo(job, v) for v in _allowed(job, audience) if _mark(v) not in at_head)
    blocks: list[Block] = [Photos(rest)] if rest else []
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "More pictures" if at_head else "Pictures", tuple(blocks))


def pictures_of(job: Job, stage: str, audience: Audience) -> tuple[Photo, ...]:
    """The pictures that this audience may see and that were said to belong to a stage, in order."""
    return tuple(_photo(job, picture) for picture in _allowed(job, audience) if picture.belongs_to == stage)


def listed_photos(job: Job) -> tuple[Photo, ...]:
    """Every picture that is listed, in order; a file that was listed again counts by its newest words."""
    newest = {logged.values.photo: logged.values for logged in job.log(PICTURE) if logged.values.photo is not None}
    return tuple(_photo(job, picture) for picture in newest.values())


def photo_of(job: Job, file: str) -> Photo | None:
    """A picture with the words of its own entry; None where it has none."""
    found = [logged.values for logged in job.log(PICTURE) if logged.values.photo == file]
    return _photo(job, found[-1]) if found else None


def photo_among(job: Job, file: str, words: str) -> Photo:
    """A picture beside other entries: in the words of its own entry where it has one, else in those given."""
    own = photo_of(job, file)
    words = own.alt if own else words
    return Photo(file, words, sentence(words), drawn=own.drawn if own else False)


def photos_beside(job: Job, audience: Audience, named: Iterable[tuple[str | None, str]]) -> list[Block]:
    """The pictures that entries name, each once and as far as the audience may see them.

    Parameters
    ----------
    named : iterable of (str or None, str)
        File and words of each entry; the words count where the picture has no entry of its own.
    """
    book = PhotoBook(job, audience)
    shown: dict[str, str] = {}
    for file, words in named:
        if file is not None and book.allowed(file):
            shown.setdefault(file, words)
    return [Photos(tuple(photo_among(job, file, words) for file, words in shown.items()))] if shown else []


def _allowed(job: Job, audience: Audience) -> list[Picture]:
    book = PhotoBook(job, audience)
    shown = (logged.values for logged in job.log(PICTURE))
    return [picture for picture in shown if picture.photo is not None and book.allowed(picture.photo)]


def _mark(picture: Picture) -> tuple[str | None, str | None]:
    return picture.photo, picture.moment


def _pairs(job: Job, audience: Audience) -> list[list[Picture]]:
    pictures = _allowed(job, audience)
    before = [v for v in pictures if v.moment == "before"]
    after = [v for v in pictures if v.moment == "after"]
    pairs: list[list[Picture]] = []
    for first in before:
        view = (first.view or "").casefold()
        same = [v for v in after if view and (v.view or "").casefold() == view]
        if same and not any((pair[0].view or "").casefold() == view for pair in pairs):
            pairs.append([first, same[-1]])
    if not pairs:
        ends = before[:1] + after[-1:]
        pairs = [ends] if ends else []
    return pairs[:_MOST_PAIRS]


def _photo(job: Job, picture: Picture) -> Photo:
    moment = {"before": "Before", "during": "During the work", "after": "After"}.get(picture.moment or "", "Picture")
    view = f", {picture.view}" if picture.view else ""
    day = f", {date_in_words(picture.taken_on)}" if picture.taken_on else ""
    light = f" {sentence(picture.light_and_scale)}" if picture.light_and_scale else ""
    shows = shown_by(job, picture)
    told = picture.caption or (picture.shows or "")
    caption = f"{moment}{view}{day}" + (f": {sentence(told)}" if told else ".") + light
    return Photo(picture.photo or "", shows, caption, drawn=picture.drawn is True, words=picture.caption or "")
