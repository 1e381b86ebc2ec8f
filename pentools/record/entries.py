"""One line of a job's record: what was entered, when, for which stage, and which older line it replaces."""

from __future__ import annotations

import contextlib
import contextvars
import datetime as dt
import re
import uuid
from collections.abc import Iterator
from typing import Annotated, Any

import msgspec

from pentools.errors import RecordError
from pentools.record.members import members, names_twice

__all__ = [
    "FORMAT",
    "MERGE_ORDER",
    "RELEASE",
    "WITHDRAWAL",
    "YEARS",
    "Entry",
    "NewerFormatError",
    "OddEntry",
    "as_if_at",
    "decode_entry",
    "encode_entry",
    "new_entry",
    "now",
]

FORMAT = 1
WITHDRAWAL = "withdrawal"
RELEASE = "hold release"
MERGE_ORDER = "merge order"


Form = Annotated[int, msgspec.Meta(ge=1, le=999)]
"""A line's form; no version writes one beyond these."""


class NewerFormatError(RecordError):
    """A line in a newer form than this version knows; it is kept and passed by.

    Parameters
    ----------
    form : int
        The form that the line says it has.
    """

    def __init__(self, form: int) -> None:
        self.form = form
        super().__init__(
            f"It is in form {form}; this version of the kit reads form {FORMAT}. It is kept and passed by."
        )


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """One entry of a record.

    Parameters
    ----------
    format : int
        Version of the line's form; this program writes and reads 1.
    id : str
        Unique name of the entry.
    at : str
        When it was entered: ISO 8601 with zone.
    stage, kind : str
        What it belongs to; unknown ones are kept.
    data : dict
        Field name to value; a missing or null field was not measured.
    note : str
        The restorer's remark on this entry.
    replaces : str or None
        The id of the entry that this one corrects or withdraws.
    """

    id: str
    at: str
    stage: str
    kind: str
    data: dict[str, Any]
    note: str = ""
    replaces: str | None = None
    format: Form = FORMAT

    @property
    def time(self) -> dt.datetime:
        """The moment of entry, with zone."""
        return dt.datetime.fromisoformat(self.at)


class OddEntry(Entry, frozen=True, kw_only=True):
    """An entry whose place in the record is plain, and whose data, remark or target is nothing that can be read.

    It stands in the log with its reason, and can be corrected or withdrawn like any other; its `data` is empty.

    Parameters
    ----------
    reason : str
        What is odd, as a clause.
    line : bytes
        The line as it stands.
    """

    reason: str
    line: bytes


_PLACE = ("id", "at", "stage", "kind")
_HALF_A_SIGN = re.compile(rb"(?i)(?<!\\)(?:\\\\)*(\\u(?:d[89ab][0-9a-f]{2}(?!\\ud[c-f])))")
YEARS = range(1969, 2200)  # judged: a clock that lost its time says 1970, west of Greenwich still 1969; none says more
_decoder = msgspec.json.Decoder(Entry)
_encoder = msgspec.json.Encoder()


_AT: contextvars.ContextVar[dt.datetime | None] = contextvars.ContextVar("at", default=None)


@contextlib.contextmanager
def as_if_at(moment: dt.datetime) -> Iterator[None]:
    """Let `now` give another moment: what is asked within does not hang on the clock.

    Parameters
    ----------
    moment : datetime
        With its zone.
    """
    token = _AT.set(moment)
    try:
        yield
    finally:
        _AT.reset(token)


def now() -> dt.datetime:
    """The present moment with the local zone, to the second; within `as_if_at` the moment that was given."""
    return _AT.get() or dt.datetime.now().astimezone().replace(microsecond=0)


def new_entry(
    stage: str,
    kind: str,
    data: dict[str, Any],
    *,
    note: str = "",
    replaces: str | None = None,
    at: dt.datetime | None = None,
) -> Entry:
    """A fresh entry with an id of its own.

    Parameters
    ----------
    stage, kind : str
        What it belongs to.
    data : dict
        Field name to JSON value.
    note : str
        A remark.
    replaces : str or None
        The id of the entry corrected.
    at : datetime or None
        The moment; now by default. It must carry a zone.

    Returns
    -------
    Entry
        The entry, not yet written.

    Raises
    ------
    RecordError
        If the moment has no zone, or is in a year that no entry is read of.
    """
    moment = at or now()
    if moment.tzinfo is None:
        raise RecordError("An entry's time needs a zone, such as +01:00.")
    if moment.year not in YEARS:
        raise RecordError(
            f"The computer's clock says {moment:%Y-%m-%d}. Nothing was saved; put it right and save again."
        )
    return Entry(
        id=uuid.uuid4().hex, at=moment.isoformat(), stage=stage, kind=kind, data=data, note=note, replaces=replaces
    )


def encode_entry(entry: Entry) -> bytes:
    """The entry as one line of JSON without its line end; one that could not be read as it stood.

    Raises
    ------
    RecordError
        If a text in it holds half a character.
    """
    try:
        return entry.line if isinstance(entry, OddEntry) else _encoder.encode(entry)
    except UnicodeEncodeError as error:
        raise RecordError("A text holds half a character and cannot be written. Type it again.") from error


def decode_entry(line: bytes) -> Entry:
    """An entry from one line of JSON.

    Parameters
    ----------
    line : bytes
        UTF-8 JSON without its line end.

    Returns
    -------
    Entry
        The entry; keys this program does not know stay in the line on disk. An `OddEntry` where only its id, time,
        stage and kind can be read.

    Raises
    ------
    NewerFormatError
        If the line is in a newer form, whatever else it holds.
    RecordError
        If the line is not such an object; the text says where.
    """
    try:
        entry = _read(line)
    except RecordError:
        if (form := _form_of(line)) > FORMAT:
            raise NewerFormatError(form) from None
        raise
    form = _form_of(line) if isinstance(entry, OddEntry) else entry.format
    if form > FORMAT:
        raise NewerFormatError(form)
    return entry


def _form_of(line: bytes) -> int:
    """The form that a line states; that of this version where it states none that makes sense."""
    try:
        return msgspec.json.decode((members(line) or {}).get("format", b""), type=Form)
    except (msgspec.MsgspecError, UnicodeDecodeError):
        return FORMAT


def _read(line: bytes) -> Entry:
    try:
        entry = _decoder.decode(line)
    except (msgspec.MsgspecError, UnicodeDecodeError, ValueError, RecursionError) as error:
        return _placed(line, error)
    _check_time(entry.at)
    if line.count(b'":') != len(entry.__struct_fields__) + _names_in(entry.data) and (name := names_twice(line)):
        return _odd(line, entry, f"“{name}” is given twice")
    return entry


def _check_time(at: str) -> None:
    try:
        moment = dt.datetime.fromisoformat(at)
    except ValueError as error:
        raise RecordError(f"This line is not an entry: {error}.") from error
    if moment.tzinfo is None:
        raise RecordError(f"This line is not an entry: the time “{at}” has no zone.")
    if moment.year not in YEARS:
        raise RecordError(f"This line is not an entry: no clock of a bench says “{at}”.")


def _names_in(data: dict[str, Any] | list[Any]) -> int:
    """How many names the objects of some data give, so that a name given twice is looked for only where one is."""
    inner = data.values() if isinstance(data, dict) else data
    count = len(data) if isinstance(data, dict) else 0
    return count + sum(_names_in(item) for item in inner if isinstance(item, (dict, list)))


def _placed(line: bytes, error: Exception) -> OddEntry:
    """The entry by its id, time, stage and kind alone; without these a line is none."""
    parts = members(line) or {}
    place: dict[str, Any] = {}
    for name in _PLACE:
        try:
            place[name] = msgspec.json.decode(parts.get(name, b""), type=str)
        except (msgspec.MsgspecError, UnicodeDecodeError):
            raise RecordError(f"This line is not an entry: {_why(line, error)}.") from error
    _check_time(place["at"])
    try:
        replaces = msgspec.json.decode(parts.get("replaces", b"null"), type=str | None)
    except (msgspec.MsgspecError, UnicodeDecodeError):
        replaces = None
    return _odd(line, Entry(data={}, replaces=replaces, **place), _why(line, error))


def _why(line: bytes, error: Exception) -> str:
    if isinstance(error, RecursionError):
        return "it is nested too deep"
    half = _HALF_A_SIGN.search(line)
    return f"“{half[1].decode()}” is half a character" if half else str(error).rstrip(".")


def _odd(line: bytes, entry: Entry, reason: str) -> OddEntry:
    return OddEntry(
        id=entry.id, at=entry.at, stage=entry.stage, kind=entry.kind, data={}, replaces=entry.replaces,
        reason=reason, line=line,
    )  # fmt: skip
