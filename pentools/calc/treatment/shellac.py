"""Shellac by weight: pound cuts in grams and litres, thinning one cut to another, and a printed chart put to the test."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from pentools.calc.treatment.mixtures import MixtureRow
from pentools.errors import InputError

__all__ = ["ChartLine", "ShellacCut", "check_chart", "flakes_g", "shellac_cut", "thinning_parts"]

G_L_PER_POUND_CUT = 453.59237 / 3.785411784
"""Flakes to a litre of alcohol in a one-pound cut [g/l]: 1 lb to 1 US gallon."""
SWELL_GAL_LB = 0.1


@dataclass(frozen=True, slots=True)
class ShellacCut:
    """One cut of shellac, said in several ways.

    Parameters
    ----------
    pounds : float
        The cut: pounds of flakes to a US gallon of alcohol.
    g_per_l_alcohol : float
        Flakes to a litre of alcohol [g/l].
    g_per_30_ml : float
        Flakes to 30 ml of alcohol [g].
    oz_per_8_fl_oz : float
        Ounces of flakes to eight US fluid ounces of alcohol.
    lb_per_gal_finished : float
        Pounds in a US gallon of the finished solution.
    g_per_l_finished : float
        Flakes in a litre of the finished solution [g/l].
    """

    pounds: float
    g_per_l_alcohol: float
    g_per_30_ml: float
    oz_per_8_fl_oz: float
    lb_per_gal_finished: float
    g_per_l_finished: float


@dataclass(frozen=True, slots=True)
class ChartLine:
    """One line of a printed thinning chart against the rule.

    Parameters
    ----------
    from_pounds, to_pounds : float
        The cut at hand and the cut wanted.
    printed_parts, reckoned_parts : float
        Alcohol to one part of the cut at hand, as printed and as reckoned here.
    off_share : float
        How far the print is off, as a share of what is reckoned; negative where it is too little.
    agrees : bool
        Whether the two agree within the tolerance.
    """

    from_pounds: float
    to_pounds: float
    printed_parts: float
    reckoned_parts: float
    off_share: float
    agrees: bool


def shellac_cut(pounds: float) -> ShellacCut:
    """A pound cut in other words.

    Parameters
    ----------
    pounds : float
        Pounds of flakes to a US gallon of alcohol, 0.1 to 6.

    Returns
    -------
    ShellacCut
        Flakes by litre [g/l], by 30 ml [g], in ounces, and in the finished solution.

    Raises
    ------
    InputError
        If the cut is outside 0.1 to 6.

    Notes
    -----
    A cut counts the alcohol put in, not the solution that comes out, which is larger by about 0.1 gallon a pound
    (a woodworker's rule, seen in print): a "2-pound" solution holds 2/1.2 = 1.667 lb in a gallon.

    Examples
    --------
    >>> round(shellac_cut(2).g_per_l_alcohol, 1)
    239.7
    """
    _check(pounds, "cut")
    gram = pounds * G_L_PER_POUND_CUT
    swell = 1 + SWELL_GAL_LB * pounds
    return ShellacCut(pounds, gram, 0.03 * gram, pounds, pounds / swell, gram / swell)


def flakes_g(pounds: float, alcohol_ml: float) -> float:
    """Flakes for a cut and a volume of alcohol.

    Parameters
    ----------
    pounds : float
        The cut, 0.1 to 6.
    alcohol_ml : float
        Alcohol [ml], above 0, at most 10 000.

    Returns
    -------
    float
        Flakes [g].

    Raises
    ------
    InputError
        If a figure is out of its range.

    Examples
    --------
    >>> round(flakes_g(3, 30), 1)
    10.8
    """
    if not 0 < alcohol_ml <= 10_000:
        raise InputError("alcohol", "above 0 and at most 10 000 ml", alcohol_ml)
    return shellac_cut(pounds).g_per_l_alcohol * alcohol_ml / 1000


def thinning_parts(from_pounds: float, to_pounds: float) -> float:
    """Alcohol to add to one part of a cut to thin it to another.

    Parameters
    ----------
    from_pounds, to_pounds : float
        The cut at hand and the cut wanted, 0.1 to 6, the wanted one not above the one at hand.

    Returns
    -------
    float
        Parts of alcohol to one part, by volume.

    Raises
    ------
    InputError
        If a cut is out of its range, or the wanted one is the stronger.

    Notes
    -----
    (A/B - 1)/(1 + 0.1 A): one part of the solution holds A/(1 + 0.1 A) of flakes and 1/(1 + 0.1 A) of alcohol.

    Examples
    --------
    >>> round(thinning_parts(2, 1), 3)
    0.833
    """
    _check(from_pounds, "cut at hand")
    _check(to_pounds, "cut wanted")
    if to_pounds > from_pounds:
        raise InputError("cut wanted", f"at most {from_pounds:g}", to_pounds, "To make it stronger, add flakes.")
    return (from_pounds / to_pounds - 1) / (1 + SWELL_GAL_LB * from_pounds)


def check_chart(rows: Iterable[MixtureRow], tolerance_share: float = 0.03) -> tuple[ChartLine, ...]:
    """A printed thinning chart, line by line, against the rule.

    Parameters
    ----------
    rows : iterable of MixtureRow
        The table ``mixtures``; lines of the chart have a property such as "2 to 1", others are passed over.
    tolerance_share : float
        How far print and rule may differ, as a share, 0 to 1.

    Returns
    -------
    tuple of ChartLine
        In the table's order.

    Raises
    ------
    InputError
        If the tolerance is not 0 to 1, or a line does not read "A to B".

    Notes
    -----
    Kitchen fractions are coarse: 3 to 1 prints 1 1/2 for 1.54 and agrees. The chart's 2 to 1, printed 2/3 for
    0.83, is a fifth too little and contradicts the swell the chart itself goes by.
    """
    if not 0 <= tolerance_share <= 1:
        raise InputError("tolerance", "0 to 1", tolerance_share)
    lines = []
    for row in rows:
        if row.mix != "shellac thinning, printed":
            continue
        start, _, end = row.property.partition(" to ")
        if not start or not end or row.low is None:
            raise InputError("line of the chart", "written “A to B”, with the parts it prints", row.property)
        reckoned = thinning_parts(float(start), float(end))
        off = row.low / reckoned - 1
        lines.append(ChartLine(float(start), float(end), row.low, reckoned, off, abs(off) <= tolerance_share))
    return tuple(lines)


def _check(pounds: float, name: str) -> None:
    if not 0.1 <= pounds <= 6:
        raise InputError(name, "0.1 to 6 pounds to a US gallon", pounds)
