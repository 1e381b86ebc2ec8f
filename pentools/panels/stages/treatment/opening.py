"""The opening panel: what it can take, the heat window, the order of work with what each step waits for."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, ClassVar

from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import HoldError, InputError
from pentools.figures.treatment.heat import heat_figure, heat_figures
from pentools.panels.caution_box import CautionBox
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.treatment.facts import cautions_of, cautions_read, limit_of_materials
from pentools.record.stages.treatment.heat import JOINTS, heated_joints, joint_body, joint_heat
from pentools.record.stages.treatment.opening import opening_findings
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, HeatPass, Step, Tray
from pentools.record.stages.treatment.words import limits_table, no_harm_rows, opening_sentence
from pentools.record.stages.treatment.work import block_of, opening_actions, order_of, step_waits

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["OpenPanel"]

_MARKS = {"done": "✓ done", "open": "○ may be done", "held": "■ waits"}


class OpenPanel(StagePanel):
    """Materials, heat, and the order of work."""

    kind_holds: ClassVar[Mapping[str, str]] = {"heat pass": "heat"}
    hidden_kinds = ("caution read",)

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.cautions = CautionBox(job, self._saved)
        self.above.children = (self.cautions.widget,)
        self.follow()

    def refresh_forms(self) -> None:
        """Show the cautions that apply now, and offer what a step of this pen still waits for."""
        order = order_of(self.job)
        if order is not None:
            self.forms["met"].boxes["condition"].offer({hold.key for step in order.steps for hold in step.held_by})
        if hasattr(self, "cautions"):
            found = cautions_of(self.job, opening_actions(self.job))
            self.cautions.show(found, cautions_read(self.job))

    def _saved(self, entry: Entry) -> None:
        """A yes or no of one entry is not that of the next."""
        for kind in ("heat pass", "material", "parts tray"):
            for box in self.forms[kind].boxes.values():
                if entry.kind == kind and box.field.kind == "yes-no":
                    box.text = ""
        super()._saved(entry)
        if entry.kind == "heat pass":
            self._say_stop(entry)

    def _say_stop(self, entry: Entry) -> None:
        """A heating past its limit is saved, for it happened; the stop stands where the hand is, beside the button."""
        joint = next((logged.values.joint for logged in self.job.log(HEAT_PASS) if logged.entry.id == entry.id), None)
        heat = joint_heat(self.job, joint) if joint is not None else None
        stops = [] if heat is None else [f.text for f in heat.findings if f.level == "stop"]
        if stops:
            self.forms["heat pass"].status.failed(f"saved {entry.time:%H:%M:%S}, and stop: {' '.join(stops)}")

    # what is refused ---------------------------------------------------------------------------------------

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No heat on what is not named or never warmed; no step before what it waits for."""
        if isinstance(form, HeatPass) and form.joint is not None:
            self._check_heat(form.joint)
        if isinstance(form, Step) and form.number is not None:
            self._check_step(form.number)
        if isinstance(form, Tray) and not form.items:
            raise InputError("What lies in it", "at least one part", "")

    def _check_heat(self, joint: str) -> None:
        body = joint_body(self.job, joint)
        name = dict(JOINTS)[joint]
        where = f"what is warmed at the joint “{name}” is not named (name it under “What it is made of” or “A joint”)"
        self.refuse("heat", where if body == UNKNOWN else "")
        if body == UNKNOWN:
            return  # released with a reason: the bench answers for it
        limit = limit_of_materials(self.job, (body,), "dry heat")
        if limit.verdict == "never":
            raise HoldError(f"Refused. {limit.sentence} The bench can overrule that with a reason below.")

    def _check_step(self, number: int) -> None:
        order = order_of(self.job)
        if order is None:
            return
        if number > len(order.steps):
            raise InputError("Number in the order of work", f"1 to {len(order.steps)}", number)
        waits = step_waits(order.steps[number - 1])
        if waits:
            raise HoldError(
                f"Step {number} waits until this is so: {waits}. Do that first, or say under “Found to be so” how you know that it is so."
            )

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """The heat window in a sentence, the heatings in a figure, the order of work and the limits as tables."""
        drawing = heat_figure(self.job)
        tables = self._order_table() + self._limits_table() + self._block_table()
        return PanelResult(opening_sentence(self.job), opening_findings(self.job), (drawing,), tables)

    def more(self) -> PanelResult:
        """Every joint's figure, every limit of every named part, and signs that tell materials apart."""
        known = table_html(
            "Where the limits of heat are known from", ("Joint", "How sure", "Source"), self._heat_rows()
        )
        told = table_html("Telling materials apart without harm", ("Is it", "Sign", "How sure"), no_harm_rows())
        return PanelResult(drawings=heat_figures(self.job)[1:], table=known + told)

    def _heat_rows(self) -> list[tuple[str, ...]]:
        found = (joint_heat(self.job, joint) for joint in heated_joints(self.job))
        return [(heat.label, heat.certainty, "; ".join(heat.sources)) for heat in found if heat is not None]

    def _order_table(self) -> str:
        order = order_of(self.job)
        if order is None:
            return '<p class="pt-hint">Name the filling system at intake, and the order of work stands here.</p>'
        rows = []
        for step in order.steps:
            thread = f" Thread: {step.turn}." if step.turn else ""
            waits = step_waits(step)
            why = f"Waits until this is so: {waits}." if waits else step.why
            what = f"{step.part}: {step.action}{thread}"
            rows.append((str(step.number), _MARKS[step.state], what, f"{why} ({step.certainty})"))
        return table_html("Order of work", ("Step", "State", "What to do", "Why, or what it waits for"), rows)

    def _limits_table(self) -> str:
        head = ("Part", "Treatment", "Verdict", "How far", "Because", "Source and how sure")
        return table_html("What each part can take", head, limits_table(self.job))

    def _block_table(self) -> str:
        block = block_of(self.job)
        if block is None:
            return ""
        return table_html(f"Knocking out: {block.sentence}", block.table[0], block.table[1:])
