"""What a panel asks of the sheet it lies on."""

from __future__ import annotations

from typing import Protocol

from pentools.panels.showing import ShowsItself

__all__ = ["Sheet", "form_of"]


def form_of(stage: str) -> str:
    """The selector of the form that a stage shows while it is open."""
    return f".pt-slot-{stage.replace(' ', '-')} .pt-form"


class Sheet(Protocol):
    """The sheet around a panel."""

    def changed(self, source: ShowsItself) -> None:
        """The record has changed: let everything else follow."""

    def look_at(self, selector: str) -> None:
        """Put the cursor into the first box under a selector."""

    def forget(self, stage: str, kind: str) -> None:
        """What was typed into a form is saved: no draft of it is kept any longer."""

    def onward_now(self) -> None:
        """Go to what comes next."""
