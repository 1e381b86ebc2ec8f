"""What is asked as a pen goes back together: what was done and tested in its order, one step told apart, a rest begun."""

from __future__ import annotations

from typing import Annotated

from pentools import tables
from pentools.calc.closing.order import ClosingRow
from pentools.calc.closing.proofs import ProofRow
from pentools.calc.treatment.order import HoldRow
from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import length
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.units import Reading

__all__ = ["BEGUN", "KINDS", "OUTCOMES", "ROUND", "STEP", "STEP_WORDS", "WRITING", "Begun", "Round", "Step", "Writing"]

STEP_WORDS: tuple[tuple[str, str], ...] = tuple(
    (key, key.replace("-", " ")) for key in dict.fromkeys(row.key for row in tables.read(ClosingRow, "closing_steps"))
)
"""Every step of every order: its key and its short name."""
_OPTIONAL = tuple(
    (key, words)
    for key, words in STEP_WORDS
    if any(row.only_with for row in tables.read(ClosingRow, "closing_steps") if row.key == key)
)
_OUTSIDE = tuple((row.key, row.condition) for row in tables.read(HoldRow, "closing_holds") if row.from_outside)
_ADHESIVES = tuple((key, words) for key, words in SEALANTS if key != "none")
_RESTS = tuple((row.key, row.label) for row in tables.read(ProofRow, "closing_proofs") if row.hours)
OUTCOMES: tuple[tuple[str, str], ...] = (
    ("passed", "done, and its test passed"),
    ("untested", "done, not tested yet"),
    ("failed", "its test failed"),
)


# fmt: off
class Round(Form, frozen=True):
    """What was done in the order: what one entry holds."""

    done: Annotated[tuple[str, ...] | None, ask("Done", "ticks", choices=STEP_WORDS, hint="in the order of the list", audience="everybody")] = None
    tested: Annotated[tuple[str, ...] | None, ask("Tested, and passed", "ticks", choices=STEP_WORDS, hint="what a sound one shows, it showed", audience="everybody")] = None
    left_out: Annotated[tuple[str, ...] | None, ask("Not needed on this pen", "ticks", choices=_OPTIONAL, hint="such as a bar that was never out", audience="everybody")] = None
    so_before: Annotated[tuple[str, ...] | None, ask("It was so before", "ticks", choices=_OUTSIDE, hint="what the steps ask for from outside", audience="everybody")] = None
    sac_with: Annotated[str | None, ask("Sac or bulb put on with", "choice", choices=_ADHESIVES, hint="where the seal stage does not say it", audience="everybody")] = None
    section_with: Annotated[str | None, ask("Section closed with", "choice", choices=_ADHESIVES, hint="where the seal stage does not say it", audience="everybody")] = None
    sac_length: Annotated[Reading | None, length("Sac cut to", "such as 52 mm", 10, 120)] = None
    tube_reach: Annotated[Reading | None, length("Breather tube reaches", "from the section's end, such as 27.4 mm", 3, 120)] = None
    bar_length: Annotated[Reading | None, length("Bar's length", "such as 61 mm", 10, 120)] = None
    presses: Annotated[int | None, ask("Presses until the bubbles stopped", "count", low=1, high=60, hint="such as 7", audience="everybody")] = None


ROUND = Kind("closing", "order", "Done in this order", Round, help="Tick what is done and tested, in one go or as you come to it.")


class Step(Form, frozen=True):
    """One step, told apart: what one entry holds."""

    step: Annotated[str | None, ask("Step", "choice", choices=STEP_WORDS, required=True, audience="everybody")] = None
    outcome: Annotated[str | None, ask("How it went", "choice", choices=OUTCOMES, required=True, audience="everybody")] = None
    happened: Annotated[str | None, ask("What happened", "long text", hint="such as: crept off the nipple at a light pull; set again", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


STEP = Kind("closing", "step", "One step, told apart", Step, help="For a step that failed, was done again, or has a story.")


class Begun(Form, frozen=True):
    """A rest begins: what one entry holds."""

    test: Annotated[str | None, ask("Which test", "choice", choices=_RESTS, required=True, audience="everybody")] = None


BEGUN = Kind("closing", "rest begun", "A rest begins", Begun, help="The clock runs from the moment it is saved.")


class Writing(Form, frozen=True):
    """Writing after a night: what one entry holds."""

    rested: Annotated[Reading | None, ask("How long it rested, inked", "quantity", unit="h", low=0, high=2000, required=True, hint="overnight is 12 h", audience="everybody")] = None
    wrote: Annotated[str | None, ask("How it began", "choice", choices=(("at once", "at once"), ("after strokes", "after some strokes"), ("not by itself", "not by itself")), required=True, audience="everybody")] = None


WRITING = Kind("closing", "writing", "Writing after a night", Writing)

KINDS = (ROUND, STEP, BEGUN, WRITING)


# fmt: on
