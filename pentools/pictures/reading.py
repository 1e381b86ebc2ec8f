"""A picture file read: upright, in sRGB, as strictly whichever library was loaded before; refused in words where it cannot be."""

from __future__ import annotations

import contextlib
import datetime as dt
import functools
import io
import struct
import threading
import warnings
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePath
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import capital

if TYPE_CHECKING:
    from PIL.Image import Image

__all__ = ["ACCEPTED", "LARGEST_BYTES", "MOST_PIXELS", "Looked", "glance", "look_at", "read_picture"]

LARGEST_BYTES = 80_000_000
MOST_PIXELS = 120_000_000
"""More than cameras take; a file that promises more is not opened."""
ACCEPTED = "a JPEG, PNG, WebP, TIFF or GIF file that can be read"
_ENDINGS = {
    "JPEG": ".jpg",
    "MPO": ".jpg",
    "PNG": ".png",
    "WEBP": ".webp",
    "TIFF": ".tif",
    "GIF": ".gif",
    "HEIF": ".heic",
}
_FORMATS = ("JPEG", "PNG", "WEBP", "TIFF", "GIF")  # JPEG takes the many-pictured JPEG of phones (MPO) along
_RAW = {".dng", ".nef", ".cr2", ".cr3", ".arw", ".raf", ".orf", ".rw2", ".pef", ".srw"}
_HEIC_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}
_DNG_VERSION, _EXIF, _TAKEN = 0xC612, 0x8769, 0x9003
_FIRST_YEAR = 1990  # a camera whose clock was never set writes an earlier one
# what the reader raises for a broken file, beside what it documents
_BROKEN = (OSError, ValueError, SyntaxError, EOFError, struct.error, KeyError, IndexError, TypeError, ArithmeticError, MemoryError)  # fmt: skip
_lock = threading.RLock()


@dataclass(frozen=True, slots=True)
class Looked:
    """What a file turned out to be.

    Parameters
    ----------
    form : str
        Such as "JPEG", whatever its name says.
    ending : str
        The ending a file of that form has, such as ".jpg".
    width_px, height_px : int
        Its size [px], upright.
    notes : tuple of str
        A sentence for each thing worth knowing of a file that is taken all the same.
    taken_on : date or None
        The day the camera wrote into it, for the record; None where it wrote none that can be.
    """

    form: str
    ending: str
    width_px: int
    height_px: int
    notes: tuple[str, ...] = ()
    taken_on: dt.date | None = None


def look_at(content: bytes, name: str) -> Looked:
    """Read a file whole, to see that it can be used, and say what it is.

    Parameters
    ----------
    content : bytes
        The file.
    name : str
        Its name, for the sentences.

    Returns
    -------
    Looked
        Its form, size and what is odd about it.

    Raises
    ------
    InputError
        If it is empty, no picture, of a form that is not read, cut off, or larger than `LARGEST_BYTES` or `MOST_PIXELS`.
    """
    with _opened(content, name) as picture:
        form = picture.format or ""
        frames, mode, was = getattr(picture, "n_frames", 1), picture.mode, picture.size
        small = _upright(picture, 256)
        day = _day_in(picture)
        turned = (small.width > small.height) != (was[0] > was[1]) and was[0] != was[1]
        width, height = (was[1], was[0]) if turned else was
    return Looked(form, _ENDINGS[form], width, height, tuple(_odd(name, form, frames, mode)), day)


def glance(path: Path) -> str:
    """Why a picture's file cannot be used.

    Returns
    -------
    str
        A sentence; empty where it can be. A file is read whole once, and again when it has changed.
    """
    try:
        facts = path.stat()
        if facts.st_size > LARGEST_BYTES:
            return f"It has {facts.st_size // 1_000_000} MB, more than {LARGEST_BYTES // 1_000_000}."
        return _glance(path, facts.st_mtime_ns, facts.st_size)
    except OSError as error:
        return f"It cannot be read ({error.strerror or error})."


@functools.lru_cache(maxsize=512)
def _glance(path: Path, changed_ns: int, size: int) -> str:  # noqa: ARG001 - a changed file is read anew
    try:
        look_at(path.read_bytes(), path.name)
    except InputError as error:
        return error.advice
    return ""


def read_picture(content: bytes, name: str = "picture", long_side_px: int | None = None) -> Image:
    """A file's picture in RGB (sRGB), turned upright, what was see-through laid on white.

    Parameters
    ----------
    content : bytes
        The file.
    name : str
        Its name, for the sentences.
    long_side_px : int or None
        Most pixels of its long side [px], 1 or more; a picture is made smaller to that, never larger. None leaves it.

    Returns
    -------
    PIL.Image.Image
        A fresh picture that holds pixels alone: no EXIF, GPS, XMP, IPTC, comment, profile or thumbnail.

    Raises
    ------
    InputError
        As `look_at`.
    """
    with _opened(content, name) as picture:
        return _upright(picture, long_side_px)


@contextlib.contextmanager
def _opened(content: bytes, name: str) -> Iterator[Image]:
    from PIL import Image, ImageFile, UnidentifiedImageError

    _refuse_at_sight(content, name)
    formats = [*_FORMATS, *(["HEIF"] if _reads_heic() else [])]
    with _lock, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        lenient, ImageFile.LOAD_TRUNCATED_IMAGES = ImageFile.LOAD_TRUNCATED_IMAGES, False
        try:
            with Image.open(io.BytesIO(content), formats=formats) as picture:
                _refuse_in_head(picture, name)
                yield picture
        except InputError:
            raise
        except Image.DecompressionBombError as error:
            raise _refused(name, "it holds more pixels than a camera takes, and was not opened") from error
        except UnidentifiedImageError as error:
            raise _refused(name, "it is no picture of these kinds", "Save it as JPEG and choose that.") from error
        except _BROKEN as error:
            raise _refused(name, "it is cut off or damaged", "Copy it anew from the camera.") from error
        finally:
            ImageFile.LOAD_TRUNCATED_IMAGES = lenient


def _refuse_at_sight(content: bytes, name: str) -> None:
    """Refuse what the first bytes and the size tell."""
    if not content:
        raise _refused(name, "it is empty, 0 bytes", "Copy it anew from the camera.")
    if len(content) > LARGEST_BYTES:
        raise _refused(
            name, f"it has {len(content) // 1_000_000} MB, more than {LARGEST_BYTES // 1_000_000}", "Save it as JPEG."
        )
    if content[4:8] == b"ftyp" and content[8:12] in _HEIC_BRANDS and not _reads_heic():
        raise _refused(
            name,
            "it is a HEIC file, as some phones write them",
            "Send or export it as JPEG (on the phone: the “most compatible” format), or install the reader: pip install 'pentools[heic]'.",
        )
    if content[4:8] == b"ftyp" and content[8:12] not in _HEIC_BRANDS:
        raise _refused(name, "it is a film or of a form that is not read here", "Save one picture of it as JPEG.")
    if PurePath(name).suffix.casefold() in _RAW or content[8:10] == b"CR":
        raise _refused(name, "it is a camera’s raw file", "Develop it and save it as JPEG.")


def _refuse_in_head(picture: Image, name: str) -> None:
    """Refuse what the head of an opened file tells, before its pixels are read."""
    if picture.width * picture.height > MOST_PIXELS:
        raise _refused(
            name, f"it promises {picture.width * picture.height // 1_000_000} million pixels, more than {MOST_PIXELS // 1_000_000}",
            "Make it smaller first.",
        )  # fmt: skip
    if picture.format == "TIFF" and _DNG_VERSION in getattr(picture, "tag_v2", {}):
        raise _refused(name, "it is a camera’s raw file", "Develop it and save it as JPEG.")


def _refused(name: str, why: str, advice: str = "") -> InputError:
    return InputError("picture", ACCEPTED, name, f"{capital(why)}. {advice}".strip())


def _odd(name: str, form: str, frames: int, mode: str) -> Iterator[str]:
    """What is worth knowing of a file that is taken."""
    ending = PurePath(name).suffix.casefold()
    usual = {".jpg": {".jpeg", ".jpe", ".mpo"}, ".tif": {".tiff"}, ".heic": {".heif", ".hif"}}
    if ending and ending not in {_ENDINGS[form], *usual.get(_ENDINGS[form], ())}:
        yield f"Its name ends with {ending}, and it is {'a' if form in ('JPEG', 'PNG', 'TIFF') else 'of the form'} {form}."
    if frames > 1 and form in ("GIF", "WEBP", "PNG"):
        yield f"It moves ({frames} pictures); the first of them is shown."
    elif frames > 1 and form == "TIFF":
        yield f"It has {frames} pages; the first of them is shown."
    if mode == "CMYK":
        yield "Its colours are those of a printing press (CMYK); on a page they are turned into those of a screen."


def _day_in(picture: Image) -> dt.date | None:
    """The day of the picture as the camera wrote it (Exif DateTimeOriginal)."""
    try:
        written = str(picture.getexif().get_ifd(_EXIF).get(_TAKEN, ""))[:10]
        day = dt.datetime.strptime(written, "%Y:%m:%d").replace(tzinfo=dt.UTC).date()
    except _BROKEN:
        return None
    return day if day.year >= _FIRST_YEAR else None


def _reads_heic() -> bool:
    try:
        from pillow_heif import register_heif_opener
    except ImportError:
        return False
    register_heif_opener(thumbnails=False)
    return True


def _upright(picture: Image, long_side_px: int | None) -> Image:
    from PIL import Image, ImageOps

    if long_side_px is not None:
        picture.draft("RGB" if picture.mode != "L" else "L", (long_side_px, long_side_px))
    picture.load()
    try:
        turned = ImageOps.exif_transpose(picture)
    except _BROKEN:
        turned = picture  # what the camera wrote of its position cannot be read
    flat = _flat(_in_srgb(_in_eight_bits(turned)))
    if long_side_px is not None:
        flat.thumbnail((long_side_px, long_side_px), Image.Resampling.LANCZOS)
    fresh = Image.new("RGB", flat.size)
    fresh.paste(flat)
    return fresh


def _in_eight_bits(image: Image) -> Image:
    """A grey picture of 16 or 32 bits as one of 8; the library would cut off what is bright."""
    if not image.mode.startswith(("I", "F")):
        return image
    import numpy as np
    from PIL import Image as Images

    values = np.asarray(image).astype(np.float64)
    top = 65535.0 if image.mode.startswith("I;16") else max(float(np.nanmax(values)), 1.0)
    top = 65535.0 if image.mode == "I" and 255 < top <= 65535 else 255.0 if top <= 255 and image.mode == "I" else top
    return Images.fromarray(np.clip(np.nan_to_num(values) * (255.0 / top), 0, 255).astype(np.uint8))


def _in_srgb(image: Image) -> Image:
    profile = image.info.get("icc_profile")
    if not profile or image.mode not in ("RGB", "RGBA", "CMYK"):
        return image
    from PIL import ImageCms

    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        mode = "RGBA" if image.mode == "RGBA" else "RGB"
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
