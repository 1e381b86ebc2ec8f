"""The work log's panel: a timer to start and stop, and the minutes so far."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from pentools.errors import InputError
from pentools.figures.job.work_log import minutes_figure
from pentools.panels.from_drawer import FromDrawer
from pentools.panels.guard import guarded
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.entries import now
from pentools.record.forms import Form
from pentools.record.holds import held
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.spending import counted
from pentools.record.stages.job.work_kinds import ACTIVITIES, TIMER_START, TIMER_STOP, Material
from pentools.record.stages.job.work_log import minutes_by_activity, running_timer
from pentools.record.stages.seal.trials import fitted_unlisted

__all__ = ["WorkLogPanel"]


_PART = {"section": "section", "inner-cap": "inner-cap", "breather": "filler", "collar": "filler"}
"""Place of a seal -> the part it counts to, where that is not the seals."""


class WorkLogPanel(StagePanel):
    """Counts minutes, from a timer or as typed."""

    hidden_kinds = (TIMER_START.key, TIMER_STOP.key)
    entry_holds = ("spend",)

    def refresh_forms(self) -> None:
        """Show the timer's buttons as they apply now."""
        if not self.above.children:
            self.timer_text = widgets.HTML()
            self.activity = widgets.Dropdown(
                description="Activity to time", options=[(text, key) for key, text in ACTIVITIES], value="clean"
            )
            self.timed = widgets.Text(description="What was done", continuous_update=True)
            self.start = widgets.Button(description="Start the timer")
            self.stop = widgets.Button(description="Stop the timer")
            self.start.on_click(guarded(self.status, self._start))
            self.stop.on_click(guarded(self.status, self._stop))
            row = widgets.HBox([self.activity, self.start, self.timed, self.stop])
            row.add_class("pt-row")
            self.above.children = (self.timer_text, row)
        self._offer_fitted()
        if not hasattr(self, "drawer"):
            self.drawer = FromDrawer(self.forms["material"], self.job.bench)
        self.drawer.refresh()
        running = running_timer(self.job)
        self.start.disabled, self.stop.disabled = running is not None, running is None
        if running is not None:
            begun = running.entry.time
            minutes = (now() - begun).total_seconds() / 60
            name = dict(ACTIVITIES).get(running.values.activity or "", "work")
            self.timer_text.value = f"The timer runs for <b>{name}</b> since {begun:%H:%M} ({minutes:.0f} min)."
        else:
            self.timer_text.value = "No timer is running."

    def _offer_fitted(self) -> None:
        """What held in a dry trial stands in the form of what went in, with its lot: it is not typed again."""
        fitted = fitted_unlisted(self.job)
        offered = {"what": "", "lot": "", "way": "", "part": ""}
        if fitted is not None:
            offered = {
                "what": fitted.what or "",
                "lot": fitted.lot or "",
                "way": "added",
                "part": _PART.get(fitted.place or "", "seals"),
            }
        form = self.forms["material"]
        if form.boxes["what"].text not in ("", form.boxes["what"].field.default):
            return  # something else is being typed
        for name, text in offered.items():
            form.boxes[name].suggest(text)

    def _start(self) -> None:
        if running_timer(self.job) is not None:
            raise InputError("timer", "stopped before it is started again", "a running timer")
        self._saved(self.job.add("work log", TIMER_START.key, {"activity": self.activity.value}))
        self.status.saved(f"timer started {now():%H:%M:%S}")

    def _stop(self) -> None:
        if running_timer(self.job) is None:
            raise InputError("timer", "running to be stopped", "no running timer")
        entry = self.job.add("work log", TIMER_STOP.key, {"done": self.timed.value})
        self.timed.value = ""
        self._saved(entry)
        self.status.saved(f"timer stopped {entry.time:%H:%M:%S}")

    def check(self, kind: Kind[Any], values: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No material whose cost would go past the ceiling; any typed spell of work is taken."""
        if isinstance(values, Material):
            cost = counted(self.job, values.cost)
            self.refuse("spend", held(self.job, "spend", amount=cost) if cost else "")

    def result(self) -> PanelResult:
        """The hours so far."""
        drawings = (minutes_figure(self.job),) if minutes_by_activity(self.job) else ()
        return PanelResult(say(self.job, self.stage.key), drawings=drawings)
