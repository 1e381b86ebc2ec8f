"""The intake panel: the pen drawn from its own dimensions as they are entered."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.came_with import join, lead_of, leads
from pentools.record.coming_back import goes_on_from, take_over
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.stages.job.came_with_kinds import CAME_WITH, CameWith
from pentools.record.stages.job.coming_back import continued_on, covered_by_date, return_findings, return_words
from pentools.record.stages.job.coming_back_kinds import RETURN, Return
from pentools.record.stages.job.intake_kinds import ARRIVAL, PASSED
from pentools.record.strangers import strangers_found

if TYPE_CHECKING:
    from pentools.record.entries import Entry

__all__ = ["IntakePanel"]


class IntakePanel(StagePanel):
    """Shows the pen in section as far as it is measured."""

    def check(self, kind: Kind[Any], values: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """A pen goes on only from a job that is there."""
        if isinstance(values, Return) and values.older is not None:
            goes_on_from(self.job, values.older)
        if isinstance(values, CameWith) and values.lead not in (None, lead_of(self.job)):
            leads(self.job, values.lead or "")

    def _choose(self) -> None:
        """Where a word holds the pages for everybody it is filled in, so that what is left to say is why it may stand."""
        super()._choose()
        self._offer_word()

    def _offer_word(self) -> None:
        if self.chooser.value == PASSED.key:
            held = strangers_found(self.job)
            self.forms[PASSED.key].boxes["word"].suggest(str(held[0].values["word"]) if held else "")

    def _saved(self, entry: Entry) -> None:
        """What an older job knows of the pen, or one that came with it, is taken over as soon as it is named."""
        older, lead = continued_on(self.job), lead_of(self.job)
        back, came = entry.kind == RETURN.key and bool(older), entry.kind == CAME_WITH.key and bool(lead)
        if back:
            take_over(self.job, older)
        if came and lead != self.job.name:
            join(self.job, lead or "")
        if back or came:
            for key in self.forms:
                if not self.stage.kind(key).log:
                    self.forms[key].load_current()
        super()._saved(entry)
        self._offer_word()

    def refresh_forms(self) -> None:
        """Say whether it came back in time where nobody has said whether it is covered."""
        if not continued_on(self.job):
            return
        box, told = self.forms[RETURN.key].boxes["covered"], covered_by_date(self.job)
        if not box.text and told is not None and self.job.newest(RETURN).covered is None:
            box.text = "yes" if told else "no"

    def result(self) -> PanelResult:
        """What arrived, whether it was here before, and its drawing."""
        known = self.job.newest(ARRIVAL).pen is not None
        words = " ".join(part for part in (say(self.job, self.stage.key), return_words(self.job)) if part)
        return PanelResult(words, return_findings(self.job), (pen_drawing(self.job),) if known else ())
