"""A pen that came with others: a press lets every pen of the parcel have what was entered once."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.numbers import in_words
from pentools.panels.guard import Status, guarded
from pentools.record.came_with import lead_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["ParcelRow"]


class ParcelRow:
    """The line of a parcel; it is not there for a pen that came alone.

    Parameters
    ----------
    job : Job
        The job that is open.
    changed : callable
        Called once something was handed on, because it may have reached this job too.
    """

    def __init__(self, job: Job, changed: Callable[[], None]) -> None:
        self.job, self._changed = job, changed
        self.status = Status()
        self.button = widgets.Button()
        self.button.on_click(guarded(self.status, self._hand_on, "NOT HANDED ON"))
        self.widget = widgets.HBox([self.button, self.status.widget])
        self.widget.add_class("pt-row")
        self.refresh()

    def refresh(self) -> None:
        """Follow the record."""
        lead = lead_of(self.job)
        self.widget.layout.display = "none" if lead is None else ""
        own = lead == self.job.name
        self.button.description = "Enter it for the pens that came with it" if own else f"Take it over from {lead}"

    def _hand_on(self) -> None:
        from pentools.books.queue.parcels import hand_on_to_all

        done = hand_on_to_all(self.job)
        reached = [name for name, count in done.items() if count]
        waiting = [name for name, count in done.items() if not count]
        said = f"taken over by {in_words(reached)}" if reached else "nothing was new"
        left = f"; nothing new for {in_words(waiting)}, or its job has not ended" if waiting and reached else ""
        self.status.saved(said + left)
        self._changed()
