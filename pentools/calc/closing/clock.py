"""How long a joint waits: from what was put on it to when it may be tested or filled with ink."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from pentools.errors import InputError

__all__ = ["CureRow", "cure_of"]


class CureRow(msgspec.Struct, frozen=True):
    """One row of the table ``cure_times``: shortest, proposed and longest wait [h] until a moment."""

    sealant: str
    moment: str
    low_h: float
    proposed_h: float
    high_h: float
    then: str
    source: str
    certainty: str


def cure_of(sealant: str, moment: str, rows: Iterable[CureRow]) -> CureRow:
    """How long a sealant waits until a moment.

    Parameters
    ----------
    sealant : str
        A key of the seal stage's sealants, such as ``shellac``; one that is not known takes the longest wait.
    moment : str
        What is waited for: ``test`` or ``ink`` for every sealant, for some also ``touch``, ``next coat`` or ``hard``.
    rows : iterable of CureRow
        The table ``cure_times``.

    Returns
    -------
    CureRow
        Shortest, proposed and longest wait [h], and what is so by then.

    Raises
    ------
    InputError
        If no sealant has such a moment.

    Notes
    -----
    The waits are for one thin coat in dry air. Shellac shut in or put on thick stays soft for weeks, and old solution
    may never dry; above about 70 % relative humidity it whitens.
    """
    found = [row for row in rows if row.moment == moment]
    if not found:
        raise InputError("what is waited for", "touch, next coat, test, ink or hard", moment)
    own = [row for row in found if row.sealant == sealant]
    return own[0] if own else max(found, key=lambda row: row.proposed_h)
