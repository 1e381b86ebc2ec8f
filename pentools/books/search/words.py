"""What a search found, as lines to read and as an object to hand on."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Any

from pentools.books.search.likeness import Fitted
from pentools.books.search.search import Found, Match, size_said
from pentools.record.stages.job.ending_kinds import ENDINGS

__all__ = ["RULE", "ended_words", "fitted_words", "found_as_json", "found_in_lines", "match_as_json"]

RULE = (
    "A size is near enough within twice the root of the sum of the squares of both standard uncertainties: those stated "
    "with the readings, else the bench's calliper; for a depth inside a pen 0.5 mm (judged)."
)
_ENDED = {
    "done": "done",
    "done with limits": "done with limits",
    "stopped": "stopped",
    "returned": "returned unrepaired",
}
_SHOWN = 4


def match_as_json(match: Match) -> dict[str, Any]:
    """A pen that was found, as a JSON object."""
    known, came = match.known, match.known.came_of_it
    return {
        "job": match.job,
        "pen": known.pen,
        "system": known.system,
        "material": known.material,
        "why": [*match.why, *(size_said(size) for size in match.sizes)],
        "sizes": [
            {
                "name": size.name,
                "asked": round(size.asked, 6),
                "there": round(size.there, 6),
                "distance": round(size.near.distance, 6),
                "near_enough": round(size.near.window, 6),
                "within": size.near.within,
            }
            for size in match.sizes
        ],
        "fitted": [
            {"place": one.place, "what": one.what, "lot": one.lot, "tried_dry": one.held} for one in came.fitted
        ],
        "failed": [*came.failed, *([match.came_back] if match.came_back else [])],
        "came_back": match.came_back or None,
        "tools": list(came.tools),
        "ending": known.ending,
        "begun": known.begun or None,
        "ended_on": known.ended_on or None,
        "days": known.days,
        "open": f"pentools open {match.job}",
    }


def found_as_json(found: Found, most: int) -> dict[str, Any]:
    """Everything that was found; of the matches so many as are wanted."""
    return {
        "n": len(found.matches),
        "jobs": [match_as_json(match) for match in found.matches[:most]],
        "nearest": [match_as_json(match) for match in found.nearest],
        "without_that_size": found.without,
        "rule": RULE,
        "unread": dict(found.unread),
    }


def found_in_lines(found: Found, most: int) -> Iterator[str]:
    """What was found as it is printed: a line a pen, and under it why, what was fitted and what failed."""
    for match in found.matches[:most]:
        yield from _lines(match)
    if not found.matches:
        yield "No pen on this bench is like that."
    elif len(found.matches) > most:
        first = {0: "none is shown", 1: "the first is shown"}.get(most, f"the first {most} are shown")
        yield f"{len(found.matches)} pens; {first} (--most {len(found.matches)} shows all)."
    else:
        yield "1 pen." if len(found.matches) == 1 else f"{len(found.matches)} pens."
    if found.nearest:
        yield "The nearest, though not near enough:"
        for match in found.nearest:
            yield from _lines(match)
    if found.without:
        pens = "1 pen has" if found.without == 1 else f"{found.without} pens have"
        yield f"{pens} no such size on record."
    if any(match.sizes for match in (*found.matches[:1], *found.nearest[:1])):
        yield RULE
    if found.unread:
        yield f"Not looked through, because it cannot be read: {', '.join(found.unread)}."


def _lines(match: Match) -> Iterator[str]:
    known, came = match.known, match.known.came_of_it
    yield f"{match.job}  {known.pen or 'a pen of which nothing is said'}; {ended_words(match)}"
    why = [*match.why, *(size_said(size) for size in match.sizes)]
    if why:
        yield f"    found by {'; '.join(why)}"
    fitted, failed = fitted_words(came.fitted), [*came.failed, *([match.came_back] if match.came_back else [])]
    for head, texts in (("fitted", fitted), ("failed", failed), ("tools", list(came.tools))):
        if texts:
            more = f"; and {len(texts) - _SHOWN} more" if len(texts) > _SHOWN else ""
            yield f"    {head}: {'; '.join(texts[:_SHOWN])}{more}"


def fitted_words(fitted: tuple[Fitted, ...]) -> list[str]:
    """What was fitted, a clause each, what a dry trial said holds first."""
    ordered = sorted(fitted, key=lambda one: not one.held)
    return [
        f"{one.what}{f', {one.place}' if one.place else ''}{f' (lot {one.lot})' if one.lot else ''}" for one in ordered
    ]


def ended_words(match: Match) -> str:
    """How and when it ended and after how many days, as a clause."""
    known = match.known
    if known.ending is None:
        return "on the bench"
    day = dt.date.fromisoformat(known.ended_on) if known.ended_on else None
    when = "" if day is None else f" {day.day} {day:%b %Y}"
    took = "" if known.days is None else f", after {known.days} day{'' if known.days == 1 else 's'}"
    return f"{dict(ENDINGS).get(known.ending, known.ending).split(':')[0]}{when}{took}"
