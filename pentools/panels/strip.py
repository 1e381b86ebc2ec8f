"""The strip that is at hand at every stage: weigh, minutes, note, picture; one large box or button each."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import PurePath
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.errors import InputError
from pentools.panels.desk import draft_class
from pentools.panels.field_box import with_own_unit
from pentools.panels.guard import AskedOnce, Status, guarded, is_enter
from pentools.record.plausible import doubt_of
from pentools.record.stages.job.ending_kinds import PICTURE
from pentools.record.stages.job.work_kinds import ACTIVITIES, NOTE, TIMER_START, TIMER_STOP, WORK
from pentools.record.stages.job.work_log import running_timer
from pentools.record.stages.weighing.filling import next_state
from pentools.record.stages.weighing.kinds import WEIGHING

if TYPE_CHECKING:
    from pentools.instruments.balance_line import Printed
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Kind

__all__ = ["ACTIVITY_OF", "Strip"]

STATES = (("empty", "dry"), ("drained", "drained"), ("filled", "filled"), ("gain", "gain"))
ACTIVITY_OF: Mapping[str, str] = {
    "intake": "look", "identify": "look", "condition": "look", "agree": "write", "open": "open", "clean": "clean",
    "repairs": "mend", "seal": "seal", "closing": "seal", "fill test": "test", "finish": "finish", "limits": "write", "pictures": "write", "release": "write", "posting": "write",
}  # fmt: skip
"""The activity that minutes are counted for, by the stage that is open."""
_MINUTES = re.compile(r"\s*(\d+(?:[.,]\d+)?\s*(?:(?:h|hours?|min|minutes?)\b)?)[\s:,]*(.*)", re.DOTALL)


class Strip:
    """Weigh, minutes, note, picture.

    Parameters
    ----------
    job : Job
        The job it adds to.
    saved : callable
        Called after an entry is on disk.
    """

    def __init__(self, job: Job, saved: Callable[[], None]) -> None:
        self.job, self._saved = job, saved
        self.status = Status()
        self._once = AskedOnce(self.status, "Press Enter again if it is so, or change it.")
        self.activity = "other"
        self.mass = self._box("Weigh", "14.86 g", guarded(self.status, self.weigh), WEIGHING.key)
        self.state = widgets.ToggleButtons(options=STATES, value=next_state(self.job), style={"button_width": "auto"})
        self.minutes = self._box("Minutes", "12, and what was done", guarded(self.status, self.enter_minutes), WORK.key)
        self.clock = widgets.Button(description="start the clock")
        self.clock.on_click(guarded(self.status, self.press_clock))
        self.note = self._box(
            "Note for the bench", "old sac hard as glass", guarded(self.status, self.enter_note), NOTE.key
        )
        self.picture = widgets.FileUpload(accept="image/*", multiple=False, description="Picture: choose …")
        self.picture.observe(guarded(self.status, self.take_picture), "value")
        parts = (
            widgets.VBox([self.mass, self.state]),
            widgets.VBox([self.minutes, self.clock]),
            widgets.VBox([self.note]),
            widgets.VBox([self.picture]),
        )
        row = widgets.HBox(parts)
        row.add_class("pt-strip-row")
        self.widget = widgets.VBox([row, self.status.widget])
        self.widget.add_class("pt-strip")
        self.refresh()

    def _box(self, label: str, example: str, enter: Callable[..., None], kind: str) -> widgets.Text:
        box = widgets.Text(description=label, placeholder=example, continuous_update=True)
        box.add_class(draft_class("strip", kind, "box"))
        box.on_msg(lambda _, content, __: enter() if is_enter(content) else None)
        return box

    def refresh(self, stage: str = "") -> None:
        """Follow the record, and the stage that is open."""
        if stage:
            self.activity = ACTIVITY_OF.get(stage, "other")
        words = dict(ACTIVITIES)[self.activity]
        running = running_timer(self.job)
        self.minutes.description = f"Minutes, {words}"
        self.clock.description = f"stop the clock (since {running.entry.time:%H:%M})" if running else "start the clock"

    def weigh(self) -> None:
        """One weighing: the mass in the box, the state chosen."""
        mass = with_own_unit(WEIGHING.field("mass"), self.mass.value)
        entry = self._take(WEIGHING, {"state": str(self.state.value), "mass": mass}, self.mass)
        if entry is not None:
            shown = WEIGHING.decode(entry).mass
            self._done(
                entry,
                f"{WEIGHING.field('mass').shown(shown)}, {next(w for w, key in STATES if key == self.state.value)}",
            )
            self.state.value = next_state(self.job)

    def _take(self, kind: Kind[Any], texts: dict[str, str], box: widgets.Text) -> Entry | None:
        """Save what a box holds; None where it is unlikely and was asked about."""
        values, errors = self.job.read(kind, texts)
        if errors:
            raise next(iter(errors.values()))
        filled = kind.filled(values)
        if not self._once.sure(texts, lambda: doubt_of(self.job, filled)):
            return None
        entry = self.job.save(kind.stage, kind, values)
        box.value = ""
        return entry

    def take_printed(self, printed: Printed) -> None:
        """A mass that the balance printed, in the state that is chosen."""
        self.mass.value = printed.reading.typed
        guarded(self.status, self.weigh)()

    def refuse_printed(self, why: str) -> None:
        """A line from the balance that cannot be taken."""
        self.status.failed(f"NOT SAVED. {why}")

    def enter_minutes(self) -> None:
        """Minutes of the activity of the stage that is open; what follows the number is what was done."""
        found = _MINUTES.fullmatch(self.minutes.value)
        if found is None:
            raise InputError(
                "Minutes", "a number, and what was done", self.minutes.value, "Type it like 12 old sac out."
            )
        time = with_own_unit(WORK.field("minutes"), found[1])
        done = found[2].strip() or dict(ACTIVITIES)[self.activity]
        entry = self._take(WORK, {"activity": self.activity, "minutes": time, "done": done}, self.minutes)
        if entry is not None:
            self._done(entry, f"{time}, {dict(ACTIVITIES)[self.activity]}")

    def press_clock(self) -> None:
        """Start the clock, or stop it; what stands in the box is what was done."""
        if running_timer(self.job) is None:
            entry = self.job.add(TIMER_START.stage, TIMER_START.key, {"activity": self.activity})
            self._done(entry, "the clock runs")
            return
        entry = self.job.add(TIMER_STOP.stage, TIMER_STOP.key, {"done": self.minutes.value})
        self.minutes.value = ""
        self._done(entry, "the clock is stopped")

    def enter_note(self) -> None:
        """A note for the bench alone."""
        entry = self.job.add(NOTE.stage, NOTE.key, {"note": self.note.value})
        self.note.value = ""
        self._done(entry, "the note")

    def take_picture(self) -> None:
        """A picture chosen from the computer goes into the job's photos folder; what it shows is asked under Pictures."""
        from pentools.panels.picture_in import lay_in

        for chosen in self.picture.value:
            name = lay_in(self.job.folder / "photos", PurePath(str(chosen["name"])).name, bytes(chosen["content"]))
            moment = "before" if not self.job.log(PICTURE) else "during"
            entry = self.job.add(PICTURE.stage, PICTURE.key, {"photo": name, "moment": moment})
            self._done(entry, f"photos/{name}, {moment} the work; say under Pictures what it shows")

    def _done(self, entry: Entry, what: str) -> None:
        self.status.saved(f"saved {entry.time:%H:%M:%S}: {what}")
        self.refresh()
        self._saved()
