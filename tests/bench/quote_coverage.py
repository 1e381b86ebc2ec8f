"""How often the range of a quote holds where the truth is known: the figures in docs/methods.md.

python tests/bench/quote_coverage.py
"""

import collections
import math
import random
import tempfile
from pathlib import Path

from pentools.books.invented.bench import invent_bench
from pentools.books.learning.like import counted_jobs
from pentools.books.learning.quote import quoted_from
from pentools.books.learning.time_taken import time_of
from pentools.calc.books.ahead import one_more
from pentools.calc.books.pooled import scatter_within
from pentools.record.bench import open_bench_folder
from pentools.record.billing import Billing
from pentools.record.each import ask_each

ROUNDS, SPREAD, OTHERS, JOBS = 10_000, 0.35, 4, 5
LENDERS = {"alone": None, "others alike": SPREAD, "others a third less": SPREAD / 1.5, "others half more": SPREAD * 1.5}
BENCHES = ((20, 20), (60, 12), (600, 1))


def simulated(n, lent, seed=1):
    """Share of further jobs in the range of n, minutes typed to five; and the mean of high over low."""
    chance, held, width = random.Random(seed), 0, 0.0
    for _ in range(ROUNDS):
        kinds = {
            str(k): [chance.lognormvariate(4 + 0.3 * k, lent) for _ in range(JOBS)]
            for k in range(OTHERS if lent else 0)
        }
        typed = [max(5.0, 5.0 * round(chance.lognormvariate(math.log(60), SPREAD) / 5)) for _ in range(n)]
        found = one_more(typed, scatter_within(kinds) if kinds else None)
        held += found.low <= chance.lognormvariate(math.log(60), SPREAD) <= found.high
        width += math.log(found.high / found.low)
    return held / ROUNDS, math.exp(width / ROUNDS)


def on_benches(pens, count):
    """Each finished job of invented benches quoted from the others: how many ranges held, by circle."""
    held, asked = collections.Counter(), collections.Counter()
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(count):
            place = Path(folder) / str(seed)
            invent_bench(place, pens, seed=100 + seed)
            jobs = dict(ask_each(open_bench_folder(place), time_of))
            for name, one in counted_jobs(jobs).items():
                found = quoted_from(name, one, jobs, Billing("EUR", 0))
                if found.minutes is None:
                    continue
                for key in ("every circle", found.circle.key):
                    asked[key] += 1
                    held[key] += found.minutes.low <= one.whole_min <= found.minutes.high
    return {key: (held[key] / asked[key], asked[key]) for key in asked}


def main():
    """Print both tables."""
    print(f"{'n':>3}", *(f"{name:>22}" for name in LENDERS))
    for n in (3, 5, 10, 30):
        cells = (simulated(n, lent) for lent in LENDERS.values())
        print(f"{n:>3}", *(f"{100 * share:>14.1f} % x{wide:4.1f}" for share, wide in cells))
    for pens, count in BENCHES:
        found = on_benches(pens, count)
        print(
            f"{count} of {pens} pens:",
            "; ".join(f"{key} {100 * share:.0f} % of {n}" for key, (share, n) in found.items()),
        )


if __name__ == "__main__":
    main()
