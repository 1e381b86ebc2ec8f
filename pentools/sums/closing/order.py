"""The order sum: a filling system in; its order of work out, taken apart or put together."""

from __future__ import annotations

import re
from typing import Any

from pentools import tables
from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.closing.order import Did
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.calc.treatment.order import StepRow
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import capital, in_words
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.closing.work import ToldOrder, ToldStep, closing_told, numbers_of, opening_told, step_keys
from pentools.systems.registry import system_choices
from pentools.tables.compatibility import material_names
from pentools.words import CERTAINTY

__all__ = ["ORDER", "SEALS", "body_here", "is_rubber_ring", "not_read", "order_answer", "seal_here"]

WAYS = (("close", "put together"), ("open", "taken apart"))
UNDONE = {"yes": "yes", "partly": "in part", "no": "no", "": "not known"}
STATES = {
    "done": "done", "untested": "done, not tested", "failed": "its test failed", "open": "may be done", "early": "not yet",
    "held": "held", "not needed": "not needed",
}  # fmt: skip

FIELDS = (
    Field("system", "Filling system", "choice", choices=system_choices(), by_words=True, required=True),
    Field("way", "Which way", "choice", choices=WAYS, default="close"),
    Field("material", "Body", "items", hint="such as celluloid; casein; not named takes the strictest", default="unknown"),
    Field("fitted", "Sac, ring or cork", "items", hint="what was put in, such as latex sac; silicone sac; cork"),
    Field("done", "Steps done", "items", hint="numbers or names, in the order they were done, such as 1; 2; 3"),
    Field("tested", "Tests passed", "items", hint="of which steps the test has passed, such as 1; 2"),
)  # fmt: skip


SEALS = ("latex", "silicone", "plasticised PVC", "cork")
"""What a sac, a diaphragm or a seal is made of, as the table of compatibility has it."""
_RUBBER_RING = frozenset(
    [
        "o",
        "ring",
        "rings",
        "washer",
        "washers",
        "seal",
        "seals",
        "rubber",
        "nitrile",
        "epdm",
        "head",
        "lip",
        "packing",
        "piston",
        "new",
        "black",
    ]
)
_HOW_IT_IS = frozenset(
    ["piston", "head", "necked", "straight", "tapered", "size", "no", "thin", "walled", "thick", "short", "long"]
)


def body_here(texts: tuple[str, ...]) -> tuple[str, ...]:
    """Materials of a body as the table of compatibility names them; "unknown" for one that is none of its."""
    return tuple(dict.fromkeys(material_name(text, material_names())[0] for text in texts))


def seal_here(text: str) -> str:
    """What a sac or a seal is made of: one of `SEALS`, or empty where the text names none."""
    words = [word for word in re.split(r"[\s-]+", text.casefold()) if word not in _HOW_IT_IS and not word.isdigit()]
    name = material_name(" ".join(words), material_names(), "seals")[0]
    return name if name in SEALS else ""


def is_rubber_ring(text: str) -> bool:
    """Whether a text names a ring or a washer of a rubber that the table does not have: nitrile, EPDM, or just rubber."""
    words = set(re.findall(r"[a-z]+", text.casefold()))
    return not words.isdisjoint(("ring", "rings", "washer", "washers", "nitrile", "epdm")) and words <= _RUBBER_RING


def _seals_here(texts: tuple[str, ...]) -> tuple[str, ...]:
    """What was put in, by material; a rubber ring changes nothing on the way.

    Raises
    ------
    InputError
        If something is neither: it has no strictest row to stand for it.
    """
    found = {text: seal_here(text) for text in texts if not is_rubber_ring(text)}
    for text, material in found.items():
        if not material:
            raise InputError("Sac, ring or cork", f"{in_words(SEALS, 'or')}, or a rubber ring", text)
    return tuple(dict.fromkeys(found.values()))


def not_read(texts: tuple[str, ...]) -> tuple[Finding, ...]:
    """What was typed of a body and names no material of the table, each with how it is taken."""
    said = (material_name(text, material_names())[1] for text in texts)
    return tuple(Finding("warning", "closing.not-read", said=words) for words in dict.fromkeys(said) if words)


def order_answer(given: Inputs) -> SumAnswer:
    """The order of work for a filling system.

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
        If there is no such filling system or step, or a step was tested that was not done.
    """
    told = _told(given)
    findings = gravest_first((*not_read(given.texts("material")), *told.findings))
    data = {
        "system": told.system,
        "way": told.way,
        "materials": list(told.materials),
        "steps": [_as_json(step) for step in told.steps],
        "next": told.next_step.number if told.next_step else None,
        "findings": [finding.as_json() for finding in findings],
    }
    return SumAnswer(_sentence(told), data, findings, _table(told), told)


def _told(given: Inputs) -> ToldOrder:
    system, way = given.text("system", ""), given.text("way", "close")
    body = body_here(given.texts("material")) or (UNKNOWN,)
    fitted = _seals_here(given.texts("fitted"))
    done, tested = given.texts("done"), given.texts("tested")
    if way == "open":
        if tested:
            raise InputError("Tests passed", "only for putting together", "; ".join(tested))
        count = sum(row.system == system for row in tables.read(StepRow, "opening_steps"))
        return opening_told(system, body, done=numbers_of(done, [""] * count, "Steps done"))
    keys = step_keys(system)
    order = [keys[number - 1] for number in numbers_of(done, keys, "Steps done")]
    passed = {keys[number - 1] for number in numbers_of(tested, keys, "Tests passed")}
    if alone := [key for key in passed if key not in order]:
        raise InputError("Tests passed", "steps that are among those done", "; ".join(alone))
    did = [Did(key, True if key in passed else None) for key in order]
    met = set(_from_outside()) if order else set()  # what was begun was found so at the start
    return closing_told(system, body, fitted, did=did, met=met)


def _from_outside() -> tuple[str, ...]:
    return tuple(row["key"] for row in tables.rows("closing_holds") if row["from_outside"] == "yes")


def _as_json(step: ToldStep) -> dict[str, Any]:
    return {
        "number": step.number,
        "key": step.key or None,
        "part": step.part,
        "step": step.action,
        "before": list(step.before),
        "test": step.test or None,
        "reversible": step.undone or None,
        "caution": step.caution or None,
        "changes": list(step.changes),
        "closes": step.closes,
        "only_with": step.only_with or None,
        "state": step.state,
        "waits_for": list(step.waits),
        "cure_h": step.hours,
        "sources": list(step.sources),
        "certainty": step.certainty,
    }


def _sentence(told: ToldOrder) -> str:
    count, label = len(told.steps), capital(told.label)
    begun = any(step.state in ("done", "untested", "failed") for step in told.steps)
    if begun:
        coming = told.next_step
        if coming is None:
            end = "it is together, and tested on the way" if told.way == "close" else "it is apart"
            return f"{label}: all {count} steps are done; {end}."
        owed = "test" if coming.state in ("untested", "failed") else "do"
        return f"{label}: next is to {owed} step {coming.number} of {count}, the {coming.part}."
    if told.way == "open":
        return f"{label}: taken apart in {count} steps."
    closing = in_words(step.number for step in told.steps if step.closes) or "none"
    lost = [step.number for step in told.steps if step.undone == "no"]
    once = f" Not to be taken back: {in_words(lost)}." if lost else ""
    return (
        f"{label}: put together in {count} steps, each tested before the next. Closing something in: {closing}.{once}"
    )


def _table(told: ToldOrder) -> tuple[tuple[str, ...], ...]:
    head = ("step", "part", "what is done", "so before", "test before the next", "can it be undone", "mind", "state", "how sure")  # fmt: skip
    rows = [
        (
            f"{step.number}{' (closes)' if step.closes else ''}",
            step.part,
            step.action,
            " ".join(step.before) or "–",
            step.test or "–",
            UNDONE[step.undone],
            step.caution or "–",
            STATES[step.state],
            CERTAINTY.get(step.certainty, step.certainty),
        )
        for step in told.steps
    ]
    return (head, *rows)


ORDER = Sum(
    "order",
    "Order of work",
    "In which order a pen comes apart or goes together, what must be so before each step, what is tested before the next, and what cannot be undone.",
    FIELDS,
    order_answer,
    "pentools sums order --system lever-sac --way close --material celluloid",
)
