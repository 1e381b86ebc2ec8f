"""The nib on paper from the record: width of its line, start, flow and flex, each as found and after the work."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.nib.flow import Flow, flow_change
from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import InputError
from pentools.fields import Value
from pentools.record.forms import Form
from pentools.record.kinds import Kind, as_dict
from pentools.record.stages.nib.kinds import FLEX_TEST, FLOW_TEST, LINES, START, WRITING, FlexTest
from pentools.record.stages.treatment.facts import materials_of
from pentools.record.stages.weighing.filling import setup_values
from pentools.record.view import once_a_state
from pentools.sums.nib.flex import FLEX, ceiling_for
from pentools.sums.nib.flow import FLOW

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer
    from pentools.units import Reading

__all__ = [
    "Writes",
    "answer_of",
    "flex_of",
    "flex_past_limit",
    "flow_of",
    "metal_of",
    "newest",
    "paper_findings",
    "past_limit",
    "writes",
]

LINE_U_MM = 0.025
"""What a width without ± is known to [mm], one standard uncertainty: a loupe's scale (judged)."""
LEAST_M = 5.0
"""A rate of skips is one over so much line [m] (judged)."""
F = TypeVar("F", bound=Form)


@dataclass(frozen=True, slots=True)
class Writes:
    """What the nib writes.

    Parameters
    ----------
    when : str
        "found" or "after".
    line, pressed : Reading or None
        Width of its line and of a pressed one [mm]; None where they were not measured.
    ratio : float or None
        Widest over narrowest of one line.
    skips : int or None
        Places left empty; None where they were not counted.
    written_m : float or None
        Over so much line [m].
    ink, paper, wetness : str
        With what, on what, and how wet in a word; empty where nobody said.
    flow : SumAnswer or None
        Ink on a metre.
    start : Reading or None
        Way to the first full line after a rest [mm].
    drawn : bool
        Whether the scan was a drawing.
    """

    when: str
    line: Reading | None
    pressed: Reading | None
    ratio: float | None
    skips: int | None
    written_m: float | None
    ink: str
    paper: str
    wetness: str
    flow: SumAnswer | None
    start: Reading | None
    drawn: bool

    @property
    def skips_per_m(self) -> float | None:
        """Skips on a metre; None where they were not counted over five metres or more: of less it is no rate."""
        counted = self.skips is not None and self.written_m is not None and self.written_m >= LEAST_M
        return self.skips / self.written_m if counted and self.skips is not None and self.written_m else None

    @property
    def line_u_mm(self) -> float | None:
        """Standard uncertainty of the line's width [mm]; None where there is no line."""
        if self.line is None:
            return None
        u = self.line.standard_uncertainty
        return LINE_U_MM if u is None else u


def newest(job: Job, kind: Kind[F], when: str) -> F | None:
    """The newest entry of a kind as found or after the work, of either where that is empty; None where there is none."""
    found: list[F] = [one.values for one in job.log(kind) if not when or getattr(one.values, "when", None) == when]
    return found[-1] if found else None


@once_a_state
def writes(job: Job, when: str = "") -> Writes | None:
    """What the nib writes.

    Parameters
    ----------
    when : str
        "found" or "after"; empty: after the work, else as found.

    Returns
    -------
    Writes or None
        None where nothing was written with it.
    """
    if not when:
        return writes(job, "after") or writes(job, "found")
    test, lines, start = newest(job, WRITING, when), newest(job, LINES, when), newest(job, START, when)
    flow = flow_of(job, when)
    if test is None and lines is None and start is None and flow is None:
        return None
    return Writes(
        when,
        None if lines is None else lines.line,
        None if lines is None else lines.pressed,
        None if lines is None else lines.ratio,
        None if lines is None else lines.skips,
        None if lines is None or lines.written is None else lines.written.value,
        (test.ink if test is not None else None) or "",
        (test.paper if test is not None else None) or "",
        (test.wetness if test is not None else None) or "",
        flow,
        None if start is None else start.way,
        lines is not None and lines.drawn is True,
    )


@once_a_state
def flow_of(job: Job, when: str) -> SumAnswer | None:
    """Ink on a metre, with the balance of the fill test or the bench and the width of the line.

    Parameters
    ----------
    when : str
        "found" or "after".

    Returns
    -------
    SumAnswer or None
        None where it was not weighed.

    Raises
    ------
    InputError
        If the weighings contradict each other.
    """
    said = newest(job, FLOW_TEST, when)
    if said is None:
        return None
    lines = newest(job, LINES, when)
    balance = {name: value for name, value in setup_values(job).items() if name in ("readability", "repeatability")}
    return FLOW.run(
        {**FLOW.usual(), **balance, **_said(FLOW_TEST, said), "width": None if lines is None else lines.line}
    )


def metal_of(job: Job) -> str | None:
    """The nib's metal, as it was named at the opening; None where it was not, and then it counts as gold."""
    names = materials_of(job, "nib")
    if UNKNOWN in names:
        return None
    return "gold" if "gold nib" in names else "steel" if all("steel" in name for name in names) else "other"


@once_a_state
def flex_of(job: Job, when: str) -> SumAnswer | None:
    """How stiff the nib is.

    Parameters
    ----------
    when : str
        "found" or "after".

    Returns
    -------
    SumAnswer or None
        None where it was not tried.

    Raises
    ------
    InputError
        If the readings make no stiffness, or the nib was driven to its limit.
    """
    said = newest(job, FLEX_TEST, when)
    return None if said is None else answer_of(job, said)


def answer_of(job: Job, said: FlexTest) -> SumAnswer:
    """The flex sum's answer for a test, saved or not yet; the metal is that of the opening where it is not typed."""
    return FLEX.run({**FLEX.usual(), "metal": metal_of(job), **_said(FLEX_TEST, said)})


def _said(kind: Kind[F], form: F) -> dict[str, Value]:
    """What a test says, as its sum takes it."""
    return {name: value for name, value in as_dict(kind, form).items() if name != "when" and value is not None}


def past_limit(job: Job, said: FlexTest) -> str:
    """Why a test of flex is held, as a clause; empty where it is not.

    A load past what gold bears is held, and so is a test at the nib's limit, whatever its metal.
    """
    if said.maximum is True:
        return "a flexible nib is never driven to its limit (half a millimetre of extra width tells as much)"
    ceiling = ceiling_for(said.metal or metal_of(job))
    most = max((reading.value for reading in said.loads or ()), default=0.0)
    if ceiling.gold is not False and most > ceiling.most_gf:
        metal = "a gold nib" if ceiling.gold else "a nib of which nobody said the metal"
        return f"{most:.0f} gf is past the {ceiling.most_gf:.0f} gf that {metal} is loaded with"
    return ""


@once_a_state
def flex_past_limit(job: Job) -> bool:
    """Whether the record holds a test of flex that should not have been made."""
    return any(past_limit(job, logged.values) for logged in job.log(FLEX_TEST))


def paper_findings(job: Job) -> tuple[Finding, ...]:
    """What the tests on paper say, and whether they can be compared."""
    found: list[Finding] = []
    for when in ("found", "after"):
        for ask in (flow_of, flex_of):
            try:
                answer = ask(job, when)
            except InputError as error:
                found.append(Finding("warning", "nib.test-refused", sentence=str(error)))
                continue
            found += [] if answer is None else [f for f in answer.findings if f.level in ("warning", "stop")]
    before, after = newest(job, WRITING, "found"), newest(job, WRITING, "after")
    if before is not None and after is not None and (before.ink, before.paper) != (after.ink, after.paper):
        found.append(Finding("warning", "nib.unlike-test"))
    found += _changes(job)
    starts = [logged.values.starts for logged in job.log(START) if logged.values.starts is not None]
    if starts and starts[-1] < 10:
        found.append(Finding("warning", "nib.starts-few", starts=starts[-1]))
    return gravest_first(found)


def _changes(job: Job) -> list[Finding]:
    try:
        flows = [answer.result for when in ("found", "after") if (answer := flow_of(job, when)) is not None]
    except InputError:
        return []
    if len(flows) == 2 and all(isinstance(flow, Flow) for flow in flows):
        change = flow_change(*flows)  # type: ignore[arg-type]
        return [change] if change is not None else []
    return []
