"""A record that stands as the kit itself wrote it, read at once; any other is left to the careful reader.

The careful reader (`pentools.record.storage`) takes a record line by line and copes with everything that may have happened
to it. Most records are just as they were written: read and written again they are the same, byte for byte. Of such a file
it is known that no line is torn, odd, marked or in another form and that no name is given twice.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from operator import attrgetter
from typing import TYPE_CHECKING, Any, Literal, TypeAlias, cast

import msgspec
import numpy as np
import numpy.typing as npt

from pentools.record.chains import chains, heads
from pentools.record.entries import FORMAT, RELEASE, WITHDRAWAL, YEARS
from pentools.record.registry import STAGES, all_stages

if TYPE_CHECKING:
    from pentools.record.entries import Entry

__all__ = ["PlainLine", "counting", "moments", "plain_lines"]


if TYPE_CHECKING:
    _Stage: TypeAlias = str
    _Kind: TypeAlias = str
else:  # no text of its own for each line, but one for all; what is not known is read carefully
    _Stage = Literal[tuple(STAGES)]
    _Kind = Literal[(WITHDRAWAL, RELEASE, *dict.fromkeys(kind.key for stage in all_stages() for kind in stage.kinds))]


class PlainLine(msgspec.Struct, frozen=True, gc=False):
    """A line as the kit writes it (`Entry`), its data left as it stands: that is looked at with many others at once."""

    id: str
    at: str
    stage: _Stage
    kind: _Kind
    data: msgspec.Raw
    note: str
    replaces: str | None
    format: Literal[1]


assert FORMAT == 1
_read_lines = msgspec.json.Decoder(PlainLine).decode_lines
_write_lines = msgspec.json.Encoder().encode_lines
_CONTROL = re.compile(rb"\xc2[\x80-\x9f]")
_REPLACES_NONE = b',"replaces":null,"format":1}\n'
_replaces, _kind, _id = (attrgetter(name) for name in ("replaces", "kind", "id"))


def plain_lines(data: bytes) -> list[PlainLine] | None:
    """The lines of a record that are each just as the kit writes them, but for times and data, yet to be looked at.

    Parameters
    ----------
    data : bytes
        The file.

    Returns
    -------
    list of PlainLine or None
        In the file's order, which is that in which they count; None where the careful reader is needed.
    """
    if _has_control(data):
        return None
    try:
        lines: list[PlainLine] = _read_lines(data)
        if _write_lines(lines) != data:
            return None
    except (msgspec.MsgspecError, ValueError, RecursionError):
        return None
    ids = set(map(_id, lines))
    # between these lies no text of blanks; one that begins otherwise is looked at by the careful reader
    if len(ids) != len(lines) or (ids and not "!" < min(ids) <= max(ids) < "\x7f"):
        return None
    return lines if data.count(_REPLACES_NONE) == len(lines) or _targets_are_sound(lines) else None


def _targets_are_sound(lines: Sequence[PlainLine]) -> bool:
    targets = set(map(_replaces, lines))
    targets.discard(None)
    return all(map(str.strip, targets))


def _has_control(data: bytes) -> bool:
    """Whether control characters may stand in it; each sign is looked for by itself, since that is the quickest."""
    if b"\\" in data and (b"\\u" in data or b"\\b" in data):
        return True
    return b"\x7f" in data or (b"\xc2" in data and _CONTROL.search(data) is not None)


_LEAST, _MOST = (np.frombuffer(text, np.uint8) for text in (b"0000-00-00T00:00:00+00:00", b"9999-99-99T99:99:99-99:99"))
"""Between these lies every sign of a time as the kit writes it."""


def counting(lines: Sequence[PlainLine]) -> Sequence[PlainLine]:
    """Of lines with unlike ids those that count, in the order first entered, as `Record.live` gives them."""
    targets = set(map(_replaces, lines))
    targets.discard(None)
    if not targets:
        if WITHDRAWAL not in set(map(_kind, lines)):
            return lines
        return [line for line in lines if line.kind != WITHDRAWAL]
    told = cast("list[Entry]", [line for line in lines if line.replaces or line.id in targets])
    standing: dict[str, Any] = {chain[0].id: head for chain, head in zip(chains(told), heads(told), strict=True)}
    passed = {line.id for line in told}
    found = [standing.get(line.id) if line.id in passed else line for line in lines]
    return [line for line in found if line is not None and line.kind != WITHDRAWAL]


def moments(texts: Sequence[str]) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int32], npt.NDArray[np.bool_]]:
    """Times of entry as numbers.

    Parameters
    ----------
    texts : sequence of str
        Times as records hold them, such as ``2026-03-09T10:12:00+01:00``.

    Returns
    -------
    moment : ndarray of int64
        Universal time since the beginning of 1970 [us].
    day : ndarray of int32
        The day on the bench's own clock, since the beginning of 1970 [d].
    sound : ndarray of bool
        Whether it is in the usual form; of the rest the numbers say nothing.
    """
    usual = np.fromiter(map(len, texts), np.int64, len(texts)) == len(_LEAST)
    if not "".join(texts).isascii():
        usual &= np.fromiter(map(str.isascii, texts), bool, len(texts))
    rows = "".join(texts if usual.all() else itertools.compress(texts, usual)).encode()
    signs = np.frombuffer(rows, np.uint8).reshape(-1, len(_LEAST))
    fits = (signs - _LEAST <= _MOST - _LEAST).all(axis=1) & (signs[:, 19] != ord(","))
    two = {
        at: 10 * (signs[:, at] - 48).astype(np.int32) + (signs[:, at + 1] - 48)
        for at in (0, 2, 5, 8, 11, 14, 17, 20, 23)
    }
    year, offset = 100 * two[0] + two[2], np.where(signs[:, 19] == ord("-"), -60, 60) * two[20]
    offset += np.where(signs[:, 19] == ord("-"), -two[23], two[23])
    fits &= (year >= YEARS.start) & (year < YEARS.stop) & (two[5] >= 1) & (two[5] <= 12) & (two[8] >= 1)
    fits &= (two[11] < 24) & (two[14] < 60) & (two[17] < 60) & (two[20] < 24) & (two[23] < 60)
    month = ((year - 1970) * 12 + two[5] - 1).astype("datetime64[M]")
    days = (month.astype("datetime64[D]") + (two[8] - 1)).astype(np.int64)
    fits &= (month + 1).astype("datetime64[D]").astype(np.int64) > days
    clock = ((days * 24 + two[11]) * 60 + two[14] - offset) * 60 + two[17]
    if len(clock) == len(texts):
        return clock * 1_000_000, days.astype(np.int32), fits
    moment, day, sound = np.zeros(len(texts), np.int64), np.zeros(len(texts), np.int32), np.zeros(len(texts), bool)
    moment[usual], day[usual], sound[usual] = clock * 1_000_000, days, fits
    return moment, day, sound
