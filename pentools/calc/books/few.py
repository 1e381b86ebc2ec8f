"""From how many jobs on a figure is said at all."""

from __future__ import annotations

__all__ = ["FEWEST", "TOO_FEW", "enough"]

FEWEST = 3
"""Under three nothing can be said of how jobs scatter; judged."""
TOO_FEW = "too few to say"


def enough(n: int, wanted: int = FEWEST) -> bool:
    """Whether so many jobs are enough for a figure.

    Parameters
    ----------
    n : int
        How many there are, 0 or more.
    wanted : int
        How many it takes, `FEWEST` or more.

    Returns
    -------
    bool
        Whether a figure may be given.

    Examples
    --------
    >>> enough(2), enough(3), enough(3, 10)
    (False, True, False)
    """
    return n >= max(FEWEST, wanted)
