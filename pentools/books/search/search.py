"""Pens on the bench that are like what is asked for: by words, system, material, part and sizes, and by which of them."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Told, ask_bench, uncollected
from pentools.books.kept import stamps_on
from pentools.books.search.likeness import KNOWN, WORDS, Known, Words, folded
from pentools.books.search.sizes import EITHER, SIZE_FIELDS, Size, calliper_of, doubt_of, size_words, sizes_of
from pentools.calc.books.nearness import COVERAGE, Nearness, near
from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import InputError
from pentools.record.wording import spellings
from pentools.units import Reading

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["NEAREST", "Asked", "Found", "Match", "SizeMatch", "find_on", "pens_like", "size_said"]

NEAREST = 3
"""How many pens are named that are nearest where none is near enough."""
_COMPARED = (
    "bore", "nipple", "rod", "housing", "groove_diameter", "head_diameter", "tube_diameter", "barrel_diameter",
    "sac_length", "depth", "feed_diameter",
)  # fmt: skip
"""Sizes of the pen itself by which pens are compared; what was put in hangs on them."""
_SNIPPET = 70


@dataclass(frozen=True, slots=True)
class Asked:
    """What is looked for; everything that is said must be so.

    Parameters
    ----------
    words : tuple of str
        Words or phrases, each found by its beginning, whatever its case and accents.
    system : str or None
        Key of the filling system.
    material : str
        Words of the material; empty for any.
    part : str or None
        Key of a part that something was seen at or done to.
    sizes : mapping of str to Reading or float
        Name of a size (`SIZE_FIELDS`) to what it measures here.
    """

    words: tuple[str, ...] = ()
    system: str | None = None
    material: str = ""
    part: str | None = None
    sizes: Mapping[str, Reading | float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class SizeMatch:
    """One size of a pen held against the one asked for, in the unit of its name."""

    name: str
    asked: float
    there: float
    near: Nearness


@dataclass(frozen=True, slots=True)
class Match:
    """A pen that is like what was asked for.

    Parameters
    ----------
    job : str
        Its job.
    known : Known
        What is known of it.
    why : tuple of str
        Why it was found, a clause each.
    sizes : tuple of SizeMatch
        The sizes asked for, as they are in it.
    came_back : str
        Why it came back later, and the job; empty where it did not.
    """

    job: str
    known: Known
    why: tuple[str, ...]
    sizes: tuple[SizeMatch, ...] = ()
    came_back: str = ""


@dataclass(frozen=True, slots=True)
class Found:
    """What a search found.

    Parameters
    ----------
    matches : tuple of Match
        Pens for which all is so: the nearest first, of those that are equally near the newest.
    nearest : tuple of Match
        Where no size was near enough: the nearest of the pens for which all else is so.
    without : int
        Pens for which all else is so, but a size that was asked for is not on record.
    unread : mapping of str to str
        Jobs that cannot be read, each with the reason.
    """

    matches: tuple[Match, ...]
    nearest: tuple[Match, ...] = ()
    without: int = 0
    unread: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))


def find_on(bench: Bench, asked: Asked, *, most: int = 20) -> Found:
    """Look through every job on a bench.

    Parameters
    ----------
    most : int
        For so many of the matches, the first, it is said where a word was found, 0 or more.

    Returns
    -------
    Found
        Sizes are near enough within twice the root of the sum of the squares of both standard uncertainties, as stated,
        else of the bench's calliper.

    Raises
    ------
    InputError
        If nothing is asked for, or a size is not known by that name.
    RecordError
        If the bench folder cannot be looked into.
    """
    _must_ask(asked)
    stamps = stamps_on(bench)
    forms = [_forms(word) for word in asked.words]
    if not forms:
        told = ask_bench(bench, KNOWN, stamps=stamps)
        with uncollected():
            return _found(told, Told({}, {}), asked, calliper_of(bench), most)
    texts = ask_bench(bench, WORDS, stamps=stamps)
    with uncollected():
        said = {job for job, words in texts.answers.items() if _has(words, forms)}
        return _found(ask_bench(bench, KNOWN, stamps=stamps, only=said), texts, asked, calliper_of(bench), most)


def _found(told: Told[Known], texts: Told[Words], asked: Asked, calliper: float, most: int) -> Found:
    """What is so of the pens told of, in whose texts the words stand."""
    forms = [_forms(word) for word in asked.words]
    sizes = {name: _asked_sizes(name, value) for name, value in asked.sizes.items()}
    looked_for = [{one.name: (one.value, doubt_of(one, calliper)) for one in own} for own in sizes.values()]
    near_by: list[tuple[float, tuple[int, ...], str]] = []
    far: list[tuple[float, tuple[int, ...], str]] = []
    without = 0
    for job, known in told.answers.items():
        if not _is_so(known, asked):
            continue
        off = _off(looked_for, known.sizes, calliper)
        if off is None:
            without += 1
        else:
            (near_by if off <= 1 + 1e-9 else far).append((round(off, 9), _newest_first(known), job))
    all_pens: Mapping[str, Known | Words] = texts.answers if forms else told.answers
    back = {one.older: (name, one.came_back) for name, one in all_pens.items() if one.older}

    def match(job: str, *, words: bool) -> Match:
        known = told.answers[job]
        there = [_nearest(own, known.sizes, calliper) for own in sizes.values()]
        why = (*_why(known, asked), *(_where(texts.answers[job], asked.words, forms) if words else ()))
        return Match(job, known, why, tuple(size for size in there if size is not None), _back_words(back.get(job)))

    matches = [match(job, words=number < most and bool(forms)) for number, (*_, job) in enumerate(sorted(near_by))]
    nearest = [match(job, words=bool(forms)) for *_, job in sorted(far)[:NEAREST]] if not matches else []
    return Found(tuple(matches), tuple(nearest), without, {**texts.unread, **told.unread})


def pens_like(job: Job, *, most: int = 8) -> tuple[Match, ...]:
    """Other pens on the bench that fill in the same way, the most like first.

    Parameters
    ----------
    most : int
        How many at most, 0 or more.

    Returns
    -------
    tuple of Match
        By how far their sizes lie off on the whole (a pen of which no such size is known comes after those); of equal
        ones first those of the same material, then the newest. Empty where the system is not named.
    """
    own = KNOWN.of(job)
    if own.system is None:
        return ()
    told = ask_bench(job.bench, KNOWN)
    back = {one.older: (name, one.came_back) for name, one in told.answers.items() if one.older}
    calliper = calliper_of(job.bench)
    mine = {size.name: size for size in sizes_of(job) if size.name in _COMPARED}
    found = []
    for name, known in told.answers.items():
        if name == job.name or known.system != own.system:
            continue
        pairs = [_nearest((size,), known.sizes, calliper) for size in mine.values()]
        sizes = tuple(pair for pair in pairs if pair is not None)
        off = math.sqrt(sum((s.near.distance / s.asked) ** 2 for s in sizes) / len(sizes)) if sizes else math.inf
        same = own.body != UNKNOWN and own.body == known.body
        why = ("the same system", *(("the same material",) if same else ()), *(size_said(size) for size in sizes))
        match = Match(name, known, why, sizes, _back_words(back.get(name)))
        found.append((off, not same, _newest_first(known), name, match))
    return tuple(row[-1] for row in sorted(found, key=lambda row: row[:4])[:most])


def _must_ask(asked: Asked) -> None:
    if not any((asked.words, asked.system, asked.material.strip(), asked.part, asked.sizes)):
        raise InputError("what to look for", "words, a system, a material, a part or a size", "nothing", 'Such as: pentools find cork, or pentools find --nipple "6.2 mm".')  # fmt: skip
    for name in asked.sizes:
        if name not in SIZE_FIELDS:
            raise InputError("size", f"one of {', '.join(SIZE_FIELDS)}", name)
    for word in asked.words:
        if not folded(word):
            raise InputError("word", "a word with a letter or a figure", word)


def _is_so(known: Known, asked: Asked) -> bool:
    if asked.system is not None and known.system != asked.system:
        return False
    if asked.part is not None and asked.part not in known.parts:
        return False
    return all(any(form in known.made_of for form in _forms(word)) for word in asked.material.split())


def _forms(word: str) -> tuple[str, ...]:
    """A word as it is looked for: without accents, and with its umlauts written out."""
    plain = folded(word)
    return tuple(dict.fromkeys((plain, *(f" {one}" for one in spellings(plain.strip()) if " " not in plain.strip()), *(folded(one) for one in spellings(word.strip()) if " " not in word.strip()))))  # fmt: skip


def _has(words: Words, forms: Sequence[tuple[str, ...]]) -> bool:
    return all(any(form in words.folded for form in one) for one in forms)


def _asked_sizes(name: str, value: Reading | float) -> tuple[Size, ...]:
    """A size that is asked for, under each name that it may go by."""
    stated = value.standard_uncertainty if isinstance(value, Reading) else None
    number = value.value if isinstance(value, Reading) else float(value)
    return tuple(Size(one, number, stated) for one in EITHER.get(name, (name,)))


def _off(asked: Sequence[Mapping[str, tuple[float, float]]], there: Sequence[Size], calliper: float) -> float | None:
    """By how many times what is near enough the worst of the sizes lies off; 0 of none, None where one is not on record.

    Each size asked for comes as the names that it may go by, each with its value and its doubt.
    """
    worst = 0.0
    for own in asked:
        best = math.inf
        for size in there:
            mine = own.get(size.name)
            if mine is not None:
                off = abs(size.value - mine[0]) / (COVERAGE * math.hypot(mine[1], doubt_of(size, calliper)))
                best = min(best, off)
        if best == math.inf:
            return None
        worst = max(worst, best)
    return worst


def _share(own: Size, size: Size, calliper: float) -> float:
    return abs(size.value - own.value) / (COVERAGE * math.hypot(doubt_of(own, calliper), doubt_of(size, calliper)))


def _nearest(own: Sequence[Size], there: Iterable[Size], calliper: float) -> SizeMatch | None:
    """The size that is nearest to one asked for; None where none is on record."""
    pairs = [(one, size) for one in own for size in there if size.name == one.name]
    if not pairs:
        return None
    one, size = min(pairs, key=lambda pair: _share(pair[0], pair[1], calliper))
    lies = near(one.value, doubt_of(one, calliper), size.value, doubt_of(size, calliper))
    return SizeMatch(size.name, one.value, size.value, lies)


def _newest_first(known: Known) -> tuple[int, ...]:
    day = known.ended_on or known.begun
    return tuple(-int(part) for part in day.split("-")) if day else (1,)


def _why(known: Known, asked: Asked) -> tuple[str, ...]:
    why = []
    if asked.system is not None:
        why.append("the system")
    if asked.material.strip():
        why.append(f"the material ({known.material or 'named at the opening'})")
    if asked.part is not None:
        why.append("the part")
    return tuple(why)


def size_said(size: SizeMatch) -> str:
    """A size as it is there, and by how much it is larger or smaller."""
    unit = SIZE_FIELDS[size.name].unit
    shown = {"mm": "mm", "ml": "mL"}.get(unit, unit)
    return f"{size_words(size.name)} {size.there:.2f} {shown}".rstrip() + f" ({size.near.distance:+.2f})".replace(
        "-", "−"
    )


def _where(words: Words, typed: Sequence[str], forms: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Where each word stands: the form, and the words round it."""
    pieces = msgspec.msgpack.decode(words.pieces, type=list[tuple[str, str]])
    flat = [(title, text, folded(text)) for title, text in pieces]
    for word, one in zip(typed, forms, strict=True):
        title, text = next((title, text) for title, text, plain in flat if any(form in plain for form in one))
        yield f"“{word}” in {title[:1].lower()}{title[1:]}: {_snippet(text, word)}"


def _snippet(text: str, word: str) -> str:
    """The text round a word, short enough for a line."""
    plain = " ".join(text.split())
    if len(plain) <= _SNIPPET:
        return plain
    at = max(0, plain.casefold().find(word.casefold()) - _SNIPPET // 3)
    start = plain.rfind(" ", 0, at) + 1 if at else 0
    cut = plain[start : start + _SNIPPET].rsplit(" ", 1)[0]
    return f"{'… ' if start else ''}{cut} …" if start + len(cut) < len(plain) else f"… {cut}"


def _back_words(back: tuple[str, str] | None) -> str:
    return "" if back is None else f"it came back as {back[0]}: {back[1].rstrip('.')}"
