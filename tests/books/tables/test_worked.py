"""What is worked out for the tables is what the sums and the check say, and rests on the record alone."""

import datetime as dt

from books.by_the_careful_reader import rows_of

from pentools.books.asked import Told
from pentools.books.tables.worked import DRAWN, FILLINGS, FINDINGS, Drawn, worked_page
from pentools.record.bench import open_bench_folder
from pentools.record.entries import now
from pentools.record.job import create_job, job_in
from pentools.record.review import on_record, review
from pentools.record.stages.weighing.filling import capacity_of, cycles


def sample(tmp_path, name):
    return create_job(open_bench_folder(tmp_path, create=True), name, sample=name)


def test_each_filling_comes_to_what_the_sum_says(tmp_path):
    job = sample(tmp_path, "short-breather")
    told = FILLINGS.of(job)
    assert len(told.rows) == len(cycles(job)) > 2
    for row, cycle in zip(told.rows, cycles(job), strict=True):
        data = capacity_of(job, cycle).data
        for name in row.__struct_fields__[4:]:
            assert getattr(row, name) == data[name]
        assert (row.start, row.system, row.weighings) == (
            cycle.start,
            "diaphragm-pump",
            len(cycle.empty) + len(cycle.filled),
        )
    page = worked_page("fillings", Told({job.name: told}, {}))
    assert rows_of(page)[1]["share_filled"] == told.rows[1].share_filled
    assert [row["number"] for row in rows_of(page)] == [1, 2, 3, 4][: len(told.rows)]
    last = told.rows[-1]
    assert DRAWN.of(job) == Drawn(last.volume_ml, last.expanded_uncertainty_ml, last.share_filled)


def test_weighings_that_contradict_each_other_leave_their_columns_empty(tmp_path):
    job = create_job(open_bench_folder(tmp_path, create=True), "pen")
    for state, mass in (("dry", "20.30"), ("filled", "18.10")):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    assert DRAWN.of(job) == Drawn()
    [row] = FILLINGS.of(job).rows
    assert (row.volume_ml, row.share_filled, row.weighings) == (None, None, 2)


def test_findings_are_those_of_the_check_without_the_files_and_the_report(tmp_path):
    job = sample(tmp_path, "lever-with-limits")
    told = [(row.level, row.subject, row.topic, row.text) for row in FINDINGS.of(job).rows]
    wanted = [(f.level, f.key.partition(".")[0], f.topic, f.text) for f in review(job)]
    left_out = [one for one in wanted if one not in told]
    assert told
    assert set(told) <= set(wanted)
    assert {topic for *_, topic, _ in left_out} <= {
        "report-must",
        "report-should",
        "rights",
        "copy",
        "aside",
        "photo-missing",
    }


def test_no_file_beside_the_record_and_no_clock_changes_a_finding(tmp_path, monkeypatch):
    job = sample(tmp_path, "green-piston")
    job.add("clean", "soak started", {"part": "nib", "bath": "alcohol", "limit": "10 min"})
    before = FINDINGS.of(job_in(job.folder))
    for path in (*job.folder.glob("photos/*"), *job.folder.glob("*.ipynb")):
        path.unlink()
    (job.folder / "record-copy.jsonl").touch()
    create_job(job.bench, "another", sample="syringe-ladder")
    later = now() + dt.timedelta(days=400)
    monkeypatch.setattr("pentools.record.entries._AT", _Fixed(later))
    assert FINDINGS.of(job_in(job.folder)) == before
    assert on_record(job)


def test_the_clock_stands_at_the_newest_entry(tmp_path, monkeypatch):
    job = sample(tmp_path, "green-piston")
    seen = []
    monkeypatch.setattr("pentools.books.tables.worked.on_record", lambda alone: seen.append(now()) or ())
    FINDINGS.of(job)
    assert seen == [max(entry.time for entry in job.record.entries)]


class _Fixed:
    """A clock that says one time unless it is set."""

    def __init__(self, moment):
        self.moment, self.held = moment, None

    def get(self):
        return self.held or self.moment

    def set(self, moment):
        before, self.held = self.held, moment
        return before

    def reset(self, before):
        self.held = before
