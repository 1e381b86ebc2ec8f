"""Opening on a page: what it is made of, what heat it met against its limits, and how it came apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import capital
from pentools.record.stages.treatment.facts import cautions_of
from pentools.record.stages.treatment.heat import heated_joints, joint_heat
from pentools.record.stages.treatment.opening import opening_findings
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, STEP
from pentools.record.stages.treatment.words import came_apart, limits_table, what_came_of_it
from pentools.record.stages.treatment.work import block_of, opening_actions
from pentools.writeup.blocks import (
    Audience,
    Block,
    Details,
    FigureBlock,
    Findings,
    Lead,
    Notice,
    Paragraph,
    Section,
    Table,
)
from pentools.writeup.drawn import heat_charts
from pentools.writeup.sections.generic import kind_facts, kind_table, releases_of
from pentools.writeup.sections.job.pictures import photos_beside

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["opening_caution", "section"]

_TITLE = "How it came apart"
_GRAVE = ("over-limit", "no-heat", "broke", "out of order", "overruled")


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What it is made of and how it was opened.

    Parameters
    ----------
    stage : Stage
        The opening stage.
    audience : {"owner", "everybody"}
        Who will see the page; how a condition was known and where parts are kept are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, _TITLE)
    blocks: list[Block] = []
    words = what_came_of_it(job)
    if words:
        blocks.append(Lead(words))
    grave = tuple(f for f in opening_findings(job) if f.topic in _GRAVE and f.level in ("warning", "stop"))
    if grave:
        blocks.append(Findings(grave))
    blocks += _table_of(job, stage, "material", audience, "What each part is made of")
    blocks += _limits(job)
    blocks += _heat(job, stage, audience)
    blocks += _table_of(job, stage, "step", audience, "Step by step")
    blocks += photos_beside(job, audience, ((logged.values.photo, logged.values.did or "") for logged in job.log(STEP)))
    blocks += _block(job, stage, audience)
    blocks += _table_of(job, stage, "parts tray", audience, "What came out, counted")
    blocks += _table_of(job, stage, "overrule", audience, "Where the bench overruled the table of limits")
    blocks += _table_of(job, stage, "met", audience, "What was made sure of first")
    blocks += _cautions(job, audience)
    blocks += releases_of(job, stage, audience)
    title = _TITLE if came_apart(job) else "What it is made of, and what it can take"
    return Section(stage.key, title, tuple(blocks))


def _table_of(job: Job, stage: Stage, kind: str, audience: Audience, caption: str) -> list[Block]:
    return kind_table(job, stage.kind(kind), audience, without=("photo",), caption=caption)


def _limits(job: Job) -> list[Block]:
    """What each named part can take, with reason and source."""
    rows = limits_table(job)
    if not rows:
        return []
    head = ("Part", "Treatment", "Verdict", "How far", "Because", "Source, and how sure")
    note = "“Unknown” takes the strictest limit of all materials."
    return [Details("What each part can take, and where that is known from", (Table("Limits", head, tuple(rows), source_note=note),))]  # fmt: skip


def _heat(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    found = [heat for joint in heated_joints(job) if (heat := joint_heat(job, joint)) is not None]
    blocks: list[Block] = []
    blocks += [FigureBlock(drawing) for drawing in heat_charts(job)]
    blocks += _table_of(job, stage, "joint", audience, "Joints")
    blocks += _table_of(job, stage, "heat pass", audience, "Heatings")
    for heat in found:
        known = "; ".join(heat.sources)
        blocks.append(Paragraph(f"Limits of heat, {heat.label}: {known} ({heat.certainty})."))
    return blocks


def _block(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    try:
        answer = block_of(job)
    except InputError as error:
        answer = None
        blocks: list[Block] = [Notice(f"The sizes for knocking out give no tool: {error}", "To be settled")] if audience == "owner" else []  # fmt: skip
    else:
        blocks = [] if answer is None else [Paragraph(f"For knocking out nib and feed: {answer.sentence}")]
    return [*blocks, *kind_facts(job, stage.kind("knock-out block"), audience, caption="Knocking out nib and feed")]  # fmt: skip


def _cautions(job: Job, audience: Audience) -> list[Block]:
    """To everybody, the gravest caution that applies; an owner does not do the work."""
    if audience == "owner":
        return []
    caution = opening_caution(job)
    return [Notice(caution, "Caution")] if caution else []


def opening_caution(job: Job) -> str:
    """The gravest caution of opening with heat; empty where nothing was heated, or nothing in it burns."""
    if not job.log(HEAT_PASS):
        return ""
    known = cautions_of(job, opening_actions(job))
    found = next((c for key in ("nitrate-fire", "closed-pen") for c in known if c.key == key), None)
    return "" if found is None else f"{capital(found.key.replace('-', ' '))}: {found.text[:1].lower()}{found.text[1:]}"
