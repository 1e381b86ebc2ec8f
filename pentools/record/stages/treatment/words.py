"""What opening comes to, in words: one sentence, and the limits as rows of a table."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from pentools import tables
from pentools.calc.treatment.limits import MaterialRow, TreatmentLimit, identification_tests
from pentools.numbers import capital
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.facts import all_materials, limit_for, named_materials
from pentools.record.stages.treatment.heat import heated_joints, joint_heat
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, STEP
from pentools.record.stages.treatment.work import order_of, step_waits
from pentools.tables.source_words import source_words
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "TREATMENTS_SHOWN",
    "came_apart",
    "limit_rows",
    "limits_table",
    "no_harm_rows",
    "opening_sentence",
    "what_came_of_it",
]

TREATMENTS_SHOWN = ("cold water soak", "flush mix soak", "ultrasonic", "dry heat", "alcohol")
"""The treatments of opening and cleaning, whose limits are shown for each part."""


def opening_sentence(job: Job) -> str:
    """Where the opening stands, as one sentence: the heat window first, else the next step.

    Returns
    -------
    str
        What to know before the next touch.
    """
    if not named_materials(job):
        return "Nothing is named yet: say what it is made of before it meets heat or water."
    joints = heated_joints(job)
    heat = joint_heat(job, joints[0]) if joints else None
    if heat is not None and not (heat.session and heat.session[-1].free):
        return heat.sentence
    order = order_of(job)
    coming = order.next_step if order is not None else None
    if coming is None:
        return "It is apart as far as the order of work goes." if order is not None else "Say how it fills, at intake."
    waits = step_waits(coming)
    what = f"Next, step {coming.number}: {coming.part}. {coming.action}"
    return f"{what} It waits until this is so: {waits}." if waits else what


def what_came_of_it(job: Job) -> str:
    """How it came apart, as one sentence for a page, without a claim that was not entered; empty where nothing was done."""
    done = [logged.values for logged in job.log(STEP)]
    warmings = [logged.values for logged in job.log(HEAT_PASS)]
    steps = len({step.number for step in done} - {None}) + sum(step.number is None for step in done)
    broke = any(one.broke for one in done) or any(one.broke for one in warmings)
    heatings = len(warmings)
    if not steps and not heatings:
        names = named_materials(job)
        return f"What it is made of was told apart: {', '.join(names)}." if names else ""
    warmed = f", with {heatings} heating{'s' if heatings > 1 else ''}" if heatings else ""
    end = "; something broke, as told below." if broke else "."
    if not came_apart(job):
        return f"It stayed closed{warmed}{end}"
    return f"It came apart in {steps} step{'s' if steps != 1 else ''}{warmed}{end}"


def came_apart(job: Job) -> bool:
    """Whether anything came off or came free."""
    off = any(logged.values.came_off for logged in job.log(STEP))
    return off or any(logged.values.free for logged in job.log(HEAT_PASS))


def limit_rows(part: str, limits: Iterable[TreatmentLimit]) -> list[tuple[str, ...]]:
    """Limits as rows: part, treatment, verdict, how far, because, source and how sure.

    Parameters
    ----------
    part : str
        The part and its material in words.
    limits : iterable of TreatmentLimit
        What it can take.

    Returns
    -------
    list of tuple of str
        One row a treatment.
    """
    rows: list[tuple[str, ...]] = []
    for limit in limits:
        far = [limit.limit] if limit.limit else []
        if not far:  # the words have the numbers in them already
            far += [f"{limit.max_minutes:g} min"] if limit.max_minutes else []
            far += [f"{limit.max_c:g} °C"] if limit.max_c is not None else []
        sure = CERTAINTY.get(limit.certainty, limit.certainty)
        source = "; ".join(source_words(limit.source, "compatibility"))
        verdict: str = limit.verdict
        if limit.overruled is not None:
            verdict = f"{limit.verdict} (the table: {limit.overruled.verdict})"
        rows.append((part, limit.treatment, verdict, "; ".join(far) or "–", limit.reason, f"{source}: {sure}"))
    return rows


def limits_table(job: Job) -> list[tuple[str, ...]]:
    """What the parts can take, a material at a time: rows as `limit_rows` gives them."""
    labels = dict(PARTS)
    parts: dict[str, list[str]] = {}
    for part, name, _ in all_materials(job):
        parts.setdefault(name, []).append(part)
    rows: list[tuple[str, ...]] = []
    for name, found in parts.items():
        who = ", ".join(labels[part] for part in found)
        limits = [limit_for(job, found[0], treatment) for treatment in TREATMENTS_SHOWN]
        rows += limit_rows(f"{capital(who)}: {name}", limits)
    return rows


def no_harm_rows() -> list[tuple[str, ...]]:
    """Signs that tell materials apart without harm: material, sign, how sure."""
    tests = identification_tests(tables.read(MaterialRow, "materials"))
    return [(test.material, test.sign, CERTAINTY[test.certainty]) for test in tests]
