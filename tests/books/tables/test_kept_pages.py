"""What is kept of the tables holds as long as a record stands as it is; a spoilt or a stale page loses nothing."""

import sqlite3
from concurrent.futures import Executor, Future

import pytest
from books.by_the_careful_reader import rows_of

from pentools.books.kept import Kept, Shelf
from pentools.books.tables import kept_pages as tables_kept
from pentools.books.tables.forms import ENTERED
from pentools.books.tables.kept_pages import TablesKept
from pentools.books.tables.pages import pages_of
from pentools.record.job import create_job, open_job


@pytest.fixture
def read(bench, monkeypatch):
    """Opens the tables; gives them back with the names of the jobs that were read for them."""
    monkeypatch.setattr(tables_kept, "AT_ONCE", 2)

    def told():
        names = []
        with monkeypatch.context() as patch:
            patch.setattr(
                tables_kept, "pages_of", lambda bench, some, *more: names.extend(some) or pages_of(bench, some, *more)
            )
            tables = TablesKept(bench)
            rows = {form.name: rows_of(tables.page(form.name)) for form in ENTERED}
        return rows, names, tables

    return told


def fresh(bench):
    return {
        table: rows_of(page)
        for table, page in pages_of(bench, sorted(p.parent.name for p in bench.folder.glob("*/record.jsonl")))[
            1
        ].items()
    }


def test_each_record_is_read_once_a_state_and_the_others_stay(bench, read):
    rows, names, _ = read()
    assert rows == fresh(bench)
    assert names == ["a-first", "b-second", "c-torn"]
    assert read()[:2] == (rows, [])
    open_job("b-second", bench=bench).add(
        "work log", "work", {"activity": "seal", "minutes": "10 min", "done": "a cork"}
    )
    again, names, _ = read()
    assert names == ["b-second"]
    assert again == fresh(bench) != rows
    assert read()[:2] == (again, [])


def test_jobs_that_come_and_go(bench, read):
    read()
    create_job(bench, "aa-new").add("intake", "arrival", {"pen": "new"})
    rows, names, tables = read()
    assert names == ["aa-new"]
    assert tables.names == ("a-first", "aa-new", "b-second", "c-torn")
    assert [row["job"] for row in rows["jobs"]] == list(tables.names)
    for name in ("a-first", "b-second"):
        (bench.folder / name).rename(bench.folder.parent / name)
    rows, names, _ = read()
    assert names == []
    assert rows == fresh(bench)


def test_a_job_that_cannot_be_read_is_told_each_time_until_it_can(bench, read):
    (bench.folder / "d-folder" / "record.jsonl").mkdir(parents=True)
    rows, _, tables = read()
    assert list(tables.unread) == ["d-folder"]
    assert "is no file" in tables.unread["d-folder"]
    assert "d-folder" not in {row["job"] for row in rows["jobs"]}
    _, names, tables = read()
    assert (names, list(tables.unread)) == ([], ["d-folder"])
    (bench.folder / "d-folder" / "record.jsonl").rmdir()
    open_job("d-folder", bench=bench).add("intake", "arrival", {"pen": "found"})
    rows, names, tables = read()
    assert (names, tables.unread) == (["d-folder"], {})
    assert rows == fresh(bench)


def spoilt(bench, change):
    with sqlite3.connect(Shelf(bench).path) as base:
        change(base)
    base.close()


@pytest.mark.parametrize("change", [
    lambda base: base.execute("UPDATE kept SET answer = substr(answer, 1, length(answer) - 3) WHERE question = 'table entries'"),
    lambda base: base.execute("UPDATE kept SET answer = x'00' WHERE question = 'table jobs'"),
    lambda base: base.execute("DELETE FROM kept WHERE question = 'table seals'"),
    lambda base: base.execute("UPDATE kept SET stamp = 'other' WHERE question = 'table minutes'"),
    lambda base: base.execute("UPDATE kept SET answer = x'c0' WHERE question = 'tables'"),
    lambda base: base.execute("UPDATE kept SET answer = (SELECT answer FROM kept WHERE question = 'table jobs') WHERE question = 'table entries'"),
    lambda base: base.execute("UPDATE kept SET answer = CAST(replace(hex(answer), 'A', 'B') AS BLOB) WHERE question LIKE 'table %'"),
])  # fmt: skip
def test_a_spoilt_page_is_read_anew(bench, read, change):
    rows = read()[0]
    spoilt(bench, change)
    open_job("c-torn", bench=bench).add("intake", "arrival", {"pen": "another"})
    again = read()[0]
    assert again == fresh(bench) != rows
    assert read()[:2] == (again, [])


def test_one_changed_bit_in_what_is_kept_is_seen(bench, read):
    rows = read()[0]
    shelf = Shelf(bench)
    for job, kept in shelf.of("table entries").items():
        answer = bytearray(kept.answer)
        answer[answer.index(b"at_utc") + 20] ^= 1
        shelf.put("table entries", {job: Kept(kept.stamp, bytes(answer))})
    assert read()[0] == rows


def test_a_file_that_is_none_is_done_without(bench, read):
    rows = read()[0]
    Shelf(bench).path.write_bytes(b"no base" * 500)
    assert read()[0] == rows


class AnotherMachine(Executor):
    """Does everything at once, and counts."""

    def __init__(self):
        self.asked = []

    def submit(self, call, /, *args, **kwargs):
        self.asked.append(args)
        done = Future()
        done.set_result(call(*args, **kwargs))
        return done


def test_an_executor_reads_what_must_be_read_in_parts(bench, monkeypatch):
    monkeypatch.setattr(tables_kept, "AT_ONCE", 2)
    other = AnotherMachine()
    assert rows_of(TablesKept(bench, other).page("jobs")) == fresh(bench)["jobs"]
    assert [args[1] for args in other.asked] == [["a-first", "b-second"], ["c-torn"]]
    assert len(TablesKept(bench, other).names) == 3
    assert len(other.asked) == 2


def test_an_empty_bench_has_empty_tables(bench):
    for path in bench.folder.glob("*/record.jsonl"):
        path.unlink()
        for file in path.parent.iterdir():
            if file.is_file():
                file.unlink()
    tables = TablesKept(bench)
    assert all(len(tables.page(form.name)["job"]) == 0 for form in ENTERED)
