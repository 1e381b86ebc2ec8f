"""A figure that was learnt from some jobs: what it is of, its n, its interval, or that they are too few to say."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from pentools.books.learning.held import median_json, share_json, share_words
from pentools.calc.books.few import TOO_FEW
from pentools.calc.books.median import Median
from pentools.calc.books.share import Share
from pentools.numbers import fixed, percent

__all__ = ["Chapter", "Learnt"]

_SHOWN = 15


@dataclass(frozen=True, slots=True)
class Learnt:
    """One figure.

    Parameters
    ----------
    about : mapping of str to str
        What it is of: name to key, such as ``work`` to ``re-sac``.
    label : str
        The same in words.
    n : int
        From how many jobs.
    told : Median, Share or None
        The figure with its interval; None where they are too few to say.
    more : mapping of str to object
        What stands beside it: plain values.
    note : str
        The same in words.
    """

    about: Mapping[str, str]
    label: str
    n: int
    told: Median | Share | None
    more: Mapping[str, Any] = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True, slots=True)
class Chapter:
    """Figures of one kind.

    Parameters
    ----------
    key, title : str
        Its name, and what it tells, with its unit.
    unit : str
        Of its medians; ``share`` for shares [1].
    decimals : int
        Of its medians in words.
    figures : tuple of Learnt
        Those with most jobs first.
    """

    key: str
    title: str
    unit: str
    decimals: int
    figures: tuple[Learnt, ...]

    def words(self, figure: Learnt) -> str:
        """A figure in words, with its interval and how often that holds."""
        told = figure.told
        if told is None:
            return TOO_FEW
        if isinstance(told, Share):
            return share_words(told)
        if self.unit == "share":
            middle, low, high = (percent(value) for value in (told.median, told.low, told.high))
        else:
            low, high = (fixed(value, self.decimals) for value in (told.low, told.high))
            middle = f"{fixed(told.median, self.decimals)} {self.unit}"
        holds = "" if told.reached else f", which holds the true middle in {percent(told.coverage)} of cases only"
        return f"{middle} ({low} to {high}{holds})"

    @property
    def rows(self) -> tuple[tuple[str, str, str, str], ...]:
        """What it is of, n, the figure, what stands beside it."""
        return tuple((one.label, str(one.n), self.words(one), one.note) for one in self.figures)

    @property
    def lines(self) -> tuple[str, ...]:
        """The first rows in words, and how many more there are."""
        shown = [
            f"  {label}: {words}; n = {n}{f'; {note}' if note else ''}" for label, n, words, note in self.rows[:_SHOWN]
        ]
        more = len(self.figures) - _SHOWN
        shown += [f"  and {more} more, which --json has"] if more > 0 else []
        return tuple(shown) or (f"  {TOO_FEW}",)

    def as_json(self) -> list[dict[str, Any]]:
        """Plain values, a row a figure."""
        return [{**one.about, "n": one.n, **self._told(one), **one.more} for one in self.figures]

    def _told(self, one: Learnt) -> dict[str, Any]:
        told = share_json(one.told) if isinstance(one.told, Share) else median_json(one.told, 4)
        return {"said": told} if isinstance(told, str) else {**told, "unit": "1" if self.unit == "share" else self.unit}
