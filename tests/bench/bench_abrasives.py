"""How fast a progression is planned: python tests/bench/bench_abrasives.py"""

import statistics
import time

from pentools.calc.finish.progression import grit_progression
from pentools.calc.finish.types import PlanLimits
from pentools.tables.abrasives import catalogue, materials, media, zones


def timed(defect_um: float, count: int, runs: int = 50) -> tuple[float, float, int]:
    """Median and slowest time [ms] of a plan from `count` owned grades, and its number of steps."""
    usable = sorted(
        (g for g in catalogue().grades if g.scale != "mesh" and g.particle_um <= 36), key=lambda g: g.particle_um
    )
    owned = usable[:: max(1, len(usable) // count)][:count]
    assert len(owned) == count
    limits = PlanLimits(materials()["celluloid"], zones()["plain barrel"], media())
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        plan = grit_progression(defect_um, 1.0, owned, limits, catalogue=catalogue())
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times), 1000 * max(times), len(plan.steps)


if __name__ == "__main__":
    catalogue()
    for depth, words in ((15, "inside the budget"), (45, "over it, with other ways priced")):
        middle, slowest, steps = timed(depth, 40)
        print(
            f"plan of {steps} steps from 40 owned grades, {words}: median {middle:.1f} ms, slowest {slowest:.1f} ms (wanted: under 20 ms)"
        )
