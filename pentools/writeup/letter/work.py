"""What was wrong, what was done and what was left: the restorer's own words, as many as the first page carries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import TYPE_CHECKING, TypeAlias

from pentools.numbers import capital, in_words
from pentools.record.stages.common import PARTS, SEVERITIES
from pentools.record.stages.job.agree_kinds import PROPOSAL, SURVEY
from pentools.record.stages.job.ending_kinds import LIMIT, NOTHING_LEFT, RESULT
from pentools.record.stages.job.intake_kinds import PART_CONDITION
from pentools.record.stages.job.makeshifts import makeshifts_of
from pentools.record.stages.job.work_kinds import MATERIAL, WORK
from pentools.record.stages.job.work_log import minutes_by_activity, timed_spells
from pentools.record.stages.repairs.work import mended
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, STEP
from pentools.writeup.letter.row import Row, up_to
from pentools.writeup.sections.repairs.repairs import mended_in_words
from pentools.writeup.words import minutes_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["done_row", "left_row", "proposed_row", "why_row", "wrong_row"]

_PARTS = dict(PARTS)
_WRONG_WORDS, _DONE_WORDS, _LEFT_WORDS, _EACH = 62, 90, 110, 28
# what the owner hears of first; looking, testing and writing are not done to the pen
_WEIGHT = ("seal", "mend", "nib", "open", "clean", "finish", "other")
_Step: TypeAlias = tuple[dt.datetime, str, str]


def wrong_row(job: Job) -> Row | None:
    """What was found wrong, gravest first, from the second degree up; the others by name."""
    found = [logged.values for logged in job.log(PART_CONDITION)]
    faults = sorted((v for v in found if int(v.severity or 0) > 0 and v.seen), key=lambda v: -int(v.severity or 0))
    if not found:
        return None
    if not faults:
        return Row("What was wrong", ("No fault was found in what was looked at.",))
    least = 2 if any(int(v.severity or 0) > 1 for v in faults) else 1
    lines: list[str] = []
    room, rest = _WRONG_WORDS, []
    for values in faults:
        part = _PARTS.get(values.part or "", "")
        text = up_to(values.seen or "", _EACH)[0]
        text = f"{capital(part)}: {text}" if part else text
        if int(values.severity or 0) >= least and (not lines or len(text.split()) <= room):
            lines.append(text)
            room -= len(text.split())
        else:
            rest.append((part, values.severity))
    more = _lesser(rest)
    label = "What was found" if job.newest(RESULT).ending in (None, "stopped", "returned") else "What was wrong"
    return Row(label, (*lines, *([more] if more else [])))


def _lesser(rest: list[tuple[str, str | None]]) -> str:
    """The parts that the row has no room for: the graver by name, the slight ones by number."""
    words = {key: label.partition(" ")[2].partition(":")[0] for key, label in SEVERITIES}
    named = dict.fromkeys(
        f"{part} ({words[severity]})" for part, severity in rest if part and severity not in (None, "1")
    )
    slight = sum(severity == "1" for _, severity in rest)
    count = f"{slight} slight {'fault' if slight == 1 else 'faults'}" if slight else ""
    said = in_words([*named, *([count] if count else [])])
    return f"Beside these, {said}." if said else ""


def why_row(job: Job) -> Row | None:
    """Why a pen goes home unmended, or the work was stopped, in the words of the survey; None for any other end."""
    end, conclusion = job.newest(RESULT).ending, job.newest(SURVEY).conclusion
    if conclusion is None or end not in ("stopped", "returned", None):
        return None
    label = {"returned": "Why it was not mended", "stopped": "Why it was stopped"}.get(end or "", "What it comes to")
    return Row(label, (sentence(conclusion),))


def proposed_row(job: Job) -> Row | None:
    """What is proposed, part by part, while the job is open."""
    if job.newest(RESULT).ending is not None:
        return None
    newest = {logged.values.part: logged.values for logged in job.log(PROPOSAL) if logged.values.proposed}
    lines = [
        f"{capital(_PARTS.get(part or '', 'a part that is not named'))}: {up_to(v.proposed or '', _EACH)[0]}"
        for part, v in newest.items()
    ]
    return Row("What is proposed", tuple(lines[:6])) if lines else None


def done_row(job: Job) -> Row | None:
    """What was done, in the order of the work, what went in for it, what broke, and how long it took."""
    steps = sorted(_steps(job))
    kept = _that_fit(steps)
    said = [text for step in steps if step in kept for text in (step[2],)]
    if len(kept) < len(steps):
        said.append("The other steps stand in the record.")
    lines = [" ".join((*dict.fromkeys(said), *_broken(job)))]
    lines.append(_mended(job))
    lines.append(" ".join(part for part in (_put_in(job), _back(job), _time(job)) if part))
    label = "What was done" if job.newest(RESULT).ending is not None else "What was done so far"
    kept_lines = tuple(line for line in lines if line)
    return Row(label, kept_lines) if kept_lines else None


def _that_fit(steps: list[_Step]) -> list[_Step]:
    """As many steps as the row has words for, those that mended the pen before those that cleaned it."""
    kept: list[_Step] = []
    room = _DONE_WORDS
    for step in sorted(steps, key=lambda step: _WEIGHT.index(step[1])):
        words = len(step[2].split())
        if not kept or words <= room:
            kept.append(step)
            room -= words
    return kept


def _steps(job: Job) -> Iterator[_Step]:
    """When, what kind of work, and the first sentence of what was done."""
    for logged in job.log(WORK):
        if logged.values.done and logged.values.activity in _WEIGHT:
            yield logged.entry.time, logged.values.activity, up_to(logged.values.done, 1)[0]
    for spell in timed_spells(job):
        if spell.done and spell.activity in _WEIGHT:
            yield spell.begun, spell.activity, up_to(spell.done, 1)[0]


def _broken(job: Job) -> Iterator[str]:
    """What broke on the way: the owner is told on the first page."""
    broke = [logged.values.broke for logged in job.log(STEP)] + [logged.values.broke for logged in job.log(HEAT_PASS)]
    yield from (sentence(f"Broken or changed on the way: {what}") for what in broke if what)


def _mended(job: Job) -> str:
    """The parts that were mended, by part and way; what was left on purpose stands among what was left."""
    words = mended_in_words(job, left=False)
    return f"Parts mended: {words[:1].lower()}{words[1:]}" if words else ""


def _put_in(job: Job) -> str:
    """What was added, and whether it comes off again, where that was said of all of it."""
    added = [logged.values for logged in job.log(MATERIAL) if logged.values.way == "added" and logged.values.what]
    if not added:
        return ""
    text = sentence(f"Put in: {'; '.join(dict.fromkeys(values.what or '' for values in added))}")
    stays = [values.what or "" for values in added if values.reversible is False]
    if stays:
        return f"{text} {sentence('For good: ' + '; '.join(stays))}"
    return text if any(values.reversible is None for values in added) else f"{text} All of it can be taken off again."


def _back(job: Job) -> str:
    back = [v.values.what for v in job.log(MATERIAL) if v.values.way == "returned" and v.values.what]
    return sentence(f"Given back with it: {'; '.join(back)}") if back else ""


def _time(job: Job) -> str:
    total = sum(minutes_by_activity(job).values())
    return f"{minutes_in_words(total)} in all." if round(total) >= 1 else ""


def left_row(job: Job) -> Row | None:
    """What was left and why, a line each; that nothing was left only where that was said."""
    lines = []
    found = [logged.values for logged in job.log(LIMIT)]
    each = max(_EACH, _LEFT_WORDS // max(1, len(found)))
    for limit in found:
        left, why = sentence(limit.left or ""), limit.why or ""
        room = each - len(left.split())
        text = left if not why else f"{left} {up_to(why, max(1, room))[0]}"
        lines.append(f"{text} What was done instead holds only for now." if limit.for_now is True else text)
    kept = [
        f"{capital(_PARTS.get(one.values.part or '', 'part'))}: {one.row.method}."
        for one in mended(job)
        if one.row.leaves
    ]
    kept += [f"{capital(one.where)}: {one.what}. It holds only for now." for one in makeshifts_of(job) if not one.limit]
    lines += kept
    if not lines and job.newest(NOTHING_LEFT).nothing_left is True:
        lines = ["Nothing that was found was left unmended."]
    return Row("What was left, and why" if found or kept else "What was left", tuple(lines)) if lines else None
