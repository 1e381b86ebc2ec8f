"""What is true of an invented bench: the rates it was made with, so that what is learnt from its records can be held against them.

Every figure here is invented for trial and says nothing about real pens; the shares filled lie within what the table of
usual shares states.
"""

from __future__ import annotations

import msgspec

__all__ = [
    "MATERIALS",
    "MINUTES",
    "PACE",
    "POLISHED",
    "SEALS",
    "SYSTEMS_OFTEN",
    "WORKS",
    "Rates",
    "SealRow",
    "TrueLot",
    "TruePen",
    "Truth",
    "work_for_seal",
]

SYSTEMS_OFTEN: dict[str, float] = {
    "lever-sac": 26, "button-sac": 10, "crescent-sac": 4, "slot-sac": 2, "sleeve-squeeze": 5, "bulb": 3,
    "diaphragm-pump": 8, "plunger-vacuum": 7, "piston": 16, "syringe": 3, "eyedropper": 4,
    "pneumatic-down-stroke": 4, "pneumatic-extending-tube": 1, "bellows": 1, "safety": 3, "capillary": 1,
    "cartridge-converter": 2,
}  # fmt: skip
"""Filling system -> how many of a hundred pens have it."""

PACE: dict[str, float] = {
    "button-sac": 1.1, "crescent-sac": 0.95, "slot-sac": 0.9, "bulb": 1.15, "sleeve-squeeze": 1.2, "syringe": 1.1,
    "pneumatic-down-stroke": 1.7, "pneumatic-extending-tube": 2.0, "safety": 1.6, "bellows": 1.4, "eyedropper": 0.6,
    "capillary": 0.8, "cartridge-converter": 0.5,
}  # fmt: skip
"""Filling system -> how long the same work takes against a lever filler; 1 where it is not here."""

MINUTES: dict[str, dict[str, float]] = {
    "re-sac": {"look": 8, "open": 15, "clean": 12, "seal": 25, "test": 10, "write": 6},
    "cork or ring": {"look": 10, "open": 30, "clean": 15, "seal": 45, "test": 15, "write": 8},
    "diaphragm": {"look": 10, "open": 35, "clean": 20, "seal": 35, "test": 15, "write": 8},
    "plunger": {"look": 10, "open": 40, "clean": 15, "seal": 60, "test": 20, "write": 8},
    "nib only": {"look": 10, "nib": 40, "test": 10, "write": 6},
    "finish only": {"look": 8, "finish": 60, "write": 8},
    "whole": {"look": 20, "open": 35, "clean": 25, "seal": 45, "nib": 30, "finish": 60, "test": 20, "write": 20},
    "look": {"look": 20, "write": 10},
}
"""Kind of work -> activity -> median minutes of a pen of middling difficulty with a lever."""

WORKS: tuple[tuple[str, float], ...] = (("seal", 76), ("nib only", 9), ("finish only", 5), ("whole", 8), ("look", 2))
"""What is asked -> how many of a hundred ask it; "seal" is the work on the seal that the system has."""

MATERIALS: dict[str, tuple[str, ...]] = {
    "eyedropper": ("hard rubber",),
    "safety": ("hard rubber",),
    "crescent-sac": ("hard rubber",),
    "slot-sac": ("hard rubber",),
    "lever-sac": ("celluloid", "celluloid", "hard rubber", "casein"),
    "capillary": ("acrylic",),
    "cartridge-converter": ("acrylic",),
}
"""Filling system -> what its barrels are made of; celluloid and acrylic where it is not here."""


class SealRow(msgspec.Struct, frozen=True):
    """A kind of seal as it is bought.

    Parameters
    ----------
    what : str
        Its name in a material's line.
    place : str
        Where it sits (a place of the seal stage).
    at, by : str
        The field of the measurement that it is fitted to, and the field of a trial that says its size.
    cost : str
        A piece, in the bench's currency.
    over : float
        By how much its size is over the size it is fitted to, where it holds [mm]; below 0 for a sac in its barrel and
        for what is stretched over a nipple.
    scatter : float
        Standard deviation of that [mm].
    """

    what: str
    place: str
    at: str
    by: str
    cost: str
    over: float
    scatter: float


SEALS: dict[str, SealRow] = {
    "latex sac": SealRow("latex sac", "sac", "bore", "outside", "2.80", -1.60, 0.12),
    "silicone sac": SealRow("silicone sac", "sac", "bore", "outside", "4.50", -1.40, 0.12),
    "pleated sac": SealRow("pleated sac", "sac", "bore", "outside", "9.80", -1.20, 0.10),
    "O-ring": SealRow("nitrile O-ring", "head", "bore", "outside", "0.40", 0.24, 0.04),
    "cork": SealRow("cork ring, waxed", "cork", "bore", "outside", "1.20", 0.16, 0.05),
    "packing": SealRow("felt packing", "packing", "housing", "outside", "0.90", 0.30, 0.06),
    "washer": SealRow("nitrile washer", "washer", "bore", "outside", "1.10", 0.30, 0.03),
    "diaphragm": SealRow("latex diaphragm", "diaphragm", "groove", "outside", "3.60", 0.40, 0.06),
    "bulb": SealRow("latex bulb", "bulb", "nipple", "inside", "3.20", -0.70, 0.08),
}
"""Kind of seal -> what is true of it."""

POLISHED: dict[str, float] = {"P1500": 1.5, "P2500": 1.0, "P4000": 0.6}
"""Grade -> layer that goes in a minute of work on celluloid [µm/min]."""

_WORK_FOR = {"re-sac": ("latex sac", "silicone sac", "pleated sac", "bulb"), "diaphragm": ("diaphragm",)}


def work_for_seal(system: str, seal: str) -> str:
    """The kind of work that renewing a seal is."""
    if system == "plunger-vacuum":
        return "plunger"
    return next((work for work, seals in _WORK_FOR.items() if seal in seals), "cork or ring")


class Rates(msgspec.Struct, frozen=True):
    """The spreads and the rates that every pen of the bench is drawn with.

    Parameters
    ----------
    pen_spread, activity_spread : float
        Standard deviation of the logarithm of the minutes: of a pen as a whole, and of each activity besides.
    step : float
        Factor on the minutes for each step of difficulty above or below 2.
    share_spread : float
        Standard deviation of the share filled within a system and a seal [1].
    early : tuple of float
        Share of pens of difficulty 0 to 4 that are stopped or returned unrepaired [1].
    good_lot, bad_lot : float
        Share of pens that come back, with a seal from a good lot and from a bad one [1].
    balance_g, calliper_mm : float
        Standard deviation of a weighing [g] and of a calliper reading [mm].
    drop_g : float
        The largest drop that hangs at the nib of a filled pen [g]; any size up to it is as likely.
    unanswered, uncollected : float
        Share of owners who do not answer the estimate, and of mended pens that nobody fetches [1].
    promised, deposits, waits : float
        Share of pens with a promised day, with a deposit of 20.00 EUR, and with a seal that must be sent for [1].
    """

    pen_spread: float = 0.30
    activity_spread: float = 0.20
    step: float = 1.18
    share_spread: float = 0.03
    early: tuple[float, float, float, float, float] = (0.0, 0.01, 0.03, 0.08, 0.22)
    good_lot: float = 0.03
    bad_lot: float = 0.35
    balance_g: float = 0.006
    calliper_mm: float = 0.005
    drop_g: float = 0.027
    unanswered: float = 0.03
    uncollected: float = 0.03
    promised: float = 0.25
    deposits: float = 0.15
    waits: float = 0.06


class TrueLot(msgspec.Struct, frozen=True):
    """A lot of seals: what it is called, what is in it, from which day to which it was used, and whether it is bad."""

    name: str
    seal: str
    first_day: str
    last_day: str
    bad: bool


class TruePen(msgspec.Struct, frozen=True):
    """What is true of one pen, whatever its record shows by now.

    Parameters
    ----------
    job : str
        The job's name.
    owner : str
        Whose it is; the pens of one parcel have the same owner and the same day of arrival.
    arrived_on : str
        Day of arrival.
    system, material, work, seal, lot : str
        What it is, what is asked, and what is fitted; seal and lot are empty where no seal is renewed.
    difficulty : int
        0 to 4; the severity of the worst that is seen.
    ending : str
        How it ends, or will end.
    holds_ml : float or None
        What its true dimensions hold, by the formula of its system [mL]; None where the pen is not filled.
    share : float or None
        What of it a fill draws from drained [1].
    dimensions : dict
        True dimensions by their names in the fill test.
    fitted_to_mm, held_mm : float or None
        The size its seal is fitted to, and the size of the seal that held [mm].
    minutes : dict
        Minutes by activity over the whole job.
    price : str
        What it costs in the bench's currency; empty where it ends early.
    comes_back : bool
        Whether it comes back, within the time that the bench covers or after it.
    again_of : str
        The job that it comes back from; empty for a pen's first job.
    lead : str
        The job of the first pen of its parcel, of that pen its own; empty where it came alone.
    """

    job: str
    owner: str
    arrived_on: str
    system: str
    material: str
    work: str
    seal: str
    lot: str
    difficulty: int
    ending: str
    holds_ml: float | None
    share: float | None
    dimensions: dict[str, float]
    fitted_to_mm: float | None
    held_mm: float | None
    minutes: dict[str, int]
    price: str
    comes_back: bool = False
    again_of: str = ""
    lead: str = ""


class Truth(msgspec.Struct, frozen=True):
    """What is true of an invented bench.

    Parameters
    ----------
    seed : int
        What it was drawn with.
    until : str
        The day on which the bench is looked at: what would be later is not in the records.
    rates : Rates
        Spreads and rates.
    shares : dict
        ``system|seal`` to the middle of the share filled [1].
    minutes : dict
        ``system|work|activity`` to the median of the minutes of a pen of difficulty 2.
    removal : dict
        Grade to the layer it takes off celluloid [µm/min].
    lots : tuple of TrueLot
        Every lot.
    pens : tuple of TruePen
        Every job, in the order of arrival.
    """

    seed: int
    until: str
    rates: Rates
    shares: dict[str, float]
    minutes: dict[str, float]
    removal: dict[str, float]
    lots: tuple[TrueLot, ...]
    pens: tuple[TruePen, ...]
