"""What pneumatic fillers share: the sac in its protector, and the tube that slides over it."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions
from pentools.systems.sac import sac

__all__ = ["pressed_sac"]


def pressed_sac(a: Anatomy, p: Proportions, s: Stations) -> float:
    """Barrel, sac in its protector, and the tube that slides over it; returns the sac's end [mm]."""
    outer = p.radius("tube_diameter")
    wall = min(0.45, 0.12 * outer)
    ring = min(0.55 * (s.outer - outer) + 0.3, 1.8)
    seat = s.end - 4.5
    bore, land = s.bore, min(outer + 0.12, s.bore)
    groove = min(outer + ring, s.tail - 0.35)
    inner: list[Point] = [(s.mouth, bore), (seat - 2.0, bore), (seat - 1.5, land), (seat, land), (seat, groove)]
    inner += [(seat + ring + 0.3, groove), (seat + ring + 0.3, land), (s.end, land)]
    barrel(a, p, s, inner=inner, rear=[(s.end, s.tail)])
    end, body = sac(a, p, s)
    a.o_ring("tube-ring", seat + 0.15 + 0.5 * ring, groove, outer)
    a.anchor("tube-ring", seat + 0.15 + 0.5 * ring, 0.5 * (groove + outer))
    back = s.end + 0.55 * (s.total - s.end)
    _tube(a, s, (s.tenon + 7.5, back), (outer, outer - wall), seat - 7.0)
    _protector(a, s, min(end + 1.5, back - 2.5), body, outer - wall)
    return end


def _tube(a: Anatomy, s: Stations, ends: tuple[float, float], radii: tuple[float, float], port: float) -> None:
    """The sliding tube with its port, and the blind cap it is drawn by."""
    (front, back), (outer, inside) = ends, radii
    blind_cap(a, s, "blind-cap", outer, 0.55 * (s.total - s.end))
    hollow: list[Point] = [(front, inside), (back - 1.0, inside), (back - 1.0, 0.0)]
    a.shell("pneumatic-tube", [(front, outer), (back, outer), (back, 0.0)], hollow, "metal")
    low = inside - 0.02
    a.path("port", [(port, low), (port + 1.6, low), (port + 1.6, outer), (port, outer)], "void")
    a.anchor("port", port + 0.8, 0.5 * (outer + inside), fixed=True)
    a.anchor("pneumatic-tube", front + 0.18 * (back - front), 0.5 * (outer + inside))
    a.diameter("tube_diameter", front + 0.3 * (back - front), outer)


def _protector(a: Anatomy, s: Stations, stop: float, sac_radius: float, tube_inside: float) -> None:
    """The case round the sac, between it and the tube."""
    room = max(tube_inside - sac_radius, 0.3)
    skin, thick = sac_radius + 0.35 * room, min(0.4, 0.45 * room)
    case: list[Point] = [(s.tenon + 0.2, skin + thick), *dome(stop - 2.0, skin + thick, 2.0, 0.35 * skin)]
    lining: list[Point] = [(s.tenon + 0.2, skin), *dome(stop - 2.3, skin, 1.9, 0.3 * skin)]
    a.shell("sac-protector", case, lining, "plain")
    a.anchor("sac-protector", s.tenon + 0.78 * (stop - s.tenon), skin + 0.5 * thick)
