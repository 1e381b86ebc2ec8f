"""Several programs saving into one record at once: every entry is there once, and each program's stand in its own order."""

import time

import pytest
from faults.running import acknowledged, heard, start

from pentools.record.storage import Record

EACH = 60


@pytest.mark.parametrize("writers", [2, 4])
def test_every_writers_entries_are_there_in_their_order(tmp_path, writers):
    path = tmp_path / "record.jsonl"
    here = Record.open(path)
    programs = [start(path, EACH, str(number)) for number in range(writers)]
    said = {str(number): acknowledged(program) for number, program in enumerate(programs)}
    assert here.refresh()
    for record in (here, Record.open(path)):
        assert record.problems == []
        assert len(record.entries) == len({entry.id for entry in record.entries}) == writers * EACH
        for name, ids in said.items():
            own = [entry for entry in record.entries if entry.data["by"] == name]
            assert [entry.id for entry in own] == ids
            assert [entry.data["n"] for entry in own] == list(range(EACH))


def test_a_writer_goes_on_after_another_was_killed_in_the_middle(tmp_path):
    path = tmp_path / "record.jsonl"
    first, second = start(path, 0, "killed"), start(path, EACH, "whole")
    while len(heard(first)) < 5 or len(heard(second)) < 5:
        time.sleep(0.01)
    first.kill()
    said = acknowledged(second)
    ids = [entry.id for entry in Record.open(path).entries]
    assert set(said + acknowledged(first)) <= set(ids)
    assert len(said) == EACH
