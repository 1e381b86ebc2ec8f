"""The sac sum: barrel, nipple and depth in; number by both readings, length and adhesive out."""

from __future__ import annotations

from typing import Any

from pentools.calc.base.findings import Finding
from pentools.calc.seal.sac import MATERIALS, STRETCH_LOW, SacChoice, SacInHand, SacRoom, sac_outside_mm
from pentools.calc.seal.sac_fit import SacFit, sac_fit
from pentools.fields import Field
from pentools.numbers import percent
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.seal.drawer import SACS_HINT, read_sacs
from pentools.tables import seals

__all__ = ["SAC", "sac_answer"]

FIELDS = (
    Field("barrel", "Barrel bore", "quantity", unit="mm", low=3, high=16, required=True, hint="where the sac lies, after cleaning, such as 8.00 mm"),
    Field("nipple", "Nipple", "quantity", unit="mm", low=1.5, high=14, hint="outside diameter, such as 6.60 mm"),
    Field("depth", "Depth", "quantity", unit="mm", low=10, high=150, hint="from the nipple's shoulder to the barrel's end or the bar's bend, such as 62 mm"),
    Field("nipple_length", "Nipple length", "quantity", unit="mm", low=1, high=25, hint="what of the sac sits on it, such as 6 mm; added to the length"),
    Field("sac", "Sac, measured", "quantity", unit="mm", low=2, high=16, hint="outside diameter of the sac in hand, over the pleats of a pleated one, such as 6.35 mm; it wins over the number"),
    Field("number", "Sac number", "number", low=5, high=40, hint="what it was sold as, such as 16"),
    Field("wall", "Wall", "quantity", unit="mm", low=0.1, high=2, hint="half of two walls pressed together, such as 0.50 mm"),
    Field("mouth", "Sac's mouth", "quantity", unit="mm", low=1, high=14, hint="inside diameter of its mouth or neck, where it was measured, such as 5.6 mm"),
    Field("bar", "Press bar takes", "quantity", unit="mm", low=0, high=3, hint="how much of the bore the bar takes up, such as 0.9 mm"),
    Field("before", "Bore before cleaning", "quantity", unit="mm", low=2, high=16, hint="the same bore with the old rubber in it"),
    Field("cleaned", "Old rubber cleaned out", "yes-no", hint="yes or no"),
    Field("material", "Sac material", "choice", choices=tuple((key, key) for key in MATERIALS), default="latex"),
    Field("pneumatic", "Pressed by air in a guard", "yes-no", default="no"),
    Field("drawer", "In the drawer", "items", hint=SACS_HINT),
)  # fmt: skip


def sac_answer(given: Inputs) -> SumAnswer:
    """A sac for a barrel.

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
        If a size is out of range or contradicts another.
    """
    measured, sold_as = given.number("sac"), given.number("number")
    material = given.text("material", "latex")
    outside = sac_outside_mm(sold_as) if measured is None and sold_as is not None else measured
    fit = sac_fit(
        _room(given),
        SacInHand(material, outside, given.number("wall"), given.number("mouth")),
        seals.sac_sizes(material),
        read_sacs(given.texts("drawer"), material),
    )
    findings = (*_number_findings(measured, sold_as), *fit.findings)
    nipple_length = given.number("nipple_length")
    cut = None if fit.length_mm is None or nipple_length is None else fit.length_mm + nipple_length
    sentence = _sentence(fit, material, outside is not None, cut)
    data = _data(fit, material, cut) | {
        "sentence": sentence,
        "measured": measured is not None,
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(sentence, data, findings, _table(fit, cut), fit)


def _data(fit: SacFit, material: str, cut: float | None) -> dict[str, Any]:
    return {
        "material": material,
        "number": fit.number,
        "size": fit.label,
        "outside_mm": fit.outside_mm,
        "number_by_hole": fit.number_by_hole,
        "largest_outside_mm": fit.largest_mm,
        "air_mm": fit.air_mm,
        "nipple_stretch": fit.nipple_stretch_share,
        "length_mm": fit.length_mm,
        "length_low_mm": fit.length_low_mm,
        "length_high_mm": fit.length_high_mm,
        "cut_length_mm": cut,
        "bar_length_mm": fit.bar_length_mm,
        "adhesive": fit.adhesive,
        "in_drawer": fit.in_drawer,
        "by_rule": fit.by_rule or None,
        "about_number": seals.sac_note(material, fit.label) or None,
        "choices": [
            {
                "size": c.size.label,
                "outside_mm": c.size.outside_mm,
                "air_mm": c.air_mm,
                "nipple_stretch": c.stretch_share,
            }
            for c in fit.choices
        ],
    }


def _room(given: Inputs) -> SacRoom:
    return SacRoom(
        given.needed("barrel"),
        given.number("nipple"),
        given.number("depth"),
        given.number("bar", 0.0),
        given.number("before"),
        given.flag("cleaned") if given.given("cleaned") else None,
        given.flag("pneumatic"),
    )


def _number_findings(measured: float | None, sold_as: float | None) -> tuple[Finding, ...]:
    if sold_as is None:
        return ()
    nominal = sac_outside_mm(sold_as)
    if measured is None:
        return (Finding("note", "seal.number-only", number=sold_as, nominal=nominal),)
    if abs(measured - nominal) > 0.2:
        return (Finding("note", "seal.number-off", number=sold_as, nominal=nominal, measured=measured),)
    return ()


def _sentence(fit: SacFit, material: str, in_hand: bool, cut: float | None) -> str:
    by_number = f" (number {fit.number} by its outside)" if fit.number is not None and material != "pleated" else ""
    if in_hand:
        size = f"The {material} sac of {fit.outside_mm:.2f} mm{by_number}"
    elif fit.in_drawer:
        rule = f"; the rule of thumb names a {fit.by_rule}" if fit.by_rule else ""
        size = f"In the drawer, {fit.label} ({fit.outside_mm:.2f} mm outside{rule})"
    elif fit.number is not None:
        size = f"{'A' if material == 'latex' else f'In {material}, a'} number {fit.number} by outside diameter ({fit.outside_mm:.2f} mm)"
    else:
        size = f"In {material}, a {fit.label} ({fit.outside_mm:.2f} mm outside)"
    doubt = next((f for f in fit.findings if f.topic in ("too-thick", "old-rubber") and f.level == "stop"), None)
    doubt = doubt or next((f for f in fit.findings if f.topic in ("rubs", "nipple-large", "nipple-small")), None)
    verdict = f"leaves {fit.air_mm:.2f} mm of air all round" if doubt is None else f"does not do yet. {doubt.text[:-1]}"
    length = ""
    if doubt is None and cut is not None:
        length = f"; cut it to {cut:.0f} mm with what goes on the nipple"
    elif doubt is None and fit.length_mm is not None:
        length = f"; {fit.length_mm:.0f} mm beyond the nipple's shoulder"
    hole = (
        f" Read as the hole it slips into, the number would be {fit.number_by_hole}." if fit.number is not None else ""
    )
    return f"{size} {verdict}{length}.{hole} Adhesive: {fit.adhesive}."


def _table(fit: SacFit, cut: float | None) -> tuple[tuple[str, ...], ...]:
    def mm(value: float | None, digits: int = 2) -> str:
        return "not measured" if value is None else f"{value:.{digits}f} mm"

    return (
        ("quantity", "value"),
        ("size", fit.label),
        ("number, outside in 64ths", "–" if fit.number is None else str(fit.number)),
        ("number, hole in 64ths", str(fit.number_by_hole)),
        ("outside diameter", mm(fit.outside_mm)),
        ("largest that keeps its air", mm(fit.largest_mm)),
        *((f"beside it: {c.size.label}", _beside(c)) for c in fit.choices if c.size.label != fit.label),
        (
            "length beyond the shoulder",
            f"{mm(fit.length_low_mm, 0)} to {mm(fit.length_high_mm, 0)}"
            if fit.length_mm is not None
            else "not measured",
        ),
        ("length to cut", mm(cut, 0)),
        ("longest press bar", mm(fit.bar_length_mm, 0)),
    )


def _beside(choice: SacChoice) -> str:
    words = (
        "goes",
        "a close fit",
        "slips off" if (choice.stretch_share or 0) < STRETCH_LOW else "may split",
        "rubs",
        "does not go in",
    )
    stretch = "" if choice.stretch_share is None else f", mouth stretched by {percent(choice.stretch_share)}"
    return f"{choice.air_mm:z.2f} mm of air{stretch}: {words[choice.grade]}"


SAC = Sum(
    "sac",
    "Sac",
    "Number by both readings, air in the barrel, grip on the nipple, length, press bar and adhesive.",
    FIELDS,
    sac_answer,
    'pentools sums sac --barrel "8.00 mm" --nipple "6.60 mm" --depth "62 mm"',
)
