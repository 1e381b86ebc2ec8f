"""Opening: what each part is made of, which heat its joints can take, and in which order it came apart."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from pentools import tables
from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.limits import VERDICTS
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import PARTS, yes_no
from pentools.record.stages.treatment.facts import all_materials
from pentools.record.stages.treatment.heat import JOINTS, heated_joints, joint_heat
from pentools.record.stages.treatment.work import order_of
from pentools.sums.seal.knockout import KNOCKOUT

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["OPEN", "opening_findings"]

_SEALANTS = tuple(
    dict.fromkeys(row["sealant"] for row in tables.rows("joint_sealants") if row["property"] == "softens")
)
_TREATMENTS = tuple(dict.fromkeys(row["treatment"] for row in tables.rows("compatibility")))
_CONDITIONS = tuple((row["key"], row["condition"].rstrip(".")) for row in tables.rows("opening_holds"))
_CAUTIONS = tuple((row["key"], row["key"].replace("-", " ")) for row in tables.rows("cautions"))
_PART = Field("part", "Part", "choice", choices=PARTS, required=True, public=True, hint="which part of the pen")
_JOINT = Field("joint", "Joint", "choice", choices=JOINTS, required=True, public=True, hint="where two parts meet")


MATERIAL = Kind(
    "material",
    "What it is made of",
    (
        _PART,
        Field("material", "Material", required=True, public=True, hint="such as celluloid, casein, ebonite, gold-filled; or unknown"),
        Field("told_by", "How it was told apart", "long text", public=True, hint="by smell, touch or sound: never a flame, a hot needle or a drop of solvent"),
        yes_no("sure", "Are you sure of it?", "no counts as unknown, with the strictest limits", public=True),
    ),
    help="One entry a part. Two signs that agree make a name; one is a hint.",
)  # fmt: skip
JOINT = Kind(
    "joint",
    "A joint",
    (
        _JOINT,
        Field("sealant", "What it is sealed with, as far as you can tell", "choice", choices=(*((name, name) for name in _SEALANTS), ("unknown", "not known"), ("none", "nothing")), required=True, public=True, hint="shellac is the likeliest in an old sac pen"),
        Field("body", "Material that is warmed", public=True, hint="empty: as named for that part, such as celluloid"),
        Field("seen", "What shows at the joint", "long text", public=True, hint="such as brown crumbs at the seam, a thread under the loupe"),
    ),
    help="Sealant against body gives the heat window.",
)  # fmt: skip
HEAT_PASS = Kind(
    "heat pass",
    "A heating",
    (
        _JOINT,
        Field("surface", "Surface temperature, highest", "quantity", unit="degC", low=15, high=150, public=True, hint="measured at the part, such as 52 °C; empty if it was not measured"),
        Field("minutes", "Minutes", "quantity", unit="min", low=0.05, high=60, public=True, hint="such as 1.5 min"),
        Field("moved", "What moved", "long text", public=True, hint="such as a quarter turn; empty for nothing"),
        Field("broke", "What broke or changed", "long text", public=True, hint="shape, colour, smell, a crack; empty for nothing"),
        yes_no("free", "Did it come free?", public=True),
    ),
    help="Warm, test by hand, rest, repeat. One entry each time.",
)  # fmt: skip
STEP = Kind(
    "step",
    "A step of taking it apart",
    (
        Field("number", "Number in the order of work", "count", low=1, high=40, public=True, hint="as in the list beside, such as 3; empty for a step of your own"),
        Field("did", "What was done", "long text", required=True, public=True, hint="one or two sentences"),
        Field("came_off", "What came off", "items", public=True, hint="such as button; pressure bar"),
        Field("moved", "What moved", "long text", public=True, hint="turns, millimetres, which way"),
        Field("broke", "What broke", "long text", public=True, hint="as it happened; empty for nothing"),
        Field("photo", "Photo", "photo", public=True, hint="a file in photos/"),
    ),
)  # fmt: skip
MET = Kind(
    "met",
    "Found to be so",
    (
        Field("condition", "What is so", "choice", choices=_CONDITIONS, required=True, public=True, hint="what a step in the list waits for"),
        Field("how", "How you know", "long text", required=True, hint="such as: agreed by letter of 3 March; thread seen under the loupe"),
    ),
    help="A step waits for these; say how you know, and it is let go.",
)  # fmt: skip
BLOCK = Kind(
    "knock-out block",
    "Knocking out nib and feed",
    tuple(replace(field, public=True) for field in KNOCKOUT.fields),
    log=False,
    help="What the tube and the hole of the block must measure.",
)
TRAY = Kind(
    "parts tray",
    "Parts tray",
    (
        Field("items", "What lies in it", "items", required=True, public=True, hint="every part on its own, such as nib; feed; lever; pin"),
        Field("kept", "Where it is kept", hint="such as tray 3, lidded"),
        yes_no("all_there", "Is everything there?", "counted against what came off", public=True),
    ),
)  # fmt: skip
OVERRULE = Kind(
    "overrule",
    "Overrule the table",
    (
        Field("material", "Material", required=True, public=True, hint="such as casein"),
        Field("treatment", "Treatment", "choice", choices=tuple((name, name) for name in _TREATMENTS), required=True, public=True, hint="what the table is stricter about than you"),
        Field("verdict", "The bench says", "choice", choices=tuple((word, word) for word in VERDICTS), required=True, public=True, hint="ok, limited or never"),
        Field("reason", "Why", "long text", required=True, public=True, hint="it stays beside every result"),
        Field("how_far", "How far", public=True, hint="such as one minute, dried at once"),
        Field("most_minutes", "Longest contact", "quantity", unit="min", low=0, high=2880, public=True, hint="such as 2 min"),
        Field("most_warmth", "Highest surface temperature", "quantity", unit="degC", low=15, high=120, public=True, hint="such as 50 °C"),
    ),
    help="The table's own answer stays beside yours.",
)  # fmt: skip
CAUTION_READ = Kind(
    "caution read",
    "Caution read",
    (Field("caution", "Caution", "choice", choices=_CAUTIONS, required=True, hint="once a job is enough"),),
    public=False,
)


def opening_findings(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about how a pen is opened, gravest first.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of Finding
        On materials, on the heatings of each joint, and on the order of work.
    """
    found: list[Finding] = []
    labels = dict(PARTS)
    for part, name, _ in all_materials(job):
        if name == "unknown":
            text = f"The material of the {labels[part]} is not named: no heat and no soak for it, and the strictest limits."
            found.append(Finding("warning", text, "not-named"))
    for joint in heated_joints(job):
        heat = joint_heat(job, joint)
        if heat is not None:
            found += heat.findings
    order = order_of(job)
    if order is not None:
        found += order.findings
    return gravest_first(found)


def _state(job: Job) -> StageState:
    if not job.record.live("open"):
        return StageState("not begun")
    order = order_of(job)
    if order is None:
        return StageState("open", "the filling system is not named, so there is no order of work")
    done = sum(step.state == "done" for step in order.steps)
    return StageState("done" if order.next_step is None else "open", f"{done} of {len(order.steps)} steps done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("open"):
        return ()
    topics = ("out of order", "over-limit", "no-heat", "not-measured")
    found = [
        f.under("Opening", "warning")
        for f in opening_findings(job)
        if f.topic in topics and f.level in ("warning", "stop")
    ]
    if job.record.live("open", "heat pass") and job.held("heat"):
        found.insert(0, Finding("warning", f"Opening: heatings are logged although {job.held('heat')}.", "heat-held"))
    off = [str(item) for _, v in job.log("open", "step") if isinstance(v["came_off"], tuple) for item in v["came_off"]]
    if off and not job.record.live("open", "parts tray"):
        found.append(Finding("note", "Opening: parts came off, and no parts tray is listed.", "tray"))
    return tuple(found)


OPEN = Stage(
    "open",
    "Opening",
    "What it is made of, how warm it may get, and in which order it came apart.",
    (MATERIAL, JOINT, HEAT_PASS, STEP, MET, BLOCK, TRAY, OVERRULE, CAUTION_READ),
    panel="pentools.panels.stages.treatment.opening:OpenPanel",
    section="pentools.writeup.sections.treatment.opening:section",
    state=_state,
    checks=_checks,
)
