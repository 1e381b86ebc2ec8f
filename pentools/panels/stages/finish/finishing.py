"""The finish's panel: a plan that answers while it is typed, the next step offered, and a hold before the first abrasive."""

from __future__ import annotations

from dataclasses import replace
from html import escape
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.calc.finish.reading import read_grade
from pentools.calc.finish.types import Progression
from pentools.errors import InputError
from pentools.figures.finish.finishing import ladder_of_job, zones_figures
from pentools.numbers import plain
from pentools.panels.caution_box import stage_cautions
from pentools.panels.guard import guarded
from pentools.panels.kind_form import REMARK
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import findings_html, table_html
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.kinds import Measure, Step, Zone
from pentools.record.stages.finish.plan import plan_answer, progress_of
from pentools.record.stages.finish.removal import removed_so_far
from pentools.record.stages.finish.words import finish_findings, finish_sentence, left_and_why
from pentools.tables.abrasives import catalogue

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["FinishPanel"]


class FinishPanel(StagePanel):
    """Zones and masks, the plan, the steps, and what they took off."""

    hold = "polish"
    hidden_kinds = ("nib plan",)

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        self.preview = widgets.HTML()
        self._offered = ""
        super().__init__(job, stage, sheet)
        self.above.children = (stage_cautions(stage),)
        form = self.forms["plan"]
        form.below_button.children = (self.preview,)
        for box in form.boxes.values():
            box.input.observe(guarded(form.status, self._show_preview), "value")
        self._show_preview()

    # live warnings of the plan ---------------------------------------------------------------------------

    def _show_preview(self) -> None:
        form = self.forms["plan"]
        texts = {name: box.text for name, box in form.boxes.items() if name != REMARK.name}
        values, errors = self.job.read(form.kind, texts)
        if not texts["defect"].strip():
            self.preview.value = '<p class="pt-hint">As soon as a defect is typed, the plan stands here.</p>'
            return
        wrong = [str(error) for name, error in errors.items() if name != "defect"]
        try:
            answer = plan_answer(self.job, {field.name: values.get(field.name) for field in form.kind.fields})
        except InputError as error:
            answer, wrong = None, [*wrong, str(error)]
        shown = "".join(f'<p class="pt-error" role="alert">✗ {escape(text)}</p>' for text in wrong)
        if answer is None and not wrong:
            shown = '<p class="pt-hint">Still missing: a grade that is owned.</p>'
        if answer is not None:
            graver = [
                f for f in answer.findings if f.level in ("warning", "stop") and f.topic not in ("wheel", "caution")
            ]
            shown += f"<h3>This plan</h3><p>{escape(answer.sentence)}</p>{findings_html(graver)}"
        self.preview.value = shown

    # forms -------------------------------------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Put the bench's stock and the intake's material into a fresh plan, and the next step into the log."""
        plan = self.forms["plan"]
        if self.job.record.latest("finish", "plan") is None:
            stock = "; ".join(self.job.bench.strings("stock", "abrasives"))
            for name, text in (("own", stock), ("material", material_of(self.job) or "")):
                if text and not plan.boxes[name].text:
                    plan.boxes[name].text = text
        self._offer()

    def _saved(self, entry: Entry) -> None:
        if entry.kind == "step":
            self.forms["step"].boxes["cleared"].text = ""
        super()._saved(entry)

    def _offer(self) -> None:
        """Put the next step into the form; what is offered counts as a default, so a double click logs nothing twice."""
        form, progress = self.forms["step"], progress_of(self.job)
        step = progress.next_step if progress is not None else None
        label = step.grade.label if step is not None else ""
        grade = form.boxes["grade"]
        if grade.text in ("", grade.field.default):
            grade.text = label
            if progress is not None and step is not None and label != self._offered:
                form.boxes["zone"].text = progress.working.limits.zone.name
                form.boxes["wet"].text = "wet" if step.wet else "dry"
                form.boxes["direction"].text = step.direction.split()[0]
            self._offered = label
        grade.field = replace(grade.field, default=label)
        for box in form.boxes.values():
            if box.field.kind in ("choice", "yes-no"):
                box.field = replace(box.field, default=box.text)

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No abrasive while the hold stands; no grade without its scale; no zone that runs backwards."""
        if isinstance(form, Step):
            read_grade(form.grade or "", catalogue())
            self.refuse_if_held()
        if isinstance(form, Zone) and form.start_mm is not None and form.end_mm is not None:
            start, end = form.start_mm.value, form.end_mm.value
            if end <= start:
                raise InputError("To", f"beyond {start:g} mm, where the zone begins", f"{end:g} mm")
        if isinstance(form, Measure):
            _check_measure(form)

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """Where it stands in a sentence; ladder and zones; the plan, the removal and what was left as tables."""
        drawings = (ladder_of_job(self.job), *zones_figures(self.job))
        tables = self._plan_table() + self._removal_table()
        left = [(item.what, item.why) for item in left_and_why(self.job)]
        tables += table_html("Left, and why (for “What was left alone”)", ("What", "Why"), left)
        # the cautions of the material stand above the forms already
        findings = [finding for finding in finish_findings(self.job) if finding.topic != "caution"]
        return PanelResult(finish_sentence(self.job), findings, drawings, tables)

    def _plan_table(self) -> str:
        progress = progress_of(self.job)
        if progress is None:
            return ""
        done = {step.planned.number for step in progress.done if step.planned is not None}
        head = ("Step", "Grade", "Grain µm", "Finish µm", "Takes µm", "So far µm", "Minutes", "How")
        rows = [
            (
                f"{step.number}{' ✓' if step.number in done else ''}", step.grade.label, f"{plain(step.grade.particle_um, 3)}",
                f"{plain(step.grade.finish_um, 3)}", f"{plain(step.removed_um.typical, 2)}", f"{plain(step.cumulative_um.typical, 3)}",
                f"{plain(step.minutes.typical, 2)} ({plain(step.minutes.low, 2)} to {plain(step.minutes.high, 2)})",
                f"{'wet' if step.wet else 'dry'}, {step.direction}. {step.note}",
            )
            for step in progress.working.steps
        ]  # fmt: skip
        caption = (
            "The plan"
            if progress.working is progress.plan
            else "The plan that reduces the defect and keeps to the budget"
        )
        if rows and not progress.working.steps[0].calibrated:
            caption += " (minutes by a rule of thumb: this bench is not calibrated yet)"
        between = [step.inspect for step in progress.working.steps[:1]]
        looks = "".join(f"<p><b>Before each next grade:</b> {escape(text)}</p>" for text in between)
        return table_html(caption, head, rows) + looks + self._set_aside(progress.plan)

    def _set_aside(self, plan: Progression) -> str:
        rows = [(item.grade.label, item.reason) for item in plan.set_aside]
        folded = table_html("Grades not used", ("Grade", "Why"), rows)
        return f"<details><summary>Grades of the bench that are not used</summary>{folded}</details>" if rows else ""

    def _removal_table(self) -> str:
        removed = removed_so_far(self.job)
        rows = [
            (
                f"by {m.way}, {m.place or 'no place named'}",
                f"{m.before:g} to {m.after:g} {'mm' if m.way == 'diameter' else 'g'}",
                f"{m.shown} µm",
            )
            for m in (*removed.by_diameter, *removed.by_mass)
        ]
        if removed.by_plan_um is not None:
            by = removed.by_plan_um
            rows.append(
                (
                    "by the plan",
                    "from the steps done",
                    f"{plain(by.typical, 2)} µm ({plain(by.low, 2)} to {plain(by.high, 2)})",
                )
            )
        return table_html("Stock taken so far, a side", ("How", "Before and after", "Taken"), rows)


def _check_measure(form: Measure) -> None:
    if form.diameter is None and form.mass is None:
        raise InputError("Measurement", "a diameter or a mass", "neither", "Type one of them, with its unit.")
    if form.diameter is not None and form.station is None:
        raise InputError(
            "Place on the pen", "named for a diameter", "", "Only two diameters at one place can be compared."
        )
