"""What the work log asks: minutes and the timer, parts and materials in and out, departures from what was agreed."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no
from pentools.units import Reading

__all__ = [
    "ACTIVITIES",
    "DEPARTURE",
    "MATERIAL",
    "NOTE",
    "TIMER_START",
    "TIMER_STOP",
    "TOOL",
    "WANTED",
    "WORK",
    "Departure",
    "Material",
    "Note",
    "TimerStart",
    "TimerStop",
    "Tool",
    "Wanted",
    "Work",
]

ACTIVITIES: tuple[tuple[str, str], ...] = (
    ("look", "looking and measuring"),
    ("open", "opening"),
    ("clean", "cleaning"),
    ("mend", "mending parts"),
    ("seal", "seals and sac"),
    ("nib", "nib and feed"),
    ("finish", "finish"),
    ("test", "testing"),
    ("write", "writing and pictures"),
    ("other", "other"),
)


# fmt: off
_ACTIVITY = ask("Activity", "choice", choices=ACTIVITIES, required=True, hint="what kind of work", audience="everybody")

class Work(Form, frozen=True):
    """Work done: what one entry holds."""

    activity: Annotated[str | None, _ACTIVITY] = None
    minutes: Annotated[Reading | None, ask("Time taken", "quantity", unit="min", low=0, high=1440, required=True, hint="such as 25 min or 1.5 h", audience="everybody")] = None
    done: Annotated[str | None, ask("What was done", "long text", required=True, hint="one or two sentences", audience="everybody")] = None
    by: Annotated[str | None, ask("By", hint="who did it, if not you")] = None


WORK = Kind("work log", "work", "Work done", Work)


class TimerStart(Form, frozen=True):
    """Start the timer: what one entry holds."""

    activity: Annotated[str | None, replace(_ACTIVITY, audience="owner")] = None


TIMER_START = Kind("work log", "timer start", "Start the timer", TimerStart)


class TimerStop(Form, frozen=True):
    """Stop the timer: what one entry holds."""

    done: Annotated[str | None, ask("What was done", "long text", hint="one or two sentences", audience="everybody")] = None


TIMER_STOP = Kind("work log", "timer stop", "Stop the timer", TimerStop)


class Material(Form, frozen=True):
    """Part or material in or out: what one entry holds."""

    what: Annotated[str | None, ask("What", required=True, hint="such as cork washer 9.5 mm", audience="everybody")] = None
    way: Annotated[str | None, ask("Which way", "choice", choices=(("added", "added"), ("removed", "removed"), ("returned", "removed and given back")), required=True, hint="added, removed, or removed and given back", audience="everybody")] = None
    part: Annotated[str | None, ask("Where", "choice", choices=PARTS, hint="which part of the pen", audience="everybody")] = None
    reversible: Annotated[bool | None, yes_no("Can it be undone?", audience="everybody")] = None
    lot: Annotated[str | None, ask("Source and lot", hint="to find every pen with the same lot later")] = None
    cost: Annotated[str | None, ask("Cost", "money", hint="such as 4.50 EUR")] = None


MATERIAL = Kind("work log", "material", "Part or material in or out", Material)


class Wanted(Form, frozen=True):
    """A part the job waits for: what one entry holds."""

    what: Annotated[str | None, ask("What is wanted", required=True, hint="such as a donor barrel, a blind cap, a clip; the same words again say how it stands now")] = None
    part: Annotated[str | None, ask("For which part", "choice", choices=PARTS, hint="which part of the pen")] = None
    ordered_on: Annotated[str | None, ask("Ordered on", "date", hint="2026-03-14; empty while it is looked for")] = None
    expected_by: Annotated[str | None, ask("Expected by", "date", hint="2026-03-28")] = None
    arrived_on: Annotated[str | None, ask("Arrived on", "date", hint="2026-03-27; the job waits no more")] = None


WANTED = Kind("work log", "wanted", "A part it waits for", Wanted, help="It goes on the list of parts wanted over all pens; the newest entry with the same words counts.")


class Departure(Form, frozen=True):
    """Departure from what was agreed: what one entry holds."""

    what: Annotated[str | None, ask("What was done otherwise", "long text", required=True, hint="what differs from the agreement")] = None
    why: Annotated[str | None, ask("Why", "long text", required=True, hint="what was found")] = None
    agreed_on: Annotated[str | None, ask("Agreed with the owner on", "date", hint="2026-03-20")] = None
    channel: Annotated[str | None, ask("How", hint="letter, e-mail, by word of mouth")] = None


DEPARTURE = Kind("work log", "departure", "Departure from what was agreed", Departure)


class Tool(Form, frozen=True):
    """A tool made, or taken from the shelf: what one entry holds."""

    tool: Annotated[str | None, ask("Tool", required=True, hint="such as knock-out tube 6.2 mm; one taken again by the name it has on the shelf")] = None
    part: Annotated[str | None, ask("For which part", "choice", choices=PARTS, hint="which part of the pen")] = None
    dimensions: Annotated[str | None, ask("Dimensions", hint="such as 6.2 mm outside, 5.0 mm bore, 90 mm long")] = None
    made_from: Annotated[str | None, ask("Made from", hint="such as brass tube; empty where it lay on the shelf")] = None
    photo: Annotated[str | None, ask("Sketch or picture", "photo", hint="a file in photos/")] = None


TOOL = Kind("work log", "tool", "Tool made or used", Tool, help="It goes on the shelf: pentools stock --tools lists it, with the pens it served.")


class Note(Form, frozen=True):
    """A note for the bench: what one entry holds."""

    note: Annotated[str | None, ask("Note", "long text", required=True, hint="for the bench alone: it stands on no page", audience="bench")] = None


NOTE = Kind("work log", "note", "Note for the bench", Note)


# fmt: on
