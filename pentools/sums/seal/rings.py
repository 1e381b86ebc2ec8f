"""The seal sum: caliper readings of a piston head or a packing in, a ranked list of O-rings out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.seal.bore import bore_from_readings, odd_findings
from pentools.calc.seal.fit import FITTING, Candidate, SealFit
from pentools.calc.seal.fit import seal_fit as rank_rings
from pentools.calc.seal.friction import FRICTION_MODEL
from pentools.calc.seal.gland import Gland, GlandState, Halves
from pentools.calc.seal.judge import DUTIES, Duty
from pentools.calc.seal.remedy import Remedy
from pentools.calc.seal.rubber import ElastomerRow, LubricantRow, choose_elastomer, choose_lubricant
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import fixed, percent
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.seal.stock import STOCK_HINT, read_stock
from pentools.tables import seals
from pentools.units import Reading

__all__ = ["SEAL", "fit_sentence", "seal_answer"]

SHOWN = 8
CALLIPER_MM = 0.03
MEETS = ("water-based ink", "silicone grease")  # what every seal of a pen meets
SOURCES = (("as568", "AS568 sizes"), ("metric", "common metric sizes"), ("stock", "my own measured rings"))

FIELDS = (
    Field("bore", "Bore", "quantities", unit="mm", low=2, high=30, hint="where the head runs, best at three angles and two depths, such as 6.30 mm"),
    Field("groove", "Groove diameter", "quantity", unit="mm", low=0.5, high=28, hint="bottom of the head's groove, such as 3.30 mm"),
    Field("width", "Groove width", "quantity", unit="mm", low=0.5, high=15, hint="such as 2.4 mm"),
    Field("head", "Head diameter", "quantity", unit="mm", low=1, high=30, hint="the head beside its groove, such as 6.10 mm"),
    Field("rod", "Rod", "quantity", unit="mm", low=0.5, high=15, hint="for a packing: the rod, such as 3.00 mm"),
    Field("housing", "Housing bore", "quantities", unit="mm", low=2, high=25, hint="for a packing: where the ring sits, such as 6.20 mm"),
    Field("guide", "Guide hole", "quantity", unit="mm", low=0.5, high=20, hint="for a packing: the hole that guides the rod, such as 3.10 mm"),
    Field("ovality", "Ovality", "quantity", unit="mm", low=0, high=1, hint="largest less smallest bore reading; worked out where several readings are given"),
    Field("caliper", "Calliper", "quantity", unit="mm", low=0, high=0.3, default="0.03 mm", hint="how far one reading can be wrong, half-width"),
    Field("duty", "Duty", "choice", choices=tuple((key, key) for key in DUTIES), default="hand-turned", hint="what the seal does"),
    Field("from", "Rings from", "choice", choices=SOURCES, default="as568", hint="which list to choose from"),
    Field("stock", "Own rings", "items", hint=STOCK_HINT),
    Field("drawer", "In the drawer", "items", hint="rings at hand, as for own rings: they join the list, and are the first to try of those that fit alike"),
    Field("hardness", "Hardness", "number", low=20, high=90, default="70", hint="Shore A, for the friction estimate"),
    Field("meets", "What it will meet", "items", default="; ".join(MEETS), hint="such as water-based ink; ammonia flush; alcohol; mineral oil"),
    Field("all", "List every size", "yes-no", default="no", hint="yes for the whole list"),
)  # fmt: skip


def _ranked(given: Inputs) -> SealFit:
    source = given.text("from", "as568")
    at_hand = tuple(replace(ring, at_hand=True) for ring in read_stock(given.texts("drawer")))
    own = read_stock(given.texts("stock")) or at_hand
    rings = own if source == "stock" else (*at_hand, *seals.rings(source))
    if not rings:
        raise InputError("own rings", "at least one, as section x inside", "none", "Type them like 1.78x5.28; 2.0x5.0.")
    duty = seals.duty(given.text("duty", "hand-turned"))
    return rank_rings(_gland(given), rings, duty, shore_a=given.number("hardness", 70.0))


def _gland(given: Inputs) -> Gland:
    piston, packing = (any(given.given(name) for name in pair) for pair in (("bore", "groove"), ("rod", "housing")))
    if piston == packing:
        raise InputError(
            "gland", "bore and groove of a head, or rod and housing of a packing", "both" if piston else "neither"
        )
    hole, seat, guide = ("bore", "groove", "head") if piston else ("housing", "rod", "guide")
    inner, readings = given.number(seat), given.numbers(hole)
    if inner is None or not readings:
        missing = seat if inner is None else hole
        raise InputError(missing, "measured", "nothing", "Both diameters of the gland are needed.")
    mean, spread = bore_from_readings(readings)
    halves = Halves(*(_half_width(given.readings(name)) for name in (seat, hole, "width", guide)))
    kind, caliper = "piston" if piston else "packing", given.number("caliper", CALLIPER_MM)
    try:
        return Gland(
            kind, inner, mean, given.number("width"), given.number(guide), caliper, given.number("ovality", spread),
            halves,
        )  # fmt: skip
    except InputError as error:
        odd = odd_findings(readings, halves.outer_mm or caliper)
        if odd:
            raise InputError(
                hole, "readings of one hole", "; ".join(f"{r:g} mm" for r in readings), odd[0].text
            ) from error
        raise


def _half_width(readings: Sequence[Reading]) -> float | None:
    """Half-width of what was typed after ± (k = 1, so times the root of three); None where nothing was."""
    typed = [reading.standard_uncertainty for reading in readings if reading.standard_uncertainty]
    return math.sqrt(3) * max(typed) if typed else None


def seal_answer(given: Inputs) -> SumAnswer:
    """O-rings for a gland, best first.

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
        If the gland is not complete or a value cannot be used.
    """
    result = _ranked(given)
    shown = result.candidates if given.flag("all") else result.candidates[:SHOWN]
    rubber, rubber_finding = _rubber(given.texts("meets") or MEETS, result.duty)
    others = _other_lists(result, given.text("from", "as568"))
    readings = given.numbers("bore" if result.gland.kind == "piston" else "housing")
    findings = (
        *odd_findings(readings, result.gland.outer_half_mm),
        *result.findings,
        *(finding for finding, _ in others),
        *(f for f in result.best.findings if f.level != "ok"),
        rubber_finding,
    )
    sentence = fit_sentence(result, [words for _, words in others])
    data = _data(result, shown, findings) | {"sentence": sentence, "elastomers": rubber}
    return SumAnswer(sentence, data, findings, _table(shown), result)


def _rubber(media: tuple[str, ...], duty: Duty) -> tuple[list[dict[str, Any]], Finding]:
    choices = choose_elastomer(
        media, "moving seal" if duty.moves else "static seal", tables.read(ElastomerRow, "elastomers")
    )
    best = choices[0]
    good = [
        c.lubricant
        for c in choose_lubricant(best.elastomer, tables.read(LubricantRow, "lubricants"))
        if c.verdict == "ok"
    ]
    shown = [
        {
            "elastomer": c.elastomer,
            "worst_rating": c.worst or None,
            "ratings": [
                {"medium": m, "rating": r or None, "source": s, "certainty": sure, "note": n}
                for m, r, s, sure, n in c.ratings
            ],
            "findings": [f.as_json() for f in c.findings],
        }
        for c in choices
    ]
    said = {"rubber": best.elastomer, "media": media, "worst": best.worst or "unknown", "grease": good or ["none"]}
    return shown, Finding("note", "seal.elastomer", **said)


def _other_lists(result: SealFit, source: str) -> list[tuple[Finding, str]]:
    """Where this list has nothing that fits: what another list has, as a finding and for the sentence."""
    if result.fitting:
        return []
    found = []
    for other in seals.RING_TABLES:
        best = rank_rings(result.gland, seals.rings(other), result.duty).best if other != source else None
        if best is not None and best.verdict in FITTING:
            name = dict(SOURCES)[other]
            finding = Finding("note", "seal.other-list", name=name, ring=best.designation, verdict=best.verdict)
            found.append((finding, f"{_size(best)} of the {name}"))
    return found


def _size(candidate: Candidate) -> str:
    ring = candidate.fit.ring
    where = ", in the drawer" if ring.at_hand else ""
    return f"{candidate.designation} ({ring.inside_mm:.2f} × {ring.section_mm:.2f} mm{where})"


def fit_sentence(result: SealFit, elsewhere: Sequence[str] = ()) -> str:
    """What to try first, in one sentence; the same in panels and on the command line.

    Parameters
    ----------
    result : SealFit
        The ranked rings.
    elsewhere : sequence of str
        Rings of other lists that fit, in words.
    """
    best, size = result.best, _size(result.best)
    fit = best.fit
    span = (
        f"squeeze {percent(fit.nominal.squeeze_share)}, "
        f"at worst {fixed(100 * fit.least.squeeze_share, 0)} to {percent(fit.most.squeeze_share)}"
    ).replace("-", "−")
    if best.verdict == "fits":
        return f"{size} is the first to try: {span}."
    if best.verdict == "measure it":
        return f"{size} is the first to try, but measure it first: {span}."
    if best.verdict == "with a reservation":
        why = best.judgement.reservations[0].text if best.judgement.reservations else best.findings[0].text
        other = f" {elsewhere[0]} fits better." if elsewhere else ""
        return f"{size} may be tried, with a reservation: {span}. {why}{other}"
    nearest = f"No ring of this list fits; {size} comes nearest ({span})."
    if elsewhere:
        return f"{nearest} {elsewhere[0]} is the one to try."
    told = {f.topic: f.text for f in reversed(result.findings)}
    ahead = " ".join(told[topic] for topic in ("wanted-ring", "remedy") if topic in told)
    return f"{nearest} {ahead or 'No change that can be made and measured makes one fit.'}"


def _state(state: GlandState | None) -> dict[str, float] | None:
    if state is None:
        return None
    return {
        "inner_mm": state.inner_mm,
        "outer_mm": state.outer_mm,
        "depth_mm": state.depth_mm,
        "section_mm": state.section_mm,
        "squeeze": state.squeeze_share,
        "offset_mm": state.offset_mm,
    }


def _candidate(candidate: Candidate) -> dict[str, Any]:
    fit, drag = candidate.fit, candidate.friction
    low, high = fit.squeeze_interval
    return {
        "designation": candidate.designation,
        "in_drawer": fit.ring.at_hand,
        "verdict": candidate.verdict,
        "inside_mm": fit.ring.inside_mm,
        "section_mm": fit.ring.section_mm,
        "squeeze_min": fit.least.squeeze_share,
        "squeeze_nominal": fit.nominal.squeeze_share,
        "squeeze_max": fit.most.squeeze_share,
        "squeeze_standard_uncertainty": fit.squeeze_uncertainty_share,
        "squeeze_low": low,
        "squeeze_high": high,
        "squeeze_pessimist": fit.pessimist_share,
        "squeeze_pessimist_min": fit.pessimist_least_share,
        "eccentric_min": None if fit.eccentric_least is None else fit.eccentric_least.squeeze_share,
        "eccentric_max": None if fit.eccentric_most is None else fit.eccentric_most.squeeze_share,
        "stretch": fit.stretch_share,
        "section_loss": fit.section_loss_share,
        "outside_compression": fit.outside_share,
        "gland_fill": fit.fill_share,
        "gland_fill_max": fit.fill_most_share,
        "side_clearance_mm": fit.side_clearance_mm,
        "friction_running_n": None if drag is None else drag.running_n,
        "friction_breakout_n": None if drag is None else drag.breakout_n,
        "states": {
            "least": _state(fit.least),
            "nominal": _state(fit.nominal),
            "most": _state(fit.most),
            "eccentric_least": _state(fit.eccentric_least),
            "eccentric_most": _state(fit.eccentric_most),
        },
        "reservations": [f.as_json() for f in candidate.judgement.reservations],
        "findings": [f.as_json() for f in candidate.findings],
    }


def _remedy(remedy: Remedy) -> dict[str, Any]:
    return {
        "designation": remedy.ring.designation,
        "groove_mm": remedy.groove_mm,
        "sleeve_mm": remedy.sleeve_mm,
        "width_mm": remedy.width_mm,
        "squeeze": remedy.squeeze_share,
        "stretch": remedy.stretch_share,
        "undoable": remedy.undoable,
        "sentence": remedy.sentence,
    }


def _data(result: SealFit, shown: tuple[Candidate, ...], findings: Sequence[Finding]) -> dict[str, Any]:
    gland, duty = result.gland, result.duty
    return {
        "gland": {
            "kind": gland.kind,
            "inner_mm": gland.inner_mm,
            "outer_mm": gland.outer_mm,
            "width_mm": gland.width_mm,
            "guide_mm": gland.guide_mm,
            "clearance_mm": gland.clearance_mm,
            "caliper_mm": max(gland.inner_half_mm, gland.outer_half_mm),
            "half_widths_mm": {
                "inner": gland.inner_half_mm,
                "outer": gland.outer_half_mm,
                "width": None if gland.width_mm is None else gland.width_half_mm,
                "guide": None if gland.guide_mm is None else gland.guide_half_mm,
            },
            "ovality_mm": gland.ovality_mm,
        },
        "duty": {
            "key": duty.key,
            "low": duty.low,
            "high": duty.high,
            "floor": duty.floor,
            "ceiling": duty.ceiling,
            "offered_from": duty.offered_from,
            "offered_to": duty.offered_to,
            "source": duty.source,
        },
        "fits": len(result.fitting),
        "offered": len(result.offered),
        "candidates": [_candidate(c) for c in shown],
        "remedies": [_remedy(r) for r in result.remedies],
        "suction_n": result.suction_n,
        "friction_model": FRICTION_MODEL,
        "findings": [f.as_json() for f in findings],
    }


def _table(shown: tuple[Candidate, ...]) -> tuple[tuple[str, ...], ...]:
    rows: list[tuple[str, ...]] = [
        ("ring", "inside", "section", "least", "squeeze", "most", "stretch", "fill", "verdict")
    ]
    for c in shown:
        f = c.fit
        shares = (f.least.squeeze_share, f.nominal.squeeze_share, f.most.squeeze_share, f.stretch_share, f.fill_share)
        rows.append(
            (
                c.designation,
                f"{f.ring.inside_mm:.2f} mm",
                f"{f.ring.section_mm:.2f} mm",
                *("–" if s is None else percent(s, 1) for s in shares),
                c.verdict,
            )
        )
    return tuple(rows)


SEAL = Sum(
    "seal",
    "O-ring for a head or a packing",
    "Ranks O-rings by their worst case: squeeze, stretch, fill, drag; says what to turn where none fits.",
    FIELDS,
    seal_answer,
    'pentools sums seal --bore "7.40 mm" --groove "4.50 mm" --width "2.4 mm" --json',
)
