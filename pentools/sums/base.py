"""What a sum is: fields in, one sentence, findings and a JSON object out.

A sum joins typed values, reference tables and a calculation. Panels, write-ups and the command line all call
the same one, so they cannot disagree.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.fields import Field, Value

__all__ = ["Sum", "SumAnswer", "read_options"]


@dataclass(frozen=True, slots=True)
class SumAnswer:
    """The answer of a sum.

    Parameters
    ----------
    sentence : str
        The result as one plain sentence a restorer would say.
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
    run : callable
        Takes a mapping of field name to value (missing ones None), gives a `SumAnswer`.
    example : str
        A command line that works as it stands.
    positional : str
        The field that is given without its option name; empty where there is none.
    """

    key: str
    title: str
    summary: str
    fields: tuple[Field, ...]
    run: Callable[[Mapping[str, Value]], SumAnswer]
    example: str = ""
    positional: str = ""


def read_options(fields: tuple[Field, ...], texts: Mapping[str, str]) -> dict[str, Value]:
    """Read the text of each option; a missing one takes the field's default.

    Parameters
    ----------
    fields : tuple of Field
        What may be asked.
    texts : mapping of str to str
        Field name to text as typed.

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
    return {field.name: field.read(texts.get(field.name) or field.default) for field in fields}
