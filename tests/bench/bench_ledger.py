"""How fast the ledger is, in ratios of one run: python tests/bench/bench_ledger.py [FOLDER OF BENCHES] [JOBS ...]

The measure is a bare decode: `msgspec.json.Decoder().decode` once for each line of all bytes, read and split beforehand. What is
held against it is everything from the closed files to the twelve tables of what was entered as pandas frames. By the clock and
by the processor's own time; each in a process of its own, so that its peak of memory is its own.
"""

import gc
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

LINES = 120


def both(call):
    """What a call gives, and how long it took [s] by the clock and by the processor."""
    gc.collect()
    clock, processor = time.perf_counter(), time.process_time()
    found = call()
    return found, time.perf_counter() - clock, time.process_time() - processor


def measured(folder: str) -> dict:
    """The decode, then the ledger made from nothing, without and with what is kept."""
    import msgspec
    import pandas as pd  # noqa: F401 - loaded before the clock runs

    from pentools.books.tables import kept_pages as tables_kept
    from pentools.books.tables.forms import ENTERED
    from pentools.books.tables.frames import frame
    from pentools.books.tables.kept_pages import TablesKept
    from pentools.record.bench import open_bench_folder

    bench = open_bench_folder(folder)
    lines = [line for path in bench.folder.glob("*/record.jsonl") for line in path.read_bytes().splitlines()]
    decode = msgspec.json.Decoder().decode

    def decoded():
        for line in lines:
            decode(line)

    def tables():
        kept = TablesKept(bench)
        return sum(len(frame(kept.page(form.name))) for form in ENTERED)

    found = {"lines": len(lines), "bytes": sum(map(len, lines)), "decode": min(both(decoded)[1:] for _ in range(3))}
    with_kept = both(tables)
    found |= {"kept too": with_kept[1:], "rows": with_kept[0]}
    keep = TablesKept._keep
    TablesKept._keep = lambda *_: None
    tables_kept.Shelf.of = lambda *_: {}
    found["tables"] = min(both(tables)[1:] for _ in range(2))
    TablesKept._keep = keep
    return found


def built(folder: str) -> dict:
    """Peak of memory [GB] of all as-entered tables from nothing."""
    from pentools.books.tables.forms import ENTERED
    from pentools.books.tables.ledger import ledger

    book = ledger(folder)
    frames = [book._kept.page("jobs"), *(book[form.name] for form in ENTERED if form.name != "jobs")]
    return {"peak": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6, "tables": len(frames)}


def opened(folder: str) -> dict:
    """From what is kept: the ledger and each table of what was entered; then after one new entry."""
    import pandas as pd  # noqa: F401

    from pentools.books.tables import kept_pages as tables_kept
    from pentools.books.tables.forms import ENTERED
    from pentools.books.tables.ledger import ledger
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import jobs_on, open_job

    names = [form.name for form in ENTERED if form.name != "jobs"]
    book, *opening = both(lambda: ledger(folder))
    _, *entries = both(lambda: book.entries)
    _, *rest = both(lambda: [book[name] for name in names])
    bench = open_bench_folder(folder)
    open_job(jobs_on(bench)[len(jobs_on(bench)) // 2], bench=bench).add("work log", "note", {"note": "one more"})
    read = []
    pages = tables_kept.pages_of
    tables_kept.pages_of = lambda bench, some, *more: read.extend(some) or pages(bench, some, *more)
    _, *again = both(lambda: ledger(folder))
    return {
        "opening": opening,
        "entries": entries,
        "the other tables": rest,
        "one entry more": again,
        "read for it": len(read),
    }


def worked(folder: str) -> dict:
    """What is worked out: fillings, findings and the table of jobs, from nothing and from what is kept."""
    from pentools.books.tables.ledger import ledger

    found = {}
    for turn in ("from nothing", "kept"):
        book = ledger(folder)
        for name in ("fillings", "findings", "jobs"):
            found[f"{name}, {turn}"] = both(lambda name=name, book=book: book[name])[1:]
    return found


def apart(what: str, folder: Path, kept: Path) -> dict:
    done = subprocess.run(
        [sys.executable, __file__, "--part", what, str(folder)],
        env=os.environ | {"PENTOOLS_KEPT": str(kept)}, check=True, capture_output=True, text=True,
    )  # fmt: skip
    return json.loads(done.stdout)


def report(folder: Path, jobs: int) -> float:
    from pentools.books.invented.bench import invent_bench

    bench = folder / f"b{jobs}"
    if not bench.exists():
        invent_bench(bench, jobs, entries=LINES, seed=3)
    kept = folder / f"kept-{jobs}"
    shutil.rmtree(kept, ignore_errors=True)
    told = apart("measured", bench, kept)
    base, tables, too = told["decode"], told["tables"], told["kept too"]
    print(f"{jobs:,} jobs, {told['lines']:,} lines, {told['bytes'] / 1e6:.0f} MB; {told['rows']:,} rows in the tables")
    for place, how in enumerate(("clock", "processor")):
        print(
            f"  by the {how:<9} decode {base[place]:6.2f} s, tables {tables[place]:6.2f} s, ratio {tables[place] / base[place]:.2f} "
            f"(wanted: at most 2.50); kept ready too {too[place]:6.2f} s, ratio {too[place] / base[place]:.2f}"
        )
    shown = apart("opened", bench, kept)
    for name, took in shown.items():
        print(f"  kept: {name} {took if isinstance(took, int) else f'{took[0]:.2f} s (processor {took[1]:.2f} s)'}")
    shutil.rmtree(kept)
    print(f"  peak of memory {apart('built', bench, kept)['peak']:.2f} GB (wanted: under 4)")
    if jobs <= 1000:
        for name, took in apart("worked", bench, kept).items():
            print(f"  worked out: {name} {took[0]:.2f} s, {1000 * took[0] / jobs:.2f} ms a job")
    shutil.rmtree(kept)
    return tables[1] / jobs


def main(folder: Path, sizes: list[int]) -> None:
    each = [report(folder, jobs) for jobs in sizes]
    for jobs, one in zip(sizes[1:], each[1:], strict=True):
        print(f"time a job at {jobs:,} against {sizes[0]:,}: {one / each[0]:.2f} (wanted: 0.85 to 1.15)")


if __name__ == "__main__":
    if sys.argv[1:2] == ["--part"]:
        print(json.dumps(globals()[sys.argv[2]](sys.argv[3])))
    elif len(sys.argv) > 1:
        main(Path(sys.argv[1]), [int(word) for word in sys.argv[2:]] or [1000, 10_000])
    else:
        with tempfile.TemporaryDirectory() as place:
            main(Path(place), [1000, 10_000])
