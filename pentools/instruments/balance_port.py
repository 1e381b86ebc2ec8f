"""A balance on a serial line: its print key makes the weighing."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from pentools.errors import InputError, RecordError
from pentools.instruments.balance_line import Printed, read_line

__all__ = ["SPEEDS", "BalancePort"]

SPEEDS = (1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200)
MOST_WAITING = 4096


class BalancePort:
    """An open serial line to a balance, asked now and then for what it printed.

    Parameters
    ----------
    port : str
        The line's name on this machine.
    speed : int
        Bits a second, one of the usual speeds from 1200 to 115200.
    pattern : Pattern or None
        The balance's own way of printing; None for a usual line.

    Raises
    ------
    InputError
        If the speed is none of the usual ones.
    RecordError
        If the line cannot be opened.
    """

    def __init__(self, port: str, speed: int = 9600, pattern: re.Pattern[str] | None = None) -> None:
        import serial

        if speed not in SPEEDS:
            raise InputError("[balance] speed", "one of " + ", ".join(map(str, SPEEDS)), speed)
        self.port, self._pattern = port, pattern
        self._held = b""
        try:
            self._line: Any = serial.Serial(port, speed, timeout=0)
            # what was printed before anybody listened may be torn at its beginning
            self._line.reset_input_buffer()
        except (serial.SerialException, OSError, ValueError) as error:
            raise RecordError(
                f"The balance at {port} cannot be reached ({error}). Is it plugged in, and is no other program using it?"
            ) from error

    def close(self) -> None:
        """Let the line go."""
        self._line.close()

    def printed(self, take: Callable[[Printed], None], refuse: Callable[[str], None]) -> None:
        """Hand on every whole line that came since the last time; a line without its end waits for the rest.

        Parameters
        ----------
        take : callable
            Called with each mass.
        refuse : callable
            Called with a sentence for each line that cannot be taken.

        Raises
        ------
        RecordError
            If the line is gone.
        """
        import serial

        try:
            self._held += self._line.read(MOST_WAITING)
        except (serial.SerialException, OSError) as error:
            raise RecordError(f"The balance at {self.port} is gone ({error}). Plug it in again.") from error
        *lines, self._held = re.split(rb"[\r\n]+", self._held[-MOST_WAITING:])
        for line in lines:
            text = line.decode("ascii", "replace").strip("\x00\x02\x03 \t")
            if not text:
                continue
            try:
                take(read_line(text, self._pattern))
            except InputError as error:
                refuse(str(error))
