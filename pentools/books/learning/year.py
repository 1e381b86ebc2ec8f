"""A year at the bench: what came in and how it ended, month by month, the hours, and how long pens stayed."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pentools.books.asked import ask_bench
from pentools.books.learning.craft import CRAFT
from pentools.books.learning.held import Held, held_among, median_json
from pentools.books.learning.learning import Learned, learned_from
from pentools.books.learning.time_taken import TIME, JobTime
from pentools.calc.books.few import TOO_FEW
from pentools.calc.books.median import Median, median_of
from pentools.errors import InputError
from pentools.numbers import fixed, in_words, percent, plain
from pentools.record.bench import Bench, open_bench_folder
from pentools.record.stages.job.ending_kinds import ENDINGS

__all__ = ["Month", "Year", "year_from", "year_on"]

FIRST_YEAR, LAST_YEAR = 1900, 2200


@dataclass(frozen=True, slots=True)
class Month:
    """A month: pens that came in, and those that ended by ending (every key of `ENDINGS`)."""

    arrived: int
    ended: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Year:
    """A year at the bench.

    Parameters
    ----------
    year : int
        Which.
    months : tuple of Month
        Twelve.
    hours : float
        Hours in jobs that ended in it, as far as they were entered [h].
    days : Median or None
        From arrival to end, of jobs with both days [d].
    back : int
        Pens among those that ended which had been here before.
    learned : Learned
        What its jobs teach.
    held : Held
        How its estimates held.
    """

    year: int
    months: tuple[Month, ...]
    hours: float
    days: Median | None
    back: int
    learned: Learned
    held: Held

    @property
    def ended(self) -> dict[str, int]:
        """How many jobs ended, by ending."""
        return {key: sum(month.ended[key] for month in self.months) for key, _ in ENDINGS}

    @property
    def sentence(self) -> str:
        """The year in a sentence or two."""
        ended, arrived = sum(self.ended.values()), sum(month.arrived for month in self.months)
        if not ended and not arrived:
            return f"{self.year}: no pen came in and none was ended."
        how = in_words(f"{count} {words.split(':')[0]}" for (key, words) in ENDINGS if (count := self.ended[key]))
        text = f"{self.year}: {_pens(arrived)} came in and {ended} ended{f' ({how})' if how else ''}, in {plain(self.hours, 3)} hours."
        again = f" {_pens(self.back)} had been here before." if self.back else ""
        return text + again

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it in words."""
        days = TOO_FEW
        if self.days is not None:
            ends = f"{fixed(self.days.low, 0)} to {fixed(self.days.high, 0)}"
            days = f"{fixed(self.days.median, 0)} ({ends}; {self.days.n} pens, coverage {percent(self.days.coverage)})"
        return (
            self.sentence,
            f"Days from arrival to end, the middle pen: {days}.",
            *self.held.lines,
            "",
            *self.learned.lines,
        )

    def as_json(self) -> dict[str, Any]:
        """Plain values: months, hours [h], days [d], and what was learned."""
        return {
            "year": self.year,
            "sentence": self.sentence,
            "months": [
                {"month": number, "arrived": month.arrived, "ended": dict(month.ended)}
                for number, month in enumerate(self.months, 1)
            ],
            "ended": self.ended,
            "hours": round(self.hours, 2),
            "days_from_arrival_to_end": median_json(self.days, 1),
            "been_here_before": self.back,
            "estimates": self.held.as_json(),
            "learned": self.learned.as_json(),
        }


def year_on(year: int, bench: str | os.PathLike[str] | Bench | None = None) -> Year:
    """A year at a bench.

    Parameters
    ----------
    year : int
        1900 to 2200.
    bench : str, path, Bench or None
        The bench; the usual one by default.

    Returns
    -------
    Year
        Its figures, each with n and interval or that they are too few to say.

    Raises
    ------
    InputError
        If the year is out of range.
    RecordError
        If the bench cannot be looked into.
    """
    if not FIRST_YEAR <= year <= LAST_YEAR:
        raise InputError("year", f"{FIRST_YEAR} to {LAST_YEAR}", year)
    where = bench if isinstance(bench, Bench) else open_bench_folder(bench)
    times, crafts = ask_bench(where, TIME), ask_bench(where, CRAFT)
    learned = learned_from(times.answers, crafts.answers, year, {**times.unread, **crafts.unread})
    return year_from(year, times.answers, learned)


def year_from(year: int, jobs: Mapping[str, JobTime], learned: Learned) -> Year:
    """A year from what the jobs answered; a job without a day of its end counts for none."""
    ended = {name: one for name, one in jobs.items() if one.ended is not None and one.ended.year == year}
    months = tuple(_month(year, number, jobs) for number in range(1, 13))
    days = [
        (one.ended - one.arrived).days
        for one in ended.values()
        if one.ended and one.arrived and one.arrived <= one.ended
    ]
    hours = sum(one.whole_min for one in ended.values()) / 60
    back = sum(bool(one.older) for one in ended.values())
    return Year(year, months, hours, median_of(days), back, learned, held_among(ended))


def _month(year: int, month: int, jobs: Mapping[str, JobTime]) -> Month:
    arrived = sum(
        one.arrived is not None and (one.arrived.year, one.arrived.month) == (year, month) for one in jobs.values()
    )
    endings = [
        one.ending
        for one in jobs.values()
        if one.ended is not None and (one.ended.year, one.ended.month) == (year, month)
    ]
    return Month(arrived, {key: endings.count(key) for key, _ in ENDINGS})


def _pens(count: int) -> str:
    return "1 pen" if count == 1 else f"{count} pens"
