"""A line of a record taken apart without reading its values, so that one odd value does not hide what stands around it."""

from __future__ import annotations

import re
from collections.abc import Iterator

import msgspec

__all__ = ["members", "names_twice"]

# a string as a whole, or one of the signs that give a line its shape; what lies between them is a number or a word
_TOKEN = re.compile(rb'"(?:[^"\\]|\\.)*+"|["{}\[\],:]', re.DOTALL)
_CLOSES = {b"{": b"}", b"[": b"]"}


def members(line: bytes) -> dict[str, bytes] | None:
    """The members of a JSON object by name, each as the bytes that stand there, whatever they are.

    Parameters
    ----------
    line : bytes
        One line of a record.

    Returns
    -------
    dict or None
        Name to value as written, the last of a name given twice; None where the line has not the shape of one whole
        object.

    Notes
    -----
    It goes through the line once and calls nothing again for what is nested, so depth and length do not matter.

    Examples
    --------
    >>> members(b'{"id":"a","data":{"mass":NaN}}')
    {'id': b'"a"', 'data': b'{"mass":NaN}'}
    """
    text = line.strip()
    found: dict[str, bytes] = {}
    name, since = "", 1
    try:
        for sign, start, end in _cuts(text):
            part = text[since:start].strip()
            if sign == b":":
                name = msgspec.json.decode(part, type=str)
            elif part and name:
                found[name], name = part, ""
            elif part or name or found or sign != b"}":
                return None
            since = end
    except (msgspec.MsgspecError, UnicodeDecodeError):
        return None
    return found if text.startswith(b"{") and since == len(text) and text.endswith(b"}") else None


def _cuts(text: bytes) -> Iterator[tuple[bytes, int, int]]:
    """The colons and commas of the outermost object, and its end; less where brackets do not match."""
    closing: list[bytes] = []
    for token in _TOKEN.finditer(text):
        sign = token[0]
        if sign == b'"':
            return
        if sign in _CLOSES:
            closing.append(_CLOSES[sign])
        elif sign in (b"}", b"]") and (not closing or closing.pop() != sign):
            return
        if not closing or (len(closing) == 1 and sign in (b":", b",")):
            yield sign, token.start(), token.end()


def names_twice(line: bytes) -> str:
    """The first name that one object of a line gives twice; empty where there is none.

    Parameters
    ----------
    line : bytes
        JSON that could be read.

    Returns
    -------
    str
        The name.

    Examples
    --------
    >>> names_twice(b'{"data":{"mass":1,"mass":2}}')
    'mass'
    """
    seen: list[set[bytes]] = []
    last = b""
    for token in _TOKEN.finditer(line):
        sign = token[0]
        if sign in _CLOSES:
            seen.append(set())
        elif sign in (b"}", b"]"):
            seen.pop()
        elif sign == b":":
            if last in seen[-1]:
                return str(msgspec.json.decode(last))
            seen[-1].add(last)
        last = sign
    return ""
