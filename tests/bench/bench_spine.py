"""How fast the spine is, in ratios and times of one run: python tests/bench/bench_spine.py"""

import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path


def whole_process(code: str, runs: int = 7) -> float:
    """Median wall time [s] of a Python process that runs `code`."""
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        subprocess.run([sys.executable, "-c", code], check=True)
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def imports() -> None:
    bare = whole_process("pass")
    ours = whole_process("import pentools") - bare
    pint = whole_process("import pint") - bare
    print(
        f"import pentools {1000 * ours:6.1f} ms, import pint {1000 * pint:6.1f} ms, ratio {ours / pint:.2f} (wanted: at most 0.50)"
    )


def entry_to_redraw(bench: Path) -> None:
    from pentools.panels.bench import BenchSheet
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job

    job = create_job(open_bench_folder(bench, create=True), "speed", sample="green-piston")
    form = BenchSheet(job).stage("fill test").forms["weighing"]
    times = []
    for number in range(15):
        form.boxes["state"].text, form.boxes["mass"].text = "filled", f"25.{number:02d} g"
        start = time.perf_counter()
        form.save()
        times.append(time.perf_counter() - start)
        assert form.status.text.startswith("saved"), form.status.text
    print(
        f"Enter to saved and redrawn: median {1000 * statistics.median(times[2:]):.0f} ms, slowest {1000 * max(times[2:]):.0f} ms (wanted: under 150 ms)"
    )


def long_record(bench: Path) -> None:
    from pentools.record.entries import encode_entry, new_entry
    from pentools.record.storage import Record

    path = bench / "long.jsonl"
    mass = {"value": 8.92, "unit": "g", "u": None, "typed": "8.92 g"}
    path.write_bytes(
        b"".join(
            encode_entry(new_entry("fill test", "weighing", {"state": "dry", "mass": mass})) + b"\n"
            for _ in range(5000)
        )
    )
    start = time.perf_counter()
    record = Record.open(path)
    live = record.live("fill test", "weighing")
    took = time.perf_counter() - start
    print(f"a record of {len(live)} entries opens in {1000 * took:.0f} ms (wanted: under 300 ms)")


def pages(bench: Path) -> None:
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job

    job = create_job(open_bench_folder(bench, create=True), "pages", sample="green-piston")
    ours, stock = [], []
    for _ in range(3):
        start = time.perf_counter()
        subprocess.run(
            [sys.executable, "-m", "pentools.cli", "writeup", job.name, "--bench", str(bench)],
            check=True,
            stdout=subprocess.DEVNULL,
        )
        ours.append(time.perf_counter() - start)
        start = time.perf_counter()
        subprocess.run(
            [
                sys.executable,
                "-m",
                "nbconvert",
                "--to",
                "html",
                "--execute",
                str(job.notebook),
                "--output-dir",
                str(bench / "stock"),
            ],
            check=True,
            stderr=subprocess.DEVNULL,
            cwd=job.folder,
        )
        stock.append(time.perf_counter() - start)
    ratio = statistics.median(a / b for a, b in zip(ours, stock, strict=True))
    print(
        f"both pages in one process {statistics.median(ours):.2f} s, stock execute and convert {statistics.median(stock):.2f} s, ratio {ratio:.2f} (wanted: at most 0.33)"
    )


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as held:
        folder = Path(held)
        imports()
        long_record(folder)
        entry_to_redraw(folder)
        pages(folder)
