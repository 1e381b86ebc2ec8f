"""What pens share whose barrel itself holds the ink."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.front import Stations, nib_and_feed, section
from pentools.systems.proportions import Proportions

__all__ = ["bore_front", "ink"]


def bore_front(a: Anatomy, p: Proportions, s: Stations) -> float:
    """Nib, feed and a threaded section in front of a bore that holds the ink.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.

    Returns
    -------
    float
        Where the section ends inside the barrel [mm].
    """
    nib_and_feed(a, s, s.tenon + 0.8)
    return section(a, p, s, nipple=False)


def ink(a: Anatomy, s: Stations, x0: float, x1: float) -> None:
    """The ink in the bore.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    s : Stations
        Places.
    x0, x1 : float
        Ends [mm].
    """
    a.solid("ink-space", [(x0, s.bore), (x1, s.bore)], "ink")
    a.length("depth", x0, x1, 0.0)
    a.anchor("ink-space", x0 + 0.4 * (x1 - x0), 0.45 * s.bore)
