"""Back together on a page: the order with its tests, nothing claimed that was not entered."""

import pytest

from pentools.record.registry import find_stage
from pentools.writeup.sections.closing.closing import closed_in_words, section

STAGE = find_stage("closing")
ALL = "cleared; nib-set; dry-fit; sac-cut; sac-on; sac-dusted; section-in; wet-tested"


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": "acrylic"})
    return job


def table(job, caption):
    for block in section(job, STAGE, "owner").blocks:
        for found in (block, *getattr(block, "blocks", ())):
            if getattr(found, "caption", "").startswith(caption):
                return found.rows
    return None


def test_nothing_entered_nothing_told(job):
    assert section(job, STAGE, "owner").blocks == ()
    assert closed_in_words(job) == ""


def test_the_order_is_told_with_what_was_measured_and_what_holds_it(job):
    job.add("closing", "order", {"done": ALL, "tested": ALL, "left_out": "bar-in; sealed", "so_before": "clean-dry; pictured", "sac_with": "shellac", "sac_length": "52 mm"})  # fmt: skip
    assert closed_in_words(job) == "So far 8 steps of putting it together are done, 8 of them with their test passed."
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert closed_in_words(job) == "It went together in 9 steps, each with its own test passed."
    rows = {row[0]: row for row in table(job, "The order")}
    assert "(52" in rows["5"][2]
    assert "shellac)" in rows["6"][2]
    assert "4" not in rows  # the bar was not out
    assert rows["11"][3] == "✓ passed"
    assert dict(table(job, "Tests before it left"))["Passed"].startswith("Squeezed under water")


def test_what_failed_or_was_closed_untested_is_not_hidden(job):
    job.add("closing", "step", {"step": "sac-on", "outcome": "failed", "happened": "it crept"})
    found = section(job, STAGE, "everybody")
    texts = [finding.text for block in found.blocks for finding in getattr(block, "findings", ())]
    assert any("did not pass" in text for text in texts)
    assert any("closed over something untested" in text for text in texts)
    assert closed_in_words(job) == "So far 1 step of putting it together is done, 0 of them with their test passed."
