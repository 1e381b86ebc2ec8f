"""The lines of a record's file: split at any line end, each read by itself, so that a bad one spoils no other."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass

import msgspec

from pentools.errors import RecordError
from pentools.record.entries import MERGE_ORDER, Entry, NewerFormatError, decode_entry, encode_entry
from pentools.record.members import members

__all__ = ["MARK", "Line", "name_of", "read_line", "read_lines", "split_lines", "whole_part", "without_mark"]

MARK = b"\xef\xbb\xbf"  # the byte-order mark that some editors put at the head of a text
_END = re.compile(rb"\r\n|\n|\r")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a record that is not blank.

    Parameters
    ----------
    number : int
        Its place in the file, from 1.
    name : str
        What it goes by: its id, or one made from its content where it has none.
    entry : Entry or None
        What it says; None where this version cannot read it.
    problem : str
        Why it could not be read.
    form : int or None
        The newer form that it is in; such a line is kept and passed by.
    id : str
        The id that it states, as far as that can be made out.
    """

    number: int
    name: str
    entry: Entry | None = None
    problem: str = ""
    form: int | None = None
    id: str = ""

    @property
    def counts(self) -> bool:
        """Whether it is an entry of the job; the line that a merge leaves on the order is none."""
        return self.entry is not None and self.entry.kind != MERGE_ORDER

    @property
    def whole(self) -> bool:
        """Whether it is a line of a record, be it in a newer form; otherwise it cannot be read at all."""
        return self.entry is not None or self.form is not None


def without_mark(raw: bytes) -> bytes:
    """Bytes without the byte-order marks that stand at their head."""
    at = 0
    while raw.startswith(MARK, at):
        at += len(MARK)
    return raw[at:]


def split_lines(data: bytes) -> list[bytes]:
    """The lines of some bytes, whatever ends them (line feed, carriage return, or both)."""
    return _END.split(data)


def whole_part(data: bytes) -> int:
    """How many of some bytes belong to lines that are ended; a last carriage return may be half an end."""
    body = data.removesuffix(b"\r")
    return max(body.rfind(b"\n"), body.rfind(b"\r")) + 1


def name_of(entry: Entry) -> str:
    """What an entry goes by: its id, or one made from its content where it has none."""
    return entry.id or _made_name(encode_entry(entry))


def _made_name(content: bytes) -> str:
    return "line-" + hashlib.blake2b(content, digest_size=12).hexdigest()


def read_line(raw: bytes, number: int) -> Line:
    """One line, read as far as that can be done.

    Parameters
    ----------
    raw : bytes
        The line without its end; a byte-order mark before it is passed over.
    number : int
        Its place in the file.

    Returns
    -------
    Line
        With its entry, or with what stands in the way.
    """
    content = without_mark(raw).strip()
    try:
        entry = _without_blanks(decode_entry(content))
    except RecordError as error:
        stated = _id_in(content)
        if isinstance(error, NewerFormatError):
            return Line(number, stated or _made_name(content), problem=str(error), form=error.form, id=stated)
        return Line(number, _made_name(content), problem=str(error), id=stated)
    return Line(number, name_of(entry), entry, id=entry.id)


def _without_blanks(entry: Entry) -> Entry:
    """An id or a target of blanks is none: two entries under it would be taken for one."""
    spaced = {name: "" for name in ("id", "replaces") if (text := getattr(entry, name)) and not text.strip()}
    return msgspec.structs.replace(entry, **spaced) if spaced else entry


def _id_in(content: bytes) -> str:
    try:
        return msgspec.json.decode((members(content) or {}).get("id", b""), type=str)
    except (msgspec.MsgspecError, UnicodeDecodeError):
        return ""


def read_lines(data: bytes, start: int = 1) -> Iterator[tuple[bytes, Line]]:
    """Every line that is not blank, as it stands (its end and a byte-order mark left out) and as it reads.

    Parameters
    ----------
    data : bytes
        A file, or what follows in it.
    start : int
        The number of the first line.

    Yields
    ------
    tuple of bytes and Line
        In the file's order.
    """
    for number, raw in enumerate(split_lines(data), start=start):
        content = without_mark(raw)
        if content.strip():
            yield content, read_line(content, number)
