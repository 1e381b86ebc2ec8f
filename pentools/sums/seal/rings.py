"""The seal sum: caliper readings of a piston head or a packing in, a ranked list of O-rings out."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.seal.fit import Candidate, SealFit
from pentools.calc.seal.fit import seal_fit as rank_rings
from pentools.calc.seal.friction import FRICTION_MODEL
from pentools.calc.seal.gland import Gland, GlandState, bore_from_readings
from pentools.calc.seal.judge import DUTIES, Duty
from pentools.calc.seal.remedy import Remedy
from pentools.calc.seal.rubber import choose_elastomer, choose_lubricant
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.sums.seal.stock import STOCK_HINT, read_stock
from pentools.tables import seals
from pentools.units import Reading

__all__ = ["SEAL", "seal_answer", "seal_fit"]

SHOWN = 8
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
    Field("hardness", "Hardness", "number", low=20, high=90, default="70", hint="Shore A, for the friction estimate"),
    Field("meets", "What it will meet", "items", default="water-based ink; silicone grease", hint="such as water-based ink; ammonia flush; alcohol; mineral oil"),
    Field("all", "List every size", "yes-no", default="no", hint="yes for the whole list"),
)  # fmt: skip


def seal_fit(
    *,
    bore_mm: float | Sequence[float] | None = None,
    groove_mm: float | None = None,
    width_mm: float | None = None,
    head_mm: float | None = None,
    rod_mm: float | None = None,
    housing_mm: float | Sequence[float] | None = None,
    guide_mm: float | None = None,
    ovality_mm: float | None = None,
    caliper_mm: float = 0.03,
    duty: str = "hand-turned",
    source: str = "as568",
    stock: Sequence[str] = (),
    shore_a: float = 70.0,
) -> SealFit:
    """Rank O-rings for a piston head (bore, groove) or a packing (rod, housing) by their worst case.

    Parameters
    ----------
    bore_mm : float or sequence of float or None
        Bore, one reading or several [mm].
    groove_mm : float or None
        Groove diameter of the head [mm].
    width_mm : float or None
        Groove width [mm].
    head_mm : float or None
        Head diameter beside the groove [mm].
    rod_mm : float or None
        Rod of a packing [mm].
    housing_mm : float or sequence of float or None
        Housing bore of a packing, one reading or several [mm].
    guide_mm : float or None
        Hole that guides the rod [mm].
    ovality_mm : float or None
        Largest less smallest reading [mm]; worked out from several readings where None.
    caliper_mm : float
        Half-width of one reading [mm].
    duty : {"hand-turned", "low-friction", "static"}
        What the seal does.
    source : {"as568", "metric", "stock"}
        Which rings to choose from.
    stock : sequence of str
        Own measured rings, ``section x inside`` in mm, for ``source="stock"``.
    shore_a : float
        Hardness for the friction estimate [Shore A].

    Returns
    -------
    SealFit
        Candidates best first, remedies where none fits.

    Raises
    ------
    InputError
        If neither or both glands are given, a size is out of range, or there are no rings.

    Examples
    --------
    >>> seal_fit(bore_mm=7.40, groove_mm=4.50, width_mm=2.4).best.designation
    '008'
    """
    piston, packing = bore_mm is not None or groove_mm is not None, rod_mm is not None or housing_mm is not None
    if piston == packing:
        raise InputError(
            "gland", "bore and groove of a head, or rod and housing of a packing", "both" if piston else "neither"
        )
    first, second = (groove_mm, bore_mm) if piston else (rod_mm, housing_mm)
    if first is None or second is None:
        missing = ("groove" if first is None else "bore") if piston else ("rod" if first is None else "housing")
        raise InputError(missing, "measured", "nothing", "Both diameters of the gland are needed.")
    readings = tuple(second) if isinstance(second, Sequence) else (second,)
    mean, spread = bore_from_readings(readings)
    gland = Gland(
        "piston" if piston else "packing",
        first,
        mean,
        width_mm,
        head_mm if piston else guide_mm,
        caliper_mm,
        spread if ovality_mm is None else ovality_mm,
    )
    rings = read_stock(stock) if source == "stock" else seals.rings(source)
    if not rings:
        raise InputError("own rings", "at least one, as section x inside", "none", "Type them like 1.78x5.28; 2.0x5.0.")
    return rank_rings(gland, rings, seals.duty(duty), shore_a=shore_a)


def _mm(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def _several(values: Mapping[str, Value], name: str) -> tuple[float, ...] | None:
    value = values.get(name)
    return tuple(r.value for r in value if isinstance(r, Reading)) if isinstance(value, tuple) and value else None


def _half_width(values: Mapping[str, Value]) -> float:
    """The calliper's half-width, or what was typed after ± where that is more (k = 1, so times the root of three)."""
    typed = [
        r.standard_uncertainty
        for v in values.values()
        for r in (v if isinstance(v, tuple) else (v,))
        if isinstance(r, Reading) and r.standard_uncertainty
    ]
    caliper = _mm(values, "caliper")
    return max([0.03 if caliper is None else caliper, *(math.sqrt(3) * u for u in typed)])


def _text(values: Mapping[str, Value], name: str, default: str) -> str:
    value = values.get(name)
    return value if isinstance(value, str) else default


def seal_answer(values: Mapping[str, Value]) -> SumAnswer:
    """O-rings for a gland, best first.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If the gland is not complete or a value cannot be used.
    """
    stock, meets, hardness = values.get("stock"), values.get("meets"), values.get("hardness")
    result = seal_fit(
        bore_mm=_several(values, "bore"),
        groove_mm=_mm(values, "groove"),
        width_mm=_mm(values, "width"),
        head_mm=_mm(values, "head"),
        rod_mm=_mm(values, "rod"),
        housing_mm=_several(values, "housing"),
        guide_mm=_mm(values, "guide"),
        ovality_mm=_mm(values, "ovality"),
        caliper_mm=_half_width(values),
        duty=_text(values, "duty", "hand-turned"),
        source=_text(values, "from", "as568"),
        stock=tuple(str(item) for item in stock) if isinstance(stock, tuple) else (),
        shore_a=float(hardness) if isinstance(hardness, int | float) else 70.0,
    )
    shown = result.candidates if values.get("all") is True else result.candidates[:SHOWN]
    media = tuple(str(m) for m in meets) if isinstance(meets, tuple) else ("water-based ink",)
    rubber, rubber_finding = _rubber(media, result.duty)
    findings = (
        *result.findings,
        *_other_lists(result, _text(values, "from", "as568")),
        *(f for f in result.best.findings if f.level != "ok"),
        rubber_finding,
    )
    data = _data(result, shown, findings) | {"elastomers": rubber}
    return SumAnswer(_sentence(result), data, findings, _table(shown), result)


def _rubber(media: tuple[str, ...], duty: Duty) -> tuple[list[dict[str, Any]], Finding]:
    choices = choose_elastomer(media, "moving seal" if duty.moves else "static seal", tables.rows("elastomers"))
    best = choices[0]
    good = [c.lubricant for c in choose_lubricant(best.elastomer, tables.rows("lubricants")) if c.verdict == "ok"]
    text = f"{best.elastomer} suits {', '.join(media)} best (its worst rating there is {best.worst or 'unknown'}); lubricant: {' or '.join(good) or 'none'}."
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
    return shown, Finding("note", text, "elastomer")


def _other_lists(result: SealFit, source: str) -> tuple[Finding, ...]:
    """Where this list has nothing: what another list has."""
    if result.fitting:
        return ()
    found = []
    for other in seals.RING_TABLES:
        if other != source:
            best = rank_rings(result.gland, seals.rings(other), result.duty).best
            if best.verdict in ("fits", "measure it"):
                found.append(
                    Finding(
                        "note",
                        f"Among the {dict(SOURCES)[other]}, {best.designation} does: {best.verdict}.",
                        "other-list",
                    )
                )
    return tuple(found)


def _sentence(result: SealFit) -> str:
    best = result.best
    ring, nominal = best.fit.ring, best.fit.nominal
    size = f"{ring.designation} ({ring.inside_mm:.2f} × {ring.section_mm:.2f} mm)"
    span = f"squeeze {100 * nominal.squeeze_share:.0f} %, at worst {100 * best.fit.least.squeeze_share:.0f} to {100 * best.fit.most.squeeze_share:.0f} %"
    if best.verdict == "fits":
        return f"{size} is the first to try: {span}."
    if best.verdict == "measure it":
        return f"{size} is the first to try, but measure it first: {span}."
    remedy = (
        f" {result.remedies[0].sentence}"
        if result.remedies
        else f" No change of {'groove or bore' if result.gland.kind == 'piston' else 'the housing'} makes one fit."
    )
    return f"No ring of this list fits; {size} comes nearest ({span}).{remedy}"


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
        "sentence": remedy.sentence,
    }


def _data(result: SealFit, shown: tuple[Candidate, ...], findings: Sequence[Finding]) -> dict[str, Any]:
    gland, duty = result.gland, result.duty
    return {
        "sentence": _sentence(result),
        "gland": {
            "kind": gland.kind,
            "inner_mm": gland.inner_mm,
            "outer_mm": gland.outer_mm,
            "width_mm": gland.width_mm,
            "guide_mm": gland.guide_mm,
            "clearance_mm": gland.clearance_mm,
            "caliper_mm": gland.half_width_mm,
            "ovality_mm": gland.ovality_mm,
        },
        "duty": {
            "key": duty.key,
            "low": duty.low,
            "high": duty.high,
            "floor": duty.floor,
            "ceiling": duty.ceiling,
            "source": duty.source,
        },
        "fits": len(result.fitting),
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
                *("–" if s is None else f"{100 * s:.1f} %" for s in shares),
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
