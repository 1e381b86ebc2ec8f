"""A clock for panels: calls something every few seconds while the notebook's kernel runs."""

from __future__ import annotations

import asyncio
from collections.abc import Callable

__all__ = ["Ticker"]


class Ticker:
    """Calls an action at intervals, on the kernel's own loop; where there is none (a plain script) it does nothing.

    Parameters
    ----------
    action : callable
        What to call; it must not raise.
    interval_s : float
        Seconds from one call to the next.
    """

    def __init__(self, action: Callable[[], None], interval_s: float) -> None:
        self.action, self.interval_s = action, interval_s
        self._task: asyncio.Task[None] | None = None

    @property
    def running(self) -> bool:
        """Whether it will call again."""
        return self._task is not None and not self._task.done()

    def run(self, on: bool) -> None:
        """Start it or stop it; starting it twice is starting it once."""
        if not on:
            if self._task is not None:
                self._task.cancel()
            self._task = None
        elif not self.running:
            try:
                self._task = asyncio.get_running_loop().create_task(self._tick())
            except RuntimeError:  # no loop: a script or a test
                self._task = None

    async def _tick(self) -> None:
        while True:
            await asyncio.sleep(self.interval_s)
            self.action()
