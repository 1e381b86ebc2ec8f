"""How far a long sum is: told to whoever asked for it, such as a command line that writes beside its answer."""

from __future__ import annotations

import time
from contextlib import contextmanager
from contextvars import ContextVar
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from pentools.calc.nib.page import Progress

__all__ = ["ProgressLine", "shown_on", "tell", "telling"]

_LISTENER: ContextVar[Progress | None] = ContextVar("listener", default=None)
_PATIENCE_S, _EVERY_S = 1.0, 0.2
_PLAIN_EVERY_S = 5.0


@contextmanager
def telling(listener: Progress) -> Iterator[None]:
    """Within it, sums tell a listener how far they are."""
    token = _LISTENER.set(listener)
    try:
        yield
    finally:
        _LISTENER.reset(token)


def tell(what: str, share: float) -> None:
    """Tell the listener, where there is one.

    Parameters
    ----------
    what : str
        What is being done, in one word.
    share : float
        What is behind it [1], 0 to 1.
    """
    listener = _LISTENER.get()
    if listener is not None:
        listener(what, share)


class ProgressLine:
    """One line that says how far it is, from a second on: overwritten in a terminal, elsewhere a new one now and then.

    Parameters
    ----------
    stream : text stream
        Where to; standard error, so that the answer stays alone on standard output.
    clock : callable
        Seconds.
    """

    def __init__(self, stream: TextIO, clock: Callable[[], float] = time.monotonic) -> None:
        self._stream, self._clock = stream, clock
        self._terminal = stream.isatty()
        self._begun = clock()
        self._last = self._begun + _PATIENCE_S - (_EVERY_S if self._terminal else _PLAIN_EVERY_S)
        self._width = 0

    def __call__(self, what: str, share: float) -> None:
        now = self._clock()
        if now - self._last < (_EVERY_S if self._terminal else _PLAIN_EVERY_S):
            return
        self._last = now
        line = f"{what}, {100 * share:.0f} %"
        if self._terminal:
            self._stream.write("\r" + line.ljust(self._width))
            self._width = len(line)
        else:
            self._stream.write(line + "\n")
        self._stream.flush()

    def end(self) -> None:
        """Clear the line that a terminal still shows."""
        if self._width:
            self._stream.write("\r" + " " * self._width + "\r")
            self._stream.flush()
            self._width = 0


@contextmanager
def shown_on(stream: TextIO) -> Iterator[None]:
    """Within it, a `ProgressLine` on a stream says how far a long sum is; it is cleared at the end, also of a failure."""
    line = ProgressLine(stream)
    try:
        with telling(line):
            yield
    finally:
        line.end()
