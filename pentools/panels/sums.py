"""Sums in a notebook without a job: boxes in, the sentence, the findings and the table out; nothing is kept."""

from __future__ import annotations

import ipywidgets as widgets

from pentools.errors import PentoolsError
from pentools.figures.sum_figures import figures_for
from pentools.panels.bench import MessagePanel, PanelGroup
from pentools.panels.field_box import FieldBox
from pentools.panels.guard import Status, guarded
from pentools.panels.style import STYLE, findings_html, sentence_html, table_html
from pentools.sums import Sum, find, read_options

__all__ = ["SumPanel", "SumSheet", "open_sums"]


class SumPanel:
    """One sum as a panel.

    Parameters
    ----------
    chosen : Sum
        The sum.
    """

    def __init__(self, chosen: Sum) -> None:
        self.sum = chosen
        self.status = Status()
        self.work_out = guarded(self.status, self._work_out, "Not worked out")
        self.boxes = {field.name: FieldBox(field, self.work_out) for field in chosen.fields}
        button = widgets.Button(description="Work it out")
        button.add_class("pt-main")
        button.on_click(self.work_out)
        self.button = button
        self.result = widgets.HTML()
        self.drawings = widgets.HTML()
        chooser = self.boxes.get("system")
        if chosen.key == "capacity" and chooser is not None:
            chooser.input.observe(guarded(self.status, self._ask_for_system), "value")
            self._ask_for_system()
        entry = widgets.VBox([*(box.widget for box in self.boxes.values()), button, self.status.widget])
        entry.add_class("pt-entry")
        right = widgets.VBox([self.result, self.drawings])
        right.add_class("pt-result")
        columns = widgets.HBox([entry, right])
        columns.add_class("pt-columns")
        self.widget = widgets.VBox([widgets.HTML(f"<h2>{chosen.title}</h2><p>{chosen.summary}</p>"), columns])
        self.widget.add_class("pentools")

    def _ipython_display_(self) -> None:
        from IPython.display import display

        display(self.widget)

    def _ask_for_system(self) -> None:
        from pentools.sums.weighing.capacity import all_dimension_names, dimension_fields

        system = self.boxes["system"].text
        wanted = {field.name for field in dimension_fields(system)} if system else set()
        for name in all_dimension_names():
            if name in self.boxes:
                self.boxes[name].widget.layout.display = "" if name in wanted else "none"

    def _work_out(self) -> None:
        failed = False
        for box in self.boxes.values():
            try:
                box.field.read(box.text)
                box.show_hint()
            except PentoolsError as error:
                box.show_error(str(error))
                failed = True
        if failed:
            self.status.failed("Not worked out: look at the marked fields. What you typed is still there.")
            return
        visible = {n: b.text for n, b in self.boxes.items() if b.text.strip() and b.widget.layout.display != "none"}
        answer = self.sum.run(read_options(self.sum.fields, visible))
        table = table_html("How it was worked out", answer.table[0], answer.table[1:]) if answer.table else ""
        self.result.value = sentence_html(answer.sentence) + findings_html(answer.findings) + table
        self.drawings.value = "".join(drawing.svg for drawing in figures_for(self.sum.key, answer))
        self.status.quiet()


class SumSheet:
    """The calculator's sheet: its style, and a panel for each sum."""

    def __init__(self) -> None:
        self.widget = widgets.VBox([widgets.HTML(f"{STYLE}<h2>Quick sums</h2><p>Nothing typed here is kept.</p>")])
        self.widget.add_class("pentools")

    def _ipython_display_(self) -> None:
        from IPython.display import display

        display(self.widget)

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
        panels = [_panel(name) for name in (key, *more)]
        return panels[0] if len(panels) == 1 else PanelGroup(panels)


def _panel(key: str) -> SumPanel | MessagePanel:
    try:
        return SumPanel(find(key))
    except PentoolsError as error:
        return MessagePanel(str(error))


def open_sums() -> SumSheet:
    """A calculator's sheet for a notebook."""
    return SumSheet()
