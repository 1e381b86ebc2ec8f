"""The tests a pen owes before it is closed and before it goes: which, how long each takes, and how each stands."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

import msgspec

__all__ = ["Proof", "ProofRow", "ProofState", "proofs_owed"]

ProofState = Literal["owed", "running", "due", "passed", "failed"]


class ProofRow(msgspec.Struct, frozen=True):
    """One row of the table ``closing_proofs``: a test, which systems owe it, and its shortest rest [h]."""

    key: str
    label: str
    systems: tuple[str, ...]
    moment: str
    what: str
    hours: float | None
    records: str
    passes: str
    gives: tuple[str, ...]
    lay: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class Proof:
    """One test that a pen owes.

    Parameters
    ----------
    row : ProofRow
        What the table says of it.
    state : ProofState
        Owed, running (its rest has begun), due (its rest is over, the look is owed), passed or failed.
    until : datetime or None
        When its rest is over; None where none has begun.
    """

    row: ProofRow
    state: ProofState
    until: dt.datetime | None = None


def proofs_owed(
    system: str,
    rows: Iterable[ProofRow],
    results: Mapping[str, bool],
    begun: Mapping[str, dt.datetime],
    now: dt.datetime,
) -> tuple[Proof, ...]:
    """The tests that a filling system owes, in the table's order.

    Parameters
    ----------
    system : str
        Key of the filling system.
    rows : iterable of ProofRow
        The table ``closing_proofs``.
    results : mapping of str to bool
        Test to whether it passed, for those that were made.
    begun : mapping of str to datetime
        Test to when its rest began, for those whose rest began after the last result.
    now : datetime
        The time it is.

    Returns
    -------
    tuple of Proof
        A rest counts from its beginning; one that has begun anew is running, whatever an earlier one gave.
    """
    found = []
    for row in rows:
        if system not in row.systems:
            continue
        start = begun.get(row.key)
        if start is not None:
            until = start + dt.timedelta(hours=row.hours or 0.0)
            found.append(Proof(row, "running" if now < until else "due", until))
        elif row.key in results:
            found.append(Proof(row, "passed" if results[row.key] else "failed"))
        else:
            found.append(Proof(row, "owed"))
    return tuple(found)
