"""What is stated, tried on invented weighings whose truth is known: coverage of the ±, false alarms and misses of the leak test.

`python tests/simulated.py` writes the tables into docs/methods.md; tests/calc/weighing/test_simulated.py holds them to their
limits, and the page to them.
"""

import functools
import random
import re
from dataclasses import replace
from pathlib import Path

from pentools.calc.weighing.balance import BALANCES
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.density import air_density_simple, water_density, z_factor
from pentools.calc.weighing.leak import leak_down
from pentools.calc.weighing.setting import Conditions, Handling

METHODS = Path(__file__).parents[1] / "docs" / "methods.md"
TRIALS, SEED = 2000, 20261127
NAMES = ("0.1 g", "0.01 g", "0.001 g")
CASES = (
    # what hangs at the nib, what was allowed for, whether empty and filled share their linearity error
    ("no drop, none allowed for", 0.0, 0.0, False),
    ("a drop up to 0.04 g", 0.04, 0.04, False),
    ("no drop, one allowed for", 0.0, 0.04, False),
    ("a drop, linearity shared by both loads", 0.04, 0.04, True),
)
SCHEDULES = (("four over 72 h", (0, 24, 48, 72)), ("five over 8 h", (0, 2, 4, 6, 8)), ("two over 24 h", (0, 24)))


def shown(rng, balance, mass_g, systematic_g):
    """One weighing: the scale's zero and its load each rounded, and the scatter."""
    d = balance.readability_g
    seen = mass_g + systematic_g + rng.gauss(0, balance.repeatability_g) - rng.uniform(-d / 2, d / 2)
    return round(seen / d) * d


def one_filling(rng, balance, weighings, case):
    """A pen of a known volume, weighed: whether the stated interval holds it."""
    _, drop_g, allowed_g, shared = case
    usual = Conditions()
    t = usual.temperature_c + rng.uniform(-1, 1) * usual.temperature_half_width_c
    p = usual.pressure_kpa + rng.uniform(-1, 1) * usual.pressure_half_width_kpa
    h = usual.humidity_share + rng.uniform(-1, 1) * usual.humidity_half_width_share
    volume, pen = rng.uniform(0.8, 3.0), rng.uniform(12, 30)
    gain = volume / z_factor(water_density(t), air_density_simple(t, p, h))
    gain += rng.uniform(0, drop_g) - rng.uniform(0, 0.005)
    scale = rng.uniform(-1, 1) * balance.linearity_g
    empty_off, filled_off = (
        (scale if shared else rng.uniform(-1, 1) * balance.linearity_g) + rng.uniform(-1, 1) * balance.eccentricity_g
        for _ in range(2)
    )
    empty = [shown(rng, balance, pen, empty_off) for _ in range(weighings)]
    filled = [shown(rng, balance, pen + gain, filled_off) for _ in range(weighings)]
    result = capacity_from_weight(empty, filled, balance, handling=Handling(allowed_g, 0.005))
    return abs(result.volume_ml - volume) <= result.budget.expanded_uncertainty


@functools.cache
def coverage(name, weighings, case, trials=TRIALS):
    """Share of invented fillings whose volume lies within the stated ±."""
    rng = random.Random(f"{SEED} {name} {weighings} {case[0]}")
    return sum(one_filling(rng, BALANCES[name], weighings, case) for _ in range(trials)) / trials


@functools.cache
def leak_errors(name, hours, trials=TRIALS):
    """False alarms with nothing lost, and misses with the stated limit of detection lost, as shares."""
    balance = BALANCES[name]
    u = (balance.readability_g**2 / 12 + balance.repeatability_g**2) ** 0.5
    limit = leak_down(hours, [20.0] * len(hours), u).detection_mg_per_h / 1000
    rng = random.Random(f"{SEED} {name} {hours}")
    still = replace(balance, linearity_g=0.0)

    def seen(loss):
        start = rng.uniform(15, 25)
        d = still.readability_g
        masses = [round((start - loss * t + rng.gauss(0, still.repeatability_g)) / d) * d for t in hours]
        return leak_down(hours, masses, u).verdict in ("leak", "cannot-tell-which")

    return tuple(sum(seen(loss) for _ in range(trials)) / trials for loss in (0.0, limit))


def percent(share):
    return f"{100 * share:.1f} %"


def tables():
    """The two tables as they stand in docs/methods.md."""
    head = "| balance | weighings of each state | " + " | ".join(case[0] for case in CASES) + " |"
    lines = [head, "|" + "---|" * (2 + len(CASES))]
    for name in NAMES:
        for weighings in (1, 3):
            cells = " | ".join(percent(coverage(name, weighings, case)) for case in CASES)
            lines.append(f"| {name} | {weighings} | {cells} |")
    lines += ["", "| balance | weighings at rest | false alarms | misses at the stated limit |", "|---|---|---|---|"]
    for name in NAMES:
        for words, hours in SCHEDULES:
            alarms, found = leak_errors(name, hours)
            lines.append(f"| {name} | {words} | {percent(alarms)} | {percent(1 - found)} |")
    return "\n".join(lines)


def between_marks(text):
    """The page's text before, between and after the marks."""
    return re.fullmatch(r"(?s)(.*<!-- simulated -->\n)(.*?)(\n<!-- end of simulated -->.*)", text).groups()


if __name__ == "__main__":
    before, _, after = between_marks(METHODS.read_text(encoding="utf-8"))
    METHODS.write_text(before + tables() + after, encoding="utf-8")
