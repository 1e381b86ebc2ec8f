"""What sac fillers share: the sac on its nipple, the bar that presses it, the end a blind cap goes on."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy, Span
from pentools.systems.front import Stations, nib_and_feed, section
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions

__all__ = ["pressure_bar", "sac", "sac_front", "tailed"]


def sac(a: Anatomy, p: Proportions, s: Stations) -> tuple[float, float]:
    """The sac on the nipple, with its ink.

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
    tuple of (float, float)
        Where it ends, and its outside radius [mm].
    """
    start, nipple, wall = s.tenon + 0.3, p.radius("nipple"), p["sac_wall"]
    body = p.radius("sac_outside")
    end = start + p["sac_length"]
    neck = max(nipple + wall, 0.5)
    swell, tip = start + 6.2, min(body, 0.3 * p["sac_length"])
    outer: list[Point] = [(start, neck), (start + 5.2, neck), (swell + 1.5, body)]
    outer += dome(end - tip, body, tip)
    inner: list[Point] = [(start, neck - wall), (start + 5.2, neck - wall), (swell + 1.5, body - wall)]
    inner += dome(end - tip, body - wall, tip - wall)
    a.solid("ink-space", [(start + 5.2, neck - wall), *inner[2:]], "ink")
    a.shell("sac", outer, inner, "soft")
    a.anchor("sac", start + 0.52 * p["sac_length"], body - 0.5 * wall)
    a.length("sac_length", start, end, 0.0)
    a.diameter("sac_outside", start + 0.4 * p["sac_length"], body)
    at = start + 0.6 * p["sac_length"]
    a.spans["sac_wall"] = Span((at, -body), (at, wall - body))
    return end, body


def sac_front(a: Anatomy, p: Proportions, s: Stations) -> None:
    """Nib, feed and a section with its nipple, in front of a sac.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    """
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)


def pressure_bar(a: Anatomy, s: Stations, x0: float, x1: float, body: float, *, bow: float = 0.0) -> float:
    """A flat bar beside the sac, on the lower side; returns the height of its outer face [mm]."""
    gap = max(s.bore - body, 0.5)
    thick = min(0.75, 0.6 * gap)
    near = body + 0.15 * gap
    far = near + thick
    middle = 0.5 * (x0 + x1)
    under = [(x0, near), (middle, near - bow), (x1, near)]
    a.path("pressure-bar", [*under, (x1, far), (middle, far - bow), (x0, far)], "metal")
    a.anchor("pressure-bar", x0 + 0.2 * (x1 - x0), 0.5 * (near + far), fixed=True)
    return far


def tailed(s: Stations, reach: float, radius: float) -> list[Point]:
    """Outside of a barrel's reduced rear end, on which a blind cap goes.

    Parameters
    ----------
    s : Stations
        Places.
    reach, radius : float
        How far it reaches behind the barrel, and its radius [mm].

    Returns
    -------
    list of (float, float)
        (x, radius) [mm].
    """
    return [(s.end, radius), (s.end + reach, radius)]
