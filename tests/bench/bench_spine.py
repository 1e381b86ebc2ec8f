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


def yardstick() -> float:
    """Median CPU time [s] of something steady that the kit does not change: what the figures below are held against."""
    import json

    text = json.dumps([{"value": number / 7, "unit": "g", "typed": f"{number} g"} for number in range(4000)])
    times = []
    for _ in range(9):
        start = time.process_time()
        for _ in range(5):
            json.loads(text)
        times.append(time.process_time() - start)
    return statistics.median(times)


def opening(bench: Path) -> None:
    """The lead sample's sheet as it opens, each stage a line, against every stage built, as a run of all cells once did."""
    from pentools.panels.bench import BenchSheet
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job, job_in
    from pentools.record.registry import STAGES

    folder = create_job(open_bench_folder(bench, create=True), "opened", sample="green-piston").folder
    closed, built = [], []
    for _ in range(5):
        begun = time.process_time()
        sheet = BenchSheet(job_in(folder))
        for key in STAGES:
            sheet.stage(key)
        closed.append(time.process_time() - begun)
        for key in STAGES:
            sheet.open_stage(key)
        built.append(time.process_time() - begun)
    ratio = statistics.median(closed[1:]) / statistics.median(built[1:])
    print(
        f"the sheet opened: CPU {statistics.median(closed[1:]):.2f} s; with every stage built "
        f"{statistics.median(built[1:]):.2f} s; ratio {ratio:.2f} (wanted: at most 0.50)"
    )


def entry_to_redraw(bench: Path) -> None:
    """One weighing saved in the stage that is open, the others built before."""
    from pentools.panels.bench import BenchSheet
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job
    from pentools.record.kinds import Kind
    from pentools.record.registry import STAGES

    job = create_job(open_bench_folder(bench, create=True), "speed", sample="green-piston")
    sheet = BenchSheet(job)
    for key in (*STAGES, "fill test"):
        sheet.open_stage(key)
    form = sheet.panel("fill test").forms["weighing"]
    decoded: list[str] = []
    real = Kind.decode
    Kind.decode = lambda kind, entry: (decoded.append(entry.id), real(kind, entry))[1]  # type: ignore[method-assign]
    wall, cpu = [], []
    for number in range(15):
        form.boxes["state"].text, form.boxes["mass"].text = "filled", f"25.{number:02d} g"
        decoded.clear()
        start, begun = time.perf_counter(), time.process_time()
        form.save()
        wall.append(time.perf_counter() - start)
        cpu.append(time.process_time() - begun)
        assert form.status.text.startswith("saved"), form.status.text
    Kind.decode = real  # type: ignore[method-assign]
    print(
        f"Enter to saved and redrawn: median {1000 * statistics.median(wall[2:]):.0f} ms, slowest "
        f"{1000 * max(wall[2:]):.0f} ms (wanted: under 150 ms); CPU {statistics.median(cpu[2:]) / yardstick():.1f} yardsticks; "
        f"{len(decoded)} of {len(job.record.entries)} entries decoded"
    )


def both_pages(bench: Path) -> None:
    """Both pages of the lead sample, drawn afresh in this process; how often the capacity was worked out for them."""
    import pentools.record.stages.weighing.filling as filling
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job, job_in
    from pentools.writeup import drawn
    from pentools.writeup.page import render_page

    job = create_job(open_bench_folder(bench, create=True), "both", sample="green-piston")
    render_page(job, "owner")
    asked = []
    real = filling.sum_values
    filling.sum_values = lambda job, cycle: (asked.append(cycle), real(job, cycle))[1]
    cpu = []
    for _ in range(5):
        again = job_in(job.folder)
        drawn._CHARTS.clear()
        asked.clear()
        begun = time.process_time()
        render_page(again, "owner")
        render_page(again, "everybody")
        cpu.append(time.process_time() - begun)
    filling.sum_values = real
    print(
        f"both pages: CPU {statistics.median(cpu):.2f} s, {statistics.median(cpu) / yardstick():.0f} yardsticks; "
        f"the capacity was worked out {len(asked)} times for {len(set(asked))} fillings"
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
        opening(folder)
        entry_to_redraw(folder)
        both_pages(folder)
        pages(folder)
