"""A balance: what its sheet says, what is usual where it says nothing, and what the digits that were typed allow.

The figures of a balance are listed here and nowhere else: the sum's boxes, the record, ``bench.toml`` and the foot of a
page are made from `FIGURES`.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["BALANCES", "FIGURES", "Balance", "BalanceFigure", "as_read", "usual_balance"]

COARSE_FROM_G = 0.005  # between a balance of 0.001 g and one of 0.01 g


def _figure(label: str, hint: str, *, low: float = 0.0, high: float = 5.0) -> Any:
    return field(metadata={"label": label, "hint": hint, "low": low, "high": high})


@dataclass(frozen=True, slots=True)
class Balance:
    """What is known of a balance; all masses in gram.

    Parameters
    ----------
    readability_g : float
        Last digit [g], above 0.
    repeatability_g : float
        Standard deviation of repeated weighings [g].
    linearity_g : float
        Largest error of the scale, half-width [g].
    eccentricity_g : float
        Largest change off the pan's middle, half-width [g].
    """

    readability_g: float = _figure("Readability", "the balance's last digit, such as 0.01 g", low=0.00001, high=1.0)
    repeatability_g: float = _figure("Repeatability", "from its sheet; taken from readability if left empty")
    linearity_g: float = _figure("Linearity", "from its sheet, half-width, such as 0.02 g")
    eccentricity_g: float = _figure("Eccentric loading", "from its sheet, half-width, such as 0.01 g")

    @property
    def rounding_g(self) -> float:
        """Standard uncertainty of one rounding [g]: the last digit over √12."""
        return self.readability_g / math.sqrt(12)

    @property
    def spread_g(self) -> float:
        """Standard deviation of one weighing [g]: the repeatability, but never below one rounding."""
        return max(self.repeatability_g, self.rounding_g)


@dataclass(frozen=True, slots=True)
class BalanceFigure:
    """One figure of a balance's sheet.

    Parameters
    ----------
    name : str
        Its name in the record, in ``bench.toml`` and on the command line.
    label, hint : str
        What stands above and below its box.
    low, high : float
        Plausible range [g].
    """

    name: str
    label: str
    hint: str
    low: float
    high: float


FIGURES: tuple[BalanceFigure, ...] = tuple(
    BalanceFigure(f.name.removesuffix("_g"), **f.metadata) for f in fields(Balance)
)
"""The figures of a balance in the order in which they are asked for."""


def usual_balance(readability_g: float, known: Mapping[str, float | None] | None = None) -> Balance:
    """A balance of some readability, with what such balances commonly state where its own sheet is silent.

    Parameters
    ----------
    readability_g : float
        Its last digit [g], above 0.
    known : mapping of str to float or None
        Further figures from its own sheet, by the names of `FIGURES` [g]; None where it says nothing.

    Returns
    -------
    Balance
        Its figures.

    Raises
    ------
    InputError
        If the readability is not above 0.

    Notes
    -----
    Repeatability, linearity and eccentric loading of 1, 2 and 1 last digits from 0.005 g up, of 2, 3 and 2 below:
    common practice, no source.

    Examples
    --------
    >>> usual_balance(0.001)
    Balance(readability_g=0.001, repeatability_g=0.002, linearity_g=0.003, eccentricity_g=0.002)
    """
    if not readability_g > 0:
        raise InputError("readability", "above 0 g", f"{readability_g:g} g")
    steps = (1, 2, 1) if readability_g >= COARSE_FROM_G else (2, 3, 2)
    usual = Balance(readability_g, *(step * readability_g for step in steps))
    own = {f"{name}_g": value for name, value in (known or {}).items() if value is not None}
    return replace(usual, **{**own, "readability_g": readability_g})


BALANCES: dict[str, Balance] = {f"{d:g} g": usual_balance(d) for d in (1.0, 0.1, 0.01, 0.001)}
"""Balances by their readability, with what such balances commonly state."""


def as_read(balance: Balance, steps_g: Iterable[float | None]) -> tuple[Balance, tuple[Finding, ...]]:
    """The balance as the typed digits allow it to be taken.

    Parameters
    ----------
    balance : Balance
        The balance as it was said to be.
    steps_g : iterable of float or None
        The last digit typed of each reading [g]; None for one that came as a number.

    Returns
    -------
    balance : Balance
        The same, or one no finer than the coarsest digit typed, with what is usual for such a one where that is worse.
    findings : tuple of Finding
        What was taken, where it is not what was said.

    Notes
    -----
    A mass typed as 23.2 g was not read to 0.01 g. One coarse reading in a series makes the series coarse: whether a
    nought was left away at its end cannot be known afterwards, and the coarser is the stricter.
    """
    steps = [step for step in steps_g if step is not None]
    coarsest = max(steps, default=0.0)
    if coarsest <= balance.readability_g * (1 + 1e-9):
        return balance, ()
    usual = usual_balance(coarsest)
    taken = Balance(*(max(getattr(balance, f.name), getattr(usual, f.name)) for f in fields(Balance)))
    mixed = min(steps) < coarsest * (1 - 1e-9)
    told = {"typed_g": coarsest, "finest_g": min(steps), "said_g": balance.readability_g}
    return taken, (Finding("warning", "weighing.digits-typed:mixed" if mixed else "weighing.digits-typed", **told),)
