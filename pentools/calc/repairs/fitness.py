"""What stands in the way of mending a part in a certain way, and how long it then has to stand."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Literal, get_args

import msgspec

from pentools.errors import InputError

__all__ = [
    "NEEDS", "TOPICS", "RepairFacts", "RepairRow", "Standing", "Topic", "fits_material", "repair_topics", "standing",
]  # fmt: skip

Topic = Literal["unknown", "unfit", "treatment", "refused", "consent", "test spot", "test failed", "rubbing"]
TOPICS: tuple[Topic, ...] = get_args(Topic)
NEEDS = ("named", "test-spot", "rubbing")
UNKNOWN = "unknown"
_ANY = ("any",)


class RepairRow(msgspec.Struct, frozen=True):
    """One row of the table ``part_repairs``: a way of mending a part; times in hours [h], None where it need not stand.

    `care` names what an owner is told of it afterwards: keys of the table ``care_lines``, of a part or of a sealant.
    """

    key: str
    part: str
    place: str
    fault: str
    method: str
    how: str
    materials: tuple[str, ...]
    needs: tuple[str, ...]
    consent: str
    stopped_by: tuple[str, ...]
    treatment: str
    cautions: tuple[str, ...]
    reversible: Literal["yes", "partly", "no"]
    wait_h: float | None
    wait_to_h: float | None
    until: str
    limit: str
    for_now: bool
    sent: bool
    source: str
    certainty: str
    care: tuple[str, ...] = ()

    @property
    def label(self) -> str:
        """Place and method in a few words, as they are chosen from."""
        return f"{self.place}: {self.method}" if self.place else self.method

    @property
    def leaves(self) -> bool:
        """Whether it is a way of leaving the part as it is; such a row's key ends with ``-leave``."""
        return self.key.endswith("-leave")


@dataclass(frozen=True, slots=True)
class RepairFacts:
    """What is known as a part is about to be mended.

    Parameters
    ----------
    materials : tuple of str
        What the part is made of, as the tables name it; "unknown" for what is not named or not sure.
    never : tuple of str
        Those of them that the table of compatibility forbids the method's treatment on.
    yes, no : frozenset of str
        Kinds of action that the owner said yes and no to.
    tested : bool or None
        Whether a trial on a hidden place came out as it should; None where there was none.
    rubbing : bool
        Whether a rubbing of the imprint was made.
    """

    materials: tuple[str, ...] = (UNKNOWN,)
    never: tuple[str, ...] = ()
    yes: frozenset[str] = frozenset()
    no: frozenset[str] = frozenset()
    tested: bool | None = None
    rubbing: bool = False


@dataclass(frozen=True, slots=True)
class Standing:
    """How long a mend has to stand.

    Parameters
    ----------
    earliest, usual : datetime
        When the shortest time is over, and when the time is over that is right where nothing better is known.
    typed : bool
        Whether the time is the bench's own, from a label or a trial.
    """

    earliest: dt.datetime
    usual: dt.datetime
    typed: bool


def fits_material(row: RepairRow, material: str) -> bool:
    """Whether a way of mending is fit for a material; an unknown one is fit only where any is."""
    return row.materials == _ANY or material in row.materials


def repair_topics(row: RepairRow, facts: RepairFacts) -> tuple[Topic, ...]:
    """What stands in the way of a repair.

    Parameters
    ----------
    row : RepairRow
        The way it is to be mended.
    facts : RepairFacts
        What is known of part and owner; what nobody said counts as not so.

    Returns
    -------
    tuple of Topic
        Empty where it may go on. An unknown material is held wherever the method is not fit for all of them; a no is
        held whatever else was said.

    Examples
    --------
    >>> row = RepairRow("w", "cap", "lip", "crack", "weld", "", ("celluloid",), ("named",), "mend", (), "solvent weld", (), "no", 168.0, 504.0, "", "", False, False, "s", "judged")
    >>> repair_topics(row, RepairFacts(("hard rubber",), never=("hard rubber",)))
    ('unfit', 'consent')
    """
    unknown = UNKNOWN in facts.materials
    asks = "named" in row.needs or row.materials != _ANY
    known = tuple(material for material in facts.materials if material != UNKNOWN)
    unfit = any(not fits_material(row, material) for material in known)
    never = not unfit and any(material in facts.never for material in known)
    spot = "test-spot" in row.needs
    found: tuple[tuple[Topic, bool], ...] = (
        ("unknown", asks and (unknown or not facts.materials)),
        ("unfit", unfit),
        ("treatment", never),
        ("refused", not facts.no.isdisjoint((row.consent, *row.stopped_by))),
        ("consent", bool(row.consent) and row.consent not in facts.yes | facts.no),
        ("test spot", spot and facts.tested is None),
        ("test failed", facts.tested is False),
        ("rubbing", "rubbing" in row.needs and not facts.rubbing),
    )
    return tuple(topic for topic, stands in found if stands)


def standing(row: RepairRow, begun: dt.datetime, *, typed_h: float | None = None) -> Standing | None:
    """When a mend will have stood long enough.

    Parameters
    ----------
    row : RepairRow
        The way it was mended.
    begun : datetime
        When it was done.
    typed_h : float or None
        The bench's own time from a label or a trial [h], 0 or more; it takes the place of the table's, but is never
        shorter than it.

    Returns
    -------
    Standing or None
        None where it need not stand.

    Raises
    ------
    InputError
        If the typed time is negative.

    Notes
    -----
    The table's shortest time stands even where a shorter one was typed: a weld that was trusted too early opens again.
    """
    if typed_h is not None and typed_h < 0:
        raise InputError("time to stand", "0 h or more", typed_h)
    low, high = row.wait_h, row.wait_to_h if row.wait_to_h is not None else row.wait_h
    if typed_h is not None:
        low = high = max(typed_h, low or 0.0)
    if not low or high is None:
        return None
    return Standing(begun + dt.timedelta(hours=low), begun + dt.timedelta(hours=high), typed_h is not None)
