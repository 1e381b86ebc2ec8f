"""Stored outputs of cells tagged for publishing: made harmless and set into the page; nothing is run."""

from __future__ import annotations

import base64
import binascii
import html
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pentools.errors import InputError
from pentools.figures.raster import png_of
from pentools.writeup.drawings import clean_svg
from pentools.writeup.photos import EmbeddedPhoto, PhotoBook, embed_bytes
from pentools.writeup.story import clean_html

__all__ = ["PublishedOutput", "published_html", "published_output"]

_NO_ALT = "An output of the notebook without a description"


_WIDEST_PX = 1210
_PICTURES = ("image/svg+xml", "image/png", "image/jpeg")


@dataclass(frozen=True, slots=True)
class PublishedOutput:
    """A stored output for a form that is no single page: a picture made anew from its pixels, or harmless HTML."""

    html: str = ""
    picture: EmbeddedPhoto | None = None
    alt: str = ""


def published_output(output: Mapping[str, Any], photos: PhotoBook) -> PublishedOutput | None:
    """One stored output, a drawing as pixels too.

    Parameters
    ----------
    output : mapping
        The output as the notebook keeps it.
    photos : PhotoBook
        Whether its audience may see pictures at all, and this one.

    Returns
    -------
    PublishedOutput or None
        The first of what `published_html` would show; None where there is nothing to show.
    """
    data, metadata = output.get("data"), output.get("metadata")
    if isinstance(data, Mapping) and output.get("output_type") in ("display_data", "execute_result"):
        for mime in _PICTURES:
            if mime in data:
                found = _pixels(mime, _text(data[mime]), photos)
                return None if found is None else PublishedOutput(picture=found, alt=_alt(metadata, mime))
    made = clean_html(published_html(output, photos))
    return PublishedOutput(made) if made else None


def _pixels(mime: str, content: str, photos: PhotoBook) -> EmbeddedPhoto | None:
    if not photos.any_allowed():
        return None
    try:
        if mime == "image/svg+xml":
            drawing = clean_svg(content, photos.is_kept_back)
            return None if drawing is None else embed_bytes(png_of(drawing, _WIDEST_PX, foreign=True))
        raw = base64.b64decode(content)
    except (binascii.Error, ValueError, InputError):
        return None
    return None if photos.is_kept_back(raw) else embed_bytes(raw)


def published_html(output: Mapping[str, Any], photos: PhotoBook | None = None) -> str:
    """One stored output as HTML.

    Parameters
    ----------
    output : mapping
        The output as the notebook keeps it.
    photos : PhotoBook or None
        Whether its audience may see pictures at all, and this one; None where all may be seen.

    Returns
    -------
    str
        A figure, a cleaned piece of HTML or plain text, the first of these that there is; empty for errors,
        warnings, widgets and anything else.
    """
    if output.get("output_type") == "stream":
        return _plain(_text(output.get("text"))) if output.get("name") == "stdout" else ""
    data = output.get("data")
    if output.get("output_type") not in ("display_data", "execute_result") or not isinstance(data, Mapping):
        return ""
    metadata = output.get("metadata")
    for mime in _PICTURES:
        if mime in data:
            return _picture(mime, _text(data[mime]), _alt(metadata, mime), photos)
    if "application/vnd.jupyter.widget-view+json" in data or any(str(mime).startswith("image/") for mime in data):
        return ""
    if "text/html" in data:
        clean = clean_html(_text(data["text/html"])).strip()
        return f'<div class="published">{clean}</div>' if clean else ""
    return _plain(_text(data.get("text/plain")))


def _picture(mime: str, content: str, alt: str, photos: PhotoBook | None) -> str:
    """A picture made anew; nothing where the audience may see none, or not this one."""
    if photos is not None and not photos.any_allowed():
        return ""
    if mime == "image/svg+xml":
        drawing = clean_svg(content, photos.is_kept_back if photos is not None else None)
        if drawing is None:
            return ""
        # in an image element a drawing can neither run a script nor fetch anything
        uri = "data:image/svg+xml;base64," + base64.b64encode(drawing.encode()).decode()
    else:
        try:
            raw = base64.b64decode(content)
        except (binascii.Error, ValueError):
            return ""
        found = None if photos is not None and photos.is_kept_back(raw) else embed_bytes(raw)
        if found is None:
            return ""
        uri = found.uri
    return f'<figure class="published"><img src="{uri}" alt="{html.escape(alt)}"></figure>'


def _alt(metadata: Any, mime: str) -> str:
    about = metadata.get(mime) if isinstance(metadata, Mapping) else None
    alt = about.get("alt") if isinstance(about, Mapping) else None
    return str(alt) if alt else _NO_ALT


def _plain(text: str) -> str:
    return f'<pre class="published">{html.escape(text.rstrip())}</pre>' if text.strip() else ""


def _text(content: Any) -> str:
    return "".join(str(part) for part in content) if isinstance(content, list) else str(content or "")
