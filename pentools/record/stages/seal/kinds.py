"""What the seal stage asks for: measurements, dry trials, sealant, tests of the seal, and tools made for the job."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from pentools.calc.seal.judge import DUTIES
from pentools.calc.seal.sac import MATERIALS
from pentools.fields import Field, ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import length, yes_no
from pentools.record.stages.seal.places import PLACES, Place, asked_for, place_words
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.tables import seals
from pentools.units import Reading

__all__ = [
    "MEASURE",
    "PLACES",
    "SAC_RUBBER",
    "SEALANT",
    "SEALANTS",
    "TEST",
    "TEST_FIELDS",
    "TOOL",
    "TRIAL",
    "Measure",
    "Place",
    "SealTest",
    "Sealant",
    "Tool",
    "Trial",
    "asked_for",
    "place_words",
]  # fmt: skip


_PLACE_CHOICES = tuple((place.key, place.words) for place in PLACES.values())
_OUTCOMES = (
    ("no touch", "no touch: it goes through without drag"),
    ("slides, no suction", "slides, no suction"),
    ("pulls back", "pulls back: it holds its suction (a sac: goes in freely and draws)"),
    ("too stiff", "too stiff: binds, catches or folds (a sac: rubs)"),
)
SEALANTS = (
    ("shellac", "shellac"),
    ("silicone", "silicone adhesive"),
    ("thread", "shellac, bound with thread"),
    ("rosin", "rosin-based thread sealant"),
    ("grease", "silicone grease"),
    ("none", "none"),
)


def _lengths(label: str, hint: str, low: float, high: float) -> Field:
    return replace(length(label, hint, low, high), kind="quantities")


SAC_RUBBER = {"latex": "latex", "pleated": "latex", "silicone": "silicone", "PVC": "plasticised PVC"}
"""Sac material as it is entered -> what treatments and care call it."""


# fmt: off
class Measure(Form, frozen=True):
    """Measure: what one entry holds."""

    place: Annotated[str | None, ask("Which seal", "choice", choices=_PLACE_CHOICES, required=True, hint="each place is measured by itself; the newest counts", audience="everybody")] = None
    bore: Annotated[tuple[Reading, ...] | None, _lengths("Bore at three angles, first depth", "inside jaws, such as 8.30 mm; 8.32 mm; 8.29 mm", 2, 30)] = None
    bore_deep: Annotated[tuple[Reading, ...] | None, _lengths("Bore at three angles, second depth", "near the other end of the stroke, such as 8.31 mm; 8.33 mm; 8.30 mm", 2, 30)] = None
    groove: Annotated[Reading | None, length("Groove or seat diameter", "bottom of the head's groove, or what carries the cork, such as 4.50 mm", 0.5, 28)] = None
    width: Annotated[Reading | None, length("Groove width", "between the groove's two walls, such as 2.40 mm", 0.5, 15)] = None
    head: Annotated[Reading | None, length("Head or backing washer", "its outside diameter beside the seal, such as 8.00 mm", 1, 30)] = None
    rod: Annotated[Reading | None, length("Rod", "where the seal runs, or what carries the washer, such as 2.40 mm", 0.5, 15)] = None
    housing: Annotated[tuple[Reading, ...] | None, _lengths("Housing bore at three angles", "where the packing sits, such as 5.30 mm; 5.31 mm; 5.30 mm", 2, 25)] = None
    guide: Annotated[Reading | None, length("Hole that guides the rod", "such as 2.55 mm", 0.5, 20)] = None
    length: Annotated[Reading | None, length("Length of seat or housing", "such as 6.0 mm", 1, 30)] = None
    thickness: Annotated[Reading | None, length("Thickness of one packing ring", "such as 1.5 mm", 0.3, 5)] = None
    washer: Annotated[str | None, ask("Sort of washer", "choice", choices=(("flat", "flat"), ("cup", "cup")), audience="everybody")] = None
    stack: Annotated[str | None, ask("Sort of packing", "choice", choices=(("stacked", "stacked rings"), ("felt", "felt")), audience="everybody")] = None
    nipple: Annotated[Reading | None, length("Nipple", "outside diameter, such as 6.60 mm", 1.5, 14)] = None
    nipple_length: Annotated[Reading | None, length("Nipple length", "what of the sac sits on it, such as 6 mm", 1, 25)] = None
    depth: Annotated[Reading | None, length("Depth for the sac", "from the nipple's shoulder to the barrel's end or the bar's bend, such as 62 mm", 10, 150)] = None
    bar: Annotated[Reading | None, length("Press bar takes", "how much of the bore, such as 0.9 mm; 0 mm for none", 0, 3)] = None
    sac: Annotated[Reading | None, length("Sac in hand", "its outside diameter, over the pleats of a pleated one, such as 6.35 mm", 2, 16)] = None
    wall: Annotated[Reading | None, length("Wall", "half of two walls pressed together, such as 0.50 mm", 0.1, 2)] = None
    mouth: Annotated[Reading | None, length("Mouth", "inside diameter of its mouth or neck, such as 5.6 mm", 1, 25)] = None
    rubber: Annotated[Reading | None, length("Rubber in hand, outside", "bulb, diaphragm or valve, over its widest, such as 9.80 mm", 1, 30)] = None
    rubber_length: Annotated[Reading | None, length("Rubber in hand, length", "at rest, such as 18 mm", 1, 80)] = None
    fold: Annotated[str | None, ask("How it is folded or held", hint="such as: lip over the seat, pellet inside, cone behind", audience="everybody")] = None
    tube: Annotated[Reading | None, length("Breather tube, outside", "such as 2.00 mm", 0.3, 8)] = None
    tube_hole: Annotated[Reading | None, length("Hole it sits in", "such as 1.95 mm", 0.3, 8)] = None
    reach: Annotated[Reading | None, length("Reach of the tube", "from the section’s face to its end, such as 55 mm", 3, 150)] = None
    lip: Annotated[Reading | None, length("Section’s lip", "or the barrel’s mouth, outside, such as 8.20 mm", 2, 25)] = None
    lip_reach: Annotated[Reading | None, length("How far it comes into the cap", "from the cap’s lip, the cap closed, such as 14.5 mm", 0.5, 80)] = None
    lip_depth: Annotated[Reading | None, length("Depth of the liner’s mouth", "from the cap’s lip, such as 14.0 mm", 0.5, 80)] = None
    was: Annotated[str | None, ask("What was there before", hint="shape, material and how it came out, such as: straight latex sac, hard; kept for the next pen", audience="everybody")] = None
    was_outside: Annotated[Reading | None, length("Its outside", "as it came out, such as 6.1 mm", 0.5, 30)] = None
    was_length: Annotated[Reading | None, length("Its length", "as it came out, such as 58 mm", 0.3, 150)] = None
    material: Annotated[str | None, ask("Sac material", "choice", choices=tuple((key, key) for key in MATERIALS), audience="everybody")] = None
    cleaned: Annotated[bool | None, yes_no("Old rubber cleaned out of the bore", audience="everybody")] = None
    bore_before: Annotated[Reading | None, length("Bore before cleaning", "the same place with the old rubber in it", 2, 30)] = None
    duty: Annotated[str | None, ask("What the seal does", "choice", choices=tuple((key, key) for key in DUTIES), hint="hand-turned is taken where nothing is chosen", audience="everybody")] = None
    altered: Annotated[bool | None, yes_no("Was the part altered since it was last measured?", hint="yes: turned, sleeved or sanded; trials before it no longer count")] = None

    @property
    def readings(self) -> tuple[Reading, ...]:
        """Every reading of the bore at both depths, or of the housing."""
        return (*self.bore, *(self.bore_deep or ())) if self.bore else self.housing or ()


MEASURE = Kind("seal", "measure", "Measure", Measure, help="Wipe the jaws, read each figure, type all readings: their spread is the bore's ovality.")


class Trial(Form, frozen=True):
    """Dry trial: what one entry holds."""

    place: Annotated[str | None, ask("Which seal", "choice", choices=_PLACE_CHOICES, required=True, audience="everybody")] = None
    what: Annotated[str | None, ask("Size tried", required=True, hint="in words, such as dash 007, nitrile; or washer punched at 8.5 mm", audience="everybody")] = None
    section: Annotated[Reading | None, length("Its section, measured", "of a ring: light jaws, four places, such as 1.76 mm", 0.3, 8)] = None
    inside: Annotated[Reading | None, length("Its inside diameter, measured", "of a ring, such as 3.66 mm", 0.3, 30)] = None
    outside: Annotated[Reading | None, length("Its outside diameter, measured", "of a washer, cork or sac, such as 8.46 mm", 1, 40)] = None
    lot: Annotated[str | None, ask("Source and lot", hint="of what was tried, to find every pen with the same lot later")] = None
    dry: Annotated[bool | None, yes_no("Dry, without any sealant?", "a greased trial is kept, but does not pass", required=True, audience="everybody")] = None
    happened: Annotated[str | None, ask("What happened", "choice", choices=_OUTCOMES, required=True, audience="everybody")] = None


TRIAL = Kind("seal", "trial", "Dry trial", Trial, help="One size at a time. A washer that does not touch gives no suction, one size up does (common practice, no source).")


class Sealant(Form, frozen=True):
    """Sealant: what one entry holds."""

    sealant: Annotated[str | None, ask("What", "choice", choices=SEALANTS, required=True, audience="everybody")] = None
    place: Annotated[str | None, ask("Where", "choice", choices=_PLACE_CHOICES, required=True, audience="everybody")] = None
    reversible: Annotated[bool | None, yes_no("Can it be undone?", "shellac: warmth or alcohol; rosin: warmth; silicone adhesive: peeled off; grease: wiped off", audience="everybody")] = None
    open_time: Annotated[Reading | None, ask("Time to work it", "quantity", unit="min", low=0, high=600, hint="from its label or your own trial, such as 5 min", audience="everybody")] = None
    cure: Annotated[Reading | None, ask("Time to set", "quantity", unit="h", low=0, high=1000, hint="from its label or your own trial, such as 24 h; the clock counts from it", audience="everybody")] = None
    lot: Annotated[str | None, ask("Source and lot", hint="such as the can and the day it was mixed")] = None
    ago: Annotated[Reading | None, ask("Put on how long ago", "quantity", unit="min", low=0, high=20000, hint="left empty: just now", audience="bench")] = None


SEALANT = Kind("seal", "sealant", "Sealant", Sealant, help="Held until a dry fit has passed.")


# fmt: on

_FAULTS = seals.faults()


def _seen(test: str, label: str, hint: str = "") -> Field:
    return ask(
        label, "choice", choices=tuple((key, key) for key in _FAULTS.signs[test]), audience="everybody", hint=hint
    )


# fmt: off
class SealTest(Form, frozen=True):
    """Test: what one entry holds."""

    test: Annotated[str | None, ask("Which test", "choice", choices=tuple(_FAULTS.labels.items()), required=True, audience="everybody")] = None
    pushed: Annotated[Reading | None, length("Way pushed", "with the nib free, half the stroke, such as 30 mm", 2, 80)] = None
    returned: Annotated[Reading | None, length("Way it came back by itself", "such as 27 mm; 0 mm for not at all", 0, 80)] = None
    spring_back_seen: Annotated[str | None, _seen("spring-back", "How far it came back", "only where it was not measured")] = None
    volume: Annotated[Reading | None, ask("Volume of pen, hose and gauge", "quantity", unit="ml", low=0.05, high=500, hint="such as 12 ml", audience="everybody")] = None
    vacuum_start: Annotated[Reading | None, ask("Vacuum at the start", "quantity", unit="kPa", low=0.1, high=101, hint="below the room's pressure, such as 30 kPa", audience="everybody")] = None
    vacuum_end: Annotated[Reading | None, ask("Vacuum at the end", "quantity", unit="kPa", low=0, high=101, hint="such as 29 kPa", audience="everybody")] = None
    seconds: Annotated[Reading | None, ask("Time between", "quantity", unit="s", low=1, high=100000, hint="such as 60 s or 10 min", audience="everybody")] = None
    gauge: Annotated[Reading | None, ask("Gauge's own uncertainty", "quantity", unit="kPa", low=0.001, high=20, hint="one reading, such as 0.5 kPa; 1 kPa is taken where empty", audience="everybody")] = None
    vacuum_seen: Annotated[str | None, _seen("vacuum", "Did it hold", "only where it was not read off a gauge")] = None
    shaft_seen: Annotated[str | None, _seen("shaft", "What the shaft showed")] = None
    press_seen: Annotated[str | None, _seen("press", "What the nib showed")] = None
    mouth_seen: Annotated[str | None, _seen("mouth", "What the finger felt or saw")] = None
    rested: Annotated[Reading | None, ask("How long it rested", "quantity", unit="h", low=0, high=2000, hint="overnight is 12 h", audience="everybody")] = None
    overnight_seen: Annotated[str | None, _seen("overnight", "Where it was damp first")] = None
    damp: Annotated[tuple[str, ...] | None, ask("Every damp place", "items", hint="such as behind the head; at the rod's end", audience="everybody")] = None
    capped_seen: Annotated[str | None, _seen("capped", "What the cap showed")] = None
    tissue_seen: Annotated[str | None, _seen("tissue", "What the tissue showed")] = None
    powder_seen: Annotated[str | None, _seen("powder", "Where the talc darkened first")] = None

    @property
    def seen(self) -> str:
        """What its own test showed, as it was chosen; empty where it was not."""
        given: dict[str, str | None] = {
            "spring-back": self.spring_back_seen, "vacuum": self.vacuum_seen, "shaft": self.shaft_seen, "press": self.press_seen,
            "mouth": self.mouth_seen, "overnight": self.overnight_seen, "capped": self.capped_seen, "tissue": self.tissue_seen,
            "powder": self.powder_seen,
        }
        return given.get(self.test or "") or ""


TEST = Kind("seal", "test", "Test", SealTest, help="After any change of a seal the tests begin afresh: only those since the last trial or sealant count.")


# fmt: on

TEST_FIELDS: dict[str, tuple[str, ...]] = {
    "spring-back": ("pushed", "returned", "spring_back_seen"),
    "vacuum": ("volume", "vacuum_start", "vacuum_end", "seconds", "gauge", "vacuum_seen"),
    "shaft": ("shaft_seen",),
    "press": ("press_seen",),
    "mouth": ("mouth_seen",),
    "overnight": ("rested", "overnight_seen", "damp"),
    "capped": ("capped_seen",),
    "tissue": ("tissue_seen",),
    "powder": ("powder_seen",),
}
"""Which fields belong to which test."""


# fmt: off
class Tool(Form, frozen=True):
    """Tool made: what one entry holds."""

    tool: Annotated[str | None, ask("What", "choice", choices=(("tube", "knock-out tube"), ("block", "knock-out block"), ("punch", "punch"), ("mandrel", "mandrel or form"), ("other", "something else")), required=True, audience="everybody")] = None
    purpose: Annotated[str | None, ask("For what", required=True, hint="such as feed and nib out of a section with a long tail", audience="everybody")] = None
    inside_made: Annotated[Reading | None, length("Inside diameter as made", "such as 2.00 mm", 0.1, 30)] = None
    outside_made: Annotated[Reading | None, length("Outside diameter as made", "such as 4.80 mm", 0.5, 60)] = None
    length_made: Annotated[Reading | None, length("Length as made", "such as 60 mm", 1, 300)] = None
    hole_made: Annotated[Reading | None, length("Hole of the block as made", "such as 8.4 mm", 0.5, 40)] = None
    stuff: Annotated[str | None, ask("Made of", hint="such as brass tube, end squared and deburred", audience="everybody")] = None
    kept: Annotated[str | None, ask("Where it is kept", hint="such as drawer 3; found again from any other job", audience="bench")] = None
    tail: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    shoulder: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    bore: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    depth: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    front: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    section: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    material: Annotated[str | None, asked_by(KNOCKOUT, required=False, usual=False)] = None
    clearance: Annotated[Reading | None, asked_by(KNOCKOUT, required=False, usual=False)] = None


TOOL = Kind("seal", "tool", "Tool made", Tool, help="Its dimensions stay findable from every other job. With the feed and section measured, its window is worked out.")


# fmt: on
