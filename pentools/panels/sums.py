"""Sums in a notebook without a job: boxes in, the sentence, the findings and the table out; nothing is kept."""

from __future__ import annotations

import ipywidgets as widgets

from pentools.answers.asking import BenchGiven, answer_to, bench_of, own_facts
from pentools.errors import PentoolsError
from pentools.panels.bench import MessagePanel, PanelGroup
from pentools.panels.field_box import FieldBox
from pentools.panels.guard import Status, guarded
from pentools.panels.kind_form import at_once
from pentools.panels.showing import ShowsItself
from pentools.panels.style import STYLE
from pentools.sums import Sum, find

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
        self.more = widgets.ToggleButton(description="more …", value=False)
        self.more.add_class("pt-more")
        self.more.observe(lambda _: self._lay_out(), "value")
        self.first, self.rest = widgets.Box(), widgets.Box()
        for grid in (self.first, self.rest):
            grid.add_class("pt-fields")
        self.result = widgets.HTML()
        self.drawings = widgets.HTML()
        if chosen.asked_for is not None:
            self.boxes[chosen.asked_for.by].input.observe(guarded(self.status, self._lay_out), "value")
        self._lay_out()
        act = widgets.HBox([button, self.more, self.status.widget])
        act.add_class("pt-act")
        entry = widgets.VBox([self.first, self.rest, act])
        entry.add_class("pt-entry")
        right = widgets.VBox([self.result, self.drawings])
        right.add_class("pt-result")
        columns = widgets.HBox([entry, right])
        columns.add_class("pt-columns")
        self.widget = widgets.VBox([widgets.HTML(f"<h2>{chosen.title}</h2><p>{chosen.summary}</p>"), columns])
        self.widget.add_class("pentools")

    @property
    def asked(self) -> tuple[str, ...]:
        """The fields that are asked for now: without those of other systems than the one chosen."""
        asked = self.sum.asked_for
        if asked is None:
            return tuple(self.boxes)
        wanted = asked.wanted(self.boxes[asked.by].text)
        return tuple(name for name in self.boxes if name not in asked.fields or name in wanted)

    def _lay_out(self) -> None:
        """In two columns what must be said, and what the chosen system asks for; the rest while it is wanted."""
        asked, own = self.asked, self.sum.asked_for
        first = set(at_once(tuple(self.boxes[name].field for name in asked)))
        first |= {name for name in asked if own is not None and (name == own.by or name in own.fields)}
        rest = [name for name in asked if name not in first]
        self.first.children = tuple(self.boxes[name].widget for name in asked if name in first)
        self.rest.children = tuple(self.boxes[name].widget for name in rest) if self.more.value else ()
        self.rest.layout.display = "" if self.more.value and rest else "none"
        self.more.layout.display = "" if rest else "none"
        self.more.description = "less" if self.more.value else f"more ({len(rest)}) …"

    def _work_out(self) -> None:
        failed, bench = [], bench_of(self.bench)
        sign = bench.text("bench", "decimal_sign") if bench is not None else "."
        for name in self.asked:
            box = self.boxes[name]
            try:
                box.field.read(box.given, decimal_sign=sign)
                box.show_hint()
            except PentoolsError as error:
                box.show_error(str(error))
                failed.append(name)
        if failed:
            self.more.value = self.more.value or any(
                self.boxes[name].widget not in self.first.children for name in failed
            )
            self.status.failed("Not worked out: look at the marked fields. What you typed is still there.")
            return
        given = {name: self.boxes[name].given for name in self.asked if self.boxes[name].text.strip()}
        answer = answer_to(self.sum.key, given, self.bench)
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
