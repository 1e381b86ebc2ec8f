"""The dilute sum: a weaker peroxide or alcohol out of a stronger one."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from pentools.calc.treatment.dilution import dilution
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.units import Reading

__all__ = ["DILUTE", "dilute_answer"]

FIELDS = (
    Field("liquid", "Which", "choice", choices=(("peroxide", "hydrogen peroxide"), ("alcohol", "alcohol")), required=True, hint="peroxide or alcohol"),
    Field("strong", "Strength at hand", "quantity", unit="%", low=0.1, high=100, required=True, hint="from the label, such as 3 %"),
    Field("wanted", "Strength wanted", "quantity", unit="%", low=0.05, high=100, required=True, hint="such as 1 %"),
    Field("volume", "How much", "quantity", unit="ml", low=1, high=5000, default="100 ml", hint="such as 90 ml"),
)  # fmt: skip


def dilute_answer(values: Mapping[str, Value]) -> SumAnswer:
    """How to dilute peroxide or alcohol.

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
        If the strength wanted is above the one at hand.
    """
    strong, wanted, volume = (values[name] for name in ("strong", "wanted", "volume"))
    assert isinstance(strong, Reading)
    assert isinstance(wanted, Reading)
    assert isinstance(volume, Reading)
    kind: Literal["peroxide", "alcohol"] = "alcohol" if values["liquid"] == "alcohol" else "peroxide"
    made = dilution(strong.value, wanted.value, volume.value, kind)
    data = {
        "sentence": made.sentence,
        "strong_ml": made.strong_ml,
        "water_ml": made.water_ml,
        "final_ml": made.final_ml,
        "findings": [f.as_json() for f in made.findings],
    }
    return SumAnswer(made.sentence, data, made.findings, (), made)


DILUTE = Sum(
    "dilute",
    "Diluting peroxide or alcohol",
    "How much of a stronger peroxide or alcohol, and how much water, make a weaker one.",
    FIELDS,
    dilute_answer,
    'pentools sums dilute --liquid alcohol --strong "91 %" --wanted "70 %" --volume "100 ml"',
)
