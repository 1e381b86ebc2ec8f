"""The panel of a stage: where it stands, its forms, the result in a sentence and a figure, and its log."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from html import escape
from typing import TYPE_CHECKING, Any, ClassVar

import ipywidgets as widgets

from pentools.calc.base.findings import Finding
from pentools.decimals import in_markup
from pentools.errors import HoldError, InputError
from pentools.panels.guard import Status, guarded
from pentools.panels.hold_row import HoldRow
from pentools.panels.kind_form import FormHooks
from pentools.panels.sheet_part import Sheet, form_of
from pentools.panels.showing import ShowsItself
from pentools.panels.stage_forms import StageForms
from pentools.panels.stage_log import StageLog
from pentools.panels.style import findings_html, sentence_html
from pentools.record.holds import HOLDS, held, state_of
from pentools.record.owed import owed_by
from pentools.record.plausible import doubt_of
from pentools.record.saying import say
from pentools.record.stages.job.works import forms_at_once
from pentools.record.view import SPOILT, why_not

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.entries import Entry
    from pentools.record.forms import Form
    from pentools.record.job import Job
    from pentools.record.kinds import Kind, Stage

__all__ = ["PanelResult", "StagePanel"]


@dataclass(frozen=True)
class PanelResult:
    """What a panel shows on its right side: a sentence, findings, drawings, and a table as HTML."""

    sentence: str = ""
    findings: Sequence[Finding] = ()
    drawings: Sequence[Drawing | None] = ()
    table: str = ""
    extra: Sequence[Any] = field(default_factory=tuple)


class StagePanel(ShowsItself):
    """The panel of one stage; stages with a result of their own subclass it.

    Parameters
    ----------
    job : Job
        The job it shows and adds to.
    stage : Stage
        What it is about.
    sheet : Sheet
        The sheet it lies on: it is told when the record has changed, and moves the cursor.
    """

    hold: str = ""
    """The hold point of the whole panel, as its stage names it; empty where there is none."""
    kind_holds: ClassVar[Mapping[str, str]] = {}
    """Kinds of entry that wait for a hold point of their own: kind to hold."""
    entry_holds: tuple[str, ...] = ()
    """Hold points that the panel's own `check` applies entry by entry, through `refuse`."""
    hidden_kinds: tuple[str, ...] = ()

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        self.job, self.stage, self.sheet = job, stage, sheet
        self.status = Status()
        hooks = FormHooks(
            self._saved, self._checked, sheet.look_at, partial(doubt_of, job), sheet.forget, sheet.onward_now
        )
        kinds = [kind for kind in stage.kinds if kind.key not in self.hidden_kinds]
        self.forms = StageForms(job, kinds, hooks)
        self.log = StageLog(job, stage, self._correct, self._withdrawn)
        self._said, self._done = "", frozenset[str]()
        self.header = widgets.HTML()
        self.header.add_class("pt-panel-head")  # on the sheet the stage's own line says it
        self.above = widgets.VBox()
        self.holder = self._make_holder()
        self.entry = widgets.VBox()
        self.entry.add_class("pt-entry")
        self.result_text = widgets.HTML()
        self.result_drawings = widgets.HTML()
        self.result_table = widgets.HTML()
        self.result_table.add_class("pt-scroll")
        self.more_button = widgets.ToggleButton(description="more figures", value=False)
        self.more_button.observe(guarded(self.status, self._refresh_more), "value")
        self.more_drawings = widgets.HTML()
        result = widgets.VBox(
            [self.result_text, self.result_drawings, self.result_table, self.more_button, self.more_drawings]
        )
        result.add_class("pt-result")
        columns = widgets.HBox([self.entry, result])
        columns.add_class("pt-columns")
        chooser = self._make_chooser()
        self.widget = widgets.VBox([self.header, self.above, chooser, columns, self.log.widget, self.status.widget])
        self.widget.add_class("pt-panel")
        self.more_button.layout.display = "none" if type(self).more is StagePanel.more else ""
        self._choose()
        self.refresh()

    # what a stage's own panel overrides ------------------------------------------------------------------

    def result(self) -> PanelResult:
        """What the record says, for the right side of the panel."""
        return PanelResult()

    def more(self) -> PanelResult | None:
        """Further figures and tables, shown when they are asked for; None where there are none."""
        return None

    def check(self, kind: Kind[Any], values: Form) -> None:
        """Refuse values that the record should not take, by raising a `PentoolsError`."""

    def refresh_forms(self) -> None:
        """Adapt the forms to what the record says now."""

    # building ------------------------------------------------------------------------------------------

    def _make_holder(self) -> widgets.VBox:
        keys = dict.fromkeys(key for key in (self.hold, *self.kind_holds.values(), *self.entry_holds) if key)
        self.holds = {
            key: HoldRow(key, self._release_hold, "" if key == self.hold else HOLDS[key].step) for key in keys
        }
        if self.holds:
            first = next(iter(self.holds.values()))
            self.hold_text, self.hold_reason, self._release_hold_button = first.text, first.reason, first.button
        return widgets.VBox([row.widget for row in self.holds.values()], layout={"display": "none"})

    def _make_chooser(self) -> widgets.Box:
        """The forms that are offered at once, and the rest under "more"."""
        offered = forms_at_once(self.stage.key, tuple(self.forms))
        self._at_once = offered
        self.chooser = widgets.ToggleButtons(
            options=self._options(offered), value=self._first(offered), style={"button_width": "auto"}
        )
        self.chooser.observe(guarded(self.status, self._chosen_kind), "value")
        self.more_forms = widgets.ToggleButton(description="more …", value=False)
        self.more_forms.add_class("pt-more")
        self.more_forms.observe(lambda _: self._offer_forms(), "value")
        self.more_forms.layout.display = "none" if len(offered) == len(self.forms) else ""
        kinds = widgets.HBox([self.chooser, self.more_forms], layout={"display": "none" if len(self.forms) < 2 else ""})
        kinds.add_class("pt-kinds")
        return kinds

    def _options(self, keys: Sequence[str]) -> list[tuple[str, str]]:
        return [(self.forms.title(key), key) for key in keys]

    def _first(self, offered: Sequence[str]) -> str | None:
        """The form that is asked for next: the first, or where one entry stands for all the first that has none yet."""
        for key in offered:
            if self.stage.kind(key).log:
                break
            if not self.job.record.live(self.stage.key, key):
                return key
        return offered[0] if offered else None

    def _offer_forms(self) -> None:
        kept = self.chooser.value
        keys = [*self._at_once, *(key for key in self.forms if key not in self._at_once)]
        shown = keys if self.more_forms.value or kept not in self._at_once else list(self._at_once)
        with self.chooser.hold_trait_notifications():
            self.chooser.options = self._options(shown)
            self.chooser.value = kept
        self.more_forms.description = "fewer" if self.more_forms.value else "more …"

    def show_form(self, key: str) -> None:
        """Show the form of a kind, wherever it stands."""
        if key not in self._at_once:
            self.more_forms.value = True
        self.chooser.value = key

    def _choose(self) -> None:
        key = self.chooser.value
        # a hold stands where it is met: under the button that it holds
        self.entry.children = (self.forms[key].widget, self.holder) if key else (self.holder,)

    def _chosen_kind(self) -> None:
        self._choose()
        self._refresh_result()

    # showing -------------------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show what the record says now."""
        self._refresh_words()
        self._refresh_result()

    def _refresh_words(self) -> None:
        self._said = say(self.job, self.stage.key)
        self.follow()
        self.log.refresh()

    def follow(self) -> None:
        """Show the state and adapt the forms to what the record says now; a form stays as it is where that cannot be told."""
        self._done = frozenset(one.key for one in owed_by(self.job) if one.done)
        self.refresh_state()
        try:
            self.refresh_forms()
        except SPOILT as error:
            self.status.failed(f"The forms could not follow. {why_not(error)}")

    def _refresh_result(self) -> None:
        try:
            shown = self.result()
        except SPOILT as error:
            shown = PanelResult(findings=(Finding("stop", "base.refused", sentence=why_not(error)),))
        grave = [f for f in shown.findings if f.level in ("warning", "stop")]
        lesser = [f for f in shown.findings if f not in grave]
        self.result_text.value = self._shown(sentence_html(shown.sentence) + findings_html(grave))
        self.result_drawings.value = self._shown("".join(d.svg for d in shown.drawings if d is not None))
        folded = findings_html(lesser) + shown.table
        self.result_table.value = (
            self._shown(f"<details><summary>Why, and how sure</summary>{folded}</details>") if folded else ""
        )
        self._refresh_more()

    def _shown(self, markup: str) -> str:
        return in_markup(markup, self.job.bench.text("bench", "decimal_sign"))

    def _refresh_more(self) -> None:
        """Draw the further figures only while they are shown: each costs some tens of milliseconds."""
        if not self.more_button.value:
            self.more_drawings.value = ""
            return
        try:
            shown = self.more()
        except SPOILT:
            shown = None  # the result itself says why
        self.more_drawings.value = (
            "" if shown is None else self._shown("".join(d.svg for d in shown.drawings if d is not None) + shown.table)
        )

    def refresh_state(self) -> None:
        """Show where the stage stands and whether it is held."""
        state = state_of(self.job, self.stage)
        why = f": {state.reason}" if state.reason else ""
        self.header.value = (
            f'<h2 title="{escape(self.stage.purpose)}">{escape(self.stage.title)}'
            f'<span class="pt-state pt-state-{state.word.split()[0]}">{escape(state.word + why)}</span></h2>'
        )
        for row in self.holds.values():
            row.show(held(self.job, row.key))
        shown = any(row.widget.layout.display == "" for row in self.holds.values())
        self.holder.layout.display = "" if shown else "none"

    # acting --------------------------------------------------------------------------------------------

    def _saved(self, entry: Entry) -> None:
        for row in self.holds.values():
            row.pending = row.about = ""
        before, done_before = self._said, self._done
        self._refresh_words()
        if entry.replaces and before and before != self._said and entry.kind in self.forms:
            self.forms[entry.kind].status.saved(f"saved {entry.time:%H:%M:%S}. Before: {before} Now: {self._said}")
        self.sheet.changed(self)
        self._go_on(entry, done_before)
        # last, because its figure takes longer than all else: the hand need not wait for it
        self._refresh_result()

    def sheet_changed(self) -> None:
        """Show what was added to the record beside the forms."""
        self.refresh()
        self.sheet.changed(self)

    def _go_on(self, entry: Entry, done_before: frozenset[str]) -> None:
        """Once something that is owed is on record, lead on: to the next form of this stage, else to the way on."""
        owed = [one for one in owed_by(self.job) if one.stage == self.stage.key]
        new = [one for one in owed if one.done and one.key not in done_before]
        if entry.replaces or not new:
            return
        coming = [one.kind for one in owed if not one.done and one.kind in self.forms]
        if coming and not self.stage.kind(entry.kind).log:
            self.show_form(coming[0])
            self._status_here().saved(f"saved {entry.time:%H:%M:%S}: {self.log.title_of(entry).lower()}")
            self.sheet.look_at(form_of(self.stage.key))
        else:
            self.sheet.look_at(".pt-onward")

    def _correct(self, entry: Entry) -> None:
        if entry.kind not in self.forms:
            title = self.log.title_of(entry)
            raise InputError("entry", "one that has a form", title, "Withdraw it and enter it again.")
        self.show_form(entry.kind)
        self.forms[entry.kind].correct(entry)

    def _withdrawn(self, entry: Entry, taken_back: Entry) -> None:
        form = self.forms.get(entry.kind)
        if form is not None and not form.kind.log:
            form.stop_correcting()
        self._saved(taken_back)

    def _release_hold(self, row: HoldRow) -> None:
        entry = self.job.release(self.stage.key, row.key, row.reason.value, about=row.about)
        row.reason.value = row.pending = row.about = ""
        self._status_here().saved(f"hold released {entry.time:%H:%M:%S}; the reason is in the record")
        self._saved(entry)

    def _status_here(self) -> Status:
        """The line beside the button of the form that is shown."""
        key = self.chooser.value
        return self.forms[key].status if key else self.status

    def _checked(self, kind: Kind[Any], values: Form) -> None:
        if kind.key in self.kind_holds:
            self.refuse_if_held(self.kind_holds[kind.key])
        self.check(kind, values)

    def refuse_if_held(self, hold: str = "") -> None:
        """Stop a save while a hold point stands.

        Parameters
        ----------
        hold : str
            The hold point; by default that of the whole panel.
        """
        _stop(held(self.job, hold or self.hold))

    def refuse(self, hold: str, reason: str, about: str = "") -> None:
        """Stop a save for a reason that holds for this entry only, unless the hold point was released.

        Parameters
        ----------
        hold : str
            One of the panel's hold points; its row shows until it is released.
        reason : str
            Why the entry waits, as a clause; an empty one lets it go on.
        about : str
            What alone its release lets go, of a hold point that is let go one by one.
        """
        row = self.holds[hold]
        row.pending = reason if HOLDS[hold].one_by_one or not self.job.record.releases(hold) else ""
        row.about = about if row.pending else ""
        self.refresh_state()
        _stop(row.pending)


def _stop(reason: str) -> None:
    """Stop a save for a reason, as a clause; an empty one lets it go on."""
    if reason:
        raise HoldError(f"This step is held: {reason}. Do that first, or release the hold with a reason below.")
