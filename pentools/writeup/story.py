"""The restorer's own text: markdown from a notebook cell turned into HTML that can do no harm."""

from __future__ import annotations

import base64
import binascii
import functools
import html
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any
from urllib.parse import unquote

from pentools.writeup.photos import EmbeddedPhoto, PhotoBook, embed_bytes

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

__all__ = ["Story", "clean_html", "heading_levels", "tell"]

_TAGS = {
    "a", "blockquote", "br", "code", "dd", "del", "dl", "dt", "em", "h2", "h3", "h4", "h5", "h6", "hr", "li", "ol", "p",
    "pre", "s", "strong", "sub", "sup", "table", "tbody", "td", "tfoot", "th", "thead", "tr", "ul", "caption", "b", "i", "span",
}  # fmt: skip
_ATTRIBUTES = {"a": {"href"}, "ol": {"start"}, "td": {"colspan", "rowspan"}, "th": {"scope", "colspan", "rowspan"}}
_LINKS = re.compile(r"(?:https?://|mailto:)\S+", re.IGNORECASE)
# marks the place of a picture while the text is cleaned; such signs are taken out of the text first
_MARK = "\ue000"
_DEEPEST = 6


@dataclass(frozen=True, slots=True)
class Story:
    """A piece of the restorer's text as HTML.

    Parameters
    ----------
    html : str
        Safe to stand in a page as it is; empty where nothing is left.
    last_level : int
        Level of its last heading; 0 where it has none.
    left_out : tuple of str
        Pictures that could not be shown, with the reason.
    """

    html: str
    last_level: int = 0
    left_out: tuple[str, ...] = ()


@functools.cache
def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt

    return MarkdownIt("commonmark", {"html": False}).enable(["table", "strikethrough"])


def heading_levels(text: str) -> tuple[int, ...]:
    """The levels of the headings in a markdown text, in order."""
    return tuple(int(token.tag[1]) for token in _parser().parse(text) if token.type == "heading_open")


def tell(
    text: str,
    photos: PhotoBook,
    *,
    lift: int = 1,
    level_before: int = 1,
    attachments: Mapping[str, Any] | None = None,
) -> Story:
    """Turn a markdown cell into HTML.

    Parameters
    ----------
    text : str
        The cell's markdown; HTML in it is shown as text.
    photos : PhotoBook
        Where its pictures come from, and which of them this audience may see.
    lift : int
        How many levels a heading goes down, 0 to 4; no heading becomes the page's own first one.
    level_before : int
        Level of the heading before this text, so that no level is skipped, 1 to 6.
    attachments : mapping or None
        Pictures pasted into the cell, as the notebook keeps them; shown to the owner only.

    Returns
    -------
    Story
        The text; a picture that may not be shown or is not there is named in ``left_out``.
    """
    tokens = _parser().parse(text.replace(_MARK, ""))
    last = _settle_headings(tokens, lift, level_before)
    pictures: list[str] = []
    left_out: list[str] = []
    for token in tokens:
        for child in token.children or ():
            if child.type == "image":
                _place_picture(child, photos, attachments or {}, pictures, left_out)
    raw = str(_parser().renderer.render(tokens, _parser().options, {}))
    return Story(_put_pictures(clean_html(raw), pictures).strip(), last, tuple(left_out))


def clean_html(raw: str) -> str:
    """HTML with everything taken out but text, headings, lists, tables and links to web and mail addresses.

    Parameters
    ----------
    raw : str
        Any HTML.

    Returns
    -------
    str
        HTML without scripts, styles, pictures, forms, classes or ids.
    """
    import nh3

    return nh3.clean(
        raw,
        tags=_TAGS,
        attributes=_ATTRIBUTES,
        attribute_filter=_only_plain_links,
        url_schemes={"http", "https", "mailto"},
        link_rel="noopener noreferrer nofollow",
        strip_comments=True,
    )


def _only_plain_links(tag: str, attribute: str, value: str) -> str | None:
    if (tag, attribute) == ("a", "href"):
        return value if _LINKS.fullmatch(value) else None
    return value


def _settle_headings(tokens: list[Token], lift: int, level_before: int) -> int:
    """Lower the headings and close gaps between levels; gives the last level, 0 where there is none."""
    current, last = level_before, 0
    level = 2
    for token in tokens:
        if token.type == "heading_open":
            level = max(2, min(int(token.tag[1]) + lift, current + 1, _DEEPEST))
            current = last = level
        if token.type in ("heading_open", "heading_close"):
            token.tag = f"h{level}"
    return last


def _place_picture(
    token: Token, photos: PhotoBook, attachments: Mapping[str, Any], pictures: list[str], left_out: list[str]
) -> None:
    source = unquote(str(token.attrs.get("src", "")))
    alt = token.content.strip()
    found: EmbeddedPhoto | None = None
    if source.startswith("attachment:"):
        if photos.audience == "owner":
            found = _attached(attachments.get(source.removeprefix("attachment:")))
    else:
        found = photos.embed(source.removeprefix("./").removeprefix("photos/"))
    if found is None:
        if photos.audience == "owner":
            left_out.append(f"{source or 'a picture'} is not a picture in the job's photos folder")
        token.type, token.tag, token.content, token.children, token.nesting = "text", "", "", None, 0
        return
    caption = str(token.attrs.get("title") or alt)
    pictures.append(
        f'<img src="{found.uri}" width="{found.width_px}" height="{found.height_px}" alt="{html.escape(alt or "a picture without a description")}">'
        + _MARK
        + html.escape(caption)
    )
    token.type, token.tag, token.children, token.nesting = "text", "", None, 0
    token.content = f"{_MARK}{len(pictures) - 1}{_MARK}"


def _attached(kept: Any) -> EmbeddedPhoto | None:
    if not isinstance(kept, Mapping):
        return None
    for mime in ("image/png", "image/jpeg", "image/webp", "image/gif"):
        text = kept.get(mime)
        if text:
            try:
                return embed_bytes(base64.b64decode("".join(text)))
            except (binascii.Error, ValueError):
                return None
    return None


def _put_pictures(clean: str, pictures: list[str]) -> str:
    def alone(found: re.Match[str]) -> str:
        image, caption = pictures[int(found[1])].split(_MARK)
        words = f"<figcaption>{caption}</figcaption>" if caption else ""
        return f'<figure class="photo">{image}{words}</figure>'

    def inline(found: re.Match[str]) -> str:
        return pictures[int(found[1])].split(_MARK)[0]

    clean = re.sub(rf"<p>\s*{_MARK}(\d+){_MARK}\s*</p>", alone, clean)
    return re.sub(rf"{_MARK}(\d+){_MARK}", inline, re.sub(r"<p>\s*</p>", "", clean))
