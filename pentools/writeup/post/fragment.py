"""A post as a plain fragment of HTML: headings, paragraphs, lists and pictures beside it; no styles, classes, ids or scripts."""

from __future__ import annotations

import html
from collections.abc import Iterable
from typing import TYPE_CHECKING

from pentools.writeup.outputs import PublishedOutput
from pentools.writeup.post.parts import (
    Caption,
    FactsList,
    Fold,
    Image,
    Mark,
    PostPart,
    Said,
    Title,
)
from pentools.writeup.story import text_html
from pentools.writeup.tale.chapters import Words

if TYPE_CHECKING:
    from pentools.writeup.post.parts import Placed
    from pentools.writeup.post.pictures import PostPicture
    from pentools.writeup.story import StoryPicture

__all__ = ["fragment", "image_html"]


def fragment(parts: Iterable[PostPart], placed: Placed) -> str:
    """The parts of a post as HTML.

    Parameters
    ----------
    parts : iterable of PostPart
        In order.
    placed : callable
        Where a picture of the restorer's text lies.

    Returns
    -------
    str
        A fragment to paste into a page; its headings begin with the second level.
    """
    return "\n".join(text for part in parts if (text := _html(part, placed))) + "\n"


def _html(part: PostPart, placed: Placed) -> str:
    match part:
        case Words(tokens):
            made = text_html(tokens, lambda picture, alone: _told_picture(picture, alone, placed))
        case Image():
            made = _figure(part, "")
        case Caption(image, text):
            made = _figure(image, text)
        case FactsList(rows):
            lines = (f"<li><strong>{html.escape(a)}:</strong> {html.escape(b)}</li>" for a, b in rows)
            made = "<ul>\n" + "\n".join(lines) + "\n</ul>"
        case Fold(title, texts):
            body = "\n".join(f"<p>{html.escape(text)}</p>" for text in texts)
            made = f"<details>\n<summary>{html.escape(title)}</summary>\n{body}\n</details>"
        case _:
            made = _line(part)
    return made


def _line(part: Title | Said | Mark | PublishedOutput) -> str:
    match part:
        case Title(level, text):
            return f"<h{level}>{html.escape(text)}</h{level}>"
        case Said(text):
            return f"<p>{html.escape(text)}</p>"
        case Mark(word, text):
            return f"<p><strong>{html.escape(word)}:</strong> {html.escape(text)}</p>"
    return part.html


def _figure(image: Image, caption: str) -> str:
    words = f"<figcaption>{html.escape(caption)}</figcaption>" if caption else ""
    return f"<figure>{image_html(image.picture)}{words}</figure>"


def image_html(picture: PostPicture) -> str:
    """A picture as an element, by its file's name."""
    return f'<img src="{html.escape(picture.file)}" alt="{html.escape(picture.alt)}" width="{picture.width_px}" height="{picture.height_px}">'


def _told_picture(picture: StoryPicture, alone: bool, placed: Placed) -> str:
    image = Image(placed(picture))
    return _figure(image, picture.caption) if alone else image_html(image.picture)
