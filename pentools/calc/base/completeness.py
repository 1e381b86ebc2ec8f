"""Which of the things that conservation guidance asks of a record are there, and which are missing."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

import msgspec

from pentools.calc.base.findings import Finding, Level
from pentools.errors import InputError

__all__ = ["CONDITIONS", "ReportCompleteness", "ReportField", "ReportRow", "report_completeness"]

FieldState = Literal["present", "not applicable", "missing"]

CONDITIONS = ("treated", "paid", "measured")
"""What a field may hang on: the pen is treated, money is asked, something is measured."""

_LEVELS: dict[str, Level] = {"must": "warning", "should": "note", "ours": "note"}


class ReportRow(msgspec.Struct, frozen=True):
    """One row of the table ``report_fields``: what is asked, by whom, and where the record keeps it."""

    key: str
    field: str
    level: Literal["must", "should", "ours"]
    section: str
    place: tuple[str, ...]
    asked_if: Literal["treated", "paid", "measured"] | None
    source: str


@dataclass(frozen=True, slots=True)
class ReportField:
    """One thing asked of a record.

    Parameters
    ----------
    key, field : str
        Its name, and what is asked in words.
    level : str
        ``must``, ``should`` or ``ours``.
    section : str
        Where it stands in the page.
    places : tuple of str
        Where the record keeps it, as ``stage.kind.field``; one is enough.
    asked_by : str
        Key of the guidance.
    state : {"present", "not applicable", "missing"}
        How it stands.
    reason : str
        Why it does not apply; empty otherwise.
    """

    key: str
    field: str
    level: str
    section: str
    places: tuple[str, ...]
    asked_by: str
    state: FieldState
    reason: str = ""


@dataclass(frozen=True, slots=True)
class ReportCompleteness:
    """How complete a record is.

    Parameters
    ----------
    fields : tuple of ReportField
        All that is asked, in the order of the table.
    findings : tuple of Finding
        One for each missing field, what must be there first; a last one where nothing is missing.
    """

    fields: tuple[ReportField, ...]
    findings: tuple[Finding, ...]

    @property
    def missing(self) -> tuple[ReportField, ...]:
        """What is missing."""
        return tuple(field for field in self.fields if field.state == "missing")

    @property
    def complete(self) -> bool:
        """Whether all that must be there is there or does not apply."""
        return not any(field.level == "must" for field in self.missing)


def report_completeness(
    fields: Iterable[ReportRow],
    present: Collection[str],
    *,
    not_applicable: Mapping[str, str] | None = None,
    conditions: Collection[str] = CONDITIONS,
) -> ReportCompleteness:
    """What is missing of what conservation guidance asks.

    Parameters
    ----------
    fields : iterable of ReportRow
        Rows of the table.
    present : collection of str
        What is there: keys of fields, or places in the record (``stage.kind.field``).
    not_applicable : mapping of str to str or None
        Keys of fields that do not apply, each with the reason.
    conditions : collection of str
        Which of `CONDITIONS` hold; a field that hangs on another is not asked for.

    Returns
    -------
    ReportCompleteness
        Every field with its state, and findings.

    Raises
    ------
    InputError
        If a key or a condition is not known, or a reason is empty.

    Notes
    -----
    A field is present if its key is, or any one of its places. What is present stays so even where it was also marked
    as not applicable. That a field is filled in says nothing of whether it is filled in well.

    Examples
    --------
    >>> row = ReportRow("owner", "whose it is", "must", "head", ("intake.owner.owner",), None, "x")
    >>> report_completeness([row], []).missing[0].field
    'whose it is'
    >>> report_completeness([row], ["intake.owner.owner"]).complete
    True
    """
    rows = list(fields)
    excused = dict(not_applicable or {})
    keys = {row.key for row in rows}
    for key, reason in excused.items():
        if key not in keys:
            raise InputError("field", "one of " + ", ".join(sorted(keys)), key)
        if not reason.strip():
            raise InputError(f"reason why “{key}” does not apply", "given", reason, "A few words are enough.")
    for condition in conditions:
        if condition not in CONDITIONS:
            raise InputError("condition", "one of " + ", ".join(CONDITIONS), condition)
    there = set(present)
    made = tuple(_field(row, there, excused, conditions) for row in rows)
    return ReportCompleteness(made, _findings(made))


def _field(row: ReportRow, there: set[str], excused: Mapping[str, str], conditions: Collection[str]) -> ReportField:
    state: FieldState = "missing"
    reason = ""
    if row.key in there or there.intersection(row.place):
        state = "present"
    elif row.key in excused:
        state, reason = "not applicable", excused[row.key]
    elif row.asked_if is not None and row.asked_if not in conditions:
        state, reason = "not applicable", f"asked only of a pen that is {row.asked_if}"
    return ReportField(row.key, row.field, row.level, row.section, row.place, row.source, state, reason)


def _findings(fields: tuple[ReportField, ...]) -> tuple[Finding, ...]:
    missing = [field for field in fields if field.state == "missing"]
    missing.sort(key=lambda field: ("must", "should", "ours").index(field.level))
    findings = [
        Finding(_LEVELS[field.level], "base.missing", section=field.section, field=field.field, key=field.key)
        for field in missing
    ]
    if not findings:
        findings.append(Finding("ok", "base.complete"))
    return tuple(findings)
