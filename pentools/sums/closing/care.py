"""The care sum: filling system, materials and what was put in, in; what the owner is told, out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from pentools import tables
from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.closing.care import CareLine, CareOf, InkRow, care_told, inks_told, never_told
from pentools.calc.treatment.limits import CompatibilityRow, Verdict, strictest, treatment_limits
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import capital, in_words
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.closing.order import body_here, is_rubber_ring, not_read, seal_here
from pentools.systems.registry import SYSTEMS, system_choices
from pentools.tables.compatibility import material_names
from pentools.tables.source_words import source_words
from pentools.words import CERTAINTY

__all__ = ["CARE", "CareTold", "care_answer", "care_rows", "fitted_here", "ink_findings", "ink_rows", "rubber_of"]

_RUBBER = {"sac", "bulb", "bellows", "diaphragm"}
# words in what was put in -> the table's key; the first that fits
_SEALANTS = (
    ("rosin", "rosin"), ("thread sealant", "rosin"), ("thread", "thread"), ("shellac", "shellac"), ("adhesive", "silicone"), ("silicone-set", "silicone"),
    ("silicone grease", "grease"), ("grease", "grease"),
)  # fmt: skip
_PARTS = (
    ("glued", "glued crack"), ("weld", "welded crack"), ("window", "ink window"), ("inner cap", "inner cap"),
    ("wax", "wax"),
)  # fmt: skip

FIELDS = (
    Field("system", "Filling system", "choice", choices=system_choices(), by_words=True, required=True),
    Field("material", "Body", "items", hint="cap and barrel, such as hard rubber; celluloid; not named takes the strictest", default="unknown"),
    Field("nib", "Nib", hint="such as gold nib or steel nib"),
    Field("fitted", "What was put in", "items", hint="such as latex sac; shellac joint; cork; rubber ring; glued crack"),
)  # fmt: skip


class CareTold(tuple[CareLine, ...]):
    """The lines of a care card, for whoever draws them."""

    __slots__ = ()


def care_rows() -> tuple[CareLine, ...]:
    """The table of care."""
    return tables.read(CareLine, "care_lines")


def ink_rows() -> tuple[InkRow, ...]:
    """The table of advice on inks."""
    return tables.read(InkRow, "ink_advice")


def rubber_of(system: str) -> tuple[str, ...]:
    """What a sac or diaphragm is taken for where nothing else is known: latex, which bears the least."""
    return ("latex",) if system in SYSTEMS and not _RUBBER.isdisjoint(SYSTEMS[system].parts) else ()


def fitted_here(texts: Sequence[str]) -> tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
    """What was put in: materials of seals, sealants and further parts, by the tables' own names.

    Parameters
    ----------
    texts : sequence of str
        As they were typed, such as "latex sac", "shellac joint", "rubber ring".

    Returns
    -------
    tuple of tuple of str
        Seals, sealants, parts.

    Raises
    ------
    InputError
        If one is none of them.
    """
    seals: list[str] = []
    sealants: list[str] = []
    parts: list[str] = []
    for text in texts:
        plain = " ".join(text.casefold().split())
        sealant = next((key for word, key in _SEALANTS if word in plain), "")
        part = "rubber ring" if is_rubber_ring(text) else next((key for word, key in _PARTS if word in plain), "")
        name = seal_here(text)
        if sealant:
            sealants.append(sealant)
        elif part and not name:
            parts.append(part)
        elif name:
            seals.append(name)
        else:
            accepted = "a sac or seal (latex sac, silicone sac, cork), a sealant (shellac, rosin, silicone adhesive, grease) or a part (rubber ring, glued crack, welded crack, wax, ink window, inner cap)"
            raise InputError("What was put in", accepted, text)
    return tuple(dict.fromkeys(seals)), tuple(dict.fromkeys(sealants)), tuple(dict.fromkeys(parts))


def _judge(names: Sequence[str], treatment: str) -> Verdict:
    grid = tables.read(CompatibilityRow, "compatibility")
    return strictest([treatment_limits(name, treatment, grid) for name in names]).verdict


def ink_findings(rows: Sequence[InkRow]) -> tuple[Finding, ...]:
    """Advice on inks as findings, each with how sure it is."""
    return tuple(
        Finding(
            "warning" if row.grave else "note",
            "closing.ink",
            ink=row.ink,
            advice=row.advice,
            sure=CERTAINTY[row.certainty],
        )
        for row in rows
    )


def care_answer(given: Inputs) -> SumAnswer:
    """What the owner of a pen is told about care.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If something that was put in is neither seal nor sealant nor part.
    """
    pen = _pen(given)
    told = care_told(pen, care_rows(), _judge)
    never = never_told(pen, _judge)
    inks = inks_told(pen, ink_rows())
    findings = gravest_first((*not_read(given.texts("material")), *ink_findings(inks), *_about(pen)))
    data: dict[str, Any] = {
        "system": pen.system,
        "materials": list(pen.body),
        "fitted": [*pen.seals, *pen.sealants, *pen.parts],
        "lines": [*(line.line for line in told), *([f"Never: {', '.join(never)}."] if never else [])],
        "never": list(never),
        "rows": [
            {
                "topic": line.topic,
                "line": line.line,
                "why": line.why,
                "sources": list(source_words(line.source, "care_lines")),
                "certainty": line.certainty,
            }
            for line in told
        ],
        "findings": [finding.as_json() for finding in findings],
    }
    head = ("about", "what the owner is told", "why", "how sure")
    table: tuple[tuple[str, ...], ...] = (
        head,
        *((line.topic, line.line, line.why, CERTAINTY[line.certainty]) for line in told),
    )
    if never:
        table = (*table, ("never", f"{', '.join(never)}", "the table of what materials can take", "worked out"))
    return SumAnswer(_sentence(pen, told, never), data, findings, table, CareTold(told))


def _pen(given: Inputs) -> CareOf:
    system = given.text("system", "")
    seals, sealants, parts = fitted_here(given.texts("fitted"))
    typed = given.text("nib", "")
    nib = (material_name(typed, material_names(), "nib")[0],) if typed else ()
    if nib == (UNKNOWN,):
        raise InputError("Nib", "gold nib, steel nib, gold-plated steel or stainless steel", typed)
    body = body_here(given.texts("material")) or (UNKNOWN,)
    return CareOf(system, body, seals or rubber_of(system), nib, sealants=sealants, parts=parts)


def _about(pen: CareOf) -> tuple[Finding, ...]:
    found = []
    if UNKNOWN in pen.body:
        found.append(Finding("note", "closing.not-named"))
    if "silicone" in pen.seals and "shellac" in pen.sealants:
        found.append(Finding("warning", "closing.shellac-silicone"))
    return tuple(found)


def _sentence(pen: CareOf, told: Sequence[CareLine], never: Sequence[str]) -> str:
    """How it is filled, and what must never be done: the two that an owner must not miss."""
    label = SYSTEMS[pen.system].label
    made = "a body that is not named" if UNKNOWN in pen.body else in_words(pen.body)
    filling = " ".join(line.line for line in told if line.topic in ("filling", "force"))
    barred = f" Never {in_words(never, 'or')}." if never else ""
    return f"{capital(label)}, {made}: {filling}{barred}"


CARE = Sum(
    "care",
    "Care",
    "What an owner is told of a pen: filling, ink, rinsing, keeping, by its filling system, its material and what was put in.",
    FIELDS,
    care_answer,
    'pentools sums care --system lever-sac --material "hard rubber" --fitted "latex sac"',
)
