"""A program that saves entries one after another and says each once it is acknowledged; run by the tests of kills and writers."""

import sys
from pathlib import Path

from pentools.record.entries import new_entry
from pentools.record.storage import Record


def save(path, count, name):
    """Append entries and print the id of each once `append` has come back; 0 goes on until it is killed."""
    record = Record.open(Path(path))
    sys.stdout.write("ready\n")
    sys.stdout.flush()
    number = 0
    while not count or number < count:
        entry = record.append(new_entry("work log", "work", {"by": name, "n": number, "did": "x" * (number % 7) * 300}))
        sys.stdout.write(entry.id + "\n")
        sys.stdout.flush()
        number += 1


if __name__ == "__main__":
    save(sys.argv[1], int(sys.argv[2]), sys.argv[3])
