"""What two measurements say of a seat that no table has sizes for, and what was found at that seat in other pens."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.seal.seats import Seat, closed_by, pressed_in, stretched_over
from pentools.numbers import plain
from pentools.record.each import ask_each
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, TRIAL, Measure
from pentools.record.stages.seal.places import PLACES, place_words
from pentools.sums.base import SumAnswer

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job
    from pentools.units import Reading

__all__ = ["Seen", "seat_answer", "seen_in_other_pens"]


@dataclass(frozen=True, slots=True)
class Seen:
    """What was found and what was fitted at a place in some job, for the next pen of its kind.

    Parameters
    ----------
    job, system : str
        The job, and its filling system.
    place : str
        A key of `PLACES`.
    was : str
        What was there before, with its size; empty where nobody said.
    fitted : str
        What held in the dry trial, with its size; empty where nothing did.
    """

    job: str
    system: str
    place: str
    was: str
    fitted: str


def seat_answer(place: str, values: Measure, half_width_mm: float) -> SumAnswer | None:
    """What a seat's measurements say.

    Parameters
    ----------
    place : str
        A key of `PLACES`.
    half_width_mm : float
        Half-width of one calliper reading [mm].

    Returns
    -------
    SumAnswer or None
        None where the place has no such sum, or what it needs was not measured.

    Raises
    ------
    InputError
        If a diameter is not above 0.
    """
    seat = _seat(PLACES[place].way, values, half_width_mm)
    if seat is None:
        return None
    verdict = {"fits": "fits", "too loose": "is too loose", "too tight": "is too tight"}.get(
        seat.verdict, "cannot be told yet"
    )
    data = {
        "place": place, "value": seat.value, "low": seat.low, "high": seat.high, "verdict": seat.verdict,
        "findings": [finding.as_json() for finding in seat.findings],
    }  # fmt: skip
    gap = _short_of_the_end(place, values)
    table: tuple[tuple[str, ...], ...] = (("quantity", "value"), ("verdict", seat.verdict), *gap)
    return SumAnswer(f"The {place_words(place)} {verdict}. {seat.findings[0].text}", data, seat.findings, table, seat)


def _seat(way: str, values: Measure, half: float) -> Seat | None:
    if way == "stretch" and values.nipple is not None and values.mouth is not None:
        return stretched_over(values.nipple.value, values.mouth.value, half_width_mm=half)
    if way == "press" and values.tube is not None and values.tube_hole is not None:
        return pressed_in(values.tube.value, values.tube_hole.value, half_width_mm=half)
    if way == "liner" and values.lip is not None and values.mouth is not None:
        reach, depth = _mm(values.lip_reach), _mm(values.lip_depth)
        return closed_by(values.lip.value, values.mouth.value, reach, depth, half_width_mm=half)
    return None


def _short_of_the_end(place: str, values: Measure) -> tuple[tuple[str, str], ...]:
    """How far a breather tube ends before what is behind it: the level of its end ends the filling."""
    if place != "breather" or values.reach is None or values.depth is None:
        return ()
    gap = values.depth.value - values.reach.value
    return (("from the tube’s end to the end of the barrel", f"{plain(gap, 3)} mm"),)


def _mm(reading: Reading | None) -> float | None:
    return None if reading is None else reading.value


def seen_in_other_pens(bench: Bench, system: str, place: str, *, without: str = "") -> tuple[Seen, ...]:
    """What was found and fitted at a place in the pens of one filling system on the bench.

    Parameters
    ----------
    system : str
        Filling system key.
    place : str
        A key of `PLACES`.
    without : str
        A job that is left out: the one in hand.

    Returns
    -------
    tuple of Seen
        By job; a record that cannot be read is passed by (`pentools check` says why).
    """
    asked = ask_each(bench, lambda job: _seen(job, system, place), without=without)
    return tuple(seen for _, seen in asked if seen is not None)


def _seen(job: Job, system: str, place: str) -> Seen | None:
    if job.newest(ARRIVAL).system != system:
        return None
    was = fitted = ""
    for measured in (logged.values for logged in job.log(MEASURE) if logged.values.place == place):
        if measured.was or measured.was_outside or measured.was_length:
            was = _sized(measured.was or "", (measured.was_outside, "outside"), (measured.was_length, "long"))
    for trial in (logged.values for logged in job.log(TRIAL) if logged.values.place == place):
        if trial.happened == "pulls back" and trial.dry:
            fitted = _sized(trial.what or "", (trial.outside, "outside"), (trial.section, "section"))
    return Seen(job.name, system, place, was, fitted) if was or fitted else None


def _sized(words: str, *sizes: tuple[Reading | None, str]) -> str:
    shown = [f"{size.value:.2f} mm {word}" for size, word in sizes if size is not None]
    return ", ".join(part for part in (words, *shown) if part)
