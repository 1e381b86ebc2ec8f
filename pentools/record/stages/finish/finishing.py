"""The finish: zones and masks, consent, a plan in micrometres, each step as it was done, and what was measured.

What the entries come to is worked out in `finish_plan` and `finish_removal`; here is what is asked.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.finish.nib import FEELS
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import mass, yes_no
from pentools.record.stages.finish.plan import progress_of
from pentools.record.stages.finish.words import finish_findings
from pentools.sums.finish.abrasives import ABRASIVES
from pentools.tables.abrasives import zones

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["FINISH", "ZONE_PARTS", "material_known"]

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

_FROM_SUM = (
    "material", "defect", "finish", "own", "as_given", "zone", "wall", "spent", "defect_length", "trim",
    "cushioned_finish", "scratch_share", "time_limit", "judged_by",
)  # fmt: skip


def _sum_field(name: str) -> Field:
    field = next(f for f in ABRASIVES.fields if f.name == name)
    return replace(field, public=True, required=name == "defect")


ZONE = Kind(
    "zone",
    "Zone and mask",
    (
        Field("part", "Part", "choice", choices=ZONE_PARTS, required=True, public=True, hint="which part of the pen"),
        Field("zone", "What it is there", "choice", choices=ZONE_CHOICES, required=True, public=True, hint="imprint, threads and plating can spare nothing"),
        Field("start_mm", "From", "quantity", unit="mm", low=0, high=160, public=True, hint="from the part's front end, such as 12 mm; empty: its front end"),
        Field("end_mm", "To", "quantity", unit="mm", low=0, high=160, public=True, hint="such as 34 mm; empty: its rear end"),
        yes_no("masked", "Is it masked?", "yes or no", public=True),
        Field("words", "In your words", public=True, hint="such as: maker's imprint, worn but readable"),
    ),
    help="One entry for each zone: first the large plain ones, then what lies in them.",
)  # fmt: skip
CONSENT = Kind(
    "consent to polish",
    "Consent to polish",
    (
        yes_no("agreed", "Has the owner agreed to polishing?", "polishing takes substance off for good", required=True),
        Field("agreed_on", "Agreed on", "date", hint="2026-03-14"),
        Field("channel", "How", hint="letter, e-mail, by word of mouth"),
        Field("agreed_words", "What exactly was agreed", "long text", hint="how far to go, what to leave"),
    ),
    log=False,
    public=False,
)
MASKS = Kind(
    "masks on",
    "Masks on",
    (
        yes_no("masks", "Are all masks on?", "yes too where nothing needs a mask: say so below", public=True, required=True),
        Field("with_what", "What is masked, and with what", public=True, hint="such as: imprint and cap bands, low-tack tape"),
        Field("photo", "Photo of the masks", "photo", hint="a file in photos/"),
    ),
    log=False,
)  # fmt: skip
PLAN = Kind(
    "plan",
    "Plan",
    (
        *(_sum_field(name) for name in _FROM_SUM),
        yes_no("cautious", "Take three times the last scratch, not twice?", "the more cautious rule: yes or no", public=True),
        Field("worked_length", "Length that is polished", "quantity", unit="mm", low=1, high=200, public=True, hint="for removal by mass, such as 70 mm; empty: the barrel's"),
        Field("worked_diameter", "Diameter there, on average", "quantity", unit="mm", low=2, high=40, public=True, hint="such as 12 mm; empty: the barrel's"),
    ),
    log=False,
    help="Change any box and the warnings below follow at once; Save makes it the plan.",
)  # fmt: skip
NIB_PLAN = Kind(
    "nib plan",
    "Smoothing the nib",
    (
        Field("feel", "How the nib feels", "choice", choices=tuple((feel, feel) for feel in FEELS), public=True, required=True, hint="the least that is true"),
        yes_no("aligned", "Tines level under the loupe?", "empty: nobody has looked yet", public=True),
        yes_no("tipped", "Is there hard tipping left?", "yes or no", public=True),
    ),
    log=False,
)  # fmt: skip
STEP = Kind(
    "step",
    "Step",
    (
        Field("grade", "Grade", required=True, public=True, hint="with its scale, such as P600, cushioned 2400, film 9 um; the plan's next one stands here"),
        Field("zone", "Zone", "choice", choices=ZONE_CHOICES, public=True, default="plain barrel", hint="where it was used"),
        Field("minutes", "Minutes", "quantity", unit="min", low=0.05, high=240, public=True, hint="such as 6 min"),
        Field("strokes", "Strokes", "count", low=1, high=5000, public=True, hint="only if you counted them"),
        Field("wet", "Wet or dry", "choice", choices=WET, public=True, hint="as it was done"),
        Field("fresh", "Fresh or used abrasive", "choice", choices=STATES, public=True, hint="a used sheet cuts slower"),
        Field("direction", "Direction", "choice", choices=DIRECTIONS, public=True, hint="turned between grades, so that old lines show"),
        Field("seen", "What the loupe shows", "long text", public=True, hint="such as: only lines along the barrel; two pits left"),
        yes_no("cleared", "Are the older lines gone?", "no: the same grade is offered again", public=True),
    ),
)  # fmt: skip
MEASURE = Kind(
    "measure",
    "Measured before or after",
    (
        Field("station", "Place on the pen", public=True, hint="the same marked place each time, such as 20 mm from the mouth"),
        Field("diameter", "Diameter there", "quantity", unit="mm", low=2, high=40, public=True, hint="such as 12.031 mm ± 0.002 mm"),
        Field("weighed", "What was weighed", public=True, hint="the same parts each time, such as barrel alone, dry"),
        mass("mass", "Mass", "such as 9.184 g; clean and dry"),
    ),
    help="Before the first step, after the last, and between steps if the bench is to learn its own rate.",
)  # fmt: skip


def material_known(job: Job) -> bool:
    """Whether the intake names the material; "unknown", "not sure" and a question mark do not name it."""
    text = str(job.values("intake", "arrival")["material"] or "").strip()
    return bool(text) and not re.search(r"unknown|not known|not sure|unsure|\?", text, re.IGNORECASE)


def _state(job: Job) -> StageState:
    if not job.record.live("finish"):
        return StageState("not begun")
    reason = job.held("polish")
    if reason:
        return StageState("held", reason)
    progress = progress_of(job)
    if progress is None:
        return StageState("open", "nothing is planned yet")
    if progress.next_step is not None:
        return StageState("open", f"{progress.planned_done} of {len(progress.working.steps)} steps done")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("finish"):
        return ()
    found = [f for f in finish_findings(job) if f.level in ("warning", "stop")]
    reason = job.held("polish")
    if reason and job.record.live("finish", "step"):
        found.insert(0, Finding("warning", f"Finish: steps are logged although {reason}.", "polish-held"))
    return tuple(found)


FINISH = Stage(
    "finish",
    "Finish",
    "From the deepest scratch worth removing to the gloss agreed, in micrometres, with imprint, threads and plating left alone.",
    (ZONE, CONSENT, MASKS, PLAN, STEP, MEASURE, NIB_PLAN),
    panel="pentools.panels.stages.finish.finishing:FinishPanel",
    section="pentools.writeup.sections.finish.finishing:section",
    state=_state,
    checks=_checks,
    cautions=(
        "Eyes and lungs: wear eye protection and a mask for fine dust (P2, N95 or better). Keep the dust of celluloid wet and wipe it up wet; keep that of hard rubber and casein collected, with suction or a barely damp cloth, never blown away.",
        "Fire: celluloid and its dust burn fiercely and are lit by friction. No flame, no spark, no hot wheel, no heap of dry dust; keep the wet residue under water in a lidded tin.",
        "Old red, orange and mottled hard rubber may hold pigments of mercury, antimony or lead: gloves, nothing eaten at the bench, the residue handed in as hazardous waste.",
        "Follow local codes; ask a licensed professional.",
    ),
)
