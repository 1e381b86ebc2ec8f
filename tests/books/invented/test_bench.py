"""An invented bench is whole, the same for a seed, and what is told as true of it is what its records say."""

import datetime as dt
import statistics

import pytest

from pentools.books.invented.bench import TRUTH_NAME, Rates, invent_bench, read_truth
from pentools.books.queue.queue import queue_on
from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.came_with import lead_of
from pentools.record.entries import WITHDRAWAL
from pentools.record.job import jobs_on, open_job
from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, REQUEST
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.weighing.filling import capacity_of


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("invented") / "bench"
    truth = invent_bench(folder, 80, seed=5)
    return truth, open_bench_folder(folder)


@pytest.fixture(scope="module")
def jobs(made):
    truth, bench = made
    return [(pen, open_job(pen.job, bench=bench)) for pen in truth.pens]


def test_there_are_as_many_jobs_as_asked_and_the_truth_lies_beside_them(made):
    truth, bench = made
    assert jobs_on(bench) == tuple(sorted(pen.job for pen in truth.pens))
    assert len(truth.pens) == 80
    assert read_truth(bench.folder) == truth


def test_the_same_seed_makes_the_same_bench_byte_for_byte(made, tmp_path):
    truth, bench = made
    assert invent_bench(tmp_path / "again", 80, seed=5) == truth
    files = sorted(path.relative_to(bench.folder) for path in bench.folder.rglob("*") if path.is_file())
    assert [(bench.folder / path).read_bytes() for path in files] == [
        (tmp_path / "again" / path).read_bytes() for path in files
    ]
    assert invent_bench(tmp_path / "other", 80, seed=6).pens != truth.pens


def test_every_line_is_of_a_known_kind_and_reads_back(jobs):
    for _, job in jobs:
        assert job.record.problems == []
        for entry in job.record.entries:
            if entry.kind == WITHDRAWAL:
                continue
            kind = find_stage(entry.stage).kind(entry.kind)
            assert set(entry.data) <= {field.name for field in kind.fields}, entry
            values = kind.decode(entry)
            texts = {field.name: field.typed(getattr(values, field.name)) for field in kind.fields}
            again, errors = kind.read(texts)
            assert errors == {}
            assert kind.to_json(again) == entry.data
        times = [entry.time for entry in job.record.entries]
        assert times == sorted(times)


def test_nothing_matters_in_them_but_pictures_and_what_is_still_to_do_and_the_usual_cautions(jobs):
    for pen, job in jobs:
        found = {finding.key for finding in review(job) if finding.level in ("warning", "stop")}
        assert found <= {"job.owed:ended", "job.owed:open", "finish.caution", "finish.wheel"}, (pen.job, found)


def test_what_is_true_of_a_pen_stands_in_its_record(jobs):
    ended = 0
    for pen, job in jobs:
        arrival = job.newest(ARRIVAL)
        assert (arrival.system, arrival.material, arrival.arrived_on) == (pen.system, pen.material, pen.arrived_on)
        assert job.newest(OWNER).owner == pen.owner
        assert job.newest(REQUEST).work == pen.work
        assert (job.newest(RETURN).older or "", lead_of(job) or "") == (pen.again_of, pen.lead)
        if job.newest(RESULT).ending is None:
            continue
        ended += 1
        assert job.newest(RESULT).ending == pen.ending
        if pen.ending in ("stopped", "returned"):
            continue
        assert {activity: minutes for activity, minutes in minutes_by_activity(job).items() if minutes} == pen.minutes
        assert job.newest(RESULT).price == f"{pen.price} EUR"
        assert {m.values.lot for m in job.log(MATERIAL) if m.values.way == "added"} == ({pen.lot} if pen.lot else set())
    assert ended > 50


def test_the_kit_finds_the_true_share_and_the_true_capacity_again(jobs):
    off = []
    for pen, job in jobs:
        answer = capacity_of(job) if pen.share is not None else None
        if answer is None:
            continue
        assert answer.data["volume_ml"] == pytest.approx(pen.share * pen.holds_ml, abs=0.025)
        off.append(answer.data["share_filled"] / pen.share)
    assert len(off) > 40
    assert statistics.mean(off) == pytest.approx(1.0, abs=0.01)


def test_so_many_lines_as_asked(tmp_path):
    truth = invent_bench(tmp_path / "b", 6, seed=2, entries=120)
    bench = open_bench_folder(tmp_path / "b")
    for pen in truth.pens:
        job = open_job(pen.job, bench=bench)
        assert len(job.record.entries) == 120
        assert job.record.problems == []
        assert not [
            f for f in review(job) if f.level in ("warning", "stop") and not f.key.startswith(("job.owed", "finish."))
        ]


def test_what_cannot_be_made_is_said(tmp_path):
    with pytest.raises(InputError, match="pens must be 1 to"):
        invent_bench(tmp_path / "b", 0)
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "bench.toml").write_text("")
    with pytest.raises(InputError, match="empty or not there yet"):
        invent_bench(tmp_path / "mine", 3)
    with pytest.raises(RecordError, match=TRUTH_NAME):
        read_truth(tmp_path / "mine")


def test_the_queue_knows_pens_in_every_state(tmp_path):
    rates = Rates(unanswered=0.3, uncollected=0.3, waits=0.5, promised=1.0)
    truth = invent_bench(tmp_path / "b", 150, seed=8, rates=rates)
    lines = queue_on(open_bench_folder(tmp_path / "b"), dt.date.fromisoformat(truth.until))
    assert {"bench", "owner", "part", "posting", "ended"} <= {line.state for line in lines}
    assert any(line.promised_by for line in lines)
    assert any(line.parcel for line in lines)
