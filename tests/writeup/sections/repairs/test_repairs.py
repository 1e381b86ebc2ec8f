"""Parts mended on the owner's page and on the page for everybody."""

import pytest
from photo_files import put

from pentools.writeup.blocks import Details, Facts, Lead, Photos, Table
from pentools.writeup.making import section_of
from pentools.writeup.sections.repairs.repairs import mended_in_words

WELD = {"part": "cap", "method": "cap-lip-weld"}


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "material": "celluloid"})
    put(job, "lip.jpg")
    job.add("repairs", "test spot", {**WELD, "passed": "yes", "showed": "Tacky in ten seconds."})
    job.add("repairs", "repair", {**WELD, "where": "under the clip", "lot": "bottle 7 of Quarle", "photo": "lip.jpg"})
    job.add("repairs", "repair", {"part": "threads", "method": "thread-oil", "wanted": "a section that fits"})
    out = {"part": "nib", "work": "tipping", "sent_on": "2026-03-14", "whom": "Ostry workshop", "price": "60 EUR"}
    job.add("repairs", "sent out", out)
    job.add("repairs", "back again", {"part": "nib", "back_on": "2026-05-01", "done": "New tipping.", "cost": "58 EUR"})
    return job


def test_nothing_done_nothing_said(new_job):
    assert section_of(new_job(), "repairs", "owner").blocks == ()


def test_it_leads_with_what_was_mended_and_says_of_each_whether_it_can_be_undone(job):
    blocks = section_of(job, "repairs", "owner").blocks
    assert blocks[0] == Lead("Cap (solvent weld), threads (trace of oil or grease) and nib (by another workshop).")
    cap, threads = (dict(block.rows) for block in blocks if isinstance(block, Facts))
    assert "never as strong as new" in cap["Cannot be undone"]
    assert "Stands until" in cap
    assert threads["For now"] == "It only holds for now."
    assert threads["What would replace it"] == "a section that fits"
    captions = [block.caption for block in blocks if isinstance(block, Table)]
    assert captions == ["Tried on a hidden place first", "Sent to another workshop", "Back from there"]
    assert [photo.file for block in blocks if isinstance(block, Photos) for photo in block.photos] == ["lip.jpg"]
    [known] = [block for block in blocks if isinstance(block, Details)]
    assert any("illustrated article on cap lips" in cell for row in known.blocks[0].rows for cell in row)


def test_to_whom_it_was_sent_is_on_no_page_and_lots_and_prices_are_the_owners(job):
    owner, everybody = (str(section_of(job, "repairs", audience).blocks) for audience in ("owner", "everybody"))
    assert "Ostry" not in owner + everybody
    for word in ("bottle 7", "60 EUR", "58 EUR"):
        assert word in owner
        assert word not in everybody
    assert "lip.jpg" not in everybody
    assert "Tacky in ten seconds" in everybody


def test_no_part_is_told_twice(job):
    job.add("repairs", "repair", WELD)
    assert mended_in_words(job).count("solvent weld") == 1


def test_what_was_left_and_what_holds_for_now_is_named_only_where_asked_for(job):
    job.add("repairs", "repair", {"part": "clip", "method": "clip-leave"})
    assert mended_in_words(job, left=False) == "Cap (solvent weld) and nib (by another workshop)."
    assert "clip (left as it is)" in mended_in_words(job)
