"""A post as Markdown (CommonMark): the same parts as the HTML, set by a library that escapes what must be escaped."""

from __future__ import annotations

import copy
import functools
import re
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from pentools.writeup.post.fragment import image_html
from pentools.writeup.post.parts import Caption, FactsList, Fold, Image, Mark, PostPart, Said, Title
from pentools.writeup.story import text_html
from pentools.writeup.tale.chapters import Words

if TYPE_CHECKING:
    from markdown_it.token import Token

    from pentools.writeup.post.parts import Placed
    from pentools.writeup.post.pictures import PostPicture
    from pentools.writeup.story import StoryPicture

__all__ = ["commonmark"]

_FOLD_LEVEL = 3
_MARKS = re.compile(r"([\\`*_\[\]<>&!~|])")


def commonmark(parts: Iterable[PostPart], placed: Placed) -> str:
    """The parts of a post as Markdown.

    Parameters
    ----------
    parts : iterable of PostPart
        In order.
    placed : callable
        Where a picture of the restorer's text lies.

    Returns
    -------
    str
        CommonMark; a table of the restorer's is HTML in it, since CommonMark has none of its own.
    """
    from mdformat.renderer import MDRenderer

    tokens = [token for part in parts for token in _tokens(part, placed)]
    _without_nulls(tokens)
    options = {"mdformat": {}, "store_labels": False, "parser_extension": []}
    return _without_tilde_fences(MDRenderer().render(tokens, options, {}))


def _without_nulls(tokens: Iterable[Token]) -> None:
    """The renderer keeps the null sign for itself; CommonMark puts U+FFFD in its place."""
    for token in tokens:
        token.content = token.content.replace("\0", "\ufffd")
        token.attrs = {
            name: value.replace("\0", "\ufffd") if isinstance(value, str) else value
            for name, value in token.attrs.items()
        }
        _without_nulls(token.children or ())


def _without_tilde_fences(text: str) -> str:
    """A line of words that begins with three tildes is no fence: the renderer escapes all but these, and fences with backticks."""
    lines, fenced = [], False
    for line in text.split("\n"):
        if line.lstrip(" ").startswith("```"):
            fenced = not fenced
        lines.append(line if fenced else re.sub(r"^((?:[ >]|[-*+] )*)(?=~~~)", r"\1\\", line))
    return "\n".join(lines)


def _tokens(part: PostPart, placed: Placed) -> Iterator[Token]:
    match part:
        case Title(level, text):
            yield from _block("heading", f"h{level}", [_text(text)], markup="#" * level)
        case Words(tokens):
            yield from _told(tokens, placed)
        case Said(text):
            yield from _paragraph(_text(text))
        case Mark(word, text):
            yield from _paragraph(*_strong(f"{word}:"), _text(f" {text}"))
        case Image(picture):
            yield from _paragraph(_image(picture))
        case Caption(image, text):
            yield from _paragraph(_image(image.picture))
            yield from _paragraph(_text(text))
        case FactsList(rows):
            yield from _list(rows)
        case Fold(title, texts):
            yield from _block("heading", f"h{_FOLD_LEVEL}", [_text(title)], markup="#" * _FOLD_LEVEL)
            for text in texts:
                yield from _paragraph(_text(text))
        case _:
            yield _html_block(part.html)


def _told(tokens: Sequence[Token], placed: Placed) -> Iterator[Token]:
    """The restorer's text: pictures at their files with their captions, tables and struck words as HTML."""
    rest = iter(range(len(tokens)))
    for index in rest:
        token = tokens[index]
        if token.type == "table_open":
            end = next(i for i in rest if tokens[i].type == "table_close" and tokens[i].level == token.level)
            yield _html_block(text_html(tokens[index : end + 1], functools.partial(_inline_img, placed)))
            continue
        made = copy.copy(token)
        if token.children is not None:
            made.children = [_inside(child, placed) for child in token.children]
        yield made
        if token.type == "paragraph_close" and (caption := _caption(tokens[index - 1])):
            yield from _paragraph(_text(caption), level=token.level)


def _caption(inline: Token) -> str:
    """What stands under a picture that is alone in its paragraph."""
    seen = [child for child in inline.children or () if child.type != "text" or child.content.strip()]
    return str(seen[0].meta["picture"].caption) if len(seen) == 1 and seen[0].type == "image" else ""


def _inside(child: Token, placed: Placed) -> Token:
    made = copy.copy(child)
    if child.type == "image":
        return _image(placed(child.meta["picture"]))
    if child.type in ("s_open", "s_close"):
        made.type, made.content, made.nesting = "html_inline", "<del>" if child.nesting > 0 else "</del>", 0
    return made


def _inline_img(placed: Placed, picture: StoryPicture, alone: bool) -> str:  # noqa: ARG001 - a table has no captions
    return image_html(placed(picture))


def _image(picture: PostPicture) -> Token:
    from markdown_it.token import Token

    # the library sets these words as they come
    words = _MARKS.sub(r"\\\1", re.sub(r"[ \t\r\n]+", " ", picture.alt))
    return Token("image", "img", 0, attrs={"src": picture.file, "alt": ""}, children=[_text(words)], content=words)


def _text(content: str) -> Token:
    from markdown_it.token import Token

    return Token("text", "", 0, content=" ".join(content.split(" ")))


def _strong(text: str) -> list[Token]:
    from markdown_it.token import Token

    return [
        Token("strong_open", "strong", 1, markup="**"),
        _text(text),
        Token("strong_close", "strong", -1, markup="**"),
    ]


def _paragraph(*children: Token, level: int = 0) -> Iterator[Token]:
    yield from _block("paragraph", "p", list(children), level=level)


def _block(name: str, tag: str, children: list[Token], markup: str = "", level: int = 0) -> Iterator[Token]:
    from markdown_it.token import Token

    yield Token(f"{name}_open", tag, 1, markup=markup, level=level, block=True)
    yield Token("inline", "", 0, children=children, level=level + 1, block=True)
    yield Token(f"{name}_close", tag, -1, markup=markup, level=level, block=True)


def _list(rows: Iterable[tuple[str, str]]) -> Iterator[Token]:
    from markdown_it.token import Token

    yield Token("bullet_list_open", "ul", 1, markup="-", block=True)
    for label, value in rows:
        yield Token("list_item_open", "li", 1, markup="-", block=True, level=1)
        for token in _paragraph(*_strong(f"{label}:"), _text(f" {value}"), level=2):
            token.hidden = token.type != "inline"
            yield token
        yield Token("list_item_close", "li", -1, markup="-", block=True, level=1)
    yield Token("bullet_list_close", "ul", -1, markup="-", block=True)


def _html_block(content: str) -> Token:
    from markdown_it.token import Token

    # an empty line would end the piece of HTML
    whole = content if content.startswith("<pre") else re.sub(r"\n\s*\n", "\n", content)
    return Token("html_block", "", 0, content=whole, block=True)
