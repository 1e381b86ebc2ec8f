"""The panel of what the pen is and how old: evidence in, the years it allows out, and what contradicts what."""

from __future__ import annotations

from typing import Any

from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.spans import in_words
from pentools.figures.dating.identify import evidence_figure
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.stages.dating.identify import (
    clues,
    dating,
    dating_findings,
    price_today,
    read_clue,
    read_price_then,
    read_question,
)
from pentools.record.stages.dating.kinds import Evidence, PriceThen, Question

__all__ = ["IdentifyPanel"]


class IdentifyPanel(StagePanel):
    """Marks and evidence in, a range of years out."""

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """Refuse dates that cannot be read and prices that no index knows."""
        if isinstance(form, Evidence):
            read_clue(form)
        elif isinstance(form, Question):
            read_question(form)
        elif isinstance(form, PriceThen):
            read_price_then(form)

    def result(self) -> PanelResult:
        """What the evidence allows, with its bars; for the price, what it is today."""
        if self.chooser.value == "price then" and (answer := price_today(self.job)) is not None:
            return PanelResult(answer.sentence, answer.findings)
        result = dating(self.job)
        if result is None:
            return PanelResult(say(self.job, self.stage.key), dating_findings(self.job))
        return PanelResult(
            date_sentence(result), dating_findings(self.job), (evidence_figure(result),), table=self._as_read()
        )

    def _as_read(self) -> str:
        """Every piece of evidence with the meaning that was read from it."""
        rows = []
        for clue in clues(self.job):
            if clue.evidence is None:
                rows.append((clue.feature, clue.typed, "cannot be read", "–", "–", "–"))
                continue
            item = clue.evidence
            allows = in_words(item.spans)
            rows.append(
                (item.feature, clue.typed, item.dates.read_as, allows, f"{item.kind}, {item.certainty}", item.part)
            )
        head = ("Feature", "Typed", "Read as", "Allows for this pen", "Kind, how sure", "Part")
        return table_html("How each date was read", head, rows)

    def more(self) -> PanelResult:
        """All other ways out of a contradiction, what else would narrow it, and the price today."""
        tables = []
        result = dating(self.job)
        if result is not None:
            ways = [
                (" and ".join(way.features), str(way.weight), in_words(way.spans))
                for way in (*result.conflicts, *result.other_ways)
            ]
            tables.append(table_html("Every way out, the least doubt first", ("Doubt", "Weight", "Leaves"), ways))
            facts = [(fact.text, fact.edtf_at_best or "–") for fact in result.next_facts]
            tables.append(table_html("What else is worth finding out", ("Find out", "Range at best"), facts))
        answer = price_today(self.job)
        if answer is not None:
            tables.append(table_html(answer.sentence, answer.table[0], answer.table[1:]))
        return PanelResult(table="".join(tables))
