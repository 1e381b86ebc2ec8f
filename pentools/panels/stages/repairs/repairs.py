"""The panel of the parts mended: faults of the survey, the ways there are, what each waits for, and the clocks."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.repairs.fitness import RepairRow, fits_material
from pentools.calc.treatment.cautions import Caution, CautionRow
from pentools.errors import HoldError, InputError
from pentools.panels.caution_box import CautionBox
from pentools.panels.guard import guarded
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.record.forms import Form
from pentools.record.holds import held
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.spending import counted
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.record.stages.repairs.kinds import OUT, Back, Out, Repair, Spot
from pentools.record.stages.repairs.repairs import repair_findings
from pentools.record.stages.repairs.work import away, clock_sentence, faults_waiting, mended, topics_of
from pentools.record.stages.treatment.facts import cautions_read, limit_of_materials, materials_of
from pentools.tables.part_repairs import repair_row, repairs_for
from pentools.tables.source_words import source_words
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["RepairsPanel"]

_NAMES = dict(PARTS)
_CHOSEN_FROM = ("repair", "test spot")


class RepairsPanel(StagePanel):
    """A part and a way chosen; held by material, consent and trial; what stands, and what is away."""

    entry_holds = ("repair", "send out", "spend")

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.cautions = CautionBox(job, self._saved)
        self.above.children = (self.cautions.widget,)
        for key in _CHOSEN_FROM:
            self.forms[key].boxes["part"].input.observe(guarded(self.status, self._part_chosen), "value")
            self.forms[key].boxes["method"].input.observe(guarded(self.status, self._way_chosen), "value")
        self.follow()
        self._refresh_result()

    # forms -------------------------------------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Begin with the gravest fault of the survey, and offer only the ways of the part that is chosen."""
        if not hasattr(self, "cautions"):
            return
        faults = faults_waiting(self.job)
        box = self.forms["repair"].boxes["part"]
        if not box.text and faults:
            box.suggest(faults[0].part)
        self._offer_ways()
        self._show_cautions()

    def _part_chosen(self) -> None:
        self._offer_ways()
        self._refresh_result()

    def _way_chosen(self) -> None:
        self._show_cautions()
        self._refresh_result()

    def _offer_ways(self) -> None:
        for key in _CHOSEN_FROM:
            boxes = self.forms[key].boxes
            ways = [row for row in repairs_for(boxes["part"].text) if _offered(row, key)]
            boxes["method"].offer([row.key for row in ways])

    def _way(self) -> RepairRow | None:
        form = self.forms[self._form()]
        key = form.boxes["method"].text
        return repair_row(key) if key else None

    def _form(self) -> str:
        key = str(self.chooser.value)
        return key if key in _CHOSEN_FROM else "repair"

    def _show_cautions(self) -> None:
        row = self._way()
        keys = row.cautions if row is not None else ()
        found = [
            Caution(c.key, c.hazard, c.control, c.source, c.certainty)
            for c in tables.read(CautionRow, "cautions")
            if c.key in keys
        ]
        self.cautions.show(found, cautions_read(self.job))
        self.cautions.widget.layout.display = "" if found else "none"

    def _saved(self, entry: Entry) -> None:
        """The way of one part is not that of the next, and its yes is not the next one's."""
        if entry.kind in (*_CHOSEN_FROM, "sent out", "back again"):
            for box in self.forms[entry.kind].boxes.values():
                if box.field.kind in ("choice", "yes-no"):
                    box.field = replace(box.field, default="")
                    box.text = ""
        super()._saved(entry)

    def refresh_state(self) -> None:
        """A part that is not to be sent out has no hold on sending it: its row shows on that form alone."""
        super().refresh_state()
        if self.chooser.value != OUT.key:
            self.holds["send out"].show("")
        shown = any(row.widget.layout.display == "" for row in self.holds.values())
        self.holder.layout.display = "" if shown else "none"

    def _chosen_kind(self) -> None:
        super()._chosen_kind()
        self.refresh_state()
        if hasattr(self, "cautions"):
            self._show_cautions()

    # what is refused ---------------------------------------------------------------------------------------

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No way on a material that it is not for, none without the yes and the trial it needs, nothing back that is not away."""
        if isinstance(form, Repair):
            self._check_repair(form)
        if isinstance(form, Spot):
            topics_of(self.job, Repair(part=form.part, method=form.method))
        if isinstance(form, Out):
            self.refuse("send out", held(self.job, "send out"))
        if isinstance(form, Back):
            self._check_back(form)

    def _check_repair(self, form: Repair) -> None:
        row = repair_row(form.method or "")
        if "unfit" in topics_of(self.job, form):
            made_of = " and ".join(materials_of(self.job, form.part or ""))
            why = (
                limit_of_materials(self.job, materials_of(self.job, form.part or ""), row.treatment).reason
                if row.treatment
                else ""
            )
            reason = f" ({why})" if why else ""
            raise HoldError(
                f"Refused. “{row.method}” is for {', '.join(row.materials)}; the {_NAMES[form.part or '']} is {made_of}{reason}. "
                "If it is made of something else, say so at Opening."
            )  # fmt: skip
        if row.sent:
            raise InputError("How", "a way of this bench", row.method, f"Enter it under “{OUT.title}”.")
        self.refuse("repair", held(self.job, "repair", repair=form), about=form.method or "")

    def _check_back(self, form: Back) -> None:
        if form.part not in away(self.job):
            there = ", ".join(_NAMES[part] for part in away(self.job)) or "no part is away"
            raise InputError("Part", f"one that was sent out ({there})", _NAMES[form.part or ""])
        cost = counted(self.job, form.cost)
        self.refuse("spend", held(self.job, "spend", amount=cost) if cost else "")

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """The clock or the fault that waits, what the chosen way asks, and the ways there are as a table."""
        row = self._way() if hasattr(self, "cautions") else None
        part = self.forms[self._form()].boxes["part"].text
        sentence = row.how if row is not None else say(self.job, self.stage.key)
        table = self._source_table(row) + self._ways_table(part) + self._faults_table() + self._clock_table()
        return PanelResult(sentence, (*self._on_way(row, part), *repair_findings(self.job)), table=table)

    def _on_way(self, row: RepairRow | None, part: str) -> tuple[Finding, ...]:
        if row is None:
            return ()
        found = []
        if row.limit:
            found.append(Finding("warning", "repairs.limit", limit=row.limit))
        if row.reversible != "yes":
            found.append(Finding("warning", f"repairs.undone:{row.reversible}"))
        reason = held(self.job, "repair", repair=Repair(part=part, method=row.key)) if part == row.part else ""
        return (*found, *([Finding("stop", "repairs.waits", reason=reason)] if reason else []))

    def _ways_table(self, part: str) -> str:
        rows = [_way_words(row, materials_of(self.job, part)) for row in repairs_for(part)]
        head = ("Way", "For", "Yes needed to", "Undone", "Stands", "How sure")
        return table_html(f"Ways of mending: {_NAMES.get(part, part)}", head, rows) if rows else ""

    @staticmethod
    def _source_table(row: RepairRow | None) -> str:
        """Where the chosen way is known from."""
        if row is None:
            return ""
        known = [(row.label, "; ".join(words.rstrip(".") for words in source_words(row.source, "part_repairs")))]
        return table_html("Where it is known from", ("Way", "Source"), known)

    def _faults_table(self) -> str:
        rows = [
            (_NAMES[fault.part], fault.seen, f"{len(repairs_for(fault.part))} ways")
            for fault in faults_waiting(self.job)
        ]
        return table_html("Faults of the survey that wait", ("Part", "What is seen", "There are"), rows) if rows else ""

    def _clock_table(self) -> str:
        rows = [(one.words, clock_sentence(one)) for one in mended(self.job) if one.stands is not None]
        return table_html("What stands", ("Part and way", "How long"), rows) if rows else ""


def _way_words(row: RepairRow, named: tuple[str, ...]) -> tuple[str, ...]:
    """A way as a row: what it is for and whether that is this part's material, whose yes, how long it stands, how sure."""
    here = "" if all(fits_material(row, material) for material in named) else " (not here)"
    asked = dict(ACTIONS).get(row.consent, "–")
    return (row.label, "; ".join(row.materials) + here, asked, row.reversible, _stands(row), CERTAINTY[row.certainty])


def _offered(row: RepairRow, form: str) -> bool:
    """Whether a form offers a way: what is done elsewhere has a form of its own, and a trial is made of what needs one."""
    return "test-spot" in row.needs if form == "test spot" else not row.sent


def _stands(row: RepairRow) -> str:
    if row.wait_h is None:
        return "–"
    low, high = row.wait_h, row.wait_to_h or row.wait_h
    days = high >= 72
    scale, unit = (24, "days") if days else (1, "h")
    return f"{high / scale:g} {unit}" if low == high else f"{low / scale:g} to {high / scale:g} {unit}"
