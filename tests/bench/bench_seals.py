"""How fast seals are ranked, in times and ratios of one run: python tests/bench/bench_seals.py"""

import statistics
import subprocess
import sys
import time
from pathlib import Path

from pentools.calc.seal.fit import seal_fit
from pentools.calc.seal.gland import Gland, fit_ring
from pentools.calc.seal.judge import judge_fit
from pentools.calc.seal.threads import match_thread
from pentools.tables.seals import duty, rings, threads

sys.path.insert(0, str(Path(__file__).parents[1]))

from calc.seal.many_oracle import seal_fit_many


def median_ms(call, runs: int = 15) -> float:
    """Median time [ms] of a call, the first two runs left out."""
    times = []
    for _ in range(runs + 2):
        start = time.perf_counter()
        call()
        times.append(1000 * (time.perf_counter() - start))
    return statistics.median(times[2:])


def one_bore() -> None:
    hand = duty("hand-turned")
    cases = {
        "fits": Gland("piston", 4.5, 7.4, 2.4, 7.2),
        "nothing fits": Gland("piston", 3.3, 6.3, 2.4),
        "packing": Gland("packing", 3.0, 6.2, 2.4),
    }
    for source in ("as568", "metric"):
        found = rings(source)
        for name, gland in cases.items():
            took = median_ms(lambda gland=gland, found=found: seal_fit(gland, found, hand))
            print(f"one gland, {len(found)} {source} sizes, {name:<13} {took:5.1f} ms (wanted: under 50 ms)")


def many_bores() -> None:
    hand, found = duty("hand-turned"), rings("as568")
    bores = [5 + 0.007 * i for i in range(1000)]
    grooves = [bore - 2.9 for bore in bores]
    at_once = median_ms(lambda: seal_fit_many(bores, grooves, found, hand, width_mm=2.4), runs=7)
    few = list(zip(bores, grooves, strict=True))[::50]

    def one_by_one() -> None:
        for bore, groove in few:
            gland = Gland("piston", groove, bore, 2.4)
            for ring in found:
                judge_fit(fit_ring(ring, gland), hand)

    loop = median_ms(one_by_one, runs=5) * len(bores) / len(few)
    print(f"1000 bores x {len(found)} sizes at once {at_once:5.0f} ms (wanted: under 1000 ms)")
    print(f"the same one by one, from {len(few)} bores: {loop:.0f} ms, ratio {loop / at_once:.0f}")


def others() -> None:
    known = threads()
    print(
        f"nearest of {len(known)} threads {median_ms(lambda: match_thread(0.794, 7.1, known, pitch_uncertainty_mm=0.003)):.2f} ms"
    )


def whole_process() -> None:
    code = "from pentools.sums.seal.rings import SEAL; from pentools.sums.base import read_options; SEAL.run(read_options(SEAL.fields, {'bore': '7.4 mm', 'groove': '4.5 mm', 'width': '2.4 mm'}))"
    bare = median_ms(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True), runs=5)
    ours = median_ms(lambda: subprocess.run([sys.executable, "-c", code], check=True), runs=5)
    print(f"the sum in a process of its own {ours:.0f} ms, a bare process {bare:.0f} ms")


if __name__ == "__main__":
    one_bore()
    many_bores()
    others()
    whole_process()
