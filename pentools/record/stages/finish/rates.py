"""What a bench's own logs say about its rates: measured stages of all its jobs, read without touching their files."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from pentools.calc.finish.grades import Grade
from pentools.calc.finish.rate import LogRow, RateLine, calibrate_rates
from pentools.calc.finish.reading import read_grade
from pentools.calc.finish.removal import mass_per_um_mg, removed_by_diameter_um, removed_by_mass_um, side_area_mm2
from pentools.errors import InputError, PentoolsError
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.kinds import MEASURE, PLAN, STEP, Step
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.storage import Record
from pentools.tables.abrasives import catalogue, materials, media
from pentools.units import Reading, read_quantity

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = [
    "MeasuredStage", "bench_log", "bench_rates", "diameter_u_mm", "job_log", "mass_per_um_of", "mass_u_g", "measured",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class MeasuredStage:
    """One stage with a measurement before and after it.

    Parameters
    ----------
    row : LogRow
        What it says about the rate.
    u_um : float
        Standard uncertainty of its removal [µm].
    usable : bool
        Whether the removal is at least twice its standard uncertainty; a smaller one says nothing about a rate.
    """

    row: LogRow
    u_um: float
    usable: bool


def bench_rates(bench: Bench, material: str, current: Job | None = None) -> RateLine:
    """The bench's own rates for a material, from the logs of all its jobs.

    Parameters
    ----------
    material : str
        A material of the abrasives' tables.
    current : Job or None
        The job that is open: its record is taken as it stands in memory.

    Returns
    -------
    RateLine
        Not calibrated under three usable measured stages.
    """
    rows = [stage.row for stage in bench_log(bench, current) if stage.usable]
    return calibrate_rates(rows, material, media(), basis="min")


def bench_log(bench: Bench, current: Job | None = None) -> tuple[MeasuredStage, ...]:
    """Every measured stage in the jobs of a bench.

    Parameters
    ----------
    current : Job or None
        The job that is open.

    Returns
    -------
    tuple of MeasuredStage
        Job by job in the order of their names; a job that cannot be read is passed over.
    """
    from pentools.record.job import RECORD_NAME

    found: list[MeasuredStage] = []
    for path in sorted(bench.folder.glob(f"*/{RECORD_NAME}")):
        if current is not None and path.resolve() == current.record.path.resolve():
            continue
        try:
            stat = path.stat()
            found += _job_log(bench.folder, _facts_key(bench), path, stat.st_mtime_ns, stat.st_size)
        except (OSError, PentoolsError):
            continue
    return (*found, *(job_log(current) if current is not None else ()))


def _facts_key(bench: Bench) -> tuple[str, ...]:
    named = (("caliper", "uncertainty"), ("balance", "readability"), ("balance", "repeatability"))
    return tuple(bench.text(table, key) for table, key in named)


@functools.lru_cache(maxsize=512)
def _job_log(folder: Path, facts: tuple[str, ...], path: Path, _changed: int, _size: int) -> tuple[MeasuredStage, ...]:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

    caliper, readability, repeatability = facts
    bench = Bench(
        folder,
        {"caliper": {"uncertainty": caliper}, "balance": {"readability": readability, "repeatability": repeatability}},
    )
    record = Record(path)  # not opened: another job's file is only read, never mended from here
    record.refresh()
    return job_log(Job(path.parent.name, path.parent, bench, record))


def job_log(job: Job) -> tuple[MeasuredStage, ...]:
    """The measured stages of one job.

    Returns
    -------
    tuple of MeasuredStage
        One for each run of steps with a single grade between two measurements at one place, by diameter or by mass,
        whichever is surer. Runs of several grades say nothing about one grade and are left out.
    """
    material = material_of(job)
    if material is None:
        return ()
    best: dict[tuple[str, ...], MeasuredStage] = {}
    for steps, removed_um, u_um in _brackets(job):
        row = _row([step for _, step in steps], removed_um, material)
        if row is None:
            continue
        key = tuple(entry_id for entry_id, _ in steps)
        if key not in best or u_um < best[key].u_um:
            best[key] = MeasuredStage(row, u_um, removed_um >= 2 * u_um)
    return tuple(best.values())


def measured(job: Job) -> tuple[dict[str, list[Reading]], dict[str, list[Reading]]]:
    """The measurements of a job: diameters by place and masses by what was weighed, each in order."""
    diameters: dict[str, list[Reading]] = {}
    masses: dict[str, list[Reading]] = {}
    for logged in job.log(MEASURE):
        seen = logged.values
        for place, value, kept in ((seen.station, seen.diameter, diameters), (seen.weighed, seen.mass, masses)):
            if value is not None:
                kept.setdefault(_name(place), []).append(value)
    return diameters, masses


def diameter_u_mm(job: Job, reading: Reading) -> float:
    """Standard uncertainty of a diameter [mm]: as typed after ±, else the bench's calliper."""
    return reading.standard_uncertainty or _bench(job, "caliper", "uncertainty", "mm", 0.02)


def mass_u_g(job: Job, reading: Reading) -> float:
    """Standard uncertainty of one weighing [g]: as typed after ±, else the balance's repeatability and digit."""
    if reading.standard_uncertainty:
        return reading.standard_uncertainty
    digit = _bench(job, "balance", "readability", "g", 0.01)
    return math.hypot(digit / math.sqrt(12), _bench(job, "balance", "repeatability", "g", digit))


def mass_per_um_of(job: Job) -> float | None:
    """Mass of one micrometre of the polished stretch [mg/µm]; None where size or density is not known."""
    plan, arrival = job.newest(PLAN), job.newest(ARRIVAL)
    length = plan.worked_length or arrival.barrel_mm
    diameter = plan.worked_diameter or arrival.barrel_outside_mm
    material = materials().get(material_of(job) or "")
    if length is None or diameter is None or material is None or not material.density_g_ml:
        return None
    return mass_per_um_mg(side_area_mm2(diameter.value, length.value), material.density_g_ml)


def _brackets(job: Job) -> list[tuple[list[tuple[str, Step]], float, float]]:
    """Steps, each with its entry's id, between two measurements at one place; removal [µm], standard uncertainty [µm]."""
    done = {logged.entry.id: logged.values for logged in job.log(STEP)}
    taken = {logged.entry.id: logged.values for logged in job.log(MEASURE)}
    per_um = mass_per_um_of(job)
    last: dict[tuple[str, str], tuple[Reading, int]] = {}
    steps: list[tuple[str, Step]] = []
    found = []
    for entry in job.record.live("finish"):
        if entry.id in done:
            steps.append((entry.id, done[entry.id]))
        if entry.id not in taken:
            continue
        seen = taken[entry.id]
        for way, place, reading in (("diameter", seen.station, seen.diameter), ("mass", seen.weighed, seen.mass)):
            if reading is None:
                continue
            before = last.get((way, _name(place)))
            last[way, _name(place)] = (reading, len(steps))
            if before is None or before[1] == len(steps):
                continue
            change = _change(job, way, before[0], reading, per_um)
            if change is not None:
                found.append((steps[before[1] :], *change))
    return found


def _change(job: Job, name: str, before: Reading, after: Reading, per_um: float | None) -> tuple[float, float] | None:
    if name == "diameter":
        u = 500 * math.hypot(diameter_u_mm(job, before), diameter_u_mm(job, after))
        return removed_by_diameter_um(before.value, after.value), u
    if per_um is None:
        return None
    u = 1000 * math.hypot(mass_u_g(job, before), mass_u_g(job, after)) / per_um
    return removed_by_mass_um(before.value, after.value, per_um), u


def _row(steps: list[Step], removed_um: float, material: str) -> LogRow | None:
    try:
        grades: list[Grade] = [read_grade(step.grade or "", catalogue()) for step in steps]
    except InputError:
        return None
    minutes = [step.minutes.value for step in steps if step.minutes is not None]
    if len({(g.scale, g.name) for g in grades}) != 1 or len(minutes) != len(steps):
        return None
    if removed_um <= 0 or sum(minutes) <= 0 or len({step.zone for step in steps}) != 1:
        return None
    wet, fresh = steps[0].wet, steps[0].fresh
    return LogRow(
        material, grades[0], removed_um, sum(minutes), "min",
        None if wet is None else wet == "wet", None if fresh is None else fresh == "fresh",
    )  # fmt: skip


def _bench(job: Job, table: str, key: str, unit: str, otherwise: float) -> float:
    text = job.bench.text(table, key)
    return read_quantity(text, unit, name=f"[{table}] {key}").value if text else otherwise


def _name(place: str | None) -> str:
    return " ".join((place or "").casefold().split())
