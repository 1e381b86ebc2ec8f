"""How fast dating is, in ratios and times of one run: python tests/bench/bench_dating.py"""

import itertools
import random
import statistics
import time

from pentools.calc.dating.evidence import Evidence
from pentools.calc.dating.interval import EdtfInterval, read_edtf, write_edtf
from pentools.calc.dating.range import date_range
from pentools.calc.dating.spans import first_and_last_day, intersect


def some_evidence(count: int, seed: int) -> list[Evidence]:
    """Random evidence that nearly always contradicts itself."""
    chance = random.Random(seed)
    items = []
    for number in range(count):
        first = chance.randint(1900, 1960)
        span = (first_and_last_day(first)[0], first_and_last_day(first + chance.randint(0, 20))[1])
        items.append(Evidence(f"feature {number}", EdtfInterval(write_edtf([span]), (span,))))
    return items


def median_time(work, runs: int) -> float:
    """Median wall time [s] of some runs."""
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def by_brute_force(items: list[Evidence]) -> set[tuple[int, ...]]:
    """Every set to doubt of which no part would do, by trying all subsets."""
    enough: list[set[int]] = []
    for size in range(len(items) + 1):
        for doubted in itertools.combinations(range(len(items)), size):
            if any(smaller <= set(doubted) for smaller in enough):
                continue
            if intersect(item.spans for place, item in enumerate(items) if place not in doubted):
                enough.append(set(doubted))
    return {tuple(sorted(way)) for way in enough}


def main() -> None:
    for count in (20, 200, 2000):
        items = some_evidence(count, count)
        seconds = median_time(lambda items=items: date_range(items), 15 if count < 2000 else 5)
        ways = date_range(items)
        print(f"{count:5d} pieces: {1000 * seconds:8.2f} ms, {len(ways.conflicts) + len(ways.other_ways)} ways out")
    items = some_evidence(12, 12)
    ours = median_time(lambda: date_range(items), 15)
    brute = median_time(lambda: by_brute_force(items), 3)
    result = date_range(items)
    assert {way.doubted for way in (*result.conflicts, *result.other_ways)} == by_brute_force(items)
    print(
        f"   12 pieces: ours {1000 * ours:.2f} ms, all subsets {1000 * brute:.1f} ms, ratio {brute / ours:.0f}, same answer"
    )
    texts = ["1936", "1936/1942", "1938~", "193X", "1936-05", "1936-05-12/1942"]
    reading = median_time(lambda: [read_edtf(text) for text in texts], 50) / len(texts)
    print(f"reading EDTF: {1e6 * reading:.1f} µs each")
    try:
        from edtf import parse_edtf
    except ImportError:
        print("the open parser is not here to compare with")
        return
    theirs = median_time(lambda: [parse_edtf(text) for text in texts], 5) / len(texts)
    print(f"the open parser: {1e6 * theirs:.0f} µs each, ratio {theirs / reading:.0f}")


if __name__ == "__main__":
    main()
