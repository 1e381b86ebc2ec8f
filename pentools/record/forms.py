"""What an entry holds as a typed structure: the attributes of a form are its fields."""

from __future__ import annotations

import functools
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import NoneType, UnionType
from typing import TYPE_CHECKING, Annotated, Any, Generic, TypeVar, Union, get_args, get_origin, get_type_hints

import msgspec

from pentools.fields import Audience, Field, FieldKind, Value
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.sums.base import Sum

__all__ = ["F", "F_co", "Form", "Logged", "asked_by", "fields_of", "form_with"]


class Form(msgspec.Struct, frozen=True, kw_only=True):
    """What an entry of one kind holds: every attribute is None where it was not given.

    A kind's own form is a subclass, again ``frozen=True``, whose attributes are ``Annotated[<type> | None, <field>] = None``. The field
    takes the attribute's name; `ask` writes one without a name, `asked_by` takes over a sum's own.
    """


F = TypeVar("F", bound=Form)
F_co = TypeVar("F_co", bound=Form, covariant=True)
FieldOf = Callable[[str], Field]

_TYPES: dict[FieldKind, Any] = {
    "quantity": Reading,
    "quantities": tuple[Reading, ...],
    "number": float,
    "count": int,
    "text": str,
    "long text": str,
    "choice": str,
    "ticks": tuple[str, ...],
    "yes-no": bool,
    "date": str,
    "photo": str,
    "items": tuple[str, ...],
    "money": str,
}


@dataclass(frozen=True, slots=True)
class Logged(Generic[F_co]):
    """An entry with what it holds."""

    entry: Entry
    values: F_co


def asked_by(
    chosen: Sum, *, audience: Audience = "everybody", required: bool | None = None, usual: bool = True
) -> FieldOf:
    """Fields that a sum declares already, for a form: label, unit and range stay written once.

    Parameters
    ----------
    chosen : Sum
        The sum; the form's attribute is the name of its field.
    audience : {"bench", "owner", "everybody"}
        Who may read it.
    required : bool or None
        Whether an entry without it is refused; None as the sum itself has it.
    usual : bool
        Whether a fresh box starts from the sum's own default.

    Returns
    -------
    callable
        Gives the field for an attribute's name.
    """

    def named(name: str) -> Field:
        field = next((field for field in chosen.fields if field.name == name), None)
        if field is None:
            raise TypeError(f"The sum “{chosen.key}” asks for no {name}.")
        return replace(
            field,
            audience=audience,
            required=field.required if required is None else required,
            default=field.default if usual else "",
        )

    return named


@functools.cache
def fields_of(form: type[Form]) -> tuple[Field, ...]:
    """The fields of a form, in the order of its attributes.

    Returns
    -------
    tuple of Field
        Each with its attribute's name.

    Raises
    ------
    TypeError
        If an attribute has no field, or its type is not that of the field's kind.
    """
    return tuple(_field(form.__name__, name, hint) for name, hint in get_type_hints(form, include_extras=True).items())


def _field(form: str, name: str, hint: Any) -> Field:
    where = f"{form}.{name}"
    if get_origin(hint) is not Annotated:
        raise TypeError(f"{where} has no field: write Annotated[… | None, ask(…)].")
    kept, said, *_ = get_args(hint)
    field = replace(said, name=name) if isinstance(said, Field) else said(name)
    wanted = _TYPES[field.kind]
    if get_origin(kept) not in (UnionType, Union) or set(get_args(kept)) != {wanted, NoneType}:
        raise TypeError(f"{where} is a {field.kind}, so its type is {wanted} | None, not {kept}.")
    return field


def form_with(form: type[F], values: Mapping[str, Value]) -> F:
    """A form filled with values that were read already; what is not among them is None."""
    return form(**{field.name: values.get(field.name) for field in fields_of(form)})
