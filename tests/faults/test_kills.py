"""A program killed at a random moment of its saving: every entry that it said was saved is there, and the job opens."""

import random
import time

from faults.running import ROUNDS, acknowledged, start

from pentools.record.storage import Record

LONGEST_S = 0.25


def test_no_acknowledged_entry_is_lost(tmp_path, record_property):
    chance = random.Random(20261128)
    path = tmp_path / "record.jsonl"
    said, torn = [], 0
    for _ in range(ROUNDS):
        program = start(path)
        time.sleep(chance.random() * LONGEST_S)
        program.kill()
        said += acknowledged(program)
        record = Record.open(path)
        torn += any("torn off" in text for text in record.problems)
        ids = [entry.id for entry in record.entries]
        known = set(said)
        assert [i for i in ids if i in known] == said
        assert len(ids) == len(set(ids))
    assert len(said) > ROUNDS
    assert len(Record.open(path).entries) - len(said) <= ROUNDS  # at most one a round was there and not yet said
    for name, value in (("rounds", ROUNDS), ("acknowledged", len(said)), ("torn last lines", torn)):
        record_property(name, value)
    print(f"{ROUNDS} rounds, {len(said)} acknowledged entries, 0 lost, {torn} torn last lines")
