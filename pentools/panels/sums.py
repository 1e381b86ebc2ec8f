"""Sums in a notebook without a job: boxes in, the sentence, the findings and the table out; nothing is kept."""

from __future__ import annotations

from functools import partial

import ipywidgets as widgets

from pentools.answers.asking import BenchGiven, answer_to, bench_of, own_facts
from pentools.errors import PentoolsError
from pentools.panels.bench import MessagePanel, PanelGroup
from pentools.panels.field_box import FieldBox
from pentools.panels.guard import Status, guarded
from pentools.panels.showing import ShowsItself
from pentools.panels.style import STYLE
from pentools.sums import Sum, find
from pentools.sums.base import AskedFor

__all__ = ["SumPanel", "SumSheet", "open_sums"]


class SumPanel(ShowsItself):
    """One sum as a panel.

    Parameters
    ----------
    chosen : Sum
        The sum.
    bench : BenchGiven
        The bench whose facts fill what is left empty.
    """

    def __init__(self, chosen: Sum, bench: BenchGiven = None) -> None:
        self.sum, self.bench = chosen, bench
        self.status = Status()
        self.work_out = guarded(self.status, self._work_out, "Not worked out")
        self.boxes = {field.name: FieldBox(field, self.work_out) for field in chosen.fields}
        for name, fact in own_facts(chosen, {}, bench_of(bench)).items():
            self.boxes[name].text = fact
        button = widgets.Button(description="Work it out")
        button.add_class("pt-main")
        button.on_click(self.work_out)
        self.button = button
        self.result = widgets.HTML()
        self.drawings = widgets.HTML()
        if chosen.asked_for is not None:
            self.boxes[chosen.asked_for.by].input.observe(
                guarded(self.status, partial(self._ask_for, chosen.asked_for)), "value"
            )
            self._ask_for(chosen.asked_for)
        entry = widgets.VBox([*(box.widget for box in self.boxes.values()), button, self.status.widget])
        entry.add_class("pt-entry")
        right = widgets.VBox([self.result, self.drawings])
        right.add_class("pt-result")
        columns = widgets.HBox([entry, right])
        columns.add_class("pt-columns")
        self.widget = widgets.VBox([widgets.HTML(f"<h2>{chosen.title}</h2><p>{chosen.summary}</p>"), columns])
        self.widget.add_class("pentools")

    def _ask_for(self, asked: AskedFor) -> None:
        wanted = asked.wanted(self.boxes[asked.by].text)
        for name in asked.fields:
            self.boxes[name].widget.layout.display = "" if name in wanted else "none"

    def _work_out(self) -> None:
        failed, bench = False, bench_of(self.bench)
        sign = bench.text("bench", "decimal_sign") if bench is not None else "."
        for box in self.boxes.values():
            try:
                box.field.read(box.text, decimal_sign=sign)
                box.show_hint()
            except PentoolsError as error:
                box.show_error(str(error))
                failed = True
        if failed:
            self.status.failed("Not worked out: look at the marked fields. What you typed is still there.")
            return
        visible = {n: b.text for n, b in self.boxes.items() if b.text.strip() and b.widget.layout.display != "none"}
        answer = answer_to(self.sum.key, visible, self.bench)
        self.result.value = answer.html()
        self.drawings.value = "".join(drawing.svg for drawing in answer.figures())
        self.status.quiet()


class SumSheet(ShowsItself):
    """The calculator's sheet: its style, and a panel for each sum; empty boxes take the bench's own facts."""

    def __init__(self, bench: BenchGiven = None) -> None:
        self.bench = bench
        self.widget = widgets.VBox([widgets.HTML(f"{STYLE}<h2>Quick sums</h2><p>Nothing typed here is kept.</p>")])
        self.widget.add_class("pentools")

    def panel(self, key: str, *more: str) -> SumPanel | MessagePanel | PanelGroup:
        """The panel of a sum, or of several that belong together.

        Parameters
        ----------
        key : str
            The sum, such as "capacity".
        *more : str
            Further sums, shown under it.

        Returns
        -------
        SumPanel, MessagePanel or PanelGroup
            The panel; one that says what is wrong where there is no such sum.
        """
        panels = [_panel(name, self.bench) for name in (key, *more)]
        return panels[0] if len(panels) == 1 else PanelGroup(panels)


def _panel(key: str, bench: BenchGiven) -> SumPanel | MessagePanel:
    try:
        return SumPanel(find(key), bench)
    except PentoolsError as error:
        return MessagePanel(str(error))


def open_sums(bench: BenchGiven = None) -> SumSheet:
    """A calculator's sheet for a notebook; without a bench given, the one of PENTOOLS_BENCH, if any."""
    return SumSheet(bench)
