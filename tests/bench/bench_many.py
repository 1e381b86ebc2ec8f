"""How fast the books answer over many pens, in one run: python tests/bench/bench_many.py [PENS]

An invented bench is made in a folder that is thrown away; the first answer reads every record, those after it the
answers kept. Wall time and processor time are both told, because other work on the machine lengthens the first alone.
"""

import datetime as dt
import os
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

DAY = dt.date(2026, 10, 31)


def best(question: Callable[[], Any], runs: int = 5) -> tuple[float, float]:
    """Least wall time and least processor time [s] of some runs."""
    walls, works = [], []
    for _ in range(runs):
        wall, work = time.perf_counter(), time.process_time()
        question()
        walls.append(time.perf_counter() - wall)
        works.append(time.process_time() - work)
    return min(walls), min(works)


def main() -> None:
    pens = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as folder:
        os.environ["PENTOOLS_KEPT"] = str(Path(folder) / "kept")
        from pentools.books.invented.bench import invent_bench
        from pentools.books.queue.queue import queue_on
        from pentools.books.queue.wanted import wanted_on
        from pentools.books.search.search import Asked, find_on
        from pentools.record.bench import open_bench_folder
        from pentools.units import Reading

        place = Path(folder) / "bench"
        invent_bench(place, pens)
        bench = open_bench_folder(place)
        sizes = {"barrel": Reading(7.6, "mm", 0.1), "nipple": Reading(6.2, "mm", 0.1)}
        asked: dict[str, Callable[[], Any]] = {
            "queue": lambda: queue_on(bench, DAY),
            "find by sizes": lambda: find_on(bench, Asked(sizes=sizes)),
            "find by a word": lambda: find_on(bench, Asked(("cork",))),
            "parts wanted": lambda: wanted_on(bench),
        }
        print(f"{pens} pens")
        for name, question in asked.items():
            start = time.perf_counter()
            question()
            first = time.perf_counter() - start
            wall, work = best(question)
            print(
                f"{name:<16} first {first:7.1f} s; from what is kept {wall:6.3f} s, of it processor {work:6.3f} s "
                "(wanted: at most 0.3 s)"
            )


if __name__ == "__main__":
    main()
