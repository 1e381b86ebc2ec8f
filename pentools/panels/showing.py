"""What has a widget is shown by it where a notebook's cell ends with it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import ipywidgets as widgets

__all__ = ["ShowsItself"]


class ShowsItself:
    """Anything with a ``widget``."""

    widget: widgets.Widget

    def _ipython_display_(self) -> None:
        from IPython.display import display

        display(self.widget)
