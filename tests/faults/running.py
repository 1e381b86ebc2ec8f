"""Starting the program that saves entries, and how many rounds are asked for."""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pentools

WRITER = Path(__file__).with_name("writer.py")
ROUNDS = int(os.environ.get("PENTOOLS_FAULT_ROUNDS", "20"))
"""Rounds of kills: 20 in the suite, as many as this variable says on demand."""


def start(path, count=0, name="a"):
    """The program, once it has opened the record; what it says goes into a file, so that a kill loses nothing of it."""
    environment = {**os.environ, "PYTHONPATH": str(Path(pentools.__file__).parents[1])}
    words = [sys.executable, str(WRITER), str(path), str(count), name]
    handle, said = tempfile.mkstemp(prefix="said-", dir=path.parent)
    with os.fdopen(handle, "wb") as file:
        program = subprocess.Popen(words, stdout=file, stderr=subprocess.PIPE, env=environment)
    program.said = Path(said)
    while not heard(program):
        assert program.poll() is None, program.stderr.read().decode()
        time.sleep(0.01)
    return program


def heard(program):
    """All whole lines that a program has said so far."""
    return program.said.read_text().split("\n")[:-1]


def acknowledged(program):
    """The ids that a program said before it ended; a torn last one was not said."""
    errors = program.communicate()[1].decode()
    assert "Traceback" not in errors, errors
    assert heard(program)[0] == "ready"
    return heard(program)[1:]
