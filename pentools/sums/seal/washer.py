"""The washer sum: what to cut for a thin rod, a cork piston or a rod's packing, with the next sizes as a ladder."""

from __future__ import annotations

from pentools.calc.base.findings import Finding
from pentools.calc.seal.bore import bore_from_readings, odd_findings
from pentools.calc.seal.washers import Packing, WasherFit, cork_ring, head_washer, rod_packing
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import percent
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["WASHER", "washer_answer"]

THICKNESS_MM = 1.5

KINDS = (
    ("flat", "flat washer"),
    ("cup", "cup washer"),
    ("cork", "cork ring"),
    ("stacked", "stacked packing"),
    ("felt", "felt packing"),
)

FIELDS = (
    Field("bore", "Bore", "quantities", unit="mm", low=2, high=25, required=True, hint="where it runs, or the packing's housing; one or several readings, such as 8.30 mm"),
    Field("rod", "Rod or seat", "quantity", unit="mm", low=0.5, high=24, required=True, hint="rod that carries it, or a cork's seat, such as 1.60 mm"),
    Field("kind", "Kind", "choice", choices=KINDS, default="flat", hint="what is to be cut"),
    Field("backing", "Backing washer", "quantity", unit="mm", low=1, high=20, hint="diameter of the washer or head behind it, such as 7.90 mm"),
    Field("ovality", "Ovality", "quantity", unit="mm", low=0, high=0.9, hint="largest less smallest bore reading; worked out from several readings"),
    Field("length", "Length", "quantity", unit="mm", low=1, high=30, hint="of the seat or the housing, such as 6 mm"),
    Field("thickness", "Ring thickness", "quantity", unit="mm", low=0.3, high=5, default="1.5 mm", hint="of one ring of a packing"),
)  # fmt: skip


def washer_answer(given: Inputs) -> SumAnswer:
    """What to cut.

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
        If a size is out of range or missing, or contradicts another.
    """
    readings, rod = given.numbers("bore"), given.number("rod")
    if not readings or rod is None:
        raise InputError("bore and rod", "both measured", "not both")
    bore, spread = bore_from_readings(readings)
    ovality, kind, odd = given.number("ovality", spread), given.text("kind", "flat"), odd_findings(readings)
    if kind in ("stacked", "felt"):
        length = given.number("length")
        if length is None:
            raise InputError(
                "length", "the free length of the housing", "nothing", "Measure it with the depth rod, such as 6 mm."
            )
        thickness = given.number("thickness", THICKNESS_MM)
        return _packing_answer(rod_packing(rod, bore, length, thickness_mm=thickness, kind=kind), odd)
    if kind == "cork":
        return _washer_answer(cork_ring(bore, rod, length_mm=given.number("length")), odd)
    fit = head_washer(bore, rod, backing_mm=given.number("backing"), kind=kind, ovality_mm=ovality)
    return _washer_answer(fit, odd)


def _washer_answer(fit: WasherFit, odd: tuple[Finding, ...]) -> SumAnswer:
    findings = (*odd, *fit.findings)
    name = dict(KINDS)[fit.kind]
    sheet = f", {fit.thickness_mm:g} mm thick" if fit.kind != "cork" and fit.thickness_mm is not None else ""
    cut = f" (cut to {fit.cut_mm:.2f} mm, then sand in)" if fit.cut_mm != fit.outside_mm else ""
    ladder = ", ".join(f"{size:.2f}" for size in fit.ladder_mm if size != fit.outside_mm)
    sentence = f"Start with a {name} of {fit.outside_mm:.2f} mm{cut}, hole {fit.hole_mm:.2f} mm{sheet}; next sizes {ladder} mm."
    data = {
        "sentence": sentence,
        "kind": fit.kind,
        "outside_mm": fit.outside_mm,
        "outside_low_mm": fit.outside_low_mm,
        "outside_high_mm": fit.outside_high_mm,
        "cut_mm": fit.cut_mm,
        "hole_mm": fit.hole_mm,
        "thickness_mm": fit.thickness_mm,
        "ladder_mm": list(fit.ladder_mm),
        "count": None,
        "pressed": None,
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("outside", f"{fit.outside_mm:.2f} mm ({fit.outside_low_mm:.2f} to {fit.outside_high_mm:.2f})"),
        ("hole", f"{fit.hole_mm:.2f} mm"),
        ("ladder", "; ".join(f"{size:.2f}" for size in fit.ladder_mm) + " mm"),
    )
    return SumAnswer(sentence, data, findings, table, fit)


def _packing_answer(packing: Packing, odd: tuple[Finding, ...]) -> SumAnswer:
    findings = (*odd, *packing.findings)
    name = dict(KINDS)[packing.kind]
    sentence = f"A {name} of {packing.count} rings, hole {packing.hole_mm:.2f} mm, outside {packing.outside_mm:.2f} mm, pressed by {percent(packing.pressed_share)} when closed."
    data = {
        "sentence": sentence,
        "kind": packing.kind,
        "outside_mm": packing.outside_mm,
        "outside_low_mm": None,
        "outside_high_mm": None,
        "cut_mm": packing.outside_mm,
        "hole_mm": packing.hole_mm,
        "thickness_mm": None,
        "ladder_mm": [],
        "count": packing.count,
        "pressed": packing.pressed_share,
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("rings", str(packing.count)),
        ("hole", f"{packing.hole_mm:.2f} mm"),
        ("outside", f"{packing.outside_mm:.2f} mm"),
    )
    return SumAnswer(sentence, data, findings, table, packing)


WASHER = Sum(
    "washer",
    "Washer, cork or packing",
    "Outside diameter, hole and thickness of a washer, cork ring or packing, with the next sizes as a trial ladder.",
    FIELDS,
    washer_answer,
    'pentools sums washer --bore "8.30 mm" --rod "1.60 mm"',
)
