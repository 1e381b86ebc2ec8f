"""What is said of putting a pen together, of the tests it owes, and of care."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pentools.words import Template

__all__ = ["WORDS"]

_UNDO = {
    "yes": "It comes apart again without harm: do so, and find out why.",
    "partly": "It comes apart again, not without loss: find out why first.",
    "no": "It cannot be taken back: it has to be made anew.",
}


def _clauses(conditions: Sequence[str]) -> str:
    """Sentences one after the other."""
    return " ".join(conditions)


def _failed(*, number: int, part: str, passes: str, undone: str) -> str:
    return f"Step {number}, the {part}, did not pass (sound is: {passes}). {_UNDO[undone]}"


def _missing(words: str) -> Template:
    def said(*, number: int, part: str, missing: Sequence[str]) -> str:
        return words.format(number=number, part=part, missing=_clauses(missing))

    return said


WORDS: Mapping[str, Template] = {
    "failed": _failed,
    "shut": _missing("Step {number}, the {part}, closed over something untested. Not known to be so: {missing}"),
    "skipped": _missing("Step {number}, the {part}, was done before this was so: {missing}"),
    "unsaid": _missing("Step {number}, the {part}, was done without a word that this was so: {missing}"),
    "held": _missing("Step {number}, the {part}, closes something in. First this has to be tested: {missing}"),
    "early": _missing("Before step {number}, the {part}, this has to be so: {missing}"),
    "untested": "Step {number}, the {part}, is done but not tested. {test} Passed: {passes}.",
    "undone-partly": "Step {number}, the {part}, can be taken back in part only: be sure of what lies behind it.",
    "undone-no": "Step {number}, the {part}, cannot be taken back.",
    "memory": "Step {number}, the {part}, is from memory: try it at the pen before you rely on it.",
    "material": "{material}: {words} ({steps})",
    "other-fitted": "Step {number}, the {part}, wants another material than the {material} that is to go in.",
    "ink": "{ink}: {advice} ({sure}).",
    "not-read": "{said}",
    "not-named": "The body is not named, so the strictest advice holds.",
    "shellac-silicone": "Shellac does not hold a silicone sac: it comes off unless it is bound with thread.",
    "owed": "It has gone without these tests: {tests:and}.",
    "sent-failed": "It has gone although this did not pass: {tests:and}.",
    "together": "It is together, and every test on the way has passed.",
}
