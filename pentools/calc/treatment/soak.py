"""How long a part may stay in a bath, and how much of that is left; the time is handed in, no clock is read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding, Level
from pentools.errors import InputError

__all__ = ["Soak", "SoakState", "soak_clock"]

Phase = Literal["running", "nearly up", "over", "no limit on record", "not allowed"]
_LEVELS: dict[Phase, Level] = {
    "running": "ok", "nearly up": "warning", "over": "stop", "no limit on record": "warning", "not allowed": "stop",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Soak:
    """One part in a bath.

    Parameters
    ----------
    part : str
        Which part, in words.
    started_s : float
        When it went in [s], on any clock that counts seconds.
    limit_min : float or None
        Longest time [min]: 0 for a part that must not go in, None where no number is on record.
    """

    part: str
    started_s: float
    limit_min: float | None


@dataclass(frozen=True, slots=True)
class SoakState:
    """Where a soak stands.

    Parameters
    ----------
    part : str
        Which part.
    elapsed_min : float
        Time in the bath [min].
    left_min : float or None
        Time left [min], negative when it is over; None where no number is on record.
    due_s : float or None
        When it must come out [s], on the clock of the start; None where no number is on record.
    phase : str
        running, nearly up, over, no limit on record, or not allowed.
    finding : Finding
        The same in a sentence.
    """

    part: str
    elapsed_min: float
    left_min: float | None
    due_s: float | None
    phase: Phase
    finding: Finding


def soak_clock(soak: Soak, now_s: float, *, warn_share: float = 0.8) -> SoakState:
    """Where a soak stands at a given time.

    Parameters
    ----------
    soak : Soak
        The part, its start and its limit.
    now_s : float
        The time now [s], on the clock of the start and not before it.
    warn_share : float
        Share of the limit after which it is nearly up, 0 to 1.

    Returns
    -------
    SoakState
        Elapsed and left [min], and a sentence.

    Raises
    ------
    InputError
        If the time is before the start, the limit is negative, or the share is not 0 to 1.

    Examples
    --------
    >>> soak_clock(Soak("section", 0, 5), 180).left_min
    2.0
    """
    if now_s < soak.started_s:
        raise InputError("now", "not before the start", now_s, "Is the computer's clock set back?")
    if soak.limit_min is not None and soak.limit_min < 0:
        raise InputError("limit", "0 min or more", soak.limit_min)
    if not 0 <= warn_share <= 1:
        raise InputError("share", "0 to 1", warn_share)
    elapsed = (now_s - soak.started_s) / 60
    limit = soak.limit_min
    left = None if limit is None else limit - elapsed
    due = None if limit is None else soak.started_s + 60 * limit
    phase = _phase(limit, elapsed, warn_share)
    finding = Finding(
        _LEVELS[phase], "treatment.soak", part=soak.part, phase=phase, elapsed=elapsed, left=left, limit=limit
    )
    return SoakState(soak.part, elapsed, left, due, phase, finding)


def _phase(limit: float | None, elapsed: float, warn_share: float) -> Phase:
    if limit is None:
        return "no limit on record"
    if limit == 0:
        return "not allowed"
    if elapsed >= limit:
        return "over"
    return "nearly up" if elapsed >= warn_share * limit else "running"
