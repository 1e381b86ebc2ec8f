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
    take_over = f"take it over with: pentools merge {job.name} record (2).jsonl"
    assert found[0].text == f"Beside the record lies record (2).jsonl. If it is a copy edited elsewhere, {take_over}"
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
    assert any(
        f.text.endswith("belongs to a stage “seance” that this version does not know. It is kept.") for f in found
    )
    assert "Intake: an entry of kind “odd” is not known to this version. It is kept." in {f.text for f in found}


def test_a_value_that_is_missing_or_cannot_be_read_is_named_with_its_field(job):
    job.record.append(new_entry("limits", "limit", {"part": "cap", "left": "a hairline"}))
    [missing] = named(job, "value")
    assert missing.level == "warning"
    assert missing.text.startswith("What was left alone, and why, ")
    assert missing.text.endswith(": not filled in: Why.")
    assert "could not be mended" not in missing.text  # that one was filled in
    job.record.append(new_entry("limits", "limit", {"part": "wing", "left": "a hairline", "why": "stable"}))
    assert [f.level for f in named(job, "value")] == ["warning", "warning"]


def test_every_release_is_noted_with_step_and_reason_and_is_no_unknown_entry(job):
    job.release("limits", "heat", "the owner asks for it in writing")
    withdrawn = job.add("limits", "limit", {"part": "cap", "left": "x", "why": "y"})
    job.withdraw(withdrawn, "a slip")
    [note] = named(job, "released")
    assert note.level == "note"
    assert note.text == "The hold on heat was released: the owner asks for it in writing"
    assert named(job, "unknown", "value") == []


def test_the_gravest_stands_first(job):
    job.add("intake", "arrival", {"pen": "a pen"})
    job.record.append(new_entry("limits", "limit", {"part": "cap"}))
    order = {"stop": 0, "warning": 1, "note": 2, "ok": 3}
    levels = [order[f.level] for f in review(job)]
    assert levels == sorted(levels)
    assert {1, 2} <= set(levels)


def test_an_amount_in_other_money_is_named_with_the_ceilings(job):
    job.add("intake", "request", {"asked": "mend it", "price_limit": "50 USD"})
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "60 EUR"})
    assert [f.text for f in named(job, "cost")] == ["Work log: “60 EUR” cannot be held against the ceiling in USD."]
