"""Plain dilutions of peroxide and alcohol: how much of the stronger one, how much water."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.hazards import HazardRow, hazards_of
from pentools.errors import InputError

__all__ = ["STRONGEST_PEROXIDE_PERCENT", "Dilution", "dilution"]

STRONGEST_PEROXIDE_PERCENT = 12.0
SHELF_PEROXIDE_PERCENT = 3.0


@dataclass(frozen=True, slots=True)
class Dilution:
    """How to make a weaker mix from a stronger one.

    Parameters
    ----------
    strong_ml : float
        How much of the stronger one [ml].
    water_ml : float or None
        How much water [ml]; None where it is topped up to the mark, because the volumes do not add.
    final_ml : float
        How much it makes [ml].
    sentence : str
        What to do.
    findings : tuple of Finding
        What to mind.
    """

    strong_ml: float
    water_ml: float | None
    final_ml: float
    sentence: str
    findings: tuple[Finding, ...]


def dilution(
    strong_percent: float,
    wanted_percent: float,
    final_ml: float,
    kind: Literal["peroxide", "alcohol"],
    *,
    hazards: Sequence[HazardRow] = (),
) -> Dilution:
    """A weaker mix out of a stronger one and water.

    Parameters
    ----------
    strong_percent, wanted_percent : float
        Strength at hand and wanted [%], above 0 to 100, peroxide at most 12; the wanted one not above the one at hand.
    final_ml : float
        How much is wanted [ml], 1 to 10 000.
    kind : {"peroxide", "alcohol"}
        What is diluted.
    hazards : sequence of HazardRow
        The table ``substance_hazards``; none by default.

    Returns
    -------
    Dilution
        How much of the stronger one [ml], and water: a volume [ml] for peroxide, topped up for alcohol.

    Raises
    ------
    InputError
        If a figure is out of its range.

    Notes
    -----
    C1 V1 = C2 V2. Weak peroxide adds up by volume to better than 1 %. Alcohol and water shrink on mixing, by up to
    3 or 4 %, so alcohol is topped up to the mark and not added up. Peroxide above 12 % is refused: Regulation (EU)
    2019/1148 keeps it from private persons (seen at second hand), and it burns.

    Examples
    --------
    >>> dilution(3, 1, 90, "peroxide").sentence.replace("\\u202f", " ")
    '30.0 ml of the 3 % and 60.0 ml of water make 90 ml of 1 %.'
    """
    _check_dilution(strong_percent, wanted_percent, final_ml, kind)
    strong = final_ml * wanted_percent / strong_percent
    if kind == "alcohol":
        sentence = f"Measure {strong:.1f} ml of the {strong_percent:g}\u202f% and top up with water to {final_ml:g} ml: {wanted_percent:g}\u202f%."
        return Dilution(strong, None, final_ml, sentence, (Finding("warning", "treatment.fire:alcohol"),))
    sentence = f"{strong:.1f} ml of the {strong_percent:g}\u202f% and {final_ml - strong:.1f} ml of water make {final_ml:g} ml of {wanted_percent:g}\u202f%."
    found = hazards_of("peroxide", strong_percent, hazards) if hazards else ()
    notes = [Finding(one.level, "treatment.hazard:bottle", percent=strong_percent, does=one.does, labelled=one.labelled) for one in found]  # fmt: skip
    notes.append(Finding("warning", "treatment.peroxide"))
    if strong_percent > SHELF_PEROXIDE_PERCENT:
        notes.append(
            Finding("warning", "treatment.strong-peroxide", percent=strong_percent, usual=SHELF_PEROXIDE_PERCENT)
        )
    findings = gravest_first(notes)
    stops = "".join(f"Stop: {finding.text} " for finding in findings if finding.level == "stop")
    return Dilution(strong, final_ml - strong, final_ml, stops + sentence, findings)


def _check_dilution(strong_percent: float, wanted_percent: float, final_ml: float, kind: str) -> None:
    if kind not in ("peroxide", "alcohol"):
        raise InputError("kind", "peroxide or alcohol", kind)
    most = STRONGEST_PEROXIDE_PERCENT if kind == "peroxide" else 100.0
    if not 0 < strong_percent <= most:
        advice = "Stronger peroxide burns skin and eyes and feeds a fire: it is a laboratory chemical, do not dilute it at home; buy the 3 %." if kind == "peroxide" and strong_percent > most else ""  # fmt: skip
        raise InputError("strength at hand", f"above 0 and at most {most:g} %", strong_percent, advice)
    if not 0 < wanted_percent <= strong_percent:
        raise InputError("strength wanted", f"above 0 and at most {strong_percent:g} %", wanted_percent)
    if not 1 <= final_ml <= 10_000:
        raise InputError("volume", "1 to 10 000 ml", final_ml)
