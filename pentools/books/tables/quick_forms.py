"""What entries hold, read many at a time: by a structure that takes less than the careful reader does, never more.

What the quick structure of a kind does not take is given to the kind itself (`Kind.decode`), which says what it is.
"""

from __future__ import annotations

import contextlib
import datetime as dt
import functools
import math
from collections.abc import Callable, Sequence
from types import NoneType
from typing import Annotated, Any, Literal

import msgspec

from pentools.errors import RecordError
from pentools.fields import LONGEST_TYPED, MOST, Field, FieldKind
from pentools.record.entries import Entry
from pentools.record.kinds import Kind
from pentools.record.registry import all_stages
from pentools.units import may_be_negative

__all__ = ["all_kinds", "carefully_held", "held", "quick_form"]

_REFUSED = (msgspec.MsgspecError, ValueError, OverflowError, RecursionError)
_read_lines = msgspec.json.Decoder(dict[str, Any]).decode_lines
_read_one = msgspec.json.Decoder(dict[str, Any]).decode
_write_lines = msgspec.json.Encoder().encode_lines


def held(kind: Kind[Any] | None, data: Sequence[msgspec.Raw]) -> tuple[list[Any], list[int]]:
    """What the data of many lines holds, and which of it is not as the kit writes it.

    Parameters
    ----------
    kind : Kind or None
        The kind that all of them are of; None where nobody asks what they hold.
    data : sequence of Raw
        The data as it stands in lines without control characters.

    Returns
    -------
    forms : list
        Of each a structure with the fields as attributes, as the kind's form has them, but a day as a `date` or its
        text; None where it cannot be read, or of no kind.
    odd : list of int
        The places of those that read and written again are not the same: a name may be given twice in them, or a
        number cannot be read. Their line is for the careful reader.
    """
    together = b"\n".join(data) + b"\n"
    if kind is not None:
        with contextlib.suppress(*_REFUSED):
            forms = _reader(kind)(together)
            if _write_lines(forms) == together:
                return forms, []
    with contextlib.suppress(*_REFUSED):
        values: list[Any] = _read_lines(together)
        if _write_lines(values) == together:
            return [_held(kind, value) for value in values], []
    again = [_read(one) for one in data]
    odd = [place for place, value in enumerate(again) if value is None]
    return [None if value is None else _held(kind, value) for value in again], odd


def _read(data: msgspec.Raw) -> dict[str, Any] | None:
    with contextlib.suppress(*_REFUSED):
        value: dict[str, Any] = _read_one(data)
        if msgspec.json.encode(value) == bytes(data):
            return value
    return None


def _held(kind: Kind[Any] | None, value: dict[str, Any]) -> Any:
    if kind is None:
        return None
    try:
        return msgspec.convert(value, quick_form(kind))
    except msgspec.ValidationError:
        return carefully_held(kind, Entry(id="", at="", stage=kind.stage, kind=kind.key, data=value))


def carefully_held(kind: Kind[Any], entry: Entry) -> Any:
    """What an entry holds by the kind's own word; None where it cannot be read."""
    try:
        return kind.decode(entry)
    except RecordError:
        return None


@functools.cache
def all_kinds() -> dict[tuple[str, str], Kind[Any]]:
    """Every kind by its stage and its key."""
    return {(stage.key, kind.key): kind for stage in all_stages() for kind in stage.kinds}


@functools.cache
def _reader(kind: Kind[Any]) -> Callable[[bytes], list[Any]]:
    return msgspec.json.Decoder(quick_form(kind)).decode_lines


@functools.cache
def quick_form(kind: Kind[Any]) -> type[msgspec.Struct]:
    """The structure by which entries of a kind are read quickly."""
    fields = [(field.name, _taken(field) | None, None) for field in kind.fields]
    return msgspec.defstruct(
        f"Quick{kind.form.__name__}", fields, frozen=True, kw_only=True, gc=False, omit_defaults=True
    )


_SIMPLE: dict[FieldKind, Any] = {
    "text": str, "long text": str, "money": str, "items": tuple[str, ...], "yes-no": bool, "date": dt.date,
}  # fmt: skip


def _taken(field: Field) -> Any:
    """The type of what is surely taken for a field; that of nothing where there is none so simple."""
    match field.kind:
        case "quantity":
            return _reading(field)
        case "quantities":
            return tuple[_reading(field), ...]  # type: ignore[misc]
        case "number":
            return _number(*_range(field, -MOST))
        case "count":
            low, high = _range(field, 0)
            return Annotated[int, msgspec.Meta(ge=math.ceil(low), le=math.floor(high))]
        case "choice" | "ticks":
            one: Any = Literal[tuple(key for key, _ in field.choices)]
            return one if field.kind == "choice" else tuple[one, ...]
        case _:
            return _SIMPLE.get(field.kind, NoneType)


def _range(field: Field, least: float) -> tuple[float, float]:
    low, high = (least if field.low is None else field.low), (MOST if field.high is None else field.high)
    return max(low, -MOST), min(high, MOST)


def _number(low: float, high: float) -> Any:
    """A number as it was written, whole or not, so that it is written the same again."""
    whole: Any = Annotated[int, msgspec.Meta(ge=math.ceil(low), le=math.floor(high))]
    parted: Any = Annotated[float, msgspec.Meta(ge=low, le=high)]
    return whole | parted


@functools.cache
def _reading(field: Field) -> Any:
    lowest = -MOST if may_be_negative(field.unit, field.negative) else 0
    return msgspec.defstruct(
        "QuickReading",
        [
            ("value", _number(lowest, MOST)),
            ("unit", Literal[field.unit]),
            ("standard_uncertainty", _number(0, MOST) | None),
            ("typed", Annotated[str, msgspec.Meta(max_length=LONGEST_TYPED)]),
        ],
        rename={"standard_uncertainty": "u"},
        frozen=True,
        gc=False,
    )
