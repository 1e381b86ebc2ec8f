"""A picture on its way out: encoded anew from its pixels, for the web, with nothing in the file but them."""

from __future__ import annotations

import base64
import io
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL.Image import Image

__all__ = ["QUALITY", "Encoded", "encoded"]

QUALITY = 82


@dataclass(frozen=True, slots=True)
class Encoded:
    """A picture's file.

    Parameters
    ----------
    content : bytes
        The file.
    mime : str
        ``image/jpeg`` or ``image/png``.
    width_px, height_px : int
        Its size [px].
    """

    content: bytes
    mime: str
    width_px: int
    height_px: int

    @property
    def uri(self) -> str:
        """The picture as a ``data:`` address."""
        return f"data:{self.mime};base64,{base64.b64encode(self.content).decode()}"


def encoded(picture: Image, *, flat_colours: bool = False, quality: int = QUALITY) -> Encoded:
    """Encode a picture for the web.

    Parameters
    ----------
    picture : PIL.Image.Image
        In RGB.
    flat_colours : bool
        Whether it may be line art: it then becomes a PNG where that is hardly larger, so that lines stay crisp.
    quality : int
        Of the JPEG, 1 to 95.

    Returns
    -------
    Encoded
        A JPEG or PNG that holds pixels alone.
    """
    from PIL import Image

    fresh = Image.new("RGB", picture.size)  # without what the library keeps beside the pixels
    fresh.paste(picture)
    best, mime = _saved(fresh, "JPEG", quality=quality, optimize=True), "image/jpeg"
    if flat_colours:
        crisp = _saved(fresh, "PNG", optimize=True)
        if len(crisp) <= 1.3 * len(best):
            best, mime = crisp, "image/png"
    return Encoded(best, mime, fresh.width, fresh.height)


def _saved(image: Image, form: str, **options: object) -> bytes:
    into = io.BytesIO()
    image.save(into, form, **options)
    return into.getvalue()
