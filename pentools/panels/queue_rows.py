"""The queue as rows to press: a pen a row, a heading where another group begins."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from functools import partial
from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.books.queue.queue import queue_on
from pentools.books.queue.words import DUE, TO_WORK_ON, day_words, groups_of
from pentools.errors import PentoolsError
from pentools.numbers import capital
from pentools.panels.guard import Status, guarded
from pentools.panels.showing import ShowsItself
from pentools.panels.style import STYLE
from pentools.record.entries import now

if TYPE_CHECKING:
    from pentools.books.queue.queue import Line
    from pentools.record.bench import Bench

__all__ = ["QueuePanel", "QueueRow", "row_words"]

SHOWN = 60
_DONE = ("posting", "posted", "ended")
_LAW = "What notices are due for a pen that nobody fetches, and when, is for your own law and terms to say."


def row_words(line: Line, today: dt.date, *, follow_up: bool = False) -> str:
    """What a row says of a pen, as HTML."""
    parts = [f"Ended: {line.ending}."] if line.ending and not follow_up else []
    if line.state == "unread":
        parts.append(f"✗ {line.next}")
    elif follow_up:
        parts.append(f"{capital(line.follow_up)}.")
    elif line.state != "ended":
        parts.append(f"Next: {line.next}.")
    if line.waits_for and line.state not in ("posting", "bench", "ended") and not follow_up:
        parts.append(f"Waits for {'; '.join(line.waits_for)}.")
    if line.since is not None and line.state in _DONE and not follow_up:
        parts.append(f"Since {day_words(line.since, today)}.")
    if line.promised_by is not None:
        parts.append(f"Promised by {day_words(line.promised_by, today)}{f': {line.danger}' if line.danger else ''}.")
    if line.parcel:
        parts.append("First of its parcel." if line.parcel == line.job else f"Came with {line.parcel}.")
    pen = f"<b>{escape(capital(line.pen))}.</b> " if line.pen else ""
    late = [f"late: {what}" for what in line.overdue if not what.startswith("promised")]
    waits = [*late, *(f"{step} waits: {why}" for step, why in line.holds)]
    marks = "".join(f'<br><span class="pt-waits">■ {escape(why)}</span>' for why in waits if not follow_up)
    return f"{pen}{escape(' '.join(parts))}{marks}"


class QueueRow:
    """One pen: its job as a button, and what is said of it.

    Parameters
    ----------
    job : str
        The job.
    words : str
        What is said, as HTML.
    opens : callable
        Takes the job's name and opens its sheet.
    status : Status
        Where it says so if it cannot be opened.
    """

    def __init__(self, job: str, words: str, opens: Callable[[str], None], status: Status) -> None:
        button = widgets.Button(description=job, tooltip=f"open {job}")
        button.on_click(guarded(status, partial(opens, job), "NOT OPENED"))
        button.add_class("pt-way-in")
        self.widget = widgets.HBox([button, widgets.HTML(words)])
        self.widget.add_class("pt-bench-row")


class QueuePanel(ShowsItself):
    """Every pen that waits for something, under what it waits for; a press opens its sheet.

    Parameters
    ----------
    bench : Bench
        The bench.
    opens : callable
        Takes a job's name and opens its sheet.
    today : date, datetime or None
        As of when; this moment by default.
    """

    def __init__(self, bench: Bench, opens: Callable[[str], None], today: dt.date | None = None) -> None:
        self.bench, self._opens, self._today = bench, opens, today
        self.status = Status()
        self.head = widgets.HTML()
        self.rows = widgets.VBox()
        again = widgets.Button(description="Look again")
        again.on_click(guarded(self.status, self.refresh))
        foot = widgets.HBox([again, self.status.widget])
        foot.add_class("pt-row")
        self.widget = widgets.VBox([widgets.HTML(STYLE), self.head, self.rows, foot])
        self.widget.add_class("pentools")
        self.refresh()

    def refresh(self) -> None:
        """Look at the bench again."""
        moment = self._today or now()
        today = moment.date() if isinstance(moment, dt.datetime) else moment
        try:
            lines = queue_on(self.bench, moment)
        except PentoolsError as error:
            self.head.value = f'<p class="pt-error" role="alert">✗ {escape(str(error))}</p>'
            return
        groups = groups_of(lines)
        ended = sum(line.state == "ended" for line in lines)
        self.head.value = f"<p>{_counted(groups)}{f' Ended: {ended}.' if ended else ''}</p>"
        self.rows.children = tuple(row for head, group in groups.items() for row in self._group(head, group, today))

    def _group(self, head: str, group: Sequence[Line], today: dt.date) -> list[widgets.Widget]:
        due = head == DUE
        rows = [
            QueueRow(line.job, row_words(line, today, follow_up=due), self._opens, self.status).widget
            for line in group[:SHOWN]
        ]
        more = [widgets.HTML(f"<p>and {len(group) - SHOWN} more: pentools queue</p>")] if len(group) > SHOWN else []
        law = (
            [widgets.HTML(f"<p>{_LAW}</p>")] if any(line.state == "posting" and line.overdue for line in group) else []
        )
        return [widgets.HTML(f"<h3>{escape(capital(head))} ({len(group)})</h3>"), *rows, *more, *law]


def _counted(groups: dict[str, list[Line]]) -> str:
    """How many pens wait, and how many of them can be worked on; the headings have the rest."""
    waiting = sum(len(group) for head, group in groups.items() if head != DUE)
    if not waiting:
        return "Nothing waits on this bench."
    ready = len(groups.get(TO_WORK_ON, ()))
    pens = "1 pen waits" if waiting == 1 else f"{waiting} pens wait"
    return f"{pens} for something; {ready} can be worked on now."
