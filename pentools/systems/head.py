"""The piston head with its seal in the groove."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions

__all__ = ["piston_head"]


def piston_head(a: Anatomy, p: Proportions, x: float, bore: float) -> float:
    """A piston head with its seal in the groove; returns where the head ends [mm]."""
    head, length = p.radius("head_diameter"), p["head_length"]
    groove, width = p.radius("groove_diameter"), p["groove_width"]
    g0 = x + 0.5 * (length - width)
    shape: list[Point] = [(x, 0.8 * head), (x + 0.4, head), (g0, head), (g0, groove), (g0 + width, groove)]
    a.solid("piston-head", [*shape, (g0 + width, head), (x + length, head)], "plain")
    a.ring("head-seal", (g0 + 0.04, width - 0.08), (bore, groove), "soft")
    a.anchor("piston-head", x + 0.5 * (g0 - x), 0.45 * head)
    a.anchor("head-seal", g0 + 0.5 * width, 0.5 * (bore + groove))
    a.diameter("head_diameter", x + 0.3, head)
    a.diameter("groove_diameter", g0 + 0.5 * width, groove)
    a.length("groove_width", g0, g0 + width, -0.5 * (head + groove))
    a.length("head_length", x, x + length, 0.0)
    return x + length
