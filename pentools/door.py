"""The front door: what is on the bench, what comes next for each pen, and a box for a new one."""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Callable
from functools import partial
from html import escape
from pathlib import Path
from urllib.parse import quote

import ipywidgets as widgets

from pentools.books.wanted import wanted_on
from pentools.errors import PentoolsError, RecordError
from pentools.live import bring_to_life
from pentools.numbers import capital
from pentools.panels.bench import MessagePanel
from pentools.panels.desk import Desk
from pentools.panels.guard import Status, guarded, is_enter
from pentools.panels.showing import ShowsItself
from pentools.panels.style import STYLE, table_html
from pentools.record.bench import Bench, open_bench_folder
from pentools.record.standing import Standing, new_pen, standing_on
from pentools.serving import SERVER

__all__ = ["FrontDoor", "WantedList", "open_door"]

ENDED_SHOWN = 30
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
        new = widgets.HBox([self.pen, self.begin, self.status.widget])
        new.add_class("pt-row")
        self.widget = widgets.VBox([widgets.HTML(STYLE), self.head, new, self.rows, self.ended, self.desk])
        self.widget.add_class("pentools")
        self.refresh()

    def refresh(self) -> None:
        """Look at the bench again."""
        self.status.quiet()
        try:
            found = standing_on(self.bench)
        except PentoolsError as error:
            self.head.value = f'<p class="pt-error" role="alert">✗ {escape(str(error))}</p>'
            return
        ended = [one for one in found if one.state == "ended"]
        shown = [one for one in found if one.state != "ended"] + (ended[-ENDED_SHOWN:] if self.ended.value else [])
        name = self.bench.text("bench", "name") or "The bench"
        count = sum(one.state == "open" for one in found)
        pens = "no pen" if count == 0 else "one pen" if count == 1 else f"{count} pens"
        problems = "".join(f'<p class="pt-error" role="alert">{escape(text)}</p>' for text in self.bench.problems)
        self.head.value = f"<h2>{escape(name)}</h2><p>On it: {pens}.</p>{problems}"
        self.rows.children = tuple(self._row(one) for one in shown)
        self.ended.description = "hide those that have ended" if self.ended.value else f"ended ({len(ended)}) …"
        self.ended.layout.display = "" if ended else "none"

    def _row(self, one: Standing) -> widgets.HBox:
        button = widgets.Button(description=one.name, tooltip=f"open {one.name}")
        button.on_click(guarded(self.status, partial(self.open, one.name), "NOT OPENED"))
        button.add_class("pt-way-in")
        waits = "".join(f'<br><span class="pt-waits">■ {escape(why)}</span>' for why in one.waits)
        pen = f"<b>{escape(capital(one.pen))}.</b> " if one.pen else ""
        said = {"open": f"Next: {one.next}.", "ended": f"Ended: {one.next}.", "unread": f"✗ {one.next}"}[one.state]
        row = widgets.HBox([button, widgets.HTML(f"{pen}{escape(said)}{waits}")])
        row.add_class("pt-bench-row")
        return row

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
        """The parts that would take the place of makeshifts, over all pens."""
        return WantedList(self.bench)

    def _new(self) -> None:
        job = new_pen(self.bench, self.pen.value, dt.date.today())
        self.pen.value = ""
        self.refresh()
        self.open(job.name)


class WantedList(ShowsItself):
    """Parts wanted, as a table."""

    def __init__(self, bench: Bench) -> None:
        rows = [
            tuple(str(row[name] or "–") for name in ("job", "pen", "part", "wanted", "holds_now", "since"))
            for row in wanted_on(bench)
        ]
        head = ("Job", "Pen", "Part", "Wanted", "What holds now", "Since")
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
