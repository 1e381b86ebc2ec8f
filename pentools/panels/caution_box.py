"""The cautions that apply, those not yet acknowledged first, each acknowledged once in a job."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from html import escape

import ipywidgets as widgets

from pentools.calc.treatment.cautions import Caution
from pentools.panels.guard import Status, guarded
from pentools.tables.source_words import source_words

__all__ = ["CautionBox"]


class CautionBox:
    """Cautions on a panel.

    Parameters
    ----------
    status : Status
        Where it is said what became of an acknowledgement.
    acknowledge : callable
        Called with the key of a caution that was read.
    """

    def __init__(self, status: Status, acknowledge: Callable[[str], None]) -> None:
        self.status, self._acknowledge = status, acknowledge
        self.buttons: dict[str, widgets.Button] = {}
        self.read = widgets.HTML()
        self.widget = widgets.VBox()
        self._shown: tuple[tuple[str, ...], tuple[str, ...]] | None = None

    def show(self, cautions: Sequence[Caution], read: frozenset[str]) -> None:
        """Show the cautions that apply.

        Parameters
        ----------
        cautions : sequence of Caution
            All that apply.
        read : frozenset of str
            Keys of those that were acknowledged.
        """
        fresh = [caution for caution in cautions if caution.key not in read]
        old = [caution for caution in cautions if caution.key in read]
        state = (tuple(c.key for c in fresh), tuple(c.key for c in old))
        if state == self._shown:
            return
        self._shown, self.buttons = state, {}
        boxes = [self._box(caution) for caution in fresh]
        items = "".join(f"<li>{_words(caution)}</li>" for caution in old)
        self.read.value = (
            f"<details><summary>Cautions read in this job ({len(old)})</summary><ul>{items}</ul></details>"
            if old
            else ""
        )
        side_by_side = widgets.HBox(boxes)
        side_by_side.add_class("pt-row")
        self.widget.children = (side_by_side, self.read)

    def _box(self, caution: Caution) -> widgets.VBox:
        name = caution.key.replace("-", " ")
        button = widgets.Button(description=f"I have read this: {name}", layout={"align_self": "flex-start"})
        button.on_click(guarded(self.status, partial(self._acknowledge, caution.key)))
        self.buttons[caution.key] = button
        box = widgets.VBox([widgets.HTML(f"<b>Caution, {escape(name)}.</b> {_words(caution)}"), button])
        box.layout.flex = "1 1 24em"
        box.add_class("pt-caution")
        return box


def _words(caution: Caution) -> str:
    source = "; ".join(source_words(caution.source, "cautions"))
    return f'{escape(caution.text)} <span class="pt-hint">{escape(source)} ({escape(caution.certainty)}).</span>'
