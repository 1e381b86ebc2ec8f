"""An invented bench of any size, for trials and tests: plausible pens with scatter, and all that is true of them."""

from __future__ import annotations

import datetime as dt
import os
import random
from pathlib import Path

import msgspec

from pentools.books.invented.lines import lines_of
from pentools.books.invented.pens import RATE, draw_truth
from pentools.books.invented.truth import Rates, TruePen, Truth
from pentools.errors import InputError, RecordError
from pentools.record.appending import what_failed
from pentools.record.job import RECORD_NAME

__all__ = ["TRUTH_NAME", "Rates", "TruePen", "Truth", "invent_bench", "read_truth"]

TRUTH_NAME = "truth.json"
MOST_PENS = 100_000
_FACTS = f"""\
# An invented bench: every pen, owner, place and figure on it is made up.

[bench]
name = "An invented bench"

[money]
currency = "EUR"
rate_per_hour = {RATE}.0

[balance]
readability = "0.01 g"

[caliper]
uncertainty = "0.005 mm"
"""


def invent_bench(
    folder: str | os.PathLike[str],
    pens: int,
    *,
    seed: int = 1,
    entries: int | None = None,
    until: dt.date = dt.date(2026, 10, 31),
    rates: Rates | None = None,
) -> Truth:
    """Make an invented bench.

    Parameters
    ----------
    folder : path
        Where; it must be empty or not be there yet.
    pens : int
        Jobs, 1 to 100,000, those of pens that come back among them.
    seed : int
        The same seed makes the same bench, byte for byte.
    entries : int or None
        At least so many lines a job; by default as many as its story has (about 25 to 60).
    until : date
        The day on which the bench is looked at; what would be later is not written, so that some jobs are under way.
    rates : Rates or None
        Spreads and rates that the pens are drawn with; the usual ones by default.

    Returns
    -------
    Truth
        What is true of every pen; it is written to ``truth.json`` beside the jobs too.

    Raises
    ------
    InputError
        If the number of pens is out of range, or something lies in the folder.
    RecordError
        If it cannot be written.

    Notes
    -----
    Each job is a folder with its record alone: no notebook, no pictures, so a check says that pictures are owed. Nothing
    is forced to disk, as it is for a real record.
    """
    if not 1 <= pens <= MOST_PENS:
        raise InputError("pens", f"1 to {MOST_PENS:,}", str(pens))
    place = Path(folder)
    if place.exists() and any(place.iterdir()):
        raise InputError(
            "folder", "empty or not there yet", str(place), "An invented bench never mixes with a real one."
        )
    truth = draw_truth(pens, seed, until, rates or Rates())
    try:
        _write(place, truth, entries)
    except OSError as error:
        raise RecordError(f"The bench cannot be written to {place} ({what_failed(error)}).") from error
    return truth


def read_truth(folder: str | os.PathLike[str]) -> Truth:
    """What is true of an invented bench, as it was written beside its jobs.

    Raises
    ------
    RecordError
        If there is no such file, or it is none.
    """
    try:
        return msgspec.json.decode((Path(folder) / TRUTH_NAME).read_bytes(), type=Truth)
    except (OSError, msgspec.MsgspecError) as error:
        raise RecordError(f"{Path(folder) / TRUTH_NAME} cannot be read: is the bench an invented one?") from error


def _write(place: Path, truth: Truth, entries: int | None) -> None:
    place.mkdir(parents=True, exist_ok=True)
    (place / "bench.toml").write_text(_FACTS, encoding="utf-8")
    by_name = {pen.job: pen for pen in truth.pens}
    for pen in truth.pens:
        rng = random.Random(f"{truth.seed}/{pen.job}")  # noqa: S311 - a trial, not a secret
        lines = lines_of(pen, truth, by_name, rng, entries)
        (place / pen.job).mkdir()
        (place / pen.job / RECORD_NAME).write_bytes(lines)
    (place / TRUTH_NAME).write_bytes(msgspec.json.encode(truth))
