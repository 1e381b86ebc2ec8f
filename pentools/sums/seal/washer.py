"""The washer sum: what to cut for a thin rod, a cork piston or a rod's packing, with the next sizes as a ladder."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.calc.seal.washers import Packing, WasherFit, cork_ring, head_washer, rod_packing
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.units import Reading

__all__ = ["WASHER", "washer_answer"]

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


def _mm(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def washer_answer(values: Mapping[str, Value]) -> SumAnswer:
    """What to cut.

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
        If a size is out of range or missing, or contradicts another.
    """
    bores, rod = values.get("bore"), _mm(values, "rod")
    readings = [r.value for r in bores if isinstance(r, Reading)] if isinstance(bores, tuple) else []
    if not readings or rod is None:
        raise InputError("bore and rod", "both measured", "not both")
    bore = sum(readings) / len(readings)
    typed = _mm(values, "ovality")
    ovality = max(readings) - min(readings) if typed is None else typed
    kind = str(values.get("kind") or "flat")
    if kind in ("stacked", "felt"):
        length = _mm(values, "length")
        if length is None:
            raise InputError(
                "length", "the free length of the housing", "nothing", "Measure it with the depth rod, such as 6 mm."
            )
        return _packing_answer(rod_packing(rod, bore, length, thickness_mm=_mm(values, "thickness") or 1.5, kind=kind))
    if kind == "cork":
        return _washer_answer(cork_ring(bore, rod, length_mm=_mm(values, "length")))
    return _washer_answer(head_washer(bore, rod, backing_mm=_mm(values, "backing"), kind=kind, ovality_mm=ovality))


def _washer_answer(fit: WasherFit) -> SumAnswer:
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
        "findings": [f.as_json() for f in fit.findings],
    }
    table = (
        ("quantity", "value"),
        ("outside", f"{fit.outside_mm:.2f} mm ({fit.outside_low_mm:.2f} to {fit.outside_high_mm:.2f})"),
        ("hole", f"{fit.hole_mm:.2f} mm"),
        ("ladder", "; ".join(f"{size:.2f}" for size in fit.ladder_mm) + " mm"),
    )
    return SumAnswer(sentence, data, fit.findings, table, fit)


def _packing_answer(packing: Packing) -> SumAnswer:
    name = dict(KINDS)[packing.kind]
    sentence = f"A {name} of {packing.count} rings, hole {packing.hole_mm:.2f} mm, outside {packing.outside_mm:.2f} mm, pressed by {100 * packing.pressed_share:.0f} % when closed."
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
        "findings": [f.as_json() for f in packing.findings],
    }
    table = (
        ("quantity", "value"),
        ("rings", str(packing.count)),
        ("hole", f"{packing.hole_mm:.2f} mm"),
        ("outside", f"{packing.outside_mm:.2f} mm"),
    )
    return SumAnswer(sentence, data, packing.findings, table, packing)


WASHER = Sum(
    "washer",
    "Washer, cork or packing",
    "Outside diameter, hole and thickness of a washer, cork ring or packing, with the next sizes as a trial ladder.",
    FIELDS,
    washer_answer,
    'pentools sums washer --bore "8.30 mm" --rod "1.60 mm"',
)
