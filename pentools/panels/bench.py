"""The sheet behind a job's notebook: it opens the job the notebook lies in, and gives each stage its place."""

from __future__ import annotations

import importlib
import os
import tempfile
from collections.abc import Sequence
from functools import partial
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.decimals import in_markup
from pentools.errors import PentoolsError
from pentools.numbers import capital
from pentools.panels.cable import BalanceCable
from pentools.panels.desk import Desk, draft_class
from pentools.panels.owed_row import Onward, OwedRow
from pentools.panels.sheet_part import form_of
from pentools.panels.showing import ShowsItself
from pentools.panels.slot import MARKS, StageSlot, line_of
from pentools.panels.stage import StagePanel
from pentools.panels.strip import Strip
from pentools.panels.style import STYLE, findings_html
from pentools.record.ahead import ahead_of, further_stages, sheet_stages
from pentools.record.bench import open_bench_folder
from pentools.record.job import RECORD_NAME, Job, job_in
from pentools.record.kinds import Stage
from pentools.record.layout import DOOR
from pentools.record.registry import find_stage
from pentools.record.stages.job.intake_kinds import ARRIVAL, REQUEST
from pentools.record.stages.job.works import WORKS
from pentools.record.storage import Record
from pentools.record.view import SPOILT

if TYPE_CHECKING:
    from pentools.systems.shape import PenShape

__all__ = ["BenchSheet", "MessagePanel", "PanelGroup", "open_bench"]


class MessagePanel(ShowsItself):
    """A panel that only says something, such as why a job cannot be opened."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.widget = widgets.VBox([widgets.HTML(f'{STYLE}<p class="pt-error" role="alert">✗ {escape(text)}</p>')])
        self.widget.add_class("pentools")

    def stage(self, *_: str) -> MessagePanel:
        """The same message in the place of every stage's panel."""
        return self


class PanelGroup(ShowsItself):
    """Parts of the sheet that belong together, one under the other."""

    def __init__(self, parts: Sequence[Any]) -> None:
        self.parts = tuple(parts)
        self.widget = widgets.VBox([part.widget for part in parts])


class BenchSheet(ShowsItself):
    """The bench as a notebook sees it: one job, where it stands, what is at hand, and a place for each stage.

    Parameters
    ----------
    job : Job
        The job.
    practice : bool
        True where nothing is kept, because the notebook does not lie in a job's folder.
    """

    def __init__(self, job: Job, *, practice: bool = False) -> None:
        self.job, self.practice = job, practice
        self.slots: dict[str, StageSlot] = {}
        self.desk = Desk(job.name)
        self.desk.observe(lambda _: self._greet(), "woken")
        self.head = widgets.HTML()
        self.strip = Strip(job, partial(self.changed, None))
        self.cable = BalanceCable(job.bench, self.strip.take_printed, self.strip.refuse_printed)
        self.owed = OwedRow(job, self.go)
        self.onward = Onward(job, self.go)
        self.ways = widgets.HBox()
        self.ways.add_class("pt-ways")
        self.further = widgets.ToggleButton(description="further …", value=False)
        self.further.add_class("pt-more")
        self.further.observe(lambda _: self._lay_ways(), "value")
        self.large = widgets.ToggleButton(description="Large type", value=job.bench.large_type)
        self.large.add_class("pt-more")
        self.large.observe(lambda _: self._set_type_size(), "value")
        # a stage that has no cell of its own in the notebook opens here
        self.stray = widgets.VBox()
        self._shown: set[str] = set()
        self.widget = widgets.VBox(
            [
                widgets.HTML(STYLE),
                self.head,
                self.owed.widget,
                self.strip.widget,
                self.ways,
                self.stray,
                self.desk,
            ]
        )
        self.widget.add_class("pentools")
        self._buttons: dict[str, widgets.Button] = {}
        self._drawn: tuple[PenShape | None, str] | None = None
        self._set_type_size()
        self.refresh()

    def stage(self, key: str, *more: str) -> StageSlot | MessagePanel | PanelGroup:
        """The place of a stage, or of several that belong together.

        Parameters
        ----------
        key : str
            The stage, such as "fill test".
        *more : str
            Further stages, shown under it.

        Returns
        -------
        StageSlot, MessagePanel or PanelGroup
            One line for each stage, which opens; a message where there is no such stage.
        """
        parts = [self._placed(name) for name in (key, *more)]
        return parts[0] if len(parts) == 1 else PanelGroup(parts)

    def panel(self, key: str) -> StagePanel:
        """The panel of a stage; made when it is first asked for.

        Raises
        ------
        InputError
            If there is no such stage.
        """
        return self._slot(find_stage(key)).panel

    def _placed(self, key: str) -> StageSlot | MessagePanel:
        try:
            slot = self._slot(find_stage(key))
        except PentoolsError as error:
            return MessagePanel(str(error))
        self._shown.add(key)
        return slot

    def _slot(self, stage: Stage) -> StageSlot:
        if stage.key not in self.slots:
            self.slots[stage.key] = StageSlot(self.job, stage, self._make_panel, self.press)
            self._set_type_size()
            self._show_slots()
        return self.slots[stage.key]

    def _make_panel(self, stage: Stage) -> StagePanel:
        module, name = stage.panel.split(":")
        panel: StagePanel = getattr(importlib.import_module(module), name)(self.job, stage, self)
        return panel

    # opening and closing -----------------------------------------------------------------------------------

    def press(self, slot: StageSlot) -> None:
        """Open a stage, and close the one that is open; close it where it is open already."""
        was_open = slot.is_open
        for other in self.slots.values():
            if other.is_open:
                other.close()
        self.stray.children = ()
        if was_open:
            self._show_slots()
            return
        self.strip.refresh(slot.stage.key)
        slot.open(self.strip.widget, self.onward.widget)
        self._show_slots()
        if slot.stage.key not in self._shown:
            self.stray.children = (slot.widget,)
        self.look_at(self._first_box(slot))

    def _first_box(self, slot: StageSlot) -> str:
        """The selector of the box to begin in: the first that must be said and holds nothing yet."""
        panel, place = slot.built, form_of(slot.stage.key)
        shown = panel.chooser.value if panel is not None else None
        if panel is None or shown is None:
            return place
        form = panel.forms[shown]
        empty = [
            f.name for f in form.kind.fields if f.required and f.name in form.asked and not form.boxes[f.name].text
        ]
        return f"{place} .{draft_class(slot.stage.key, shown, empty[0])}" if empty else place

    def open_stage(self, key: str) -> None:
        """Open the stage of that name."""
        slot = self._slot(find_stage(key))
        if not slot.is_open:
            self.press(slot)

    def go(self, stage: str, kind: str) -> None:
        """Open a stage at one of its forms; without a kind at the form that the stage asks for next."""
        self.open_stage(stage)
        built = self.slots[stage].built  # none where it could not be made; its place says why
        if built is not None and kind in built.forms:
            built.show_form(kind)
            self.look_at(self._first_box(self.slots[stage]))

    # what panels ask of the sheet --------------------------------------------------------------------------

    def changed(self, source: ShowsItself | None) -> None:
        """Let everything follow the record: the head, the lines, and the panel that is open."""
        self.refresh()
        for slot in self.slots.values():
            slot.refresh()
            if slot.is_open and slot.built is not None and slot.built is not source:
                slot.built.follow()

    def look_at(self, selector: str) -> None:
        """Put the cursor into the first box under a selector."""
        self.desk.focus(selector)

    def onward_now(self) -> None:
        """Go to what comes next."""
        self.onward.press()

    def forget(self, stage: str, kind: str) -> None:
        """What was typed into a form is saved: no draft of it is kept any longer."""
        self.desk.forget(stage, kind)

    def _greet(self) -> None:
        """A page that shows the sheet anew begins in the stage that is open, else at what is owed next."""
        is_open = next((key for key, slot in self.slots.items() if slot.is_open), None)
        if is_open is not None:
            self.look_at(form_of(is_open))
        elif self.owed.widget.layout.display != "none":
            self.look_at(".pt-owed .pt-main")

    # the head ----------------------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show where the job stands."""
        self.head.value = in_markup(self._head(), self.job.bench.text("bench", "decimal_sign"))
        self.owed.refresh()
        self.onward.refresh()
        self._lay_ways()

    def _head(self) -> str:
        job, ahead = self.job, ahead_of(self.job)
        arrival, request = job.newest(ARRIVAL), job.newest(REQUEST)
        pen = (arrival.pen or "A pen").strip()
        facts = [f"job {job.name}"]
        if arrival.arrived_on:
            facts.append(f"arrived {arrival.arrived_on}")
        if request.work:
            facts.append(dict(WORKS).get(request.work, request.work))
        then = f' <span class="pt-hint">then: {escape(ahead.then)}</span>' if ahead.then else ""
        waits = "".join(
            f'<p class="pt-waits">■ {escape(capital(what))} waits: {escape(why)}.</p>' for what, why in ahead.waits
        )
        problems = "".join(
            f'<p class="pt-error" role="alert">{escape(text)}</p>'
            for text in (*job.record.problems, *job.bench.problems)
        )
        where = (
            "<p><b>Practice sheet:</b> this notebook does not lie in a job's folder, so nothing typed here is kept. "
            "Start a job with <code>pentools new JOB</code>.</p>"
            if self.practice
            else ""
        )
        door = os.environ.get(DOOR, "")
        back = f'<a class="pt-back" href="{escape(door, quote=True)}">← the bench</a>' if door.startswith("/") else ""
        return (
            f'<div class="pt-head"><div><h2>{escape(capital(pen))}</h2>'
            f'<p class="pt-hint">{back} {escape(" · ".join(facts))}</p>{where}{problems}'
            f'<p class="pt-next"><b>Next:</b> {escape(ahead.words)}.{then}</p>{waits}</div>'
            f'<div class="pt-pen">{self._drawing()}</div></div>'
        )

    def _drawing(self) -> str:
        """The pen in section, drawn anew only when what it is drawn from has changed."""
        from pentools.figures.pen_from_record import pen_drawing, pen_shape

        try:
            shape = pen_shape(self.job)
            if self._drawn is None or self._drawn[0] != shape:
                drawing = pen_drawing(self.job, marks=())
                self._drawn = (shape, "" if drawing is None else drawing.svg)
        except SPOILT:
            return ""
        return self._drawn[1]

    def _lay_ways(self) -> None:
        """A button for each stage: those of this kind of work, and the others while they are asked for."""
        at_once, further = sheet_stages(self.job), further_stages(self.job)
        stages = (*at_once, *further) if self.further.value else at_once
        for stage in stages:
            if stage.key not in self._buttons:
                button = widgets.Button()
                button.on_click(partial(self._go, stage.key))
                self._buttons[stage.key] = button
            word, sentence = line_of(self.job, stage)
            self._buttons[stage.key].description = f"{MARKS[word]} {stage.title}"
            self._buttons[stage.key].tooltip = f"{word}: {sentence}" if word != sentence else word
        self.further.layout.display = "" if further else "none"
        self._show_slots()
        self.ways.children = (*(self._buttons[stage.key] for stage in stages), self.further, self.large)

    def _show_slots(self) -> None:
        """The line of a folded stage stands in the notebook only while it is asked for or open."""
        folded = () if self.further.value else {stage.key for stage in further_stages(self.job)}
        for key, slot in self.slots.items():
            slot.widget.layout.display = "none" if key in folded and not slot.is_open else ""

    def _go(self, key: str, _: Any) -> None:
        self.open_stage(key)

    def check(self) -> CheckList:
        """What is still missing or odd, as a list that follows the record."""
        return CheckList(self.job)

    def _set_type_size(self) -> None:
        for widget in (self.widget, *(slot.widget for slot in self.slots.values())):
            (widget.add_class if self.large.value else widget.remove_class)("pt-large")


class CheckList(ShowsItself):
    """What is still missing or odd; worked out when it is asked for."""

    def __init__(self, job: Job) -> None:
        self.job = job
        self.button = widgets.Button(description="What is still missing?")
        self.button.on_click(lambda _: self.show())
        self.list = widgets.HTML()
        self.widget = widgets.VBox([self.button, self.list])
        for name in ("pentools", "pt-check"):
            self.widget.add_class(name)

    def show(self) -> None:
        """Work it out and show it."""
        from pentools.record.review import matters_and_fuller, review

        parts = zip(("Matters here", "For a fuller record"), matters_and_fuller(review(self.job)), strict=True)
        shown = "".join(f"<h3>{heading}</h3>{findings_html(found)}" for heading, found in parts if found)
        self.list.value = shown or "<p>Nothing is missing, and nothing is odd.</p>"


def open_bench(folder: str | Path | None = None) -> BenchSheet | MessagePanel:
    """Open the job that a notebook lies in.

    Parameters
    ----------
    folder : str, Path or None
        The job's folder; by default the folder the notebook runs in.

    Returns
    -------
    BenchSheet or MessagePanel
        The sheet; a panel that says what is wrong where the job cannot be opened.
    """
    where = Path(folder or Path.cwd()).resolve()
    try:
        if (where / RECORD_NAME).is_file() or (where / f"{where.name}.ipynb").is_file():
            return BenchSheet(job_in(where))
        practice = Path(tempfile.mkdtemp(prefix="pen-practice-"))
        job = Job("practice", practice, open_bench_folder(practice), Record.open(practice / RECORD_NAME))
        return BenchSheet(job, practice=True)
    except PentoolsError as error:
        return MessagePanel(str(error))
    except OSError as error:
        return MessagePanel(f"{where} cannot be opened ({error.strerror or error}).")
