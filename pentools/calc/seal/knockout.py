"""A tool made for the job: the tube that drives feed and nib out of a section, and the block it stands on."""

from __future__ import annotations

from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["KnockoutTool", "knockout_tool"]

CLEARANCE_MM = 0.1
LEAST_WALL_MM = 0.4
LEAST_BEARING_MM = 0.25
LEAST_LEDGE_MM = 1.0


@dataclass(frozen=True, slots=True)
class KnockoutTool:
    """Windows for a knock-out tube and its block.

    Parameters
    ----------
    inside_low_mm, inside_high_mm : float
        Inside diameter of the tube [mm].
    outside_low_mm, outside_high_mm : float
        Outside diameter of the tube [mm].
    reach_mm : float
        Least length of the turned part [mm].
    block_low_mm, block_high_mm : float or None
        Hole of the block [mm]; None where the front was not measured.
    possible : bool
        Whether a tube can be made.
    findings : tuple of Finding
        What to know.
    """

    inside_low_mm: float
    inside_high_mm: float
    outside_low_mm: float
    outside_high_mm: float
    reach_mm: float
    block_low_mm: float | None
    block_high_mm: float | None
    possible: bool
    findings: tuple[Finding, ...]


def knockout_tool(
    tail_mm: float,
    shoulder_mm: float,
    bore_mm: float,
    *,
    depth_mm: float = 0.0,
    front_mm: float | None = None,
    section_mm: float | None = None,
    clearance_mm: float = CLEARANCE_MM,
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

    Returns
    -------
    KnockoutTool
        Windows and findings.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another.

    Notes
    -----
    Inside: tail + clearance, to shoulder - 2 × 0.25 mm so that it still bears. Outside: inside + 2 × 0.4 mm of wall,
    to the bore - clearance. Block: front + clearance, to the section's edge - 2 × 1 mm of ledge. Elementary
    geometry; the least wall, bearing and ledge are judged for brass or steel tube.

    Examples
    --------
    >>> tool = knockout_tool(1.8, 4.2, 5.0)
    >>> round(tool.inside_low_mm, 2), round(tool.inside_high_mm, 2), round(tool.outside_high_mm, 2)
    (1.9, 3.7, 4.9)
    """
    for name, value, low, high in (
        ("tail", tail_mm, 0.0, 8.0),
        ("shoulder", shoulder_mm, 0.5, 14.0),
        ("section bore", bore_mm, 1.0, 15.0),
        ("depth", depth_mm, 0.0, 60.0),
        ("clearance", clearance_mm, 0.02, 1.0),
    ):
        if not low <= value <= high:
            raise InputError(name, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it typed in another unit?")
    if shoulder_mm <= tail_mm:
        raise InputError(
            "shoulder", f"above the tail of {tail_mm:g} mm", f"{shoulder_mm:g} mm", "Were the two mixed up?"
        )
    inside_low = tail_mm + clearance_mm if tail_mm else 0.0
    inside_high = max(min(shoulder_mm, bore_mm) - 2 * LEAST_BEARING_MM, 0.0)
    outside_low = inside_low + 2 * LEAST_WALL_MM
    outside_high = bore_mm - clearance_mm
    possible = inside_low <= inside_high and outside_low <= outside_high and outside_high > inside_low
    block_low = None if front_mm is None else front_mm + 2 * clearance_mm
    block_high = None if section_mm is None else section_mm - 2 * LEAST_LEDGE_MM
    findings = list(_tool_findings(possible, bool(tail_mm), inside_low, outside_high))
    if block_low is not None and block_high is not None and block_low > block_high:
        findings.append(
            Finding(
                "stop",
                f"The block cannot both let {front_mm:.2f} mm through and leave a ledge under {section_mm:.2f} mm: use a split block shaped to the section.",
                "block",
            )
        )
    return KnockoutTool(
        inside_low,
        inside_high,
        outside_low,
        outside_high,
        depth_mm + 5.0,
        block_low,
        block_high,
        possible,
        tuple(findings),
    )


def _tool_findings(possible: bool, tube: bool, inside_low: float, outside_high: float) -> tuple[Finding, ...]:
    if possible:
        kind = "tube" if tube else "punch"
        first = Finding(
            "ok",
            f"A {kind} up to {outside_high:.2f} mm outside{f' and from {inside_low:.2f} mm inside' if tube else ''} does it; deburr its end, no sharp edge on the shoulder.",
            "tool",
        )
    else:
        first = Finding(
            "stop",
            f"No tube fits: it would have to be over {inside_low:.2f} mm inside and under {outside_high:.2f} mm outside with a sound wall. Try from the front, or soak and pull.",
            "no-tool",
        )
    caution = Finding(
        "warning",
        "Hold the block, wear eye protection, and tap lightly after soaking: a section that does not move wants more soaking, not more force. Follow local codes; ask a licensed professional.",
        "force",
    )
    return first, caution
