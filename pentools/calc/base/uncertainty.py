"""Uncertainty by the guide of the Joint Committee (JCGM 100): budgets, Student's t, one rounding.

The only place in the kit that knows a coverage factor.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from pentools.calc.base.beta import incomplete_beta
from pentools.errors import InputError

__all__ = [
    "COVERAGE",
    "Budget",
    "Component",
    "believed_spread",
    "combine",
    "coverage_factor",
    "decision_factor",
    "format_value",
    "from_half_width",
    "mean_and_spread",
    "rounded_pair",
]

INFINITE = math.inf
_NORMAL_999 = 3.090232  # one-sided 99.9 % of the normal distribution


@dataclass(frozen=True, slots=True)
class Component:
    """One source of uncertainty.

    Parameters
    ----------
    source : str
        What it is, in words.
    standard_uncertainty : float
        One standard uncertainty of the input, in the input's unit.
    sensitivity : float
        Change of the result for one unit of the input.
    degrees_of_freedom : float
        Degrees of freedom of the standard uncertainty; infinite where it is taken as known.
    kind : str
        Where it comes from: repeat readings / instrument limit / judged.
    """

    source: str
    standard_uncertainty: float
    sensitivity: float = 1.0
    degrees_of_freedom: float = INFINITE
    kind: str = "judged"

    @property
    def contribution(self) -> float:
        """Its part of the result's standard uncertainty, in the result's unit."""
        return abs(self.sensitivity) * self.standard_uncertainty


@dataclass(frozen=True, slots=True)
class Budget:
    """A combined uncertainty and what it is made of.

    Parameters
    ----------
    components : tuple of Component
        The sources, as given.
    standard_uncertainty : float
        Combined standard uncertainty, in the result's unit.
    degrees_of_freedom : float
        Effective degrees of freedom (Welch-Satterthwaite).
    coverage_factor : float
        Factor for the level of confidence asked for.
    """

    components: tuple[Component, ...]
    standard_uncertainty: float
    degrees_of_freedom: float
    coverage_factor: float

    @property
    def expanded_uncertainty(self) -> float:
        """Standard uncertainty times the coverage factor."""
        return self.standard_uncertainty * self.coverage_factor

    def shares(self) -> tuple[float, ...]:
        """Each component's share of the variance, 0 to 1; all 0 where there is no uncertainty."""
        variance = self.standard_uncertainty**2
        return tuple(c.contribution**2 / variance if variance else 0.0 for c in self.components)


def from_half_width(half_width: float, shape: str = "rectangular") -> float:
    """Standard uncertainty of a limit.

    Parameters
    ----------
    half_width : float
        Half the width of the interval, zero or more.
    shape : {"rectangular", "triangular", "arcsine"}
        How values lie within it.

    Returns
    -------
    float
        Standard uncertainty: half-width over √3, √6 or √2.

    Raises
    ------
    InputError
        If the half-width is negative or the shape is not known.

    Notes
    -----
    JCGM 100:2008, 4.3.7 to 4.3.9.
    """
    divisors = {"rectangular": math.sqrt(3), "triangular": math.sqrt(6), "arcsine": math.sqrt(2)}
    if half_width < 0 or not math.isfinite(half_width):
        raise InputError("half-width", "zero or more", half_width)
    if shape not in divisors:
        raise InputError("shape", "one of " + ", ".join(divisors), shape)
    return half_width / divisors[shape]


def mean_and_spread(values: Sequence[float]) -> tuple[float, float]:
    """Mean and sample standard deviation.

    Parameters
    ----------
    values : sequence of float
        One or more values.

    Returns
    -------
    mean : float
        Their mean.
    spread : float
        Their standard deviation with n - 1; 0 for a single value.

    Raises
    ------
    InputError
        If there is no value.
    """
    if not values:
        raise InputError("readings", "at least one", "none")
    mean = math.fsum(values) / len(values)
    if len(values) == 1:
        return mean, 0.0
    return mean, math.sqrt(math.fsum((v - mean) ** 2 for v in values) / (len(values) - 1))


def combine(components: Sequence[Component], confidence: float = 0.95) -> Budget:
    """Combine sources of uncertainty that do not depend on each other.

    Parameters
    ----------
    components : sequence of Component
        At least one.
    confidence : float
        Level of confidence of the expanded uncertainty [1].

    Returns
    -------
    Budget
        Combined standard uncertainty, effective degrees of freedom, coverage factor.

    Raises
    ------
    InputError
        If there is no component, or one is negative or not finite.

    Notes
    -----
    u² = Σ (c_i u_i)², JCGM 100:2008 eq. 10 and 11a; nu_eff = u⁴ / Σ (c_i u_i)⁴/nu_i, eq. G.2b. Good where the
    result is near linear in its inputs over their uncertainty.
    """
    if not components:
        raise InputError("components", "at least one", "none")
    for c in components:
        if not (c.standard_uncertainty >= 0 and math.isfinite(c.contribution)):
            raise InputError(f"uncertainty of {c.source}", "finite and zero or more", c.standard_uncertainty)
    u = math.sqrt(math.fsum(c.contribution**2 for c in components))
    tail = math.fsum(c.contribution**4 / c.degrees_of_freedom for c in components)
    nu = u**4 / tail if tail else INFINITE
    return Budget(tuple(components), u, nu, coverage_factor(max(nu, 1.0), confidence))


def coverage_factor(degrees_of_freedom: float, confidence: float = 0.95) -> float:
    """Factor from standard to expanded uncertainty.

    Parameters
    ----------
    degrees_of_freedom : float
        Effective degrees of freedom, 1 or more; infinite gives the normal distribution. A broken number is cut
        down to a whole one first, as JCGM 100 G.4.1 allows.
    confidence : float
        Level of confidence [1], 0.5 to 0.9999.

    Returns
    -------
    float
        Two-sided quantile of Student's t.

    Raises
    ------
    InputError
        If an argument is outside its range.

    Notes
    -----
    JCGM 100:2008, G.3 and table G.2. Found by bisection to 1e-12 on the incomplete beta function.

    Examples
    --------
    >>> round(coverage_factor(16), 3)
    2.12
    """
    if not degrees_of_freedom >= 1:
        raise InputError("degrees of freedom", "1 or more", degrees_of_freedom)
    if not 0.5 <= confidence <= 0.9999:
        raise InputError("confidence", "0.5 to 0.9999", confidence)
    nu = math.floor(degrees_of_freedom) if math.isfinite(degrees_of_freedom) else math.inf

    def within(t: float) -> float:
        return math.erf(t / math.sqrt(2)) if nu > 1e6 else _t_tail(t, nu)

    low, high = 0.0, 7000.0
    while high - low > 1e-12 * max(1.0, high):
        middle = (low + high) / 2
        low, high = (middle, high) if within(middle) < confidence else (low, middle)
    return (low + high) / 2


COVERAGE = coverage_factor(INFINITE, 0.9545)  # two: about 95 %, where nothing says how many degrees of freedom


def decision_factor(degrees_of_freedom: float) -> float:
    """Factor above which something is told from nothing: Student's t, 95 % on one side.

    Parameters
    ----------
    degrees_of_freedom : float
        Effective degrees of freedom, 1 or more; infinite gives 1.645.

    Returns
    -------
    float
        The factor; twice it is the limit of detection.

    Raises
    ------
    InputError
        If there is less than one degree of freedom.

    Notes
    -----
    A false alarm in 5 % of cases, and at twice the factor a miss in 5 %: ISO 11843-1, Currie (1968).
    """
    return coverage_factor(degrees_of_freedom, 0.90)


def _t_tail(t: float, nu: float) -> float:
    """Two-sided probability within ±t, by the continued fraction of the incomplete beta function."""
    return 1 - incomplete_beta(nu / 2, 0.5, nu / (nu + t * t))


def believed_spread(known: float, found: float, degrees_of_freedom: int) -> tuple[float, float]:
    """Which of two standard deviations of one reading counts: the one known beforehand, or the one found.

    Parameters
    ----------
    known : float
        What the instrument is said to scatter, rounding included; 0 where nothing is known.
    found : float
        What the readings scatter.
    degrees_of_freedom : int
        Of the scatter found; 0 where it cannot be told.

    Returns
    -------
    spread, degrees_of_freedom : float
        The known one with infinite degrees of freedom, unless the scatter found is wider than chance lets it be one
        time in a hundred; then the one found with its own.

    Raises
    ------
    InputError
        If a standard deviation is below 0.

    Notes
    -----
    Readings on a coarse scale may agree by rounding, so a small scatter proves nothing; a few readings also scatter
    widely by chance, so the larger of the two would be too large on average. The bound is that of chi-squared at
    99.9 % (Wilson and Hilferty's form, within 3 %); 99.9 % is judged.
    """
    if not (known >= 0 and found >= 0):
        raise InputError("standard deviation", "zero or more", min(known, found))
    nu = degrees_of_freedom
    if nu < 1:
        return known, INFINITE
    if known == 0:
        return found, nu
    ninth = 2 / (9 * nu)
    bound = (1 - ninth + _NORMAL_999 * math.sqrt(ninth)) ** 3  # chi-squared over its degrees of freedom
    return (found, nu) if found**2 > bound * known**2 else (known, INFINITE)


def rounded_pair(value: float, uncertainty: float) -> tuple[str, str]:
    """A value and its expanded uncertainty as text, rounded once and to the same place.

    Parameters
    ----------
    value, uncertainty : float
        The value and its expanded uncertainty, zero or more.

    Returns
    -------
    value_text, uncertainty_text : str
        Two significant digits of uncertainty when its first digit is 1 or 2, else one.

    Raises
    ------
    InputError
        If the uncertainty is negative, or either is not finite.

    Examples
    --------
    >>> rounded_pair(1.80548, 0.0470)
    ('1.81', '0.05')
    >>> rounded_pair(1.80548, 0.0135)
    ('1.805', '0.014')
    >>> rounded_pair(1.80548, 0.3)
    ('1.8', '0.3')
    """
    if not (uncertainty >= 0 and math.isfinite(uncertainty)):
        raise InputError("uncertainty", "finite and zero or more", uncertainty)
    if not math.isfinite(value):
        raise InputError("value", "finite", value)
    if uncertainty == 0:
        return f"{value:g}", "0"
    # decimal digits as they are printed: in binary 0.3 / 0.1 lies below 3 and would be given two digits
    spread = Decimal(repr(float(uncertainty)))
    first = spread.as_tuple().digits[0]
    place = Decimal(1).scaleb(spread.adjusted() - (1 if first < 3 else 0))
    # a carry (0.0296 -> 0.030) keeps the place
    return _at(Decimal(repr(float(value))), place), _at(spread, place)


def _at(number: Decimal, place: Decimal) -> str:
    # half away from zero on the shortest decimal that names the number: 0.0135 is 0.014 and not 0.013
    rounded = number.quantize(place, ROUND_HALF_UP)
    return f"{rounded if rounded else abs(rounded):f}"  # never "-0.0"


def format_value(value: float, uncertainty: float, unit: str) -> str:
    """A value with its expanded uncertainty and unit, for a sentence.

    Parameters
    ----------
    value, uncertainty : float
        The value and its expanded uncertainty.
    unit : str
        The unit as it is shown.

    Returns
    -------
    str
        Text such as ``1.81 mL ± 0.05``, with a thin no-break space before the unit.
    """
    shown, spread = rounded_pair(value, uncertainty)
    return f"{shown}\u202f{unit} ± {spread}"
