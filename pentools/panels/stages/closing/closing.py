"""The panel of putting a pen back together: the order as ticks, held where it would close over something untested."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.calc.closing.proofs import Proof
from pentools.errors import InputError
from pentools.figures.closing.wall import order_page
from pentools.numbers import plain
from pentools.panels.caution_box import stage_cautions
from pentools.panels.field_box import with_own_unit
from pentools.panels.guard import Status, guarded
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.stages.closing.proof_list import ProofList
from pentools.panels.stages.closing.step_list import StepList
from pentools.panels.style import table_html
from pentools.record.entries import now
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.closing.closing import clock_words, closing_findings, closing_sentence
from pentools.record.stages.closing.kinds import ROUND, WRITING, Round, Step
from pentools.record.stages.closing.known import body_of, known_steps
from pentools.record.stages.closing.proofs import answers_to, owed_now, seal_test_of
from pentools.record.stages.closing.work import (
    action_of,
    clocks_of,
    closing_of,
    fitted_of,
    met_of,
    offered_at,
    put_on,
    shut_by,
    step_values,
    words_of_changes,
)
from pentools.record.stages.weighing.kinds import LEAK_CHECK
from pentools.sums.closing.work import closing_told
from pentools.units import Reading
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["ClosingPanel"]

_TICKS = ("done", "tested", "left_out", "so_before")
_VALUES = ("sac_length", "tube_reach", "bar_length", "presses")


class ClosingPanel(StagePanel):
    """The order as a list of ticks, saved in one go or step by step; and the tests that are owed."""

    entry_holds = ("close",)
    hidden_kinds = ("rest begun",)

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.steps = StepList(self._gather)
        self.proof_status = Status()
        self.proofs = ProofList(self.proof_status, self._begin, self._answer)
        self.above.children = (stage_cautions(stage), self.steps.widget)
        box = self.forms[ROUND.key]
        for name in _TICKS:
            box.boxes[name].input.observe(guarded(self.status, self._follow_boxes), "value")
        self.owed = widgets.VBox([self.proofs.widget, self.proof_status.widget])
        self.widget.children = (*self.widget.children, self.owed)
        self._quiet = False
        self.follow()

    # forms -------------------------------------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Show the order as it stands, ask only for what belongs to it and is not known yet, and what is owed."""
        if not hasattr(self, "steps"):
            return
        order = closing_of(self.job)
        actions = {step.row.key: action_of(self.job, step.row) for step in order.steps} if order is not None else {}
        self.steps.show(order, self._lines(), self._wanted(), actions)
        self.forms[ROUND.key].show_only(self._asked())
        self.forms["step"].boxes["step"].offer([row.row.key for row in order.steps] if order is not None else [])
        self.proofs.show([(proof, answers_to(proof.row)) for proof in owed_now(self.job)], self._rested)
        self._follow_boxes()

    def _lines(self) -> dict[str, list[str]]:
        """What stands under each step: changes by material, what is known from elsewhere, clocks, what was measured."""
        order = closing_of(self.job)
        if order is None:
            return {}
        known, values, time = known_steps(self.job), step_values(self.job), now()
        lines = {step.row.key: list(words_of_changes(self.job, step.row)) for step in order.steps}
        for step in order.steps:
            own = lines[step.row.key]
            if step.row.key in known and step.state in ("done", "untested"):
                own.append(f"As said elsewhere: {known[step.row.key].by}.")
            if step.row.value in values:
                own.append(f"{ROUND.field(step.row.value).label}: {values[step.row.value]}.")
        for clock in clocks_of(self.job, time):
            lines[clock.row.key].append(clock_words(clock, time))
        return lines

    def _wanted(self) -> dict[str, str]:
        """What the steps that are still to do ask for from outside, and nobody has said yet."""
        order, met = closing_of(self.job), met_of(self.job)
        ahead = [step for step in order.steps if step.state in ("open", "early", "held")] if order is not None else []
        return {hold.key: hold.condition for step in ahead for hold in step.before if hold.from_outside and hold.key not in met}  # fmt: skip

    def _asked(self) -> tuple[str, ...]:
        order = closing_of(self.job)
        if order is None:
            return ()
        ahead = [step.row for step in order.steps if step.state in ("open", "early", "held", "untested")]
        clocks = {row.clock for row in ahead if row.clock}
        names = ["sac_with"] if clocks - {"section"} and not any(put_on(self.job, clock) for clock in clocks - {"section"}) else []  # fmt: skip
        names += ["section_with"] if "section" in clocks and put_on(self.job, "section") is None else []
        known = step_values(self.job)
        names += [name for name in _VALUES if name not in known and any(row.value == name for row in ahead)]
        return tuple(names)

    def _gather(self) -> None:
        """The ticks of the list go into the form's own boxes, which are what is saved."""
        if self._quiet:
            return
        self._quiet = True
        for name, keys in zip(_TICKS, self.steps.ticked(), strict=True):
            self.forms[ROUND.key].boxes[name].text = "; ".join(keys)
        self._quiet = False
        self._offer()

    def _offer(self) -> None:
        """Fill in what is known of a step once it is ticked, and take it back with the tick."""
        order = closing_of(self.job)
        ticked = self._keys("done")
        offered: dict[str, str] = {}
        for step in order.steps if order is not None else ():
            if step.row.key in ticked:
                offered |= offered_at(self.job, step.row)
        asked = self._asked()
        for name in ("sac_with", "sac_length"):
            self.forms[ROUND.key].boxes[name].suggest(offered.get(name, "") if name in asked else "")

    def _follow_boxes(self) -> None:
        """An entry that is loaded for correction, or a form that is emptied, shows in the list."""
        if self._quiet or not hasattr(self, "steps"):
            return
        self._quiet = True
        done, tested, left_out, before = (self._keys(name) for name in _TICKS)
        self.steps.set(done, tested, left_out, bool(before))
        self._quiet = False

    def _keys(self, name: str) -> set[str]:
        return {part.strip() for part in self.forms[ROUND.key].boxes[name].text.split(";") if part.strip()}

    def _saved(self, entry: Entry) -> None:
        """The ticks of one entry are not those of the next."""
        if entry.kind == ROUND.key:
            for box in self.forms[ROUND.key].boxes.values():
                if box.field.kind in ("ticks", "choice"):
                    box.text = ""
        if entry.kind == "step":
            self.forms["step"].boxes["outcome"].text = ""
        super()._saved(entry)

    # what is refused ---------------------------------------------------------------------------------------

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """Nothing closed over something untested; a skipped step is asked about, not refused."""
        if isinstance(form, Round) and not any((form.done, form.tested, form.left_out)):
            raise InputError("Done in this order", "at least one tick in the list", "")
        if isinstance(form, Round | Step):
            self.refuse("close", shut_by(self.job, form))

    # the tests that are owed -------------------------------------------------------------------------------

    def _rested(self, proof: Proof) -> str:
        """The hours since its rest began, or what is usual."""
        if proof.until is None or proof.row.hours is None:
            return "12 h" if (proof.row.hours or 0) > 1 else ""
        since = (now() - proof.until).total_seconds() / 3600 + proof.row.hours
        return f"{max(since, 0.0):.1f} h"

    def _begin(self, key: str) -> None:
        self._took(self.job.add("closing", "rest begun", {"test": key}), "its clock runs")

    def _answer(self, proof: Proof, answer: str, hours: str) -> None:
        """One click: the result goes where such results are kept, so that it is asked once."""
        row = proof.row
        if row.records in (LEAK_CHECK.key, WRITING.key):
            rested = with_own_unit(LEAK_CHECK.field("rested"), hours)
            self._long_enough(proof, answer, rested)
        if row.records == LEAK_CHECK.key:
            entry = self.job.add("fill test", LEAK_CHECK.key, {"rested": rested, "dry": answer, "how": "nib up"})
        elif row.records == WRITING.key:
            entry = self.job.add("closing", WRITING.key, {"rested": rested, "wrote": answer})
        else:
            test = seal_test_of(row)
            entry = self.job.add("seal", "test", {"test": test, f"{test.replace('-', '_')}_seen": answer})
        self._took(entry, row.label)

    @staticmethod
    def _long_enough(proof: Proof, answer: str, hours: str) -> None:
        """A short rest that stayed dry tells nothing; one that did not tells at any hour."""
        passes = answer in (proof.row.passes, "yes")
        rested = LEAK_CHECK.field("rested").read(hours)
        least = proof.row.hours or 0.0
        if passes and isinstance(rested, Reading) and rested.value < least:
            raise InputError("How long it rested", f"at least {plain(least)} h, or the answer tells nothing", hours)

    def _took(self, entry: Entry, what: str) -> None:
        self._saved(entry)
        self.proof_status.saved(f"saved {entry.time:%H:%M:%S}: {what}")

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """Where it stands in a sentence, what holds it, and every step with its reasons."""
        return PanelResult(closing_sentence(self.job), closing_findings(self.job), (), self._table())

    def more(self) -> PanelResult | None:
        """The order as half a page for the wall."""
        order = closing_of(self.job)
        if order is None:
            return None
        return PanelResult(drawings=(order_page(closing_told(order.system, body_of(self.job), fitted_of(self.job))),))

    def _table(self) -> str:
        order = closing_of(self.job)
        if order is None:
            return ""
        rows = [
            (
                str(step.row.step),
                " ".join(hold.condition for hold in step.before),
                step.test_words,
                step.row.caution or "–",
                CERTAINTY[step.row.certainty],
            )
            for step in order.steps
        ]
        return table_html("Why so", ("Step", "So before", "Test before the next", "Mind", "How sure"), rows)
