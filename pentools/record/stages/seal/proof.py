"""After the fit: the clock of the sealant, the tests of the seal and what they point to, and tools to be found again."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import TYPE_CHECKING

import msgspec

from pentools.calc.base.findings import Finding
from pentools.calc.seal.faults import FaultTree, Mechanism, suspect_seal
from pentools.calc.seal.friction import ring_friction
from pentools.calc.seal.knockout import KnockoutTool, Tube
from pentools.calc.seal.proof import SpringBack, VacuumDecay, spring_back, vacuum_decay
from pentools.errors import InputError
from pentools.record.each import ask_each
from pentools.record.entries import now
from pentools.record.forms import Logged
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, SEALANT, TEST, TOOL, TRIAL, SealTest, Tool, place_words
from pentools.record.stages.seal.measure import gland_of, in_mm, measured
from pentools.record.stages.seal.trials import trials
from pentools.record.stages.treatment.facts import materials_of
from pentools.record.view import once_a_state
from pentools.sums.base import SumAnswer
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.tables import seals

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = [
    "NextStep",
    "ProofDone",
    "ToolOnBench",
    "clock_words",
    "earliest_next_step",
    "mechanism_of",
    "proofs_done",
    "results_that_count",
    "suspects",
    "tool_window",
    "tool_words",
    "tools_on_bench",
    "with_section_material",
]  # fmt: skip

GAUGE_KPA = 1.0


@dataclass(frozen=True, slots=True)
class NextStep:
    """When the work may go on after a sealant.

    Parameters
    ----------
    at : datetime
        The earliest moment.
    sealant, place : str
        What has to set, and where, in words.
    open_until : datetime or None
        Until when it can still be worked; None where that was not given.
    """

    at: dt.datetime
    sealant: str
    place: str
    open_until: dt.datetime | None


@dataclass(frozen=True, slots=True)
class ProofDone:
    """One test with its result.

    Parameters
    ----------
    entry_id : str
        Its entry.
    test : str
        Its name in the fault tree.
    result : str
        Its result there; empty where it cannot be told.
    findings : tuple of Finding
        What the readings say by themselves.
    counts : bool
        Whether it was made since the last trial or sealant.
    """

    entry_id: str
    test: str
    result: str
    findings: tuple[Finding, ...]
    counts: bool


@dataclass(frozen=True, slots=True)
class ToolOnBench:
    """A tool made for some job.

    Parameters
    ----------
    job : str
        The job it was made for.
    values : Tool
        Its entry.
    words : str
        The tool with its dimensions, in words.
    fits : bool or None
        Whether it does for the window asked about; None where none was asked or it cannot be told.
    """

    job: str
    values: Tool
    words: str
    fits: bool | None = None


@once_a_state
def earliest_next_step(job: Job) -> NextStep | None:
    """When the last sealant will have set.

    Returns
    -------
    NextStep or None
        The latest of all sealants with a setting time; None where there is none.

    Notes
    -----
    The setting time is the one that was typed from the label or from an own trial: the kit holds no figure of its own,
    since it hangs on the layer, the cut and the room.
    """
    steps = []
    for logged in job.log(SEALANT):
        values = logged.values
        if values.cure is None:
            continue
        first = job.first(logged.entry)  # a correction does not start the clock again
        start = first.time - dt.timedelta(minutes=0 if values.ago is None else values.ago.value)
        workable = None if values.open_time is None else start + dt.timedelta(minutes=values.open_time.value)
        what = SEALANT.field("sealant").shown(values.sealant)
        steps.append(NextStep(start + dt.timedelta(hours=values.cure.value), what, place_words(values.place), workable))
    return max(steps, key=lambda step: step.at, default=None)


def clock_words(step: NextStep, moment: dt.datetime | None = None) -> str:
    """The clock as one sentence.

    Parameters
    ----------
    step : NextStep
        From `earliest_next_step`.
    moment : datetime or None
        The time it is; now by default.

    Returns
    -------
    str
        How long to wait, or that it has set.
    """
    time = moment or now()
    if step.at <= time:
        return f"The {step.sealant} at the {step.place} has had its time since {step.at:%d %B %H:%M}."
    minutes = round((step.at - time).total_seconds() / 60)
    wait = f"{minutes} min" if minutes < 120 else f"{minutes / 60:.0f} h"
    workable = ""
    if step.open_until is not None and step.open_until > time:
        workable = f" It can still be worked until {step.open_until:%H:%M}."
    return f"Earliest next step: {step.at:%d %B %H:%M}, in {wait}; the {step.sealant} at the {step.place} has to set.{workable}"


@once_a_state
def mechanism_of(job: Job) -> Mechanism:
    """What can leak in this pen, and the tests that can be made on it: by its filling system, or by the seals at work.

    Where the system is not named only what every pen has is suspected, apart from parts that were measured or tried.
    """
    known = seals.faults().mechanisms
    named = known.get(job.newest(ARRIVAL).system or "")
    if named is not None:
        return named
    used = {logged.values.place for logged in job.log(MEASURE)} | {logged.values.place for logged in job.log(TRIAL)}
    for places, stand_in in (
        ({"packing", "stack"}, "plunger-vacuum"),
        ({"sac"}, "lever-sac"),
        ({"head", "washer", "cork"}, "piston"),
    ):
        if used & places:
            return known[stand_in]
    return known["any"]


@once_a_state
def proofs_done(job: Job) -> tuple[ProofDone, ...]:
    """Every test with its result, in order.

    Returns
    -------
    tuple of ProofDone
        Those from before the last trial or sealant do not count any more.
    """
    order = {entry.id: number for number, entry in enumerate(job.record.live("seal"))}
    since = max((order[logged.entry.id] for kind in (TRIAL, SEALANT) for logged in job.log(kind)), default=-1)
    return tuple(_test(job, logged, order[logged.entry.id] > since) for logged in job.log(TEST))


def results_that_count(job: Job) -> dict[str, str]:
    """The newest result of each test since the last trial or sealant."""
    return {test.test: test.result for test in proofs_done(job) if test.counts and test.result}


def _test(job: Job, logged: Logged[SealTest], counts: bool) -> ProofDone:
    values, entry_id = logged.values, logged.entry.id
    name = values.test or ""
    try:
        judged = _judged(job, values)
    except InputError as error:
        return ProofDone(entry_id, name, "", (Finding("warning", "seal.test", sentence=str(error)),), counts)
    if judged is None:
        return ProofDone(entry_id, name, values.seen, (), counts)
    return ProofDone(entry_id, name, "" if judged.verdict == "not told" else judged.verdict, judged.findings, counts)


def _judged(job: Job, values: SealTest) -> SpringBack | VacuumDecay | None:
    if values.test == "spring-back" and values.pushed is not None and values.returned is not None:
        bore, drag = _drag(job)
        rod = in_mm(measured(job, "packing").rod) or 0.0
        return spring_back(values.pushed.value, values.returned.value, bore_mm=bore, drag_n=drag, rod_mm=rod)
    start, end, seconds = values.vacuum_start, values.vacuum_end, values.seconds
    if values.test != "vacuum" or values.volume is None or start is None or end is None or seconds is None:
        return None
    gauge = GAUGE_KPA if values.gauge is None else values.gauge.value
    return vacuum_decay(values.volume.value, start.value, end.value, seconds.value, gauge_kpa=gauge)


def _drag(job: Job) -> tuple[float | None, float | None]:
    """Bore and estimated drag of the head's ring that was tried last; None for what is not known."""
    gland = gland_of(job, "head")
    done = [t for t in trials(job, "head") if t.size_mm is not None]
    if gland is None or not done or done[-1].size_mm is None:
        return None, None
    section = (done[-1].size_mm - gland.inner_mm) / 2
    squeeze = 1 - gland.depth_mm / section
    if not 0 < squeeze <= 0.5:
        return None, None
    return gland.outer_mm, ring_friction(gland.inner_mm + gland.depth_mm, section, squeeze).running_n


@once_a_state
def suspects(job: Job) -> FaultTree | None:
    """Which seal the pattern of tests points to.

    Returns
    -------
    FaultTree or None
        None where no test counts; never a name from one test alone.
    """
    results = results_that_count(job)
    return suspect_seal(results, mechanism_of(job).system, seals.faults()) if results else None


def tool_window(values: Tool) -> SumAnswer | None:
    """The window of a knock-out tube from feed and section; None where tail, shoulder or bore was not measured.

    Raises
    ------
    InputError
        If they contradict each other.
    """
    if values.tail is None or values.shoulder is None or values.bore is None:
        return None
    return KNOCKOUT.run({field.name: getattr(values, field.name) for field in KNOCKOUT.fields})


def with_section_material(job: Job, wanted: Tool) -> Tool:
    """The tool's form with the section's material as the job names it, where it was not typed: it decides on soaking."""
    named = materials_of(job, "section")
    if wanted.material is not None or not named:
        return wanted
    return msgspec.structs.replace(wanted, material=" and ".join(named))


def tools_on_bench(bench: Bench, wanted: Tool | None = None) -> tuple[ToolOnBench, ...]:
    """Tools made for any job on the bench, read from the records of all its jobs.

    Parameters
    ----------
    wanted : Tool or None
        Feed and section of the pen in hand, as the tool's form has them: each tube is then held against its window.

    Returns
    -------
    tuple of ToolOnBench
        Those that fit first, then by job.
    """
    answer = None if wanted is None else tool_window(wanted)
    found = []
    for name, tools in ask_each(bench, lambda job: job.log(TOOL)):
        for values in (logged.values for logged in tools or ()):
            fits = None if answer is None else _tool_fits(values, answer)
            found.append(ToolOnBench(name, values, tool_words(values), fits))
    return tuple(sorted(found, key=lambda tool: (tool.fits is not True, tool.job)))


def tool_words(values: Tool) -> str:
    """A tool with its sizes and what it is for, as a clause."""
    sizes = (
        (values.inside_made, "inside"), (values.outside_made, "outside"), (values.length_made, "long"),
        (values.hole_made, "hole"),
    )  # fmt: skip
    shown = [f"{size.value:.2f} mm {word}" for size, word in sizes if size is not None]
    words = f"{TOOL.field('tool').shown(values.tool)}: {', '.join(shown) or 'no dimension noted'}"
    return f"{words}, for {values.purpose}" if values.purpose else words


def _tool_fits(values: Tool, answer: SumAnswer) -> bool | None:
    """Whether a tube, punch or block lies in the window; None where a dimension is missing or it is something else."""
    window = answer.result
    if not isinstance(window, KnockoutTool):
        return None
    if values.tool == "block":
        hole, low, high = in_mm(values.hole_made), window.block_low_mm, window.block_high_mm
        return None if hole is None or low is None or high is None else low <= hole <= high
    outside, length = in_mm(values.outside_made), in_mm(values.length_made)
    inside = 0.0 if values.tool == "punch" else in_mm(values.inside_made)
    if values.tool not in ("tube", "punch") or outside is None or inside is None:
        return None
    if length is not None and length < window.reach_mm:
        return False
    return window.does(Tube(inside, outside))
