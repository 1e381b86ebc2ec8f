"""Seats of rubber and tubes that no table has sizes for: a mouth over its neck, a tube in its hole, a lip in its liner."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding
from pentools.calc.seal.sac import STRETCH_HIGH, STRETCH_LOW
from pentools.errors import InputError

__all__ = ["Seat", "closed_by", "pressed_in", "stretched_over"]

SeatVerdict = Literal["fits", "too loose", "too tight", "cannot tell"]


@dataclass(frozen=True, slots=True)
class Seat:
    """One seat as its two diameters, or two depths, say.

    Parameters
    ----------
    value : float
        Stretch [1], or overlap [mm]: positive where the outer part is stretched or the inner one pressed.
    low, high : float
        What the callipers leave open, each reading off by its half-width, in the same unit.
    verdict : {"fits", "too loose", "too tight", "cannot tell"}
        Told only where the whole span lies on one side.
    findings : tuple of Finding
        What it means, and the next test where it cannot be told.
    """

    value: float
    low: float
    high: float
    verdict: SeatVerdict
    findings: tuple[Finding, ...]


def stretched_over(neck_mm: float, mouth_mm: float, *, half_width_mm: float = 0.03) -> Seat:
    """A rubber mouth drawn over a neck, as a bulb on a barrel's end or a collar on a nipple.

    Parameters
    ----------
    neck_mm : float
        What it sits on, outside diameter [mm], above 0.
    mouth_mm : float
        Its mouth, inside diameter at rest [mm], above 0.
    half_width_mm : float
        Half-width of one reading [mm], 0 or more.

    Returns
    -------
    Seat
        The stretch; 2 to 25 % is what a sac's mouth bears (judged), and no figure was found for other rubber.

    Raises
    ------
    InputError
        If a diameter is not above 0.

    Examples
    --------
    >>> round(stretched_over(6.6, 6.0).value, 3)
    0.1
    """
    _positive(("neck", neck_mm), ("mouth", mouth_mm))
    value = neck_mm / mouth_mm - 1
    low = (neck_mm - half_width_mm) / (mouth_mm + half_width_mm) - 1
    high = (neck_mm + half_width_mm) / max(mouth_mm - half_width_mm, 1e-9) - 1
    verdict: SeatVerdict = "cannot tell"
    if low > STRETCH_HIGH:
        verdict = "too tight"
    elif high < STRETCH_LOW:
        verdict = "too loose"
    elif low >= STRETCH_LOW and high <= STRETCH_HIGH:
        verdict = "fits"
    return Seat(
        value, low, high, verdict, (_said("stretch", verdict, value=value, low=STRETCH_LOW, high=STRETCH_HIGH),)
    )


def pressed_in(outside_mm: float, hole_mm: float, *, half_width_mm: float = 0.03) -> Seat:
    """A tube or plug in its hole, as a breather tube in the feed.

    Parameters
    ----------
    outside_mm : float
        Outside diameter of what goes in [mm], above 0.
    hole_mm : float
        The hole [mm], above 0.
    half_width_mm : float
        Half-width of one reading [mm], 0 or more.

    Returns
    -------
    Seat
        The overlap [mm]; "fits" where it is surely pressed. How much a part bears before it splits is in no table: the
        trial tells.

    Raises
    ------
    InputError
        If a diameter is not above 0.

    Examples
    --------
    >>> pressed_in(1.9, 2.0).verdict
    'too loose'
    """
    _positive(("outside diameter", outside_mm), ("hole", hole_mm))
    value, low, high, verdict = _overlap(outside_mm, hole_mm, half_width_mm)
    return Seat(value, low, high, verdict, (_said("pressed", verdict, value=abs(value)),))


def closed_by(
    lip_mm: float,
    mouth_mm: float,
    reach_mm: float | None = None,
    depth_mm: float | None = None,
    *,
    half_width_mm: float = 0.03,
) -> Seat:
    """A section's lip that closes an inner cap or liner.

    Parameters
    ----------
    lip_mm : float
        Outside diameter of the section's lip [mm], above 0.
    mouth_mm : float
        Inside diameter of the liner's mouth [mm], above 0.
    reach_mm, depth_mm : float or None
        How far into the cap the lip comes when the cap stops, and how deep the liner's mouth lies behind the cap's lip
        [mm]; None where they were not measured.
    half_width_mm : float
        Half-width of one reading [mm], 0 or more.

    Returns
    -------
    Seat
        The overlap of lip over mouth [mm]; it fits only where the lip is surely wider and surely comes to the liner.

    Raises
    ------
    InputError
        If a diameter is not above 0.

    Examples
    --------
    >>> closed_by(8.2, 7.6, 14.5, 14.0).verdict
    'fits'
    """
    _positive(("section's lip", lip_mm), ("liner's mouth", mouth_mm))
    value, low, high, wide = _overlap(lip_mm, mouth_mm, half_width_mm)
    if wide == "too loose":
        return Seat(value, low, high, wide, (_said("liner", wide, value=abs(value)),))
    if reach_mm is None or depth_mm is None:
        return Seat(value, low, high, "cannot tell", (Finding("note", "seal.seat-liner:reach", value=value),))
    press, _, _, deep = _overlap(reach_mm, depth_mm, half_width_mm)
    if deep == "too loose":
        return Seat(value, low, high, "too loose", (Finding("warning", "seal.seat-liner:short", gap=-press),))
    verdict: SeatVerdict = "fits" if wide == deep == "fits" else "cannot tell"
    return Seat(value, low, high, verdict, (_said("liner", verdict, value=abs(value)),))


def _overlap(one_mm: float, other_mm: float, half_width_mm: float) -> tuple[float, float, float, SeatVerdict]:
    """By how much one size is over another, the least and the most of it, and whether it surely is."""
    value, off = one_mm - other_mm, 2 * half_width_mm
    low, high = value - off, value + off
    return value, low, high, "fits" if low > 0 else "too loose" if high < 0 else "cannot tell"


def _positive(*sizes: tuple[str, float]) -> None:
    for name, size in sizes:
        if not size > 0:
            raise InputError(name, "above 0 mm", size)


def _said(topic: str, verdict: SeatVerdict, **values: float) -> Finding:
    """What a verdict means, in the words of its seat."""
    level: Literal["ok", "note", "warning"] = {"fits": "ok", "cannot tell": "note"}.get(verdict, "warning")  # type: ignore[assignment]
    variant = {"fits": "fits", "too loose": "loose", "too tight": "tight", "cannot tell": "open"}[verdict]
    return Finding(level, f"seal.seat-{topic}:{variant}", **values)
