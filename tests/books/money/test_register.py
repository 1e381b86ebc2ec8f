"""The sequence of numbers: no gap and no double, with several processes at once, a job moved away, a register spoilt."""

import csv
import datetime as dt
import multiprocessing
import shutil

import pytest
from books.billing import bench_that_bills, pen

from pentools.books.money import register
from pentools.books.money.invoice import give_invoice
from pentools.books.money.register import REGISTER, heal, numbers_given
from pentools.errors import RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job

DAY = dt.date(2026, 3, 30)


def give_all(folder, names):
    bench = open_bench_folder(folder)
    for name in names:
        give_invoice(open_job(name, bench=bench), DAY)


def places(bench):
    return [one.place for one in numbers_given(bench)]


def test_two_processes_leave_no_gap_and_no_double(tmp_path):
    bench = bench_that_bills(tmp_path)
    names = [f"pen-{number}" for number in range(8)]
    for name in names:
        pen(bench, name)
    spawn = multiprocessing.get_context("spawn")
    # both are asked for half of them, and both for two the same
    shares = (names[:5], names[3:])
    workers = [spawn.Process(target=give_all, args=(tmp_path, share)) for share in shares]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join(120)
        assert worker.exitcode == 0
    assert places(bench) == list(range(1, 9))
    rows = list(csv.reader((tmp_path / REGISTER).read_text().splitlines()))
    assert [row[0] for row in rows] == ["place", *map(str, range(1, 9))]
    assert sorted(row[3] for row in rows[1:]) == names


def test_while_another_program_gives_a_number_nobody_else_does(tmp_path, monkeypatch):
    bench = bench_that_bills(tmp_path)
    job = pen(bench, "a")
    monkeypatch.setattr(register, "LOCK_SECONDS", 0.2)
    with register.sequence_held(bench), pytest.raises(RecordError, match="no number was used"):
        give_invoice(job, DAY)
    assert not job.record.live("agree", "invoice")
    give_invoice(job, DAY)
    assert places(bench) == [1]


def test_a_job_moved_away_leaves_its_number_used(tmp_path):
    bench = bench_that_bills(tmp_path)
    give_all(tmp_path, [pen(bench, "a").name, pen(bench, "b").name])
    shutil.rmtree(tmp_path / "b")
    give_all(tmp_path, [pen(bench, "c").name])
    assert [(one.place, one.job) for one in numbers_given(bench)] == [(1, "a"), (2, "b"), (3, "c")]


def test_a_register_that_is_gone_or_spoilt_is_written_again_from_the_records(tmp_path):
    bench = bench_that_bills(tmp_path, 'rate_per_hour = 30\nfirst_invoice = 40\ninvoice_number = "=#"\n')
    give_all(tmp_path, [pen(bench, "a").name])
    (tmp_path / REGISTER).unlink()
    give_all(tmp_path, [pen(bench, "b").name])
    assert places(bench) == [40, 41]
    assert (tmp_path / REGISTER).read_text().splitlines()[1].startswith("40,'=40,2026-03-30,a,")
    (tmp_path / REGISTER).write_bytes(b"\xff\xfe nothing\n")
    assert places(bench) == [40, 41]
    heal(bench, numbers_given(bench))
    assert (tmp_path / REGISTER).read_bytes().count(b"2026-03-30") == 2


def test_a_number_withdrawn_is_used_all_the_same(tmp_path):
    bench = bench_that_bills(tmp_path)
    job = pen(bench, "a")
    give_all(tmp_path, ["a"])
    job = open_job("a", bench=bench)
    job.withdraw(job.record.live("agree", "invoice")[0], "sent to the wrong owner")
    (tmp_path / REGISTER).unlink()
    give_all(tmp_path, ["a"])
    assert places(bench) == [1, 2]
