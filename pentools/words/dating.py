"""What is said of dating evidence and old money."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]


def _counted(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def _other_ways(*, number: int) -> str:
    return f"{_counted(number, 'more way')} out would cost more doubt."


def _to_narrow(*, fact: str, surely: bool, years: float, best: str) -> str:
    if years >= 0.95:
        left = f"about {_counted(round(years), 'year')}"
    else:
        left = _counted(months, "month") if (months := round(12 * years)) else "less than a month"
    return f"To narrow it most, find out {fact}: at {'worst' if surely else 'best'} it leaves {left} ({best} at best)."


def _to_settle(*, fact: str, ways: int) -> str:
    return f"To settle it, find out {fact}: then {_counted(ways, 'way')} out at most would be left."


def _an_end(*, earliest: bool, latest: bool) -> str:
    end = "an earliest or a latest date" if earliest and latest else "an earliest date" if earliest else "a latest date"
    return f"To narrow it most, look for a feature that gives {end}."


WORDS: Mapping[str, Template] = {
    "contradiction": "Doubt the {features:and} ({why:and}) and the rest allows {left}.",
    "contradiction:concluded": "the dating evidence contradicts itself, and the conclusion was written after it. {who}",
    "contradiction:open": "the dating evidence contradicts itself. {who} Write under “What it is” which of it you doubt, and why.",
    "who contradicts": "Contradiction: the {feature} ({allows}) against {others:and}.",
    "other ways": _other_ways,
    "no original": "No evidence is on a part known to be original, so nothing limits the date.",
    "narrow": "{range} is narrower than {years:g} years without a stamped date. Factories fitted the parts they had, so do not lean on the edges.",
    "weak start": "The start rests on the {feature} alone, which is doubtful. Without it: {without}.",
    "weak end": "The end rests on the {feature} alone, which is doubtful. Without it: {without}.",
    "agreed:several": "The evidence does not contradict itself.",
    "agreed:one": "It rests on one piece of evidence.",
    "if original": "If the {features:and} should be original too: {range}.",
    "if original:not together": "Not all of these can be original together: {features:and}.",
    "does not fit": "The {feature} ({dates}) does not fit the rest: it is probably not original.",
    "replaced": "Left out, as replaced: {features:and}.",
    "patent": "The {feature} is taken as “not before”: a patent mark says nothing of the end.",
    "advert": "The {feature} limits neither end: an advert shows that the model was sold, not when this pen was made.",
    "opinion": "The {feature} is an opinion: say so wherever the date is given.",
    "uncertain": "The date of the {feature} is marked ?, so it counts as doubtful.",
    "about": "“About” for the {feature} reaches {years} years to either side: {range}.",
    "read as": "{feature}: {told}",
    "next fact:narrow": _to_narrow,
    "next fact:settle": _to_settle,
    "next fact:end": _an_end,
    "next fact:middle": "To narrow it most, look for a feature that changed about {year}: it would halve the range.",
    "unread": "The date of the {feature} cannot be read and does not count: {problem}",
    "unread:question": "Not looked at yet, {feature}: {problem}",
    "price": "Price then: {problem}",
    "meaning": "An index follows a basket of everyday goods. It says nothing of what the pen is worth today.",
    "rough": "{index} is rough over so long a time: two figures, and “about” belongs before them.",
    "backwards": "It was turned back: the money is that of an earlier year.",
}  # fmt: skip
