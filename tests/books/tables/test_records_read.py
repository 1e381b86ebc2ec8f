"""Many records read together: what cannot be read is told with its reason, and stands in nobody's way."""

import pytest

from pentools.books.tables.records_read import read_lines_of
from pentools.record.folders import links_on
from pentools.record.job import create_job, jobs_on
from pentools.record.stages.job.intake_kinds import ARRIVAL


@pytest.fixture
def spoilt(bench):
    (bench.folder / "d-folder" / "record.jsonl").mkdir(parents=True)
    (bench.folder.parent / "outside").mkdir()
    (bench.folder / "e-link").symlink_to(bench.folder.parent / "outside")
    (bench.folder / "e-link" / "record.jsonl").touch()
    (bench.folder / "f odd name").mkdir()
    (bench.folder / "f odd name" / "record.jsonl").touch()
    (bench.folder / "g-notebook").mkdir()
    (bench.folder / "g-notebook" / "g-notebook.ipynb").touch()
    with create_job(bench, "h-torn").record.path.open("ab") as file:
        file.write(b'{"id":"torn')
    return bench


def test_a_job_that_cannot_be_read_is_told_with_its_reason(spoilt):
    lines = read_lines_of(spoilt, jobs_on(spoilt), [ARRIVAL], links_on(spoilt))
    assert lines.names == ["a-first", "b-second", "c-torn", "g-notebook", "h-torn"]
    assert list(lines.unread) == ["d-folder", "e-link", "f odd name"]
    assert "is no file" in lines.unread["d-folder"]
    assert "link" in lines.unread["e-link"]
    assert [lines.records[job].plain for job in (0, 1, 2, 4)] == [True, True, True, False]
    rows = lines.logs(ARRIVAL)
    assert [lines.names[job] for job in lines.job[rows.rows]] == ["a-first", "b-second", "c-torn"]
    assert [form.pen for form in rows.forms] == ["the a-first pen", "the b-second pen", "the c-torn pen"]


def test_a_corrected_entry_keeps_its_turn_and_has_its_own_line(bench):
    job = create_job(bench, "z")
    first = job.add("intake", "arrival", {"pen": "one"})
    job.add("intake", "arrival", {"pen": "two"})
    job.add("intake", "arrival", {"pen": "one, corrected"}, replaces=first.id)
    job.withdraw(job.add("intake", "arrival", {"pen": "three"}), "a slip of the pen")
    lines = read_lines_of(bench, ["b-second", "z"], [ARRIVAL])
    log = lines.logs(ARRIVAL)
    assert [form.pen for form in log.forms][:1] == ["the b-second pen"]
    assert [form.pen for form in log.forms][1:] == [logged.values.pen for logged in job.log(ARRIVAL)]
    assert lines.line[log.rows].tolist()[1:] == [job.line_of(logged.entry) + 1 for logged in job.log(ARRIVAL)]
    assert log.turns.tolist() == sorted(log.turns.tolist())


def test_no_jobs_are_no_lines(bench):
    assert len(read_lines_of(bench, [], [ARRIVAL]).entries) == 0
