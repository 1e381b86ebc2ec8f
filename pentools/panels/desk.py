"""The part of the sheet that only the browser can know: the cursor's place, and drafts that outlive a dead kernel."""

from __future__ import annotations

from pathlib import Path

import anywidget
import traitlets

__all__ = ["Desk", "draft_class"]


def draft_class(stage: str, kind: str, field: str = "") -> str:
    """The class that marks a box whose text is kept in the browser until it is saved; without a field, its form's."""
    return "pt-draft--" + "--".join(part.replace(" ", "-") for part in (stage, kind, field) if part)


class Desk(anywidget.AnyWidget):
    """An invisible widget that moves the cursor and keeps what was typed and not yet saved.

    Drafts lie in the browser's own storage, by job and box; they never reach the record, and go when the form is saved.
    """

    _esm = Path(__file__).with_name("desk.js")
    job = traitlets.Unicode().tag(sync=True)
    look_at = traitlets.Dict().tag(sync=True)
    saved = traitlets.Dict().tag(sync=True)
    go_to = traitlets.Unicode().tag(sync=True)
    woken = traitlets.Float().tag(sync=True)
    """When a page last showed it, by the browser's clock."""

    def __init__(self, job: str) -> None:
        super().__init__(job=job)
        self._count = 0
        self.on_msg(self._settle)

    def _settle(self, _: object, content: object, __: object) -> None:
        """Answer the browser, which holds an Enter until what was typed before it has arrived."""
        if isinstance(content, dict) and "settle" in content:
            self.send({"settled": content["settle"]})

    def focus(self, selector: str) -> None:
        """Put the cursor into the first box under a selector, as soon as it is there."""
        self._count += 1
        self.look_at = {"selector": selector, "count": self._count}

    def forget(self, stage: str, kind: str) -> None:
        """Let go of the drafts of a form that was saved."""
        self._count += 1
        self.saved = {"forms": [draft_class(stage, kind).removeprefix("pt-draft--") + "--"], "count": self._count}

    def leave_for(self, address: str) -> None:
        """Show another page of the same server in this window."""
        self.go_to = ""  # the same page a second time is a change too
        self.go_to = address
