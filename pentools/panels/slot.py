"""A stage on the sheet: one line until it is opened, and the stage's panel, made then, while it is open."""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.panels.showing import ShowsItself
from pentools.record.holds import state_of
from pentools.record.saying import say
from pentools.record.view import SPOILT, why_not

if TYPE_CHECKING:
    from pentools.panels.stage import StagePanel
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["MARKS", "StageSlot", "line_of"]

MARKS = {"done": "✓", "open": "○", "held": "■", "not begun": "·"}
"""The mark of a stage's state; the word stands beside it for whoever cannot see it."""


def line_of(job: Job, stage: Stage) -> tuple[str, str]:
    """A stage's state in a word, and the sentence that matters of it.

    Returns
    -------
    tuple of str
        "not begun", "open", "held" or "done"; and the sentence, which for a held stage is why it waits.
    """
    state = state_of(job, stage)
    if state.word == "not begun":
        return state.word, "not begun"
    if state.word == "held":
        return state.word, f"waits: {state.reason}"
    return state.word, say(job, stage.key)


class StageSlot(ShowsItself):
    """One stage's place on the sheet.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        The stage.
    make : callable
        Makes the stage's panel when it is first opened.
    pressed : callable
        Called with the slot when its line is pressed: the sheet opens or closes it.
    """

    def __init__(
        self, job: Job, stage: Stage, make: Callable[[Stage], StagePanel], pressed: Callable[[StageSlot], None]
    ) -> None:
        self.job, self.stage, self._make = job, stage, make
        self._panel: StagePanel | None = None
        self.is_open = False
        self.mark = widgets.HTML()
        self.title = widgets.Button(description=stage.title)
        self.title.on_click(lambda _: pressed(self))
        self.title.add_class("pt-way-in")
        self.sentence = widgets.HTML()
        self.sentence.add_class("pt-line-sentence")
        self.line = widgets.HBox([self.mark, self.title, self.sentence])
        self.line.add_class("pt-line")
        self.body = widgets.VBox()
        self.widget = widgets.VBox([self.line, self.body])
        for name in ("pentools", "pt-slot", f"pt-slot-{stage.key.replace(' ', '-')}"):
            self.widget.add_class(name)
        self.refresh()

    @property
    def panel(self) -> StagePanel:
        """The stage's panel; made when it is first asked for."""
        if self._panel is None:
            self._panel = self._make(self.stage)
        return self._panel

    @property
    def built(self) -> StagePanel | None:
        """The stage's panel where it was made already."""
        return self._panel

    def open(self, above: widgets.Widget | None = None, below: widgets.Widget | None = None) -> None:
        """Show the panel, with what is at hand at every stage above it, and the way on below."""
        self.is_open = True
        try:
            self.panel.refresh()
            shown = self.panel.widget
        except SPOILT as error:
            words = escape(f"{self.stage.title} cannot be shown: {why_not(error)}")
            shown = widgets.HTML(f'<p class="pt-error" role="alert">✗ {words}</p>')
        self.body.children = tuple(part for part in (above, shown, below) if part is not None)
        self.refresh()

    def close(self) -> None:
        """Show the line alone."""
        self.is_open = False
        self.body.children = ()
        self.refresh()

    def refresh(self) -> None:
        """Show where the stage stands."""
        word, sentence = line_of(self.job, self.stage)
        self.mark.value = f'<span class="pt-mark pt-mark-{word.split()[0]}" title="{word}">{MARKS[word]}</span>'
        if self.is_open:  # the sentence itself stands in the panel
            state = state_of(self.job, self.stage)
            sentence = f"{state.word}: {state.reason}" if state.reason else state.word
        self.sentence.value = escape(sentence)
        self.title.tooltip = f"close {self.stage.title}" if self.is_open else f"open {self.stage.title}"
        for name, on in (("pt-is-open", self.is_open), ("pt-is-held", word == "held")):
            (self.widget.add_class if on else self.widget.remove_class)(name)
