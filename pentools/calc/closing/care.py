"""What an owner is told about care: from the filling system, what the pen is made of, and what was put into it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

import msgspec

from pentools.calc.treatment.limits import Verdict

__all__ = ["AT_HOME", "TOPICS", "CareLine", "CareOf", "InkRow", "Judge", "care_told", "inks_told", "lines_for", "never_told"]  # fmt: skip

TOPICS = ("ink", "rinsing", "filling", "force", "cleaning", "keeping", "joints", "resting", "carrying")
"""What the lines are about, in the order in which they are told."""

_WARMTH = {"dry heat", "hot water"}
# what an owner may come to do -> what it is called at home; those that touch the outside alone are asked of it alone
AT_HOME = {
    "cold water soak": "soaking",
    "hot water": "hot water",
    "flush mix soak": "ammonia (it is in window cleaner)",
    "alcohol": "alcohol",
    "acetone": "nail-varnish remover",
    "bleach": "bleach",
    "ultrasonic": "an ultrasonic bath",
}
"""What an owner may come to do with water and solvents: treatment to what it is called at home."""
_BODY_ALONE = ("cold water soak",)
_OUTSIDE = {"buffing wheel": "polish", "wet sanding": "abrasive paper"}

Judge = Callable[[Sequence[str], str], Verdict]
"""The table's verdict on a treatment of several materials together: the strictest."""


class CareLine(msgspec.Struct, frozen=True):
    """One row: what is said of every pen, a system, a material, a sealant, a part put in, or a seal at rest."""

    applies_to: str
    key: str
    topic: str
    line: str
    against: tuple[str, ...] = ()
    allows: tuple[str, ...] = ()
    why: str = ""
    source: str = ""
    certainty: str = ""


class InkRow(msgspec.Struct, frozen=True):
    """One row of the table ``ink_advice``: an ink that a system, a seal, a nib or a body does badly with."""

    applies_to: str
    keys: tuple[str, ...]
    ink: str
    grave: bool
    advice: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class CareOf:
    """What care hangs on.

    Parameters
    ----------
    system : str
        Key of the filling system; empty where it is not known.
    body : tuple of str
        Names of what barrel and cap are made of; "unknown" for what is not named.
    seals, nib, other : tuple of str
        Names of what sac or seals, the nib and further parts are made of, as far as they are known.
    outside : tuple of str
        Names of what else a cloth touches.
    sealants : tuple of str
        Keys of what was put on joints.
    parts : tuple of str
        Keys of further things put in or on, as the table has them under ``part``.
    unmended : bool
        Whether it goes home unmended.
    """

    system: str
    body: tuple[str, ...]
    seals: tuple[str, ...] = ()
    nib: tuple[str, ...] = ()
    other: tuple[str, ...] = ()
    outside: tuple[str, ...] = ()
    sealants: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    unmended: bool = False


def lines_for(rows: Iterable[CareLine], applies_to: str, keys: Iterable[str]) -> tuple[CareLine, ...]:
    """The rows for what is named, key by key."""
    table = list(rows)
    return tuple(row for key in dict.fromkeys(keys) for row in table if (row.applies_to, row.key) == (applies_to, key))


def care_told(pen: CareOf, rows: Sequence[CareLine], judge: Judge) -> tuple[CareLine, ...]:
    """What the owner of a pen is told, each line once, by `TOPICS`.

    Parameters
    ----------
    pen : CareOf
        What it hangs on.
    rows : sequence of CareLine
        The table ``care_lines``.
    judge : Judge
        The verdict on a treatment of several materials together.

    Returns
    -------
    tuple of CareLine
        Of a pen that goes home unmended, or decays, nothing that would lead to filling it. Water may stand only in
        what bears it.
    """
    of_parts = lines_for(rows, "material", (*pen.body, *pen.seals, *pen.nib))
    fitted = (*lines_for(rows, "fitted", pen.sealants), *lines_for(rows, "part", pen.parts))
    if "degrading celluloid" in pen.body:
        return _in_order((*lines_for(rows, "pen", ["decaying"]), *of_parts), without=("ink", "rinsing"))
    every = lines_for(rows, "pen", ["any"])
    if pen.unmended:
        found = (*lines_for(rows, "pen", ["not mended"]), *every, *of_parts, *fitted)
        return _in_order(found, without=("ink", "rinsing", "resting", "carrying"))
    soaks = judge(pen.body, "cold water soak") == "ok"
    wet = lines_for(rows, "resting", (pen.system, *pen.seals))
    told = [line for line in every if line.topic != "resting" or not wet]
    if not any(line.topic == "keeping" and not _WARMTH.isdisjoint(line.against) for line in of_parts):
        told += lines_for(rows, "pen", ["cool"])  # the material has no word on warmth of its own
    rinse = lines_for(rows, "pen", ["bears water" if soaks else "bears no water"])
    found = (*told, *rinse, *lines_for(rows, "system", [pen.system]), *of_parts, *fitted)
    return _in_order((*found, *wet) if soaks else found)


def never_told(pen: CareOf, judge: Judge) -> tuple[str, ...]:
    """What must never be done to a pen at home, in words.

    Parameters
    ----------
    pen : CareOf
        What it hangs on.
    judge : Judge
        The verdict on a treatment of several materials together.

    Returns
    -------
    tuple of str
        What is not plainly allowed of every material of the pen (what is limited is for the bench to measure); of
        soaking the body decides, of polish and abrasive paper what they would touch, where they are forbidden.
    """
    inside = (*pen.body, *pen.seals, *pen.nib, *pen.other)
    outside = (*pen.body, *pen.outside)
    asked: dict[str, tuple[tuple[str, ...], set[Verdict]]] = {
        name: (pen.body if name in _BODY_ALONE else inside, {"limited", "never"}) for name in AT_HOME
    }
    asked |= {name: (outside, {"never"}) for name in _OUTSIDE}
    words = AT_HOME | _OUTSIDE
    return tuple(
        words[treatment]
        for treatment, (names, barred) in asked.items()
        if judge(sorted(set(names)), treatment) in barred
    )


def inks_told(pen: CareOf, rows: Iterable[InkRow]) -> tuple[InkRow, ...]:
    """The inks that a pen does badly with, the gravest first, each ink once.

    Returns
    -------
    tuple of InkRow
        The rows for its system, seals, nib and body; none for one that is not filled.
    """
    if pen.unmended or "degrading celluloid" in pen.body:
        return ()
    asked = {"any": ("any",), "system": (pen.system,), "seal": pen.seals, "nib": pen.nib, "body": pen.body}
    found = [row for row in rows if not set(row.keys).isdisjoint(asked[row.applies_to])]
    found.sort(key=lambda row: not row.grave)
    once: dict[str, InkRow] = {}
    for row in found:
        once.setdefault(row.ink, row)
    return tuple(once.values())


def _in_order(found: Iterable[CareLine], without: tuple[str, ...] = ()) -> tuple[CareLine, ...]:
    once: dict[str, CareLine] = {}
    for row in found:
        if row.topic not in without:
            once.setdefault(row.line, row)
    return tuple(sorted(once.values(), key=lambda row: TOPICS.index(row.topic)))
