"""A balance on a serial line, tried against a pseudo-terminal."""

import contextlib
import os
import time

import pytest

from pentools.errors import InputError, RecordError
from pentools.instruments.balance_port import SPEEDS, BalancePort

pty = pytest.importorskip("pty")


@pytest.fixture
def line():
    ours, theirs = pty.openpty()
    port = BalancePort(os.ttyname(theirs))
    yield ours, port
    port.close()
    for end in (ours, theirs):
        with contextlib.suppress(OSError):
            os.close(end)


def heard(port, seconds=2.0):
    """What came, as soon as something did."""
    taken, refused = [], []
    until = time.monotonic() + seconds
    while not (taken or refused) and time.monotonic() < until:
        port.printed(lambda p: taken.append(p.reading.value), refused.append)
        time.sleep(0.01)
    return taken, refused


def test_each_whole_line_is_a_weighing(line):
    end, port = line
    os.write(end, b"ST,+00014.86  g\r\nST,+00014.87  g\r\n")
    assert heard(port) == ([14.86, 14.87], [])


def test_a_line_that_comes_in_two_pieces_waits_for_the_rest(line):
    end, port = line
    os.write(end, b"ST,+000")
    assert heard(port, 0.2) == ([], [])
    os.write(end, b"14.86  g\r\n")
    assert heard(port) == ([14.86], [])


def test_what_cannot_be_taken_is_said_and_the_next_line_is_taken(line):
    end, port = line
    os.write(end, b"US,+00014.80  g\r\n")
    taken, [said] = heard(port)
    assert taken == []
    assert "stands still" in said
    os.write(end, b"ST,+00014.86  g\r\n")
    assert heard(port) == ([14.86], [])


def test_noise_without_an_end_does_not_grow_for_ever(line):
    end, port = line
    for _ in range(20):
        os.write(end, b"x" * 1000)
        port.printed(lambda _: None, lambda _: None)
    assert len(port._held) <= 4096 + 1000


def test_a_line_that_is_gone_is_said(line):
    _, port = line
    port.close()
    with pytest.raises(RecordError, match="is gone"):
        port.printed(lambda _: None, lambda _: None)


def test_a_port_that_is_not_there_and_an_odd_speed_are_refused():
    with pytest.raises(RecordError, match="cannot be reached"):
        BalancePort("/dev/no-such-line")
    with pytest.raises(InputError, match="speed"):
        BalancePort("/dev/no-such-line", 9601)


def test_the_speeds_are_those_of_serial_lines():
    import serial

    assert set(SPEEDS) <= set(serial.SerialBase.BAUDRATES)  # pyserial's list
