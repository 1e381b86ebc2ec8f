"""The balance's print key makes the weighing; tried against a pseudo-terminal."""

import os
import time

import pytest
from by_name import kind_of

from pentools.panels.bench import BenchSheet
from pentools.panels.cable import BalanceCable
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job

pty = pytest.importorskip("pty")


@pytest.fixture
def wired(job):
    """A sheet whose bench names a balance's line, and our end of that line."""
    ours, theirs = pty.openpty()
    (job.bench.folder / "bench.toml").write_text(f'[balance]\nport = "{os.ttyname(theirs)}"\nspeed = 9600\n')
    sheet = BenchSheet(open_job(job.name, bench=open_bench_folder(job.bench.folder)))
    yield sheet, ours
    sheet.cable.close()
    os.close(ours)
    os.close(theirs)


def listen(sheet, until):
    end = time.monotonic() + 2
    while not until() and time.monotonic() < end:
        sheet.cable.listen()
        time.sleep(0.01)


def test_a_printed_mass_is_a_weighing_in_the_chosen_state(wired):
    sheet, line = wired
    assert sheet.cable.connected
    log = lambda: sheet.job.log(kind_of("fill test", "weighing"))  # noqa: E731
    os.write(line, b"ST,+00014.86  g\r\n")
    listen(sheet, log)
    os.write(line, b"ST,+00016.05  g\r\n")
    listen(sheet, lambda: len(log()) == 2)
    assert [(w.values.state, w.values.mass.value) for w in log()] == [("dry", 14.86), ("filled", 16.05)]
    assert "16.05" in sheet.strip.status.text


def test_an_unsteady_line_is_refused_in_words_and_nothing_is_saved(wired):
    sheet, line = wired
    os.write(line, b"US,+00014.86  g\r\n")
    listen(sheet, lambda: sheet.strip.status.text)
    assert "stands still" in sheet.strip.status.text
    assert sheet.job.log(kind_of("fill test", "weighing")) == ()


def test_what_is_unlikely_waits_for_the_print_key_once_more(wired):
    sheet, line = wired
    sheet.job.add("intake", "arrival", {"pen": "a pen", "mass_g": "14.2 g"})
    for count in (0, 1):
        sheet.strip.status.quiet()
        os.write(line, b"ST,+00142.00  g\r\n")
        listen(sheet, lambda: sheet.strip.status.text)
        assert len(sheet.job.log(kind_of("fill test", "weighing"))) == count


def test_a_balance_that_is_not_there_is_said_and_the_sheet_stands(job):
    said = []
    (job.bench.folder / "bench.toml").write_text('[balance]\nport = "/dev/no-such-line"\n')
    cable = BalanceCable(open_bench_folder(job.bench.folder), said.append, said.append)
    assert not cable.connected
    assert "cannot be reached" in said[0]
    assert not BalanceCable(job.bench, said.append, said.append).connected
    assert len(said) == 1
