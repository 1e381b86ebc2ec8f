"""What every pen has: nib over feed, section, barrel with its cap threads, and the cap in section."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.systems.anatomy import Anatomy
from pentools.systems.profiles import Point, curve, dome, round_points, threads
from pentools.systems.proportions import Proportions

__all__ = ["Stations", "barrel", "blind_cap", "nib_and_feed", "section", "stations_of"]


@dataclass(frozen=True, slots=True)
class Stations:
    """Places along the axis, from the tip of the nib, and the radii everything is fitted to [mm].

    Parameters
    ----------
    nib, mouth, tenon, end, total : float
        Front of the section, mouth of the barrel, end of the section's tenon, end of the barrel, end of the pen.
    outer, bore, tail : float
        Radius of the barrel, of its bore, and of the barrel at its end.
    feed, hole, passage : float
        Radius of the feed, of its hole in the section, and of the passage behind it.
    """

    nib: float
    mouth: float
    tenon: float
    end: float
    total: float
    outer: float
    bore: float
    tail: float
    feed: float
    hole: float
    passage: float


def stations_of(p: Proportions) -> Stations:
    """Work out the places a section view is built on.

    Parameters
    ----------
    p : Proportions
        Complete dimensions.

    Returns
    -------
    Stations
        Places and radii [mm].
    """
    nib = p["nib_length"]
    mouth = nib + p["section_length"]
    end = mouth + p["barrel_length"]
    outer, bore, feed = p.radius("barrel_diameter"), p.radius("bore"), p.radius("feed_diameter")
    tail = outer * max(0.87, min(1.0, (bore + 0.9) / outer))
    passage = max(min(0.5 * feed, p.radius("nipple") - 0.5), 0.4)
    tenon = mouth + min(8.0, 0.13 * p["barrel_length"])
    hole = min(feed + 0.35, p.radius("section_diameter") - 0.4)
    return Stations(nib, mouth, tenon, end, end + p["end_length"], outer, bore, tail, feed, hole, passage)


def nib_and_feed(a: Anatomy, s: Stations, feed_end: float, seat: float | None = None) -> None:
    """The feed with its fins and tail, and the nib on it with slit, breather hole and tipping.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    s : Stations
        Places.
    feed_end : float
        Where the feed's tail ends [mm].
    seat : float or None
        Where the thick part of the feed ends [mm]; None for just before the barrel's mouth.
    """
    shoulder = s.mouth - 1.5 if seat is None else seat
    _feed(a, s, shoulder, feed_end)
    _nib(a, s, s.nib + 0.55 * (shoulder - s.nib))
    a.anchor("feed", 0.66 * s.nib, 0.8 * s.feed, fixed=True)
    a.length("nib_length", 0.0, s.nib, 0.0)
    a.diameter("feed_tail", 0.5 * (shoulder + feed_end), 0.75 * s.passage)
    a.diameter("feed_diameter", 0.5 * (s.nib + shoulder), s.feed)


def _feed(a: Anatomy, s: Stations, shoulder: float, end: float) -> None:
    """The feed with its tail, its fins, and its channel."""
    n, f = s.nib, s.feed
    belly = [(n, f), *curve((n, f), (0.72 * n, f), (0.48 * n, 0.95 * f), (0.25 * n, 0.36 * f))]
    tail = [(shoulder, -f), (shoulder, -0.75 * s.passage), (end, -0.75 * s.passage), (end, 0.75 * s.passage)]
    back = [(shoulder, 0.75 * s.passage), (shoulder, f)]
    a.path("feed", [(0.25 * n, 0.0), (n, -f), *tail, *back, *belly], "plain")
    x = n - 1.1
    while x > 0.36 * n:
        foot = _height(belly, x)
        a.path("feed", [(x, foot), (x, foot - 0.34 * f)], "line")
        x -= 0.95
    a.path("feed", [(n, -0.62 * f), (end, -0.25 * s.passage)], "hidden")


def _nib(a: Anatomy, s: Stations, back: float) -> None:
    """The nib from its tipping to where it ends in the section, with slit and breather hole."""
    n, f, tip = s.nib, s.feed, 0.12 * s.feed
    top = -s.hole + 0.05
    upper = curve((n, top), (0.62 * n, top), (0.3 * n, 0.5 * top), (0.9, tip - 0.3))
    lower = curve((0.68 * n, 0.46 * f), (0.5 * n, 0.46 * f), (0.3 * n, 0.16 * f), (0.9, tip + 0.3))
    outline = [(back, top), (n, top), *upper, *reversed(lower), (0.68 * n, 0.46 * f), (n - 0.1, 0.3 * f)]
    a.path("nib", [*outline, (n - 0.1, top + 0.45), (back, top + 0.45)], "metal")
    hole_x, hole_y = 0.56 * n, 0.52 * top
    slit = curve((hole_x, hole_y), (0.36 * n, 0.34 * top), (0.2 * n, 0.0), (0.3, tip))
    a.path("nib", [(hole_x - 0.4, hole_y), *slit], "line")
    a.path("nib", round_points(hole_x, hole_y, 0.5, 0.64), "void")
    a.path("nib", round_points(0.75, tip, 0.75, 0.7), "metal")
    a.anchor("nib", 0.44 * n, 0.08 * top, fixed=True)


def section(a: Anatomy, p: Proportions, s: Stations, *, nipple: bool) -> float:
    """The section in section, with its tenon in the barrel and, for a sac, its nipple.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    nipple : bool
        Whether it carries a sac; otherwise its tenon is threaded.

    Returns
    -------
    float
        Where the section ends inside the barrel [mm].
    """
    r, n, m = p.radius("section_diameter"), s.nib, s.mouth
    tenon = min(s.bore, s.outer - 0.5)
    grip = max(0.9 * r, s.hole + 0.3)
    collar = max(r, min(s.outer * 0.97, r * 1.04))
    outer: list[Point] = [(n, 0.95 * r), (n + 0.5, r), (n + 1.2, r), (n + 3.0, grip), (n + 0.55 * (m - n), grip)]
    outer += [(m - 0.8, r), (m - 0.4, collar), (m, collar), (m, tenon)]
    if nipple:
        reach, rn = s.tenon + 5.5, p.radius("nipple")
        outer += [(s.tenon, tenon), (s.tenon, rn), (reach - 0.5, rn), (reach, rn - 0.25)]
        a.anchor("nipple", s.tenon + 2.8, 0.5 * (rn + s.passage))
        a.diameter("nipple", s.tenon + 2.5, rn)
        a.path("nipple", [(s.tenon, -rn), (reach - 0.5, -rn), (reach, -rn + 0.25)], "line")
        a.path("nipple", [(s.tenon, rn), (reach - 0.5, rn), (reach, rn - 0.25)], "line")
    else:
        reach = s.tenon
        crests = threads(m + 0.6, s.tenon - 0.3, tenon)
        outer += [*crests, (s.tenon, tenon - 0.35)]
    seat = m - 1.3
    a.shell("section", outer, [(n, s.hole), (seat, s.hole), (seat, s.passage), (reach, s.passage)], "cut-back")
    if not nipple:
        a.path("section-joint", [(x, -y) for x, y in crests], "line")
        a.path("section-joint", crests, "line")
        a.anchor("section-joint", 0.5 * (m + s.tenon), tenon - 0.2)
    a.anchor("section", n + 0.42 * (m - n), 0.5 * (grip + s.hole))
    a.length("section_length", n, m, 0.0)
    a.diameter("section_diameter", m - 0.5, r)
    return reach


def barrel(
    a: Anatomy,
    p: Proportions,
    s: Stations,
    *,
    inner: Sequence[Point] | None = None,
    rear: Sequence[Point] | None = None,
) -> None:
    """The barrel in section: closed at the end, or with a worked rear end.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    inner : sequence of (float, float) or None
        (x, radius) of the hole from the mouth; None for a plain closed bore.
    rear : sequence of (float, float) or None
        (x, radius) of the outside behind the barrel's end; None for a closed, rounded end.
    """
    thread, start = p.radius("thread_diameter"), s.mouth + 1.2
    stop = start + p["thread_length"]
    depth = max(min(0.35, 0.45 * (thread - s.bore)), 0.08)
    crests = threads(start, stop, thread, depth)
    outer: list[Point] = [(s.mouth, s.outer), (start, s.outer), *crests, (stop, s.outer)]
    outer.append((s.mouth + 0.65 * p["barrel_length"], s.outer))
    if rear is None:
        outer += [*dome(s.end - 2.6, s.tail, 2.6, 0.6 * s.tail), (s.end, 0.0)]
        floor = min(s.mouth + p["barrel_depth"], s.end - 0.3)
        hole: Sequence[Point] = [(s.mouth, s.bore), *dome(floor - 1.8, s.bore, 1.8, 0.5 * s.bore), (floor, 0.0)]
        a.length("barrel_depth", s.mouth, floor, 0.0)
    else:
        outer += [*([(s.end, s.tail)] if rear[0][0] >= s.end else []), *rear]
        hole = inner or [(s.mouth, s.bore), (rear[-1][0], s.bore)]
    a.shell("barrel", outer, hole if inner is None else inner, "cut")
    _cap_threads(a, crests, (start, stop), thread)
    a.anchor("barrel", s.mouth + 0.6 * p["barrel_length"], 0.5 * (s.outer + s.bore))
    a.length("barrel_length", s.mouth, s.end, 0.0)
    a.diameter("barrel_diameter", stop + 2.0, s.outer)
    a.diameter("bore", s.mouth + 0.5 * p["barrel_length"], s.bore)
    a.length("open_length", 0.0, s.total, 0.0)


def _cap_threads(a: Anatomy, crests: Sequence[Point], ends: tuple[float, float], radius: float) -> None:
    """The threads that the cap goes on, on both sides of the axis."""
    start, stop = ends
    a.path("cap-threads", [(x, -y) for x, y in crests], "line")
    a.path("cap-threads", crests, "line")
    a.anchor("cap-threads", 0.5 * (start + stop), radius - 0.1)
    a.diameter("thread_diameter", 0.5 * (start + stop), radius)
    a.length("thread_length", start, stop, 0.0)


def blind_cap(a: Anatomy, s: Stations, part: str, hollow: float, depth: float, *, name: str = "end_length") -> None:
    """A hollow end piece behind the barrel: blind cap, end cap or knob.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    s : Stations
        Places.
    part : str
        Part key.
    hollow : float
        Radius of its hole [mm].
    depth : float
        Depth of the hole [mm].
    name : str
        Dimension its length is shown under.
    """
    length = s.total - s.end
    rounding = min(0.45 * length, 4.5)
    outer: list[Point] = [(s.end + 0.15, s.tail), *dome(s.total - rounding, 0.96 * s.tail, rounding, 0.0)]
    deep = s.end + min(depth, length - 1.2)
    hole = min(hollow, s.tail - 0.7)
    bend = min(s.total - rounding, deep - 0.6)
    inner: list[Point] = [(s.end + 0.15, hole), *dome(bend, hole, deep - bend, 0.0)]
    a.shell(part, outer, inner, "cut-back")
    a.anchor(part, s.end + 0.4 * length, 0.5 * (s.tail + hole))
    a.length(name, s.end, s.total, 0.0)


def _height(edge: Sequence[Point], x: float) -> float:
    for (x0, y0), (x1, y1) in itertools.pairwise(edge):
        if min(x0, x1) <= x <= max(x0, x1) and x0 != x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return edge[0][1]
