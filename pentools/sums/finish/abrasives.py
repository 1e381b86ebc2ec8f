"""The abrasives sum: material, defect, finish and owned grades in; a progression with its removal budget out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade, with_finish
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.progression import grit_progression, ladder_progression
from pentools.calc.finish.rate import RateLine
from pentools.calc.finish.reading import bare_size, read_grade, read_grades
from pentools.calc.finish.types import Alternative, Blend, PlanLimits, Progression, Step
from pentools.calc.treatment.limits import TreatmentLimit
from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.finish.surface import Surface, read_surface
from pentools.tables import abrasives as tables
from pentools.units import read_quantity

__all__ = ["ABRASIVES", "progression_answer", "progression_json", "read_defect", "read_finish", "read_owned"]

_TRIM = (("solid", "solid or thick"), ("plated", "plated or not known"), ("none", "none"))
_FIELDS = (
    Field("material", "Material", "text", hint="what is polished, such as celluloid, ebonite, rolled gold, lacquered brass; not said: the strictest"),
    Field("defect", "Deepest scratch worth removing", "text", hint="its depth, like 40 um, or a word: " + ", ".join(tables.surface_words("defect")), required=True),
    Field("finish", "Finish", "text", hint="a word (" + ", ".join(tables.surface_words("finish")) + "), a grade, or a size like 3 um", default="gloss"),
    Field("own", "Grades owned", "items", hint="each with its scale, like P400; film 9 um; cushioned cloth 4000; or a run of papers: P600 to P1200", required=True),
    Field("zone", "Zone of the pen", "choice", hint="what it can spare differs; not said: the strictest", choices=tuple((z, z) for z in tables.zones())),
    Field("wall", "Thinnest wall there", "quantity", "mm", "measured, like 1.1 mm; a tenth of it at most is taken", 0.2, 5),
    Field("spent", "Stock already taken there", "quantity", "um", "a side, like 5 um", 0, 200),
    Field("defect_length", "Length of the defect", "quantity", "mm", "like 6 mm; for the area to work", 0.1, 150),
    Field("trim", "Metal trim", "choice", hint="plated or unknown trim stays masked; not said: plated", choices=_TRIM),
    Field("cushioned_finish", "Own finish figures", "items", hint="for cushioned cloth, like cushioned cloth 4000 = 7 um"),
    Field("scratch_share", "Scratch depth over grain", "number", hint="k, like 0.10; the material's own where empty", low=0.001, high=5),
    Field("stock_factor", "Times the last scratch", "number", hint="s: 2, or 3 to be cautious", low=1, high=5, default="2"),
    Field("time_limit", "Longest first stage", "quantity", "min", "like 15 min", 1, 240, default="15 min"),
    Field("judged_by", "Must get finer by", "choice", hint="cushioned cloth has two sizes", choices=(("both", "grain and finish"), ("particle", "grain"), ("finish", "finish")), default="both"),
    Field("as_given", "Judge the grades as a ladder in the order given", "yes-no", hint="yes or no", default="no"),
)  # fmt: skip


def read_defect(text: str) -> Interval:
    """A defect's depth: a size with or without ±, or a word for it.

    Parameters
    ----------
    text : str
        Like ``40 um``, ``40 ± 5 um`` or ``deep scratch``.

    Returns
    -------
    Interval
        Depth [µm]; ± is taken as one standard uncertainty and the interval as twice that.

    Raises
    ------
    InputError
        If it is neither.
    """
    words = tables.surface_words("defect")
    if text.strip().casefold() in words:
        return Interval(*words[text.strip().casefold()])
    if not any(sign.isdigit() for sign in text):
        raise InputError("Defect", "a depth like 40 um, or one of " + ", ".join(words), text)
    reading = read_quantity(text, "um", name="Defect", low=0.1, high=300)
    half = 2 * (reading.standard_uncertainty or 0.0)
    return Interval(max(0.0, reading.value - half), reading.value, reading.value + half)


def read_finish(text: str) -> Interval:
    """The finish to reach: a word, a grade, or a size.

    Parameters
    ----------
    text : str
        Like ``gloss``, ``P2500`` or ``3 um``.

    Returns
    -------
    Interval
        Finish-equivalent size with what else counts as that finish [µm]: for a word as the table says, for a grade or a
        size a fifth finer and a tenth coarser (judged).

    Raises
    ------
    InputError
        If it is none of them.
    """
    clean = text.strip()
    words = tables.surface_words("finish")
    if clean.casefold() in words:
        return Interval(*words[clean.casefold()])
    return _around(_finish_size(clean))


def _around(size_um: float) -> Interval:
    return Interval(0.8 * size_um, size_um, 1.1 * size_um)


def _finish_size(clean: str) -> float:
    if bare_size(clean):
        return _finish_length(clean)
    try:
        return read_grade(clean, tables.catalogue()).finish_um
    except InputError as error:
        if clean[:1].isdigit() and not clean.replace(".", "").replace(",", "").isdigit():
            return _finish_length(clean)
        if any(sign.isdigit() for sign in clean):
            raise
        words = ", ".join(tables.surface_words("finish"))
        raise InputError("Finish", f"a size like 3 um, a grade, or one of {words}", clean) from error


def _finish_length(clean: str) -> float:
    return read_quantity(clean, "um", name="Finish", low=0.01, high=100).value


def read_owned(own: Sequence[str], finishes: Sequence[str] = ()) -> tuple[Grade, ...]:
    """The owned grades, with a person's own finish figures put in.

    Parameters
    ----------
    own : sequence of str
        Grades as typed.
    finishes : sequence of str
        Like ``cushioned cloth 4000 = 7 um``.

    Returns
    -------
    tuple of Grade
        The grades in the order typed.

    Raises
    ------
    InputError
        If one cannot be read, or a finish figure is for a grade that is not cushioned cloth.
    """
    catalogue = tables.catalogue()
    figures = {}
    for text in finishes:
        name, _, size = text.partition("=")
        grade = read_grade(name, catalogue)
        if grade.medium != "cushioned":
            raise InputError(
                "own finish figure", "for cushioned cloth", text, "A plain-backed grade finishes like its grain."
            )
        figures[grade.label] = read_quantity(size, "um", name=f"finish of {grade.label}", low=0.1, high=60).value
    owned = read_grades(own, catalogue)
    return tuple(with_finish(g, figures[g.label]) if g.label in figures else g for g in owned)


def progression_json(plan: Progression) -> dict[str, Any]:
    """A progression as a JSON object; what does not apply is null."""
    unmask, limits = plan.unmask_step, plan.limits
    return {
        "material": limits.material.name,
        "zone": limits.zone.name,
        "trim": limits.trim,
        "not_said": _not_said(limits),
        "defect_um": _three(plan.defect_um.typical),
        "finish_um": plan.finish_um,
        "finish_low_um": _three(plan.finish.low),
        "finish_high_um": _three(plan.finish.high),
        "steps": [_step_json(step) for step in plan.steps],
        "removed_total_um": _three(plan.removed_total_um.typical),
        "removed_total_low_um": _three(plan.removed_total_um.low),
        "removed_total_high_um": _three(plan.removed_total_um.high),
        "budget_um": _three(plan.budget_high_um),
        "budget_low_um": _three(plan.budget_low_um),
        "within_budget": plan.within_budget,
        "unmask_at": unmask.grade.label if unmask else None,
        "scratch_share": {"low": limits.k.low, "typical": limits.k.typical, "high": limits.k.high},
        "stock_factor": limits.stock_factor,
        "blend": _blend_json(plan.blend),
        "set_aside": [{"grade": item.grade.label, "reason": item.reason} for item in plan.set_aside],
        "alternatives": [_other_json(item) for item in plan.alternatives],
        "reduced": progression_json(plan.reduced) if plan.reduced is not None else None,
        "findings": [finding.as_json() for finding in plan.findings],
    }


def _not_said(limits: PlanLimits) -> list[str]:
    said = {"material": limits.material.name != UNKNOWN, "zone": limits.zone_said, "trim": limits.trim != "not said"}
    return [name for name, known in said.items() if not known]


def _blend_json(blend: Blend) -> dict[str, Any]:
    return {
        "run_out_mm": _three(blend.run_out_mm),
        "area_low_mm": blend.area_low_mm,
        "area_high_mm": blend.area_high_mm,
    }


def _other_json(item: Alternative) -> dict[str, Any]:
    return {
        "kind": item.kind,
        "start": item.start.label,
        "removed_um": _three(item.removed_um.typical),
        "removed_high_um": _three(item.removed_um.high),
        "left_um": _three(item.left_um),
        "first_minutes": _three(item.first_minutes),
        "within_budget": item.within_budget,
        "text": item.text,
    }


def progression_answer(
    given: Inputs,
    rates: RateLine | None = None,
    *,
    sanding: TreatmentLimit | None = None,
    wheel: TreatmentLimit | None = None,
) -> SumAnswer:
    """Plan a progression from the sum's fields.

    Parameters
    ----------
    given : Inputs
        Values of the fields.
    rates : RateLine or None
        The bench's own rates; None: the rule of thumb.
    sanding, wheel : TreatmentLimit or None
        The bench's own decision over the compatibility table; None: the table's.

    Returns
    -------
    SumAnswer
        Sentence, JSON, findings, table and the `Progression`. What was not said was taken as the strictest, and a
        finding says what.

    Raises
    ------
    InputError
        If a field cannot be used.
    """
    catalogue = tables.catalogue()
    surface = read_surface(given.text("material", ""), given.text("zone", ""), sanding=sanding, wheel=wheel)
    owned = read_owned(given.texts("own"), given.texts("cushioned_finish"))
    limits = _limits(given, surface, rates)
    defect, finish = read_defect(given.text("defect", "")), read_finish(given.text("finish", "gloss"))
    plan = grit_progression(defect, finish, owned, limits, catalogue=catalogue)
    if given.flag("as_given") and plan.steps:
        plan = ladder_progression(owned, defect, finish, limits, catalogue=catalogue)
    bare = [text.strip() for text in given.texts("own") if bare_size(text)]
    if bare:
        plan = replace(plan, findings=(*plan.findings, Finding("note", "finish.film-assumed", sizes=bare)))
    if surface.findings:
        plan = replace(plan, findings=(*surface.findings, *(f for f in plan.findings if f.topic != "leave-alone")))
    return SumAnswer(_sentence(plan), progression_json(plan), plan.findings, _table(plan), plan)


def _limits(given: Inputs, surface: Surface, rates: RateLine | None) -> PlanLimits:
    k = given.number("scratch_share")
    return PlanLimits(
        surface.material,
        surface.zone,
        tables.media(),
        wall_mm=given.number("wall"),
        spent_um=given.number("spent", 0.0),
        stock_factor=given.number("stock_factor", 2.0),
        scratch_share=None if k is None else Interval(k, k, k),
        rates=rates,
        time_limit_min=given.number("time_limit", 15.0),
        judged_by=given.text("judged_by", "both"),
        trim=given.text("trim", "not said"),
        defect_length_mm=given.number("defect_length"),
    )


def _step_json(step: Step) -> dict[str, Any]:
    grade = step.grade
    return {
        "step": step.number,
        "scale": grade.scale,
        "grade": grade.name,
        "label": grade.label,
        "particle_um": grade.particle_um,
        "finish_um": grade.finish_um,
        "particle_low_um": _three(grade.low_um),
        "particle_high_um": _three(grade.high_um),
        "ratio": None if step.ratio is None else _three(step.ratio),
        "removed_um": _three(step.removed_um.typical),
        "removed_low_um": _three(step.removed_um.low),
        "removed_high_um": _three(step.removed_um.high),
        "cumulative_um": _three(step.cumulative_um.typical),
        "minutes": _three(step.minutes.typical),
        "minutes_low": _three(step.minutes.low),
        "minutes_high": _three(step.minutes.high),
        "calibrated": step.calibrated,
        "unmask": step.unmask,
        "wet": step.wet,
        "direction": step.direction,
        "inspect": step.inspect,
        "note": step.note,
    }


def _sentence(plan: Progression) -> str:
    if not plan.steps:
        return plan.findings[0].text
    total, last = plan.removed_total_um, plan.steps[-1].grade
    grades = ", ".join(step.grade.label for step in plan.steps)
    amount = f"about {plain(total.typical, 2)} µm a side ({plain(total.low, 2)} to {plain(total.high, 2)})"
    text = f"{grades}: {amount}, finish like {plain(last.finish_um, 3)} µm"
    if not plan.limits.zone_said:
        return f"Not yet: where on the pen is not said, and an imprint or a thread can spare nothing. {_on_a_barrel()} {text}."
    over = next((f for f in plan.findings if f.topic in ("over-budget", "budget-close")), None)
    if over is not None and plan.reduced is not None:
        left = plan.defect_um.typical - plan.reduced.defect_um.typical
        word = "over" if over.topic == "over-budget" else "possibly over"
        return f"{text}: {word} the {plain(plan.budget_high_um, 2)} µm that can be spared. Reduce the defect, do not remove it: leave about {plain(left, 2)} µm of it."
    stops = [finding for finding in plan.findings if finding.level == "stop"]
    return f"{text}. Do not do it: {stops[0].text}" if stops else f"{text}."


def _on_a_barrel() -> str:
    plainest = tables.zones()["plain barrel"]
    return f"On a plain barrel, which can spare {plain(plainest.budget_low_um, 2)} to {plain(plainest.budget_high_um, 2)} µm, it would be"


def _table(plan: Progression) -> tuple[tuple[str, ...], ...]:
    heading = ("step", "grade", "grain µm", "finish µm", "ratio", "removed µm", "so far µm", "min", "wet", "trim")
    rows = [
        (
            str(step.number), step.grade.label, plain(step.grade.particle_um, 3), plain(step.grade.finish_um, 3),
            "" if step.ratio is None else f"{step.ratio:.2f}", plain(step.removed_um.typical, 2), plain(step.cumulative_um.typical, 3),
            plain(step.minutes.typical, 2), "wet" if step.wet else "dry", "unmask" if step.unmask else "",
        )
        for step in plan.steps
    ]  # fmt: skip
    return (heading, *rows) if rows else ()


def _three(value: float) -> float:
    return round(value, 3)


ABRASIVES = Sum(
    key="abrasives",
    title="Abrasive progression",
    summary="Plans the grades from the deepest scratch worth removing to the finish agreed, in micrometres, against what the zone can spare.",
    fields=_FIELDS,
    work=progression_answer,
    example='pentools sums abrasives --material celluloid --zone "plain barrel" --defect "20 um" --finish gloss --own "P600; P1200; film 9 um; film 3 um"',
)
