"""The cautions that apply, in one line where the act is: opened to be read, acknowledged once in a job, never repeated."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

import ipywidgets as widgets

from pentools.calc.treatment.cautions import Caution
from pentools.panels.guard import Status, guarded
from pentools.tables.source_words import source_words

__all__ = ["CautionBox", "caution_line"]


def caution_line(title: str, texts: Sequence[str]) -> str:
    """Cautions as one line of HTML that opens.

    Parameters
    ----------
    title : str
        What stands on the line.
    texts : sequence of str
        The cautions, as HTML.

    Returns
    -------
    str
        The line; empty where there are none.
    """
    items = "".join(f"<li>{text}</li>" for text in texts)
    return f'<details class="pt-caution"><summary>{escape(title)}</summary><ul>{items}</ul></details>' if texts else ""


class CautionBox:
    """Cautions on a panel.

    Parameters
    ----------
    acknowledge : callable
        Called with the keys of the cautions that were read.
    """

    def __init__(self, acknowledge: Callable[[Sequence[str]], None]) -> None:
        self._acknowledge = acknowledge
        self._fresh: tuple[str, ...] = ()
        self.status = Status()
        self.line = widgets.HTML()
        self.button = widgets.Button(description="I have read them")
        self.button.on_click(guarded(self.status, self._read))
        self.widget = widgets.HBox([self.line, self.button, self.status.widget])
        self.widget.add_class("pt-cautions")
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
        self._shown, self._fresh = state, state[0]
        names = ", ".join(caution.key.replace("-", " ") for caution in fresh)
        title = f"Caution: {names}" if fresh else f"Cautions, read in this job ({len(old)})"
        self.line.value = caution_line(title, [_words(caution) for caution in (*fresh, *old)])
        self.button.layout.display = "" if fresh else "none"

    def _read(self) -> None:
        self._acknowledge(self._fresh)


def _words(caution: Caution) -> str:
    source = "; ".join(source_words(caution.source, "cautions"))
    name = escape(caution.key.replace("-", " "))
    return (
        f"<b>{name}.</b> {escape(caution.text)} "
        f'<span class="pt-hint">{escape(source)} ({escape(caution.certainty)}).</span>'
    )
