"""Will the nib touch the inner cap: its depth less how far the nib stands out of the section."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, Level
from pentools.calc.base.uncertainty import COVERAGE
from pentools.errors import InputError

__all__ = ["Clearance", "cap_clearance"]

_LEVELS: dict[str, Level] = {
    "touches": "stop", "may touch": "stop", "too near": "stop", "near": "warning", "clear": "ok", "cannot tell": "warning",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Clearance:
    """Room in front of the nib, capped.

    Parameters
    ----------
    clearance_mm, expanded_mm : float
        From the tip to the bottom of the inner cap [mm], below 0 where the nib is longer, and its ±.
    verdict : {"touches", "may touch", "too near", "near", "clear", "cannot tell"}
        In a word.
    finding : Finding
        In words.
    """

    clearance_mm: float
    expanded_mm: float
    verdict: str
    finding: Finding

    @property
    def may_be_capped(self) -> bool:
        """Whether the cap may go on: only where the nib is known to stay clear by a good half millimetre."""
        return self.verdict in ("near", "clear")


def cap_clearance(
    reach_mm: float,
    inner_cap_mm: float,
    *,
    reach_u_mm: float,
    inner_cap_u_mm: float,
    least_mm: float,
    good_mm: float,
    seated: bool | None = None,
) -> Clearance:
    """Room between the nib's tip and the bottom of the inner cap.

    Parameters
    ----------
    reach_mm : float
        From the section's face to the nib's tip [mm], above 0.
    inner_cap_mm : float
        From the inner cap's mouth to its bottom [mm], above 0.
    reach_u_mm, inner_cap_u_mm : float
        Their standard uncertainties [mm], 0 or more.
    least_mm, good_mm : float
        Below the first it is not capped, below the second it is held [mm].
    seated : bool or None
        Whether the section's face stops on the inner cap's mouth when capped; None where nobody looked.

    Returns
    -------
    Clearance
        Room, its ± and a verdict.

    Raises
    ------
    InputError
        If a length is not above 0, or an uncertainty below it.

    Notes
    -----
    Clearance = depth of the inner cap − reach, as the section's face sits on the mouth (a dealer's page on inner
    caps). A section that goes past the mouth leaves less, by as much as it goes: then nothing is told. Limits judged.
    """
    if not (reach_mm > 0 and inner_cap_mm > 0 and reach_u_mm >= 0 and inner_cap_u_mm >= 0):
        raise InputError("reach and inner cap", "above 0 mm", f"{reach_mm:g} mm and {inner_cap_mm:g} mm")
    room = inner_cap_mm - reach_mm
    wide = COVERAGE * math.hypot(reach_u_mm, inner_cap_u_mm)
    verdict = "cannot tell" if seated is False else _verdict(room, wide, least_mm, good_mm)
    name = verdict.replace(" ", "-")
    values = {"room": room, "short": -room, "wide": wide, "least": least_mm, "good": good_mm}
    finding = Finding(_LEVELS[verdict], f"nib.clearance:{name}", **values)
    return Clearance(room, wide, verdict, finding)


def _verdict(room: float, wide: float, least: float, good: float) -> str:
    if room + wide < 0:
        return "touches"
    if room - wide < 0:
        return "may touch"
    if room < least:
        return "too near"
    return "clear" if room >= good else "near"
