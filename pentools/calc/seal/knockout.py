"""A tool made for the job: the tube that drives feed and nib out of a section, and the block it stands on."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["KnockoutTool", "Soak", "Tube", "knockout_tool"]

CLEARANCE_MM = 0.1
LEAST_WALL_MM = 0.4
LEAST_BEARING_MM = 0.25
LEAST_LEDGE_MM = 1.0
BEYOND_MM = 5.0
TENTH = 10


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube, or a punch where its inside is 0: inside and outside diameter that belong together [mm]."""

    inside_mm: float
    outside_mm: float

    @property
    def wall_mm(self) -> float:
        """Its wall [mm]."""
        return (self.outside_mm - self.inside_mm) / 2


@dataclass(frozen=True, slots=True)
class Soak:
    """How far the section's material may lie in cold water: ok, limited or never, and its limit in words."""

    verdict: str
    limit: str = ""


@dataclass(frozen=True, slots=True)
class KnockoutTool:
    """A knock-out tube and its block.

    Parameters
    ----------
    tube : Tube or None
        Inside and outside that belong together: the stoutest that goes, on tenths of a millimetre; None where none can
        be made.
    inside_low_mm, inside_high_mm : float
        Inside diameters that some tube with a sound wall can have [mm].
    outside_low_mm, outside_high_mm : float
        Outside diameters that some tube with a sound wall can have [mm]; each needs its own inside (`does`).
    reach_mm : float
        Least length of the turned part [mm].
    block_low_mm, block_high_mm : float or None
        Hole of the block [mm]; None where the front was not measured.
    findings : tuple of Finding
        What to know.
    """

    tube: Tube | None
    inside_low_mm: float
    inside_high_mm: float
    outside_low_mm: float
    outside_high_mm: float
    reach_mm: float
    block_low_mm: float | None
    block_high_mm: float | None
    findings: tuple[Finding, ...]

    @property
    def possible(self) -> bool:
        """Whether a tube can be made."""
        return self.tube is not None

    def does(self, tube: Tube) -> bool:
        """Whether a tube in hand goes: it clears, bears and passes, and its wall stands."""
        if not self.possible:
            return False
        inside = self.inside_low_mm - 1e-9 <= tube.inside_mm <= self.inside_high_mm + 1e-9
        return inside and tube.wall_mm >= LEAST_WALL_MM - 1e-9 and tube.outside_mm <= self.outside_high_mm + 1e-9


def knockout_tool(
    tail_mm: float,
    shoulder_mm: float,
    bore_mm: float,
    *,
    depth_mm: float = 0.0,
    front_mm: float | None = None,
    section_mm: float | None = None,
    clearance_mm: float = CLEARANCE_MM,
    soak: Soak | None = None,
) -> KnockoutTool:
    """Inside and outside diameter of a knock-out tube, and the hole of its block.

    Parameters
    ----------
    tail_mm : float
        The feed's tail, or breather tube, that must stay clear [mm], 0 to 8: 0 for a solid punch.
    shoulder_mm : float
        The feed's shoulder that the tube bears on [mm], above the tail.
    bore_mm : float
        The section's bore on the nipple side that the tube passes [mm], 1 to 15.
    depth_mm : float
        From the nipple's mouth to the shoulder, plus the way to drive [mm], 0 to 60.
    front_mm : float or None
        Largest width of nib and feed that must fall through the block [mm].
    section_mm : float or None
        Outside of the section's front edge, which rests on the block [mm].
    clearance_mm : float
        Gap in diameter to what must stay free [mm], 0.02 to 1.
    soak : Soak or None
        How far the section's material may lie in water; None where it is not known, which is taken as not at all.

    Returns
    -------
    KnockoutTool
        Tube, windows and findings.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another.

    Notes
    -----
    Inside: tail + clearance, to shoulder - 2 × 0.25 mm so that it still bears. Outside: inside + 2 × 0.4 mm of wall,
    to the bore - clearance. Inside and outside are a pair: the largest inside goes with the largest outside only.
    Block: front + 2 × clearance, to the section's edge - 2 × 1 mm of ledge. Elementary geometry; the least wall,
    bearing and ledge are judged for brass or steel tube.

    Examples
    --------
    >>> tool = knockout_tool(1.8, 4.2, 5.0)
    >>> tool.tube, tool.does(Tube(3.7, 2.7)), tool.does(Tube(3.6, 4.6))
    (Tube(inside_mm=1.9, outside_mm=4.9), False, True)
    """
    _check(tail_mm, shoulder_mm, bore_mm, depth_mm, clearance_mm)
    inside_low = tail_mm + clearance_mm if tail_mm else 0.0
    outside_high = bore_mm - clearance_mm
    inside_high = max(min(shoulder_mm - 2 * LEAST_BEARING_MM, outside_high - 2 * LEAST_WALL_MM), 0.0)
    outside_low = inside_low + 2 * LEAST_WALL_MM
    tube = None
    if inside_low <= inside_high + 1e-9 and outside_low <= outside_high + 1e-9:
        tube = _stoutest(inside_low, inside_high, outside_high)
    block_low = None if front_mm is None else front_mm + 2 * clearance_mm
    block_high = None if section_mm is None else section_mm - 2 * LEAST_LEDGE_MM
    findings = [_tool_finding(tube, bool(tail_mm), inside_low, outside_high)]
    if block_low is not None and block_high is not None and block_low > block_high:
        findings.append(Finding("stop", "seal.block", front=front_mm, section=section_mm))
    findings.append(_force_finding(soak))
    return KnockoutTool(
        tube, inside_low, inside_high, outside_low, outside_high, depth_mm + BEYOND_MM, block_low, block_high,
        tuple(findings),
    )  # fmt: skip


def _check(tail: float, shoulder: float, bore: float, depth: float, clearance: float) -> None:
    for name, value, low, high in (
        ("tail", tail, 0.0, 8.0),
        ("shoulder", shoulder, 0.5, 14.0),
        ("section bore", bore, 1.0, 15.0),
        ("depth", depth, 0.0, 60.0),
        ("clearance", clearance, 0.02, 1.0),
    ):
        if not low <= value <= high:
            raise InputError(name, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it typed in another unit?")
    if shoulder <= tail:
        raise InputError("shoulder", f"above the tail of {tail:g} mm", f"{shoulder:g} mm", "Were the two mixed up?")


def _stoutest(inside_low: float, inside_high: float, outside_high: float) -> Tube:
    """The tube with the thickest wall, on tenths where a tenth lies in the window."""
    inside = math.ceil(TENTH * inside_low - 1e-6) / TENTH
    outside = math.floor(TENTH * outside_high + 1e-6) / TENTH
    tenths = Tube(inside, outside)
    if inside <= inside_high + 1e-9 and tenths.wall_mm >= LEAST_WALL_MM - 1e-9:
        return tenths
    return Tube(inside_low, outside_high)


def _tool_finding(tube: Tube | None, hollow: bool, inside_low: float, outside_high: float) -> Finding:
    if tube is None:
        return Finding("stop", "seal.no-tool", inside=inside_low, outside=outside_high, wall=LEAST_WALL_MM)
    said = {"inside": tube.inside_mm, "outside": tube.outside_mm, "wall": tube.wall_mm}
    return Finding("ok", "seal.tool:tube" if hollow else "seal.tool:punch", **said)


def _force_finding(soak: Soak | None) -> Finding:
    if soak is None:
        return Finding("warning", "seal.force:unnamed")
    if soak.verdict == "limited":
        return Finding("warning", "seal.force:short", limit=soak.limit)
    return Finding("warning", "seal.force:soak" if soak.verdict == "ok" else "seal.force:dry")
