"""What the seal stage asks for: measurements, dry trials, sealant, tests of the seal, and tools made for the job."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from pentools.calc.seal.faults import TESTS
from pentools.calc.seal.judge import DUTIES
from pentools.calc.seal.sac import MATERIALS
from pentools.fields import Field, Value
from pentools.record.kinds import Kind
from pentools.record.stages.common import yes_no
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.units import Reading

__all__ = [
    "MEASURE", "PLACES", "SEALANT", "SEALANTS", "TEST", "TEST_FIELDS", "TOOL", "TRIAL", "Place", "asked_for",
    "millimetres", "place_words",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Place:
    """Where a seal sits.

    Parameters
    ----------
    key, words : str
        Its name in the record, and in words.
    way : {"ring", "washer", "packing", "sac", ""}
        Which sum answers for it; empty where there is none.
    asks : tuple of str
        The measurements that belong to it, in the order they are taken.
    needs : tuple of str
        Those without which nothing can be worked out.
    """

    key: str
    words: str
    way: str
    asks: tuple[str, ...]
    needs: tuple[str, ...]


_BORE = ("bore", "bore_deep")
_CLEAN = ("cleaned", "bore_before")
PLACES: dict[str, Place] = {
    place.key: place
    for place in (
        Place("head", "O-ring on the head", "ring", (*_BORE, "groove", "width", "head", *_CLEAN, "duty"), ("bore", "groove")),
        Place("packing", "O-ring in the packing", "ring", ("rod", "housing", "width", "guide", "duty"), ("rod", "housing")),
        Place("washer", "washer on the head", "washer", (*_BORE, "rod", "head", "washer", *_CLEAN), ("bore", "rod")),
        Place("cork", "cork on the head", "washer", (*_BORE, "groove", "length", *_CLEAN), ("bore", "groove")),
        Place("stack", "felt or stacked packing", "packing", ("rod", "housing", "length", "thickness", "stack"), ("rod", "housing", "length")),
        Place("sac", "sac on its nipple", "sac", (*_BORE, "nipple", "nipple_length", "depth", "bar", *_CLEAN, "material"), ("bore",)),
        Place("section", "section joint", "", (), ()),
        Place("inner-cap", "inner cap", "", (), ()),
    )
}  # fmt: skip
"""Every place of a seal by its key."""

_PLACE_CHOICES = tuple((place.key, place.words) for place in PLACES.values())
_OUTCOMES = (
    ("no touch", "no touch: it goes through without drag"),
    ("slides, no suction", "slides, no suction"),
    ("pulls back", "pulls back: it holds its suction (a sac: goes in freely and draws)"),
    ("too stiff", "too stiff: binds, catches or folds (a sac: rubs)"),
)
SEALANTS = (
    ("shellac", "shellac"),
    ("rosin", "rosin-based thread sealant"),
    ("grease", "silicone grease"),
    ("none", "none"),
)


def place_words(key: object) -> str:
    """A place in words; its key as it stands where it is not known."""
    return PLACES[str(key)].words if str(key) in PLACES else str(key)


def millimetres(values: Mapping[str, Value], name: str) -> float | None:
    """A length of an entry [mm]; None where it was not measured."""
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def asked_for(place: str) -> tuple[str, ...]:
    """The fields of a measurement at a place, beside the place itself."""
    return (*PLACES[place].asks, "altered") if place in PLACES else ()


def _length(name: str, label: str, hint: str, low: float, high: float) -> Field:
    return Field(name, label, "quantity", unit="mm", hint=hint, low=low, high=high, public=True)


def _lengths(name: str, label: str, hint: str, low: float, high: float) -> Field:
    return replace(_length(name, label, hint, low, high), kind="quantities")


MEASURE = Kind(
    "measure",
    "Measure",
    (
        Field("place", "Which seal", "choice", choices=_PLACE_CHOICES, required=True, public=True, hint="each place is measured by itself; the newest counts"),
        _lengths("bore", "Bore at three angles, first depth", "inside jaws, such as 8.30 mm; 8.32 mm; 8.29 mm", 2, 30),
        _lengths("bore_deep", "Bore at three angles, second depth", "near the other end of the stroke, such as 8.31 mm; 8.33 mm; 8.30 mm", 2, 30),
        _length("groove", "Groove or seat diameter", "bottom of the head's groove, or what carries the cork, such as 4.50 mm", 0.5, 28),
        _length("width", "Groove width", "between the groove's two walls, such as 2.40 mm", 0.5, 15),
        _length("head", "Head or backing washer", "its outside diameter beside the seal, such as 8.00 mm", 1, 30),
        _length("rod", "Rod", "where the seal runs, or what carries the washer, such as 2.40 mm", 0.5, 15),
        _lengths("housing", "Housing bore at three angles", "where the packing sits, such as 5.30 mm; 5.31 mm; 5.30 mm", 2, 25),
        _length("guide", "Hole that guides the rod", "such as 2.55 mm", 0.5, 20),
        _length("length", "Length of seat or housing", "such as 6.0 mm", 1, 30),
        _length("thickness", "Thickness of one packing ring", "such as 1.5 mm", 0.3, 5),
        Field("washer", "Sort of washer", "choice", choices=(("flat", "flat"), ("cup", "cup")), public=True),
        Field("stack", "Sort of packing", "choice", choices=(("stacked", "stacked rings"), ("felt", "felt")), public=True),
        _length("nipple", "Nipple", "outside diameter, such as 6.60 mm", 1.5, 14),
        _length("nipple_length", "Nipple length", "what of the sac sits on it, such as 6 mm", 1, 25),
        _length("depth", "Depth for the sac", "from the nipple's shoulder to the barrel's end or the bar's bend, such as 62 mm", 10, 150),
        _length("bar", "Press bar takes", "how much of the bore, such as 0.9 mm; 0 mm for none", 0, 3),
        Field("material", "Sac material", "choice", choices=tuple((key, key) for key in MATERIALS), public=True),
        yes_no("cleaned", "Old rubber cleaned out of the bore", public=True),
        _length("bore_before", "Bore before cleaning", "the same place with the old rubber in it", 2, 30),
        Field("duty", "What the seal does", "choice", choices=tuple((key, key) for key in DUTIES), public=True, hint="hand-turned is taken where nothing is chosen"),
        yes_no("altered", "Was the part altered since it was last measured?", hint="yes: turned, sleeved or sanded; trials before it no longer count"),
    ),
    help="Wipe the jaws, read each figure, type all readings: their spread is the bore's ovality.",
)  # fmt: skip

TRIAL = Kind(
    "trial",
    "Dry trial",
    (
        Field("place", "Which seal", "choice", choices=_PLACE_CHOICES, required=True, public=True),
        Field("what", "Size tried", required=True, public=True, hint="in words, such as dash 007, nitrile; or washer punched at 8.5 mm"),
        _length("section", "Its section, measured", "of a ring: light jaws, four places, such as 1.76 mm", 0.3, 8),
        _length("inside", "Its inside diameter, measured", "of a ring, such as 3.66 mm", 0.3, 30),
        _length("outside", "Its outside diameter, measured", "of a washer, cork or sac, such as 8.46 mm", 1, 40),
        yes_no("dry", "Dry, without any sealant?", "a greased trial is kept, but does not pass", public=True, required=True),
        Field("happened", "What happened", "choice", choices=_OUTCOMES, required=True, public=True),
    ),
    help="One size at a time. A washer that does not touch gives no suction, one size up does (common practice, no source).",
)  # fmt: skip

SEALANT = Kind(
    "sealant",
    "Sealant",
    (
        Field("sealant", "What", "choice", choices=SEALANTS, required=True, public=True),
        Field("place", "Where", "choice", choices=_PLACE_CHOICES, required=True, public=True),
        yes_no("reversible", "Can it be undone?", "shellac: warmth or alcohol; rosin: warmth; grease: wiped off", public=True),
        Field("open_time", "Time to work it", "quantity", unit="min", low=0, high=600, public=True, hint="from its label or your own trial, such as 5 min"),
        Field("cure", "Time to set", "quantity", unit="h", low=0, high=1000, public=True, hint="from its label or your own trial, such as 24 h; the clock counts from it"),
        Field("ago", "Put on how long ago", "quantity", unit="min", low=0, high=20000, hint="left empty: just now"),
    ),
    help="Held until a dry fit has passed.",
)  # fmt: skip

_TEST_CHOICES = (
    ("spring-back", "half stroke and let go"),
    ("vacuum", "vacuum drawn and watched"),
    ("shaft", "bubbles at the shaft"),
    ("press", "sac pressed under water"),
    ("overnight", "a night filled with water"),
    ("capped", "capped, nib up and nib down"),
)


def _seen(test: str, label: str, hint: str = "") -> Field:
    name = test.replace("-", "_") + "_seen"
    return Field(name, label, "choice", choices=tuple((key, key) for key in TESTS[test]), public=True, hint=hint)


TEST = Kind(
    "test",
    "Test",
    (
        Field("test", "Which test", "choice", choices=_TEST_CHOICES, required=True, public=True),
        _length("pushed", "Way pushed", "with the nib free, half the stroke, such as 30 mm", 2, 80),
        _length("returned", "Way it came back by itself", "such as 27 mm; 0 mm for not at all", 0, 80),
        _seen("spring-back", "How far it came back", "only where it was not measured"),
        Field("volume", "Volume of pen, hose and gauge", "quantity", unit="ml", low=0.05, high=500, public=True, hint="such as 12 ml"),
        Field("vacuum_start", "Vacuum at the start", "quantity", unit="kPa", low=0.1, high=101, public=True, hint="below the room's pressure, such as 30 kPa"),
        Field("vacuum_end", "Vacuum at the end", "quantity", unit="kPa", low=0, high=101, public=True, hint="such as 29 kPa"),
        Field("seconds", "Time between", "quantity", unit="s", low=1, high=100000, public=True, hint="such as 60 s or 10 min"),
        Field("gauge", "Gauge's own uncertainty", "quantity", unit="kPa", low=0.001, high=20, public=True, hint="one reading, such as 0.5 kPa; 1 kPa is taken where empty"),
        _seen("vacuum", "Did it hold", "only where it was not read off a gauge"),
        _seen("shaft", "What the shaft showed"),
        _seen("press", "What the nib showed"),
        Field("rested", "How long it rested", "quantity", unit="h", low=0, high=2000, public=True, hint="overnight is 12 h"),
        _seen("overnight", "Where it was damp first"),
        Field("damp", "Every damp place", "items", public=True, hint="such as behind the head; at the rod's end"),
        _seen("capped", "What the cap showed"),
    ),
    help="After any change of a seal the tests begin afresh: only those since the last trial or sealant count.",
)  # fmt: skip

TEST_FIELDS: dict[str, tuple[str, ...]] = {
    "spring-back": ("pushed", "returned", "spring_back_seen"),
    "vacuum": ("volume", "vacuum_start", "vacuum_end", "seconds", "gauge", "vacuum_seen"),
    "shaft": ("shaft_seen",),
    "press": ("press_seen",),
    "overnight": ("rested", "overnight_seen", "damp"),
    "capped": ("capped_seen",),
}
"""Which fields belong to which test."""

_NEEDS = tuple(replace(field, required=False, public=True, default="") for field in KNOCKOUT.fields)
TOOL = Kind(
    "tool",
    "Tool made",
    (
        Field("tool", "What", "choice", choices=(("tube", "knock-out tube"), ("block", "knock-out block"), ("punch", "punch"), ("mandrel", "mandrel or form"), ("other", "something else")), required=True, public=True),
        Field("purpose", "For what", required=True, public=True, hint="such as feed and nib out of a section with a long tail"),
        _length("inside_made", "Inside diameter as made", "such as 2.00 mm", 0.1, 30),
        _length("outside_made", "Outside diameter as made", "such as 4.80 mm", 0.5, 60),
        _length("length_made", "Length as made", "such as 60 mm", 1, 300),
        _length("hole_made", "Hole of the block as made", "such as 8.4 mm", 0.5, 40),
        Field("stuff", "Made of", public=True, hint="such as brass tube, end squared and deburred"),
        Field("kept", "Where it is kept", hint="such as drawer 3; found again from any other job"),
        *_NEEDS,
    ),
    help="Its dimensions stay findable from every other job. With the feed and section measured, its window is worked out.",
)  # fmt: skip
