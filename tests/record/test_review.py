"""The list of what is missing or odd: what lies beside the record, what cannot be read, and what was released."""

import shutil

import pytest

from pentools.record.entries import new_entry
from pentools.record.review import review


@pytest.fixture
def job(new_job):
    return new_job()


def named(job, *topics):
    return [f for f in review(job) if f.topic in topics]


def test_a_second_record_in_the_folder_is_named_and_its_own_is_not(job):
    job.add("intake", "arrival", {"pen": "a pen"})
    assert named(job, "copy", "aside") == []
    shutil.copy(job.record.path, job.folder / "record (2).jsonl")
    (job.folder / "record-torn-20260314T120000.txt").write_text("{")
    found = named(job, "copy", "aside")
    assert [(f.level, f.topic) for f in found] == [("warning", "copy"), ("note", "aside")]
    assert "record (2).jsonl" in found[0].text
    assert "record-torn-20260314T120000.txt" in found[1].text


def test_a_line_that_cannot_be_read_is_named(job):
    with job.record.path.open("ab") as file:
        file.write(b"no entry\n")
    job.record.refresh()
    assert [f.level for f in named(job, "file")] == ["warning"]


def test_what_this_version_does_not_know_is_kept_and_noted(job):
    job.record.append(new_entry("seance", "thing", {"what": "x"}))
    job.record.append(new_entry("intake", "odd", {"what": "x"}))
    found = named(job, "unknown")
    assert [f.level for f in found] == ["note", "note"]
    assert any("seance" in f.text for f in found)
    assert "Intake: an entry of kind “odd” is not known to this version. It is kept." in {f.text for f in found}


def test_a_value_that_is_missing_or_cannot_be_read_is_named_with_its_field(job):
    job.record.append(new_entry("limits", "limit", {"part": "cap", "left": "a hairline"}))
    [missing] = named(job, "value")
    assert missing.level == "warning"
    assert "Why" in missing.text
    assert "could not be mended" not in missing.text  # that one was filled in
    job.record.append(new_entry("limits", "limit", {"part": "wing", "left": "a hairline", "why": "stable"}))
    assert [f.level for f in named(job, "value")] == ["warning", "warning"]


def test_every_release_is_noted_with_step_and_reason_and_is_no_unknown_entry(job):
    job.release("limits", "heat", "the owner asks for it in writing")
    withdrawn = job.add("limits", "limit", {"part": "cap", "left": "x", "why": "y"})
    job.withdraw(withdrawn, "a slip")
    [note] = named(job, "released")
    assert note.level == "note"
    assert "heat" in note.text
    assert "owner asks for it in writing" in note.text
    assert named(job, "unknown", "value") == []


def test_the_gravest_stands_first(job):
    job.add("intake", "arrival", {"pen": "a pen"})
    job.record.append(new_entry("limits", "limit", {"part": "cap"}))
    order = {"stop": 0, "warning": 1, "note": 2, "ok": 3}
    levels = [order[f.level] for f in review(job)]
    assert levels == sorted(levels)
    assert {1, 2} <= set(levels)
