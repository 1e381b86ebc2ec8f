"""The seal's panel: measured, ranked, tried one size at a time, sealed only after a dry fit, and proved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from html import escape
from typing import TYPE_CHECKING, Any, ClassVar

from pentools.calc.base.findings import Finding
from pentools.calc.seal.fit import SealFit
from pentools.errors import InputError, PentoolsError
from pentools.figures.seal.measure import measure_seal
from pentools.figures.seal.rings import ladder_drawing, ring_drawing
from pentools.panels.caution_box import stage_cautions
from pentools.panels.guard import guarded
from pentools.panels.kind_form import KindForm
from pentools.panels.like_this import LikeThis
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.record.forms import Form, form_with
from pentools.record.kinds import Kind, as_dict
from pentools.record.stages.closing.work import fitted_of
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import (
    MEASURE,
    PLACES,
    TEST,
    TEST_FIELDS,
    TOOL,
    Measure,
    SealTest,
    Tool,
    Trial,
    asked_for,
)
from pentools.record.stages.seal.measure import measured, odd_readings, places_in_use
from pentools.record.stages.seal.places import places_for
from pentools.record.stages.seal.proof import (
    clock_words,
    earliest_next_step,
    mechanism_of,
    proofs_done,
    suspects,
    tool_window,
    tools_on_bench,
    with_section_material,
)  # fmt: skip
from pentools.record.stages.seal.sealing import candidates, fit_words, next_trial, passed_places, place_words, work_out
from pentools.record.stages.seal.seats import seen_in_other_pens
from pentools.record.stages.weighing.dimensions import dimensions_of
from pentools.sums.closing.work import usual_sealant
from pentools.sums.seal.rings import fit_sentence
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["SealPanel"]

SHOWN = 8
_WITH_PLACE = ("measure", "trial", "sealant")
_ALSO_TYPED = (("reach", "reach", "breather"), ("tube", "tube", "breather"), ("sac", "outside", "sac"), ("wall", "wall", "sac"))  # fmt: skip
"""A reading, its name among the dimensions of the fill test, and the seal that it belongs to."""


class SealPanel(StagePanel):
    """Measure, candidates, dry trials, sealant, tests, tools."""

    kind_holds: ClassVar[Mapping[str, str]] = {"sealant": "sealant"}

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        self._asked = ""
        super().__init__(job, stage, sheet)
        self.above.children = (stage_cautions(stage),)
        self.like = LikeThis(job)
        self.widget.children = (*self.widget.children, self.like.widget)
        for key in _WITH_PLACE:
            box = self.forms[key].boxes["place"]
            box.input.observe(guarded(self.status, self._place_chosen), "value")
        self.forms["test"].boxes["test"].input.observe(guarded(self.status, self._ask), "value")
        for box in self.forms["measure"].boxes.values():
            # the drawing follows the reading that is about to be taken
            if box.field.kind in ("quantity", "quantities"):
                box.input.observe(guarded(self.status, self._reading_typed), "value")
        for field in TOOL.fields:
            if field.kind == "quantity":
                self.forms["tool"].boxes[field.name].input.observe(guarded(self.status, self._refresh_result), "value")

    # forms -------------------------------------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Ask only what belongs to the seal chosen, of those the filling system has, and offer the size to try next."""
        self._offer_places()
        self._ask()
        self._offer()

    def _offer_places(self) -> None:
        """The seals of this pen's filling system, and those that entries name already."""
        here = {*places_for(self.job.newest(ARRIVAL).system), *places_in_use(self.job)}
        for key in _WITH_PLACE:
            self.forms[key].boxes["place"].offer(here)

    def _ask(self) -> None:
        place = self.forms["measure"].boxes["place"].text
        self.forms["measure"].show_only(("place", *asked_for(place)))
        test = self.forms["test"].boxes["test"].text
        self.forms["test"].show_only(("test", *TEST_FIELDS.get(test, ())))

    def _place_chosen(self) -> None:
        self._ask()
        self._offer()
        self._refresh_result()

    def _reading_typed(self) -> None:
        """Show the next reading to take, as long as the sizes typed are not saved yet."""
        asked = self._next_reading()
        if asked != self._asked:
            self._asked = asked
            self._refresh_result()

    def _next_reading(self) -> str:
        boxes = self.forms["measure"].boxes
        place = boxes["place"].text
        lengths = [n for n in asked_for(place) if boxes[n].field.kind in ("quantity", "quantities")]
        return next((name for name in lengths if not boxes[name].text.strip()), lengths[0] if lengths else "")

    def _place(self) -> str:
        """The seal that the panel is about: the one chosen in the form shown, else the newest."""
        form = self.forms.get(str(self.chooser.value))
        chosen = form.boxes["place"].text if form is not None and "place" in form.boxes else ""
        used = places_in_use(self.job)
        return chosen or (used[-1] if used else "")

    def _offer(self) -> None:
        """Put the next size into the trial's form; what is offered counts as a default, so nothing is logged twice."""
        form = self.forms["trial"]
        place = form.boxes["place"].text
        texts = {"what": "", "section": "", "inside": "", "outside": ""}
        try:
            step = next_trial(self.job, place) if place else None
        except PentoolsError:
            step = None  # the result says why
        if step is not None and step.what:
            texts["what"] = step.what
            if step.ring is not None and step.ring.measured:
                texts |= {"section": f"{step.ring.section_mm:g} mm", "inside": f"{step.ring.inside_mm:g} mm"}
        for name, text in texts.items():
            form.boxes[name].suggest(text)
        self._keep_choices(form)
        self._offer_known()

    def _offer_known(self) -> None:
        """Fill in what was typed for the fill test or at closing, and the adhesive that the sac's material wants."""
        form, known = self.forms["measure"], dimensions_of(self.job)
        place = form.boxes["place"].text
        for name, asked, at in _ALSO_TYPED:
            reading = known.get(asked) if at == place and getattr(measured(self.job, at), name) is None else None
            form.boxes[name].suggest(reading.text() if isinstance(reading, Reading) else "")
        sealant = self.forms["sealant"].boxes
        here = sealant["place"].text in ("sac", "bulb") and measured(self.job, "sac").material is not None
        sealant["sealant"].suggest(usual_sealant("sac", fitted_of(self.job)) if here else "")

    @staticmethod
    def _keep_choices(form: KindForm) -> None:
        for box in form.boxes.values():
            if box.field.kind in ("choice", "yes-no"):
                box.field = replace(box.field, default=box.text)

    def _saved(self, entry: Entry) -> None:
        """After a trial the outcome is asked afresh: a second press must not log it for the next size."""
        if entry.kind == "trial":
            self.forms["trial"].boxes["happened"].text = ""
        if entry.kind == "test":
            for name, box in self.forms["test"].boxes.items():
                if name.endswith("_seen"):
                    box.text = ""
        if entry.kind == "measure":
            self.forms["measure"].boxes["altered"].text = ""
        super()._saved(entry)

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """A trial needs a measured size, a test its result, a measurement something measured."""
        if isinstance(form, Measure):
            place, values = PLACES[form.place or ""], as_dict(MEASURE, form)
            read = [name for name in place.asks if name not in ("duty", "material")]
            if read and all(values[name] is None for name in read):
                raise InputError("Measurement", "at least one reading", "none", "Type one, with its unit.")
        sized = isinstance(form, Trial) and PLACES[form.place or ""].way in ("ring", "washer", "packing", "sac")
        if isinstance(form, Trial) and sized and form.section is None and form.inside is None and form.outside is None:
            raise InputError(
                "Size", "measured: a section and an inside diameter, or an outside diameter", "nothing",
                "The ladder goes by what was measured, not by what was printed on the bag.",
            )  # fmt: skip
        if isinstance(form, SealTest):
            self._check_test(form)
        if isinstance(form, Tool):
            tool_window(form)

    @staticmethod
    def _check_test(values: SealTest) -> None:
        test, filled = values.test or "", as_dict(TEST, values)
        wanted = {"spring-back": ("pushed", "returned"), "vacuum": ("volume", "vacuum_start", "vacuum_end", "seconds")}
        if not values.seen and not (test in wanted and all(filled[name] is not None for name in wanted[test])):
            label = TEST.field(f"{test.replace('-', '_')}_seen").label
            raise InputError(label, "said, or worked out from all of its readings", "nothing")
        strange = [
            TEST.field(name).label for other, names in TEST_FIELDS.items() if other != test
            for name in names if filled[name] is not None
        ]  # fmt: skip
        if strange:
            raise InputError(strange[0], f"left empty for the test “{test}”", "filled in", "Save each test by itself.")

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """What the form shown is about: the fit, the ladder, the clock, the fault tree, or the tools."""
        kind = str(self.chooser.value)
        if kind == "trial":
            return self._trial_result()
        if kind == "sealant":
            return self._sealant_result()
        if kind == "test":
            return self._test_result()
        if kind == "tool":
            return self._tool_result()
        return self._measure_result()

    def more(self) -> PanelResult:
        """Ring and ladder of every place, and where the calliper goes."""
        drawings: list[Drawing | None] = []
        for place in places_in_use(self.job):
            fit = candidates(self.job, place)
            drawings += [ring_drawing(c) for c in (fit.candidates[:2] if fit is not None else ())]
            drawings.append(ladder_drawing(self.job, place))
        drawings.append(measure_seal(self.job, self._place(), self._next_reading()))
        return PanelResult(drawings=drawings, table=self._seen_table())

    def _seen_table(self) -> str:
        """What was found and fitted at this seal in other pens of the same filling system."""
        system = self.job.newest(ARRIVAL).system
        if system is None or not self._place():
            return ""
        seen = seen_in_other_pens(self.job.bench, system, self._place(), without=self.job.name)
        rows = [(one.job, one.was or "–", one.fitted or "–") for one in seen]
        title = f"The {place_words(self._place())} in other pens here that fill in this way"
        return table_html(title, ("Job", "What was there", "What held"), rows) if rows else ""

    def _measure_result(self) -> PanelResult:
        place = self._place()
        if not place:
            return PanelResult("Choose which seal is measured; the drawing then shows where the calliper goes.")
        fit = candidates(self.job, place)
        here = measure_seal(self.job, place, self._next_reading())
        typed = any(
            self.forms["measure"].boxes[n].text.strip() for n in PLACES[place].asks if n not in ("duty", "material")
        )
        if fit is not None:
            ring = here if typed and here is not None else ring_drawing(fit.best)
            findings = (
                *odd_readings(self.job, place),
                *fit.findings,
                *(f for f in fit.best.findings if f.level != "ok"),
            )
            return PanelResult(fit_sentence(fit), findings, (ring,), _candidate_table(fit))
        answer = work_out(self.job, place)
        if answer is not None:
            table = table_html("Worked out", answer.table[0], answer.table[1:])
            return PanelResult(answer.sentence, answer.findings, (here,), table)
        if not PLACES[place].way:
            return PanelResult(
                f"For the {place_words(place)} no table of sizes is known: what fits cannot be told from measures alone. "
                "Try it dry and enter what happened; what was there before is kept for the next pen."
            )
        now = as_dict(MEASURE, measured(self.job, place))
        missing = [MEASURE.field(name).label for name in PLACES[place].needs if now[name] is None]
        return PanelResult(f"Still to be measured at the {place_words(place)}: {'; '.join(missing)}.", drawings=(here,))

    def _trial_result(self) -> PanelResult:
        place = self._place()
        if not place:
            return PanelResult("Choose which seal is tried; measure it first, so that a size can be proposed.")
        step = next_trial(self.job, place)
        words = fit_words(self.job, place)
        if step is None and not words:
            return PanelResult(f"Measure the {place_words(place)} first: then a size to begin with is proposed.")
        ahead = f"Try {step.what} next, dry." if step is not None and step.what else ""
        holds = passed_places(self.job).get(place, False)
        findings = () if step is None else tuple(f for f in step.step.findings if f.topic != "next")
        return PanelResult(words if holds or not ahead else ahead, findings, (ladder_drawing(self.job, place),))

    def _sealant_result(self) -> PanelResult:
        step = earliest_next_step(self.job)
        passed = passed_places(self.job)
        rows = [(place_words(p), "passed" if holds else "not yet") for p, holds in passed.items()]
        table = table_html("Dry fits", ("Seal", "Dry fit"), rows)
        if step is not None:
            return PanelResult(clock_words(step), table=table)
        if passed and all(passed.values()):
            return PanelResult("The dry fit has passed: the sealant may go on.", table=table)
        return PanelResult("No sealant yet: try it dry until it pulls back.", table=table)

    def _test_result(self) -> PanelResult:
        done, tree = proofs_done(self.job), suspects(self.job)
        names = dict(TEST.field("test").choices)
        rows = [
            (names.get(t.test, t.test), t.result or "cannot be told", "counts" if t.counts else "before the last change")
            for t in done
        ]  # fmt: skip
        tables = table_html("Tests", ("Test", "Result", "Counts"), rows)
        if tree is None:
            ways = mechanism_of(self.job).ways
            how = "".join(f"<li>{escape(names[key])}: {escape(text)}</li>" for key, text in ways.items())
            return PanelResult(
                "Prove it: two tests or more, since one alone names no seal.", table=tables + f"<ul>{how}</ul>"
            )
        points = [
            (
                s.words,
                f"{s.points:+d}".replace("-", "−").replace("+0", "0"),
                "; ".join(s.signs) or "–",
                "; ".join(s.clears) or "–",
            )
            for s in tree.suspicions
        ]
        tables += table_html("Which seal to suspect", ("Seal", "Points", "Speaks against it", "Clears it"), points)
        said = [f for t in done if t.counts for f in t.findings]
        return PanelResult(tree.findings[0].text, (*tree.findings[1:], *said), table=tables)

    def _tool_result(self) -> PanelResult:
        form = self.forms["tool"]
        typed, _ = self.job.read(form.kind, {field.name: form.boxes[field.name].text for field in form.kind.fields})
        wanted = with_section_material(self.job, form_with(Tool, typed))
        tools = tools_on_bench(self.job.bench, wanted)
        fits = {True: "fits", False: "does not fit", None: "–"}
        table = table_html(
            "Tools on the bench", ("Made for", "Tool", "Here"), [(t.job, t.words, fits[t.fits]) for t in tools]
        )
        answer = tool_window(wanted)
        if answer is not None:
            good = [t for t in tools if t.fits]
            own = f" There is one already, made for {good[0].job}." if good else ""
            return PanelResult(answer.sentence + own, answer.findings, table=table)
        count = "1 tool lies" if len(tools) == 1 else f"{len(tools) or 'No'} tools lie"
        return PanelResult(
            f"{count} on the bench. Type tail, shoulder and section bore: then it is said which fits.", table=table
        )


def _candidate_table(fit: SealFit) -> str:
    rows = [
        (
            c.designation, f"{c.fit.ring.inside_mm:.2f} × {c.fit.ring.section_mm:.2f}",
            *(f"{100 * share:.0f}".replace("-", "−") for share in (c.fit.least.squeeze_share, c.fit.nominal.squeeze_share, c.fit.most.squeeze_share, c.fit.stretch_share)),
            "–" if c.friction is None else f"{c.friction.running_n:.1f}", c.verdict, _first(c.findings),
        )
        for c in fit.candidates[:SHOWN]
    ]  # fmt: skip
    head = ("Ring", "Inside × section, mm", "Least %", "Squeeze %", "Most %", "Stretch %", "Drag N", "Verdict", "Why")
    return table_html(
        f"Rings, best first; a full vacuum pulls {fit.suction_n:.1f} N; drag is good to a factor of two", head, rows
    )


def _first(findings: tuple[Finding, ...]) -> str:
    return findings[0].text if findings else ""
