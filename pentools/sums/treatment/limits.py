"""The treatment sum: material and treatment in; ok, limited or never with limit, reason and source out."""

from __future__ import annotations

from typing import cast

from pentools import tables
from pentools.calc.treatment.limits import (
    VERDICTS,
    CompatibilityRow,
    MaterialRow,
    Overrule,
    Verdict,
    identification_tests,
    treatment_limits,
)
from pentools.errors import InputError
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables.source_words import source_words

__all__ = ["TREATMENT", "treatment_answer"]

FIELDS = (
    Field("material", "Material", hint="such as celluloid, casein, hard rubber; unknown takes the strictest limits", default="unknown"),
    Field("treatment", "Treatment", hint="such as cold water soak, hot water, damp wipe, flush mix soak, ultrasonic, dry heat, alcohol, epoxy", required=True),
    Field("overrule", "The bench says instead", "choice", choices=tuple((v, v) for v in VERDICTS), hint="only with a reason"),
    Field("reason", "Reason for overruling", hint="it stays with the result"),
)  # fmt: skip


def treatment_answer(given: Inputs) -> SumAnswer:
    """How far a treatment may go on a material.

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
        If there is no such treatment, or it is overruled without a reason.
    """
    said, reason = given.text("overrule"), given.text("reason", "")
    if reason and said is None:
        raise InputError("reason", "given together with what the bench says instead", reason)
    own = None if said is None else Overrule(cast("Verdict", said), reason)
    rows = tables.read(CompatibilityRow, "compatibility")
    limit = treatment_limits(given.text("material", ""), given.text("treatment", ""), rows, overrule=own)
    sources = "; ".join(source_words(limit.source, "compatibility"))
    table = limit.overruled
    tests = identification_tests(tables.read(MaterialRow, "materials")) if limit.material == "unknown" else ()
    data = {
        "sentence": limit.sentence,
        "material": limit.material,
        "treatment": limit.treatment,
        "verdict": limit.verdict,
        "limit": limit.limit or None,
        "max_minutes": limit.max_minutes,
        "max_c": limit.max_c,
        "reason": limit.reason,
        "source": sources,
        "certainty": limit.certainty,
        "overruled_verdict": table.verdict if table else None,
        "no_harm_tests": [{"material": test.material, "sign": test.sign} for test in tests],
        "findings": [f.as_json() for f in limit.findings],
    }
    minutes = "no number on record" if limit.max_minutes is None else f"{limit.max_minutes:g} min"
    shown = (
        ("quantity", "value"),
        ("verdict", limit.verdict),
        ("limit", limit.limit or "nothing more is said"),
        ("longest contact", minutes),
        ("because", limit.reason),
        ("source", sources),
        ("how sure", limit.certainty),
        *((f"is it {test.material}?", test.sign) for test in tests),
    )
    return SumAnswer(limit.sentence, data, limit.findings, shown, limit)


TREATMENT = Sum(
    "treatment",
    "What a material can take",
    "Whether a treatment is ok, limited or never on a material, how far, why, and how sure that is.",
    FIELDS,
    work=treatment_answer,
    example='pentools sums treatment --material casein --treatment "flush mix soak"',
)
