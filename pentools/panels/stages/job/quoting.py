"""One press that fills an estimate from the bench's own like jobs, and on which jobs it rests, folded."""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets

from pentools.books.learning.quote import Quote, quote_of
from pentools.numbers import plain
from pentools.panels.guard import guarded

if TYPE_CHECKING:
    from pentools.panels.kind_form import KindForm
    from pentools.record.job import Job

__all__ = ["QuoteRow", "offered"]

_STEP_MIN, _LONG_MIN, _LONG_STEP_MIN = 5, 120, 15


class QuoteRow:
    """Under the form of the estimate: a button, and what it found.

    Parameters
    ----------
    job : Job
        The job in hand: its own minutes are never built on.
    form : KindForm
        The form of the estimate; only boxes that hold nothing of the person's own are filled.
    """

    def __init__(self, job: Job, form: KindForm) -> None:
        self.job, self.form = job, form
        self._filled: dict[str, str] = {}
        self.button = widgets.Button(
            description="Fill in from like jobs", tooltip="hours and price, from this bench's own jobs"
        )
        self.button.on_click(guarded(form.status, self._fill, "NOT FILLED IN"))
        self.button.add_class("pt-more")
        self.told = widgets.HTML()
        self.widget = widgets.VBox([self.button, self.told], layout={"align_items": "flex-start"})

    def _fill(self) -> None:
        quote = quote_of(self.job)
        for name, text in offered(quote).items():
            box = self.form.boxes[name]
            if box.text in ("", self._filled.get(name, "")):
                box.text = self._filled[name] = text
        self.form.more.value = self.form.more.value or bool(
            self._filled
        )  # what was filled in is seen before it is saved
        first, why_wider = quote.sentence, quote.circle.why
        rest = [line for line in quote.lines if line not in (first, why_wider)]
        folded = "".join(f"<p>{escape(line)}</p>" for line in rest)
        why = f"<details><summary>From which jobs, and what is not in it</summary>{folded}</details>" if rest else ""
        shown = "".join(f"<p>{escape(line)}</p>" for line in (first, why_wider) if line)
        self.told.value = f"{shown}{why}"


def offered(quote: Quote) -> dict[str, str]:
    """What a quote puts into the boxes of an estimate: ends rounded outwards, as a person would write them.

    Returns
    -------
    dict of str to str
        Field to text; nothing where the like jobs are too few to say.
    """
    if quote.minutes is None:
        return {}
    ahead = quote.minutes
    long = ahead.high > _LONG_MIN
    found = {
        "hours_low": _time(ahead.low, math.floor, long=long),
        "hours_likely": _time(ahead.likely, round, long=long),
        "hours_high": _time(ahead.high, math.ceil, long=long),
    }
    if quote.parts is not None:
        found["parts_cost"] = f"{quote.parts.high:f} {quote.currency}"
    if quote.price is not None and quote.ceiling is not None:
        found["price_low"] = _whole(quote.price.low, ROUND_FLOOR, quote.currency)
        found["price_high"] = _whole(quote.price.high, ROUND_CEILING, quote.currency)
        most = quote.ceiling if quote.limit is None else min(quote.ceiling, quote.limit)
        found |= {"ceiling": f"{most:f} {quote.currency}"} if most >= Decimal(found["price_high"].split()[0]) else {}
    return found


def _time(minutes: float, rounded: Callable[[float], int], *, long: bool) -> str:
    """To five minutes, or to a quarter of an hour where the range goes beyond two hours; never nothing."""
    step = _LONG_STEP_MIN if long else _STEP_MIN
    whole = max(rounded(minutes / step), 1) * step
    return f"{plain(whole / 60, 4)} h" if long else f"{whole} min"


def _whole(amount: Decimal, way: str, currency: str) -> str:
    return f"{amount.to_integral_value(way):f} {currency}"
