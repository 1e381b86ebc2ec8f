"""The restorer's own text: markdown from a notebook cell turned into HTML that can do no harm."""

from __future__ import annotations

import base64
import binascii
import functools
import html
import re
from collections.abc import Callable, Mapping, MutableMapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any
from urllib.parse import unquote

from pentools.writeup.photos import EmbeddedPhoto, PhotoBook, embed_bytes

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

__all__ = [
    "Story",
    "StoryPicture",
    "StoryText",
    "clean_html",
    "embedded_html",
    "heading_levels",
    "read_text",
    "tell",
    "text_html",
]

_TAGS = {
    "a", "blockquote", "br", "code", "dd", "del", "dl", "dt", "em", "h2", "h3", "h4", "h5", "h6", "hr", "li", "ol", "p",
    "pre", "s", "strong", "sub", "sup", "table", "tbody", "td", "tfoot", "th", "thead", "tr", "ul", "caption", "b", "i", "span",
}  # fmt: skip
_ATTRIBUTES: dict[str, set[str]] = {
    "*": set(),  # no titles either: they are read by whoever points at them
    "a": {"href"},
    "ol": {"start"},
    "td": {"colspan", "rowspan"},
    "th": {"scope", "colspan", "rowspan"},
}
_GONE_WHOLE = {
    "script",
    "style",
    "svg",
    "math",
    "template",
    "noscript",
    "title",
    "iframe",
    "object",
    "textarea",
    "select",
}
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


@dataclass(frozen=True, slots=True)
class StoryPicture:
    """A picture that the restorer set into the text; ``file`` is its name in the photos folder, empty for a pasted one."""

    embedded: EmbeddedPhoto
    alt: str
    caption: str
    file: str = ""


@dataclass(frozen=True, slots=True)
class StoryText:
    """A piece of the restorer's text as Markdown tokens, before it becomes HTML or Markdown again.

    Parameters
    ----------
    tokens : tuple of Token
        Its headings at their levels; a picture that may be shown has its `StoryPicture` as ``meta["picture"]``, one
        that may not is gone.
    last_level : int
        Level of its last heading; 0 where it has none.
    left_out : tuple of str
        Pictures that could not be shown, with the reason.
    """

    tokens: tuple[Token, ...]
    last_level: int = 0
    left_out: tuple[str, ...] = ()

    @property
    def pictures(self) -> tuple[StoryPicture, ...]:
        """The pictures that are shown, in order."""
        return tuple(
            child.meta["picture"] for token in self.tokens for child in token.children or () if child.type == "image"
        )


@functools.cache
def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt

    made = MarkdownIt("commonmark", {"html": False}).enable(["table", "strikethrough"])
    made.add_render_rule("image", _mark_picture)
    return made


def _mark_picture(_: Any, tokens: Sequence[Token], index: int, __: Any, env: MutableMapping[str, Any]) -> str:
    """In the place of a picture a mark, until the text around it is cleaned."""
    found = env.setdefault("pictures", [])
    found.append(tokens[index].meta["picture"])
    return f"{_MARK}{len(found) - 1}{_MARK}"


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
    read = read_text(text, photos, lift=lift, level_before=level_before, attachments=attachments)
    return Story(text_html(read.tokens, embedded_html), read.last_level, read.left_out)


def read_text(
    text: str,
    photos: PhotoBook,
    *,
    lift: int = 1,
    level_before: int = 1,
    least: int = 2,
    attachments: Mapping[str, Any] | None = None,
) -> StoryText:
    """Read a markdown cell; what `tell` does before the text becomes HTML.

    Parameters
    ----------
    text, photos, lift, level_before
        As for `tell`.
    least : int
        The highest rank that a heading may take, 2 to 6.
    attachments : mapping or None
        As for `tell`.

    Returns
    -------
    StoryText
        The text as tokens.
    """
    tokens = _parser().parse(text.replace(_MARK, ""))
    last = _settle_headings(tokens, lift, level_before, least)
    left_out: list[str] = []
    for token in tokens:
        for child in token.children or ():
            if child.type == "image":
                _find_picture(child, photos, attachments or {}, left_out)
    return StoryText(tuple(tokens), last, tuple(left_out))


def text_html(tokens: Sequence[Token], picture: Callable[[StoryPicture, bool], str]) -> str:
    """Tokens of `read_text` as HTML that can do no harm.

    Parameters
    ----------
    tokens : sequence of Token
        Whole blocks, or the inside of one.
    picture : callable
        Takes a picture and whether it stands alone in its paragraph; gives its HTML.

    Returns
    -------
    str
        The text; empty where nothing is left.
    """
    env: dict[str, Any] = {}
    raw = str(_parser().renderer.render(tokens, _parser().options, env))
    return _put_pictures(clean_html(raw), env.get("pictures", []), picture).strip()


def embedded_html(picture: StoryPicture, alone: bool) -> str:
    """A picture of the text as a page shows it: with its caption where it stands alone."""
    found = picture.embedded
    image = (
        f'<img src="{found.uri}" width="{found.width_px}" height="{found.height_px}" alt="{html.escape(picture.alt)}">'
    )
    if not alone:
        return image
    words = f"<figcaption>{html.escape(picture.caption)}</figcaption>" if picture.caption else ""
    return f'<figure class="photo">{image}{words}</figure>'


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
        clean_content_tags=_GONE_WHOLE,
    )


def _only_plain_links(tag: str, attribute: str, value: str) -> str | None:
    if (tag, attribute) == ("a", "href"):
        return value if _LINKS.fullmatch(value) else None
    return value


def _settle_headings(tokens: list[Token], lift: int, level_before: int, least: int) -> int:
    """Lower the headings and close gaps between levels; gives the last level, 0 where there is none."""
    current, last = level_before, 0
    level = least
    for token in tokens:
        if token.type == "heading_open":
            level = max(least, min(int(token.tag[1]) + lift, current + 1, _DEEPEST))
            current = last = level
        if token.type in ("heading_open", "heading_close"):
            token.tag = f"h{level}"
            token.markup = "#" * level
    return last


def _find_picture(token: Token, photos: PhotoBook, attachments: Mapping[str, Any], left_out: list[str]) -> None:
    source = unquote(str(token.attrs.get("src", "")))
    alt = token.content.strip()
    found: EmbeddedPhoto | None = None
    file = ""
    if source.startswith("attachment:"):
        if photos.audience == "owner":
            found = _attached(attachments.get(source.removeprefix("attachment:")))
    else:
        file = source.removeprefix("./").removeprefix("photos/")
        found = photos.embed(file)
    if found is None:
        if photos.audience == "owner":
            left_out.append(f"{source or 'a picture'} is not a picture in the job’s photos folder")
        token.type, token.tag, token.content, token.children, token.nesting = "text", "", "", None, 0
        return
    caption = str(token.attrs.get("title") or alt)
    token.meta["picture"] = StoryPicture(found, alt or "a picture without a description", caption, file)


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


def _put_pictures(clean: str, pictures: Sequence[StoryPicture], picture: Callable[[StoryPicture, bool], str]) -> str:
    def put(found: re.Match[str], *, alone: bool) -> str:
        return picture(pictures[int(found[1])], alone)

    clean = re.sub(rf"<p>\s*{_MARK}(\d+){_MARK}\s*</p>", functools.partial(put, alone=True), clean)
    return re.sub(rf"{_MARK}(\d+){_MARK}", functools.partial(put, alone=False), re.sub(r"<p>\s*</p>", "", clean))
