"""The pen's way over the invented bench: a clock, a calliper, a balance, and the entries so far."""

from __future__ import annotations

import datetime as dt
import random
from typing import Any

from pentools.books.invented.truth import TruePen, Truth
from pentools.record.entries import Entry

__all__ = ["Story", "quantity"]

ZONE = dt.timezone(dt.timedelta(hours=1))
PER_ML_G = 0.99711  # grams that a millilitre of water shows at 20 °C and 1013 hPa (ISO 8655-6, Z = 1.0029 µL/mg)
_DONE = {
    "look": "Looked at it, measured it, wrote to the owner.", "open": "Opened it, with patience.",
    "clean": "Washed what bears water, wiped the rest.", "seal": "Measured, tried seals dry, fitted the one that held.",
    "nib": "Tines set level, tip smoothed.", "finish": "Polished between the masks.",
    "test": "Filled, weighed, left overnight.", "write": "Letter and care sheet.",
}  # fmt: skip


def quantity(value: float, unit: str, digits: int = 2) -> dict[str, Any]:
    """A quantity as the record keeps it, rounded to so many digits behind the point as if it had been typed so."""
    shown = {"degC": "°C", "1": "%"}.get(unit, unit)
    text = f"{100 * value:.{digits}f}" if unit == "1" else f"{value:.{digits}f}"
    kept = float(text) / 100 if unit == "1" else float(text)
    return {"value": kept, "unit": unit, "u": None, "typed": f"{text} {shown}"}


class Story:
    """One pen's way over the bench: what is entered, and when."""

    def __init__(self, pen: TruePen, truth: Truth, rng: random.Random) -> None:
        self.pen, self.rng, self.rates, self.truth = pen, rng, truth.rates, truth
        day = dt.date.fromisoformat(pen.arrived_on)
        self.at = dt.datetime(day.year, day.month, day.day, 9, rng.randrange(60), tzinfo=ZONE)
        self.rows: list[Entry] = []
        self.drop_g = 0.0
        self.empty_g = rng.uniform(12.0, 22.0)

    def put(self, stage: str, kind: str, **data: Any) -> str:
        """One entry more, some minutes after the last; what is None is left out. Its id is given back."""
        self.at += dt.timedelta(minutes=self.rng.randint(1, 6))
        return self.log(stage, kind, {name: value for name, value in data.items() if value is not None})

    def log(self, stage: str, kind: str, data: dict[str, Any], replaces: str | None = None) -> str:
        """One entry more, at this moment."""
        id_ = f"{self.rng.getrandbits(128):032x}"
        self.rows.append(Entry(id=id_, at=self.at.isoformat(), stage=stage, kind=kind, data=data, replaces=replaces))
        return id_

    def day(self, after: int) -> str:
        """The day so many days from now."""
        return (self.at.date() + dt.timedelta(days=after)).isoformat()

    def wait(self, least: float, most: float) -> None:
        """Days go by; work goes on in the morning."""
        later = self.at + dt.timedelta(days=self.rng.uniform(least, most))
        morning = later.replace(hour=9, minute=self.rng.randrange(60), second=0, microsecond=0)
        self.at = morning if morning > self.at else morning + dt.timedelta(days=1)

    def work(self, *activities: str) -> None:
        """The minutes of what was done."""
        for activity in activities:
            if activity in self.pen.minutes:
                spent = quantity(self.pen.minutes[activity], "min", 0)
                self.put("work log", "work", activity=activity, minutes=spent, done=_DONE[activity])

    def read(self, name: str) -> dict[str, Any]:
        """A dimension as the calliper shows it."""
        return self.mm(self.pen.dimensions[name])

    def mm(self, value: float) -> dict[str, Any]:
        """A length as the calliper shows it."""
        return quantity(value + self.rng.gauss(0.0, self.rates.calliper_mm), "mm")

    def weighing(self, state: str) -> dict[str, Any]:
        """What the balance shows."""
        pen = self.pen
        inside = 0.0 if state == "drained" else self.drop_g + (pen.share or 0.0) * (pen.holds_ml or 0.0) * PER_ML_G
        mass = self.empty_g + inside + self.rng.gauss(0.0, self.rates.balance_g)
        return {"state": state, "mass": quantity(mass, "g")}
