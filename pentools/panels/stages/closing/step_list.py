"""The order as a list of ticks: done, tested, not out; one row a step, one click an answer."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from html import escape

import ipywidgets as widgets

from pentools.calc.closing.order import ClosingOrder, ClosingStep

__all__ = ["StepList", "StepRow"]

ANSWERED_BELOW = "rested"
"""The step that a leak check answers: it is entered once, there."""
_MARKS = {"done": "✓", "untested": "○", "failed": "✗", "not needed": "–"}
_SAID = {"done": "done and tested", "untested": "done, not tested", "failed": "its test failed", "not needed": "was not out"}  # fmt: skip


def _not_needed(only_with: str) -> str:
    """What is said of a step that this pen does not need."""
    if only_with.endswith((" was out", " was off")):
        return "was not out"
    return "has none" if " " not in only_with else "not wanted"


class StepRow:
    """One step: what to do with its tick, what a sound one shows with its tick, and whether it was out at all.

    Parameters
    ----------
    step : ClosingStep
        The step and how it stands.
    action : str
        What is done, as the materials leave it.
    words : sequence of str
        What materials change, clocks and what is known from elsewhere, each a line under the step.
    changed : callable
        Called when a tick changes.
    """

    def __init__(self, step: ClosingStep, action: str, words: Sequence[str], changed: Callable[[], None]) -> None:
        self.key = step.row.key
        row = step.row
        self.done = self._tick(f"{row.step}. {action}", f"step {row.step} done")
        self.tested = self._tick(f"tested: {row.passes}", row.test)
        self.left_out = self._tick(
            _not_needed(row.only_with), f"step {row.step} is not needed: not so that {row.only_with}"
        )
        self._changed, self._quiet = changed, False
        self.done.observe(lambda _: self._follow(self.done), "value")
        self.tested.observe(lambda _: self._follow(self.tested), "value")
        self.left_out.observe(lambda _: self._follow(self.left_out), "value")
        under = f'<span class="pt-hint">{escape(" ".join(words))}</span>' if words else ""
        said = f'<b class="pt-step-said">{_MARKS[step.state]} {row.step}. {escape(row.part)}: {_SAID[step.state]}.</b> ' if step.state in _SAID else ""  # fmt: skip
        closes = '<b class="pt-closes" title="closes something in">▐ closes</b> ' if row.closes else ""
        undone = {"no": "Cannot be taken back", "partly": "Taken back in part only"}.get(row.undone, "")
        if self.key == ANSWERED_BELOW and not said:
            said = f"<b>{row.step}. {escape(action)}</b> It is answered below, with the tests that are owed. "
        mind = f'<span class="pt-hint">{escape(undone)}. </span>' if undone and not said else ""
        self.note = widgets.HTML(f"{said}{closes}{mind}{under}")
        self._offer(step.state, bool(row.only_with))
        self.widget = widgets.HBox([widgets.VBox([self.done, self.note]), self.tested, self.left_out])
        self.widget.add_class("pt-step")
        if self.tested.layout.display == "none":
            self.widget.add_class("pt-step-told")

    @staticmethod
    def _tick(words: str, tooltip: str) -> widgets.Checkbox:
        return widgets.Checkbox(description=words, tooltip=tooltip, indent=False)

    def _offer(self, state: str, optional: bool) -> None:
        """What is on record is told, not asked again; what is owed is asked."""
        over = state in ("done", "not needed") or self.key == ANSWERED_BELOW
        self.done.layout.display = "none" if over or state == "untested" else ""
        self.tested.layout.display = "none" if over else ""
        self.left_out.layout.display = "" if optional and state in ("open", "early", "held") else "none"

    def _follow(self, tick: widgets.Checkbox) -> None:
        """What was tested was done; what was not out was neither."""
        if self._quiet:
            return
        self._quiet = True
        if tick is self.tested and tick.value:
            self.done.value, self.left_out.value = True, False
        elif tick is self.done:
            self.tested.value = self.tested.value and tick.value
            self.left_out.value = self.left_out.value and not tick.value
        elif tick is self.left_out and tick.value:
            self.done.value = self.tested.value = False
        self._quiet = False
        self._changed()

    def set(self, done: bool, tested: bool, left_out: bool) -> None:
        """Put the ticks as an entry has them, with every box of it in view."""
        self._quiet = True
        self.done.value, self.tested.value, self.left_out.value = done, tested, left_out
        for tick in (self.done, self.tested, self.left_out):
            if tick.value:
                tick.layout.display = ""
        self._quiet = False


class StepList:
    """All steps of an order.

    Parameters
    ----------
    changed : callable
        Called when a tick changes.
    """

    def __init__(self, changed: Callable[[], None]) -> None:
        self._changed = changed
        self.rows: dict[str, StepRow] = {}
        self.head = widgets.HTML()
        self.body = widgets.VBox()
        self.before = widgets.Checkbox(indent=False)
        self.before.observe(lambda _: changed(), "value")
        self.widget = widgets.VBox([self.head, self.before, self.body])
        self.widget.add_class("pt-steps")

    def show(
        self,
        order: ClosingOrder | None,
        words: Mapping[str, Sequence[str]],
        wanted: Mapping[str, str],
        actions: Mapping[str, str] | None = None,
    ) -> None:
        """Show an order.

        Parameters
        ----------
        order : ClosingOrder or None
            How far it has come; None where the filling system is not named.
        words : mapping of str to sequence of str
            Lines under each step, by its key.
        wanted : mapping of str to str
            The conditions from outside that nobody has said yet: key to sentence.
        actions : mapping of str to str or None
            What is done at a step where the materials change it, by its key.
        """
        said_so = actions or {}
        self.wanted = tuple(wanted)
        said = " ".join(wanted.values())
        self.before.description = f"It was so before: {said}"
        self.before.layout.display = "" if wanted else "none"
        steps = order.steps if order is not None else ()
        self.rows = {
            step.row.key: StepRow(
                step, said_so.get(step.row.key, step.row.action), words.get(step.row.key, ()), self._changed
            )
            for step in steps
        }
        self.body.children = tuple(row.widget for row in self.rows.values())
        self.head.value = "" if steps else '<p class="pt-hint">Name the filling system at intake, and the order stands here.</p>'  # fmt: skip

    def set(self, done: Collection[str], tested: Collection[str], left_out: Collection[str], before: bool) -> None:
        """Put the ticks as an entry has them."""
        for key, row in self.rows.items():
            row.set(key in done, key in tested, key in left_out)
        self.before.value = before

    def ticked(self) -> tuple[list[str], list[str], list[str], list[str]]:
        """What is ticked: done, tested, not out, and so before; keys in the order of the list."""
        done = [key for key, row in self.rows.items() if row.done.value or row.tested.value]
        tested = [key for key, row in self.rows.items() if row.tested.value]
        left_out = [key for key, row in self.rows.items() if row.left_out.value]
        return done, tested, left_out, list(self.wanted) if self.before.value else []
