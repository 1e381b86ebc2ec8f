"""The sac sum: barrel, nipple and depth in; number by both readings, length and adhesive out."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.calc.base.findings import Finding
from pentools.calc.seal.sac import MATERIALS, SacFit, sac_fit, sac_outside_mm
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.tables import seals
from pentools.units import Reading

__all__ = ["SAC", "sac_answer"]

FIELDS = (
    Field("barrel", "Barrel bore", "quantity", unit="mm", low=3, high=16, required=True, hint="where the sac lies, after cleaning, such as 8.00 mm"),
    Field("nipple", "Nipple", "quantity", unit="mm", low=1.5, high=14, hint="outside diameter, such as 6.60 mm"),
    Field("depth", "Depth", "quantity", unit="mm", low=10, high=150, hint="from the nipple's shoulder to the barrel's end or the bar's bend, such as 62 mm"),
    Field("nipple_length", "Nipple length", "quantity", unit="mm", low=1, high=25, hint="what of the sac sits on it, such as 6 mm; added to the length"),
    Field("sac", "Sac, measured", "quantity", unit="mm", low=2, high=16, hint="outside diameter of the sac in hand, such as 6.35 mm; it wins over the number"),
    Field("number", "Sac number", "number", low=5, high=40, hint="what it was sold as, such as 16"),
    Field("wall", "Wall", "quantity", unit="mm", low=0.1, high=2, hint="half of two walls pressed together, such as 0.50 mm"),
    Field("bar", "Press bar takes", "quantity", unit="mm", low=0, high=3, hint="how much of the bore the bar takes up, such as 0.9 mm"),
    Field("before", "Bore before cleaning", "quantity", unit="mm", low=2, high=16, hint="the same bore with the old rubber in it"),
    Field("cleaned", "Old rubber cleaned out", "yes-no", hint="yes or no"),
    Field("material", "Sac material", "choice", choices=tuple((key, key) for key in MATERIALS), default="latex"),
    Field("pneumatic", "Pressed by air in a guard", "yes-no", default="no"),
)  # fmt: skip


def _mm(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def sac_answer(values: Mapping[str, Value]) -> SumAnswer:
    """A sac for a barrel.

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
        If a size is out of range or contradicts another.
    """
    barrel, measured, number = _mm(values, "barrel"), _mm(values, "sac"), values.get("number")
    sold_as = float(number) if isinstance(number, int | float) and not isinstance(number, bool) else None
    used = measured if measured is not None or sold_as is None else sac_outside_mm(sold_as)
    material, cleaned = values.get("material"), values.get("cleaned")
    fit = sac_fit(
        barrel or 0.0,
        nipple_mm=_mm(values, "nipple"),
        depth_mm=_mm(values, "depth"),
        sac_mm=used,
        wall_mm=_mm(values, "wall"),
        bar_mm=_mm(values, "bar") or 0.0,
        bore_before_mm=_mm(values, "before"),
        cleaned=cleaned if isinstance(cleaned, bool) else None,
        material=material if isinstance(material, str) else "latex",
        pneumatic=values.get("pneumatic") is True,
    )
    findings = (*_number_findings(measured, sold_as), *fit.findings)
    nipple_length = _mm(values, "nipple_length")
    cut = None if fit.length_mm is None or nipple_length is None else fit.length_mm + nipple_length
    sentence = _sentence(fit, measured, cut)
    data = {
        "sentence": sentence,
        "number": fit.number,
        "outside_mm": fit.outside_mm,
        "measured": measured is not None,
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
        "about_number": seals.sac_note(fit.number) or None,
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(sentence, data, findings, _table(fit, cut), fit)


def _number_findings(measured: float | None, sold_as: float | None) -> tuple[Finding, ...]:
    if sold_as is None:
        return ()
    nominal = sac_outside_mm(sold_as)
    if measured is None:
        return (
            Finding(
                "note",
                f"Worked out with {sold_as:g}/64 in = {nominal:.2f} mm: measure the sac, batches run small.",
                "number-only",
            ),
        )
    off = measured - nominal
    if abs(off) > 0.2:
        return (
            Finding(
                "note",
                f"Sold as {sold_as:g} ({nominal:.2f} mm), it measures {measured:.2f} mm: the measured size is used.",
                "number-off",
            ),
        )
    return ()


def _sentence(fit: SacFit, measured: float | None, cut: float | None) -> str:
    size = (
        f"The sac of {fit.outside_mm:.2f} mm (a {fit.number} by its outside)"
        if measured is not None
        else f"A number {fit.number} by outside diameter ({fit.outside_mm:.2f} mm)"
    )
    stops = any(f.level == "stop" for f in fit.findings)
    verdict = "does not do yet" if stops else f"leaves {fit.air_mm:.2f} mm of air all round"
    length = (
        f"; cut it to {cut:.0f} mm with what goes on the nipple"
        if cut is not None
        else f"; {fit.length_mm:.0f} mm beyond the nipple's shoulder"
        if fit.length_mm is not None
        else ""
    )
    return f"{size} {verdict}{length}. Read as the hole it slips into, the number would be {fit.number_by_hole}. Adhesive: {fit.adhesive}."


def _table(fit: SacFit, cut: float | None) -> tuple[tuple[str, ...], ...]:
    def mm(value: float | None, digits: int = 2) -> str:
        return "not measured" if value is None else f"{value:.{digits}f} mm"

    return (
        ("quantity", "value"),
        ("number, outside in 64ths", str(fit.number)),
        ("number, hole in 64ths", str(fit.number_by_hole)),
        ("outside diameter", mm(fit.outside_mm)),
        ("largest that keeps its air", mm(fit.largest_mm)),
        (
            "length beyond the shoulder",
            f"{mm(fit.length_low_mm, 0)} to {mm(fit.length_high_mm, 0)}"
            if fit.length_mm is not None
            else "not measured",
        ),
        ("length to cut", mm(cut, 0)),
        ("longest press bar", mm(fit.bar_length_mm, 0)),
    )


SAC = Sum(
    "sac",
    "Sac",
    "Number by both readings, air in the barrel, grip on the nipple, length, press bar and adhesive.",
    FIELDS,
    sac_answer,
    'pentools sums sac --barrel "8.00 mm" --nipple "6.60 mm" --depth "62 mm"',
)
