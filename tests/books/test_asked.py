"""What is kept of a job holds as long as its record, the bench and the kit stand as they are, and stands in nobody's way."""

import os
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import msgspec
import pytest

from pentools.books import kept
from pentools.books.asked import Question, ask_bench
from pentools.books.kept import Shelf
from pentools.errors import RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
from pentools.record.stages.job.intake_kinds import ARRIVAL


class Pen(msgspec.Struct, frozen=True):
    pen: str
    read_by: int


def _pen_of(job):
    if job.name == "c-torn":
        raise ZeroDivisionError
    return Pen(job.newest(ARRIVAL).pen or "", os.getpid())


PEN = Question("pen", Pen, _pen_of)


def asked(bench, monkeypatch, **with_what):
    """The answers and which jobs were read for them."""
    read = []

    def watched(name, *, bench):
        read.append(name)
        return open_job(name, bench=bench)

    monkeypatch.setattr("pentools.books.asked.open_job", watched)
    return ask_bench(bench, PEN, **with_what), read


def test_each_job_is_read_once_a_state_of_its_record(bench, monkeypatch):
    told, read = asked(bench, monkeypatch)
    assert {name: one.pen for name, one in told.answers.items()} == {
        "a-first": "the a-first pen",
        "b-second": "the b-second pen",
    }
    assert list(told.unread) == ["c-torn"]
    assert "ZeroDivisionError" in told.unread["c-torn"]
    assert read == ["a-first", "b-second", "c-torn"]
    assert asked(bench, monkeypatch) == (told, [])
    open_job("b-second", bench=bench).add("intake", "arrival", {"pen": "blue"})
    told, read = asked(bench, monkeypatch)
    assert read == ["b-second"]
    assert told.answers["b-second"].pen == "blue"


def test_only_those_are_asked_that_are_named_and_the_others_are_kept(bench, monkeypatch):
    asked(bench, monkeypatch)
    open_job("a-first", bench=bench).add("intake", "arrival", {"pen": "blue"})
    told, read = asked(bench, monkeypatch, only={"b-second", "gone"})
    assert (list(told.answers), read) == (["b-second"], [])
    assert asked(bench, monkeypatch)[1] == ["a-first"]


def test_another_rate_or_another_kit_asks_again(bench, monkeypatch):
    asked(bench, monkeypatch)
    (bench.folder / "bench.toml").write_text("[money]\nrate_per_hour = 40\n")
    changed = open_bench_folder(bench.folder)
    assert len(asked(changed, monkeypatch)[1]) == 3
    assert asked(changed, monkeypatch)[1] == []
    monkeypatch.setattr(kept, "kit_mark", lambda: "another")
    assert len(asked(changed, monkeypatch)[1]) == 3


def test_a_job_that_went_is_let_go(bench, monkeypatch):
    asked(bench, monkeypatch)
    (bench.folder / "a-first").rename(bench.folder.parent / "away")
    assert list(asked(bench, monkeypatch)[0].answers) == ["b-second"]
    assert sorted(Shelf(bench).of("pen")) == ["b-second", "c-torn"]


def test_a_pool_of_processes_reads_them(bench):
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as pool:
        told = ask_bench(bench, PEN, executor=pool)
    assert [one.pen for one in told.answers.values()] == ["the a-first pen", "the b-second pen"]
    assert all(one.read_by != os.getpid() for one in told.answers.values())


def test_a_bench_that_is_not_there_is_said(tmp_path):
    with pytest.raises(RecordError, match="cannot be looked into"):
        ask_bench(open_bench_folder(tmp_path / "none"), PEN)
