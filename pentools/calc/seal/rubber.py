"""Which rubber and which lubricant, by what the seal will meet: the table's rows come in, choices with reasons go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import msgspec

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "RATINGS",
    "USES",
    "ElastomerChoice",
    "ElastomerRow",
    "LubricantChoice",
    "LubricantRow",
    "choose_elastomer",
    "choose_lubricant",
]

RATINGS: dict[str, int] = {"E": 3, "G": 2, "F": 1, "P": 0}
USES: dict[str, tuple[str, ...]] = {
    "moving seal": ("NBR", "EPDM", "FKM", "silicone"),
    "static seal": ("NBR", "EPDM", "FKM", "silicone"),
    "sac": ("latex", "silicone", "PVC"),
}
"""What the rubber is for, and what is sold for it."""


class ElastomerRow(msgspec.Struct, frozen=True):
    """One row of the table ``elastomers``: how a rubber bears a medium, E best to P worst, empty where not known."""

    elastomer: str
    medium: str
    rating: Literal["E", "G", "F", "P", ""]
    source: str
    certainty: str
    note: str


class LubricantRow(msgspec.Struct, frozen=True):
    """One row of the table ``lubricants``: whether a lubricant may meet a rubber."""

    lubricant: str
    elastomer: str
    verdict: Literal["ok", "limited", "unknown", "avoid"]
    reason: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class ElastomerChoice:
    """One elastomer judged.

    Parameters
    ----------
    elastomer : str
        Short name.
    worst : str
        Its worst rating against what it meets: E, G, F, P, or empty where one is not known.
    ratings : tuple of (medium, rating, source, certainty, note)
        Each rating with where it comes from.
    findings : tuple of Finding
        What to know.
    """

    elastomer: str
    worst: str
    ratings: tuple[tuple[str, str, str, str, str], ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class LubricantChoice:
    """One lubricant on one elastomer: verdict (ok / limited / avoid / unknown), reason, source and certainty."""

    lubricant: str
    verdict: str
    reason: str
    source: str
    certainty: str


def choose_elastomer(media: Sequence[str], use: str, rows: Sequence[ElastomerRow]) -> tuple[ElastomerChoice, ...]:
    """Elastomers for a use, best first, by their worst rating.

    Parameters
    ----------
    media : sequence of str
        What it meets: media of the table.
    use : {"moving seal", "static seal", "sac"}
        What it is for.
    rows : sequence of ElastomerRow
        The table ``elastomers``.

    Returns
    -------
    tuple of ElastomerChoice
        Every elastomer sold for that use, best first; an unknown rating counts as poor.

    Raises
    ------
    InputError
        If a medium or the use is not known, or nothing was named.

    Notes
    -----
    Ratings of resistance tables are for dry test pieces over days; pens flush for minutes. Silicone is last for a
    moving seal whatever it meets: it abrades and tears.
    """
    if use not in USES:
        raise InputError("use", "one of " + ", ".join(USES), use)
    known = {row.medium for row in rows if row.medium != "note on use"}
    if not media:
        raise InputError("what it meets", "at least one of " + ", ".join(sorted(known)), "nothing")
    for medium in media:
        if medium not in known:
            raise InputError("what it meets", "one of " + ", ".join(sorted(known)), medium)
    choices = [_judged(name, media, use, rows) for name in USES[use]]
    rank = {name: i for i, name in enumerate(USES[use])}

    def order(choice: ElastomerChoice) -> tuple[bool, int, int, int]:
        scores = [RATINGS.get(rating, -1) for _, rating, *_ in choice.ratings]
        return (
            use == "moving seal" and choice.elastomer == "silicone",
            -min(scores),
            -sum(scores),
            rank[choice.elastomer],
        )

    return tuple(sorted(choices, key=order))


def _judged(name: str, media: Sequence[str], use: str, rows: Sequence[ElastomerRow]) -> ElastomerChoice:
    table = {row.medium: row for row in rows if row.elastomer == name}
    ratings = []
    findings = []
    for medium in media:
        row = table.get(medium)
        rating, source, certainty, note = (
            (row.rating, row.source, row.certainty, row.note) if row else ("", "", "judged", "no figure found")
        )
        ratings.append((medium, rating, source, certainty, note))
        said = {"name": name, "medium": medium, "note": note, "certainty": certainty}
        if RATINGS.get(rating, 0) == 0:
            findings.append(Finding("warning", f"seal.poor:{'known' if rating else 'unknown'}", **said))
        elif rating == "F":
            findings.append(Finding("note", "seal.fair", **said))
    if use == "moving seal" and name == "silicone":
        findings.append(Finding("warning", "seal.moving"))
    on_use = table.get("note on use")
    if on_use is not None:
        findings.append(Finding("note", "seal.use", name=name, note=on_use.note, certainty=on_use.certainty))
    worst = min((rating for _, rating, *_ in ratings), key=lambda r: RATINGS.get(r, -1))
    return ElastomerChoice(name, worst, tuple(ratings), tuple(findings))


def choose_lubricant(elastomer: str, rows: Sequence[LubricantRow]) -> tuple[LubricantChoice, ...]:
    """Lubricants for an elastomer, best first.

    Parameters
    ----------
    elastomer : str
        Short name as in the table.
    rows : sequence of LubricantRow
        The table ``lubricants``.

    Returns
    -------
    tuple of LubricantChoice
        All lubricants, ok first, avoid last.

    Raises
    ------
    InputError
        If the elastomer is not in the table.
    """
    names = {row.elastomer for row in rows}
    if elastomer not in names:
        raise InputError("elastomer", "one of " + ", ".join(sorted(names)), elastomer)
    order = {"ok": 0, "limited": 1, "unknown": 2, "avoid": 3}
    found = [
        LubricantChoice(r.lubricant, r.verdict, r.reason, r.source, r.certainty)
        for r in rows
        if r.elastomer == elastomer
    ]
    return tuple(sorted(found, key=lambda c: (order[c.verdict], c.lubricant)))
