"""Pictures for a page: made anew from their pixels, so that nothing the camera wrote into the file goes along."""

from __future__ import annotations

import base64
import functools
import io
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from pentools.record.owner_facts import mark_for_everybody
from pentools.record.stages.dating.kinds import MARK
from pentools.record.stages.job.ending_kinds import PICTURE, Picture
from pentools.record.stages.job.intake_kinds import CONSENT
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from PIL.Image import Image

    from pentools.record.job import Job
    from pentools.writeup.blocks import Audience

__all__ = ["LONG_SIDE_PX", "QUALITY", "EmbeddedPhoto", "PhotoBook", "embed_bytes", "public_files"]

LONG_SIDE_PX = 1600
QUALITY = 82
_LARGEST_BYTES = 80_000_000


@dataclass(frozen=True, slots=True)
class EmbeddedPhoto:
    """A picture ready to stand in a page.

    Parameters
    ----------
    uri : str
        The picture as a ``data:`` address.
    width_px, height_px : int
        Its size [px] after turning and shrinking.
    """

    uri: str
    width_px: int
    height_px: int


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
        """A picture, made anew.

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
        if not self.allowed(file):
            return None
        folder = (self.job.folder / "photos").resolve()
        try:
            path = (folder / file).resolve()
            if path.parent != folder or not path.is_file() or path.stat().st_size > _LARGEST_BYTES:
                return None
            if not self.allowed(path.name):  # a link to a picture that may not be shown
                return None
            facts = path.stat()
            return _embed_file(path, facts.st_mtime_ns, facts.st_size, long_side_px)
        except (OSError, ValueError):
            return None


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
    from PIL import Image, ImageOps

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            warnings.filterwarnings("ignore", category=UserWarning)
            with Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP", "TIFF", "GIF")) as opened:
                lossless = opened.format in ("PNG", "GIF")
                opened.draft("RGB", (long_side_px, long_side_px))
                upright = _flat(_in_srgb(ImageOps.exif_transpose(opened)))
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError, Image.DecompressionBombWarning):
        return None
    upright.thumbnail((long_side_px, long_side_px), Image.Resampling.LANCZOS)
    fresh = Image.new("RGB", upright.size)
    fresh.paste(upright)
    best, mime = _saved(fresh, "JPEG", quality=QUALITY, optimize=True), "image/jpeg"
    if lossless:
        flat_colours = _saved(fresh, "PNG", optimize=True)
        if len(flat_colours) <= 1.3 * len(best):  # line art stays crisp
            best, mime = flat_colours, "image/png"
    return EmbeddedPhoto(f"data:{mime};base64,{base64.b64encode(best).decode()}", fresh.width, fresh.height)


@functools.lru_cache(maxsize=64)
def _embed_file(path: Path, changed_ns: int, size: int, long_side_px: int) -> EmbeddedPhoto | None:  # noqa: ARG001 - a changed file is read anew
    return embed_bytes(path.read_bytes(), long_side_px)


@once_a_state
def pictures_agreed(job: Job) -> bool:
    """Whether the owner agreed that pictures may be shown, in a story or among a notebook's outputs."""
    return job.newest(CONSENT).pictures is True


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
    from PIL import Image, ImageOps

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP", "TIFF", "GIF")) as opened:
                shape = opened.size
                opened.draft("L", (4 * _SIDE, 4 * _SIDE))
                upright = ImageOps.exif_transpose(opened)
                turned = (upright.width > upright.height) != (shape[0] > shape[1])
                wide, high = reversed(shape) if turned else shape
                grey = _flat(upright).convert("L").resize((_SIDE, _SIDE), Image.Resampling.BOX)
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return None
    return wide / high, grey.tobytes()


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
    return None if size > _LARGEST_BYTES else _sight(path.read_bytes())


def _in_srgb(image: Image) -> Image:
    profile = image.info.get("icc_profile")
    if not profile:
        return image
    from PIL import ImageCms

    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        mode = "RGBA" if image.mode in ("RGBA", "LA", "P", "PA") else "RGB"
        if image.mode not in ("RGB", "RGBA"):
            return image
        turned = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode=mode)
    except (ImageCms.PyCMSError, OSError, ValueError):
        return image
    return turned if turned is not None else image


def _flat(image: Image) -> Image:
    """The picture in RGB, what was see-through laid on white."""
    from PIL import Image as Images

    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        clear = image.convert("RGBA")
        white = Images.new("RGBA", clear.size, (255, 255, 255, 255))
        return Images.alpha_composite(white, clear).convert("RGB")
    return image.convert("RGB")


def _saved(image: Image, form: str, **options: object) -> bytes:
    into = io.BytesIO()
    image.save(into, form, **options)
    return into.getvalue()
