"""The ledger on other engines, and on a shared folder: the same tables, whoever reads and whoever writes."""

import subprocess
import sys
import warnings
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pandas as pd
import pytest

from pentools import ledger
from pentools.books.invented.bench import invent_bench
from pentools.books.tables import kept_pages as tables_kept
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job


@pytest.fixture
def bench(tmp_path, monkeypatch):
    """Ten invented pens, one of which cannot be read."""
    monkeypatch.setattr(tables_kept, "AT_ONCE", 4)
    invent_bench(tmp_path / "bench", 10, seed=4)
    (tmp_path / "bench" / "zz-folder" / "record.jsonl").mkdir(parents=True)
    return tmp_path / "bench"


def kept_in(monkeypatch, folder):
    """From here on what is kept lies in a folder of its own, as on another machine."""
    monkeypatch.setenv("PENTOOLS_KEPT", str(folder))


def same(one, other):
    for name in one:
        pd.testing.assert_frame_equal(one[name], other[name], obj=name)
    assert one.unread == other.unread
    assert list(one.unread) == ["zz-folder"]


def test_a_pool_of_processes_gives_the_same_tables(bench, tmp_path, monkeypatch):
    kept_in(monkeypatch, tmp_path / "here")
    here = ledger(bench)
    tables = {name: here[name] for name in here}
    kept_in(monkeypatch, tmp_path / "there")
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as pool:
        other = ledger(bench, executor=pool)
        assert {name: len(other[name]) for name in other} == {name: len(table) for name, table in tables.items()}
        same(here, other)


def test_an_executor_of_dask_gives_the_same_tables(bench, tmp_path, monkeypatch):
    kept_in(monkeypatch, tmp_path / "here")
    here = ledger(bench)
    assert len(here.findings) > 0
    kept_in(monkeypatch, tmp_path / "there")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what the cluster says of its own ports and loops is not ours
        from distributed import Client, LocalCluster

        with (
            LocalCluster(n_workers=1, threads_per_worker=2, processes=False, dashboard_address=None) as cluster,
            Client(cluster) as client,
        ):
            other = ledger(bench, executor=client.get_executor())
            assert len(other.fillings) == len(here.fillings)
            same(here, other)


WRITER = """
import sys
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
bench = open_bench_folder(sys.argv[1])
for number in range(int(sys.argv[3])):
    for name in ("both", sys.argv[2]):
        open_job(name, bench=bench).add("work log", "work", {"activity": "seal", "minutes": "1 min", "done": f"{sys.argv[2]} {number}"})
"""
READER = """
import os, sys
os.environ["PENTOOLS_KEPT"] = sys.argv[2]
from pentools import ledger
counts = []
for _ in range(int(sys.argv[3])):
    book = ledger(sys.argv[1])
    assert not book.unread, book.unread
    minutes, entries = book.minutes, book.entries
    assert len(minutes) == len(entries) == book.jobs["entries"].sum()
    assert book.jobs["minutes"].fillna(0).sum() == len(minutes)
    counts.append(len(minutes))
assert counts == sorted(counts), counts
"""


def test_a_shared_folder_with_several_machines_at_work(tmp_path, monkeypatch):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    for name in ("both", "one", "two"):
        create_job(bench, name)
    rounds = 12
    writers = [[WRITER, bench.folder, name, rounds] for name in ("one", "two")]
    readers = [[READER, bench.folder, tmp_path / f"machine-{number}", 5] for number in (1, 2, 2)]
    started = [
        subprocess.Popen([sys.executable, "-c", *map(str, words)], stderr=subprocess.PIPE, text=True)
        for words in (*writers, *readers)
    ]
    said = [process.communicate(timeout=120)[1] for process in started]
    assert [process.returncode for process in started] == [0] * 5, said
    for number in (1, 2):
        kept_in(monkeypatch, tmp_path / f"machine-{number}")
        book = ledger(bench.folder)
        assert book.entries.groupby("job", observed=True).size().to_dict() == {"both": 24, "one": 12, "two": 12}
        told = book.minutes[book.minutes["job"] == "both"]["done"]
        for name in ("one", "two"):
            mine = [text for text in told if text.startswith(name)]
            assert mine == [f"{name} {number}" for number in range(rounds)]
        assert book.entries["entry"].is_unique
    assert len(open_job("both", bench=bench).record.entries) == 24
