"""The release panel: held until the leak check is done and the limits are written."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from pentools.money import in_money
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.spending import price_past_ceiling, spending_of
from pentools.record.stages.job.care import suggested_care
from pentools.record.stages.job.ending_kinds import EARLY, RESULT, Result
from pentools.record.stages.job.makeshifts import come_back

__all__ = ["ReleasePanel"]


class ReleasePanel(StagePanel):
    """Ends the job."""

    hold = "release"
    entry_holds = ("spend",)

    def check(self, kind: Kind[Any], values: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """A pen is not released as mended while the hold stands, nor at more than was agreed; stopped and returned are always open."""
        assert isinstance(values, Result)
        if values.ending not in EARLY:
            self.refuse_if_held()
        self.refuse("spend", self._too_dear(values.price) if price_past_ceiling(self.job, values.price) else "")

    def _too_dear(self, price: str | None) -> str:
        money = spending_of(self.job)
        return f"the price of {price} is past the agreed ceiling of {in_money(money.ceiling or Decimal(0), money.currency)} (ask the owner first)"

    def refresh_forms(self) -> None:
        """Put a draft of the care text, and of when to come back, where none has been written."""
        box = self.forms["result"].boxes["care"]
        if not box.text and not self.job.log(RESULT):
            box.text = suggested_care(self.job)
        later = self.forms["result"].boxes["follow_up"]
        if not later.text and not self.job.log(RESULT):
            later.text = come_back(self.job)

    def result(self) -> PanelResult:
        """How the job ended."""
        return PanelResult(say(self.job, self.stage.key))
