"""The ledger shown and written by the command line."""

import json

import pandas as pd
import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    create_job(bench, "green-piston", sample="green-piston")
    job = create_job(bench, "pen-b")
    job.add("intake", "owner", {"owner": "Tamsin Oldacre", "contact": "by letter"})
    job.add("intake", "arrival", {"pen": '=HYPERLINK("x")', "system": "piston"})
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "price": "38.50 EUR"})
    (bench.folder / "z-folder" / "record.jsonl").mkdir(parents=True)
    return bench.folder


def said(capsys, *words):
    assert main([str(word) for word in words]) == 0
    return capsys.readouterr().out


def test_a_short_table_of_jobs_with_those_that_cannot_be_read(bench, capsys):
    lines = said(capsys, "ledger", "--bench", bench).splitlines()
    assert lines[0].split()[:3] == ["job", "pen", "system"]
    assert "green-piston" in lines[1]
    assert "piston" in lines[2]
    assert lines[-1].startswith("z-folder cannot be read:")
    assert "Oldacre" not in "".join(lines)
    assert max(map(len, lines[:3])) < 160


def test_another_table_and_an_empty_one(bench, capsys):
    lines = said(capsys, "ledger", "--table", "entries", "--bench", bench).splitlines()
    assert "stage" in lines[0]
    assert "more: --csv" in "".join(lines)
    assert said(capsys, "ledger", "--table", "abrasives", "--bench", bench).startswith("There is nothing in it yet.")
    assert main(["ledger", "--table", "pens", "--bench", str(bench)]) == 2
    assert "one of jobs, entries" in capsys.readouterr().err


def test_json_has_the_rows_with_numbers_as_numbers_and_none_where_nothing_is(bench, capsys):
    told = json.loads(said(capsys, "--bench", bench, "ledger", "--json"))
    assert told["table"] == "jobs"
    assert list(told["unread"]) == ["z-folder"]
    row = {row["job"]: row for row in told["rows"]}["pen-b"]
    assert (row["price"], row["currency"], row["hours"], row["share_filled"]) == (38.5, "EUR", None, None)
    assert row["pen"] == '=HYPERLINK("x")'
    assert "owner" not in row
    told = json.loads(said(capsys, "ledger", "--json", "--with-owners", "--bench", bench))
    assert {row["owner"] for row in told["rows"]} >= {"Tamsin Oldacre", None}


def test_files_are_written_and_written_anew_with_a_word(bench, capsys, tmp_path):
    path = tmp_path / "jobs.csv"
    assert said(capsys, "ledger", "--csv", path, "--bench", bench).startswith(f"{path} is written: jobs, 3 rows.")
    assert "is written anew" in said(capsys, "ledger", "--csv", path, "--bench", bench)
    table = pd.read_csv(path).set_index("job")
    assert table.loc["pen-b", "pen"] == '\'=HYPERLINK("x")'
    assert "owner" not in table
    said(capsys, "ledger", "--excel", tmp_path / "all.xlsx", "--bench", bench)
    assert len(pd.read_excel(tmp_path / "all.xlsx", sheet_name=None)) == 14
    assert "parts.parquet is written" in said(
        capsys, "ledger", "--table", "parts", "--parquet", tmp_path / "out", "--bench", bench
    )
    assert [file.name for file in (tmp_path / "out").iterdir()] == ["parts.parquet"]


def test_two_ways_at_once_and_a_name_of_another_ending_are_refused(bench, capsys, tmp_path):
    with pytest.raises(SystemExit):
        main(["ledger", "--csv", "a.csv", "--json", "--bench", str(bench)])
    assert main(["ledger", "--csv", str(bench / "bench.toml"), "--bench", str(bench)]) == 2
    assert ".csv" in capsys.readouterr().err
