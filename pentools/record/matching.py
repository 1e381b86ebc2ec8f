"""Where in a text something stands that is not for everybody: each fact looked for in the ways it may be written."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from pentools.record.addresses import STREETS
from pentools.record.ordinary import is_ordinary_word
from pentools.record.owner_facts import Fact, facts_of
from pentools.record.view import once_a_state
from pentools.record.wording import Word, digits_in, parts_of, seen_text, without_spaces, words_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Found", "found_in"]

_LEAST_RUN, _WHOLE, _LONG_WORD = 6, 10, 7
_AROUND = 4  # words kept on either side
_MARKS_OF_MAIL = frozenset({"at", "dot", "punkt"})
_LEAST_SPELLED, _LEAST_BROKEN = 3, 5  # letters of a name
_BETWEEN_LETTERS = re.compile(r"[ .\-_·\u2010\u2011\u2009]{1,2}")
_HYPHEN = re.compile(r"[-_\u2010\u2011]\s*")
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

    Four words together of which three are none of the kit's own, five of which two are, six of which one is, or any
    eight; where the owner may read the text, five of which three are, or any ten; or the whole of a shorter sentence,
    where one of its words is none of the kit's own. A single word must be a long one, or have figures in it. Judged on the samples.
    """
    said = fact.words
    strange = [_is_strange(word) for word in said]
    for length, least in ((5, 3), (10, 0)) if fact.owners else ((4, 3), (5, 2), (6, 1), (8, 0)):
        for start in range(len(said) - length + 1):
            if sum(strange[start : start + length]) >= least:
                yield said[start : start + length]
    if len(said) == 1 and not (strange[0] and (len(said[0]) >= _LONG_WORD or not said[0].isalpha())):
        return
    if len(said) < _WHOLE and sum(strange) >= (3 if fact.owners and len(said) < _LEAST_RUN else 1):
        yield said


def _is_strange(word: str) -> bool:
    return len(word) > 3 and not word.isdigit() and not is_ordinary_word(word)


@once_a_state
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
            *_spelled(index, clean, said),
            *_broken(index, clean, said),
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
        if last is not None and spot.first <= last.last:
            last = last if spot.last <= last.last else _Spot(last.first, spot.last, last.fact)
            continue
        if last is not None and _one_name(last, spot, clean, said):
            last = _Spot(last.first, spot.last, replace(last.fact, about=last.fact.about.removeprefix("part of ")))
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


def _spelled(index: _Index, clean: str, said: Sequence[Word]) -> Iterator[_Spot]:
    """A name written letter by letter, as it may be engraved: ``Q u i s t``, ``Q.U.I.S.T``."""
    first = 0
    while first < len(said):
        last = first
        while last + 1 < len(said) and _letters(said[last], said[last + 1], clean):
            last += 1
        letters = "".join(word.folded for word in said[first : last + 1])
        if last - first + 1 == len(letters) >= _LEAST_SPELLED:
            for name, fact in index.names.items():
                at = letters.find(name) if len(name) >= _LEAST_SPELLED else -1
                if at >= 0:
                    yield _Spot(first + at, first + at + len(name) - 1, fact)
        first = last + 1


def _letters(one: Word, other: Word, clean: str) -> bool:
    """Whether two words are single letters that follow each other at once."""
    single = len(one.folded) == len(other.folded) == 1 and one.folded.isalpha() and other.folded.isalpha()
    return single and _BETWEEN_LETTERS.fullmatch(clean[one.end : other.start]) is not None


def _broken(index: _Index, clean: str, said: Sequence[Word]) -> Iterator[_Spot]:
    """A name or a town broken by a hyphen, as at the end of a line."""
    for number, (one, other) in enumerate(itertools.pairwise(said)):
        whole = one.folded + other.folded
        if len(whole) < _LEAST_BROKEN or not _HYPHEN.fullmatch(clean[one.end : other.start]):
            continue
        facts = (index.names.get(whole), *index.begin.get(whole, ()))
        fact = next((fact for fact in facts if fact is not None and len(fact.words) == 1 and not fact.as_typed), None)
        if fact is not None:
            yield _Spot(number, number + 1, fact)


def _named(index: _Index, word: Word) -> Fact | None:
    for form in _without_ending(word):
        fact = index.names.get(form)
        if fact is not None and _as_typed(fact, word):
            return fact
    if index.spaceless and without_spaces(word.shown):
        return next((fact for fact in index.spaceless if fact.words[0] in word.folded), None)
    return None


def _as_typed(fact: Fact, word: Word) -> bool:
    """A name of two letters as it was typed, a short town with its capital, any other however it is written."""
    if not fact.as_typed:
        return True
    return fact.as_typed == word.shown or (len(word.folded) > len("Bo") and word.shown[:1].isupper())


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
