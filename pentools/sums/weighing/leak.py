"""The leak sum: masses of a filled pen against time in, a rate with what could be told at all out."""

from __future__ import annotations

import math

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.density import saturation_vapour_pressure_kpa
from pentools.calc.weighing.leak import LeakResult, evaporation_mg_per_day, leak_down
from pentools.calc.weighing.volumes import area_mm2
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.weighing.fields import BALANCE_FIELDS
from pentools.sums.weighing.inputs import balance_of

__all__ = ["GAP_FIELDS", "LEAK", "leak_answer"]

GAP_FIELDS = (
    Field("gap", "Gap at the cap's seat", "quantity", unit="mm", low=0, high=2, hint="estimated, to say what evaporation alone may take; such as 0.05 mm"),
    Field("seat", "Diameter of the seat", "quantity", unit="mm", low=2, high=20, hint="where cap and section meet; such as 10 mm"),
    Field("gap_length", "Way through the gap", "quantity", unit="mm", low=0.2, high=40, hint="such as 5 mm"),
)  # fmt: skip
FIELDS = (
    Field("times", "Times since filling", "quantities", unit="h", low=0, high=2000, required=True, hint="such as 0 h; 8 h; 24 h"),
    Field("masses", "Masses at those times", "quantities", unit="g", low=0, high=200, required=True, hint="such as 18.21 g; 18.21 g; 18.20 g"),
    Field("blanks", "Masses of a dry dummy", "quantities", unit="g", low=0, high=200, hint="the same solid object each time, or nothing"),
    *(field for field in BALANCE_FIELDS if field.name in ("readability", "repeatability")),
    *GAP_FIELDS,
    Field("temperature", "Temperature", "quantity", unit="degC", low=5, high=35, default="20 °C", hint="of the room, such as 21 °C"),
    Field("humidity", "Humidity", "quantity", unit="1", low=0, high=1, default="50 %", hint="of the room, such as 45 %"),
)  # fmt: skip


def leak_answer(given: Inputs) -> SumAnswer:
    """Whether a pen leaks.

    Parameters
    ----------
    given : Inputs
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If times and masses are not as many as each other, or fewer than two.
    """
    times, masses, blanks = (given.numbers(name) for name in ("times", "masses", "blanks"))
    if len(times) != len(masses):
        raise InputError("masses", f"as many as the times, {len(times)}", len(masses))
    balance, digits = balance_of(given, ("masses", "blanks"))
    evaporation = _evaporation(given)
    # one reading against another on one scale: its last digit and its scatter
    reading_u = math.hypot(balance.rounding_g, balance.repeatability_g)
    result = leak_down(times, masses, reading_u, blanks, evaporation_mg_day=evaporation)
    findings = (*result.findings, *digits)
    if evaporation is not None:
        findings += (Finding("note", "weighing.evaporation-estimate", estimate=evaporation),)
    sentence = result.findings[0].text
    data = {
        "sentence": sentence,
        "times_h": list(times),
        "masses_g": list(masses),
        "loss_mg_per_h": result.loss_mg_per_h,
        "standard_uncertainty_mg_per_h": result.uncertainty_mg_per_h,
        "decision_limit_mg_per_h": result.decision_mg_per_h,
        "detection_limit_mg_per_h": result.detection_mg_per_h,
        "intercept_g": result.line.intercept,
        "readability_g": balance.readability_g,
        "reading_uncertainty_g": reading_u,
        "evaporation_estimate_mg_per_day": evaporation,
        "verdict": result.verdict,
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(sentence, data, findings, _table(result, times, evaporation), result)


def _table(result: LeakResult, times: tuple[float, ...], evaporation: float | None) -> tuple[tuple[str, ...], ...]:
    loss, doubt = plain(result.loss_mg_per_h, 3), plain(result.decision_mg_per_h, 2)
    rows = [
        ("quantity", "value"),
        ("loss", f"{loss} mg/h ± {doubt} (one-sided, 95\u202f%)"),
        ("smallest loss that would have shown", f"{plain(result.detection_mg_per_h, 2)} mg/h"),
        ("weighings", f"{len(times)} over {plain(max(times) - min(times))} h"),
    ]
    if evaporation is not None:
        rows.append(("evaporation through the gap, about", f"{plain(evaporation, 2)} mg a day"))
    return tuple(rows)


def _evaporation(given: Inputs) -> float | None:
    gap, seat, way = (given.number(name) for name in ("gap", "seat", "gap_length"))
    if gap is None or seat is None or way is None:
        return None
    celsius = given.number("temperature", 20.0)
    share = given.number("humidity", 0.5)
    area = area_mm2(seat + 2 * gap, seat)
    return evaporation_mg_per_day(area, way, share, saturation_vapour_pressure_kpa(celsius), celsius)


LEAK = Sum(
    "leak",
    "Leak by weighing",
    "Whether a filled pen loses mass, how fast, and the smallest loss that this balance and schedule can tell.",
    FIELDS,
    leak_answer,
    'pentools sums leak --times "0 h; 8 h; 24 h" --masses "18.214 g; 18.213 g; 18.212 g" --readability "0.001 g"',
)
