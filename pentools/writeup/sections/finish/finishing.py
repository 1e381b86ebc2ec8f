"""The finish on a page: what was done to the surface and what it took, in one sentence, a figure, and what was left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.numbers import capital, plain
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.kinds import MASKS, PLAN, STEP, ZONE
from pentools.record.stages.finish.plan import Progress, plan_answer, progress_of, steps_done
from pentools.record.stages.finish.removal import removed_so_far
from pentools.record.stages.finish.words import finish_findings, finish_sentence, left_and_why, zone_stretch
from pentools.tables.abrasives import materials
from pentools.writeup.blocks import (
    Audience,
    Block,
    Details,
    FigureBlock,
    Findings,
    Lead,
    Notice,
    Paragraph,
    Photos,
    Section,
    Table,
)
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import kind_facts, kind_table, releases_of
from pentools.writeup.sections.job.pictures import photo_among
from pentools.writeup.words import THIN, date_in_words, minutes_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage
    from pentools.record.stages.finish.plan import StepDone

__all__ = ["finish_caution", "section"]

# what a reader of the page must know; the rest is advice for the bench
_FOR_THE_READER = (
    "over-budget",
    "budget-spent",
    "plan-differs",
    "not-resolved",
    "went-coarser",
    "forbidden-zone",
    "leave-alone",
)
TITLE = "How the surface was finished"
_CLOSING = "Follow local codes; ask a licensed professional."


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was done to the surface, and what it took.

    Parameters
    ----------
    stage : Stage
        The finish.
    audience : {"owner", "everybody"}
        Who will see the page; dates, notes and the owner's consent are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, TITLE)
    blocks: list[Block] = []
    if bool(job.log(STEP)) or bool(job.log(PLAN)):
        blocks.append(Lead(_lead(job)))
        blocks += _unread(job, audience)
        blocks += _ladder(job)
    blocks += _steps(job, stage, audience)
    blocks += _zones(job)
    blocks += _removal(job)
    blocks += _left(job)
    blocks += _advice(job, audience)
    blocks += _masks(job, audience)
    caution = finish_caution(job)
    blocks += [Notice(caution, "Caution")] if caution else []
    blocks += _workings(job, stage, audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def _lead(job: Job) -> str:
    if job.log(STEP) or progress_of(job) is not None:
        return finish_sentence(job, ahead=False)
    return "A plan for the surface was begun."


def _unread(job: Job, audience: Audience) -> list[Block]:
    if audience != "owner":
        return []
    try:
        plan_answer(job)
    except InputError as error:
        return [Notice(f"The plan gives no result: {error}", "To be settled")]
    return []


def _ladder(job: Job) -> list[Block]:
    from pentools.figures.finish.finishing import ladder_of_job

    drawing = ladder_of_job(job)
    return [] if drawing is None else [FigureBlock(drawing)]


def _zones(job: Job) -> list[Block]:
    from pentools.figures.finish.finishing import zones_figures

    return [FigureBlock(drawing) for drawing in zones_figures(job)]


def _steps(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """The steps done, with what each is estimated to have taken."""
    progress = progress_of(job)
    done = steps_done(job, progress.working if progress is not None else None)
    if not done:
        return []
    kind = stage.kind("step")
    dates = {logged.entry.id: date_in_words(logged.entry.time) for logged in job.log(STEP)}
    zones = len({step.zone for step in done}) > 1
    head = ("Grade", *(["Zone"] if zones else []), "Finish", "Time", "How", "What the loupe showed", "Taken")
    rows = []
    for step in done:
        row = (
            step.label,
            *([kind.field("zone").shown(step.zone)] if zones else []),
            f"{plain(step.grade.finish_um, 3)}{THIN}µm" if step.grade is not None else "not known",
            _time(step),
            ", ".join(
                kind.field(n).shown(getattr(step.form, n))
                for n in ("wet", "fresh", "direction")
                if getattr(step.form, n)
            )
            or "–",
            _seen(step),
            f"{plain(step.removed_um.typical, 2)}{THIN}µm" if step.removed_um is not None else "–",
        )
        rows.append((dates[step.entry_id], *row) if audience == "owner" else row)
    head = ("Date", *head) if audience == "owner" else head
    note = (
        "Finish: size of the plain grade that leaves the same scratch. Taken: stock a side, by the plan, else by its minutes."
        if progress
        else ""
    )
    return [Table("The steps as they were done", head, tuple(rows), numeric=(len(head) - 1,), source_note=note)]


def _time(step: StepDone) -> str:
    minutes, strokes = step.form.minutes, step.form.strokes
    parts = (
        [f"{minutes.value:g}{THIN}min" if minutes.value < 10 else minutes_in_words(minutes.value)]
        if minutes is not None
        else []
    )
    return ", ".join([*parts, *([f"{strokes} strokes"] if strokes is not None else [])]) or "–"


def _seen(step: StepDone) -> str:
    text = sentence(step.form.seen or "")
    left = "Older lines were left." if step.form.cleared is False else ""
    return f"{text} {left}".strip() or "–"


def _removal(job: Job) -> list[Block]:
    """Before and after, measured."""
    removed = removed_so_far(job)
    every = (*removed.by_diameter, *removed.by_mass)
    if not every:
        return []
    digits = {"diameter": (3, "mm"), "mass": (3, "g")}
    rows = tuple(
        (
            f"{capital(m.way)}{f', {m.place}' if m.place else ''}",
            f"{m.before:.{digits[m.way][0]}f}{THIN}{digits[m.way][1]}", f"{m.after:.{digits[m.way][0]}f}{THIN}{digits[m.way][1]}",
            f"{m.shown}{THIN}µm",
        )
        for m in every
    )  # fmt: skip
    blocks: list[Block] = [
        Table(
            "Before and after",
            ("Measured", "Before", "After", "Taken, a side"),
            rows,
            numeric=(1, 2, 3),
            source_note="±: twice the standard uncertainty.",
        )
    ]
    if removed.check is not None:
        blocks.append(Findings((removed.check.finding,)))
    return blocks


def _left(job: Job) -> list[Block]:
    rows = tuple((item.what, sentence(item.why)) for item in left_and_why(job))
    return [Table("What was left on the surface, and why", ("Left", "Why"), rows)] if rows else []


def _advice(job: Job, audience: Audience) -> list[Block]:
    shown: tuple[Finding, ...] = tuple(f for f in finish_findings(job) if f.topic in _FOR_THE_READER)
    return [Findings(shown)] if shown and audience == "owner" else []


def _masks(job: Job, audience: Audience) -> list[Block]:
    on = job.newest(MASKS)
    if on.masks is not True:
        return []
    what = on.with_what or ""
    blocks: list[Block] = [Paragraph(f"Before the first abrasive the masks were put on{f': {what}' if what else ''}.")]
    if on.photo is not None and PhotoBook(job, audience).allowed(on.photo):
        blocks.append(Photos((photo_among(job, on.photo, "The masks on the pen before polishing"),)))
    return blocks


def finish_caution(job: Job) -> str:
    """What anyone who would do the same must know, for this material; all of it where it is not named.

    Returns
    -------
    str
        Empty where nothing was sanded or polished.
    """
    if not job.log(STEP):
        return ""
    material = material_of(job)
    parts = [
        "Sanding dust of any kind belongs in water or a filter, not in lungs: eye protection and a mask for fine dust (P2, N95 or better)."
    ]
    if material in (None, "celluloid"):
        parts.append(
            "Celluloid dust burns fiercely: it is kept wet, away from flame, spark and wheel, and wiped up wet."
        )
    if material in (None, "hard rubber", "casein"):
        parts.append(
            "The dust of hard rubber and casein, worked dry, is collected with suction or a barely damp cloth."
        )
    if material in (None, "hard rubber"):
        parts.append(
            "Old red, orange and mottled rubber may hold pigments of mercury, antimony or lead: gloves, and the residue is hazardous waste."
        )
    if material in materials() and material not in ("celluloid", "hard rubber", "casein"):
        parts.append(materials()[material].caution.replace(_CLOSING, "").strip())
    return " ".join((*parts, _CLOSING))


def _workings(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Everything as it was entered: folded on the screen, open in print."""
    blocks: list[Block] = [*kind_facts(job, stage.kind("plan"), audience, caption="What was planned for")]
    progress = progress_of(job)
    if progress is not None:
        blocks += _planned(progress)
    blocks += _zone_table(job)
    for key in ("masks on", "consent to polish", "nib plan"):
        blocks += kind_facts(job, stage.kind(key), audience)
    blocks += kind_table(job, stage.kind("measure"), audience, caption="All measurements")
    return [Details("The plan, the zones and the measurements", tuple(blocks))] if blocks else []


def _zone_table(job: Job) -> list[Block]:
    zones = [logged.values for logged in job.log(ZONE)]
    words = any(zone.words for zone in zones)
    head = ("Part", "What it is there", "Stretch", "Masked", *(["In words"] if words else []))
    rows = tuple(
        (
            capital(ZONE.field("part").shown(zone.part)), ZONE.field("zone").shown(zone.zone), zone_stretch(zone) or "all of it",
            ZONE.field("masked").shown(zone.masked), *([zone.words or "–"] if words else []),
        )
        for zone in zones
    )  # fmt: skip
    return [Table("Zones and masks", head, rows)] if rows else []


def _planned(progress: Progress) -> list[Block]:
    rows = tuple(
        (
            str(step.number), step.grade.label, f"{plain(step.grade.particle_um, 3)}{THIN}µm", f"{plain(step.grade.finish_um, 3)}{THIN}µm",
            "–" if step.ratio is None else f"{step.ratio:.2f}", f"{plain(step.removed_um.typical, 2)}{THIN}µm", f"{plain(step.cumulative_um.typical, 3)}{THIN}µm",
        )
        for step in progress.working.steps
    )  # fmt: skip
    if not rows:
        return []
    note = (
        f"Most that “{progress.plan.limits.zone.name}” can spare: {plain(progress.plan.budget_high_um, 3)} µm a side."
    )
    return [
        Table(
            "The plan",
            ("Step", "Grade", "Grain", "Finish", "Ratio", "Takes", "So far"),
            rows,
            numeric=(0, 2, 3, 4, 5, 6),
            source_note=note,
        )
    ]
