"""What a ring's fit means at the bench: bands by duty, findings in words, a verdict with its reservations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.seal.gland import RingFit
from pentools.errors import InputError
from pentools.words import Said

__all__ = [
    "DUTIES",
    "VERDICTS",
    "Band",
    "Duty",
    "Judgement",
    "Limit",
    "Limits",
    "Verdict",
    "duties_from_bands",
    "judge_fit",
]

Verdict = Literal["fits", "measure it", "with a reservation", "doubtful", "does not fit"]
VERDICTS: tuple[Verdict, ...] = ("fits", "measure it", "with a reservation", "doubtful", "does not fit")
"""Best first. The first three are offered; a ring of the last two is not."""


@dataclass(frozen=True, slots=True)
class Limit:
    """A quantity of which less is better, as shares [1]: good up to, fits up to, offered with a reservation up to."""

    good: float
    fits: float
    offered: float
    low: float = 0.0


@dataclass(frozen=True, slots=True)
class Limits:
    """What holds for every duty.

    Parameters
    ----------
    stretch, loose : Limit
        Of the ring over its seat, and of a ring larger than its seat.
    fill : Limit
        Share of the groove that is filled; below ``low`` the ring can wander.
    """

    stretch: Limit
    loose: Limit
    fill: Limit


@dataclass(frozen=True, slots=True)
class Duty:
    """How much squeeze a seal wants.

    Parameters
    ----------
    key : str
        hand-turned / low-friction / static.
    low, high : float
        Band of the nominal squeeze [1].
    floor, ceiling : float
        Bounds in the worst case for a ring that fits [1].
    offered_from, offered_to : float
        Bounds in the worst case for a ring that is offered with a reservation [1].
    limits : Limits
        Stretch, looseness, compression and fill.
    source : str
        Where the figures come from, in words.
    """

    key: str
    low: float
    high: float
    floor: float
    ceiling: float
    offered_from: float
    offered_to: float
    limits: Limits
    source: str = ""

    @property
    def middle(self) -> float:
        """The middle of the nominal band [1]."""
        return (self.low + self.high) / 2

    @property
    def moves(self) -> bool:
        """Whether the seal slides."""
        return self.key != "static"


DUTIES: tuple[str, ...] = ("hand-turned", "low-friction", "static")

FITS, OFFERED, DOUBTFUL, REFUSED = 0, 1, 2, 3
OUTSIDE_SAID = 0.03


class Point(NamedTuple):
    """One thing about a fit: how grave for the verdict, and what is said."""

    grade: int
    finding: Finding


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a fit comes to.

    Parameters
    ----------
    verdict : Verdict
        fits / with a reservation / doubtful / does not fit.
    margin_share : float
        Smallest distance of the worst cases from their bounds [1]; below 0 a bound is passed.
    excess_share : float
        How far the bounds are passed in all [1]; 0 for a ring that fits.
    findings : tuple of Finding
        Why, gravest first.
    reservations : tuple of Finding
        Those that a ring offered with a reservation is offered under.
    """

    verdict: Verdict
    margin_share: float
    excess_share: float
    findings: tuple[Finding, ...]
    reservations: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class Band:
    """One row of the bands: bounds of one quantity for one duty as shares [1], None where they do not apply; its source."""

    duty: str
    quantity: str
    offered_from: float | None
    floor: float | None
    low: float | None
    high: float
    ceiling: float
    offered_to: float
    source: str = ""


def duties_from_bands(bands: Sequence[Band]) -> dict[str, Duty]:
    """Duties from their bands; those of the duty "every" hold for all.

    Parameters
    ----------
    bands : sequence of Band
        Squeeze of each duty, and stretch, looseness and gland fill of every duty.

    Returns
    -------
    dict
        Duty key to `Duty`.

    Raises
    ------
    InputError
        If bounds are not in order, or a quantity is missing.
    """
    every = {band.quantity: _limit(band) for band in bands if band.duty == "every"}
    wanted = ("stretch", "looseness", "gland fill")
    missing = [name for name in wanted if name not in every]
    if missing:
        raise InputError("bands of every duty", "all of " + ", ".join(wanted), f"no {missing[0]}")
    limits = Limits(*(every[name] for name in wanted))
    return {band.duty: _duty(band, limits) for band in bands if band.duty != "every"}


def _duty(band: Band, limits: Limits) -> Duty:
    offered_from, floor, low = band.offered_from or 0.0, band.floor or 0.0, band.low or 0.0
    if not 0 <= offered_from <= floor <= low < band.high <= band.ceiling <= band.offered_to < 1:
        bounds = (offered_from, floor, low, band.high, band.ceiling, band.offered_to)
        accepted = "in order: offered_from, floor, low, high, ceiling, offered_to"
        raise InputError(f"bands of duty {band.duty}", accepted, ", ".join(f"{bound:g}" for bound in bounds))
    return Duty(
        band.duty, low, band.high, floor, band.ceiling, offered_from, band.offered_to, limits, band.source
    )  # fmt: skip


def _limit(band: Band) -> Limit:
    low = band.low or 0.0
    if not 0 <= low <= band.high <= band.ceiling <= band.offered_to:
        bounds = f"{low:g}, {band.high:g}, {band.ceiling:g}, {band.offered_to:g}"
        raise InputError(f"bands of {band.quantity}", "in order: low, high, ceiling, offered_to", bounds)
    return Limit(band.high, band.ceiling, band.offered_to, low)


def _squeeze(fit: RingFit, duty: Duty) -> list[Point]:
    least, nominal, most = fit.least.squeeze_share, fit.nominal.squeeze_share, fit.most.squeeze_share
    said: dict[str, Said] = {"least": least, "nominal": nominal, "most": most}
    if most <= 0:
        short = fit.nominal.depth_mm - fit.nominal.section_mm
        return [Point(REFUSED, Finding("stop", "seal.no-contact:never", short=short))]
    found = []
    if nominal > duty.ceiling:
        found.append(Point(REFUSED, Finding("stop", "seal.squeeze-high:far", limit=duty.ceiling, **said)))
    elif most > duty.ceiling:
        grade = OFFERED if most <= duty.offered_to else DOUBTFUL
        found.append(Point(grade, Finding("warning", "seal.squeeze-high:may", limit=duty.ceiling, **said)))
    if nominal <= 0:
        found.append(Point(REFUSED, Finding("stop", "seal.no-contact:likely", **said)))
    elif least <= 0:
        found.append(Point(DOUBTFUL, Finding("warning", "seal.contact-lost", **said)))
    elif least < duty.floor:
        grade = OFFERED if least > duty.offered_from else DOUBTFUL
        found.append(Point(grade, Finding("warning", "seal.squeeze-low", limit=duty.floor, **said)))
    if found:
        return found
    if duty.low <= nominal <= duty.high:
        return [Point(FITS, Finding("ok", "seal.squeeze:right", **said))]
    side = "light" if nominal < duty.low else "firm"
    return [Point(FITS, Finding("note", f"seal.squeeze:{side}", low=duty.low, high=duty.high, **said))]


def _loose(fit: RingFit, limit: Limit) -> list[Point]:
    """What a ring that is larger than its seat means."""
    by, loose = fit.ring.inside_mm - fit.gland.inner_mm, -fit.stretch_share
    said: dict[str, Said] = {"seat": "groove" if fit.gland.kind == "piston" else "rod", "by": by, "loose": loose}
    if loose > limit.offered:
        return [Point(REFUSED, Finding("stop", "seal.loose:folds", **said))]
    if loose > limit.fits:
        return [Point(OFFERED, Finding("warning", "seal.loose:twists", **said))]
    return [Point(FITS, Finding("note", "seal.loose:little", **said))]


def _stretch(fit: RingFit, limit: Limit) -> list[Point]:
    stretch = fit.stretch_share
    if stretch <= limit.good:
        return []
    pessimist = 1 - fit.nominal.depth_mm / (1 - fit.pessimist_share) / fit.ring.section_mm
    cost: dict[str, Said] = {
        "seat": "groove" if fit.gland.kind == "piston" else "rod", "stretch": stretch, "loss": fit.section_loss_share,
        "pessimist": pessimist,
    }  # fmt: skip
    if stretch > limit.offered:
        return [Point(REFUSED, Finding("stop", "seal.stretch:cracks", limit=limit.offered, **cost))]
    if stretch > limit.fits:
        return [Point(OFFERED, Finding("warning", "seal.stretch:much", limit=limit.fits, **cost))]
    return [Point(FITS, Finding("note", "seal.stretch:some", **cost))]


def _outside(fit: RingFit) -> list[Point]:
    """In a housing the squeeze itself presses the ring's outside together; nothing is wrong with that."""
    if fit.gland.kind != "packing":
        return []
    if fit.outside_share < 0:
        return [Point(FITS, Finding("note", "seal.outside:free"))]
    if fit.outside_share > OUTSIDE_SAID:
        return [Point(FITS, Finding("note", "seal.outside:pressed", outside=fit.outside_share))]
    return []


def _fill(fit: RingFit, duty: Duty) -> list[Point]:
    width, limit = fit.gland.width_mm, duty.limits.fill
    if width is None or fit.fill_share is None or fit.fill_most_share is None or fit.side_clearance_mm is None:
        return [Point(FITS, Finding("note", "seal.fill:unknown"))]
    fill, most = fit.fill_share, fit.fill_most_share
    said: dict[str, Said] = {"width": width, "fill": fill, "most": most, "limit": limit.fits}
    cases: tuple[tuple[bool, int, Level, str], ...] = (
        (fill >= limit.offered or fit.ring.section_mm > width, REFUSED, "stop", "narrow"),
        (most >= limit.offered, DOUBTFUL, "warning", "over"),
        (most > limit.fits, OFFERED, "warning", "full"),
        (most > limit.good or fit.side_clearance_mm <= 0, FITS, "note", "close"),
        (fill < limit.low and duty.moves, FITS, "note", "wide"),
    )
    for applies, grade, level, variant in cases:
        if applies:
            return [Point(grade, Finding(level, f"seal.fill:{variant}", **said))]
    return []


def _eccentric(fit: RingFit) -> list[Point]:
    if fit.eccentric_least is None or fit.eccentric_share is None or fit.eccentric_least.squeeze_share > 0:
        return []
    rests = "head" if fit.gland.kind == "piston" else "rod"
    said: dict[str, Said] = {"offset": fit.eccentric_least.offset_mm, "rests": rests}
    if fit.eccentric_share <= 0:
        return [Point(DOUBTFUL, Finding("warning", "seal.eccentric:loses", **said))]
    return [Point(OFFERED, Finding("warning", "seal.eccentric:may", **said))]


def _excess(fit: RingFit, duty: Duty) -> float:
    limits = duty.limits
    total = max(duty.floor - fit.least.squeeze_share, 0.0) + max(fit.most.squeeze_share - duty.ceiling, 0.0)
    # a ring that is loose folds, so it counts twice
    total += max(fit.stretch_share - limits.stretch.fits, 0.0) + 2 * max(-fit.stretch_share - limits.loose.fits, 0.0)
    if fit.fill_most_share is not None:
        total += max(fit.fill_most_share - limits.fill.fits, 0.0)
    if fit.eccentric_least is not None:
        total += max(-fit.eccentric_least.squeeze_share, 0.0)
    return total


def judge_fit(fit: RingFit, duty: Duty) -> Judgement:
    """What a ring's fit means for a duty.

    Parameters
    ----------
    fit : RingFit
        How the ring sits.
    duty : Duty
        What the seal does, with its bands and limits (table ``seal_duties``: each with its source, or judged).

    Returns
    -------
    Judgement
        Verdict, margin, findings and reservations.

    Notes
    -----
    It fits where the worst case stays within every bound. It is offered with a reservation where a bound is passed but
    it touches all round even in the worst case: squeeze above 0 and below the upper bound of what is offered, stretch
    up to 10 %, looseness up to 8 %, a groove not over-full, and, where the head can rest on the wall, contact on the far
    side by the readings as read. Past that it is doubtful, or does not fit. A ring that may lose contact all round is
    never said to fit, nor offered. In a housing the compression of the
    outside is no bound of its own: charts of moving rod seals give 7 % for a small ring (006 on 1/8 in), where notes on
    handbooks name 3 %, for the squeeze itself makes it; a ring that is crowded shows as loose on its rod. The verdict never says "measure it": that needs a second fit
    with the ring measured (`pentools.calc.seal.fit.seal_fit`).
    """
    limits = duty.limits
    points = [
        *_squeeze(fit, duty),
        *(_loose(fit, limits.loose) if fit.stretch_share < 0 else _stretch(fit, limits.stretch)),
        *_outside(fit), *_fill(fit, duty), *_eccentric(fit)
    ]  # fmt: skip
    verdicts: dict[int, Verdict] = {
        FITS: "fits", OFFERED: "with a reservation", DOUBTFUL: "doubtful", REFUSED: "does not fit"
    }  # fmt: skip
    margin = min(fit.least.squeeze_share - duty.floor, duty.ceiling - fit.most.squeeze_share)
    if fit.eccentric_least is not None:
        margin = min(margin, fit.eccentric_least.squeeze_share)
    return Judgement(
        verdicts[max(point.grade for point in points)],
        margin,
        _excess(fit, duty),
        gravest_first([point.finding for point in points]),
        tuple(point.finding for point in points if point.grade == OFFERED),
    )
