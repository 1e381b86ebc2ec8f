"""An order of work as it is told: opening and closing alike, each step with what stands before it, its test and its cautions."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from pentools import tables
from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.closing.changes import Change, ChangeRow, action_with, changes_of
from pentools.calc.closing.clock import CureRow, cure_of
from pentools.calc.closing.order import ClosingOrder, ClosingRow, ClosingStep, Did, closing_order
from pentools.calc.treatment.cautions import CautionRow
from pentools.calc.treatment.limits import CompatibilityRow
from pentools.calc.treatment.materials import UNKNOWN
from pentools.calc.treatment.order import HoldRow, OpeningOrder, StepRow, opening_order
from pentools.errors import InputError
from pentools.numbers import in_words, plain
from pentools.systems.registry import system_named
from pentools.tables.source_words import source_words

__all__ = [
    "ToldOrder",
    "ToldStep",
    "closing_rows",
    "closing_told",
    "closing_work",
    "cure_hours",
    "numbers_of",
    "opening_told",
    "step_changes",
    "step_keys",
    "usual_sealant",
]

CLOCK_RUN = "When its clock has run"
"""How the table begins a test that waits for what sets; the hours take its place where they are known."""
STICKS = {"silicone": "silicone"}
"""What a fitted material is stuck with; anything else takes shellac."""


@dataclass(frozen=True, slots=True)
class ToldStep:
    """One step as it is told.

    Parameters
    ----------
    number : int
        Its place in the order, from 1.
    key, part, action : str
        Its name, what is worked on, and what is done.
    before : tuple of str
        What must be so first, as sentences.
    test : str
        What is tried or seen before the next step; empty where nothing is.
    undone : str
        Whether it can be taken back without loss: yes, partly or no.
    caution : str
        What goes wrong, with what the materials change; empty where nothing is known.
    changes : tuple of str
        What the materials change, by themselves.
    closes : bool
        Whether it shuts something in.
    only_with : str
        When it is needed, such as "bar was out"; empty where it always is.
    state : str
        Where it stands.
    waits : tuple of str
        What is not so yet.
    hours : float or None
        How long what sets has to wait before the test [h]; None where nothing sets.
    sources : tuple of str
        Where it is known from.
    certainty : str
        How sure that is.
    """

    number: int
    key: str
    part: str
    action: str
    before: tuple[str, ...]
    test: str
    undone: str
    caution: str
    changes: tuple[str, ...]
    closes: bool
    only_with: str
    state: str
    waits: tuple[str, ...]
    hours: float | None
    sources: tuple[str, ...]
    certainty: str


@dataclass(frozen=True, slots=True)
class ToldOrder:
    """An order of work as it is told.

    Parameters
    ----------
    system, label : str
        The filling system: its key, and its name in words.
    way : {"open", "close"}
        Taken apart, or put together.
    materials : tuple of str
        What it was reckoned for.
    steps : tuple of ToldStep
        In their order.
    findings : tuple of Finding
        What holds, what was skipped, what a material forbids.
    """

    system: str
    label: str
    way: str
    materials: tuple[str, ...]
    steps: tuple[ToldStep, ...]
    findings: tuple[Finding, ...]

    @property
    def next_step(self) -> ToldStep | None:
        """The first step whose doing or testing is still owed; None when none is."""
        return next((step for step in self.steps if step.state not in ("done", "not needed")), None)


def closing_rows(system: str) -> tuple[ClosingRow, ...]:
    """The rows of a filling system's closing order; empty for a system that the table does not have."""
    return tuple(row for row in tables.read(ClosingRow, "closing_steps") if row.system == system)


def step_keys(system: str) -> tuple[str, ...]:
    """The keys of a filling system's closing steps, in order."""
    return tuple(row.key for row in closing_rows(system))


def closing_work(
    system: str, *, did: Sequence[Did] = (), met: Collection[str] = (), left_out: Collection[str] = ()
) -> ClosingOrder:
    """`closing_order` on the kit's own tables."""
    rows, holds = tables.read(ClosingRow, "closing_steps"), tables.read(HoldRow, "closing_holds")
    return closing_order(system, rows, holds, did=did, met=met, left_out=left_out)


def step_changes(row: ClosingRow, body: Sequence[str], fitted: Sequence[str]) -> tuple[Change, ...]:
    """`changes_of` on the kit's own tables."""
    rows, grid = tables.read(ChangeRow, "closing_changes"), tables.read(CompatibilityRow, "compatibility")
    return changes_of(row, body, fitted, rows, grid)


def usual_sealant(clock: str, fitted: Collection[str]) -> str:
    """What a joint is put on with where nobody has said it.

    Parameters
    ----------
    clock : {"sac", "bulb", "section"}
        The joint.
    fitted : collection of str
        What sac or bulb are made of; it is they alone that ask for another than shellac.

    Returns
    -------
    str
        A key of the seal stage's sealants.
    """
    return "shellac" if clock == "section" else next((STICKS[name] for name in fitted if name in STICKS), "shellac")


def cure_hours(row: ClosingRow, fitted: Collection[str], sealant: str = "", moment: str = "test") -> float | None:
    """How long a step's joint waits until a moment [h].

    Parameters
    ----------
    fitted : collection of str
        What sac or bulb are made of.
    sealant : str
        What was put on, a key of the seal stage; where it is not said, what the material is stuck with.
    moment : str
        "test" or "ink".

    Returns
    -------
    float or None
        Hours; None for a step at which nothing sets.
    """
    if not row.clock:
        return None
    return cure_of(sealant or usual_sealant(row.clock, fitted), moment, tables.read(CureRow, "cure_times")).proposed_h


def closing_told(
    system: str,
    body: Sequence[str],
    fitted: Sequence[str],
    *,
    did: Sequence[Did] = (),
    met: Collection[str] = (),
    left_out: Collection[str] = (),
) -> ToldOrder:
    """The closing order of a filling system as it is told.

    Parameters
    ----------
    system : str
        Key of the filling system.
    body, fitted : sequence of str
        Materials as the table of compatibility names them.
    did, met, left_out
        As for `pentools.calc.closing.order.closing_order`.

    Returns
    -------
    ToldOrder
        With what the materials change.

    Raises
    ------
    InputError
        If there is no such filling system, step or condition.
    """
    order = closing_work(system, did=did, met=met, left_out=left_out)
    steps = tuple(_closing_step(step, body, fitted) for step in order.steps)
    findings = gravest_first((*order.findings, *_of_materials(order, body, fitted)))
    return ToldOrder(system, system_named(system).label, "close", (*body, *fitted), steps, findings)


def _closing_step(step: ClosingStep, body: Sequence[str], fitted: Sequence[str]) -> ToldStep:
    row = step.row
    found = step_changes(row, body, fitted)
    changes = tuple(change.words for change in found)
    hours = cure_hours(row, fitted)
    return ToldStep(
        number=row.step,
        key=row.key,
        part=row.part,
        action=action_with(row, found),
        before=tuple(hold.condition for hold in step.before),
        test=_test_words(step, hours),
        undone=row.undone,
        caution=" ".join((*changes, row.caution)).strip(),
        changes=changes,
        closes=row.closes,
        only_with=row.only_with,
        state=step.state,
        waits=tuple(hold.condition for hold in step.missing),
        hours=hours,
        sources=source_words(row.source, "closing_steps"),
        certainty=row.certainty,
    )


def _test_words(step: ClosingStep, hours: float | None) -> str:
    """The test with how long what sets has to wait first."""
    return step.test_words if hours is None else step.test_words.replace(CLOCK_RUN, f"After {plain(hours)} h", 1)


def _of_materials(order: ClosingOrder, body: Sequence[str], fitted: Sequence[str]) -> Iterable[Finding]:
    """What is never done on the way, by material and with its steps; each word once."""
    found: dict[tuple[str, str, bool], list[int]] = {}
    for step in order.steps:
        for change in step_changes(step.row, body, fitted):
            found.setdefault((change.material, change.words, change.never), []).append(step.row.step)
    for (material, words, never), numbers in found.items():
        level: Level = "warning" if never else "note"
        what = "not named" if material == UNKNOWN else material
        yield Finding(level, "closing.material", material=what, words=words, steps=_numbers(numbers))
    for step in order.steps:
        for material in fitted:
            if f"not {material}" in step.row.action:
                yield Finding(
                    "warning", "closing.other-fitted", number=step.row.step, part=step.row.part, material=material
                )


def _numbers(numbers: Sequence[int]) -> str:
    return f"step{'s' if len(numbers) > 1 else ''} {in_words(numbers)}"


def opening_told(system: str, body: Sequence[str], *, done: Collection[int] = ()) -> ToldOrder:
    """The opening order of a filling system as it is told.

    Parameters
    ----------
    system : str
        Key of the filling system.
    body : sequence of str
        Materials as the table of compatibility names them.
    done : collection of int
        Numbers of the steps that are done.

    Returns
    -------
    ToldOrder
        What each step gives stands as what is to be seen before the next.

    Raises
    ------
    InputError
        If there is no such filling system or step.
    """
    label = system_named(system).label
    holds = tables.read(HoldRow, "opening_holds")
    met = {"material-named"} if body and UNKNOWN not in body else set()
    order = opening_order(system, tables.read(StepRow, "opening_steps"), holds, done=done, met=met)
    return ToldOrder(system, label, "open", tuple(body), _opening_steps(order, body), order.findings)


def _cautions(body: Collection[str]) -> dict[str, str]:
    """The cautions that hold for a body, by key; for one that is not named those of every material."""
    return {
        row.key: f"{row.hazard} {row.control}"
        for row in tables.read(CautionRow, "cautions")
        if UNKNOWN in body or not {"any", *body}.isdisjoint(row.materials)
    }


def _opening_steps(order: OpeningOrder, body: Collection[str]) -> tuple[ToldStep, ...]:
    said = _cautions(body)
    found = []
    for step in order.steps:
        turn = f" Thread: {step.turn}." if step.turn else ""
        cautions = [step.why + turn, *(said[key] for key in step.cautions if key in said)]
        found.append(
            ToldStep(
                number=step.number,
                key=step.gives.key if step.gives else "",
                part=step.part,
                action=step.action,
                before=tuple(hold.condition for hold in step.before),
                test=step.gives.condition if step.gives else "",
                undone=step.undone,
                caution=" ".join(text for text in cautions if text),
                changes=(),
                closes=False,
                only_with="",
                state={"held": "early"}.get(step.state, step.state),
                waits=tuple(hold.condition for hold in step.held_by),
                hours=None,
                sources=source_words(step.source, "opening_steps"),
                certainty=step.certainty,
            )
        )
    return tuple(found)


def numbers_of(texts: Sequence[str], keys: Sequence[str], name: str) -> tuple[int, ...]:
    """Step numbers from numbers or keys as they were typed.

    Raises
    ------
    InputError
        If one is neither a number of the order nor a key of it.
    """
    found = []
    for text in texts:
        clean = text.strip()
        if clean.isdecimal() and 1 <= int(clean) <= len(keys):
            found.append(int(clean))
        elif clean in keys:
            found.append(keys.index(clean) + 1)
        else:
            raise InputError(name, f"numbers from 1 to {len(keys)}, or {', '.join(key for key in keys if key)}", text)
    return tuple(found)
