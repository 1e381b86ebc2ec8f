"""The nib's panel: the loupe, the plan of its smoothing, the feed's window, and what it writes with its ±."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, ClassVar

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.finish.reading import read_grade
from pentools.errors import InputError, PentoolsError
from pentools.numbers import plain
from pentools.panels.caution_box import stage_cautions
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.stages.nib.scan import lines_from_scan, scan_path
from pentools.panels.style import table_html
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.nib.fit import (
    clearance_of,
    fit_findings,
    nipple_of,
    room_now,
    setting_findings,
    setting_window,
    window_for,
)
from pentools.record.stages.nib.kinds import WHEN, WRITING, FeedSetting, Fit, FlexTest, Smoothed, Writing
from pentools.record.stages.nib.nib import nib_findings, worked_on
from pentools.record.stages.nib.paper import answer_of, flex_of, flow_of, paper_findings, past_limit, writes
from pentools.record.stages.nib.tip import aligned, loupe, loupe_findings, nib_plan_of, smoothing_findings, strokes_done
from pentools.record.stages.nib.words import line_in_words, loupe_in_words, nib_sentence, writes_in_words
from pentools.sums.nib.smoothing import smoothing_sentence
from pentools.tables.abrasives import catalogue
from pentools.tables.nib import Figure
from pentools.unit_table import SHOWN
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage
    from pentools.sums.base import SumAnswer

__all__ = ["NibPanel"]


class NibPanel(StagePanel):
    """Under the loupe, set, smoothed, and tried on paper."""

    kind_holds: ClassVar[Mapping[str, str]] = {"adjust": "nib work", "smoothing": "nib work"}
    entry_holds = ("heat", "flex")

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.above.children = (stage_cautions(stage),)

    # what is known already is filled in ----------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Offer the moment that comes next, the ink and paper of the last test, and the plan's next grade."""
        job = self.job
        begun = worked_on(job) or loupe(job, "found") is not None
        self.forms["loupe"].boxes["when"].suggest("after" if begun else "found")
        self.forms["fit"].boxes["when"].suggest("after" if worked_on(job) else "found")
        tests = job.log(WRITING)
        if tests:
            boxes = self.forms["writing test"].boxes
            boxes["ink"].suggest(tests[-1].values.ink or "")
            boxes["paper"].suggest(tests[-1].values.paper or "")
        plan, taken = nib_plan_of(job), {one.label: one.strokes for one in strokes_done(job)}
        left = (
            [step.grade.label for step in plan.steps if taken.get(step.grade.label, 0) < step.most_strokes]
            if plan
            else []
        )
        self.forms["smoothing"].boxes["grade"].suggest(left[0] if left else "")

    # what is refused ---------------------------------------------------------------------------------------

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No abrasive before the tines are level, no heat past a window, no load past a nib's limit."""
        if isinstance(form, Smoothed):
            read_grade(form.grade or "", catalogue())
            out = aligned(self.job) is False
            self.refuse(
                "nib work", "the tines are not level (set them first: grinding does not mend that)" if out else ""
            )
        if isinstance(form, FeedSetting) and form.way != "cold":
            self._check_heat(form)
        if isinstance(form, FlexTest):
            self.refuse("flex", past_limit(self.job, form))
            if form.maximum is not True:
                answer_of(self.job, form)
        if isinstance(form, Fit) and (form.reach, form.inner_cap, form.overhang, form.seated) == (None,) * 4:
            raise InputError("Set depth and cap", "at least one of its measurements", "nothing")
        if isinstance(form, Writing) and form.scan is not None:
            scan_path(self.job, form.scan)

    def _check_heat(self, form: FeedSetting) -> None:
        self.refuse_if_held("heat")
        window = window_for(self.job, form)
        self.refuse("heat", "" if window.kind == "open" else window.findings[0].text.rstrip(".").lower())

    def _saved(self, entry: Entry) -> None:
        """A look, a yes and a limit of one entry are not those of the next; a scan is measured once its test is saved."""
        for name in ("looked", "alone", "maximum", "drawn", "seated"):
            box = self.forms[entry.kind].boxes.get(name) if entry.kind in self.forms else None
            if box is not None:
                box.text = ""
        super()._saved(entry)
        if entry.kind == WRITING.key:
            self._measure(entry)
        stops = (
            [f.text for f in setting_findings(self.job) if f.level == "stop"] if entry.kind == "feed setting" else []
        )
        if stops:
            self.forms[entry.kind].status.failed(f"saved {entry.time:%H:%M:%S}, and stop: {' '.join(stops)}")

    def _measure(self, entry: Entry) -> None:
        """Measure the scan of a writing test, and save what came of it as an entry of its own."""
        said = next((logged.values for logged in self.job.log(WRITING) if logged.entry.id == entry.id), None)
        if said is None or said.scan is None:
            return
        status = self.forms[WRITING.key].status
        status.saved(f"saved {entry.time:%H:%M:%S}; measuring {said.scan} …")
        try:
            measured, warnings = lines_from_scan(self.job, said)
        except (PentoolsError, OSError) as error:
            status.failed(f"The writing test is saved {entry.time:%H:%M:%S}; its scan gave no lines. {error}")
            return
        kind = self.stage.kind("lines")
        saved = self.job.save(self.stage.key, kind, measured, note=" ".join(warnings))
        super()._saved(saved)
        doubt = f" Look again: {' '.join(warnings)}" if warnings else ""
        status.saved(f"saved {entry.time:%H:%M:%S}, and its lines measured: {nib_sentence(self.job)}{doubt}")

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """What the form shown is about."""
        makers = {
            "loupe": self._seen, "adjust": self._seen, "fit": self._fit, "smoothing plan": self._tip, "smoothing": self._tip,
            "feed setting": self._feed, "flow": self._flow, "flex": self._flex,
        }  # fmt: skip
        return makers.get(str(self.chooser.value), self._paper)()

    def more(self) -> PanelResult:
        """The figures that nibs are held to, with their sources' strength."""
        rows = [
            (row.quantity, _ends(row), row.note, CERTAINTY.get(row.certainty, row.certainty)) for row in tables.read(Figure, "nib_figures")
        ]  # fmt: skip
        return PanelResult(
            table=table_html("What nibs are held to", ("What", "How much", "What to mind", "How sure"), rows)
        )

    def _seen(self) -> PanelResult:
        looks = [seen for when, _ in WHEN if (seen := loupe(self.job, when)) is not None]
        if not looks:
            return PanelResult("Clean it, then look: tipping from the side, tines end on, the slit against the light.")
        called = [seen.called for seen in looks if seen.called]
        word = f" Its owner calls it “{called[-1]}”: that is a word and no width." if called else ""
        said = " ".join(loupe_in_words(seen) for seen in looks)
        return PanelResult(f"{said}{word}", loupe_findings(self.job), table=self._looks(looks))

    def _looks(self, looks: list[Any]) -> str:
        fields = [
            f
            for f in self.stage.kind("loupe").fields
            if f.name not in ("when", "photo") and any(getattr(s, f.name) is not None for s in looks)
        ]
        names = dict(WHEN)
        rows = [(f.label, *(f.shown(getattr(seen, f.name)) for seen in looks)) for f in fields]
        return table_html("Under the loupe", ("What", *(names.get(seen.when or "", "–") for seen in looks)), rows)

    def _fit(self) -> PanelResult:
        room = room_now(self.job)
        if room is None:
            return PanelResult(
                "Measure the section's face to the nib's tip, and the inner cap from its mouth to its bottom.",
                fit_findings(self.job),
            )
        rows = [
            (words, f"{plain(found.clearance_mm, 3)} mm ± {plain(found.expanded_mm, 2)}", found.verdict)
            for when, words in WHEN
            if (found := clearance_of(self.job, when)) is not None
        ]
        findings = [f for f in fit_findings(self.job) if f.topic != "clearance"]
        return PanelResult(
            room.finding.text, findings, table=table_html("Room in the cap", ("When", "Room", "Verdict"), rows)
        )

    def _tip(self) -> PanelResult:
        plan, done = nib_plan_of(self.job), strokes_done(self.job)
        rows = [(one.label, str(one.strokes), "not in the plan" if one.most is None else str(one.most)) for one in done]
        table = table_html("Strokes so far", ("Grade", "Strokes", "The plan's end"), rows) if rows else ""
        if plan is None:
            return PanelResult(
                "Say how the nib feels under “Plan of smoothing”, and name the bench's grades: then few strokes stand here.",
                smoothing_findings(self.job),
                table=table,
            )
        steps = [(str(s.number), s.grade.label, str(s.most_strokes), s.how) for s in plan.steps]
        table = table_html("The plan", ("Step", "Grade", "Most strokes", "How"), steps) + table
        return PanelResult(smoothing_sentence(plan), (*smoothing_findings(self.job), *plan.findings), table=table)

    def _feed(self) -> PanelResult:
        rows = []
        for alone, where in ((False, "as it sits in its section"), (True, "nib and feed out of the section")):
            window = setting_window(self.job, alone=alone)
            rows.append((where, window.findings[0].text))
        nipple = {"sac": "a sac", "none": "none", "unknown": "not known, as if a sac were on it"}[nipple_of(self.job)]
        table = table_html("Heat on the feed", ("How", "Window"), [*rows, ("nipple, by the filling system", nipple)])
        return PanelResult(rows[0][1], setting_findings(self.job), table=table)

    def _flow(self) -> PanelResult:
        return self._tests("flow", "Weigh the pen, write a counted length of line, weigh it again.", flow_of)

    def _flex(self) -> PanelResult:
        return self._tests(
            "flex", "A line at rest, and one half a millimetre wider, on a kitchen scale. It ends there.", flex_of
        )

    def _tests(self, title: str, empty: str, ask: Any) -> PanelResult:
        answers: list[tuple[str, SumAnswer]] = [
            (words, answer) for when, words in WHEN if (answer := ask(self.job, when)) is not None
        ]
        if not answers:
            return PanelResult(empty)
        newest = answers[-1][1]
        table = "".join(
            table_html(f"{title.capitalize()}, {words}", answer.table[0], answer.table[1:]) for words, answer in answers
        )
        changes = [f for f in paper_findings(self.job) if f.topic == "flow-change"] if title == "flow" else []
        return PanelResult(newest.sentence, (*newest.findings[1:], *changes), table=table)

    def _paper(self) -> PanelResult:
        said = [found for when, _ in WHEN if (found := writes(self.job, when)) is not None]
        if not said:
            return PanelResult(
                "Fill it with one named ink, write on one named paper; name a scan in scans/ and its lines are measured.",
                self._advice(),
            )
        rows = [
            (dict(WHEN)[found.when], line_in_words(found) or "not measured", found.wetness or "not said", found.ink or "–", found.paper or "–")
            for found in said
        ]  # fmt: skip
        table = table_html("On paper", ("When", "Line", "Wetness", "Ink", "Paper"), rows)
        return PanelResult(writes_in_words(said[-1]) or nib_sentence(self.job), self._advice(), table=table)

    def _advice(self) -> tuple[Finding, ...]:
        return tuple(
            dict.fromkeys((*paper_findings(self.job), *(f for f in nib_findings(self.job) if f.topic == "not-written")))
        )


def _ends(row: Figure) -> str:
    shown = [plain(value, 3) for value in (row.low, row.high) if value is not None]
    span = " to ".join(dict.fromkeys(shown))
    middle = "" if row.typical is None else plain(row.typical, 3)
    text = f"{middle} ({span})" if middle and len(set(shown) - {middle}) > 0 else middle or span
    return f"{text}, as a share" if row.unit == "share" else f"{text} {SHOWN.get(row.unit, row.unit)}"
