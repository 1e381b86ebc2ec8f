"""Pictures for a page: made anew from their pixels, so that nothing the camera wrote into the file goes along."""

from __future__ import annotations

import functools
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.pictures.matching import Alignment, Unlike
from pentools.pictures.outgoing import QUALITY, encoded
from pentools.pictures.outgoing import Encoded as EmbeddedPhoto
from pentools.pictures.pairing import half_and_half, pair_of
from pentools.pictures.reading import LARGEST_BYTES, glance, look_at, read_picture
from pentools.pictures.scale import with_bar
from pentools.record.layout import has_picture
from pentools.record.owner_facts import mark_for_everybody
from pentools.record.stages.dating.kinds import MARK
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.ending_kinds import PICTURE, Picture
from pentools.record.stages.job.pictures import scale_of
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from PIL.Image import Image

    from pentools.record.job import Job
    from pentools.writeup.blocks import Audience, Photo

__all__ = ["LONG_SIDE_PX", "QUALITY", "EmbeddedPhoto", "PhotoBook", "embed_bytes", "left_out", "public_files"]

LONG_SIDE_PX = 1600


@dataclass(frozen=True, slots=True)
class PhotoBook:
    """The pictures of one job for one audience.

    Parameters
    ----------
    job : Job
        The job.
    audience : {"owner", "everybody"}
        Who will see the page. For "everybody" a picture is given only where the owner agreed that pictures may be
        shown and every entry about that file says that everybody may see it.
    """

    job: Job
    audience: Audience

    def allowed(self, file: str) -> bool:
        """Whether this audience may see a picture.

        Parameters
        ----------
        file : str
            A file name in the job's photos folder.

        Returns
        -------
        bool
            True for the owner; for "everybody" as the record says, False where it says nothing.
        """
        return self.audience == "owner" or file in public_files(self.job)

    def any_allowed(self) -> bool:
        """Whether this audience may see pictures at all: those of a notebook's outputs too."""
        return self.audience == "owner" or pictures_agreed(self.job)

    def is_kept_back(self, content: bytes) -> bool:
        """Whether a picture from elsewhere is one of the job's own that this audience may not see.

        Parameters
        ----------
        content : bytes
            The picture's file, such as a notebook's output.

        Returns
        -------
        bool
            True where it shows the same as a file in the photos folder without its yes, whatever its size and form.
        """
        if self.audience == "owner":
            return False
        seen = _sight(content)
        return seen is not None and any(_same(seen, other) for other in _kept_back(self.job))

    def embed(self, file: str, long_side_px: int = LONG_SIDE_PX) -> EmbeddedPhoto | None:
        """A picture, made anew; with a scale bar where a length in it is known.

        Parameters
        ----------
        file : str
            A file name in the job's photos folder; a path that leads anywhere else is refused.
        long_side_px : int
            Most pixels of its long side [px], 1 or more.

        Returns
        -------
        EmbeddedPhoto or None
            None where the file is not there, is no picture, or may not be shown to this audience.
        """
        found = self._file(file)
        return None if found is None else _embed_file(found, self._scale(file), long_side_px)

    def shown(self, photo: Photo, long_side_px: int = LONG_SIDE_PX) -> EmbeddedPhoto | None:
        """A picture as a page shows it: where it is one of a pair, on the other's frame and scale if they can be aligned.

        Parameters
        ----------
        photo : Photo
            The picture.
        long_side_px : int
            Most pixels of its long side [px], 1 or more.

        Returns
        -------
        EmbeddedPhoto or None
            As `embed`; a half of each where that was asked for, None where the two cannot be aligned.
        """
        pair = self._pair(photo.file, photo.beside, photo.place) if photo.beside else None
        if pair is None:
            return None if photo.place == "halves" else self.embed(photo.file, long_side_px)
        return _embed_pair(*pair, photo.place, long_side_px)

    def why_apart(self, before: str, after: str) -> str:
        """Why two pictures stand side by side as they are.

        Returns
        -------
        str
            A clause; empty where they are aligned, or one of them cannot be shown.
        """
        one, two = self._file(before), self._file(after)
        if one is None or two is None:
            return ""
        found = _aligned(one, two, LONG_SIDE_PX)
        return "" if found is None or isinstance(found.alignment, Alignment) else found.alignment.reason

    def _pair(self, file: str, beside: str, place: str) -> tuple[_File, _File, float | None] | None:
        """The two files of a pair that is aligned, the one before first, with its scale; None where it is not."""
        first, second = (beside, file) if place == "after" else (file, beside)
        one, two = self._file(first), self._file(second)
        if one is None or two is None:
            return None
        found = _aligned(one, two, LONG_SIDE_PX)
        if found is None or not isinstance(found.alignment, Alignment):
            return None
        scale, other = self._scale(first), self._scale(second)
        if scale is None and other is not None:
            scale = other / (found.alignment.scale * max(found.sizes[0]) / max(found.sizes[1]))
        return one, two, scale

    def _scale(self, file: str) -> float | None:
        """The scale of a file [mm a pixel], as its newest entry that knows a length has it."""
        known = (scale_of(logged.values) for logged in reversed(self.job.log(PICTURE)) if logged.values.photo == file)
        return next((scale for scale in known if scale is not None), None)

    def _file(self, file: str) -> _File | None:
        """A file of the photos folder that this audience may see; None where there is none."""
        if not self.allowed(file):
            return None
        folder = (self.job.folder / "photos").resolve()
        try:
            path = (folder / file).resolve()
            if path.parent != folder or not path.is_file() or not self.allowed(path.name):
                return None  # such as a link to a picture that may not be shown
            facts = path.stat()
        except (OSError, ValueError):
            return None
        return _File(path, facts.st_mtime_ns, facts.st_size)


@dataclass(frozen=True, slots=True)
class _File:
    """A file as it is now: when it changes it is another."""

    path: Path
    changed_ns: int
    size: int

    def read(self, long_side_px: int) -> Image | None:
        """Its picture; None where it cannot be read."""
        try:
            return (
                None
                if self.size > LARGEST_BYTES
                else read_picture(self.path.read_bytes(), self.path.name, long_side_px)
            )
        except (OSError, InputError):
            return None

    def full_px(self) -> tuple[int, int]:
        """Its size as it is, upright [px]."""
        looked = look_at(self.path.read_bytes(), self.path.name)
        return looked.width_px, looked.height_px


@dataclass(frozen=True, slots=True)
class _Aligned:
    """A pair with the sizes of both pictures before they were cut to it [px]: as files, and as they were aligned."""

    before: Image
    after: Image
    alignment: Alignment | Unlike
    sizes: tuple[tuple[int, int], tuple[int, int]]
    read_px: tuple[tuple[int, int], tuple[int, int]]


def left_out(job: Job) -> tuple[str, ...]:
    """The listed pictures that stand on no page, each in a sentence with what to do."""
    files = dict.fromkeys(logged.values.photo for logged in job.log(PICTURE) if logged.values.photo is not None)
    folder = job.folder / "photos"
    why = {file: glance(folder / file) if has_picture(job.folder, file) else "It is not there." for file in files}
    return tuple(f"photos/{file} is left out of the pages. {reason}" for file, reason in why.items() if reason)


def embed_bytes(content: bytes, long_side_px: int = LONG_SIDE_PX) -> EmbeddedPhoto | None:
    """A picture made anew from the content of a file.

    Parameters
    ----------
    content : bytes
        A JPEG, PNG, WebP, GIF or TIFF file.
    long_side_px : int
        Most pixels of its long side [px], 1 or more.

    Returns
    -------
    EmbeddedPhoto or None
        At most that long, turned upright; None where it cannot be read as a picture.

    Notes
    -----
    The pixels are copied into a fresh picture, so EXIF, GPS, XMP, IPTC, colour profile, comment and thumbnail
    are gone. A colour profile is first worked into the pixels (sRGB).
    """
    try:
        picture = read_picture(content, long_side_px=long_side_px)
    except InputError:
        return None
    return encoded(picture, flat_colours=content[:4] in (b"\x89PNG", b"GIF8"))


@functools.lru_cache(maxsize=64)
def _embed_file(file: _File, scale: float | None, long_side_px: int) -> EmbeddedPhoto | None:
    try:
        if file.size > LARGEST_BYTES:
            return None
        if scale is None:
            return embed_bytes(file.path.read_bytes(), long_side_px)
        picture = file.read(long_side_px)
        if picture is None:
            return None
        return encoded(with_bar(picture, scale * max(file.full_px()) / max(picture.size)))
    except OSError:
        return None


@functools.lru_cache(maxsize=8)
def _aligned(before: _File, after: _File, long_side_px: int) -> _Aligned | None:
    one, two = before.read(long_side_px), after.read(long_side_px)
    if one is None or two is None:
        return None
    pair = pair_of(one, two)
    return _Aligned(pair.before, pair.after, pair.alignment, (before.full_px(), after.full_px()), (one.size, two.size))


@functools.lru_cache(maxsize=64)
def _embed_pair(
    before: _File, after: _File, scale: float | None, place: str, long_side_px: int
) -> EmbeddedPhoto | None:
    found = _aligned(before, after, LONG_SIDE_PX)
    if found is None:
        return None
    picture = {"before": found.before, "after": found.after}.get(place)
    picture = half_and_half(found.before, found.after) if picture is None else picture.copy()
    uncut = picture.width
    picture.thumbnail((long_side_px, long_side_px))
    if scale is not None:
        shrunk = max(found.sizes[0]) / max(found.read_px[0]) * uncut / picture.width
        picture = with_bar(picture, scale * shrunk)
    return encoded(picture)


@once_a_state
def pictures_agreed(job: Job) -> bool:
    """Whether the owner agreed that pictures may be shown, in a story or among a notebook's outputs."""
    return consents(job).get("pictures") is True


@once_a_state
def public_files(job: Job) -> frozenset[str]:
    """Pictures that everybody may see: not one entry about a file may lack its yes, whichever came first.

    Returns
    -------
    frozenset of str
        File names; without those that show a name engraved on the pen, unless the owner agreed to that too.
    """
    if not pictures_agreed(job):
        return frozenset()
    said: dict[str, bool] = {}
    for entry in job.record.live(PICTURE.stage, PICTURE.key):
        values = job.view.decoded(PICTURE, entry)
        # of an entry that cannot be read nobody knows a yes
        file, public = (values.photo, values.public) if isinstance(values, Picture) else (entry.data.get("photo"), None)
        said[str(file)] = said.get(str(file), True) and public is True
    for logged in job.log(MARK):
        if logged.values.photo is not None and not mark_for_everybody(job, logged.values):
            said[logged.values.photo] = False
    refused = {file.casefold() for file, public in said.items() if not public}
    return frozenset(file for file, public in said.items() if public and file.casefold() not in refused)


_SIDE = 24  # picture elements of a sight


def _sight(content: bytes) -> tuple[float, bytes] | None:
    """What a picture shows, coarsely: its width over its height, and its brightness on a small grid."""
    from PIL import Image

    try:
        looked = look_at(content, "picture")
        grey = read_picture(content, long_side_px=8 * _SIDE).convert("L").resize((_SIDE, _SIDE), Image.Resampling.BOX)
    except InputError:
        return None
    return looked.width_px / looked.height_px, grey.tobytes()


def _same(one: tuple[float, bytes], other: tuple[float, bytes]) -> bool:
    """Whether two sights are of one picture: like in shape, and in brightness to a few steps of 256 (judged)."""
    if abs(one[0] / other[0] - 1) > 0.03:
        return False
    apart = [abs(a - b) for a, b in zip(one[1], other[1], strict=True)]
    spread = max(one[1]) - min(one[1])
    return sum(apart) / len(apart) < min(3.0, 0.05 * spread + 0.5) and max(apart) <= 48


def _kept_back(job: Job) -> tuple[tuple[float, bytes], ...]:
    """The sights of the pictures in the job's folder that not everybody may see."""
    folder, shown = job.folder / "photos", public_files(job)
    if not folder.is_dir():
        return ()
    files = [path for path in sorted(folder.iterdir()) if path.is_file() and path.name not in shown]
    sights = (_sight_of(path, path.stat().st_mtime_ns, path.stat().st_size) for path in files)
    return tuple(sight for sight in sights if sight is not None)


@functools.lru_cache(maxsize=256)
def _sight_of(path: Path, changed_ns: int, size: int) -> tuple[float, bytes] | None:  # noqa: ARG001 - a changed file is read anew
    return None if size > LARGEST_BYTES else _sight(path.read_bytes())
