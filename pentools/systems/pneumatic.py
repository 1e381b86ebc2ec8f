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
    front = s.tenon + 7.5
    shape: list[Point] = [(front, outer), (back, outer), (back, 0.0)]
    hollow: list[Point] = [(front, outer - wall), (back - 1.0, outer - wall), (back - 1.0, 0.0)]
    blind_cap(a, s, "blind-cap", outer, 0.55 * (s.total - s.end))
    a.shell("pneumatic-tube", shape, hollow, "metal")
    port = seat - 7.0
    a.path(
        "port",
        [(port, outer - wall - 0.02), (port + 1.6, outer - wall - 0.02), (port + 1.6, outer), (port, outer)],
        "void",
    )
    a.anchor("port", port + 0.8, outer - 0.5 * wall, fixed=True)
    room = outer - wall - body
    skin = body + 0.35 * max(room, 0.3)
    thick = min(0.4, 0.45 * max(room, 0.3))
    stop = min(end + 1.5, back - 2.5)
    case: list[Point] = [(s.tenon + 0.2, skin + thick), *dome(stop - 2.0, skin + thick, 2.0, 0.35 * skin)]
    lining: list[Point] = [(s.tenon + 0.2, skin), *dome(stop - 2.3, skin, 1.9, 0.3 * skin)]
    a.shell("sac-protector", case, lining, "plain")
    a.anchor("sac-protector", s.tenon + 0.78 * (stop - s.tenon), skin + 0.5 * thick)
    a.anchor("pneumatic-tube", front + 0.18 * (back - front), outer - 0.5 * wall)
    a.diameter("tube_diameter", front + 0.3 * (back - front), outer)
    return end
