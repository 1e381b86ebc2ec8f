"""The panel of proposal and agreement: what the owner said yes and no to, what it may cost, what the record lacks."""

from __future__ import annotations

from typing import Any

from pentools.errors import InputError
from pentools.panels.parcel_row import ParcelRow
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.stages.job.quoting import QuoteRow
from pentools.panels.style import table_html
from pentools.panels.ticks_box import TicksBox
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.report import missing_report_fields
from pentools.record.saying import say
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import check_estimate, check_yes
from pentools.record.stages.job.agree_kinds import (
    ACTIONS,
    ESTIMATE,
    MENDABLE,
    PROPOSAL,
    YES,
    Estimate,
    NotApplicable,
    Yes,
)
from pentools.record.stages.job.intake_kinds import REQUEST
from pentools.record.stages.job.money_kinds import INVOICE
from pentools.record.stages.job.work_kinds import DEPARTURE
from pentools.record.stages.job.works import ASKED_OF_OWNER

__all__ = ["AgreePanel"]


class AgreePanel(StagePanel):
    """Proposals and answers in; what may be done, and up to which price, out."""

    quoting: QuoteRow | None = None
    """What fills an estimate from like jobs; made with its form."""

    def _choose(self) -> None:
        super()._choose()
        if self.chooser.value == ESTIMATE.key and self.quoting is None:
            self.quoting = QuoteRow(self.job, self.forms[ESTIMATE.key])
            self.forms[ESTIMATE.key].below_button.children = (self.quoting.widget,)

    hidden_kinds = (INVOICE.key,)

    def check(self, kind: Kind[Any], values: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """Refuse an estimate out of order, a yes and a no to the same thing, and a reason of no words."""
        if isinstance(values, Yes):
            check_yes(values)
        if isinstance(values, Estimate):
            check_estimate(values)
        if isinstance(values, NotApplicable) and len((values.why or "").split()) < 2:
            raise InputError("Why it does not apply", "given in a few words", values.why or "")

    def refresh_forms(self) -> None:
        """Offer for a yes what this kind of work asks for, and what was proposed or departed from."""
        if not self.above.children:
            self.parcel = ParcelRow(self.job, self.sheet_changed)
            self.above.children = (self.parcel.widget,)
        self.parcel.refresh()
        offered = ASKED_OF_OWNER.get(
            self.job.newest(REQUEST).work or "",
            tuple(key for key, _ in ACTIONS if key not in ("proposal", "departure")),
        )
        more = [key for key, kind in (("proposal", PROPOSAL), ("departure", DEPARTURE)) if self.job.log(kind)]
        for name in ("to", "not_to"):
            box = self.forms[YES.key].boxes[name].input
            assert isinstance(box, TicksBox)
            box.offer((*offered, *more))

    def result(self) -> PanelResult:
        """What may be done and what may not, with the ceiling; the proposals as a table."""
        findings = self.stage.checks(self.job) if self.stage.checks is not None else ()
        parts, labels = dict(PARTS), dict(MENDABLE)
        rows = [
            (
                parts.get(v.part or "", "–"),
                labels.get(v.mendable or "", "–"),
                v.proposed or "–",
                v.alternative or "–",
                v.leave_it or "–",
            )
            for v in (logged.values for logged in self.job.log(PROPOSAL))
        ]
        head = ("Part", "Can it be mended", "Proposed", "Another way", "If it is left")
        return PanelResult(say(self.job, self.stage.key), findings, table=table_html("Proposed so far", head, rows))

    def more(self) -> PanelResult:
        """Everything that conservation guidance asks of the record, and how it stands."""
        report = missing_report_fields(self.job)
        order = ("missing", "not applicable", "present")
        rows = [
            (field.state, field.field, field.level, field.section, field.reason or "–")
            for field in sorted(report.fields, key=lambda field: order.index(field.state))
        ]
        count = sum(field.state == "missing" for field in report.fields)
        caption = f"What conservation guidance asks of the record: {count} of {len(rows)} missing"
        return PanelResult(
            table=table_html(caption, ("State", "What", "Asked as", "Where on the page", "Reason"), rows)
        )
