"""In which order a pen comes apart, and what must be so before each step."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, Protocol, TypeVar

import msgspec

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import InputError

__all__ = [
    "Hold",
    "HoldRow",
    "OpeningOrder",
    "OpeningStep",
    "OrderRow",
    "StepRow",
    "StepState",
    "missing_before",
    "named_holds",
    "opening_order",
    "steps_of",
]

StepState = Literal["done", "open", "held", "not needed"]


class OrderRow(Protocol):
    """What an order of work is reckoned from, for opening as for closing."""

    @property
    def system(self) -> str:
        """Key of the filling system."""

    @property
    def step(self) -> int:
        """Its place in the order, from 1."""

    @property
    def hold(self) -> tuple[str, ...]:
        """Keys of what must be so before."""


Row = TypeVar("Row", bound=OrderRow)


class StepRow(msgspec.Struct, frozen=True):
    """One row of the table ``opening_steps``: what is done, the conditions it waits for, and the one it gives."""

    system: str
    step: int
    part: str
    action: str
    why: str
    hold: tuple[str, ...]
    gives: str
    turn: str
    caution: tuple[str, ...]
    only_with: str
    source: str
    certainty: str
    undone: str = ""


class HoldRow(msgspec.Struct, frozen=True):
    """One row of the table ``opening_holds``: a condition that stands before a step."""

    key: str
    from_outside: bool
    condition: str
    why: str


@dataclass(frozen=True, slots=True)
class Hold:
    """A condition that stands before a step.

    Parameters
    ----------
    key : str
        Its name.
    condition : str
        The condition, as a sentence.
    why : str
        What goes wrong otherwise.
    from_outside : bool
        Whether it is met from outside the order of work (known, agreed, at hand) and not by a step.
    """

    key: str
    condition: str
    why: str
    from_outside: bool


@dataclass(frozen=True, slots=True)
class OpeningStep:
    """One step of taking a pen apart.

    Parameters
    ----------
    number : int
        Its place in the order, from 1.
    part, action, why : str
        What is worked on, what is done, and why so.
    turn : str
        What is known of the thread's direction; empty where nothing is turned.
    cautions : tuple of str
        Keys of the cautions that apply.
    state : StepState
        Done, open (may be done now), held, or not needed on this pen.
    held_by : tuple of Hold
        The conditions that are not met.
    source, certainty : str
        Where the step is known from, and how sure that is.
    before : tuple of Hold
        Everything that must be so first, met or not.
    gives : Hold or None
        What is so once it is done.
    undone : str
        Whether it can be taken back without loss: yes, partly or no.
    """

    number: int
    part: str
    action: str
    why: str
    turn: str
    cautions: tuple[str, ...]
    state: StepState
    held_by: tuple[Hold, ...]
    source: str
    certainty: str
    before: tuple[Hold, ...] = ()
    gives: Hold | None = None
    undone: str = ""

    @property
    def may_be_left_hand(self) -> bool:
        """Whether left-hand threads are found at this part."""
        return "left-hand" in self.turn


@dataclass(frozen=True, slots=True)
class OpeningOrder:
    """The order of work for one pen, as far as it has come.

    Parameters
    ----------
    system : str
        Key of the filling system.
    steps : tuple of OpeningStep
        All steps in order.
    findings : tuple of Finding
        What holds the next step, and what was done out of order.
    """

    system: str
    steps: tuple[OpeningStep, ...]
    findings: tuple[Finding, ...]

    @property
    def next_step(self) -> OpeningStep | None:
        """The first step that is still to be done; None when none is."""
        return next((step for step in self.steps if step.state in ("open", "held")), None)


def opening_order(
    system: str,
    steps: Iterable[StepRow],
    holds: Iterable[HoldRow],
    *,
    done: Collection[int] = (),
    met: Collection[str] = (),
    without: Collection[str] = (),
) -> OpeningOrder:
    """The order of work for a filling system, with what holds each step.

    Parameters
    ----------
    system : str
        Key of the filling system.
    steps : iterable of StepRow
        The table ``opening_steps``.
    holds : iterable of HoldRow
        The table ``opening_holds``.
    done : collection of int
        Numbers of the steps that are done.
    met : collection of str
        Keys of the conditions that are met: those from outside, and any other that was found so on arrival.
    without : collection of str
        What this pen does not have, as the column only_with names it ("sealed joint"): steps that only such a pen
        needs are passed over, and what they would give is given.

    Returns
    -------
    OpeningOrder
        Every step with its state.

    Raises
    ------
    InputError
        If there are no steps for the system, or a number or a key is not known.

    Notes
    -----
    A step is held until every condition before it is met, from outside or by a step that is done. The order says
    nothing of force: a joint that does not give within the limits of its material stays closed, and "stopped" is a
    proper end. Orders are common practice; pens of one system differ, so each pen is looked at first.

    Examples
    --------
    >>> rows = [StepRow("s", 1, "bar", "Out.", "", (), "bar-out", "", (), "", "x", "y"),
    ...         StepRow("s", 2, "section", "Turn.", "", ("bar-out",), "", "", (), "", "x", "y")]
    >>> key = [HoldRow("bar-out", False, "The bar is out.", "It twists.")]
    >>> [step.state for step in opening_order("s", rows, key).steps]
    ['open', 'held']
    """
    known = named_holds(holds)
    own = steps_of(system, steps)
    _refuse_unknown(done, met, len(own), known)
    spared = {row.step for row in own if row.only_with and row.only_with in without}
    passed = spared | set(done)
    given = set(met) | {row.gives for row in own if row.step in passed and row.gives}
    made = tuple(_step(row, done, spared, given, known) for row in own)
    return OpeningOrder(system, made, gravest_first(_findings(made)))


def named_holds(rows: Iterable[HoldRow]) -> dict[str, Hold]:
    """The conditions of a table by their keys."""
    return {row.key: Hold(row.key, row.condition, row.why, row.from_outside) for row in rows}


def steps_of(system: str, rows: Iterable[Row]) -> list[Row]:
    """The steps of a filling system in their order.

    Parameters
    ----------
    system : str
        Key of the filling system.
    rows : iterable of OrderRow
        A table of steps.

    Returns
    -------
    list of OrderRow
        By their numbers.

    Raises
    ------
    InputError
        If there are no steps for the system.
    """
    all_rows = list(rows)
    own = sorted((row for row in all_rows if row.system == system), key=lambda row: row.step)
    if not own:
        raise InputError("filling system", "one of " + ", ".join(dict.fromkeys(r.system for r in all_rows)), system)
    return own


def missing_before(row: OrderRow, given: Collection[str], known: Mapping[str, Hold]) -> tuple[Hold, ...]:
    """The conditions before a step that are not met, in the table's order."""
    return tuple(known[key] for key in row.hold if key not in given)


def _refuse_unknown(done: Collection[int], met: Collection[str], count: int, known: Mapping[str, Hold]) -> None:
    for number in done:
        if not 1 <= number <= count:
            raise InputError("step", f"1 to {count}", number)
    for key in met:
        if key not in known:
            raise InputError("condition", "one of " + ", ".join(known), key)


def _step(
    row: StepRow, done: Collection[int], spared: set[int], given: set[str], known: Mapping[str, Hold]
) -> OpeningStep:
    missing = missing_before(row, given, known)
    number = row.step
    state: StepState = "done" if number in done else "not needed" if number in spared else "held" if missing else "open"
    return OpeningStep(
        number,
        row.part,
        row.action,
        row.why,
        row.turn,
        row.caution,
        state,
        missing,
        row.source,
        row.certainty,
        tuple(known[key] for key in row.hold),
        known.get(row.gives),
        row.undone,
    )


def _findings(steps: tuple[OpeningStep, ...]) -> Iterator[Finding]:
    for step in steps:
        if step.state == "done" and step.held_by:
            missing = [hold.condition for hold in step.held_by]
            yield Finding("warning", "treatment.out of order", number=step.number, part=step.part, missing=missing)
    following = next((step for step in steps if step.state in ("open", "held")), None)
    if following is None:
        yield Finding("ok", "treatment.apart")
        return
    for hold in following.held_by:
        yield Finding(
            "stop", "treatment.hold", key=hold.key, part=following.part, condition=hold.condition, why=hold.why
        )
    if following.may_be_left_hand:
        yield Finding("warning", "treatment.left-hand", part=following.part)
    if following.certainty == "from memory":
        yield Finding("note", "treatment.certainty:step", part=following.part)
