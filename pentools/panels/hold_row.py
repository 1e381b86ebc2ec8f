"""A hold point on a panel: why the step is held, and a line to release it with a reason."""

from __future__ import annotations

from collections.abc import Callable
from html import escape

import ipywidgets as widgets

from pentools.panels.guard import Status, guarded

__all__ = ["HoldRow"]


class HoldRow:
    """One hold point.

    Parameters
    ----------
    key : str
        The hold point's key.
    release : callable
        Called with the row when its button is pressed.
    what : str
        What is held, in words; empty where the whole panel is.
    """

    def __init__(self, key: str, release: Callable[[HoldRow], None], what: str = "") -> None:
        self.key, self.what = key, what
        self.pending = self.about = ""
        self.status = Status()
        self.text = widgets.HTML()
        self.reason = widgets.Text(description="Reason to go on all the same", continuous_update=True)
        self.button = widgets.Button(description="Release the hold with this reason")
        self.button.on_click(guarded(self.status, lambda: release(self)))
        row = widgets.HBox([self.reason, self.button])
        row.add_class("pt-row")
        self.widget = widgets.VBox([self.text, row, self.status.widget], layout={"display": "none"})
        self.widget.add_class("pt-hold")

    def show(self, reason: str) -> None:
        """Show why the step is held; hide the row where it is not."""
        said = reason or self.pending
        about = f" on {escape(self.what)}" if self.what else ""
        self.text.value = f"<b>■ Hold point{about}:</b> {escape(said)}." if said else ""
        self.widget.layout.display = "" if said else "none"
