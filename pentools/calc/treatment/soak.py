"""How long a part may stay in a bath, and how much of that is left; the time is handed in, no clock is read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["Soak", "SoakState", "next_due", "soak_clock"]

Phase = Literal["running", "nearly up", "over", "no limit on record", "not allowed"]


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
    if soak.limit_min is None:
        text = f"{soak.part}: {elapsed:.0f} min in. No limit is on record: set one yourself and look often."
        return SoakState(soak.part, elapsed, None, None, "no limit on record", Finding("warning", text, "soak"))
    left = soak.limit_min - elapsed
    due = soak.started_s + 60 * soak.limit_min
    phase: Phase
    if soak.limit_min == 0:
        phase, finding = (
            "not allowed",
            Finding("stop", f"{soak.part}: it must not be soaked at all. Take it out and dry it now.", "soak"),
        )
    elif left <= 0:
        text = f"{soak.part}: {-left:.0f} min over its limit of {soak.limit_min:g} min. Take it out and dry it now."
        phase, finding = "over", Finding("stop", text, "soak")
    elif elapsed >= warn_share * soak.limit_min:
        phase, finding = (
            "nearly up",
            Finding("warning", f"{soak.part}: {left:.1f} min left of {soak.limit_min:g}.", "soak"),
        )
    else:
        phase, finding = "running", Finding("ok", f"{soak.part}: {left:.0f} min left of {soak.limit_min:g}.", "soak")
    return SoakState(soak.part, elapsed, left, due, phase, finding)


def next_due(soaks: Sequence[Soak], now_s: float) -> SoakState | None:
    """The soak that needs a hand first.

    Parameters
    ----------
    soaks : sequence of Soak
        All parts that are in a bath.
    now_s : float
        The time now [s], not before any start.

    Returns
    -------
    SoakState or None
        The one with the least time left [min]; those without a limit come last; None where there are none.

    Raises
    ------
    InputError
        If the time is before a start.
    """
    states = [soak_clock(soak, now_s) for soak in soaks]
    return min(states, key=lambda s: float("inf") if s.left_min is None else s.left_min, default=None)
