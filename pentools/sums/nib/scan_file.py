"""A scan read from its file: its greys, what the file says of their curve, and of its scale."""

from __future__ import annotations

import io
import math
import struct
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from pentools.calc.nib.arrays import Floats
from pentools.calc.nib.tone import Tone
from pentools.errors import InputError
from pentools.sums.nib.drawn_page import DRAWN_DPI, SAMPLE, drawn_page

if TYPE_CHECKING:
    from PIL.Image import Image

__all__ = ["LARGEST_PX", "Scan", "read_scan"]

LARGEST_PX = 150_000_000
"""A4 at 1200 dots an inch is 139 million elements [1]."""
_LARGEST_BYTES = 600_000_000
_ACCEPTED = "a PNG, TIFF or JPEG picture of a page"
_ORIENTATION, _UNIT, _FOCAL_35, _EXPOSURE = 274, 296, 41989, (33434, 33437, 37386)
_COLOUR_SPACE = 40961


@dataclass(frozen=True, slots=True)
class Scan:
    """A page as its file holds it.

    Parameters
    ----------
    codes : array
        Greys or colours as written, 8 or 16 bits, shape (rows, columns) or (rows, columns, 3), upright.
    tone : Tone
        The curve that the codes were made with.
    tone_said : bool
        Whether the file says so; False where the usual curve is taken.
    dpi : (float, float) or None
        Elements an inch across and down, as the file says.
    camera : bool
        Whether a camera made it.
    focal_share : float or None
        Focal length over the length of the longer side [1], where the camera wrote it down.
    bilevel : bool
        Black and white only.
    """

    codes: Floats
    tone: Tone
    tone_said: bool
    dpi: tuple[float, float] | None
    camera: bool
    focal_share: float | None
    bilevel: bool


def read_scan(path: str | Path) -> Scan:
    """Read a scan.

    Parameters
    ----------
    path : str or Path
        A PNG, TIFF or JPEG file; ``sample`` is a page that the kit draws, unless there is a file of that name.

    Returns
    -------
    Scan
        Upright, transparent parts on white.

    Raises
    ------
    InputError
        If there is no such file, it is no such picture, is larger than `LARGEST_PX`, or ends too early.
    """
    file = Path(path).expanduser()
    if str(path) == SAMPLE and not file.exists():
        return Scan(drawn_page(), "srgb", True, (DRAWN_DPI, DRAWN_DPI), False, None, False)
    content = _content(file)
    from PIL import Image, ImageFile

    strict, ImageFile.LOAD_TRUNCATED_IMAGES = ImageFile.LOAD_TRUNCATED_IMAGES, False
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(io.BytesIO(content), formats=("PNG", "TIFF", "JPEG")) as opened:
                _refuse_size(opened, file)
                held = opened.getexif().get(_ORIENTATION, 1)
                if opened.format == "TIFF" and held in (5, 6, 7, 8):  # its reader mixes up rows and columns
                    raise InputError(
                        "scan", "a TIFF that lies upright", file.name, "Turn it upright and save it again."
                    )
                opened.load()
                return _scan_of(opened, held if held in range(1, 9) else 1)
    except Image.DecompressionBombError as error:
        raise _too_large(file) from error
    except (OSError, ValueError, SyntaxError, EOFError, struct.error, MemoryError) as error:
        if isinstance(error, InputError):
            raise
        raise InputError(
            "scan", _ACCEPTED, file.name, "It cannot be read: it is damaged, cut short, or something else."
        ) from error
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = strict


def _content(file: Path) -> bytes:
    try:
        if not file.is_file():
            raise InputError("scan", _ACCEPTED, str(file), "There is no such file.")
        if file.stat().st_size > _LARGEST_BYTES:
            raise _too_large(file)
        return file.read_bytes()
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        raise InputError("scan", "a file that can be read", str(file)) from error


def _too_large(file: Path) -> InputError:
    most = f"at most {LARGEST_PX // 1_000_000} million elements"
    return InputError("scan", most, file.name, "Scan one page at 1200 dots an inch or less.")


def _refuse_size(opened: Image, file: Path) -> None:
    if opened.width * opened.height > LARGEST_PX:
        raise _too_large(file)
    if min(opened.size) < 32:
        raise InputError("scan", "at least 32 elements wide and high", f"{opened.width} x {opened.height}")


def _scan_of(opened: Image, held: int) -> Scan:
    exif = opened.getexif()
    camera = exif.get_ifd(0x8769)
    dpi = _dpi(opened)
    if dpi is not None and held >= 5:
        dpi = dpi[::-1]
    bilevel = opened.mode == "1"
    plain, tone, said = _plain(opened, camera.get(_COLOUR_SPACE))
    # a TIFF is turned by its reader
    codes = _upright(plain, 1 if opened.format == "TIFF" else held)
    return Scan(codes, tone, said, dpi, any(tag in camera for tag in _EXPOSURE), _focal(camera, codes), bilevel)


def _dpi(opened: Image) -> tuple[float, float] | None:
    """Elements an inch, where the file names a unit of length."""
    if opened.format == "TIFF" and getattr(opened, "tag_v2", {}).get(_UNIT, 2) == 1:
        return None
    found = opened.info.get("dpi")
    try:
        across, down = (float(value) for value in found) if found else (0.0, 0.0)
    except (TypeError, ValueError, ZeroDivisionError):
        return None
    return (across, down) if all(math.isfinite(v) and v > 0 for v in (across, down)) else None


def _focal(camera: Any, codes: Floats) -> float | None:
    """Focal length by what it would be on film of 36 x 24 mm, whose diagonal is 43.27 mm."""
    value = camera.get(_FOCAL_35)
    if not isinstance(value, int | float) or not 5 <= value <= 500:
        return None
    rows, columns = codes.shape[:2]
    return float(float(value) / 43.27 * math.hypot(rows, columns) / max(rows, columns))


def _plain(opened: Image, colour_space: object) -> tuple[Floats, Tone, bool]:
    """Codes in greys or three colours, their curve, and whether the file names it."""
    if opened.mode.startswith("I"):
        wide = np.asarray(opened)
        return np.clip(wide, 0, 65535).astype(np.uint16), *_curve(opened, colour_space)
    if opened.mode == "F":
        raise InputError("scan", "in whole numbers of 8 or 16 bits", "broken numbers")
    flat = _flat(opened)
    profile = opened.info.get("icc_profile")
    if profile:
        flat, known = _in_srgb(flat, profile)
        return np.asarray(flat), "srgb", known
    return np.asarray(flat), *_curve(opened, colour_space)


def _curve(opened: Image, colour_space: object) -> tuple[Tone, bool]:
    gamma = opened.info.get("gamma")
    if "srgb" in opened.info or colour_space == 1:
        return "srgb", True
    if isinstance(gamma, float) and 0.2 <= gamma <= 5:
        if abs(gamma - 1) < 0.02:
            return "linear", True
        return ("srgb" if abs(gamma - 0.45455) < 0.001 else 1 / gamma), True
    return "srgb", False


def _flat(opened: Image) -> Image:
    """Greys or three colours of 8 bits, what is see-through laid on white."""
    from PIL import Image as Images

    if opened.mode in ("RGBA", "LA", "PA", "La", "RGBa") or "transparency" in opened.info:
        clear = opened.convert("RGBA")
        return Images.alpha_composite(Images.new("RGBA", clear.size, (255, 255, 255, 255)), clear).convert("RGB")
    return opened if opened.mode in ("L", "RGB") else opened.convert("L" if opened.mode == "1" else "RGB")


def _in_srgb(image: Image, profile: bytes) -> tuple[Image, bool]:
    """The picture in the curve of IEC 61966-2-1; False where its profile cannot be used."""
    from PIL import ImageCms

    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if "srgb" in ImageCms.getProfileDescription(source).casefold():
            return image, True
        grey = source.profile.xcolor_space.strip() == "GRAY"
        turned = ImageCms.profileToProfile(
            image.convert("L" if grey else "RGB"), source, ImageCms.createProfile("sRGB"), outputMode="RGB"
        )
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        return image, False
    return (turned, True) if turned is not None else (image, False)


def _upright(codes: Floats, turned: int) -> Floats:
    """Turned as the camera held it (EXIF orientation 1 to 8)."""
    if codes.ndim == 3 and np.array_equal(codes[::7, ::7, 0], codes[::7, ::7, 1]) and _grey(codes):
        codes = codes[:, :, 1]
    if turned in (5, 6, 7, 8):
        codes = codes.swapaxes(0, 1)
    if turned in (2, 3, 6, 7):
        codes = codes[:, ::-1]
    if turned in (3, 4, 7, 8):
        codes = codes[::-1]
    return np.ascontiguousarray(codes)


def _grey(codes: Floats) -> bool:
    return bool(np.array_equal(codes[..., 0], codes[..., 1]) and np.array_equal(codes[..., 1], codes[..., 2]))
