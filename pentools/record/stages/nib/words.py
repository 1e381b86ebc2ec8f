"""What is said of a nib: what it writes, in one line, and how it was seen under the loupe."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import format_value
from pentools.numbers import capital, in_words, plain
from pentools.record.stages.nib.fit import room_now
from pentools.record.stages.nib.kinds import ADJUST, FEED_SETTING, LOUPE, SMOOTHED, Loupe
from pentools.record.stages.nib.paper import Writes, writes
from pentools.record.stages.nib.tip import loupe, strokes_done

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["done_in_words", "flow_in_words", "line_in_words", "loupe_in_words", "nib_sentence", "writes_in_words"]

THIN = "\u202f"
_WET = {"medium": "medium wet"}
_TIPPING = {
    "sound": "the tipping is sound", "flat": "the tipping is worn flat", "chipped": "the tipping is chipped",
    "cracked": "the tipping is cracked or parting", "gone": "the tipping is gone",
}  # fmt: skip
_TINES = {
    "level": "the tines are level", "left high": "the left tine stands high", "right high": "the right tine stands high",
    "crossed": "the tines are crossed", "apart": "the tines stand apart",
}  # fmt: skip
_CRACK = {
    "vent": "at the breather hole", "slit": "along the slit", "shoulder": "at a shoulder", "heel": "at the heel",
    "several": "at several places",
}  # fmt: skip
_DONE = {
    "straighten": "a bend was straightened", "tines": "the tines were set level", "slit": "the slit was opened or closed",
    "seat": "nib and feed were seated afresh", "other": "more was done to it",
}  # fmt: skip


def line_in_words(found: Writes) -> str:
    """The width of a line with its ±, about 95 %; empty where it was not measured."""
    if found.line is None or found.line_u_mm is None:
        return ""
    return format_value(found.line.value, 2 * found.line_u_mm, "mm")


def writes_in_words(found: Writes) -> str:
    """What a nib writes, ±, on what: one sentence.

    Returns
    -------
    str
        A drawing is called one; what was not measured is not there. Empty where nothing of it was.
    """
    line = line_in_words(found)
    if not line and not found.wetness and found.flow is None:
        return ""
    wet = f"{_WET.get(found.wetness, found.wetness)} " if found.wetness else ""
    verb = "writes" if found.when == "after" else "wrote, as found,"
    on = f" on {found.paper}" if found.paper else ""
    ink = f", with {found.ink}" if found.ink else ""
    drawn = " (measured on a drawing)" if found.drawn and line else ""
    head = f"It {verb} a {wet}line{f' of {line}' if line else ''}{on}{ink}{drawn}"
    return "; ".join((head, *(text for text in (flow_in_words(found), _skips(found), _start(found)) if text))) + "."


def flow_in_words(found: Writes) -> str:
    """Ink on a metre as a clause, with its ± or its bound; empty where it was not weighed."""
    if found.flow is None:
        return ""
    data = found.flow.data
    if data["verdict"] == "number":
        return f"{format_value(data['mg_per_m'], data['expanded_uncertainty_mg_per_m'], 'mg')} of ink on a metre"
    if data["verdict"] == "about":
        return f"about {plain(data['mg_per_m'], 1)}{THIN}mg of ink on a metre"
    return f"less than {plain(data['less_than_mg_per_m'], 2)}{THIN}mg of ink on a metre"


def _skips(found: Writes) -> str:
    """Skips as a rate, or as a count; that there were none is said of five metres or more."""
    rate = found.skips_per_m
    if rate is not None:
        return (
            f"{plain(rate, 2)} skips on a metre" if rate else f"no skips in {plain(found.written_m or 0.0, 2)}{THIN}m"
        )
    if not found.skips:
        return ""
    many = "1 skip" if found.skips == 1 else f"{found.skips} skips"
    return many if found.written_m is None else f"{many} in {plain(found.written_m, 2)}{THIN}m"


def _start(found: Writes) -> str:
    if found.start is None:
        return ""
    return "it starts at once" if found.start.value == 0 else f"it starts after {plain(found.start.value, 2)}{THIN}mm"


def loupe_in_words(seen: Loupe) -> str:
    """One look at the nib as a sentence."""
    parts = [_TIPPING.get(seen.tipping or "", ""), _TINES.get(seen.tines or "", "")]
    parts += [f"the slit is {LOUPE.field('slit').shown(seen.slit)}"] if seen.slit else []
    parts += (
        ["no crack is seen" if seen.cracks == "none" else f"there is a crack {_CRACK.get(seen.cracks, seen.cracks)}"]
        if seen.cracks
        else []
    )
    through = f", at {plain(seen.times)}x" if seen.times is not None else ""
    when = "As found" if seen.when == "found" else "After the work"
    return f"{when}{through}: {in_words([part for part in parts if part])}."


def done_in_words(job: Job) -> str:
    """What was done to the nib, as a sentence; empty where nothing was."""
    parts = [
        _DONE[what] for what in dict.fromkeys(logged.values.what or "" for logged in job.log(ADJUST)) if what in _DONE
    ]
    strokes = strokes_done(job)
    if strokes:
        parts.append(
            f"the tip was smoothed with {sum(one.strokes for one in strokes)} strokes on {in_words([one.label for one in strokes])}"
        )
    parts += ["the feed was set to the nib"] if job.log(FEED_SETTING) else []
    said = in_words(parts)
    return f"{capital(said)}." if said else ""


def nib_sentence(job: Job) -> str:
    """What matters of the nib now."""
    found = writes(job)
    if found is not None and (said := writes_in_words(found)):
        return said
    room = room_now(job)
    if room is not None and not room.may_be_capped:
        return room.finding.text
    seen = loupe(job)
    if seen is not None:
        return loupe_in_words(seen)
    if bool(job.log(ADJUST)) or bool(job.log(SMOOTHED)):
        return "Something was done to the nib; nothing is written with it yet."
    return "Nobody has looked at the nib under a loupe yet."
