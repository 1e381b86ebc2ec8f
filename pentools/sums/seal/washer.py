"""The washer sum: what to cut for a thin rod, a cork piston or a rod's packing, with the next sizes as a ladder."""

from __future__ import annotations

from collections.abc import Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.seal.bore import bore_from_readings, odd_findings
from pentools.calc.seal.washers import Packing, WasherFit, cork_ring, head_washer, rod_packing
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import in_words, percent
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.seal.drawer import SHEETS_HINT, InDrawer, read_washers

__all__ = ["WASHER", "washer_answer"]

THICKNESS_MM = 1.5
SHEET_OFF_SHARE = 0.25  # sheet of a quarter more or less serves (judged: a page calls 1/32 in usable for 0.025 in)
HOLE_SLACK_MM = 0.3  # a hole smaller by so much is opened with a punch (judged); one too large creeps over its nut

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
    Field("drawer", "In the drawer", "items", hint=SHEETS_HINT),
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
    at_hand = read_washers(given.texts("drawer"))
    ovality, kind, odd = given.number("ovality", spread), given.text("kind", "flat"), odd_findings(readings)
    if kind in ("stacked", "felt"):
        length = given.number("length")
        if length is None:
            raise InputError(
                "length", "the free length of the housing", "nothing", "Measure it with the depth rod, such as 6 mm."
            )
        thickness = given.number("thickness", THICKNESS_MM)
        packing = rod_packing(rod, bore, length, thickness_mm=thickness, kind=kind)
        sheet = "felt" if kind == "felt" else "sheet"
        return _packing_answer(packing, odd, [one for one in at_hand if one.kind == sheet and _near(one, thickness)])
    if kind == "cork":
        cork = cork_ring(bore, rod, length_mm=given.number("length"))
        return _washer_answer(cork, odd, [one for one in at_hand if _cork_goes(one, cork)])
    fit = head_washer(bore, rod, backing_mm=given.number("backing"), kind=kind, ovality_mm=ovality)
    return _washer_answer(fit, odd, [one for one in at_hand if _washer_goes(one, fit)])


def _washer_goes(one: InDrawer, fit: WasherFit) -> bool:
    """Whether a washer in the drawer lies within the window, its hole no larger than asked; or a sheet can be cut for it."""
    if one.kind == "washer" and one.outside_mm is not None and one.hole_mm is not None:
        within = fit.outside_low_mm - 1e-9 <= one.outside_mm <= fit.outside_high_mm + 1e-9
        return within and fit.hole_mm - HOLE_SLACK_MM <= one.hole_mm <= fit.hole_mm + 1e-9
    return one.kind == "sheet" and fit.kind != "cork" and _near(one, fit.thickness_mm)


def _cork_goes(one: InDrawer, fit: WasherFit) -> bool:
    """Whether a cork ring in the drawer can be sanded to size, or a sheet of cork is thick enough for the seat."""
    if one.kind == "cork" and one.outside_mm is not None and one.hole_mm is not None:
        return fit.outside_low_mm <= one.outside_mm <= fit.cut_mm + 1 and one.hole_mm <= fit.hole_mm + 1e-9
    thick = one.thickness_mm
    return one.kind == "cork sheet" and thick is not None and fit.thickness_mm is not None and thick >= fit.thickness_mm


def _near(one: InDrawer, wanted_mm: float | None) -> bool:
    thick = one.thickness_mm
    return wanted_mm is not None and thick is not None and abs(thick - wanted_mm) <= SHEET_OFF_SHARE * wanted_mm


def _with_drawer(sentence: str, at_hand: Sequence[InDrawer]) -> str:
    """A sentence with what lies in the drawer for it: what is ready made before what is still to be cut."""
    ready = [one.name for one in at_hand if one.outside_mm is not None]
    to_cut = [one.name for one in at_hand if one.outside_mm is None]
    if ready:
        return f"{sentence} In the drawer, first to try: {in_words(ready)}."
    return f"{sentence} In the drawer, to cut it from: {in_words(to_cut)}." if to_cut else sentence


def _washer_answer(fit: WasherFit, odd: tuple[Finding, ...], at_hand: Sequence[InDrawer]) -> SumAnswer:
    findings = (*odd, *fit.findings)
    name = dict(KINDS)[fit.kind]
    sheet = f", {fit.thickness_mm:g} mm thick" if fit.kind != "cork" and fit.thickness_mm is not None else ""
    cut = f" (cut to {fit.cut_mm:.2f} mm, then sand in)" if fit.cut_mm != fit.outside_mm else ""
    ladder = ", ".join(f"{size:.2f}" for size in fit.ladder_mm if size != fit.outside_mm)
    sentence = f"Start with a {name} of {fit.outside_mm:.2f} mm{cut}, hole {fit.hole_mm:.2f} mm{sheet}; next sizes {ladder} mm."
    sentence = _with_drawer(sentence, at_hand)
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
        "in_drawer": [one.name for one in at_hand],
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("outside", f"{fit.outside_mm:.2f} mm ({fit.outside_low_mm:.2f} to {fit.outside_high_mm:.2f})"),
        ("hole", f"{fit.hole_mm:.2f} mm"),
        ("ladder", "; ".join(f"{size:.2f}" for size in fit.ladder_mm) + " mm"),
    )
    return SumAnswer(sentence, data, findings, table, fit)


def _packing_answer(packing: Packing, odd: tuple[Finding, ...], at_hand: Sequence[InDrawer]) -> SumAnswer:
    findings = (*odd, *packing.findings)
    name = dict(KINDS)[packing.kind]
    sentence = f"A {name} of {packing.count} rings, hole {packing.hole_mm:.2f} mm, outside {packing.outside_mm:.2f} mm, pressed by {percent(packing.pressed_share)} when closed."
    sentence = _with_drawer(sentence, at_hand)
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
        "in_drawer": [one.name for one in at_hand],
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
