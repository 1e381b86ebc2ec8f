"""A form for one kind of entry: its boxes, a Save button with the answer beside it, and the correction of an older entry."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field
from html import escape
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.errors import InputError, RecordError
from pentools.fields import Field
from pentools.numbers import in_words
from pentools.panels.desk import draft_class
from pentools.panels.field_box import FieldBox
from pentools.panels.guard import AskedOnce, Status, guarded
from pentools.record.layout import pictures_in

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.forms import Form
    from pentools.record.job import Job
    from pentools.record.kinds import Kind

__all__ = ["FormHooks", "KindForm", "at_once"]

REMARK = Field("remark", "Remark", hint="for the bench alone: it stands on no page", audience="bench")
DOUBLE_CLICK_SECONDS = 1.0
STAYING = ("choice", "yes-no", "ticks")
"""Kinds of field whose choice stays after a save, for the next entry of a log."""
MOST_AT_ONCE, FEWEST_AT_ONCE = 6, 4


def _nothing(*_: Any) -> None:
    return None


@dataclass(frozen=True, slots=True)
class FormHooks:
    """What a form calls.

    Parameters
    ----------
    saved : callable
        With the entry, after it is on disk.
    check : callable
        With the kind and the filled form, before it is saved; raises a `PentoolsError` to refuse it.
    look_at : callable
        With a selector, to put the cursor into a box.
    doubt : callable
        With the filled form; gives what is to be asked before it is saved, empty where nothing is.
    forget : callable
        With stage and kind, when what was typed needs to be kept no longer.
    onward : callable
        When Enter is pressed in a form that was saved and holds nothing new: to what comes next.
    """

    saved: Callable[[Entry], None]
    check: Callable[[Kind[Any], Form], None] = field(default=_nothing)
    look_at: Callable[[str], None] = field(default=_nothing)
    doubt: Callable[[Form], str] = field(default=lambda _: "")
    forget: Callable[[str, str], None] = field(default=_nothing)
    onward: Callable[[], None] = field(default=_nothing)


def at_once(fields: tuple[Field, ...]) -> tuple[str, ...]:
    """The fields of a form that stand on it at once; the others stand under "more".

    Parameters
    ----------
    fields : tuple of Field
        Those that are asked, in order.

    Returns
    -------
    tuple of str
        All of a short form; of a longer one what must be said, filled up with the first of the others.
    """
    if len(fields) <= MOST_AT_ONCE:
        return tuple(f.name for f in fields)
    must = [f.name for f in fields if f.required]
    others = [f.name for f in fields if not f.required]
    first = {*must, *others[: max(FEWEST_AT_ONCE - len(must), 0)]}
    return tuple(f.name for f in fields if f.name in first)


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
    hooks : FormHooks
        What it calls.
    """

    def __init__(self, job: Job, stage: str, kind: Kind[Any], hooks: FormHooks) -> None:
        self.job, self.stage, self.kind, self.hooks = job, stage, kind, hooks
        self._correcting: Entry | None = None
        self._last_save, self._saved_once = float("-inf"), False
        self._only: tuple[str, ...] | None = None
        self.status = Status()
        self._once = AskedOnce(self.status, "Press Save again if it is so, or change it.")
        self.save = guarded(self.status, self._save)
        files = pictures_in(job.folder)
        entered = guarded(self.status, self._enter)
        self.boxes = {f.name: FieldBox(f, entered, files, job.read_one) for f in (*kind.fields, REMARK)}
        for name, box in self.boxes.items():
            box.widget.add_class(draft_class(stage, kind.key, name))
        self.button = widgets.Button(description="Save", tooltip="Enter; in a large box Ctrl and Enter")
        self.button.add_class("pt-main")
        self.button.on_click(self.save)
        self.cancel = widgets.Button(description="Leave it as it was", layout={"display": "none"})
        self.cancel.on_click(guarded(self.status, self.stop_correcting))
        self.more = widgets.ToggleButton(description="more …", value=False)
        self.more.add_class("pt-more")
        self.more.observe(lambda _: self._lay_out(), "value")
        self.heading = widgets.HTML()
        self.first, self.rest = widgets.Box(), widgets.Box()
        for grid in (self.first, self.rest):
            grid.add_class("pt-fields")
        self.above_button = widgets.VBox()
        act = widgets.HBox([self.button, self.cancel, self.more, self.status.widget])
        act.add_class("pt-act")
        self.below_button = widgets.VBox()
        self.widget = widgets.VBox([self.heading, self.first, self.rest, self.above_button, act, self.below_button])
        self.widget.add_class("pt-form")
        self._set_heading()
        self._lay_out()
        if not kind.log:
            self.load_current()

    def _set_heading(self) -> None:
        about = f"<p>{escape(self.kind.help)}</p>" if self.kind.help else ""
        moment = f", correcting the entry of {self._correcting.time:%d %B %H:%M}" if self._correcting else ""
        self.heading.value = f"<h3>{escape(self.kind.title + moment)}</h3>{about}"
        self.button.description = "Save the correction" if self._correcting else "Save"
        self.cancel.layout.display = "" if self._correcting else "none"

    def _lay_out(self) -> None:
        """What must be said first, in two columns; the rest while it is asked for or filled in."""
        asked = tuple(f for f in self.kind.fields if self._only is None or f.name in self._only)
        first = at_once(asked)
        rest = [f.name for f in asked if f.name not in first] + [REMARK.name]
        self.first.children = tuple(self.boxes[name].widget for name in first)
        self.rest.children = tuple(self.boxes[name].widget for name in rest) if self.more.value else ()
        self.rest.layout.display = "" if self.more.value else "none"
        count = len(rest)
        self.more.description = "less" if self.more.value else f"more ({count}) …"

    def show_only(self, names: tuple[str, ...] | None) -> None:
        """Ask only for some of the fields; None asks for all."""
        if names != self._only:
            self._only = names
            self._lay_out()

    @property
    def asked(self) -> tuple[str, ...]:
        """The fields that are asked for now, on the form at once or under "more"."""
        return tuple(f.name for f in self.kind.fields if self._only is None or f.name in self._only)

    def load_current(self) -> None:
        """Fill the boxes from the newest entry, for a kind of which only the newest counts."""
        entry = self.job.record.latest(self.stage, self.kind.key)
        if entry is not None:
            self._load(entry)

    def _load(self, entry: Entry) -> None:
        values = self.job.view.decoded(self.kind, entry)
        for f in self.kind.fields:
            # of an entry that cannot be read nothing is loaded: the log says why, and what is saved takes its place
            known = None if isinstance(values, RecordError) else getattr(values, f.name)
            self.boxes[f.name].text = f.typed(known)
        self.boxes[REMARK.name].text = entry.note

    def correct(self, entry: Entry) -> None:
        """Load an older entry for correction, with every box of it in view."""
        self._correcting = entry
        self._load(entry)
        self.more.value = True
        self.status.quiet()
        self._set_heading()
        self.hooks.look_at(f".{draft_class(self.stage, self.kind.key, self.asked[0])}")

    def stop_correcting(self) -> None:
        """Leave the older entry as it was."""
        self._correcting = None
        for box in self.boxes.values():
            box.clear()
        if not self.kind.log:
            self.load_current()
        self.status.quiet()
        self._set_heading()

    def _enter(self) -> None:
        """Enter in a box saves; where that was done and nothing was typed since, it leads on."""
        typed = [box for box in self.boxes.values() if box.field.kind not in STAYING and box.text != box.field.default]
        saved_before = self._last_save + DOUBLE_CLICK_SECONDS < time.monotonic()
        if self.kind.log and self._saved_once and saved_before and not typed and self._correcting is None:
            self.hooks.onward()
        else:
            self._save()

    def _save(self) -> None:
        self.job.record.refresh()
        texts = {name: box.given for name, box in self.boxes.items()}
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
            self._refuse(errors)
            return
        if all(value is None for value in values.values()) and not remark.strip():
            self.status.failed(
                "NOT SAVED. Every box was empty when Save was pressed. If you had typed something, press Save again."
            )
            return
        filled = self.kind.filled(values)
        self.hooks.check(self.kind, filled)
        if self._correcting is None and not self._once.sure(texts, lambda: self.hooks.doubt(filled)):
            return
        replaced = self._correcting
        if replaced is None and not self.kind.log:
            replaced = self.job.record.latest(self.stage, self.kind.key)
        entry = self.job.save(
            self.stage, self.kind, values, note=remark.strip(), replaces=replaced.id if replaced else None
        )
        self._after_save(entry)

    def _refuse(self, errors: dict[str, InputError]) -> None:
        """Say beside the button which box it is, and go there."""
        labels = [f.label for f in self.kind.fields if f.name in errors]
        if not set(errors) <= set(at_once(tuple(self.kind.field(n) for n in self.asked))):
            self.more.value = True
        self.status.failed(f"NOT SAVED. Look again at: {in_words(labels)}. What you typed is still there.")
        first = next(f.name for f in self.kind.fields if f.name in errors)
        self.hooks.look_at(f".{draft_class(self.stage, self.kind.key, first)}")

    def _after_save(self, entry: Entry) -> None:
        self._last_save, self._saved_once = time.monotonic(), True
        self._correcting = None
        self.hooks.forget(self.stage, self.kind.key)
        if self.kind.log:
            for box in self.boxes.values():
                if box.field.kind not in STAYING:
                    box.clear()
        self._set_heading()
        self.status.saved(f"saved {entry.time:%H:%M:%S}")
        self.hooks.saved(entry)
