"""The outside of a pen, part by part, as it lies on the bench: closed, or open with section and threads to be seen."""

from __future__ import annotations

import itertools
from dataclasses import dataclass, field

from pentools.errors import InputError
from pentools.systems.anatomy import Anatomy, Piece, Span
from pentools.systems.assembly import anatomy_of
from pentools.systems.front import Stations, stations_of
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions
from pentools.systems.registry import system_named

__all__ = ["Outline", "outline_of"]

_SEEN = {
    "barrel_length", "barrel_diameter", "section_length", "section_diameter", "nib_length", "cap_length", "cap_diameter",
    "open_length", "capped_length", "end_length", "thread_diameter", "thread_length",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Outline:
    """Outside of a pen.

    Parameters
    ----------
    profiles : dict of str to tuple of (float, float)
        Part -> (x, radius) along its outside [mm].
    anatomy : Anatomy
        The same as pieces, ready to paint.
    over : tuple of Piece
        What lies on top of any shading: thread lines, lever.
    clip : tuple of (float, float)
        Outline of the clip [mm]; empty without the cap.
    spans : dict of str to Span
        The dimensions that can be read off the outside.
    front, back : float
        Foremost and rearmost x [mm].
    """

    profiles: dict[str, tuple[Point, ...]]
    front: float
    back: float
    anatomy: Anatomy = field(default_factory=Anatomy)
    over: tuple[Piece, ...] = ()
    clip: tuple[Point, ...] = ()
    spans: dict[str, Span] = field(default_factory=dict)

    def stretch(self, part: str, start_mm: float | None = None, end_mm: float | None = None) -> list[Point]:
        """The outside of a part between two distances from its front end.

        Parameters
        ----------
        part : str
            Part key.
        start_mm, end_mm : float or None
            Distances [mm]; None for its ends.

        Returns
        -------
        list of (float, float)
            (x, radius) [mm].

        Raises
        ------
        InputError
            When the part is not seen, or the stretch lies past its end.
        """
        if part not in self.profiles:
            raise InputError(
                "part of a zone", "one of " + ", ".join(self.profiles), part, "Draw it with the cap off or on."
            )
        whole = self.profiles[part]
        x0 = whole[0][0] + (start_mm or 0.0)
        x1 = min(whole[-1][0] if end_mm is None else whole[0][0] + end_mm, whole[-1][0])
        if x0 >= x1:
            length = whole[-1][0] - whole[0][0]
            raise InputError(
                "start of a zone", f"less than the part's {length:.1f} mm that show", f"{start_mm or 0.0:g} mm"
            )
        inside = [point for point in whole if x0 < point[0] < x1]
        return [(x0, self.height(part, x0)), *inside, (x1, self.height(part, x1))]

    def height(self, part: str, x: float) -> float:
        """Radius of a part at a place.

        Parameters
        ----------
        part : str
            Part key.
        x : float
            Place [mm].

        Returns
        -------
        float
            Radius [mm].
        """
        if part == "clip":
            return self.profiles[part][0][1]
        for (xa, ra), (xb, rb) in itertools.pairwise(self.profiles[part]):
            if xa <= x <= xb:
                return rb if xa == xb else ra + (rb - ra) * (x - xa) / (xb - xa)
        return self.profiles[part][-1][1]


def outline_of(system: str, p: Proportions, *, capped: bool) -> Outline:
    """The outside of a pen.

    Parameters
    ----------
    system : str
        Filling system key.
    p : Proportions
        Complete dimensions.
    capped : bool
        Whether the cap is on.

    Returns
    -------
    Outline
        Profiles and pieces.
    """
    s, declared = stations_of(p), system_named(system)
    anatomy, front, back = anatomy_of(system, p, capped=capped)
    profiles: dict[str, tuple[Point, ...]] = {}
    start = _closed(profiles, anatomy, p) if capped else _open(profiles, anatomy, p, s)
    end_part = "blind-cap" if declared.end_part == "barrel" else declared.end_part
    _barrel_and_end(profiles, p, s, start, end_part)
    over = [piece for piece in anatomy.pieces if piece.part in declared.outside]
    if not capped:
        over += _thread_lines(profiles["cap-threads"])
    clip = next((piece.points for piece in anatomy.pieces if piece.part == "clip"), ())
    spans = {name: span for name, span in anatomy.spans.items() if name in _SEEN}
    return Outline(profiles, front, back, _painted(profiles, anatomy, end_part, capped), tuple(over), clip, spans)


def _barrel_and_end(
    profiles: dict[str, tuple[Point, ...]], p: Proportions, s: Stations, start: float, end_part: str
) -> None:
    """The barrel from where it begins to show, rounded or with its end piece."""
    barrel: list[Point] = [(s.mouth + 0.65 * p["barrel_length"], s.outer)]
    barrel += [(s.end, s.tail)] if s.total > s.end else dome(s.end - 2.6, s.tail, 2.6, 0.6 * s.tail)
    profiles["barrel"] = ((start, s.outer), *(point for point in barrel if point[0] > start))
    if s.total > s.end:
        rounding = min(0.45 * (s.total - s.end), 4.5)
        profiles[end_part] = ((s.end, s.tail), *dome(s.total - rounding, 0.96 * s.tail, rounding, 0.0))


def _painted(profiles: dict[str, tuple[Point, ...]], anatomy: Anatomy, end_part: str, capped: bool) -> Anatomy:
    """The profiles as turned bodies; nib and feed lie behind them, the clip on them."""
    drawn = Anatomy()
    for part in ("section", "barrel", end_part, "cap", "cap-band", "cap-threads"):
        if part in profiles:
            drawn.solid(part, profiles[part], "metal" if part == "cap-band" else "void")
    keep = {"clip"} if capped else {"nib", "feed"}
    shown = [piece for piece in anatomy.pieces if piece.part in keep and piece.style != "hidden"]
    drawn.pieces = [*drawn.pieces, *shown] if capped else [*shown, *drawn.pieces]
    return drawn


def _closed(profiles: dict[str, tuple[Point, ...]], anatomy: Anatomy, p: Proportions) -> float:
    """Cap, band and clip; returns where the barrel begins to show [mm]."""
    crown = anatomy.spans["cap_length"]
    top, mouth = crown.start[0], crown.end[0]
    r = p.radius("cap_diameter")
    profiles["cap"] = (*_reversed_dome(top, 0.95 * r, 5.5, 0.5 * r), (mouth, r))
    for part, radius in (("cap-band", r + 0.18), ("clip", r + 1.6)):
        xs = [x for piece in anatomy.pieces if piece.part == part for x, _ in piece.points]
        profiles[part] = ((min(xs), radius), (max(xs), radius))
    return mouth


def _open(profiles: dict[str, tuple[Point, ...]], anatomy: Anatomy, p: Proportions, s: Stations) -> float:
    """Section and cap threads; returns where the barrel begins [mm]."""
    if s.mouth > s.nib:
        r = p.radius("section_diameter")
        grip = max(0.9 * r, s.hole + 0.3)
        waist = s.nib + 0.55 * (s.mouth - s.nib)
        profiles["section"] = ((s.nib, 0.95 * r), (s.nib + 1.2, r), (s.nib + 3.0, grip), (waist, grip), (s.mouth, r))
    threads, radius = anatomy.spans["thread_length"], p.radius("thread_diameter")
    profiles["cap-threads"] = ((threads.start[0], radius), (threads.end[0], radius))
    return s.mouth


def _reversed_dome(top: float, radius: float, depth: float, flat: float) -> list[Point]:
    return [(2.0 * top + depth - x, r) for x, r in reversed(dome(top, radius, depth, flat))]


def _thread_lines(profile: tuple[Point, ...]) -> list[Piece]:
    (x0, radius), (x1, _) = profile
    count = max(int((x1 - x0) / 0.9), 1)
    step = (x1 - x0) / count
    places = [x0 + step * (i + 0.3) for i in range(count)]
    return [Piece("cap-threads", ((x, -radius), (x + 0.4 * step, radius)), "line") for x in places]
