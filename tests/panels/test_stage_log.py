"""The log of a stage: labels with values, the newest first, and an entry taken back with its reason."""

import pytest
from by_name import kind_of

from pentools.panels.stage_log import LOG_ROWS, StageLog
from pentools.record.registry import find_stage


@pytest.fixture
def seen():
    return []


@pytest.fixture
def log(job, seen):
    made = StageLog(job, find_stage("limits"), seen.append, lambda *both: seen.append(both))
    made.refresh()
    return made


def leave(job, what):
    return job.add("limits", "limit", {"part": "cap", "left": what, "why": "risk"})


def test_nothing_stands_there_without_entries(log):
    assert log.button.layout.display == "none"


def test_values_stand_with_their_labels_and_the_newest_comes_first(log, job):
    for number in range(LOG_ROWS + 2):
        leave(job, f"hairline {number}")
    log.refresh()
    shown = log.table.value
    assert "Why: risk" in shown
    assert shown.index(f"hairline {LOG_ROWS + 1}") < shown.index("hairline 2")
    assert "hairline 1;" not in shown
    assert f"the last {LOG_ROWS} of {LOG_ROWS + 2}" in shown
    assert log.button.description == f"log ({LOG_ROWS + 2})"


def test_an_entry_is_handed_on_to_be_corrected_and_taken_back_with_a_reason(log, job, seen):
    entry = leave(job, "hairline")
    log.refresh()
    log.correct_button.click()
    assert "Choose the entry first" in log.status.text
    log.pick.value = entry.id
    log.correct_button.click()
    assert [one.id for one in seen] == [entry.id]
    log.why.value = "it was the barrel"
    log.withdraw_button.click()
    assert job.log(kind_of("limits", "limit")) == ()
    [_, (taken, line)] = seen
    assert taken.id == entry.id
    assert line.data["reason"] == "it was the barrel"
