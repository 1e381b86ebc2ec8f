"""What a material can take: ok, limited or never, with the limit, the reason and how sure it is beside it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import msgspec

from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.treatment.materials import UNKNOWN, material_name, treatment_name
from pentools.errors import InputError
from pentools.words import CERTAINTY

__all__ = [
    "VERDICTS",
    "CompatibilityRow",
    "IdentificationTest",
    "MaterialRow",
    "Overrule",
    "TreatmentLimit",
    "Verdict",
    "identification_tests",
    "strictest",
    "treatment_limits",
]

Verdict = Literal["ok", "limited", "never"]
VERDICTS: tuple[Verdict, ...] = ("ok", "limited", "never")
_WEAK = ("common practice", "from memory", "judged")
_ON_PURPOSE = ("solvent weld", "heat-set feed")
_WITH_BLEACH = ("flush mix soak", "bleach")
_GRAVITY: dict[Verdict, Literal["ok", "note", "stop"]] = {"ok": "ok", "limited": "note", "never": "stop"}


class CompatibilityRow(msgspec.Struct, frozen=True):
    """One row of the table ``compatibility``: a treatment on a material, minutes [min] and temperature [°C]."""

    material: str
    treatment: str
    verdict: Verdict
    limit: str
    max_minutes: float | None
    max_c: float | None
    reason: str
    source: str
    certainty: str


class MaterialRow(msgspec.Struct, frozen=True):
    """One row of the table ``materials``, as far as it is words."""

    material: str
    property: str
    text: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class Overrule:
    """The bench's own decision against the table.

    Parameters
    ----------
    verdict : {"ok", "limited", "never"}
        What holds instead.
    reason : str
        Why; it stays with the result.
    limit : str
        How far, in words.
    max_minutes, max_c : float or None
        Longest contact [min] and highest surface temperature [°C] that hold instead; None where none is set.
    """

    verdict: Verdict
    reason: str
    limit: str = ""
    max_minutes: float | None = None
    max_c: float | None = None


@dataclass(frozen=True, slots=True)
class TreatmentLimit:
    """How far one treatment may go on one material.

    Parameters
    ----------
    material, treatment : str
        As the table names them; "unknown" for a material that is not named.
    verdict : {"ok", "limited", "never"}
        What holds.
    limit : str
        How far, in words; empty where nothing more is said.
    max_minutes, max_c : float or None
        Longest contact [min] and highest temperature measured at the surface [°C]; None where no number is on
        record.
    reason : str
        Why.
    source : str
        Keys of the table's sources, or "the bench" where it was overruled.
    certainty : str
        How sure the table is of it.
    decided_by : tuple of str
        Materials whose rows set the verdict.
    overruled : TreatmentLimit or None
        What the table says, where the bench overruled it.
    findings : tuple of Finding
        The verdict as advice, and what to mind.
    """

    material: str
    treatment: str
    verdict: Verdict
    limit: str
    max_minutes: float | None
    max_c: float | None
    reason: str
    source: str
    certainty: str
    decided_by: tuple[str, ...] = ()
    overruled: TreatmentLimit | None = None
    findings: tuple[Finding, ...] = ()

    @property
    def sentence(self) -> str:
        """The limit as one sentence."""
        head = f"{self.material}, {self.treatment}: {self.verdict}"
        limit = f", {self.limit}" if self.limit else ""
        return f"{head}{limit}, because {self.reason} ({CERTAINTY.get(self.certainty, self.certainty)})."


@dataclass(frozen=True, slots=True)
class IdentificationTest:
    """A sign by which a material shows itself without harm.

    Parameters
    ----------
    material : str
        The material.
    sign : str
        What to do and what it shows.
    source, certainty : str
        Keys of the table's sources, and how sure it is.
    """

    material: str
    sign: str
    source: str
    certainty: str


def treatment_limits(
    material: str,
    treatment: str,
    rows: Iterable[CompatibilityRow],
    *,
    overrule: Overrule | None = None,
) -> TreatmentLimit:
    """How far a treatment may go on a material.

    Parameters
    ----------
    material : str
        The material in everyday words; "unknown", empty, or one not in the table takes the strictest row.
    treatment : str
        The treatment in everyday words.
    rows : iterable of CompatibilityRow
        The table ``compatibility``.
    overrule : Overrule or None
        The bench's own decision, with its reason; the table's answer stays in the result.

    Returns
    -------
    TreatmentLimit
        Verdict, limit, minutes [min], temperature [°C], reason, source and certainty.

    Raises
    ------
    InputError
        If there is no such treatment, no row for it, or an overrule gives no reason or no known verdict.

    Notes
    -----
    Fewer than a fifth of the table's cells rest on something read; the certainty says which. Good for sound,
    ordinary stock at room temperature; a crack, a mend or an inlay is stricter than its material.

    Examples
    --------
    >>> row = CompatibilityRow("casein", "cold water soak", "never", "", 0, None, "it swells", "x", "primary")
    >>> treatment_limits("casein", "soak", [row]).verdict
    'never'
    """
    table = list(rows)
    wanted = treatment_name(treatment, dict.fromkeys(row.treatment for row in table))
    name, unnamed = material_name(material, dict.fromkeys(row.material for row in table))
    cells = [_cell(row) for row in table if row.treatment == wanted and name in (UNKNOWN, row.material)]
    if not cells:
        raise InputError("rows", f"a table with a row for {name} and {wanted}", len(table))
    found = strictest(cells, material=name) if name == UNKNOWN else cells[0]
    if overrule is not None:
        found = _overruled(found, overrule)
    return _with_findings(found, unnamed)


def strictest(limits: Sequence[TreatmentLimit], *, material: str = "") -> TreatmentLimit:
    """The strictest of several limits for the same treatment: what holds for a pen that cannot be taken apart.

    Parameters
    ----------
    limits : sequence of TreatmentLimit
        At least one.
    material : str
        What to call the result; by default the materials joined.

    Returns
    -------
    TreatmentLimit
        The gravest verdict, the fewest minutes [min] and the lowest temperature [°C] among them, with the reason
        of the one that decides.

    Raises
    ------
    InputError
        If there is none, or they are for different treatments.
    """
    if not limits:
        raise InputError("limits", "at least one", 0)
    if len({limit.treatment for limit in limits}) > 1:
        raise InputError("limits", "all for one treatment", ", ".join(sorted({x.treatment for x in limits})))
    first = min(limits, key=_strictness)
    alike = tuple(limit.material for limit in limits if limit.verdict == first.verdict)
    reason = first.reason
    if material == UNKNOWN:
        reason = f"it is not named, and it could be {first.material}: {first.reason}"
    return TreatmentLimit(
        material or " with ".join(dict.fromkeys(limit.material for limit in limits)),
        first.treatment,
        first.verdict,
        first.limit,
        _lowest(limit.max_minutes for limit in limits),
        None if first.verdict == "never" else _lowest(limit.max_c for limit in limits),
        reason,
        first.source,
        first.certainty,
        alike,
    )


def identification_tests(rows: Iterable[MaterialRow]) -> tuple[IdentificationTest, ...]:
    """Tests by smell, touch and sound that tell materials apart without harm.

    Parameters
    ----------
    rows : iterable of MaterialRow
        The table ``materials``.

    Returns
    -------
    tuple of IdentificationTest
        One for each material that has one.

    Notes
    -----
    Never a flame, a hot needle, a drop of acid or of solvent: on celluloid the first two are a fire. Density is
    a weak test on a pen that is not in pieces. One sign is a hint; take two that agree before naming a material.
    """
    return tuple(
        IdentificationTest(row.material, row.text, row.source, row.certainty)
        for row in rows
        if row.property == "no-harm test"
    )


def _lowest(values: Iterable[float | None]) -> float | None:
    return min((value for value in values if value is not None), default=None)


def _strictness(limit: TreatmentLimit) -> tuple[int, float, float]:
    minutes = math.inf if limit.max_minutes is None else limit.max_minutes
    warmth = math.inf if limit.max_c is None else limit.max_c
    return -VERDICTS.index(limit.verdict), minutes, warmth


def _cell(row: CompatibilityRow) -> TreatmentLimit:
    if row.verdict not in VERDICTS:
        raise InputError("verdict", "ok, limited or never", row.verdict)
    return TreatmentLimit(
        row.material,
        row.treatment,
        row.verdict,
        row.limit,
        row.max_minutes,
        row.max_c,
        row.reason,
        row.source,
        row.certainty,
        (row.material,),
    )


def _overruled(table: TreatmentLimit, own: Overrule) -> TreatmentLimit:
    if not own.reason.strip():
        raise InputError(
            "reason", "given when the table is overruled", own.reason, "Write why; it stays in the record."
        )
    if own.verdict not in VERDICTS:
        raise InputError("verdict", "ok, limited or never", own.verdict)
    return TreatmentLimit(
        table.material,
        table.treatment,
        own.verdict,
        own.limit,
        own.max_minutes,
        own.max_c,
        own.reason.strip(),
        "the bench",
        "the bench's own decision",
        table.decided_by,
        table,
    )


def _with_findings(found: TreatmentLimit, unnamed: str) -> TreatmentLimit:
    advice = [Finding(_GRAVITY[found.verdict], "treatment.verdict", sentence=found.sentence)]
    if found.material == UNKNOWN:
        advice.append(Finding("warning", "treatment.not-named", said=unnamed))
    if found.treatment in _ON_PURPOSE and found.verdict != "never":
        advice.append(Finding("warning", "treatment.consent", treatment=found.treatment))
    if found.treatment in _WITH_BLEACH:
        advice.append(Finding("warning", "treatment.bleach"))
    table = found.overruled
    if table is not None:
        lighter = VERDICTS.index(found.verdict) < VERDICTS.index(table.verdict)
        key = "lighter" if lighter else "stricter"
        level: Level = "warning" if lighter else "note"
        advice.append(Finding(level, f"treatment.overruled:{key}", verdict=table.verdict, reason=table.reason))
    elif found.certainty in _WEAK:
        advice.append(Finding("note", "treatment.certainty", certainty=found.certainty))
    return replace(found, findings=gravest_first(advice))
