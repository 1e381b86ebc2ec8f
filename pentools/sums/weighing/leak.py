"""The leak sum: masses of a filled pen against time in, a rate with what could be told at all out."""

from __future__ import annotations

import math
from collections.abc import Mapping

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.density import saturation_vapour_pressure_kpa
from pentools.calc.weighing.leak import evaporation_mg_per_day, leak_down
from pentools.calc.weighing.volumes import area_mm2
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.units import Reading

__all__ = ["LEAK", "leak_answer"]

FIELDS = (
    Field("times", "Times since filling", "quantities", unit="h", low=0, high=2000, required=True, hint="such as 0 h; 8 h; 24 h"),
    Field("masses", "Masses at those times", "quantities", unit="g", low=0, high=200, required=True, hint="such as 18.21 g; 18.21 g; 18.20 g"),
    Field("blanks", "Masses of a dry dummy", "quantities", unit="g", low=0, high=200, hint="the same solid object each time, or nothing"),
    Field("readability", "Readability", "quantity", unit="g", low=0.00001, high=1, default="0.01 g", hint="the balance's last digit"),
    Field("repeatability", "Repeatability", "quantity", unit="g", low=0, high=5, hint="from its sheet; as the readability if left empty"),
    Field("gap", "Gap at the cap's seat", "quantity", unit="mm", low=0, high=2, hint="estimated, to say what evaporation alone may take; such as 0.05 mm"),
    Field("seat", "Diameter of the seat", "quantity", unit="mm", low=2, high=20, hint="where cap and section meet; such as 10 mm"),
    Field("gap_length", "Way through the gap", "quantity", unit="mm", low=0.2, high=40, hint="such as 5 mm"),
    Field("temperature", "Temperature", "quantity", unit="degC", low=5, high=35, default="20 °C", hint="of the room, such as 21 °C"),
    Field("humidity", "Humidity", "quantity", unit="1", low=0, high=1, default="50 %", hint="of the room, such as 45 %"),
)  # fmt: skip


def _numbers(value: Value) -> tuple[float, ...]:
    return tuple(r.value for r in value if isinstance(r, Reading)) if isinstance(value, tuple) else ()


def leak_answer(values: Mapping[str, Value]) -> SumAnswer:
    """Whether a pen leaks.

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
        If times and masses are not as many as each other, or fewer than two.
    """
    times, masses, blanks = (_numbers(values.get(name)) for name in ("times", "masses", "blanks"))
    if len(times) != len(masses):
        raise InputError("masses", f"as many as the times, {len(times)}", len(masses))
    readability, repeatability = values.get("readability"), values.get("repeatability")
    d = readability.value if isinstance(readability, Reading) else 0.01
    s = repeatability.value if isinstance(repeatability, Reading) else d
    result = leak_down(times, masses, math.hypot(d / math.sqrt(12), s), blanks)
    evaporation = _evaporation(values)
    findings = result.findings
    if evaporation is not None:
        findings += (
            Finding(
                "note",
                f"Through such a gap still air takes about {evaporation:.2g} mg a day (an estimate, good to its order only).",
                "evaporation-estimate",
            ),
        )
    worst = result.findings[0]
    data = {
        "sentence": worst.text,
        "loss_mg_per_h": result.loss_mg_per_h,
        "standard_uncertainty_mg_per_h": result.uncertainty_mg_per_h,
        "detection_limit_mg_per_h": result.detection_mg_per_h,
        "intercept_g": result.line.intercept,
        "evaporation_estimate_mg_per_day": evaporation,
        "verdict": worst.topic,
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("loss", f"{result.loss_mg_per_h:.3g} mg/h ± {2 * result.uncertainty_mg_per_h:.2g}"),
        ("smallest loss that can be told", f"{result.detection_mg_per_h:.2g} mg/h"),
        ("weighings", f"{len(times)} over {max(times) - min(times):g} h"),
    )
    return SumAnswer(worst.text, data, findings, table, result)


def _evaporation(values: Mapping[str, Value]) -> float | None:
    gap, seat, way, temperature, humidity = (
        values.get(name) for name in ("gap", "seat", "gap_length", "temperature", "humidity")
    )
    if not (isinstance(gap, Reading) and isinstance(seat, Reading) and isinstance(way, Reading)):
        return None
    celsius = temperature.value if isinstance(temperature, Reading) else 20.0
    share = humidity.value if isinstance(humidity, Reading) else 0.5
    area = area_mm2(seat.value + 2 * gap.value, seat.value)
    return evaporation_mg_per_day(area, way.value, share, saturation_vapour_pressure_kpa(celsius), celsius)


LEAK = Sum(
    "leak",
    "Leak by weighing",
    "Whether a filled pen loses mass, how fast, and the smallest loss that this balance and schedule can tell.",
    FIELDS,
    leak_answer,
    'pentools sums leak --times "0 h; 8 h; 24 h" --masses "18.214 g; 18.213 g; 18.212 g" --readability "0.001 g"',
)
