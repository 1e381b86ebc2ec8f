"""``pentools unarchive``: laid, laid under another name, the same already, or taken over."""

import json

import pytest

from pentools.books.exchange.archive import archive_job
from pentools.cli import main
from pentools.exits import EXIT_OK, EXIT_RECORD
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, jobs_on, open_job


@pytest.fixture
def zipped(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "there", create=True), "lever", sample="lever-back-again")
    archive_job(job, tmp_path / "lever.zip")
    return tmp_path / "lever.zip"


@pytest.fixture
def run(tmp_path, zipped):
    return lambda *words: main(["--bench", str(tmp_path / "here"), "unarchive", str(zipped), *words])


def test_it_is_laid_on_a_bench_that_is_made_if_need_be(run, tmp_path, capsys):
    assert run() == EXIT_OK
    assert "pentools open lever" in capsys.readouterr().out
    assert (tmp_path / "here" / "bench.toml").is_file()
    assert run() == EXIT_OK
    assert "here already" in capsys.readouterr().out
    assert run("--as", "lever-2", "--json") == EXIT_OK
    told = json.loads(capsys.readouterr().out)
    assert (told["job"], told["did"], told["files"]) == ("lever-2", "laid", 4)
    assert jobs_on(open_bench_folder(tmp_path / "here")) == ("lever", "lever-2")


def test_a_job_that_went_on_here_is_not_touched_unless_it_is_to_be_merged(run, tmp_path, zipped, capsys):
    run()
    there = open_job("lever", bench=open_bench_folder(tmp_path / "there"))
    there.add("work log", "note", {"note": "there"})
    zipped.unlink()
    archive_job(there, zipped)
    assert run() == EXIT_RECORD
    assert "--merge" in capsys.readouterr().err
    assert run("--merge", "--json") == EXIT_OK
    told = json.loads(capsys.readouterr().out)
    assert (told["job"], told["did"], told["added"]) == ("lever", "merged", 1)
    here = open_job("lever", bench=open_bench_folder(tmp_path / "here"))
    assert here.record.live("work log", "note")[-1].data == {"note": "there"}
    assert run("--merge") == EXIT_OK
    assert "0 entries taken over" in capsys.readouterr().out


def test_another_pen_of_that_name_is_never_merged(run, tmp_path, capsys):
    create_job(open_bench_folder(tmp_path / "here", create=True), "lever").add("intake", "arrival", {"pen": "another"})
    assert run("--merge") == EXIT_RECORD
    assert "another pen" in capsys.readouterr().err
    assert len(open_job("lever", bench=open_bench_folder(tmp_path / "here")).record.entries) == 1
