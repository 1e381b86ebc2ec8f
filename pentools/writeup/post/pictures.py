"""The pictures of a post as files: photos made anew from their pixels, drawings as PNG at twice the size and as SVG."""

from __future__ import annotations

import base64
import io
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.decimals import in_markup
from pentools.figures.raster import PX_PER_MM, png_of

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.writeup.photos import EmbeddedPhoto

__all__ = ["WIDEST_PX", "PictureFiles", "PostPicture", "file_words"]

TWICE = 2
WIDEST_PX = 800
"""Shown width [px] at most: a column of text; the file has up to twice that, for screens of twice the density."""
_WORDS_IN_NAME = 7
_LONGEST_NAME = 60
_ENDINGS = {"image/jpeg": "jpg", "image/png": "png"}


@dataclass(frozen=True, slots=True)
class PostPicture:
    """A picture of a post: the file it is in, the words for those who cannot see it, and the size it is shown at [px]."""

    file: str
    alt: str
    width_px: int
    height_px: int


class PictureFiles:
    """Gathers the files of a post's pictures, numbered in the order they are shown.

    Parameters
    ----------
    decimal_sign : str
        How decimals are written in drawings.
    """

    def __init__(self, decimal_sign: str = ".") -> None:
        self._sign = decimal_sign
        self._files: dict[str, str | bytes] = {}
        self._shown: dict[str, PostPicture] = {}

    @property
    def files(self) -> dict[str, str | bytes]:
        """Name to content; an SVG is text, to be read before it goes out."""
        return dict(self._files)

    @property
    def pictures(self) -> tuple[PostPicture, ...]:
        """What was added, in order."""
        return tuple(self._shown.values())

    def add_photo(self, embedded: EmbeddedPhoto, alt: str, name: str) -> PostPicture:
        """A picture that was made anew from its pixels.

        Parameters
        ----------
        alt : str
            What it shows.
        name : str
            Words that its file is named by.

        Returns
        -------
        PostPicture
            Shown at most `WIDEST_PX` wide; the same picture with the same words is one file.
        """
        key = f"{embedded.uri} {alt}"
        if key not in self._shown:
            kind, _, content = embedded.uri.removeprefix("data:").partition(";base64,")
            file = f"{self._stem(name)}.{_ENDINGS[kind]}"
            self._files[file] = base64.b64decode(content)
            width = min(embedded.width_px, WIDEST_PX)
            height = round(embedded.height_px * width / embedded.width_px)
            self._shown[key] = PostPicture(file, alt, width, height)
        return self._shown[key]

    def add_drawing(self, drawing: Drawing) -> PostPicture:
        """A drawing, as pixels of twice the size it is shown at, with the SVG beside it.

        Returns
        -------
        PostPicture
            The PNG; the SVG has the same name.
        """
        from PIL import Image

        svg = in_markup(drawing.svg, self._sign)
        width = round(drawing.width_mm * PX_PER_MM)
        png = png_of(svg, TWICE * width)
        stem = self._stem(drawing.title)
        self._files |= {f"{stem}.png": png, f"{stem}.svg": svg}
        with Image.open(io.BytesIO(png)) as opened:
            height = round(opened.height / TWICE)
        return self._shown.setdefault(stem, PostPicture(f"{stem}.png", drawing.alt, width, height))

    def _stem(self, name: str) -> str:
        return f"{len(self._shown) + 1:02d}-{file_words(name)}"


def file_words(text: str) -> str:
    """The first words of a text as a file name has them.

    Returns
    -------
    str
        Small letters, digits and hyphens; "picture" where nothing is left.

    Examples
    --------
    >>> file_words("It draws 1.75 mL, 97 % of what it should")
    'it-draws-1-75-ml-97'
    """
    plain = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    words = list(_whole(re.findall(r"[a-z0-9]+", plain)[:_WORDS_IN_NAME]))
    return "-".join(words)[:_LONGEST_NAME].strip("-") or "picture"


def _whole(words: list[str]) -> Iterator[str]:
    """The words, without one at the end that leads to nothing."""
    while words and words[-1] in ("a", "an", "and", "at", "by", "in", "is", "it", "of", "on", "the", "to", "with"):
        words = words[:-1]
    yield from words
