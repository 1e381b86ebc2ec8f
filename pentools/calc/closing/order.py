"""In which order a pen goes together, what is tested before the next step, and what closes over something untested."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import msgspec

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.order import Hold, HoldRow, missing_before, named_holds, steps_of
from pentools.errors import InputError

__all__ = ["ClosingOrder", "ClosingRow", "ClosingState", "ClosingStep", "Did", "closing_order"]

Undone = Literal["yes", "partly", "no"]
ClosingState = Literal["done", "untested", "failed", "open", "early", "held", "not needed"]


class ClosingRow(msgspec.Struct, frozen=True):
    """One row of the table ``closing_steps``: what is done, what it waits for, and the test that lets the next one go."""

    system: str
    step: int
    key: str
    part: str
    action: str
    hold: tuple[str, ...]
    gives: str
    test: str
    passes: str
    closes: bool
    undone: Undone
    caution: str
    uses: tuple[str, ...]
    clock: str
    value: str
    only_with: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class Did:
    """Something that was done, in the order of time.

    Parameters
    ----------
    key : str
        The step's key.
    passed : bool or None
        Whether its test passed; None where it was not tested.
    """

    key: str
    passed: bool | None = None


@dataclass(frozen=True, slots=True)
class ClosingStep:
    """One step of putting a pen together.

    Parameters
    ----------
    row : ClosingRow
        What the table says of it.
    before : tuple of Hold
        Everything that must be so first.
    gives : Hold
        What is so once its test has passed.
    state : ClosingState
        Done (and its test passed), untested (done, but its test is owed), failed (its test did not pass), open (its
        turn), early (not its turn yet), held (it would close over something untested), or not needed on this pen.
    missing : tuple of Hold
        What is not so yet.
    skipped : tuple of Hold
        What was not so when it was done.
    """

    row: ClosingRow
    before: tuple[Hold, ...]
    gives: Hold
    state: ClosingState
    missing: tuple[Hold, ...] = ()
    skipped: tuple[Hold, ...] = ()

    @property
    def untested(self) -> tuple[Hold, ...]:
        """What a closing step would shut in, or has shut in, untested; empty for a step that closes nothing."""
        return tuple(hold for hold in self.missing if not hold.from_outside) if self.row.closes else ()

    @property
    def test_words(self) -> str:
        """The test with its pass sign, as one text."""
        return f"{self.row.test} Passed: {self.row.passes}."


@dataclass(frozen=True, slots=True)
class ClosingOrder:
    """The order of work for one pen, as far as it has come.

    Parameters
    ----------
    system : str
        Key of the filling system.
    steps : tuple of ClosingStep
        All steps in order.
    findings : tuple of Finding
        What holds the next step, what was skipped, failed, or closed untested.
    """

    system: str
    steps: tuple[ClosingStep, ...]
    findings: tuple[Finding, ...]

    @property
    def next_step(self) -> ClosingStep | None:
        """The first step whose doing or testing is still owed; None when none is."""
        return _owed(self.steps)

    def step(self, key: str) -> ClosingStep:
        """The step of that key.

        Raises
        ------
        InputError
            If the order has none.
        """
        for step in self.steps:
            if step.row.key == key:
                return step
        raise InputError("step", "one of " + ", ".join(step.row.key for step in self.steps), key)


def closing_order(
    system: str,
    rows: Iterable[ClosingRow],
    holds: Iterable[HoldRow],
    *,
    did: Sequence[Did] = (),
    met: Collection[str] = (),
    left_out: Collection[str] = (),
) -> ClosingOrder:
    """The order of putting a pen together, with what each step waits for.

    Parameters
    ----------
    system : str
        Key of the filling system.
    rows : iterable of ClosingRow
        The table ``closing_steps``.
    holds : iterable of HoldRow
        The table ``closing_holds``.
    did : sequence of Did
        What was done and tested, in the order of time; a step named again was done or tested anew.
    met : collection of str
        Keys of conditions that are so from outside, or were found so on the way.
    left_out : collection of str
        Keys of steps that this pen does not need; only those that the table holds for optional are passed over, and
        what they would give is given.

    Returns
    -------
    ClosingOrder
        Every step with its state.

    Raises
    ------
    InputError
        If there are no steps for the system, or a key is not known.

    Notes
    -----
    A step waits until every condition before it is met: from outside, or by an earlier step whose test has passed.
    A step that is merely not its turn is asked about; one that closes something in is held while anything behind it is
    untested. A test that fails takes back what its step gave. Orders are common practice, some from memory; pens of one
    system differ, so each is looked at first.

    Examples
    --------
    >>> row = dict(part="", action="", test="", passes="", undone="yes", caution="", uses=(), clock="", value="",
    ...            only_with="", source="x", certainty="y")
    >>> rows = [ClosingRow(system="s", step=1, key="cut", hold=(), gives="clears", closes=False, **row),
    ...         ClosingRow(system="s", step=2, key="glue", hold=("clears",), gives="tight", closes=True, **row)]
    >>> holds = [HoldRow("clears", False, "It clears.", ""), HoldRow("tight", False, "It is tight.", "")]
    >>> [step.state for step in closing_order("s", rows, holds, did=[Did("cut")]).steps]
    ['untested', 'held']
    """
    known = named_holds(holds)
    own = steps_of(system, rows)
    _refuse_unknown(own, did, met, left_out, known)
    spared = {row.key for row in own if row.only_with and row.key in left_out}
    given = set(met) | {row.gives for row in own if row.key in spared}
    skipped, last = _walk({row.key: row for row in own}, did, given, known)
    made = tuple(_step(row, known, spared=spared, last=last, given=given, skipped=skipped) for row in own)
    return ClosingOrder(system, made, gravest_first(_findings(made)))


def _refuse_unknown(
    own: Sequence[ClosingRow],
    did: Sequence[Did],
    met: Collection[str],
    left_out: Collection[str],
    known: Mapping[str, Hold],
) -> None:
    keys = [row.key for row in own]
    for key in (*(one.key for one in did), *left_out):
        if key not in keys:
            raise InputError("step", "one of " + ", ".join(keys), key)
    for key in met:
        if key not in known:
            raise InputError("condition", "one of " + ", ".join(known), key)


def _walk(
    rows: Mapping[str, ClosingRow], did: Sequence[Did], given: set[str], known: Mapping[str, Hold]
) -> tuple[dict[str, tuple[Hold, ...]], dict[str, bool | None]]:
    """What was missing when each step was done, and how its last test went; `given` grows with what passed."""
    skipped: dict[str, tuple[Hold, ...]] = {}
    last: dict[str, bool | None] = {}
    for one in did:
        row = rows[one.key]
        if one.key not in last:
            skipped[one.key] = missing_before(row, given, known)
        last[one.key] = one.passed
        if one.passed is True:
            given.add(row.gives)
        else:
            given.discard(row.gives)
    return skipped, last


def _step(
    row: ClosingRow,
    known: Mapping[str, Hold],
    *,
    spared: set[str],
    last: Mapping[str, bool | None],
    given: set[str],
    skipped: Mapping[str, tuple[Hold, ...]],
) -> ClosingStep:
    missing = missing_before(row, given, known)
    before = tuple(known[key] for key in row.hold)
    state = _state(row, missing, spared, last)
    return ClosingStep(row, before, known[row.gives], state, missing, skipped.get(row.key, ()))


def _state(
    row: ClosingRow, missing: Sequence[Hold], spared: Collection[str], last: Mapping[str, bool | None]
) -> ClosingState:
    if row.key in last:
        passed = last[row.key]
        return "untested" if passed is None else "done" if passed else "failed"
    if row.key in spared:
        return "not needed"
    if row.closes and any(not hold.from_outside for hold in missing):
        return "held"
    return "early" if missing else "open"


def _owed(steps: Iterable[ClosingStep]) -> ClosingStep | None:
    return next((step for step in steps if step.state not in ("done", "not needed")), None)


def _findings(steps: tuple[ClosingStep, ...]) -> Iterator[Finding]:
    for step in steps:
        if step.state in ("done", "untested", "failed"):
            yield from _of_done(step)
    coming = _owed(steps)
    if coming is None:
        yield Finding("ok", "closing.together")
    else:
        yield from _of_coming(coming)


def _of_done(step: ClosingStep) -> Iterator[Finding]:
    row = step.row
    if step.state == "failed":
        yield Finding("stop", "closing.failed", number=row.step, part=row.part, passes=row.passes, undone=row.undone)
    if step.untested:
        yield Finding("stop", "closing.shut", number=row.step, part=row.part, missing=_said(step.untested))
    elif any(not hold.from_outside for hold in step.skipped):
        yield Finding("warning", "closing.skipped", number=row.step, part=row.part, missing=_said(step.skipped))
    elif step.skipped:  # who was asked and went on has said that it was so
        yield Finding("note", "closing.unsaid", number=row.step, part=row.part, missing=_said(step.skipped))


def _of_coming(coming: ClosingStep) -> Iterator[Finding]:
    row = coming.row
    if coming.state == "untested":
        yield Finding("warning", "closing.untested", number=row.step, part=row.part, test=row.test, passes=row.passes)
    elif coming.state == "held":
        yield Finding("stop", "closing.held", number=row.step, part=row.part, missing=_said(coming.untested))
    elif coming.state == "early":
        yield Finding("note", "closing.early", number=row.step, part=row.part, missing=_said(coming.missing))
    if row.undone != "yes" and coming.state != "failed":
        yield Finding("note", f"closing.undone-{row.undone}", number=row.step, part=row.part)
    if row.certainty == "from memory":
        yield Finding("note", "closing.memory", number=row.step, part=row.part)


def _said(holds: Iterable[Hold]) -> tuple[str, ...]:
    return tuple(hold.condition for hold in holds)
