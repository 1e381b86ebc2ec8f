"""Pictures to choose from as thumbnails, and a picture in which the two ends of a known length are set."""

from __future__ import annotations

import math
from pathlib import Path

import anywidget
import traitlets

__all__ = ["EndsPicker", "ThumbnailPicker"]

_HERE = Path(__file__)


class ThumbnailPicker(anywidget.AnyWidget):
    """A button a picture; the one pressed is `chosen`.

    Each of `pictures` has ``file``, ``uri`` (a small view), ``alt``, ``state`` in words, and ``problem``: why it cannot
    be chosen, empty where it can.
    """

    _esm = _HERE.with_name("picture_picker.js")
    _css = _HERE.with_name("picture_picker.css")
    sort = traitlets.Unicode("thumbnails").tag(sync=True)
    pictures = traitlets.List().tag(sync=True)
    chosen = traitlets.Dict().tag(sync=True)

    @property
    def file(self) -> str:
        """The file that was chosen; empty where none was, or it is gone."""
        file = str(self.chosen.get("file", ""))
        return file if any(p["file"] == file and not p["problem"] for p in self.pictures) else ""

    def choose(self, file: str) -> None:
        """Choose a file as if it were pressed; an empty one lets go of it."""
        self.chosen = {"file": file, "count": int(self.chosen.get("count", 0)) + 1}


class EndsPicker(anywidget.AnyWidget):
    """A picture of `size` [px] shown smaller, and up to two `ends` set in it, in pixels of the file."""

    _esm = _HERE.with_name("picture_picker.js")
    _css = _HERE.with_name("picture_picker.css")
    sort = traitlets.Unicode("ends").tag(sync=True)
    uri = traitlets.Unicode().tag(sync=True)
    size = traitlets.List([1, 1]).tag(sync=True)
    ends = traitlets.List().tag(sync=True)

    @property
    def apart_px(self) -> float | None:
        """How far the two ends lie apart [px]; None until both are set."""
        return math.dist(*self.ends) if len(self.ends) == 2 else None
