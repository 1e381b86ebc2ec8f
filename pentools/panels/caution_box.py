"""The cautions that apply, in one line where the act is: opened to be read, acknowledged once in a job, never repeated."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.calc.treatment.cautions import Caution
from pentools.panels.guard import Status, guarded
from pentools.record.stages.treatment.facts import cautions_read
from pentools.record.stages.treatment.opening_kinds import CAUTION_READ
from pentools.tables.source_words import source_words

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["CautionBox", "caution_line", "stage_cautions"]


def caution_line(title: str, texts: Sequence[str]) -> str:
    """Cautions as one line of HTML that opens.

    Parameters
    ----------
    title : str
        What stands on the line.
    texts : sequence of str
        The cautions, as HTML.

    Returns
    -------
    str
        The line; empty where there are none.
    """
    items = "".join(f"<li>{text}</li>" for text in texts)
    return f'<details class="pt-caution"><summary>{escape(title)}</summary><ul>{items}</ul></details>' if texts else ""


def stage_cautions(stage: Stage) -> widgets.HTML:
    """The cautions that a stage always shows, as one line that opens."""
    return widgets.HTML(caution_line("Caution", [escape(text) for text in stage.cautions]))


class CautionBox:
    """Cautions on a panel.

    Parameters
    ----------
    job : Job
        Where it is kept which were read.
    saved : callable
        Called with the last entry, after it is on disk.
    """

    def __init__(self, job: Job, saved: Callable[[Entry], None]) -> None:
        self.job, self._saved = job, saved
        self._fresh: tuple[str, ...] = ()
        self.status = Status()
        self.line = widgets.HTML()
        self.button = widgets.Button(description="I have read them")
        self.button.on_click(guarded(self.status, self._read))
        self.widget = widgets.HBox([self.line, self.button, self.status.widget])
        self.widget.add_class("pt-cautions")
        self._shown: tuple[tuple[str, ...], tuple[str, ...]] | None = None

    def show(self, cautions: Sequence[Caution], read: frozenset[str]) -> None:
        """Show the cautions that apply.

        Parameters
        ----------
        cautions : sequence of Caution
            All that apply.
        read : frozenset of str
            Keys of those that were acknowledged.
        """
        fresh = [caution for caution in cautions if caution.key not in read]
        old = [caution for caution in cautions if caution.key in read]
        state = (tuple(c.key for c in fresh), tuple(c.key for c in old))
        if state == self._shown:
            return
        self._shown, self._fresh = state, state[0]
        names = ", ".join(caution.key.replace("-", " ") for caution in fresh)
        title = f"Caution: {names}" if fresh else f"Cautions, read in this job ({len(old)})"
        self.line.value = caution_line(title, [_words(caution) for caution in (*fresh, *old)])
        self.button.layout.display = "" if fresh else "none"

    def _read(self) -> None:
        fresh = [key for key in self._fresh if key not in cautions_read(self.job)]
        entries = [self.job.add(CAUTION_READ.stage, CAUTION_READ.key, {"caution": key}) for key in fresh]
        if entries:
            self._saved(entries[-1])
            self.status.saved(f"read {entries[-1].time:%H:%M:%S}; it is in the record")


def _words(caution: Caution) -> str:
    source = "; ".join(source_words(caution.source, "cautions"))
    name = escape(caution.key.replace("-", " "))
    return (
        f"<b>{name}.</b> {escape(caution.text)} "
        f'<span class="pt-hint">{escape(source)} ({escape(caution.certainty)}).</span>'
    )
