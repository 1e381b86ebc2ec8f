"""What is asked at opening: materials and joints, heatings, steps, what was found to be so, the tray, and overrulings."""

from __future__ import annotations

from typing import Annotated

from pentools import tables
from pentools.calc.treatment.cautions import CautionRow
from pentools.calc.treatment.heat_window import SealantRow
from pentools.calc.treatment.limits import VERDICTS, CompatibilityRow
from pentools.calc.treatment.order import HoldRow
from pentools.fields import ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.units import Reading

__all__ = [
    "BLOCK",
    "CAUTION_READ",
    "HEAT_PASS",
    "JOINT",
    "JOINTS",
    "JOINT_PLACES",
    "MATERIAL",
    "MET",
    "OVERRULE",
    "STEP",
    "TRAY",
    "Block",
    "CautionRead",
    "HeatPass",
    "Joint",
    "Material",
    "Met",
    "Overrule",
    "Step",
    "Tray",
]

_SEALANTS = tuple(
    dict.fromkeys(
        row.sealant
        for row in tables.read(SealantRow, "joint_sealants")
        if row.property in ("softens", "holds nothing", "does not let go")
    )
)
_TREATMENTS = tuple(dict.fromkeys(row.treatment for row in tables.read(CompatibilityRow, "compatibility")))
_CONDITIONS = tuple((row.key, row.condition.rstrip(".")) for row in tables.read(HoldRow, "opening_holds"))
_CAUTIONS = tuple((row.key, row.key.replace("-", " ")) for row in tables.read(CautionRow, "cautions"))
JOINT_PLACES: tuple[tuple[str, str, str], ...] = (
    ("section", "section and barrel", "barrel"), ("nib", "nib and feed in the section", "section"),
    ("end", "blind cap or knob and barrel", "barrel"), ("filler", "filling mechanism and barrel", "barrel"),
    ("inner cap", "inner cap and cap", "cap"), ("clip", "clip or cap top and cap", "cap"), ("other", "another joint", "whole"),
)  # fmt: skip
"""Every joint: its key, its name in words, and the part that is warmed."""
JOINTS: tuple[tuple[str, str], ...] = tuple((key, label) for key, label, _ in JOINT_PLACES)

# fmt: off
_PART = ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")

_JOINT = ask("Joint", "choice", choices=JOINTS, required=True, hint="where two parts meet", audience="everybody")

class Material(Form, frozen=True):
    """What it is made of: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    material: Annotated[str | None, ask("Material", required=True, hint="such as celluloid, casein, ebonite, gold-filled; or unknown", audience="everybody")] = None
    told_by: Annotated[str | None, ask("How it was told apart", "long text", hint="by smell, touch or sound: never a flame, a hot needle or a drop of solvent", audience="everybody")] = None
    sure: Annotated[bool | None, yes_no("Are you sure of it?", "no counts as unknown, with the strictest limits", audience="everybody")] = None


MATERIAL = Kind("open", "material", "What it is made of", Material, help="One entry a part. Two signs that agree make a name; one is a hint.")


class Joint(Form, frozen=True):
    """A joint: what one entry holds."""

    joint: Annotated[str | None, _JOINT] = None
    sealant: Annotated[str | None, ask("What it is sealed with, as far as you can tell", "choice", choices=(*((name, name) for name in _SEALANTS), ("unknown", "not known"), ("none", "nothing")), required=True, hint="shellac is the likeliest in an old sac pen", audience="everybody")] = None
    body: Annotated[str | None, ask("Material that is warmed", hint="empty: as named for that part, such as celluloid", audience="everybody")] = None
    seen: Annotated[str | None, ask("What shows at the joint", "long text", hint="such as brown crumbs at the seam, a thread under the loupe", audience="everybody")] = None


JOINT = Kind("open", "joint", "A joint", Joint, help="Sealant against body gives the heat window.")


class HeatPass(Form, frozen=True):
    """A heating: what one entry holds."""

    joint: Annotated[str | None, _JOINT] = None
    surface: Annotated[Reading | None, ask("Surface temperature, highest", "quantity", unit="degC", low=15, high=150, hint="measured at the part, such as 52 °C; empty if it was not measured", audience="everybody")] = None
    minutes: Annotated[Reading | None, ask("Minutes", "quantity", unit="min", low=0.05, high=60, hint="such as 1.5 min", audience="everybody")] = None
    moved: Annotated[str | None, ask("What moved", "long text", hint="such as a quarter turn; empty for nothing", audience="everybody")] = None
    broke: Annotated[str | None, ask("What broke or changed", "long text", hint="shape, colour, smell, a crack; empty for nothing", audience="everybody")] = None
    free: Annotated[bool | None, yes_no("Did it come free?", audience="everybody")] = None


HEAT_PASS = Kind("open", "heat pass", "A heating", HeatPass, help="Warm, test by hand, rest, repeat. One entry each time.")


class Step(Form, frozen=True):
    """A step of taking it apart: what one entry holds."""

    number: Annotated[int | None, ask("Number in the order of work", "count", low=1, high=40, hint="as in the list beside, such as 3; empty for a step of your own", audience="everybody")] = None
    did: Annotated[str | None, ask("What was done", "long text", required=True, hint="one or two sentences", audience="everybody")] = None
    came_off: Annotated[tuple[str, ...] | None, ask("What came off", "items", hint="such as button; pressure bar", audience="everybody")] = None
    moved: Annotated[str | None, ask("What moved", "long text", hint="turns, millimetres, which way", audience="everybody")] = None
    broke: Annotated[str | None, ask("What broke", "long text", hint="as it happened; empty for nothing", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


STEP = Kind("open", "step", "A step of taking it apart", Step)


class Met(Form, frozen=True):
    """Found to be so: what one entry holds."""

    condition: Annotated[str | None, ask("What is so", "choice", choices=_CONDITIONS, required=True, hint="what a step in the list waits for", audience="everybody")] = None
    how: Annotated[str | None, ask("How you know", "long text", required=True, hint="such as: agreed by letter of 3 March; thread seen under the loupe")] = None


MET = Kind("open", "met", "Found to be so", Met, help="A step waits for these; say how you know, and it is let go.")


class Block(Form, frozen=True):
    """Knocking out nib and feed: what one entry holds."""

    tail: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    shoulder: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    bore: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    depth: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    front: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    section: Annotated[Reading | None, asked_by(KNOCKOUT)] = None
    clearance: Annotated[Reading | None, asked_by(KNOCKOUT)] = None


BLOCK = Kind("open", "knock-out block", "Knocking out nib and feed", Block, log=False, help="What the tube and the hole of the block must measure.")


class Tray(Form, frozen=True):
    """Parts tray: what one entry holds."""

    items: Annotated[tuple[str, ...] | None, ask("What lies in it", "items", required=True, hint="every part on its own, such as nib; feed; lever; pin", audience="everybody")] = None
    kept: Annotated[str | None, ask("Where it is kept", hint="such as tray 3, lidded", audience="bench")] = None
    all_there: Annotated[bool | None, yes_no("Is everything there?", "counted against what came off", audience="everybody")] = None


TRAY = Kind("open", "parts tray", "Parts tray", Tray)


class Overrule(Form, frozen=True):
    """Overrule the table: what one entry holds."""

    material: Annotated[str | None, ask("Material", required=True, hint="such as casein", audience="everybody")] = None
    treatment: Annotated[str | None, ask("Treatment", "choice", choices=tuple((name, name) for name in _TREATMENTS), required=True, hint="what the table is stricter about than you", audience="everybody")] = None
    verdict: Annotated[str | None, ask("The bench says", "choice", choices=tuple((word, word) for word in VERDICTS), required=True, hint="ok, limited or never", audience="everybody")] = None
    reason: Annotated[str | None, ask("Why", "long text", required=True, hint="it stays beside every result", audience="everybody")] = None
    how_far: Annotated[str | None, ask("How far", hint="such as one minute, dried at once", audience="everybody")] = None
    most_minutes: Annotated[Reading | None, ask("Longest contact", "quantity", unit="min", low=0, high=2880, hint="such as 2 min", audience="everybody")] = None
    most_warmth: Annotated[Reading | None, ask("Highest surface temperature", "quantity", unit="degC", low=15, high=120, hint="such as 50 °C", audience="everybody")] = None


OVERRULE = Kind("open", "overrule", "Overrule the table", Overrule, help="The table's own answer stays beside yours.")


class CautionRead(Form, frozen=True):
    """Caution read: what one entry holds."""

    caution: Annotated[str | None, ask("Caution", "choice", choices=_CAUTIONS, required=True, hint="once a job is enough")] = None


CAUTION_READ = Kind("open", "caution read", "Caution read", CautionRead)


# fmt: on
