"""Plain dilutions of peroxide and alcohol: how much of the stronger one, how much water."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.errors import InputError

__all__ = ["Dilution", "dilution"]


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
    strong_percent: float, wanted_percent: float, final_ml: float, kind: Literal["peroxide", "alcohol"]
) -> Dilution:
    """A weaker mix out of a stronger one and water.

    Parameters
    ----------
    strong_percent, wanted_percent : float
        Strength at hand and wanted [%], above 0 to 100, the wanted one not above the one at hand.
    final_ml : float
        How much is wanted [ml], 1 to 10 000.
    kind : {"peroxide", "alcohol"}
        What is diluted.

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
    3 or 4 %, so alcohol is topped up to the mark and not added up.

    Examples
    --------
    >>> dilution(3, 1, 90, "peroxide").sentence
    '30.0 ml of the 3 % and 60.0 ml of water make 90 ml of 1 %.'
    """
    if kind not in ("peroxide", "alcohol"):
        raise InputError("kind", "peroxide or alcohol", kind)
    if not 0 < strong_percent <= 100:
        raise InputError("strength at hand", "above 0 and at most 100 %", strong_percent)
    if not 0 < wanted_percent <= strong_percent:
        raise InputError("strength wanted", f"above 0 and at most {strong_percent:g} %", wanted_percent)
    if not 1 <= final_ml <= 10_000:
        raise InputError("volume", "1 to 10 000 ml", final_ml)
    strong = final_ml * wanted_percent / strong_percent
    if kind == "alcohol":
        sentence = f"Measure {strong:.1f} ml of the {strong_percent:g} % and top up with water to {final_ml:g} ml: {wanted_percent:g} %."
        text = (
            f"Its vapour lights from about 12 °C up: no flame, no hot air, fresh air. Never with bleach. {CLOSING_LINE}"
        )
        return Dilution(strong, None, final_ml, sentence, (Finding("warning", text, "fire"),))
    sentence = f"{strong:.1f} ml of the {strong_percent:g} % and {final_ml - strong:.1f} ml of water make {final_ml:g} ml of {wanted_percent:g} %."
    notes = [
        Finding("warning", f"Never with vinegar or acetone, never on cellulose nitrate. {CLOSING_LINE}", "peroxide")
    ]
    if strong_percent > 3:
        text = f"{strong_percent:g} % is more than the 3 % from a chemist's shelf; stronger peroxide burns skin and lights things. {CLOSING_LINE}"
        notes.insert(0, Finding("stop" if strong_percent > 12 else "warning", text, "strong-peroxide"))
    return Dilution(strong, final_ml - strong, final_ml, sentence, tuple(notes))
