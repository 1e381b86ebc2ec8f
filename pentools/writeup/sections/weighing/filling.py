"""The fill test on a page: what the pen draws as one sentence, why that is so, and how sure it is."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import capital, in_words
from pentools.record.stages.weighing.filling import STATES, capacity_of, cycles
from pentools.record.stages.weighing.kinds import LEAK_CHECK, WEIGHING
from pentools.record.stages.weighing.rest import leak_of
from pentools.record.stages.weighing.strokes import strokes_of
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
from pentools.writeup.drawn import (
    budget_chart,
    capacity_chart,
    fillings_chart,
    leak_chart,
    pen_in_section,
    series_chart,
)
from pentools.writeup.orders import without_orders
from pentools.writeup.sections.generic import kind_facts, kind_table, releases_of
from pentools.writeup.words import THIN, date_in_words, decimals_of, shown_mass

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.record.kinds import Stage
    from pentools.sums.base import SumAnswer

__all__ = ["leak_in_words", "section"]

_KINDS = ("setup", "dimensions", "weighing", "leak reading", "leak check")


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What the pen draws, held against what it should hold.

    Parameters
    ----------
    stage : Stage
        The fill test.
    audience : {"owner", "everybody"}
        Who will see the page; dates and notes are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was weighed or checked.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, "How it performs now")
    blocks: list[Block] = []
    answer = None
    try:
        answer = capacity_of(job)
    except InputError as error:
        why = f": {error}" if audience == "owner" else "."
        blocks.append(Notice(f"The weighings give no result{why}", "To be settled"))
    if answer is not None:
        blocks.append(Lead(without_orders(answer.sentence) or answer.sentence))
        blocks += _figure(capacity_chart(answer))
        # a reader of the public page is spared the lesser advice; it stands among the workings
        graver = tuple(f for f in answer.findings if audience == "owner" or f.level in ("warning", "stop"))
        if graver:
            blocks.append(Findings(graver))
    blocks += _figure(pen_in_section(job))
    blocks += _series(job)
    blocks += _leak(job, stage, audience)
    blocks += _workings(job, stage, audience, answer)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "How it performs now", tuple(blocks))


def leak_in_words(job: Job) -> str:
    """What the last leak check found, as one sentence; empty where there was none."""
    if not job.log(LEAK_CHECK):
        return ""
    check = job.newest(LEAK_CHECK)
    hours = f"{check.rested.value:g}{THIN}h" if check.rested is not None else "some time"
    lay = f" ({check.how})" if check.how else ""
    places = in_words(check.damp or ())
    if check.dry is True:
        doubt = f", though damp was noted here: {places}" if places else ""
        return f"After {hours} at rest, filled{lay}, it was dry all over{doubt}."
    return f"After {hours} at rest, filled{lay}, it was damp{f': {places}' if places else ''}."


def _figure(drawing: Drawing | None) -> list[Block]:
    return [] if drawing is None else [FigureBlock(drawing)]


def _series(job: Job) -> list[Block]:
    """Repeated fills and single strokes: a sentence, a figure and what it means."""
    series = strokes_of(job)
    blocks: list[Block] = []
    if series is not None:
        text = f"Weighed after each stroke, it gained about {series.per_stroke_ml:.2f}{THIN}mL a stroke while it still rose"
        if series.plateau_stroke is not None and series.plateau_ml is not None:
            text += f", and after stroke {series.plateau_stroke} nothing was added: it stops at {series.plateau_ml:.2f}{THIN}mL"
        blocks.append(Paragraph(f"{text}."))
    blocks += _figure(series_chart(job))
    if series is not None and series.findings:
        blocks.append(Findings(series.findings))
    if series is not None:
        blocks += _figure(fillings_chart(job))  # the strokes' chart stood in its place
    return blocks


def _leak(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    blocks: list[Block] = []
    words = leak_in_words(job)
    if words:
        blocks.append(Paragraph(words))
    blocks += _figure(leak_chart(job))
    answer = leak_of(job)
    if answer is not None:
        blocks.append(Findings(answer.findings))
    if len(job.log(LEAK_CHECK)) > 1:
        blocks += kind_table(job, stage.kind("leak check"), audience, caption="Leak checks")
    return blocks


def _workings(job: Job, stage: Stage, audience: Audience, answer: SumAnswer | None) -> list[Block]:
    """The weighings, the dimensions and the budget: folded on the screen, open in print."""
    blocks: list[Block] = [*_weighings(job, audience)]
    blocks += kind_facts(job, stage.kind("dimensions"), audience, caption="The filler’s dimensions")
    blocks += kind_facts(
        job,
        stage.kind("setup"),
        audience,
        caption="Balance, liquid and room, where they differ from the bench’s own",
    )
    blocks += kind_table(job, stage.kind("leak reading"), audience, caption="Weighed at rest")
    if answer is not None:
        lesser = tuple(f for f in answer.findings if audience == "everybody" and f.level not in ("warning", "stop"))
        if lesser:
            blocks.append(Findings(lesser))
        blocks += _budget(answer)
    return [Details("The weighings and how the result was worked out", tuple(blocks))] if blocks else []


def _budget(answer: SumAnswer) -> list[Block]:
    """How the result was reached, then what the doubt is made of, as a figure and as a table."""
    blocks: list[Block] = []
    parts = answer.data.get("budget") or ()
    sources = {str(part["source"]) for part in parts}
    head, *rows = answer.table or ((),)
    steps = [tuple(row) for row in rows if row[0] not in sources]
    if steps:
        blocks.append(
            Table(
                "How the result was reached",
                tuple(capital(name) for name in head),
                tuple(steps),
                numeric=_number_columns(steps),
            )
        )
    blocks += _figure(budget_chart(answer))
    if parts:
        doubts = tuple(
            (
                capital(str(part["source"])),
                f"{1000 * part['standard_uncertainty']:.2g}{THIN}µL",
                f"{100 * part['share']:.0f}{THIN}%",
            )
            for part in sorted(parts, key=lambda part: -part["share"])
        )
        blocks.append(
            Table(
                "What the uncertainty is made of",
                ("Source", "Standard uncertainty", "Share of the variance"),
                doubts,
                numeric=(1, 2),
            )
        )
    return blocks


def _number_columns(rows: list[tuple[str, ...]]) -> tuple[int, ...]:
    """The columns that hold numbers in every row that says something."""
    columns = zip(*rows, strict=True)
    return tuple(
        i
        for i, texts in enumerate(columns)
        if all(re.match(r"[-−±]?\s?\d", text) for text in texts if text.strip("– "))
    )


def _weighings(job: Job, audience: Audience) -> list[Block]:
    log = job.log(WEIGHING)
    if not log:
        return []
    labels, decimals = dict(STATES), decimals_of(job)
    fill_of = {
        id_: number
        for number, cycle in enumerate(cycles(job), 1)
        for id_ in (*cycle.empty_ids, *cycle.filled_ids, *cycle.gain_ids)
    }
    strokes = any(logged.values.strokes is not None for logged in log)
    head = ("State of the pen", *(["Strokes"] if strokes else []), "Mass", "Filling")
    rows = []
    for logged in log:
        entry, values = logged.entry, logged.values
        row = (
            capital(labels.get(values.state or "", "–")),
            *([f"{values.strokes}" if values.strokes is not None else "–"] if strokes else []),
            shown_mass(values.mass, decimals) if values.mass is not None else "not measured",
            str(fill_of.get(entry.id, "–")),
        )
        rows.append((date_in_words(entry.time), *row) if audience == "owner" else row)
    head = ("Date", *head) if audience == "owner" else head
    last = len(head) - 1
    return [Table("Weighings in the order they were taken", head, tuple(rows), numeric=(last - 1, last))]
