"""One line of a job's record: what was entered, when, for which stage, and which older line it replaces."""

from __future__ import annotations

import datetime as dt
import uuid
from typing import Any

import msgspec

from pentools.errors import RecordError

__all__ = ["FORMAT", "RELEASE", "WITHDRAWAL", "Entry", "decode_entry", "encode_entry", "new_entry", "now"]

FORMAT = 1
WITHDRAWAL = "withdrawal"
RELEASE = "hold release"


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """One entry of a record.

    Parameters
    ----------
    format : int
        Version of the line's form; this program writes 1 and reads any.
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
    format: int = FORMAT

    @property
    def time(self) -> dt.datetime:
        """The moment of entry, with zone."""
        return dt.datetime.fromisoformat(self.at)


_decoder = msgspec.json.Decoder(Entry)
_encoder = msgspec.json.Encoder()


def now() -> dt.datetime:
    """The present moment with the local zone, to the second."""
    return dt.datetime.now().astimezone().replace(microsecond=0)


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
        If the moment has no zone.
    """
    moment = at or now()
    if moment.tzinfo is None:
        raise RecordError("An entry's time needs a zone, such as +01:00.")
    return Entry(
        id=uuid.uuid4().hex, at=moment.isoformat(), stage=stage, kind=kind, data=data, note=note, replaces=replaces
    )


def encode_entry(entry: Entry) -> bytes:
    """The entry as one line of JSON without its line end."""
    return _encoder.encode(entry)


def decode_entry(line: bytes) -> Entry:
    """An entry from one line of JSON.

    Parameters
    ----------
    line : bytes
        UTF-8 JSON without its line end.

    Returns
    -------
    Entry
        The entry; keys this program does not know stay in the line on disk.

    Raises
    ------
    RecordError
        If the line is not such an object; the text says where.
    """
    try:
        entry = _decoder.decode(line)
        if entry.time.tzinfo is None:
            raise RecordError(f"The time “{entry.at}” has no zone.")
    except (msgspec.MsgspecError, UnicodeDecodeError, ValueError) as error:
        raise RecordError(f"This line is not an entry: {error}.") from error
    return entry
