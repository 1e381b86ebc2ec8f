"""Pens like this one, folded: looked for only when asked, with what was fitted in them and what failed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.panels.guard import Status, guarded
from pentools.panels.style import table_html

if TYPE_CHECKING:
    from pentools.books.search.search import Match
    from pentools.record.job import Job

__all__ = ["LikeThis"]

_SHOWN = 3


class LikeThis:
    """A press shows other pens on the bench by this one's system, material and sizes; another folds them away.

    Parameters
    ----------
    job : Job
        The job in hand.
    """

    def __init__(self, job: Job) -> None:
        self.job = job
        self.status = Status()
        self.button = widgets.ToggleButton(description="pens like this …", value=False)
        self.button.add_class("pt-more")
        self.button.observe(guarded(self.status, self._turn), "value")
        self.table = widgets.HTML()
        self.table.add_class("pt-scroll")
        self.widget = widgets.VBox([self.button, self.table, self.status.widget])

    def _turn(self) -> None:
        self.button.description = "hide pens like this" if self.button.value else "pens like this …"
        self.table.value = self._shown() if self.button.value else ""

    def _shown(self) -> str:
        from pentools.books.search.search import pens_like

        found = pens_like(self.job)
        if not found:
            return "<p>No other pen on this bench is known to fill in the same way.</p>"
        head = (
            "Job",
            "Pen",
            "Sizes, and the difference",
            "What was fitted",
            "What failed",
            "How it ended",
        )
        title = "Pens that fill in the same way, the most like first: by their sizes, then material, then the newest"
        return table_html(title, head, [_row(match) for match in found])


def _row(match: Match) -> tuple[str, ...]:
    from pentools.books.search.search import size_said
    from pentools.books.search.words import ended_words, fitted_words

    known, came = match.known, match.known.came_of_it
    failed = [*came.failed, *([match.came_back] if match.came_back else [])]
    same = "the same material" if "the same material" in match.why else known.material or ""
    sizes = [size_said(size) for size in match.sizes]
    cells = (
        "; ".join(texts[:_SHOWN]) for texts in ([*sizes, *([same] if same else [])], fitted_words(came.fitted), failed)
    )
    sized, fitted, wrong = (cell or "–" for cell in cells)
    return match.job, known.pen or "–", sized, fitted, wrong, ended_words(match)
