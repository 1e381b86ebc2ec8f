"""A box for several choices: one tick each, as large as a thumb, and a way to tick all that are offered."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from typing import Any

import ipywidgets as widgets
import traitlets

__all__ = ["TicksBox"]


class TicksBox(widgets.VBox):  # type: ignore[misc]
    """Ticks whose value is what a text box would hold: the keys of what is ticked, separated by ``;``.

    Parameters
    ----------
    choices : sequence of (key, label)
        What may be ticked.
    description : str
        What stands above the ticks.
    """

    value = traitlets.Unicode()

    def __init__(self, choices: Sequence[tuple[str, str]], *, description: str, **more: Any) -> None:
        self._quiet, self.description = False, description
        self._ticks = {
            key: widgets.Checkbox(description=label, tooltip=f"{description}: {label}", indent=False)
            for key, label in choices
        }
        for tick in self._ticks.values():
            tick.observe(self._gather, "value")
        self._every = widgets.Button(description="all of these")
        self._every.add_class("pt-more")
        self._every.on_click(lambda _: self._tick_all())
        self._offered = tuple(self._ticks)
        self._row = widgets.HBox()
        self._row.add_class("pt-ticks")
        label = widgets.HTML(f'<span class="widget-label">{escape(description)}</span>')
        super().__init__([label, self._row], **more)
        self.observe(self._follow, "value")
        self.offer(self._offered)

    def offer(self, keys: Sequence[str]) -> None:
        """Show these ticks, and any other that is set; the rest stay away.

        Parameters
        ----------
        keys : sequence of str
            In the order of the choices, whatever their order here.
        """
        self._offered = tuple(keys)
        shown = [tick for key, tick in self._ticks.items() if key in self._offered or tick.value]
        self._row.children = (*shown, *([self._every] if len(shown) > 1 else []))

    @property
    def ticks(self) -> dict[str, widgets.Checkbox]:
        """The tick of each choice, shown or not."""
        return dict(self._ticks)

    def _tick_all(self) -> None:
        self.value = "; ".join(key for key in self._ticks if key in self._offered or self._ticks[key].value)

    def _gather(self, _: Any) -> None:
        if not self._quiet:
            self.value = "; ".join(key for key, tick in self._ticks.items() if tick.value)

    def _follow(self, _: Any) -> None:
        wanted = {part.strip() for part in self.value.split(";")}
        self._quiet = True
        for key, tick in self._ticks.items():
            tick.value = key in wanted
        self._quiet = False
        self.offer(self._offered)
