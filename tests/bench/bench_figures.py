"""How long drawings take, as ratios of one run: python tests/bench/bench_figures.py"""

import statistics
import time

from pentools.figures.pen.lettering import wrap
from pentools.figures.pen.section_view import draw_pen
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape


def median_ms(call, runs: int = 5) -> float:
    """Median time of a call [ms]."""
    call()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times)


def main() -> None:
    short, long = median_ms(lambda: wrap("a" * 4000, 100.0)), median_ms(lambda: wrap("a" * 20000, 100.0))
    print(
        f"unbroken words: 4,000 letters {short:.1f} ms, 20,000 letters {long:.1f} ms, ratio {long / short:.1f} (linear: 5)"
    )
    for system in SYSTEMS:
        print(f"{system}: {median_ms(lambda key=system: draw_pen(PenShape(key))):.1f} ms")


if __name__ == "__main__":
    main()
