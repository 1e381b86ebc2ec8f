"""Joint sealant against body: how much room there is between the one letting go and the other giving way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

import msgspec

from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.treatment.materials import NO_SEALANT, UNKNOWN, material_name, sealant_name
from pentools.errors import InputError

__all__ = ["HeatLimitRow", "HeatWindow", "SealantRow", "WindowKind", "heat_window"]

WindowKind = Literal["open", "narrow", "none", "no heat", "not needed"]
OPEN_FROM_C = 20.0
_HOLDS = ("does not let go", "holds nothing")
_NITRATE = ("celluloid", "degrading celluloid")
_LEVELS: dict[WindowKind, Level] = {
    "open": "note", "narrow": "warning", "none": "warning", "no heat": "stop", "not needed": "note",
}  # fmt: skip


class HeatLimitRow(msgspec.Struct, frozen=True):
    """One row of the table ``heat_limits``: a rule for a material, its value in [°C] but for the count of heatings."""

    material: str
    rule: str
    value: float | None
    text: str
    source: str
    certainty: str


class SealantRow(msgspec.Struct, frozen=True):
    """One row of the table ``joint_sealants``: a property of a sealant and the ends of its range, in the table's unit."""

    sealant: str
    property: str
    low: float | None
    high: float | None
    text: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class HeatWindow:
    """The room between a sealant's softening and a body's limit.

    Parameters
    ----------
    body, sealant : str
        As the tables name them; "unknown" for one that is not named, "none" for a joint without sealant.
    taken_as : str
        The sealant whose softening is used: for an unknown one that which softens last, which is the strictest.
    body_limit_c : float or None
        Highest temperature at the body's surface [°C]; None where it is never warmed.
    sealant_first_c, sealant_full_c : float or None
        Where the sealant first softens and where it is fully soft [°C]; None for what heat does not soften.
    window_first_c, window_full_c : float or None
        Body limit less those two [°C]; negative where the body gives way first; None where it is never warmed.
    kind : {"open", "narrow", "none", "no heat", "not needed"}
        The window in a word, by its two figures.
    lets_go : bool
        Whether the sealant lets go when it is soft: epoxy softens and does not, a weld does neither.
    verdict : str
        One sentence on what to do.
    sources : tuple of str
        Keys of the tables' sources for the body's limit and for the sealant.
    certainty : str
        The weaker of the two certainties is named with the stronger: "body: …; sealant: …".
    findings : tuple of Finding
        The verdict as advice, and what to mind.
    """

    body: str
    sealant: str
    taken_as: str
    body_limit_c: float | None
    sealant_first_c: float | None
    sealant_full_c: float | None
    window_first_c: float | None
    window_full_c: float | None
    kind: WindowKind
    lets_go: bool
    verdict: str
    sources: tuple[str, ...]
    certainty: str
    findings: tuple[Finding, ...]


def heat_window(
    body: str,
    sealant: str,
    limit_rows: Iterable[HeatLimitRow],
    sealant_rows: Iterable[SealantRow],
) -> HeatWindow:
    """The heat window of a joint.

    Parameters
    ----------
    body : str
        What the body is made of, in everyday words; one not in the table counts as unknown.
    sealant : str
        What the joint was sealed with, in everyday words; one that is not named or not in the table is taken as the
        strictest, "none" is a joint without any.
    limit_rows : iterable of HeatLimitRow
        The table ``heat_limits``.
    sealant_rows : iterable of SealantRow
        The table ``joint_sealants``.

    Returns
    -------
    HeatWindow
        Windows to first and to full softening [°C], a word and a sentence.

    Raises
    ------
    InputError
        If the tables hold nothing to go by.

    Notes
    -----
    Window = body limit - softening of the sealant. Open: at least 20 °C to first softening and full softening
    still below the limit; narrow: above zero; none: zero or less. The bounds are judged. Good for the temperature
    of the part's surface, not of the air; no limit in the table is sharper than about 5 °C, old stock varies, and
    one trade figure for shellac (39 °C) contradicts all others and is not used.
    """
    limits = {row.material: row for row in limit_rows if row.rule in ("working limit", "no heat")}
    limits.pop("any", None)
    sealants = list(sealant_rows)
    softening = {row.sealant: row for row in sealants if row.property == "softens"}
    if UNKNOWN not in limits or not softening:
        raise InputError("rows", "tables with a limit for unknown and a softening", len(limits))
    name, unnamed = material_name(body, limits)
    joint = sealant_name(sealant, dict.fromkeys(row.sealant for row in sealants))
    hold = next((row for row in sealants if row.sealant == joint and row.property in _HOLDS), None)
    taken = max(softening, key=lambda one: _ends(softening[one])[::-1]) if joint == UNKNOWN else joint
    limit, soft = limits[name], softening.get(taken)
    top = limit.value
    first, full = (None, None) if soft is None else _ends(soft)
    room = (_less(top, first), _less(top, full))
    kind = _kind(name, joint, hold, room)
    found = _verdict((name, joint, taken), kind, (top, *room), limit.text, hold)
    rows: list[HeatLimitRow | SealantRow] = [row for row in (limit, soft or hold) if row is not None]
    return HeatWindow(
        name, joint, taken, top, first, full, *room, kind, hold is None or hold.property != "does not let go", found.text,
        tuple(dict.fromkeys(part.strip() for row in rows for part in row.source.split(";"))),
        "; ".join(f"{what}: {row.certainty}" for what, row in zip(("body", "sealant"), rows, strict=False)),
        gravest_first((found, *_more(name, unnamed, joint))),
    )  # fmt: skip


def _verdict(
    names: tuple[str, str, str],
    kind: WindowKind,
    figures: tuple[float | None, float | None, float | None],
    why: str,
    hold: SealantRow | None,
) -> Finding:
    """The window as advice: what holds a joint without letting go is said before the figures."""
    (body, sealant, taken), (top, first, full) = names, figures
    if hold is not None and body != UNKNOWN and (top is not None or kind == "not needed"):
        level: Level = "warning" if kind == "open" else _LEVELS[kind]
        return Finding(level, "treatment.window:held", body=body, sealant=sealant, kind=kind, top=top, first=first, full=full, why=hold.text)  # fmt: skip
    return Finding(_LEVELS[kind], "treatment.window", body=body, sealant=sealant, taken=taken, kind=kind, top=top, first=first, full=full, why=why)  # fmt: skip


def _ends(row: SealantRow) -> tuple[float, float]:
    if row.low is None or row.high is None:
        raise InputError(f"softening of {row.sealant}", "both ends of its range, in °C", "an end that is not given")
    return row.low, row.high


def _less(top: float | None, end: float | None) -> float | None:
    return None if top is None or end is None else top - end


def _kind(body: str, sealant: str, hold: SealantRow | None, room: tuple[float | None, float | None]) -> WindowKind:
    first, full = room
    if sealant == NO_SEALANT or (hold is not None and hold.property == "holds nothing"):
        return "not needed"
    if body == UNKNOWN or first is None or full is None:
        return "no heat"
    if first <= 0:
        return "none"
    return "open" if first >= OPEN_FROM_C and full > 0 else "narrow"


def _more(body: str, unnamed: str, sealant: str) -> Iterator[Finding]:
    """What to mind beside the verdict."""
    if body == UNKNOWN:
        yield Finding("stop", "treatment.not-named:body", said=unnamed)
    if body in _NITRATE:
        yield Finding("warning", "treatment.nitrate")
    if sealant == UNKNOWN:
        yield Finding("warning", "treatment.sealant-not-named")
