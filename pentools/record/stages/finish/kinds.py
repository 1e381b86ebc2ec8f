"""What the finish asks: zones and masks, consent, the plan, each step as it was done, and what was measured."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import mass, yes_no
from pentools.sums.finish.abrasives import ABRASIVES
from pentools.tables.abrasives import zones
from pentools.tables.nib import feels
from pentools.units import Reading

__all__ = [
    "CONSENT",
    "DIRECTIONS",
    "MASKS",
    "MEASURE",
    "NIB_PLAN",
    "PLAN",
    "STATES",
    "STEP",
    "WET",
    "ZONE",
    "ZONE_CHOICES",
    "ZONE_PARTS",
    "Consent",
    "Masks",
    "Measure",
    "NibPlan",
    "Plan",
    "Step",
    "Zone",
]

ZONE_PARTS: tuple[tuple[str, str], ...] = (
    ("cap", "cap"), ("clip", "clip"), ("cap-band", "cap band"), ("barrel", "barrel"), ("section", "section"),
    ("cap-threads", "cap threads"), ("end", "blind cap or end knob"), ("nib", "nib"),
)  # fmt: skip
_ZONE_WORDS = {"plain barrel": "plain (barrel or cap)", "seat": "seat, where parts fit or seal"}
ZONE_CHOICES: tuple[tuple[str, str], ...] = tuple((name, _ZONE_WORDS.get(name, name)) for name in zones())
WET = (("wet", "wet"), ("damp", "barely damp"), ("dry", "dry"))
STATES = (("fresh", "fresh"), ("used", "used"))
DIRECTIONS = (
    ("along", "along the pen"), ("around", "around the pen"), ("crosswise", "crosswise"), ("circles", "small circles"),
)  # fmt: skip


# fmt: off
class Zone(Form, frozen=True):
    """Zone and mask: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=ZONE_PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    zone: Annotated[str | None, ask("What it is there", "choice", choices=ZONE_CHOICES, required=True, hint="imprint, threads and plating can spare nothing", audience="everybody")] = None
    start_mm: Annotated[Reading | None, ask("From", "quantity", unit="mm", low=0, high=160, hint="from the part's front end, such as 12 mm; empty: its front end", audience="everybody")] = None
    end_mm: Annotated[Reading | None, ask("To", "quantity", unit="mm", low=0, high=160, hint="such as 34 mm; empty: its rear end", audience="everybody")] = None
    masked: Annotated[bool | None, yes_no("Is it masked?", audience="everybody")] = None
    words: Annotated[str | None, ask("In your words", hint="such as: maker's imprint, worn but readable", audience="everybody")] = None


ZONE = Kind("finish", "zone", "Zone and mask", Zone, help="One entry for each zone: first the large plain ones, then what lies in them.")


class Consent(Form, frozen=True):
    """Consent to polish: what one entry holds."""

    agreed: Annotated[bool | None, yes_no("Has the owner agreed to polishing?", "polishing takes substance off for good", required=True)] = None
    agreed_on: Annotated[str | None, ask("Agreed on", "date", hint="2026-03-14")] = None
    channel: Annotated[str | None, ask("How", hint="letter, e-mail, by word of mouth")] = None
    agreed_words: Annotated[str | None, ask("What exactly was agreed", "long text", hint="how far to go, what to leave")] = None


CONSENT = Kind("finish", "consent to polish", "Consent to polish", Consent, log=False)


class Masks(Form, frozen=True):
    """Masks on: what one entry holds."""

    masks: Annotated[bool | None, yes_no("Are all masks on?", "yes too where nothing needs a mask: say so below", required=True, audience="everybody")] = None
    with_what: Annotated[str | None, ask("What is masked, and with what", hint="such as: imprint and cap bands, low-tack tape", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo of the masks", "photo", hint="a file in photos/")] = None


MASKS = Kind("finish", "masks on", "Masks on", Masks, log=False)


class Plan(Form, frozen=True):
    """Plan: what one entry holds."""

    material: Annotated[str | None, asked_by(ABRASIVES, required=False)] = None
    defect: Annotated[str | None, asked_by(ABRASIVES, required=True)] = None
    finish: Annotated[str | None, asked_by(ABRASIVES, required=False)] = None
    own: Annotated[tuple[str, ...] | None, asked_by(ABRASIVES, required=False)] = None
    as_given: Annotated[bool | None, asked_by(ABRASIVES, required=False)] = None
    zone: Annotated[str | None, asked_by(ABRASIVES, required=False)] = None
    wall: Annotated[Reading | None, asked_by(ABRASIVES, required=False)] = None
    spent: Annotated[Reading | None, asked_by(ABRASIVES, required=False)] = None
    defect_length: Annotated[Reading | None, asked_by(ABRASIVES, required=False)] = None
    trim: Annotated[str | None, asked_by(ABRASIVES, required=False)] = None
    cushioned_finish: Annotated[tuple[str, ...] | None, asked_by(ABRASIVES, required=False)] = None
    scratch_share: Annotated[float | None, asked_by(ABRASIVES, required=False)] = None
    time_limit: Annotated[Reading | None, asked_by(ABRASIVES, required=False)] = None
    judged_by: Annotated[str | None, asked_by(ABRASIVES, required=False)] = None
    cautious: Annotated[bool | None, yes_no("Take three times the last scratch, not twice?", "the more cautious rule: yes or no", audience="everybody")] = None
    worked_length: Annotated[Reading | None, ask("Length that is polished", "quantity", unit="mm", low=1, high=200, hint="for removal by mass, such as 70 mm; empty: the barrel's", audience="everybody")] = None
    worked_diameter: Annotated[Reading | None, ask("Diameter there, on average", "quantity", unit="mm", low=2, high=40, hint="such as 12 mm; empty: the barrel's", audience="everybody")] = None


PLAN = Kind("finish", "plan", "Plan", Plan, log=False, help="Change any box and the warnings below follow at once; Save makes it the plan.")


class NibPlan(Form, frozen=True):
    """Smoothing the nib: what one entry holds."""

    feel: Annotated[str | None, ask("How the nib feels", "choice", choices=feels(), required=True, hint="the least that is true", audience="everybody")] = None
    aligned: Annotated[bool | None, yes_no("Tines level under the loupe?", "empty: nobody has looked yet", audience="everybody")] = None
    tipped: Annotated[bool | None, yes_no("Is there hard tipping left?", audience="everybody")] = None


NIB_PLAN = Kind("finish", "nib plan", "Smoothing the nib", NibPlan, log=False)


class Step(Form, frozen=True):
    """Step: what one entry holds."""

    grade: Annotated[str | None, ask("Grade", required=True, hint="with its scale, such as P600, film 9 um, cushioned cloth 4000; the plan's next one stands here", audience="everybody")] = None
    zone: Annotated[str | None, ask("Zone", "choice", choices=ZONE_CHOICES, hint="where it was used; empty: where the plan is", audience="everybody")] = None
    minutes: Annotated[Reading | None, ask("Minutes", "quantity", unit="min", low=0.05, high=240, hint="such as 6 min", audience="everybody")] = None
    strokes: Annotated[int | None, ask("Strokes", "count", low=1, high=5000, hint="only if you counted them", audience="everybody")] = None
    wet: Annotated[str | None, ask("Wet or dry", "choice", choices=WET, hint="as it was done", audience="everybody")] = None
    fresh: Annotated[str | None, ask("Fresh or used abrasive", "choice", choices=STATES, hint="a used sheet cuts slower", audience="everybody")] = None
    direction: Annotated[str | None, ask("Direction", "choice", choices=DIRECTIONS, hint="turned between grades, so that old lines show", audience="everybody")] = None
    seen: Annotated[str | None, ask("What the loupe shows", "long text", hint="such as: only lines along the barrel; two pits left", audience="everybody")] = None
    cleared: Annotated[bool | None, yes_no("Are the older lines gone?", "no: the same grade is offered again", audience="everybody")] = None


STEP = Kind("finish", "step", "Step", Step)


class Measure(Form, frozen=True):
    """Measured before or after: what one entry holds."""

    station: Annotated[str | None, ask("Place on the pen", hint="the same marked place each time, such as 20 mm from the mouth", audience="everybody")] = None
    diameter: Annotated[Reading | None, ask("Diameter there", "quantity", unit="mm", low=2, high=40, hint="such as 12.031 mm ± 0.002 mm", audience="everybody")] = None
    weighed: Annotated[str | None, ask("What was weighed", hint="the same parts each time, such as barrel alone, dry", audience="everybody")] = None
    mass: Annotated[Reading | None, mass("Mass", "such as 9.184 g; clean and dry")] = None


MEASURE = Kind("finish", "measure", "Measured before or after", Measure, help="Before the first step, after the last, and between steps if the bench is to learn its own rate.")


# fmt: on
