"""A job's folder and its entries: nothing half written, nothing written over, nothing outside the bench."""

import pytest
from photo_files import put

from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, job_folder, job_in, jobs_on, open_job, start_job
from pentools.record.registry import STAGES, find_stage
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


PICTURE = {"photo": "cap-before.jpg", "moment": "before", "shows": "the cap"}


def test_a_picture_that_is_not_there_is_named_and_not_stored(new_job):
    job = new_job()
    with pytest.raises(InputError, match=r"cap-before\.jpg.*Put the picture into photos/ first"):
        job.add("pictures", "picture", PICTURE)
    put(job, "Cap-Before.JPG")
    with pytest.raises(InputError, match=r"cap-before\.jpg is not there; there is Cap-Before\.JPG"):
        job.add("pictures", "picture", PICTURE)
    assert job.record.entries == []
    put(job, "cap-before.jpg")
    entry = job.add("pictures", "picture", PICTURE)
    (job.folder / "photos" / "cap-before.jpg").rename(job.folder / "photos" / "cap-1.jpg")
    kind = find_stage("pictures").kind("picture")
    with pytest.raises(InputError, match=r"there is cap-1\.jpg|there is Cap-Before\.JPG"):
        job.save("pictures", kind, {"photo": "cap-before.jpg", "moment": "before", "shows": "x"}, replaces=entry.id)
    assert len(job.record.entries) == 1


@pytest.mark.parametrize("stage", STAGES)
def test_every_field_for_a_picture_asks_for_one_that_is_there(new_job, stage):
    job = new_job()
    for kind in find_stage(stage).kinds:
        for field in kind.fields:
            if field.kind == "photo":
                values, errors = job.read(kind, {field.name: "nowhere.jpg"})
                assert field.name in errors
                assert field.name not in values
                put(job, "nowhere.jpg")
                assert field.name not in job.read(kind, {field.name: "nowhere.jpg"})[1]
                (job.folder / "photos" / "nowhere.jpg").unlink()


def test_only_what_stands_in_the_record_is_corrected_or_taken_back(new_job):
    job = new_job()
    entry = job.add("intake", "arrival", {"pen": "a pen"})
    with pytest.raises(InputError, match="stands in this record"):
        job.add("limits", "limit", {"part": "cap", "left": "a crack", "why": "old"}, replaces="not there")
    job.record.path.write_bytes(job.record.path.read_bytes().replace(entry.id.encode(), b""))
    job = job_in(job.folder)
    [nameless] = job.record.entries
    with pytest.raises(InputError, match="under an id"):
        job.withdraw(nameless, "wrong pen")
    job.add("intake", "arrival", {"pen": "another pen"}, replaces=nameless.id)
    assert job.newest(ARRIVAL).pen == "another pen"


def test_a_new_job_takes_no_entry_once_its_folder_is_another(bench, new_job):
    job = new_job("pen-a")
    new_job("pen-b")
    job.folder.rename(bench.folder / "pen-c")
    (bench.folder / "pen-b").rename(job.folder)
    with pytest.raises(RecordError, match="Another folder lies at"):
        job.add("intake", "arrival", {"pen": "a pen"})
    assert not (job.folder / "record.jsonl").exists()


def test_where_no_job_can_be_begun_no_bench_is_left_behind(tmp_path, monkeypatch):
    with pytest.raises(InputError, match="job name"):
        start_job(tmp_path / "bench", "CON")
    assert list(tmp_path.iterdir()) == []

    def full(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("shutil.copyfile", full)
    with pytest.raises(RecordError, match=r"No space left.*Nothing of it was left behind"):
        start_job(tmp_path / "bench", "pen-1")
    assert list(tmp_path.iterdir()) == []
    bench = open_bench_folder(tmp_path / "bench", create=True)
    with pytest.raises(RecordError, match="No space left"):
        start_job(bench.folder, "pen-1")
    assert [p.name for p in bench.folder.iterdir()] == ["bench.toml"]


def test_a_folder_is_a_job_where_it_holds_a_record_or_its_notebook(bench, new_job):
    new_job("pen-b")
    new_job("pen-a").add("intake", "arrival", {"pen": "a pen"})
    (bench.folder / "pen-a" / "pen-a.ipynb").unlink()
    (bench.folder / "notes").mkdir()
    (bench.folder / ".new-job-x").mkdir()
    (bench.folder / ".new-job-x" / "record.jsonl").write_text("")
    assert jobs_on(bench) == ("pen-a", "pen-b")


def test_an_entry_stands_where_it_was_first_entered(new_job):
    job = new_job()
    texts = {"part": "cap", "seen": "A crack.", "severity": "2"}
    first = job.add("condition", "part", texts)
    other = job.add("condition", "part", {**texts, "part": "clip"})
    fixed = job.add("condition", "part", {**texts, "seen": "Two cracks."}, replaces=first.id)
    again = job.add("condition", "part", {**texts, "seen": "Three cracks."}, replaces=fixed.id)
    assert [job.first(entry).id for entry in (first, fixed, again, other)] == [first.id] * 3 + [other.id]
    assert [job.place_of(entry) for entry in (first, other, fixed, again)] == [0, 1, 0, 0]
