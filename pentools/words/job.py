"""What is said of the course of a job."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pentools.words import Template

__all__ = ["WORDS"]

_OTHERWISE = "What does not apply can be said so under Proposal and agreement, with a reason."


def _asked(*, names: Sequence[str]) -> str:
    count = "one thing that is" if len(names) == 1 else f"{len(names)} things that are"
    return f"Report: Conservation guidance asks for {count} not on record: {'; '.join(names)}. {_OTHERWISE}"


def _good_to_have(*, names: Sequence[str]) -> str:
    return f"Report: It would be good to have, by guidance or by this kit: {'; '.join(names)}."


WORDS: Mapping[str, Template] = {
    "report-must": _asked,
    "report-should": _good_to_have,
    "copy": "Beside the record lies {name}. If it is a copy edited elsewhere, take it over with: pentools merge {job} {name}",
    "aside": "Set aside earlier: {file}.",
    "file": "{problem}",
    "unknown": "An entry of {at} belongs to a stage “{stage}” that this version does not know. It is kept.",
    "unknown:kind": "{stage}: an entry of kind “{kind}” is not known to this version. It is kept.",
    "value": "{stage}: an entry cannot be read, so it is passed by. {error}",
    "value:blank": "{stage}, {kind}, {at}: not filled in: {missing}.",
    "released": "The hold on {step} was released: {reason}",
    "sum": "{stage}: {error}",
    "departure": "Agreement: the owner has not said yes to this departure: {what}",
    "departure:refused": "Agreement: the owner said no to this departure: {what}",
    "authority": "Agreement: the yes to {action} came from a person who may not decide; it does not count.",
    "answer": "Agreement: work is logged, and no answer of the owner is on record.",
    "permanent": "Agreement, {named}: it cannot be undone, and that the owner was told so is not on record.",
    "alternatives": "Agreement, {named}: {missing} is not weighed.",
    "estimate": "Agreement, estimate: {error}",
    "intake-missing": "Intake: “{title}” has not been filled in.",
    "arrival-mass": "Intake: the pen was not weighed as it arrived, so gains and losses of parts cannot be told later.",
    "system-missing": "Intake: the filling system is not named.",
    "limits-contradict": "Limits: things left are listed, and it is also stated that nothing was left. Withdraw one of the two.",
    "no-before": "Pictures: none is marked as taken before the work.",
    "no-after": "Pictures: none is marked as taken after the work.",
    "photo-missing": "Pictures: photos/{photo} is not there.",
    "open-job": "Release: the job is open; a page made now says so at its head.",
    "ending-limits": "Release: the result is “done”, but things left are listed. Is it “done with limits”?",
    "ending-limits:none-written": "Release: the result is “done with limits”, but no limit is written down.",
    "timer-long": "Work log: a timer ran for {hours:.1f} h at one go. Was it forgotten?",
    "cost": "Work log: “{text}” cannot be held against the ceiling in {currency}.",
    "timer-running": "Work log: a timer is still running. Stop it, or withdraw its start.",
    "ceiling": "Work log: {what}.",
}
