"""The tests a pen owes: what is done, a clock where it takes hours, and a button for each answer."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from html import escape

import ipywidgets as widgets

from pentools.calc.closing.proofs import Proof
from pentools.panels.guard import Status, guarded

__all__ = ["ProofList"]

_WORDS = {"owed": "○ owed", "running": "◷ rests until", "due": "○ look now; it has rested since", "passed": "✓ passed", "failed": "✗ did not pass"}  # fmt: skip


class ProofList:
    """One row a test.

    Parameters
    ----------
    status : Status
        Where it is said what was saved, or why not.
    begin : callable
        Called with the test's key when its rest begins.
    answer : callable
        Called with the proof, the answer's key and the hours typed.
    """

    def __init__(self, status: Status, begin: Callable[[str], None], answer: Callable[[Proof, str, str], None]) -> None:
        self._status, self._begin, self._answer = status, begin, answer
        self.buttons: dict[tuple[str, str], widgets.Button] = {}
        self.hours: dict[str, widgets.Text] = {}
        self.body = widgets.VBox()
        self.widget = widgets.VBox([self.body])

    def show(self, proofs: Sequence[tuple[Proof, Sequence[tuple[str, str]]]], rested: Callable[[Proof], str]) -> None:
        """Show the tests.

        Parameters
        ----------
        proofs : sequence of (Proof, answers)
            Each with the answers that may be given: key and words.
        rested : callable
            From a proof to the hours that stand in its box.
        """
        self.buttons, self.hours = {}, {}
        titles = {"closing": "Before the last joint is closed", "posting": "Before it goes"}
        rows: list[widgets.Widget] = []
        last = ""
        for proof, answers in proofs:
            if proof.row.moment != last:
                last = proof.row.moment
                rows.append(widgets.HTML(f"<h3>{titles.get(last, last)}</h3>"))
            rows.append(self._row(proof, answers, rested(proof)))
        self.body.children = tuple(rows)

    def _row(self, proof: Proof, answers: Sequence[tuple[str, str]], hours: str) -> widgets.Widget:
        row = proof.row
        until = f" {proof.until:%d %B %H:%M}" if proof.until is not None else ""
        state = f"{_WORDS[proof.state]}{until}"
        text = widgets.HTML(f"<b>{escape(row.label)}</b>: {state}<div class='pt-hint'>{escape(row.what)}</div>")
        parts: list[widgets.Widget] = []
        if row.hours and proof.state in ("owed", "passed", "failed"):
            start = widgets.Button(description="begin", tooltip=f"{row.label}: its rest begins now")
            start.on_click(guarded(self._status, partial(self._begin, row.key)))
            self.buttons[row.key, "begin"] = start
            parts.append(start)
        if row.records in ("leak check", "writing"):
            box = widgets.Text(value=hours, description="rested", continuous_update=True, layout={"width": "9em"})
            self.hours[row.key] = box
            parts.append(box)
        for key, words in answers:
            button = widgets.Button(description=words, tooltip=f"{row.label}: {words}")
            button.on_click(guarded(self._status, partial(self._press, proof, key)))
            self.buttons[row.key, key] = button
            parts.append(button)
        acts = widgets.HBox(parts)
        acts.add_class("pt-act")
        return widgets.VBox([text, acts])

    def _press(self, proof: Proof, key: str) -> None:
        box = self.hours.get(proof.row.key)
        self._answer(proof, key, box.value if box is not None else "")
