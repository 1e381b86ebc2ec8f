"""The sheet behind a job's notebook: it opens the job the notebook lies in and gives a panel for each stage."""

from __future__ import annotations

import importlib
import tempfile
from collections.abc import Sequence
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from pentools.errors import PentoolsError
from pentools.panels.showing import ShowsItself
from pentools.panels.stage import StagePanel
from pentools.panels.style import STYLE, findings_html, table_html
from pentools.record.bench import open_bench_folder
from pentools.record.holds import state_of
from pentools.record.job import RECORD_NAME, Job, job_in
from pentools.record.registry import all_stages, find_stage
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.storage import Record
from pentools.record.view import SPOILT, why_not

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
    """Panels of stages that belong together, one under the other."""

    def __init__(self, panels: Sequence[Any]) -> None:
        self.panels = tuple(panels)
        self.widget = widgets.VBox([panel.widget for panel in panels])


class BenchSheet(ShowsItself):
    """The bench as a notebook sees it: one job, and its panels.

    Parameters
    ----------
    job : Job
        The job.
    practice : bool
        True where nothing is kept, because the notebook does not lie in a job's folder.
    """

    def __init__(self, job: Job, *, practice: bool = False) -> None:
        self.job, self.practice = job, practice
        self.panels: list[StagePanel] = []
        self.overview = widgets.HTML()
        self.large = widgets.ToggleButton(description="Large type", value=job.bench.large_type)
        self.large.observe(lambda _: self._set_type_size(), "value")
        self.widget = widgets.VBox([widgets.HTML(STYLE), self.overview, self.large])
        self.widget.add_class("pentools")
        self._set_type_size()
        self.refresh()

    def stage(self, key: str, *more: str) -> StagePanel | MessagePanel | PanelGroup:
        """The panel of a stage, or of several that belong together.

        Parameters
        ----------
        key : str
            The stage, such as "fill test".
        *more : str
            Further stages, shown under it.

        Returns
        -------
        StagePanel, MessagePanel or PanelGroup
            The panel; one that says what is wrong where there is no such stage.
        """
        panels = [self._panel(name) for name in (key, *more)]
        return panels[0] if len(panels) == 1 else PanelGroup(panels)

    def _panel(self, key: str) -> StagePanel | MessagePanel:
        try:
            stage = find_stage(key)
        except PentoolsError as error:
            return MessagePanel(str(error))
        module, name = stage.panel.split(":")
        try:
            panel: StagePanel = getattr(importlib.import_module(module), name)(self.job, stage, self.changed)
        except SPOILT as error:
            return MessagePanel(f"{stage.title} cannot be shown: {why_not(error)}")
        self.panels = [p for p in self.panels if p.stage.key != key] + [panel]
        self._set_type_size()
        return panel

    def changed(self, source: StagePanel) -> None:
        """Tell the other panels that the record has changed."""
        self.refresh()
        for panel in self.panels:
            if panel is not source:
                panel.follow()

    def refresh(self) -> None:
        """Show where the job stands."""
        job = self.job
        states = [(stage.title, state_of(job, stage)) for stage in all_stages()]
        rows = [(title, state.word, state.reason) for title, state in states]
        where = (
            "<p><b>Practice sheet:</b> this notebook does not lie in a job's folder, so nothing typed here is kept. "
            "Start a job with <code>pentools new JOB</code>.</p>"
            if self.practice
            else ""
        )
        problems = "".join(f'<p class="pt-error" role="alert">{escape(text)}</p>' for text in job.record.problems)
        pen = job.newest(ARRIVAL).pen or ""
        self.overview.value = (
            f"<h2>{escape(job.name)}</h2><p>{escape(pen)}</p>{where}{problems}"
            + table_html("Where the job stands", ("Stage", "State", "Why"), rows)
            + "<p>When the write-up is wanted: File → Save and Export Notebook As → “Pen_page_for_client” or "
            "“Pen_page_for_blog”. The menu's plain HTML export would show whatever stands in the panels, "
            "private fields too: do not send that one.</p>"
        )

    def check(self) -> widgets.HTML:
        """What is still missing or odd, as a list."""
        from pentools.record.review import review

        shown = widgets.HTML(findings_html(review(self.job)) or "<p>Nothing is missing, and nothing is odd.</p>")
        shown.add_class("pentools")
        return shown

    def _set_type_size(self) -> None:
        for widget in (self.widget, *(panel.widget for panel in self.panels)):
            (widget.add_class if self.large.value else widget.remove_class)("pt-large")


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
