"""Invented pens: each is drawn with all that is true of it, before anything is written down."""

from __future__ import annotations

import datetime as dt
import math
import random
from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_UP, Decimal

import msgspec

from pentools.books.invented.truth import (
    MATERIALS,
    MINUTES,
    PACE,
    POLISHED,
    SEALS,
    SYSTEMS_OFTEN,
    WORKS,
    Rates,
    TrueLot,
    TruePen,
    Truth,
    work_for_seal,
)
from pentools.calc.weighing.expected import AMBIENT_KPA, VAPOUR_KPA
from pentools.systems.registry import system_named
from pentools.tables.fillers import usual_fill

__all__ = ["RATE", "days_at_the_bench", "draw_truth", "true_volume_ml"]

RATE = Decimal(36)
"""What an hour costs on an invented bench."""
LOT_DAYS = 140
BACK_AFTER = (30, 150)
_FIRST_WORDS = (
    "Alba Bero Cinta Dorn Edda Fenn Gisa Hale Ilka Jorn Kesta Lorn Mave Nils Oda Perrin Quill Runa Sefton"
    " Tilda Ulf Vesna Wim Yara"
)
_LAST_WORDS = (
    "Ashmole Birkwell Corvane Dunlath Eversett Fallowick Garrowby Hexmere Inglestow Jarrowen Kestwick"
    " Lorrimund Marchetto Nethercroft Oakenby Pellamine Quarrendale Rushforth Selkmere Thornaby Underhay"
    " Vantrell Wexcombe Yarrowfell"
)
_NICK_WORDS = (
    "amber ash birch black blue bronze brown chased cherry coral cream dusk fern green grey ivory jade"
    " maroon moss mottled navy olive pearl pine plum red ripple rose ruby rust sand silver slate striped"
    " teal"
)
_FIRST, _LAST, _NICK = _FIRST_WORDS.split(), _LAST_WORDS.split(), _NICK_WORDS.split()
_SACS = frozenset({"lever-sac", "button-sac", "crescent-sac", "slot-sac", "sleeve-squeeze", "pneumatic-down-stroke", "pneumatic-extending-tube"})  # fmt: skip
_SEAL_OF = {
    "bulb": "bulb", "diaphragm-pump": "diaphragm", "plunger-vacuum": "washer", "syringe": "washer",
    "safety": "packing", "bellows": "pleated sac", "eyedropper": "", "capillary": "", "cartridge-converter": "",
}  # fmt: skip
# true dimensions by family: name -> (least, most) [mm]
_SIZES: dict[str, dict[str, tuple[float, float]]] = {
    "piston": {"bore": (7.4, 10.6), "stroke": (21.0, 33.0), "rod": (0.0, 0.0)},
    "plunger": {"bore": (8.0, 9.3), "rod": (2.2, 2.8), "stroke": (48.0, 64.0)},
    "sac": {"outside": (5.6, 8.6), "wall": (0.45, 0.55), "length": (40.0, 66.0)},
    "breather": {"bore": (8.4, 10.4), "reach": (38.0, 58.0), "tube": (1.8, 2.3)},
    "reservoir": {"bore": (8.2, 10.0), "depth": (44.0, 64.0), "nipple": (5.6, 6.4), "nipple_length": (5.0, 8.0)},
    "cell": {"bore": (7.8, 8.8), "depth": (40.0, 52.0), "void_share": (0.56, 0.66)},
    "cartridge": {"bore": (5.8, 6.4), "length": (30.0, 40.0)},
}
_SEATS = {"housing": (5.5, 6.5), "groove": (7.0, 9.0), "nipple": (7.0, 9.0)}
_SIZES |= dict.fromkeys(("pneumatic sac", "pumped sac"), _SIZES["sac"])


def true_volume_ml(system: str, dimensions: Mapping[str, float]) -> float:
    """What a pen of such dimensions holds, by the formula of its system [mL]."""
    family = system_named(system).family
    taken = {name: value for name, value, _ in family.takes} | {"ambient_kpa": AMBIENT_KPA, "vapour_kpa": VAPOUR_KPA}
    return family.volume_ml(taken | dict(dimensions))


def days_at_the_bench(count: int) -> int:
    """Over how many days so many jobs arrive: a year at least, eight at most."""
    return int(365 * min(8.0, max(1.0, count / 150)))


def draw_truth(count: int, seed: int, until: dt.date, rates: Rates) -> Truth:
    """Draw a whole bench.

    Parameters
    ----------
    count : int
        Jobs, those of pens that come back among them.
    """
    rng = random.Random(seed)  # noqa: S311 - a trial, not a secret
    first = until - dt.timedelta(days=days_at_the_bench(count))
    lots = tuple(_lots(rng, first, until))
    shares = dict(_shares(rng))
    minutes = {
        f"{system}|{work}|{activity}": median * PACE.get(system, 1.0)
        for system in SYSTEMS_OFTEN
        for work, by_activity in MINUTES.items()
        for activity, median in by_activity.items()
    }
    truth = Truth(seed, until.isoformat(), rates, shares, minutes, dict(POLISHED), lots, ())
    return msgspec.structs.replace(truth, pens=_named(_pens(rng, truth, count, first, until)))


def _lots(rng: random.Random, first: dt.date, until: dt.date) -> Iterator[TrueLot]:
    """One lot of a kind after another, each for some months; of every kind that has three or more, one is bad."""
    for seal in SEALS:
        spans, day = [], first
        while day <= until:
            last = day + dt.timedelta(days=rng.randint(LOT_DAYS - 40, LOT_DAYS + 40))
            spans.append((day, last))
            day = last + dt.timedelta(days=1)
        bad = set(rng.sample(range(len(spans)), max(1, len(spans) // 6))) if len(spans) >= 3 else set()
        for number, (day, last) in enumerate(spans):
            name = f"{seal} bag {number + 1} of {day:%B %Y}"
            yield TrueLot(name, seal, day.isoformat(), last.isoformat(), number in bad)


def _shares(rng: random.Random) -> Iterator[tuple[str, float]]:
    """The middle of the share filled for each system and seal, well within what is usual."""
    for system in SYSTEMS_OFTEN:
        usual = usual_fill(system)
        assert usual is not None
        middle = usual.typical + rng.uniform(-0.2, 0.2) * min(usual.typical - usual.low, usual.high - usual.typical)
        for seal in _seals_of(system):
            yield f"{system}|{seal}", middle - (0.02 if seal == "silicone sac" else 0.0)


def _seals_of(system: str) -> tuple[str, ...]:
    if system in _SACS:
        return ("latex sac", "silicone sac")
    return ("cork", "O-ring") if system == "piston" else (_SEAL_OF[system],)


def _pens(rng: random.Random, truth: Truth, count: int, first: dt.date, until: dt.date) -> list[TruePen]:
    """Parcel by parcel, with the pens that come back, until there are as many as asked."""
    pens: list[TruePen] = []
    owners: list[str] = []
    while len(pens) < count:
        if not owners or rng.random() < 0.6:
            owners.append(f"{rng.choice(_FIRST)} {rng.choice(_LAST)}")
        owner = owners[-1] if rng.random() < 0.5 else rng.choice(owners)
        day = first + dt.timedelta(days=rng.randint(0, (until - first).days))
        together = rng.choices((1, 2, 3, 4), (78, 14, 5, 3))[0]
        lead = f"#{len(pens)}" if 1 < together <= count - len(pens) else ""
        for _ in range(together):
            pen = _pen(rng, truth, owner, day)
            pens.append(msgspec.structs.replace(pen, job=f"#{len(pens)}", lead=lead))
            back = day + dt.timedelta(days=rng.randint(60, 90) + rng.randint(*BACK_AFTER))
            if pen.comes_back and back <= until:
                again = _again(rng, truth, pens[-1], back)
                pens.append(msgspec.structs.replace(again, job=f"#{len(pens)}", lead=""))
    return pens[:count]


def _named(pens: list[TruePen]) -> tuple[TruePen, ...]:
    """The pens in the order of arrival, each under the name of its job."""
    marks: dict[str, str] = {}
    serial: dict[str, int] = {}
    named = []
    for number, pen in sorted(enumerate(pens), key=lambda at: at[1].arrived_on):
        year = pen.arrived_on[:4]
        serial[year] = serial.get(year, 0) + 1
        word = _NICK[(number * 7 + serial[year]) % len(_NICK)]
        name = f"{year}-{serial[year]:04d}-{word}-{pen.system}"
        marks[pen.job] = name
        named.append(
            msgspec.structs.replace(pen, job=name, again_of=marks.get(pen.again_of, ""), lead=marks.get(pen.lead, ""))
        )
    return tuple(named)


def _pen(rng: random.Random, truth: Truth, owner: str, day: dt.date) -> TruePen:
    system = rng.choices(tuple(SYSTEMS_OFTEN), tuple(SYSTEMS_OFTEN.values()))[0]
    material = rng.choice(MATERIALS.get(system, ("celluloid", "celluloid", "acrylic")))
    seals = _seals_of(system)
    seal = seals[0] if len(seals) == 1 or rng.random() < 0.7 else seals[1]
    work = rng.choices([name for name, _ in WORKS], [often for _, often in WORKS])[0]
    if work == "seal":
        work = work_for_seal(system, seal) if seal else "nib only"
    if work == "finish only" and material != "celluloid":
        work = "nib only"
    difficulty = rng.choices((0, 1, 2, 3, 4), (5, 20, 45, 22, 8))[0]
    return _fate(rng, truth, TruePen(
        "", owner, day.isoformat(), system, material, work, seal if "seal" in MINUTES[work] else "", "", difficulty,
        "", None, None, {}, None, None, {}, "",
    ))  # fmt: skip


def _fate(rng: random.Random, truth: Truth, pen: TruePen) -> TruePen:
    """How it ends, how long it takes, what it draws and whether it comes back."""
    rates = truth.rates
    early = rng.random() < rates.early[pen.difficulty]
    left = rng.random() < (0.04, 0.1, 0.2, 0.4, 0.5)[pen.difficulty]
    ending = rng.choice(("stopped", "returned")) if early else "done with limits" if left else "done"
    lot = next((lot for lot in truth.lots if lot.seal == pen.seal and lot.first_day <= pen.arrived_on <= lot.last_day), None)  # fmt: skip
    back = rates.bad_lot if lot is not None and lot.bad else rates.good_lot
    minutes = _minutes(rng, truth, pen)
    dimensions = _dimensions(rng, pen.system)
    filled = "test" in MINUTES[pen.work]
    share = _share(rng, truth, pen) if filled else None
    fitted, held = _fitted(rng, pen, dimensions)
    parts = Decimal(SEALS[pen.seal].cost) if pen.seal else Decimal(0)
    cost = (RATE * sum(minutes.values()) / 60 + parts).quantize(Decimal(1), ROUND_HALF_UP)
    return msgspec.structs.replace(
        pen, lot=lot.name if lot else "", ending=ending, minutes=minutes, dimensions=dimensions, share=share,
        holds_ml=true_volume_ml(pen.system, dimensions) if filled else None, fitted_to_mm=fitted, held_mm=held,
        price="" if early else f"{cost:.2f}", comes_back=not early and bool(pen.seal) and rng.random() < back,
    )  # fmt: skip


def _minutes(rng: random.Random, truth: Truth, pen: TruePen) -> dict[str, int]:
    rates = truth.rates
    whole = rates.step ** (pen.difficulty - 2) * math.exp(rng.gauss(0.0, rates.pen_spread))
    return {
        activity: max(1, round(truth.minutes[f"{pen.system}|{pen.work}|{activity}"] * whole * math.exp(rng.gauss(0.0, rates.activity_spread))))
        for activity in MINUTES[pen.work]
    }  # fmt: skip


def _dimensions(rng: random.Random, system: str) -> dict[str, float]:
    sizes = _SIZES[system_named(system).family.key]
    drawn = {name: rng.uniform(least, most) for name, (least, most) in sizes.items()}
    if system == "syringe":
        drawn["rod"] = rng.uniform(2.3, 3.0)
        drawn["stroke"] += 12.0
    return drawn


def _share(rng: random.Random, truth: Truth, pen: TruePen) -> float:
    usual = usual_fill(pen.system)
    assert usual is not None
    middle = truth.shares[f"{pen.system}|{pen.seal or _seals_of(pen.system)[0]}"]
    return min(max(rng.gauss(middle, truth.rates.share_spread), usual.low + 0.01), usual.high - 0.01)


def _fitted(rng: random.Random, pen: TruePen, dimensions: Mapping[str, float]) -> tuple[float | None, float | None]:
    """The size that the seal is fitted to, and the size of the one that holds."""
    if not pen.seal:
        return None, None
    row = SEALS[pen.seal]
    over = rng.gauss(row.over, row.scatter)
    if row.place == "sac":
        return dimensions["outside"] - over, dimensions["outside"]
    fitted = dimensions["bore"] if row.at == "bore" else rng.uniform(*_SEATS[row.at])
    return fitted, fitted + over


def _again(rng: random.Random, truth: Truth, pen: TruePen, day: dt.date) -> TruePen:
    """The same pen once more: its seal is renewed from the lot of that day, and it costs nothing."""
    work = work_for_seal(pen.system, pen.seal)
    again = _fate(
        rng, truth, msgspec.structs.replace(pen, arrived_on=day.isoformat(), work=work, difficulty=1, comes_back=False)
    )
    return msgspec.structs.replace(
        again, dimensions=pen.dimensions, fitted_to_mm=pen.fitted_to_mm, held_mm=pen.held_mm, ending="done", price="0.00",
        holds_ml=true_volume_ml(pen.system, pen.dimensions), comes_back=False, again_of=pen.job,
    )  # fmt: skip
