"""The care card: the restorer's own words on care under their labels, and what is usual where none were written."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pentools.numbers import capital, in_words
from pentools.record.stages.job.care import care_of, inks_of, never_on
from pentools.record.stages.job.ending_kinds import EARLY, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.treatment.facts import material_is_named, materials_of
from pentools.writeup.drawn import pen_in_section
from pentools.writeup.forms import Files
from pentools.writeup.papers.sheet import Paper, Row, paper_files, rows_of, told
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["MOST_LINES", "care_card", "care_card_files", "topics_of"]

MOST_LINES, MOST_INKS = 19, 2
"""No card has more lines than this, nor more on inks, beside the restorer's own."""
_LABELS = {
    "Filling": ("filling", "force"),
    "Ink": ("ink",),
    "Rinsing": ("rinsing",),
    "If it rests": ("resting",),
    "On the way": ("carrying",),
    "Keeping": ("keeping",),
    "Outside": ("cleaning",),
    "What holds it": ("joints",),
}
# what a sentence is about, told by its words; the first that fits is where it stands, all that fit are settled by it
_ABOUT: dict[str, str] = {
    "resting": r"not used|unused|for (weeks|months)|first weeks|\brests?\b|put away for|standing for",
    "carrying": r"\bcarr(y|ied)\b|pocket|flight|\bfly\b|travel",
    "rinsing": r"\bflush|\brins|ammonia",
    "filling": r"\blever\b|\bbutton\b|\bstrokes?\b|(\bten|\bfive|\d) seconds|count to|to fill|\bfill it\b|\bknob\b",
    "keeping": r"\bsun|daylight|\bheat\b|flame|radiator|\bbox|drawer|\bcap\b|\bkeep it (dry|dark|cool|in|out|from|away|apart|wrapped)\b",
    "cleaning": r"\bsoak|\bwip(e|ing)\b|polish|\bwash|brush",
    "joints": r"\bjoint\b|shellac|twist",
    "ink": r"(water-based|fountain pen|iron-gall|pigment\w*|india|drawing|writing|the same|one|other) inks?\b|\binks? only\b",
}
_END = re.compile(r"(?<=[.!?…])\s+(?=[A-ZÄÖÜ“\"(])")


def care_card_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's, from the record
    """The care card's one file, from the record alone."""
    return paper_files(job, care_card(job))


def care_card(job: Job) -> Paper:
    """The care card of a pen, by filling system, material and what was put in."""
    own = told(RESULT, job.newest(RESULT), "care")
    rows = tuple(Row(label, lines) for label, lines in _under_labels(job, own) if lines)
    rows += rows_of(job, _inks, _never, _watch)
    drawing = pen_in_section(job) if job.newest(ARRIVAL).system else None
    return Paper("care", "Care for your pen", _what_it_is(job), rows, _foot(own), drawing)


def topics_of(text: str) -> tuple[str, ...]:
    """What a sentence on care is about, by topics; none where its words do not tell."""
    return tuple(topic for topic, words in _ABOUT.items() if re.search(words, text, re.IGNORECASE))


def _under_labels(job: Job, own: str) -> list[tuple[str, tuple[str, ...]]]:
    """Each label with its sentences: the restorer's; where they say nothing of a topic, what is usual."""
    said: dict[str, list[str]] = {}
    settled: set[str] = set()
    for one in (part.strip() for part in _END.split(" ".join(own.split())) if part.strip()):
        topics = topics_of(one)
        settled.update(topics)
        said.setdefault(topics[0] if topics else "", []).append(sentence(one))
    if job.newest(RESULT).ending in EARLY and own:
        settled.add("filling")  # the words that go home with an unmended pen say how it is to be treated
    for line in care_of(job):
        topic = "filling" if line.topic == "force" else line.topic
        if topic not in settled:
            said.setdefault(topic, []).append(line.line)
    found = [
        (label, tuple(line for topic in topics for line in said.get(topic, ()))) for label, topics in _LABELS.items()
    ]
    return [*found, ("Also", tuple(said.get("", ())))]


def _inks(job: Job) -> Row:
    """Inks that this pen does badly with, the gravest first, each with how sure it is; the card says "ink only" already."""
    said: dict[tuple[str, str], list[str]] = {}
    for found in inks_of(job):
        ink = str(found.values["ink"])
        if "India" not in ink:
            how = "Not" if found.level == "warning" else "Better not"
            said.setdefault((how, str(found.values["sure"])), []).append(ink[:1].lower() + ink[1:])
    lines = [f"{how} {in_words(inks)} ({sure})." for (how, sure), inks in said.items()]
    return Row("Other inks", tuple(lines[:MOST_INKS]))


def _never(job: Job) -> Row:
    never = never_on(job)
    return Row("Never", (f"{sentence(in_words(never))}",) if never else ())


def _watch(job: Job) -> Row:
    result = job.newest(RESULT)
    follow_up, until = told(RESULT, result, "follow_up"), told(RESULT, result, "promise_until")
    contact = job.bench.strings("bench", "contact")
    lines = (
        sentence(follow_up) if follow_up else "",
        f"The work is answered for until {until}." if until else "",
        f"Ask {', '.join(contact)}." if contact else "",
    )
    return Row("If something comes up", tuple(line for line in lines if line))


def _what_it_is(job: Job) -> str:
    """Filling system and material, as far as they are known; what is not is said."""
    arrival = job.newest(ARRIVAL)
    system = told(ARRIVAL, arrival, "system")
    named = [name for part in ("barrel", "cap") for name in materials_of(job, part) if name != "unknown"]
    material = in_words(dict.fromkeys(named))
    known = capital(system) if system else "Filling system not entered"
    if material_is_named(job) and material:
        return f"{known}, {material}."
    return f"{known}; the material is not known for sure, so the strictest advice holds."


def _foot(own: str) -> str:
    if own:
        return "In the restorer’s own words where there are any; the rest is common practice for a pen of this kind."
    return "Common practice for a pen of this kind, gathered from repairers and conservators; no single source stands behind it."
