"""What the fill test asks: balance, liquid and room, the dimensions of the filler, weighings and leak checks."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import mass, yes_no
from pentools.sums.weighing.capacity import CAPACITY
from pentools.sums.weighing.leak import LEAK
from pentools.units import Reading

__all__ = [
    "DIMENSIONS",
    "LEAK_CHECK",
    "LEAK_READING",
    "SETUP",
    "STATES",
    "WEIGHING",
    "Dimensions",
    "LeakCheck",
    "LeakReading",
    "Setup",
    "Weighing",
]

STATES: tuple[tuple[str, str], ...] = (
    ("dry", "empty and dry"),
    ("drained", "emptied and drained, nib down"),
    ("filled", "filled"),
    ("stroke", "after a single stroke"),
    ("gain", "gain after a dip, the empty pen tared away"),
)


# fmt: off
class Setup(Form, frozen=True):
    """Balance, liquid and room: what one entry holds."""

    liquid: Annotated[str | None, asked_by(CAPACITY, required=False)] = None
    ink_density: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    temperature: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    pressure: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    humidity: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    readability: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    repeatability: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    linearity: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    eccentricity: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    drop: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    evaporation: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    gap: Annotated[Reading | None, asked_by(LEAK)] = None
    seat: Annotated[Reading | None, asked_by(LEAK)] = None
    gap_length: Annotated[Reading | None, asked_by(LEAK)] = None


SETUP = Kind("fill test", "setup", "Balance, liquid and room", Setup, log=False, help="What is left empty is taken from the bench's own facts.")


class Dimensions(Form, frozen=True):
    """What it should hold: what one entry holds."""

    bore: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    depth: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    nipple: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    nipple_length: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    outside: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    length: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    wall: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    pressed_share: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    reach: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    tube: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    strokes: Annotated[int | None, asked_by(CAPACITY, required=False)] = None
    stroke_volume: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    tube_volume: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    rod: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    stroke: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    dead_behind: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    dead_ahead: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    head: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None
    void_share: Annotated[Reading | None, asked_by(CAPACITY, required=False)] = None


DIMENSIONS = Kind("fill test", "dimensions", "What it should hold", Dimensions, log=False, help="The filler's own dimensions, from the calliper.")


class Weighing(Form, frozen=True):
    """Weighing: what one entry holds."""

    state: Annotated[str | None, ask("State of the pen", "choice", choices=STATES, required=True, default="dry", hint="a pen that has only been drained keeps some ink in its feed", audience="everybody")] = None
    mass: Annotated[Reading | None, mass("Mass", "such as 16.42 g; put every reading in, also the same one again", required=True)] = None
    strokes: Annotated[int | None, ask("After how many strokes", "count", low=0, high=60, hint="only when weighed after each stroke", audience="everybody")] = None


WEIGHING = Kind("fill test", "weighing", "Weighing", Weighing)


class LeakReading(Form, frozen=True):
    """Leak weighing: what one entry holds."""

    after: Annotated[Reading | None, ask("Time since it was filled", "quantity", unit="h", low=0, high=2000, required=True, hint="such as 0 h, 45 min or 1 d", audience="everybody")] = None
    mass: Annotated[Reading | None, mass("Mass", "such as 18.21 g", required=True)] = None
    blank: Annotated[Reading | None, ask("Mass of the dry dummy", "quantity", unit="g", low=0, high=200, hint="the same solid object each time: it shows the balance's drift", audience="everybody")] = None


LEAK_READING = Kind("fill test", "leak reading", "Leak weighing", LeakReading)


class LeakCheck(Form, frozen=True):
    """Leak check: what one entry holds."""

    rested: Annotated[Reading | None, ask("How long it rested, filled", "quantity", unit="h", low=0, high=2000, required=True, hint="overnight is 12 h", audience="everybody")] = None
    dry: Annotated[bool | None, yes_no("Was it dry all over?", required=True, audience="everybody")] = None
    damp: Annotated[tuple[str, ...] | None, ask("Where it was damp", "items", hint="such as lever slot; section joint", audience="everybody")] = None
    how: Annotated[str | None, ask("How it lay", hint="nib up, nib down, flat", audience="everybody")] = None


LEAK_CHECK = Kind("fill test", "leak check", "Leak check", LeakCheck)


# fmt: on
