"""The least honest record on one line: a button for each thing that is owed, and one for what comes next."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.panels.slot import MARKS
from pentools.record.ahead import ahead_of
from pentools.record.owed import Owed, owed_by
from pentools.record.stages.job.release import ending

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Onward", "OwedRow"]

Go = Callable[[str, str], None]


class OwedRow:
    """What a job owes, done or not; a press goes to its form.

    Parameters
    ----------
    job : Job
        The job.
    go : callable
        Takes a stage and the kind of its form.
    """

    def __init__(self, job: Job, go: Go) -> None:
        self.job, self._go = job, go
        self.buttons: dict[str, widgets.Button] = {}
        self.label = widgets.HTML()
        self.widget = widgets.HBox()
        for name in ("pt-ways", "pt-owed"):
            self.widget.add_class(name)
        self.refresh()

    def refresh(self) -> None:
        """Follow the record; gone once the job has ended with nothing owed."""
        owed = owed_by(self.job)
        left = sum(not item.done for item in owed)
        shown = bool(left) or ending(self.job) is None
        self.widget.layout.display = "" if shown else "none"
        self.label.value = f"<b>The least it owes</b> ({len(owed) - left} of {len(owed)}):"
        first = next((item.key for item in owed if not item.done), None)
        self.widget.children = (self.label, *(self._button(item, item.key == first) for item in owed))

    def _button(self, item: Owed, now: bool) -> widgets.Button:
        if item.key not in self.buttons:
            button = widgets.Button()
            button.on_click(lambda _: self._go(item.stage, item.kind))
            self.buttons[item.key] = button
        button = self.buttons[item.key]
        button.description = f"{MARKS['done' if item.done else 'not begun']} {item.label}"
        button.tooltip = f"done: {item.words}" if item.done else item.words
        (button.add_class if now else button.remove_class)("pt-main")
        return button


class Onward:
    """The way to what comes next, under the stage that is open.

    Parameters
    ----------
    job : Job
        The job.
    go : callable
        Takes a stage and the kind of its form.
    """

    def __init__(self, job: Job, go: Go) -> None:
        self.job, self._go = job, go
        self.button = widgets.Button()
        self.button.on_click(lambda _: self.press())
        self.widget = widgets.HBox([self.button])
        self.widget.add_class("pt-onward")
        self.refresh()

    def refresh(self) -> None:
        """Follow the record; gone once the job has ended."""
        ahead = ahead_of(self.job)
        self.widget.layout.display = "" if ahead.stage else "none"
        self.button.description = f"Next: {ahead.words}"

    def press(self) -> None:
        """Go there."""
        ahead = ahead_of(self.job)
        if ahead.stage:
            self._go(ahead.stage, ahead.kind)
