"""Every job in tidy tables: lazily made, by attribute and as a mapping, a damaged job in nobody's way."""

import pandas as pd
import pytest

from pentools import InputError, ledger
from pentools.books.tables import ledger as module
from pentools.books.tables.forms import TABLES
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
from pentools.record.stages.weighing.filling import capacity_of

SAMPLES = ("green-piston", "lever-with-limits", "short-breather")


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def samples(bench):
    for name in SAMPLES:
        create_job(bench, name, sample=name)
    create_job(bench, "zz-new").add("intake", "arrival", {"pen": "just arrived"})
    return bench.folder


def test_samples_side_by_side(samples):
    table = ledger(samples).jobs.set_index("job")
    assert list(table.index) == [*SAMPLES, "zz-new"]
    assert table.loc["green-piston", "ending"] == "done"
    assert table.loc["lever-with-limits", "limits"] == 3
    assert table.loc["short-breather", "system"] == "diaphragm-pump"
    assert table["hours"].iloc[:3].between(2, 20).all()
    assert table["share_filled"].iloc[:3].between(0.7, 1.1).all()
    assert table.loc["zz-new", ["hours", "volume_ml", "ending", "unread"]].isna().all()


def test_what_a_pen_draws_is_what_its_last_filling_comes_to(samples):
    jobs = ledger(samples).jobs.set_index("job")
    for name in SAMPLES:
        told = capacity_of(open_job(name, bench=open_bench_folder(samples))).data
        for column in ("volume_ml", "expanded_uncertainty_ml", "share_filled"):
            assert jobs.loc[name, column] == told[column]


def test_tables_by_name_and_as_a_mapping_made_when_they_are_asked_for(samples, monkeypatch):
    made = []
    monkeypatch.setattr(module, "frame", lambda page, _made=made, _frame=module.frame: _made.append(1) or _frame(page))
    book = ledger(samples)
    assert made == []
    assert book.entries is book["entries"]
    assert len(made) == 1
    assert tuple(book) == book.tables == tuple(TABLES)
    assert len(book) == 14
    assert {"jobs", "parts", "unread"} <= set(dir(book))
    assert "4 jobs" in repr(book)
    with pytest.raises(InputError, match="one of jobs"):
        book["pens"]
    with pytest.raises(AttributeError, match="no pens"):
        _ = book.pens


def test_entries_can_be_laid_to_every_table_by_job_and_line(samples):
    book = ledger(samples)
    entries = book.entries
    assert (entries.groupby("job", observed=True)["line"].max() == book.jobs.set_index("job")["entries"]).all()
    for name in ("weighings", "seals", "parts", "minutes", "limits"):
        table = book[name]
        laid = table.merge(entries, on=["job", "line", "at_utc", "day"], how="left", validate="one_to_one")
        assert len(laid) == len(table) > 0
        assert laid["counts"].all()


def test_the_meaning_of_every_column_is_told(samples):
    book = ledger(samples, with_owners=True)
    for name in book:
        told = book.columns(name)
        assert list(told["column"]) == list(book[name])
        assert list(told["dtype"].str.partition(" (")[0]) == [str(dtype) for dtype in book[name].dtypes]
        assert told["means"].str.len().gt(2).all()


def test_owners_are_left_out_unless_asked_for(samples):
    assert "owner" not in ledger(samples).jobs
    assert ledger(samples, with_owners=True).jobs["owner"].notna().sum() == 3


def test_an_empty_bench(bench):
    book = ledger(bench.folder)
    assert all(len(book[name]) == 0 for name in book)
    assert book.unread == {}


def test_a_job_that_cannot_be_read_has_a_row_with_its_name_and_the_reason(bench):
    create_job(bench, "pen-a").add("intake", "arrival", {"pen": "a pen"})
    (create_job(bench, "pen-b").folder / "record.jsonl").mkdir()
    book = ledger(bench.folder)
    table = book.jobs.set_index("job")
    assert table.loc["pen-a", "pen"] == "a pen"
    assert table.loc["pen-b"].drop("unread").isna().all()
    assert "is no file" in table.loc["pen-b", "unread"]
    assert book.unread == {"pen-b": table.loc["pen-b", "unread"]}
    assert isinstance(table["limits"].dtype, pd.Int64Dtype)
    assert "1 of them unread" in repr(book)
