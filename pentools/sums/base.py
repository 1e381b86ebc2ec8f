"""What a sum is: fields in, one sentence, findings and a JSON object out.

A sum joins typed values, reference tables and a calculation. Panels, write-ups and the command line all call
the same one, so they cannot disagree.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, overload

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.markup import findings_html, sentence_html, shown_alone, table_html
from pentools.units import Reading

if TYPE_CHECKING:
    import pandas

__all__ = ["AskedFor", "Inputs", "Sum", "SumAnswer", "read_options"]

LONGEST_REPR = 160


class Inputs(Mapping[str, Value]):
    """What was typed for a sum, each value asked for as what it is.

    A value that was not given, or is of another kind than asked for, is None or what is usual: never nought.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value; missing ones None.

    Examples
    --------
    >>> given = Inputs({"bore": Reading(7.4, "mm"), "parts": 9, "liquid": None})
    >>> given.number("bore"), given.number("parts"), given.number("gap", 0.1), given.text("liquid", "water")
    (7.4, 9.0, 0.1, 'water')
    """

    __slots__ = ("_values",)

    def __init__(self, values: Mapping[str, Value]) -> None:
        self._values = values

    def __getitem__(self, name: str) -> Value:
        return self._values[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    @overload
    def number(self, name: str) -> float | None: ...
    @overload
    def number(self, name: str, usual: float) -> float: ...
    def number(self, name: str, usual: float | None = None) -> float | None:
        """The number typed for a field, in the field's unit, or what is usual."""
        value = self._values.get(name)
        if isinstance(value, Reading):
            return value.value
        return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else usual

    def needed(self, name: str) -> float:
        """The number typed for a field without which nothing can be said.

        Raises
        ------
        InputError
            If there is none.
        """
        value = self.number(name)
        if value is None:
            raise InputError(name.replace("_", " "), "filled in", "")
        return value

    @overload
    def whole(self, name: str) -> int | None: ...
    @overload
    def whole(self, name: str, usual: int) -> int: ...
    def whole(self, name: str, usual: int | None = None) -> int | None:
        """The whole number typed for a field, or what is usual."""
        value = self.number(name)
        return usual if value is None else int(value)

    def reading(self, name: str) -> Reading | None:
        """The reading typed for a field, with its uncertainty and text."""
        value = self._values.get(name)
        return value if isinstance(value, Reading) else None

    def readings(self, name: str) -> tuple[Reading, ...]:
        """All readings typed for a field; empty where there is none."""
        value = self._values.get(name)
        several = value if isinstance(value, tuple) else (value,)
        return tuple(item for item in several if isinstance(item, Reading))

    def numbers(self, name: str) -> tuple[float, ...]:
        """All numbers typed for a field, in its unit; empty where there is none."""
        return tuple(reading.value for reading in self.readings(name))

    @overload
    def text(self, name: str) -> str | None: ...
    @overload
    def text(self, name: str, usual: str) -> str: ...
    def text(self, name: str, usual: str | None = None) -> str | None:
        """The text or the choice typed for a field, or what is usual."""
        value = self._values.get(name)
        return value if isinstance(value, str) and value else usual

    def flag(self, name: str, usual: bool = False) -> bool:
        """Yes or no, or what is usual."""
        value = self._values.get(name)
        return value if isinstance(value, bool) else usual

    def texts(self, name: str) -> tuple[str, ...]:
        """All texts typed for a field; empty where there is none."""
        value = self._values.get(name)
        return tuple(item for item in value if isinstance(item, str)) if isinstance(value, tuple) else ()

    def given(self, name: str) -> bool:
        """Whether anything was typed for a field."""
        return self._values.get(name) not in (None, ())


@dataclass(frozen=True, slots=True, repr=False)
class SumAnswer:
    """The answer of a sum: in a notebook it shows itself.

    Parameters
    ----------
    sentence : str
        The result as one plain sentence a restorer would say; ``str(answer)`` is this.
    data : dict
        The result for ``--json``: plain JSON values, null where something does not apply.
    findings : tuple of Finding
        Advice with reasons; the same as ``data["findings"]``.
    table : tuple of tuple of str
        Rows for a printed table, the first row being its heading; may be empty.
    result : object
        The calculation's own frozen result, for callers that draw or go on computing.
    """

    sentence: str
    data: dict[str, Any]
    findings: tuple[Finding, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()
    result: object = None

    def __str__(self) -> str:
        return self.sentence

    def __repr__(self) -> str:
        short = self.sentence if len(self.sentence) <= LONGEST_REPR else self.sentence[: LONGEST_REPR - 1] + "…"
        return f"<{type(self).__name__}: {short}>"

    def frame(self) -> pandas.DataFrame:
        """The table as a pandas frame, each cell as it is printed; empty where there is no table."""
        import pandas

        return pandas.DataFrame(self.table[1:], columns=list(self.table[0]) if self.table else None)

    def html(self) -> str:
        """Sentence, findings and table as HTML."""
        rows = table_html("How it was worked out", self.table[0], self.table[1:]) if self.table else ""
        return sentence_html(self.sentence) + findings_html(self.findings) + rows

    def _repr_html_(self) -> str:
        return shown_alone(self.html())


@dataclass(frozen=True, slots=True)
class AskedFor:
    """Fields that are asked for according to what another field says.

    Parameters
    ----------
    by : str
        The field that decides.
    fields : tuple of str
        Those that it decides about.
    wanted : callable
        From its value to the names that are asked for then; it is handed "" while nothing is chosen.
    """

    by: str
    fields: tuple[str, ...]
    wanted: Callable[[str], Collection[str]]


@dataclass(frozen=True, slots=True)
class Sum:
    """One calculation that can be asked for by name.

    Parameters
    ----------
    key : str
        Its name on the command line.
    title : str
        Its name in words.
    summary : str
        One or two sentences for ``--help``.
    fields : tuple of Field
        What it asks for.
    work : callable
        Takes the `Inputs`, gives a `SumAnswer`.
    example : str
        A command line that works as it stands.
    positional : str
        The field that is given without its option name; empty where there is none.
    asked_for : AskedFor or None
        Fields that a panel shows according to another one.
    """

    key: str
    title: str
    summary: str
    fields: tuple[Field, ...]
    work: Callable[[Inputs], SumAnswer]
    example: str = ""
    positional: str = ""
    asked_for: AskedFor | None = None

    def usual(self) -> dict[str, Value]:
        """What each field is where nothing was said: its default, or None."""
        return {field.name: field.read(field.default) if field.default else None for field in self.fields}

    def run(self, values: Mapping[str, Value]) -> SumAnswer:
        """The answer for values as they were read; missing ones are None.

        Raises
        ------
        InputError
            If a value cannot be used, or one that is needed is missing.
        """
        answer = self.work(Inputs(values))
        return replace(answer, data={"sentence": answer.sentence, **answer.data})


def read_options(
    fields: tuple[Field, ...], texts: Mapping[str, str], comma_in: Collection[str] = ()
) -> dict[str, Value]:
    """Read the text of each option; a missing one takes the field's default.

    Parameters
    ----------
    fields : tuple of Field
        What may be asked.
    texts : mapping of str to str
        Field name to text as typed.
    comma_in : collection of str
        Names of the fields that were typed where the comma is the decimal sign: there ``1.234 mm`` is asked about.

    Returns
    -------
    dict
        Field name to value, None where nothing was given.

    Raises
    ------
    InputError
        If a text cannot be used, a required one is missing, or a name is not known.
    """
    known = {field.name for field in fields}
    for name in texts:
        if name not in known:
            raise InputError("option", "one of " + ", ".join(sorted(known)), name)
    return {
        field.name: field.read(
            texts.get(field.name) or field.default, decimal_sign="," if field.name in comma_in else "."
        )
        for field in fields
    }
