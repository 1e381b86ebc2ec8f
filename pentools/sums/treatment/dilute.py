"""The dilute sum: a weaker peroxide or alcohol out of a stronger one."""

from __future__ import annotations

from typing import Literal

from pentools import tables
from pentools.calc.treatment.dilution import dilution
from pentools.calc.treatment.hazards import HazardRow
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["DILUTE", "dilute_answer"]

FIELDS = (
    Field("liquid", "Which", "choice", choices=(("peroxide", "hydrogen peroxide"), ("alcohol", "alcohol")), required=True, hint="peroxide or alcohol"),
    Field("strong", "Strength at hand", "quantity", unit="%", low=0.1, high=100, required=True, hint="from the label, such as 3 %"),
    Field("wanted", "Strength wanted", "quantity", unit="%", low=0.05, high=100, required=True, hint="such as 1 %"),
    Field("volume", "How much", "quantity", unit="ml", low=1, high=5000, default="100 ml", hint="such as 90 ml"),
)  # fmt: skip


def dilute_answer(given: Inputs) -> SumAnswer:
    """How to dilute peroxide or alcohol.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object; a hazard that says stop leads the sentence.

    Raises
    ------
    InputError
        If the strength wanted is above the one at hand, or peroxide is too strong for a home bench.
    """
    kind: Literal["peroxide", "alcohol"] = "alcohol" if given.text("liquid") == "alcohol" else "peroxide"
    made = dilution(
        given.needed("strong"),
        given.needed("wanted"),
        given.number("volume", 100.0),
        kind,
        hazards=tables.read(HazardRow, "substance_hazards"),
    )
    data = {
        "sentence": made.sentence,
        "strong_ml": made.strong_ml,
        "water_ml": made.water_ml,
        "final_ml": made.final_ml,
        "stop": any(f.level == "stop" for f in made.findings),
        "findings": [f.as_json() for f in made.findings],
    }
    return SumAnswer(made.sentence, data, made.findings, (), made)


DILUTE = Sum(
    "dilute",
    "Diluting peroxide or alcohol",
    "How much of a stronger peroxide or alcohol, and how much water, make a weaker one.",
    FIELDS,
    work=dilute_answer,
    example='pentools sums dilute --liquid alcohol --strong "91 %" --wanted "70 %" --volume "100 ml"',
)
