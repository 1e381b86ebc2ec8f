"""After the fit: the clock of the sealant, the tests of the seal and what they point to, and tools to be found again."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.seal.faults import FaultTree, Mechanism, suspect_seal
from pentools.calc.seal.friction import ring_friction
from pentools.calc.seal.knockout import KnockoutTool, Tube
from pentools.calc.seal.proof import SpringBack, VacuumDecay, spring_back, vacuum_decay
from pentools.errors import InputError, RecordError
from pentools.fields import Value
from pentools.record.entries import now
from pentools.record.stages.seal.kinds import SEALANT, TOOL, millimetres, place_words
from pentools.record.stages.seal.measure import gland_of, measured
from pentools.record.stages.seal.trials import trials
from pentools.record.storage import Record
from pentools.sums.base import SumAnswer
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.tables import seals
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.entries import Entry
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
    "tools_on_bench",
]  # fmt: skip


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
    values : mapping of str to Value
        Its entry.
    words : str
        The tool with its dimensions, in words.
    fits : bool or None
        Whether it does for the window asked about; None where none was asked or it cannot be told.
    """

    job: str
    values: Mapping[str, Value]
    words: str
    fits: bool | None = None


def earliest_next_step(job: Job) -> NextStep | None:
    """When the last sealant will have set.

    Parameters
    ----------
    job : Job
        The job.

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
    for entry, values in job.log("seal", "sealant"):
        cure, open_time, ago = values["cure"], values["open_time"], values["ago"]
        if not isinstance(cure, Reading):
            continue
        first = job.record.history(entry)[0]  # a correction does not start the clock again
        start = first.time - dt.timedelta(minutes=ago.value if isinstance(ago, Reading) else 0)
        workable = start + dt.timedelta(minutes=open_time.value) if isinstance(open_time, Reading) else None
        what = SEALANT.field("sealant").shown(values["sealant"])
        steps.append(NextStep(start + dt.timedelta(hours=cure.value), what, place_words(values["place"]), workable))
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


def mechanism_of(job: Job) -> Mechanism:
    """What can leak in this pen, and the tests that can be made on it: by its filling system, or by the seals at work.

    Where the system is not named only what every pen has is suspected, apart from parts that were measured or tried.
    """
    known = seals.faults().mechanisms
    system = str(job.values("intake", "arrival")["system"])
    if system in known:
        return known[system]
    used = {str(v["place"]) for kind in ("measure", "trial") for _, v in job.log("seal", kind)}
    for places, stand_in in (
        ({"packing", "stack"}, "plunger-vacuum"),
        ({"sac"}, "lever-sac"),
        ({"head", "washer", "cork"}, "piston"),
    ):
        if used & places:
            return known[stand_in]
    return known["any"]


def proofs_done(job: Job) -> tuple[ProofDone, ...]:
    """Every test with its result, in order.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of ProofDone
        Those from before the last trial or sealant do not count any more.
    """
    order = {entry.id: number for number, entry in enumerate(job.record.live("seal"))}
    changed = [order[e.id] for kind in ("trial", "sealant") for e, _ in job.log("seal", kind)]
    since = max(changed, default=-1)
    return tuple(_test(job, entry, values, order[entry.id] > since) for entry, values in job.log("seal", "test"))


def results_that_count(job: Job) -> dict[str, str]:
    """The newest result of each test since the last trial or sealant."""
    return {test.test: test.result for test in proofs_done(job) if test.counts and test.result}


def _test(job: Job, entry: Entry, values: Mapping[str, Value], counts: bool) -> ProofDone:
    name = str(values["test"])
    result = str(values[f"{name.replace('-', '_')}_seen"] or "")
    findings: tuple[Finding, ...] = ()
    try:
        judged = _judged(job, name, values)
    except InputError as error:
        return ProofDone(entry.id, name, "", (Finding("warning", str(error), "test"),), counts)
    if judged is not None:
        findings = judged.findings
        result = "" if judged.verdict == "not told" else judged.verdict
    return ProofDone(entry.id, name, result, findings, counts)


def _judged(job: Job, name: str, values: Mapping[str, Value]) -> SpringBack | VacuumDecay | None:
    if name == "spring-back":
        pushed, returned = millimetres(values, "pushed"), millimetres(values, "returned")
        if pushed is None or returned is None:
            return None
        bore, drag = _drag(job)
        return spring_back(
            pushed, returned, bore_mm=bore, drag_n=drag, rod_mm=millimetres(measured(job, "packing"), "rod") or 0.0
        )
    if name == "vacuum":
        numbers = [millimetres(values, field) for field in ("volume", "vacuum_start", "vacuum_end", "seconds", "gauge")]
        volume, start, end, seconds, gauge = numbers
        if volume is None or start is None or end is None or seconds is None:
            return None
        return vacuum_decay(volume, start, end, seconds, gauge_kpa=1.0 if gauge is None else gauge)
    return None


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


def suspects(job: Job) -> FaultTree | None:
    """Which seal the pattern of tests points to.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    FaultTree or None
        None where no test counts; never a name from one test alone.
    """
    results = results_that_count(job)
    return suspect_seal(results, mechanism_of(job).system, seals.faults()) if results else None


def tool_window(values: Mapping[str, Value]) -> SumAnswer | None:
    """The window of a knock-out tube from feed and section.

    Parameters
    ----------
    values : mapping of str to Value
        Values of a tool entry, or of its form.

    Returns
    -------
    SumAnswer or None
        None where tail, shoulder or bore was not measured.

    Raises
    ------
    InputError
        If they contradict each other.
    """
    if any(values.get(name) is None for name in ("tail", "shoulder", "bore")):
        return None
    return KNOCKOUT.run({field.name: values.get(field.name) for field in KNOCKOUT.fields})


def tools_on_bench(bench: Bench, wanted: Mapping[str, Value] | None = None) -> tuple[ToolOnBench, ...]:
    """Tools made for any job on the bench.

    Parameters
    ----------
    bench : Bench
        The bench; the records of all its jobs are read.
    wanted : mapping of str to Value or None
        Feed and section of the pen in hand, as the tool's form has them: each tube is then held against its window.

    Returns
    -------
    tuple of ToolOnBench
        Those that fit first, then by job.
    """
    answer = tool_window(wanted) if wanted is not None else None
    found = []
    for path in sorted(bench.folder.glob("*/record.jsonl")):
        record = Record(path)
        record.refresh()  # only read: another job's file is not mended from here
        for entry in record.live("seal", "tool"):
            try:
                values = TOOL.values(entry)
            except RecordError:
                continue
            fits = None if answer is None else _tool_fits(values, answer)
            found.append(ToolOnBench(path.parent.name, values, _tool_words(values), fits))
    return tuple(sorted(found, key=lambda tool: (tool.fits is not True, tool.job)))


def _tool_words(values: Mapping[str, Value]) -> str:
    sizes = (
        ("inside_made", "inside"), ("outside_made", "outside"), ("length_made", "long"), ("hole_made", "hole"),
    )  # fmt: skip
    shown = [f"{mm:.2f} mm {word}" for name, word in sizes if (mm := millimetres(values, name)) is not None]
    words = f"{TOOL.field('tool').shown(values['tool'])}: {', '.join(shown) or 'no dimension noted'}"
    return f"{words}, for {values['purpose']}" if values["purpose"] else words


def _tool_fits(values: Mapping[str, Value], answer: SumAnswer) -> bool | None:
    """Whether a tube, punch or block lies in the window; None where a dimension is missing or it is something else."""
    window, kind = answer.data, values["tool"]
    if kind == "block":
        hole, low, high = millimetres(values, "hole_made"), window["block_low_mm"], window["block_high_mm"]
        return None if hole is None or low is None or high is None else low <= hole <= high
    outside, length = millimetres(values, "outside_made"), millimetres(values, "length_made")
    inside = 0.0 if kind == "punch" else millimetres(values, "inside_made")
    tool = answer.result
    if kind not in ("tube", "punch") or outside is None or inside is None or not isinstance(tool, KnockoutTool):
        return None
    if length is not None and length < tool.reach_mm:
        return False
    return tool.does(Tube(inside, outside))
