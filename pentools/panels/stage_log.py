"""The log of a stage: its entries with the labels of what they hold, and the way to correct or take back one."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.errors import InputError, RecordError
from pentools.panels.guard import Status, guarded
from pentools.panels.style import table_html
from pentools.record.entries import RELEASE

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["LOG_ROWS", "StageLog"]

LOG_ROWS = 12


class StageLog:
    """The entries of one stage.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        Whose entries.
    correct : callable
        Takes the entry that is to be corrected.
    withdrawn : callable
        Called after an entry was taken back, with it and the line that says so.
    """

    def __init__(
        self, job: Job, stage: Stage, correct: Callable[[Entry], None], withdrawn: Callable[[Entry, Entry], None]
    ) -> None:
        self.job, self.stage, self._correct_entry, self._withdrawn = job, stage, correct, withdrawn
        self.table = widgets.HTML()
        self.table.add_class("pt-scroll")
        self.status = Status()
        self.pick = widgets.Dropdown(description="Entry", options=[("choose …", "")], value="")
        self.why = widgets.Text(description="Reason, to withdraw it", continuous_update=True)
        self.correct_button = widgets.Button(description="Correct it")
        self.withdraw_button = widgets.Button(description="Withdraw it")
        self.correct_button.on_click(guarded(self.status, self._correct))
        self.withdraw_button.on_click(guarded(self.status, self._withdraw))
        self.tools = widgets.HBox([self.pick, self.correct_button, self.why, self.withdraw_button])
        self.tools.add_class("pt-row")
        self.button = widgets.ToggleButton(description="log", value=False)
        self.button.add_class("pt-more")
        self.button.observe(lambda _: self._show(), "value")
        self.part = widgets.VBox([self.table, self.tools, self.status.widget], layout={"display": "none"})
        self.widget = widgets.VBox([self.button, self.part])

    def _show(self) -> None:
        self.part.layout.display = "" if self.button.value else "none"

    def refresh(self) -> None:
        """Show the newest entries, the newest first."""
        entries = [e for e in self.job.record.live(self.stage.key) if e.kind != RELEASE]
        rows = [
            (
                f"{entry.time:%d %b %H:%M}",
                self.title_of(entry),
                self.in_words(entry),
                "corrected" if entry.replaces else "",
            )
            for entry in reversed(entries[-LOG_ROWS:])
        ]
        more = f" (the last {LOG_ROWS} of {len(entries)})" if len(entries) > LOG_ROWS else ""
        self.button.description = f"log ({len(entries)})"
        self.button.layout.display = "" if entries else "none"
        self.table.value = table_html(f"Log{more}", ("When", "What", "Entry", "Changed"), rows)
        options = [("choose …", "")]
        for entry in reversed(entries):
            options.append((f"{entry.time:%d %b %H:%M:%S} {self.in_words(entry)[:60]}", entry.id))
        kept = self.pick.value
        self.pick.options = options
        self.pick.value = kept if kept in {key for _, key in options} else ""
        self.tools.layout.display = "" if entries else "none"

    def title_of(self, entry: Entry) -> str:
        """What the form of an entry is headed with."""
        return next((kind.title for kind in self.stage.kinds if kind.key == entry.kind), entry.kind)

    def in_words(self, entry: Entry) -> str:
        """What an entry holds, each value with its label."""
        kind = next((kind for kind in self.stage.kinds if kind.key == entry.kind), None)
        if kind is None:
            return "an entry of a kind that this version does not know; it is kept"
        values = self.job.view.decoded(kind, entry)
        if isinstance(values, RecordError):
            return str(values)
        words = [
            f"{field.label}: {field.shown(value)}"
            for field in kind.fields
            if (value := getattr(values, field.name)) is not None
        ]
        text = "; ".join(words)
        return text + (f" ({entry.note})" if entry.note else "")

    def _chosen(self) -> Entry:
        for entry in self.job.record.live(self.stage.key):
            if entry.id == self.pick.value:
                return entry
        raise InputError("entry", "chosen from the list", "", "Choose the entry first.")

    def _correct(self) -> None:
        self._correct_entry(self._chosen())

    def _withdraw(self) -> None:
        entry = self._chosen()
        taken_back = self.job.withdraw(entry, self.why.value)
        self.why.value = ""
        self.status.saved(f"withdrawn {taken_back.time:%H:%M:%S}; it stays in the file, with your reason")
        self._withdrawn(entry, taken_back)
