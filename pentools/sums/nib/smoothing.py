"""The smoothing sum: how a nib feels and what is owned in, few strokes with a look every few of them out."""

from __future__ import annotations

from pentools.calc.nib.smoothing import SmoothingPlan, nib_smoothing_plan
from pentools.fields import Field
from pentools.numbers import capital, in_words
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.finish.abrasives import read_owned
from pentools.tables.abrasives import media
from pentools.tables.nib import feels, habits

__all__ = ["SMOOTHING", "smoothing_answer", "smoothing_sentence"]

FIELDS = (
    Field("feel", "How the nib feels", "choice", choices=feels(), required=True, hint="the least that is true"),
    Field("own", "Grades owned", "items", required=True, hint="each with its scale, such as film 3 um; film 1 um; cushioned cloth 12000"),
    Field("aligned", "Tines level under the loupe?", "yes-no", hint="not said: nobody has looked"),
    Field("tipped", "Is there hard tipping left?", "yes-no", hint="not said: as if there were none, with half the strokes"),
)  # fmt: skip


def smoothing_sentence(plan: SmoothingPlan) -> str:
    """A smoothing plan as one sentence."""
    if not plan.steps:
        return f"No smoothing: {plan.findings[0].text}"
    grades = in_words([step.grade.label for step in plan.steps])
    first = plan.steps[0]
    return (
        f"{capital(grades)}, {first.most_strokes} strokes each at most, a look and a written line every {first.check_every}; "
        "stop at the first line that is smooth. What is taken off is not given back."
    )


def smoothing_answer(given: Inputs) -> SumAnswer:
    """The plan for a nib's tip.

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
        If a grade cannot be read, or the feel is not known.
    """
    said = {name: given.flag(name) if given.given(name) else None for name in ("aligned", "tipped")}
    plan = nib_smoothing_plan(
        given.text("feel", ""), habits(), read_owned(given.texts("own")), media(), **said
    )  # fmt: skip
    sentence = smoothing_sentence(plan)
    data = {
        "sentence": sentence,
        "feel": plan.feel,
        "steps": [
            {"number": s.number, "grade": s.grade.label, "most_strokes": s.most_strokes, "check_every": s.check_every, "how": s.how}
            for s in plan.steps
        ],
        "findings": [f.as_json() for f in plan.findings],
    }  # fmt: skip
    rows = [(str(s.number), s.grade.label, str(s.most_strokes), s.how) for s in plan.steps]
    return SumAnswer(sentence, data, plan.findings, (("step", "grade", "most strokes", "how"), *rows), plan)


SMOOTHING = Sum(
    "smoothing",
    "Smoothing a nib's tip",
    "Few strokes on the finest grades you own, with a look every few; what is taken off a tip is not given back.",
    FIELDS,
    smoothing_answer,
    'pentools sums smoothing --feel scratchy --own "film 3 um; film 1 um" --aligned yes --tipped yes',
)
