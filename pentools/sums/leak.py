"""The leak sum: masses of a filled pen against time in, a rate with what could be told at all out."""

from __future__ import annotations

import math
from collections.abc import Mapping

from pentools.calc.leak import leak_down
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
    worst = result.findings[0]
    data = {
        "sentence": worst.text,
        "loss_mg_per_h": result.loss_mg_per_h,
        "standard_uncertainty_mg_per_h": result.uncertainty_mg_per_h,
        "detection_limit_mg_per_h": result.detection_mg_per_h,
        "intercept_g": result.line.intercept,
        "verdict": worst.topic,
        "findings": [f.as_json() for f in result.findings],
    }
    table = (
        ("quantity", "value"),
        ("loss", f"{result.loss_mg_per_h:.3g} mg/h ± {2 * result.uncertainty_mg_per_h:.2g}"),
        ("smallest loss that can be told", f"{result.detection_mg_per_h:.2g} mg/h"),
        ("weighings", f"{len(times)} over {max(times) - min(times):g} h"),
    )
    return SumAnswer(worst.text, data, result.findings, table, result)


LEAK = Sum(
    "leak",
    "Leak by weighing",
    "Whether a filled pen loses mass, how fast, and the smallest loss that this balance and schedule can tell.",
    FIELDS,
    leak_answer,
    'pentools sums leak --times "0 h; 8 h; 24 h" --masses "18.214 g; 18.213 g; 18.212 g" --readability "0.001 g"',
)
