"""A form for one kind of entry: its boxes, a Save button, and the correction of an older entry."""

from __future__ import annotations

import time
from collections.abc import Callable
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.errors import RecordError
from pentools.fields import Field
from pentools.panels.field_box import FieldBox
from pentools.panels.guard import Status, guarded

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.forms import Form
    from pentools.record.job import Job
    from pentools.record.kinds import Kind

__all__ = ["KindForm"]

REMARK = Field("remark", "Remark", hint="for the bench alone: it stands on no page", audience="bench")
DOUBLE_CLICK_SECONDS = 1.0


class KindForm:
    """A form that appends entries of one kind.

    Parameters
    ----------
    job : Job
        Where entries go.
    stage : str
        The stage's key.
    kind : Kind[Any]
        What is asked.
    saved : callable
        Called after an entry is on disk.
    check : callable
        Called with the filled form before it is saved; raises a `PentoolsError` to refuse them.
    """

    def __init__(
        self,
        job: Job,
        stage: str,
        kind: Kind[Any],
        saved: Callable[[Entry], None],
        check: Callable[[Kind[Any], Form], None] | None = None,
    ) -> None:
        self.job, self.stage, self.kind = job, stage, kind
        self._saved, self._check = saved, check
        self._correcting: Entry | None = None
        self._last_save = float("-inf")
        self.status = Status()
        self.save = guarded(self.status, self._save)
        files = _photo_files(job.folder)
        self.boxes = {field.name: FieldBox(field, self.save, files) for field in (*kind.fields, REMARK)}
        self.button = widgets.Button(description="Save")
        self.button.add_class("pt-main")
        self.button.on_click(self.save)
        self.cancel = widgets.Button(description="Leave it as it was", layout={"display": "none"})
        self.cancel.on_click(guarded(self.status, self.stop_correcting))
        self.heading = widgets.HTML()
        self.widget = widgets.VBox(
            [
                self.heading,
                *(box.widget for box in self.boxes.values()),
                widgets.HBox([self.button, self.cancel]),
                self.status.widget,
            ]
        )
        self._set_heading()
        if not kind.log:
            self.load_current()

    def _set_heading(self) -> None:
        about = f"<p>{escape(self.kind.help)}</p>" if self.kind.help else ""
        moment = f", correcting the entry of {self._correcting.time:%d %B %H:%M}" if self._correcting else ""
        self.heading.value = f"<h3>{escape(self.kind.title + moment)}</h3>{about}"
        self.button.description = "Save the correction" if self._correcting else "Save"
        self.cancel.layout.display = "" if self._correcting else "none"

    def show_only(self, names: tuple[str, ...] | None) -> None:
        """Show only some of the boxes; None shows all."""
        for name, box in self.boxes.items():
            visible = names is None or name in names or name == REMARK.name
            box.widget.layout.display = "" if visible else "none"

    def load_current(self) -> None:
        """Fill the boxes from the newest entry, for a kind of which only the newest counts."""
        entry = self.job.record.latest(self.stage, self.kind.key)
        if entry is not None:
            self._load(entry)

    def _load(self, entry: Entry) -> None:
        values = self.job.view.decoded(self.kind, entry)
        for field in self.kind.fields:
            # of an entry that cannot be read nothing is loaded: the log says why, and what is saved takes its place
            known = None if isinstance(values, RecordError) else getattr(values, field.name)
            self.boxes[field.name].text = field.typed(known)
        self.boxes[REMARK.name].text = entry.note

    def correct(self, entry: Entry) -> None:
        """Load an older entry for correction."""
        self._correcting = entry
        self._load(entry)
        self.status.quiet()
        self._set_heading()

    def stop_correcting(self) -> None:
        """Leave the older entry as it was."""
        self._correcting = None
        for box in self.boxes.values():
            box.clear()
        if not self.kind.log:
            self.load_current()
        self.status.quiet()
        self._set_heading()

    def _save(self) -> None:
        self.job.record.refresh()
        texts = {name: box.text for name, box in self.boxes.items()}
        blank = all(not text.strip() or text == self.boxes[name].field.default for name, text in texts.items())
        if blank and self.kind.log and time.monotonic() - self._last_save < DOUBLE_CLICK_SECONDS:
            return  # a double click: the first one saved, and its message stands
        remark = texts.pop(REMARK.name)
        values, errors = self.job.read(self.kind, texts)
        for name, box in self.boxes.items():
            if name in errors:
                box.show_error(str(errors[name]))
            else:
                box.show_hint()
        if errors:
            count = "One field needs" if len(errors) == 1 else f"{len(errors)} fields need"
            self.status.failed(f"NOT SAVED. {count} another look; what you typed is still there.")
            return
        if all(value is None for value in values.values()) and not remark.strip():
            self.status.failed(
                "NOT SAVED. Every box was empty when Save was pressed. If you had typed something, press Save again."
            )
            return
        if self._check is not None:
            self._check(self.kind, self.kind.filled(values))
        replaced = self._correcting
        if replaced is None and not self.kind.log:
            replaced = self.job.record.latest(self.stage, self.kind.key)
        entry = self.job.save(
            self.stage, self.kind, values, note=remark.strip(), replaces=replaced.id if replaced else None
        )
        self._after_save(entry)

    def _after_save(self, entry: Entry) -> None:
        self._last_save = time.monotonic()
        self._correcting = None
        if self.kind.log:
            for box in self.boxes.values():
                if box.field.kind not in ("choice", "yes-no"):
                    box.clear()
        self._set_heading()
        self.status.saved(f"saved {entry.time:%H:%M:%S}")
        self._saved(entry)


def _photo_files(folder: Path) -> tuple[str, ...]:
    photos = folder / "photos"
    return tuple(sorted(p.name for p in photos.iterdir() if p.is_file())) if photos.is_dir() else ()
