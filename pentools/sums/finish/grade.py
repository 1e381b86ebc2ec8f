"""What an abrasive grade is in micrometres, and what lies beside it in every other scale."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.calc.finish.conversion import Conversion, Neighbours, convert_grade, neighbours
from pentools.calc.finish.grades import SCALES, Catalogue, Grade
from pentools.calc.finish.reading import read_grade
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables.abrasives import catalogue
from pentools.words import CERTAINTY

__all__ = ["GRADE", "grade_json"]

_FIELDS = (
    Field(
        "grade",
        "Grade",
        "text",
        hint="with its scale, like P400, CAMI 320, film 9 um, cushioned cloth 4000",
        required=True,
    ),
)


def grade_json(grade: Grade) -> dict[str, Any]:
    """A grade as a JSON object: scale, grade, sizes with their spread, method, source and certainty."""
    return {
        "scale": grade.scale,
        "grade": grade.name,
        "label": grade.label,
        "particle_um": grade.particle_um,
        "particle_low_um": round(grade.low_um, 3),
        "particle_high_um": round(grade.high_um, 3),
        "finish_um": grade.finish_um,
        "finish_low_um": round(grade.finish_low_um, 3),
        "finish_high_um": round(grade.finish_high_um, 3),
        "coarsest_um": grade.coarsest_um,
        "method": grade.method,
        "medium": grade.medium,
        "source": grade.source,
        "certainty": grade.certainty,
        "finish_source": grade.finish_source,
        "finish_certainty": grade.finish_certainty,
        "note": grade.note,
    }


def _beside(item: Neighbours, conversion: Conversion) -> dict[str, Any]:
    def short(grade: Grade | None) -> dict[str, Any] | None:
        if grade is None:
            return None
        return {"grade": grade.label, "particle_um": grade.particle_um, "finish_um": grade.finish_um}

    return {
        "scale": item.scale,
        "name": SCALES[item.scale],
        "nearest": short(item.nearest),
        "ratio": round(item.ratio, 3),
        "coarser": short(item.coarser),
        "finer": short(item.finer),
        "within_spread": [grade.label for grade in conversion.within if grade != conversion.grade],
        "like_for_like_um": None if conversion.like_for_like_um is None else round(conversion.like_for_like_um, 2),
        "nearest_like_for_like": short(conversion.nearest_like_for_like),
    }


def _findings(grade: Grade, known: Catalogue) -> tuple[Finding, ...]:
    found = []
    if grade.soft_backed:
        two = Finding(
            "note", "finish.two-figures", grain=grade.particle_um, finish=grade.finish_um, low=grade.finish_low_um,
            high=grade.finish_high_um, number=grade.name,
        )  # fmt: skip
        found.append(two)
    others = [
        g for g in known.grades if g.name == grade.name and g.scale != grade.scale and g.scale not in ("film", "paste")
    ]
    if others:
        far = max(others, key=lambda g: abs(g.particle_um / grade.particle_um - 1))
        found.append(Finding("note", "finish.same-number", number=grade.name, um=far.particle_um, grade=far.label))
    if grade.certainty in ("from memory", "judged"):
        found.append(Finding("note", "finish.certainty", grade=grade.label, certainty=grade.certainty))
    if grade.note:
        found.append(Finding("note", "finish.note", grade=grade.label, said=grade.note))
    return tuple(found)


def _run(given: Inputs) -> SumAnswer:
    typed = given.text("grade")
    if typed is None:
        raise InputError("Grade", "filled in", "")
    known = catalogue()
    grade = read_grade(typed, known)
    beside = [(item, convert_grade(grade, item.scale, known)) for item in neighbours(grade, known, by="finish")]
    spread = f"{plain(grade.low_um, 3)} to {plain(grade.high_um, 3)} µm"
    sentence = (
        f"{grade.label} is {plain(grade.particle_um, 3)} µm by its median grain ({spread}, {_sure(grade.certainty)})"
    )
    if grade.soft_backed:
        sentence += f" and finishes like {plain(grade.finish_um, 3)} µm ({_sure(grade.finish_certainty)})"
    if grade.coarsest_um is not None:
        sentence += f"; three percent of it is coarser than {plain(grade.coarsest_um, 3)} µm"
    findings = _findings(grade, known)
    data = {
        **grade_json(grade),
        "neighbours": [_beside(item, conversion) for item, conversion in beside],
        "findings": [finding.as_json() for finding in findings],
    }
    return SumAnswer(sentence + ".", data, findings, _table(grade, beside), grade)


def _sure(certainty: str) -> str:
    """How sure it is, in the words that people are shown; what the bench states says so itself."""
    return CERTAINTY.get(certainty, certainty)


def _table(grade: Grade, beside: Sequence[tuple[Neighbours, Conversion]]) -> tuple[tuple[str, ...], ...]:
    table: list[tuple[str, ...]] = [("scale", "nearest", "µm", "times as coarse", "coarser", "finer", "could pass for")]
    for item, conversion in beside:
        sides = tuple(f"{g.label} ({plain(g.finish_um, 3)})" if g else "none" for g in (item.coarser, item.finer))
        within = [g.label for g in conversion.within if g != grade]
        span = " to ".join(dict.fromkeys((within[0], within[-1]))) if within else "none"
        near = item.nearest
        table.append((SCALES[item.scale], near.label, plain(near.finish_um, 3), f"{item.ratio:.2f}", *sides, span))
    return tuple(table)


GRADE = Sum(
    key="grade",
    title="Grade",
    summary="An abrasive grade in micrometres with its spread and source, and its neighbours in every scale, by the finish it leaves.",
    fields=_FIELDS,
    work=_run,
    example='pentools sums grade "P400"',
    positional="grade",
)
