"""The front door: what is on the bench, what comes next for each pen, and a box for a new one."""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Callable, Sequence
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import quote

import ipywidgets as widgets

from pentools.books.queue.queue import queue_on
from pentools.books.queue.wanted import wanted_on
from pentools.errors import PentoolsError, RecordError
from pentools.live import bring_to_life
from pentools.panels.bench import MessagePanel
from pentools.panels.desk import Desk
from pentools.panels.guard import Status, guarded, is_enter
from pentools.panels.queue_rows import QueuePanel, QueueRow, row_words
from pentools.panels.showing import ShowsItself
from pentools.panels.style import STYLE, table_html
from pentools.record.bench import Bench, open_bench_folder
from pentools.record.came_with import join
from pentools.record.entries import now
from pentools.record.job import open_job
from pentools.record.layout import LEDGER_NOTEBOOK, lay_bench_notebook
from pentools.record.new_pen import new_pen
from pentools.serving import SERVER

if TYPE_CHECKING:
    from pentools.books.queue.queue import Line

__all__ = ["FrontDoor", "WantedList", "open_door"]

ENDED_SHOWN = 30
_OVER = ("posting", "posted", "ended")
Opens = Callable[[Path, str], str]


def _live_address(notebook: Path, place: str) -> str:
    """A job's sheet brought to life on the server that shows the front door; where it is found there."""
    server, token = os.environ.get(SERVER, ""), os.environ.get("JUPYTER_TOKEN_FILE", "")
    address = f"/doc/tree/{quote(place)}"
    if server and token:
        bring_to_life(server, Path(token).read_text(encoding="ascii").strip(), notebook, place)
    return address


class FrontDoor(ShowsItself):
    """The bench, a line a pen; a press opens its sheet.

    Parameters
    ----------
    bench : Bench
        The bench.
    opens : callable
        Takes a job's notebook and its place below the bench, makes it live and gives its address.
    """

    def __init__(self, bench: Bench, opens: Opens = _live_address) -> None:
        self.bench, self._opens = bench, opens
        self.desk = Desk("the-bench")
        self.desk.observe(lambda _: self.refresh(), "woken")
        self.status = Status()
        self.head = widgets.HTML()
        self.rows = widgets.VBox()
        self.pen = widgets.Text(
            description="A new pen, in a few words", placeholder="black lever filler, 1920s", continuous_update=True
        )
        begin = guarded(self.status, self._new, "NOT BEGUN")
        self.pen.on_msg(lambda _, content, __: begin() if is_enter(content) else None)
        self.begin = widgets.Button(description="Begin")
        self.begin.add_class("pt-main")
        self.begin.on_click(begin)
        self.ended = widgets.ToggleButton(description="ended …", value=False)
        self.ended.add_class("pt-more")
        self.ended.observe(lambda _: self.refresh(), "value")
        self.came_with = widgets.Combobox(description="came with", placeholder="a job of the same parcel")
        self.came_with.layout.display = "none"
        self.with_others = widgets.ToggleButton(description="with others …", value=False)
        self.with_others.add_class("pt-more")
        self.with_others.layout.align_self = "flex-end"
        self.with_others.observe(lambda _: self._ask_with(), "value")
        all_pens = widgets.Button(
            description="all pens …", tooltip="the queue, parts wanted and the table over all pens"
        )
        all_pens.add_class("pt-more")
        all_pens.on_click(guarded(self.status, self.over_all, "NOT OPENED"))
        new = widgets.HBox([self.pen, self.begin, self.with_others, self.came_with, self.status.widget])
        new.add_class("pt-row")
        foot = widgets.HBox([self.ended, all_pens])
        foot.add_class("pt-row")
        self.widget = widgets.VBox([widgets.HTML(STYLE), self.head, new, self.rows, foot, self.desk])
        self.widget.add_class("pentools")
        self.refresh()

    def refresh(self) -> None:
        """Look at the bench again."""
        self.status.quiet()
        moment = now()
        try:
            found = queue_on(self.bench, moment)
        except PentoolsError as error:
            self.head.value = f'<p class="pt-error" role="alert">✗ {escape(str(error))}</p>'
            return
        over = [line for line in found if line.state in _OVER]
        on = [line for line in found if line.state not in _OVER]
        self.came_with.options = tuple(line.job for line in on if line.state != "unread")
        self.head.value = self._head(on, over)
        shown = [*on, *(over[:ENDED_SHOWN] if self.ended.value else [])]
        self.rows.children = tuple(self._row(line, moment.date()) for line in shown)
        self.ended.description = "hide those that have ended" if self.ended.value else f"ended ({len(over)}) …"
        self.ended.layout.display = "" if over else "none"

    def _ask_with(self) -> None:
        """Ask for the other pen's job only while it is wanted."""
        self.came_with.layout.display = "" if self.with_others.value else "none"

    def _head(self, on: Sequence[Line], over: Sequence[Line]) -> str:
        """The name of the bench, how many pens are on it, and what waits at the door."""
        count = sum(line.state != "unread" for line in on)
        said = [f"On it: {'no pen' if count == 0 else 'one pen' if count == 1 else f'{count} pens'}."]
        waiting = sum(line.state == "posting" for line in over)
        due = sum(bool(line.follow_up) for line in over)
        if waiting:
            said.append(f"To be posted or fetched: {waiting}.")
        if due:
            said.append(f"Follow-ups due: {due}.")
        name = self.bench.text("bench", "name") or "The bench"
        problems = "".join(f'<p class="pt-error" role="alert">{escape(text)}</p>' for text in self.bench.problems)
        return f"<h2>{escape(name)}</h2><p>{' '.join(said)}</p>{problems}"

    def _row(self, line: Line, today: dt.date) -> widgets.HBox:
        return QueueRow(line.job, row_words(line, today), self.open, self.status).widget

    def open(self, name: str) -> None:
        """Open a job's sheet in this window.

        Raises
        ------
        RecordError
            If the job has no notebook, or it could not be made live.
        """
        notebook = self.bench.folder / name / f"{name}.ipynb"
        if not notebook.is_file():
            raise RecordError(f"{name} has no notebook. Lay it again with: pentools new {name}")
        self.status.saved(f"opening {name} …")
        self.desk.leave_for(self._opens(notebook, f"{name}/{name}.ipynb"))

    def wanted(self) -> WantedList:
        """The parts that jobs wait for, and that would take the place of makeshifts, over all pens."""
        return WantedList(self.bench)

    def queue(self) -> QueuePanel:
        """Every pen that waits for something, under what it waits for, with what is due after it went home."""
        panel = QueuePanel(self.bench, self.open)
        panel.widget.children = (*panel.widget.children, self.desk)  # it takes the window to the sheet
        return panel

    def over_all(self) -> None:
        """Open the notebook over all pens in this window; it is laid beside the bench's own where it is not there yet.

        Raises
        ------
        RecordError
            If it cannot be laid or made live.
        """
        notebook = lay_bench_notebook(self.bench.folder, LEDGER_NOTEBOOK)
        self.status.saved("opening all pens …")
        self.desk.leave_for(self._opens(notebook, LEDGER_NOTEBOOK))

    def _new(self) -> None:
        other = self.came_with.value.strip() if self.with_others.value else ""
        if other:
            open_job(other, bench=self.bench)
        job = new_pen(self.bench, self.pen.value, dt.date.today())
        if other:
            join(job, other)
        self.pen.value = self.came_with.value = ""
        self.with_others.value = False
        self.refresh()
        self.open(job.name)


class WantedList(ShowsItself):
    """Parts wanted, as a table."""

    def __init__(self, bench: Bench) -> None:
        rows = [
            tuple(
                str(row[name] or "–")
                for name in ("job", "pen", "part", "wanted", "holds_now", "since", "ordered_on", "expected_by")
            )
            for row in wanted_on(bench)
        ]
        head = ("Job", "Pen", "Part", "Wanted", "What holds now", "Since", "Ordered on", "Expected by")
        shown = table_html("Parts wanted", head, rows) if rows else "<p>No part is wanted.</p>"
        self.widget = widgets.VBox([widgets.HTML(shown)])
        self.widget.add_class("pentools")


def open_door() -> FrontDoor | MessagePanel:
    """The front door of the bench that a notebook lies on.

    Returns
    -------
    FrontDoor or MessagePanel
        The bench; a message where it cannot be read.
    """
    try:
        return FrontDoor(open_bench_folder(Path.cwd()))
    except PentoolsError as error:
        return MessagePanel(str(error))
