"""The balance on its cable, at the strip: its print key makes the weighing."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from pentools.errors import PentoolsError
from pentools.instruments.balance_line import Printed, check_pattern
from pentools.instruments.balance_port import BalancePort
from pentools.panels.ticker import Ticker

if TYPE_CHECKING:
    from pentools.record.bench import Bench

__all__ = ["BalanceCable"]

TICK_S = 0.2


class BalanceCable:
    """Listens to the balance that ``bench.toml`` names, while the sheet is up.

    Parameters
    ----------
    bench : Bench
        The bench; ``[balance]`` says port, speed and pattern.
    take : callable
        Called with each mass that the balance prints.
    say : callable
        Called with a sentence when a line cannot be taken, or the balance cannot be reached.
    """

    def __init__(self, bench: Bench, take: Callable[[Printed], None], say: Callable[[str], None]) -> None:
        self._take, self._say = take, say
        self._port: BalancePort | None = None
        self.ticker = Ticker(self.listen, TICK_S)
        name = bench.text("balance", "port")
        if not name:
            return
        try:
            pattern = check_pattern(bench.text("balance", "pattern"))
            self._port = BalancePort(name, int(bench.text("balance", "speed")), pattern)
        except PentoolsError as error:
            say(f"The balance does not print into the sheet: {error}")
        else:
            self.ticker.run(True)

    @property
    def connected(self) -> bool:
        """Whether the balance is listened to."""
        return self._port is not None

    def listen(self) -> None:
        """Take what the balance has printed since the last time."""
        if self._port is None:
            return
        try:
            self._port.printed(self._take, self._say)
        except PentoolsError as error:
            self._say(str(error))
            self.close()

    def close(self) -> None:
        """Let the balance go."""
        self.ticker.run(False)
        if self._port is not None:
            self._port.close()
        self._port = None
