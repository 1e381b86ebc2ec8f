"""Days that matter to a bench: whether a promised day can still be kept, and how long is long."""

from __future__ import annotations

import math
from typing import Literal

from pentools.errors import InputError

__all__ = ["FEW_DAYS", "HOURS_A_DAY", "LONG_HERE_DAYS", "LONG_ON_WAY_DAYS", "Danger", "danger_of"]

HOURS_A_DAY = 1.0
"""Hours of work on one pen that a home bench finds in a day [h] (judged)."""
FEW_DAYS = 7
"""Days left at which a promise without an estimate is in danger (judged)."""
LONG_HERE_DAYS = 30
"""Days after which a pen that is done and was not fetched or posted is named as uncollected (judged)."""
LONG_ON_WAY_DAYS = 14
"""Days after which a pen that was posted is asked after (judged)."""

Danger = Literal["past", "waits", "hours", "days", ""]


def danger_of(days_left: int, hours_left: float | None, waits_days: int | None) -> Danger:
    """Whether a promised day is in danger, and by what.

    Parameters
    ----------
    days_left : int
        Days from today to the day promised; below 0 once it is past, 0 on the day itself.
    hours_left : float or None
        Likely hours of work still to do [h], 0 or more; None where nothing was estimated.
    waits_days : int or None
        Days from today until the last clock is over or the last part is expected; None where nothing is waited for.

    Returns
    -------
    Danger
        The first of these that is so: "past" (the day is past), "waits" (what is waited for comes after it), "hours"
        (the hours left, at `HOURS_A_DAY`, are more than the days left, today counted), "days" (nothing was estimated
        and fewer than `FEW_DAYS` are left); else empty.

    Raises
    ------
    InputError
        If the hours are below 0 or no number.

    Examples
    --------
    >>> danger_of(10, 4.0, None), danger_of(3, 4.5, None), danger_of(3, None, None), danger_of(3, 1.0, 5)
    ('', 'hours', 'days', 'waits')
    """
    if hours_left is not None and not (math.isfinite(hours_left) and hours_left >= 0):
        raise InputError("hours left", "0 h or more", f"{hours_left} h")
    if days_left < 0:
        return "past"
    if waits_days is not None and waits_days > days_left:
        return "waits"
    if hours_left is None:
        return "days" if days_left < FEW_DAYS else ""
    return "hours" if hours_left > HOURS_A_DAY * (days_left + 1) else ""
