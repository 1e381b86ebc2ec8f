"""A job's folder and its entries: nothing half written, nothing written over, nothing outside the bench."""

import pytest

from pentools.errors import InputError, RecordError
from pentools.record.job import create_job, job_folder, job_in, open_job
from pentools.record.stages.job.intake_kinds import ARRIVAL


def test_a_text_that_cannot_be_used_leaves_the_record_as_it_was(new_job):
    job = new_job()
    with pytest.raises(InputError, match="900 mm"):
        job.add("intake", "arrival", {"pen": "a pen", "barrel_mm": "900 mm"})
    assert job.record.entries == []


def test_the_newest_entry_counts_and_a_withdrawal_brings_the_older_back(new_job):
    job = new_job()
    assert job.newest(ARRIVAL).pen is None
    job.add("intake", "arrival", {"pen": "a green pen"})
    wrong = job.add("intake", "arrival", {"pen": "a red pen"})
    assert job.newest(ARRIVAL).pen == "a red pen"
    with pytest.raises(InputError, match="reason must be given"):
        job.withdraw(wrong, "  ")
    assert job.newest(ARRIVAL).pen == "a red pen"
    job.withdraw(wrong, "another pen")
    assert job.newest(ARRIVAL).pen == "a green pen"


def test_a_hold_is_not_released_by_one_word(new_job):
    job = new_job()
    with pytest.raises(InputError, match="few words"):
        job.release("finish", "polish", "because")
    assert not job.record.releases("polish")
    job.release("finish", "polish", "my own pen")
    assert job.record.releases("polish")


def test_a_sample_under_another_name_brings_its_notebook_and_its_record(bench):
    job = create_job(bench, "my-try", sample="green-piston")
    assert job.notebook.is_file()
    assert [path.name for path in job.folder.glob("*.ipynb")] == ["my-try.ipynb"]
    assert job.newest(ARRIVAL).pen
    again = job_in(job.folder)
    assert (again.name, again.bench.folder) == ("my-try", bench.folder)
    assert [entry.id for entry in again.record.entries] == [entry.id for entry in job.record.entries]


def test_a_job_is_never_laid_out_twice_and_a_missing_one_names_those_there_are(bench, new_job):
    with pytest.raises(RecordError, match="The bench is empty"):
        open_job("pen-9", bench=bench)
    new_job("pen-a").add("intake", "arrival", {"pen": "a pen"})
    with pytest.raises(RecordError, match="already a job pen-a"):
        create_job(bench, "pen-a")
    with pytest.raises(RecordError, match="There are: pen-a"):
        open_job("pen-9", bench=bench)


def test_a_link_that_leads_off_the_bench_is_no_job(bench, tmp_path):
    (tmp_path / "elsewhere").mkdir()
    (bench.folder / "pen-1").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(InputError, match="leads elsewhere"):
        job_folder(bench, "pen-1")
