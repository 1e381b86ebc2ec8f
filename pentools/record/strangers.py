"""Texts compared with what is not for everybody: what was found, as it is written, and what a reason was given for."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from pentools import tables, words
from pentools.calc.base.findings import Finding
from pentools.numbers import capital
from pentools.record.owner_facts import STREETS, Fact, facts_of
from pentools.record.registry import all_stages
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.ending_kinds import PICTURE
from pentools.record.stages.job.intake_kinds import ARRIVAL, PASSED
from pentools.record.view import once_a_state
from pentools.record.wording import Word, digits_in, fold, parts_of, seen_text, without_spaces, words_of

if TYPE_CHECKING:
    from pentools.fields import Field
    from pentools.record.forms import Logged
    from pentools.record.job import Job
    from pentools.record.kinds import Kind, Stage

__all__ = [
    "Found",
    "OwnText",
    "found_in",
    "is_ordinary",
    "ordinary_words",
    "own_fields",
    "passed_over",
    "strangers_found",
]

_AROUND = 4  # words kept on either side
_MARKS_OF_MAIL = frozenset({"at", "dot", "punkt"})
_TEXT_KINDS = frozenset({"text", "long text", "items"})
_SENTENCE_END = re.compile(r"[.!?…:;]\W*\s|\n")


@dataclass(frozen=True, slots=True)
class Found:
    """Something in a text that is not for everybody.

    Parameters
    ----------
    word : str
        As it is written there.
    about : str
        What it is, such as ``part of the owner’s name``.
    kind : str
        How it was looked for, as in `Fact`.
    key : str
        The words as compared.
    around : str
        With the words on either side, as compared: what a reason was given for.
    """

    word: str
    about: str
    kind: str
    key: str
    around: str


@dataclass(frozen=True, slots=True)
class OwnText:
    """A text somebody wrote that is for everybody, with its place and, where that helps to find it, its first words."""

    place: str
    text: str
    beginning: str = ""


@dataclass(frozen=True, slots=True)
class _Spot:
    first: int  # number of its first word
    last: int
    fact: Fact


@dataclass(frozen=True, slots=True)
class _Index:
    """The facts by the word they begin with."""

    names: Mapping[str, Fact]
    begin: Mapping[str, tuple[Fact, ...]]
    mails: tuple[Fact, ...]
    telephones: tuple[Fact, ...]
    runs: Mapping[tuple[str, ...], Fact]
    run_lengths: tuple[int, ...]
    spaceless: tuple[Fact, ...]


@once_a_state
def _index(job: Job) -> _Index:
    facts = facts_of(job)
    names: dict[str, Fact] = {}
    begin: dict[str, list[Fact]] = {}
    runs: dict[tuple[str, ...], Fact] = {}
    for fact in facts:
        if fact.kind == "name":
            names.setdefault(fact.words[0], fact)
        elif fact.kind == "words":
            begin.setdefault(fact.words[0], []).append(fact)
        elif fact.kind == "run":
            for run in _telling_runs(fact):
                runs.setdefault(run, fact)
    return _Index(
        names,
        {word: tuple(found) for word, found in begin.items()},
        tuple(fact for fact in facts if fact.kind == "mail"),
        tuple(fact for fact in facts if fact.kind == "telephone"),
        runs,
        tuple(sorted({len(run) for run in runs})),
        tuple(fact for fact in names.values() if without_spaces(fact.words[0])),
    )


def _telling_runs(fact: Fact) -> Iterator[tuple[str, ...]]:
    """The runs of a private text that say where they were taken from.

    Five words together of which two are none of the kit's own, six of which one is, or any eight; where the owner may read
    the text, five of which three are, or any ten; or the whole of a shorter sentence. Judged on the samples.
    """
    said = fact.words
    rules = ((5, 3), (10, 0)) if fact.owners else ((5, 2), (6, 1), (8, 0))
    for length, least in ((min(length, len(said)) if least > 1 else length, least) for length, least in rules):
        for start in range(len(said) - length + 1):
            run = said[start : start + length]
            if sum(len(word) > 3 and not word.isdigit() and not is_ordinary_word(word) for word in run) >= least:
                yield run


def found_in(job: Job, text: str) -> tuple[Found, ...]:
    """What stands in a text that is not for everybody.

    Parameters
    ----------
    text : str
        Any text: plain, markdown, a file name.

    Returns
    -------
    tuple of Found
        In the text's order; parts of one name side by side are one, and the same in the same words stands once.
    """
    index, clean = _index(job), seen_text(text)
    said = words_of(clean)
    spots = sorted(
        {
            *_names(index, said),
            *_sequences(index, said),
            *_mails(index, said),
            *_runs(index, said),
            *_telephones(index, clean, said),
        },
        key=lambda spot: (spot.first, -spot.last),
    )
    found = (_found(clean, said, spot) for spot in _joined(spots, clean, said))
    return tuple({(one.key, one.around): one for one in found}.values())


def _found(clean: str, said: Sequence[Word], spot: _Spot) -> Found:
    within = said[spot.first : spot.last + 1]
    around = said[_reach(clean, said, spot.first, -1) : _reach(clean, said, spot.last, 1) + 1]
    shown = clean[within[0].start : within[-1].end]
    return Found(
        " ".join(shown.split()),
        spot.fact.about,
        spot.fact.kind,
        " ".join(word.folded for word in within),
        " ".join(word.folded for word in around),
    )


def _reach(clean: str, said: Sequence[Word], number: int, step: int) -> int:
    """The word a few further on, or before, in the same sentence."""
    for _ in range(_AROUND):
        after = number + step
        if not 0 <= after < len(said):
            break
        between = clean[min(said[number].end, said[after].end) : max(said[number].start, said[after].start)]
        if _SENTENCE_END.search(between):
            break
        number = after
    return number


def _joined(spots: Sequence[_Spot], clean: str, said: Sequence[Word]) -> Iterator[_Spot]:
    """Spots that overlap, or parts of a name that follow each other, taken together."""
    last: _Spot | None = None
    for spot in spots:
        if last is not None and (spot.first <= last.last or _one_name(last, spot, clean, said)):
            whole = last.fact.about.removeprefix("part of ") if spot.first > last.last else last.fact.about
            last = _Spot(last.first, max(last.last, spot.last), replace(last.fact, about=whole))
            continue
        if last is not None:
            yield last
        last = spot
    if last is not None:
        yield last


def _one_name(last: _Spot, spot: _Spot, clean: str, said: Sequence[Word]) -> bool:
    between = clean[said[last.last].end : said[spot.first].start]
    return (
        spot.first == last.last + 1
        and last.fact.kind == spot.fact.kind == "name"
        and not between.strip(" .-\u2010\u2011")
    )


def _names(index: _Index, said: Sequence[Word]) -> Iterator[_Spot]:
    for number, word in enumerate(said):
        for part in (word, *parts_of(word)):
            fact = _named(index, part)
            if fact is not None:
                yield _Spot(number, number, fact)


def _named(index: _Index, word: Word) -> Fact | None:
    for form in _without_ending(word):
        fact = index.names.get(form)
        if fact is not None and (not fact.as_typed or fact.as_typed == word.shown):
            return fact
    if index.spaceless and without_spaces(word.shown):
        return next((fact for fact in index.spaceless if fact.words[0] in word.folded), None)
    return None


def _without_ending(word: Word) -> Iterator[str]:
    """A word as it is, without figures at its ends, and without the s of a possessive or a plural."""
    for form in dict.fromkeys((word.folded, word.bare)):
        yield form
        for ending in ("s", "es", "ses"):
            stem = form.removesuffix(ending)
            if stem != form and len(stem) > 2 and (not word.shown[:1].islower() or not is_ordinary_word(stem)):
                yield stem


def _sequences(index: _Index, said: Sequence[Word]) -> Iterator[_Spot]:
    for number, word in enumerate(said):
        for form in dict.fromkeys((word.folded, street_word(word.folded))):
            for fact in index.begin.get(form, ()):
                end = number + len(fact.words)
                if tuple(street_word(w.folded) for w in said[number:end]) == tuple(map(street_word, fact.words)):
                    yield _Spot(number, end - 1, fact)


def street_word(word: str) -> str:
    """A word of an address with its usual abbreviation written out."""
    return STREETS.get(word, word + "asse" if word.endswith("str") and len(word) > 4 else word)


def _mails(index: _Index, said: Sequence[Word]) -> Iterator[_Spot]:
    if not index.mails:
        return
    kept = [(number, word.folded) for number, word in enumerate(said) if word.folded not in _MARKS_OF_MAIL]
    places: dict[str, list[int]] = {}
    for at, (_, word) in enumerate(kept):
        places.setdefault(word, []).append(at)
    for fact in index.mails:
        wanted = tuple(word for word in fact.words if word not in _MARKS_OF_MAIL)
        for at in places.get(wanted[0], ()) if wanted else ():
            if tuple(word for _, word in kept[at : at + len(wanted)]) == wanted:
                yield _Spot(kept[at][0], kept[at + len(wanted) - 1][0], fact)


def _runs(index: _Index, said: Sequence[Word]) -> Iterator[_Spot]:
    folded = [word.folded for word in said]
    for length in index.run_lengths:
        for start in range(len(folded) - length + 1):
            fact = index.runs.get(tuple(folded[start : start + length]))
            if fact is not None:
                yield _Spot(start, start + length - 1, fact)


def _telephones(index: _Index, clean: str, said: Sequence[Word]) -> Iterator[_Spot]:
    if not index.telephones:
        return
    for digits, start, end in digits_in(clean):
        bare = digits.lstrip("0")
        for fact in index.telephones:
            number = fact.words[0]
            if number in digits or (len(bare) >= 6 and number.endswith(bare)):
                within = [n for n, word in enumerate(said) if word.start < end and word.end > start]
                if within:
                    yield _Spot(within[0], within[-1], fact)


def own_fields(job: Job) -> Iterator[OwnText]:
    """Every field for everybody that holds a text, with its place: ``Limits: one thing left, Why``."""
    for stage in all_stages():
        for kind in stage.kinds:
            logged = job.log(kind) if kind.log else job.log(kind)[-1:]
            for number, one in enumerate(logged, 1):
                which = f" ({number} of {len(logged)})" if len(logged) > 1 else ""
                for field in kind.fields:
                    value = getattr(one.values, field.name)
                    if field.audience == "everybody" and field.kind in _TEXT_KINDS and value is not None:
                        text = "; ".join(value) if isinstance(value, tuple) else str(value)
                        yield OwnText(_place(stage, kind, field, one, which), text)


def _place(stage: Stage, kind: Kind[Any], field: Field, logged: Logged[Any], which: str) -> str:
    if kind is PICTURE and logged.values.photo:
        return f"the caption of {logged.values.photo}"
    return f"{capital(stage.key)}: {kind.title[:1].lower()}{kind.title[1:]}{which}, {field.label}"


def strangers_found(job: Job) -> tuple[Finding, ...]:
    """Fields for everybody that say what is the owner's or the bench's own; none before the owner agreed to publication."""
    if consents(job).get("publish") is not True:
        return ()
    told = {
        (own.place, found.word): Finding("warning", "job.stranger", place=own.place, word=found.word, about=found.about)
        for own in own_fields(job)
        for found in found_in(job, own.text)
        if not passed_over(job, found, own.place)
    }
    return tuple(told.values())


def is_ordinary(job: Job, found: Found) -> bool:
    """Whether what was found is one word that the kit's own sentences or the pen's description use, such as green or May."""
    if found.kind != "name" or " " in found.key:
        return False
    return is_ordinary_word(found.key) or found.key in _of_the_pen(job)


def is_ordinary_word(word: str) -> bool:
    """Whether the kit's own sentences use a word."""
    return word in ordinary_words()


@once_a_state
def _of_the_pen(job: Job) -> frozenset[str]:
    """Words of the pen's description written small: a name would have its capital."""
    arrival = job.newest(ARRIVAL)
    texts = " ".join(text for text in (arrival.pen, arrival.material) if text)
    return frozenset(word.folded for word in words_of(seen_text(texts)) if word.shown.islower())


@functools.cache
def ordinary_words() -> frozenset[str]:
    """The words of the kit's own forms, findings, tables and months, as compared."""
    from importlib import resources

    texts = [*words.MONTHS]
    for stage in all_stages():
        texts += [stage.title, stage.purpose]
        for kind in stage.kinds:
            texts += [kind.title, kind.help]
            for field in kind.fields:
                texts += [field.label, field.hint, *(label for choice in field.choices for label in choice)]
    for subject in ("base", "weighing", "seal", "finish", "dating", "treatment", "job"):
        texts += [told for told in words.phrasebook(subject).values() if isinstance(told, str)]
    for table in resources.files(tables).iterdir():
        if table.name.endswith(".csv"):
            texts.append(table.read_text(encoding="utf-8"))
    return frozenset(word.folded for text in texts for word in words_of(text))


def passed_over(job: Job, found: Found, place: str) -> bool:
    """Whether a reason was given to show this: for the word wherever it stands, at its place, or among its words.

    Notes
    -----
    A reason without a place covers the word everywhere. One with the words around it covers it among those words only,
    so that a new sentence is asked about anew; an ordinary word written small (green, mark, may) is then covered
    wherever it is written small.
    """
    for logged in job.log(PASSED):
        passed = logged.values
        key = " ".join(word.folded for word in words_of(seen_text(passed.word or "")))
        if key != found.key or not key:
            continue
        if passed.around:
            small = (passed.word or "").islower() and found.word.islower() and is_ordinary(job, found)
            if passed.around == found.around or small:
                return True
        elif not passed.place or fold(passed.place.strip()) == fold(place):
            return True
    return False
