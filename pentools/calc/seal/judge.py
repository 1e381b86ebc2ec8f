"""What a ring's fit means at the bench: bands of squeeze by duty, findings in words, a verdict."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.seal.gland import RingFit
from pentools.errors import InputError

__all__ = ["DUTIES", "Duty", "Judgement", "Verdict", "duties_from_rows", "judge_fit"]

Verdict = Literal["fits", "measure it", "doubtful", "does not fit"]

STRETCH_GOOD, STRETCH_LIMIT, STRETCH_TOP = 0.02, 0.05, 0.10
LOOSE_LIMIT, LOOSE_TOP = 0.02, 0.08
OUTSIDE_LIMIT, OUTSIDE_TOP = 0.03, 0.08
FILL_LOW, FILL_HIGH, FILL_TOP = 0.60, 0.85, 0.90


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
        Bounds in the worst case [1].
    source : str
        Where the figures come from, in words.
    """

    key: str
    low: float
    high: float
    floor: float
    ceiling: float
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


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a fit comes to.

    Parameters
    ----------
    verdict : Verdict
        fits / measure it / doubtful / does not fit.
    margin_share : float
        Smallest distance of the worst cases from their bounds [1]; below 0 a bound is passed.
    excess_share : float
        How far the bounds are passed in all [1]; 0 for a ring that fits.
    findings : tuple of Finding
        Why, gravest first.
    """

    verdict: Verdict
    margin_share: float
    excess_share: float
    findings: tuple[Finding, ...]


def duties_from_rows(rows: Sequence[Mapping[str, str]]) -> dict[str, Duty]:
    """Duties from the rows of their table.

    Parameters
    ----------
    rows : sequence of mapping
        Rows with duty, low, high, floor, ceiling, certainty and note.

    Returns
    -------
    dict
        Duty key to `Duty`.

    Raises
    ------
    InputError
        If a row's bounds are not in order.
    """
    found = {}
    for row in rows:
        low, high, floor, ceiling = (float(row[name]) for name in ("low", "high", "floor", "ceiling"))
        if not 0 <= floor <= low < high <= ceiling < 1:
            raise InputError(
                f"bands of duty {row['duty']}",
                "in order: floor, low, high, ceiling",
                f"{floor:g}, {low:g}, {high:g}, {ceiling:g}",
            )
        found[row["duty"]] = Duty(row["duty"], low, high, floor, ceiling, f"{row['certainty']}: {row['note']}")
    return found


def _percent(share: float) -> str:
    return f"{100 * share:.1f}\u202f%"


def _squeeze_findings(fit: RingFit, duty: Duty) -> list[Finding]:
    least, nominal, most = fit.least.squeeze_share, fit.nominal.squeeze_share, fit.most.squeeze_share
    span = f"squeeze {_percent(nominal)}, at worst {_percent(least)} to {_percent(most)}"
    if most <= 0:
        short = fit.nominal.depth_mm - fit.nominal.section_mm
        return [Finding("stop", f"It cannot touch both walls: the section is {short:.2f} mm too thin.", "no-contact")]
    found = []
    if nominal > duty.ceiling:
        found.append(
            Finding(
                "stop",
                f"Far too tight for this duty ({span}); at most {_percent(duty.ceiling)} is wanted.",
                "squeeze-high",
            )
        )
    elif most > duty.ceiling:
        found.append(
            Finding(
                "warning",
                f"It may come out too tight ({span}); at most {_percent(duty.ceiling)} is wanted.",
                "squeeze-high",
            )
        )
    if nominal <= 0:
        found.append(Finding("stop", f"It most likely does not touch both walls ({span}).", "no-contact"))
    elif least <= 0:
        found.append(Finding("warning", f"In the worst case it does not touch at all ({span}).", "contact-lost"))
    elif least < duty.floor:
        found.append(
            Finding(
                "warning",
                f"In the worst case it hardly touches ({span}); at least {_percent(duty.floor)} is wanted.",
                "squeeze-low",
            )
        )
    if not found:
        if duty.low <= nominal <= duty.high:
            found.append(Finding("ok", f"Right in the band: {span}.", "squeeze"))
        else:
            side = "Light" if nominal < duty.low else "Firm"
            found.append(
                Finding(
                    "note",
                    f"{side}, but within bounds: {span}; {_percent(duty.low)} to {_percent(duty.high)} is the band.",
                    "squeeze",
                )
            )
    return found


def _stretch_findings(fit: RingFit) -> list[Finding]:
    stretch, loss = fit.stretch_share, fit.section_loss_share
    seat = "groove" if fit.gland.kind == "piston" else "rod"
    if stretch < 0:
        return [_loose_finding(fit, seat)]
    if stretch <= STRETCH_GOOD:
        return []
    pessimist = 1 - fit.nominal.depth_mm / (1 - fit.pessimist_share) / fit.ring.section_mm
    cost = f"it costs {_percent(loss)} of the section ({_percent(pessimist)} by the aerospace curve)"
    if stretch > STRETCH_TOP:
        return [
            Finding(
                "stop",
                f"Stretched {_percent(stretch)} over the {seat}, more than 10\u202f%: it ages fast and may crack; {cost}.",
                "stretch",
            )
        ]
    if stretch > STRETCH_LIMIT:
        return [
            Finding("warning", f"Stretched {_percent(stretch)} over the {seat}, more than 5\u202f%; {cost}.", "stretch")
        ]
    return [Finding("note", f"Stretched {_percent(stretch)} over the {seat}; {cost}.", "stretch")]


def _loose_finding(fit: RingFit, seat: str) -> Finding:
    stretch = fit.stretch_share
    text = f"Loose on the {seat} by {fit.ring.inside_mm - fit.gland.inner_mm:.2f} mm ({_percent(-stretch)})"
    if stretch < -LOOSE_TOP:
        return Finding("stop", f"{text}: it will fold when it goes in.", "loose")
    if stretch < -LOOSE_LIMIT:
        return Finding("warning", f"{text}: it may twist or fold.", "loose")
    return Finding("note", f"{text}: put it in without twisting it.", "loose")


def _room_findings(fit: RingFit, duty: Duty) -> list[Finding]:
    found = []
    if fit.gland.kind == "packing":
        found += _outside_findings(fit)
    found += _fill_findings(fit, duty)
    if fit.eccentric_least is not None and fit.eccentric_least.squeeze_share <= 0:
        side = "head rests on the wall" if fit.gland.kind == "piston" else "rod rests on its guide"
        found.append(
            Finding(
                "warning",
                f"When the {side}, the far side may lose contact (offset up to {fit.eccentric_least.offset_mm:.2f} mm).",
                "eccentric",
            )
        )
    return found


def _outside_findings(fit: RingFit) -> list[Finding]:
    out, middle = fit.outside_share, fit.middle_share
    if middle > OUTSIDE_LIMIT:
        level: Literal["stop", "warning"] = "stop" if middle > OUTSIDE_TOP else "warning"
        return [
            Finding(
                level,
                f"Too large for the housing: its middle line is pressed together by {_percent(middle)}, its outside by {_percent(out)}; above 3\u202f% it buckles.",
                "outside",
            )
        ]
    if out < 0:
        return [Finding("note", "Its outside does not touch the housing before the rod is in.", "outside")]
    return []


def _fill_findings(fit: RingFit, duty: Duty) -> list[Finding]:
    width = fit.gland.width_mm
    if width is None or fit.fill_share is None or fit.fill_most_share is None or fit.side_clearance_mm is None:
        return [Finding("note", "The groove's width was not measured, so its fill is not known.", "fill")]
    if fit.fill_most_share >= 1 or fit.ring.section_mm > width:
        return [
            Finding(
                "stop",
                f"The groove of {width:.2f} mm is too narrow for it: it may fill {_percent(fit.fill_most_share)}.",
                "fill",
            )
        ]
    if fit.fill_most_share > FILL_TOP:
        return [
            Finding(
                "warning",
                f"It may fill {_percent(fit.fill_most_share)} of the groove; above 90\u202f% there is no room to swell.",
                "fill",
            )
        ]
    if fit.fill_most_share > FILL_HIGH or fit.side_clearance_mm <= 0:
        return [Finding("note", f"A full groove: it may fill {_percent(fit.fill_most_share)} of it.", "fill")]
    if fit.fill_share < FILL_LOW and duty.moves:
        return [
            Finding(
                "note",
                f"The groove is wide for it (fill {_percent(fit.fill_share)}): it can wander at the turn of the stroke.",
                "fill",
            )
        ]
    return []


def _excess(fit: RingFit, duty: Duty) -> float:
    total = max(duty.floor - fit.least.squeeze_share, 0.0) + max(fit.most.squeeze_share - duty.ceiling, 0.0)
    # a ring that is loose folds, so it counts twice
    total += max(fit.stretch_share - STRETCH_LIMIT, 0.0) + 2 * max(-fit.stretch_share - LOOSE_LIMIT, 0.0)
    if fit.gland.kind == "packing":
        total += max(fit.middle_share - OUTSIDE_LIMIT, 0.0)
    if fit.fill_most_share is not None:
        total += max(fit.fill_most_share - FILL_TOP, 0.0)
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
        What the seal does.

    Returns
    -------
    Judgement
        Verdict, margin and findings in words.

    Notes
    -----
    Stretch up to 2 % is ideal, up to 5 % good, above 10 % critical (two ring makers' guides; a page on worst-case
    squeeze). Fill 60 to 85 %, at most 90 %. In a housing 3 % compression, judged at the
    middle line, since in small rings the squeeze makes most of the figure at the outside. Looseness limits are judged. The
    verdict never says "measure it": that needs a second fit with the ring measured (`seal_fit`).
    """
    findings = _squeeze_findings(fit, duty) + _stretch_findings(fit) + _room_findings(fit, duty)
    levels = {f.level for f in findings}
    verdict: Verdict = "does not fit" if "stop" in levels else "doubtful" if "warning" in levels else "fits"
    margin = min(fit.least.squeeze_share - duty.floor, duty.ceiling - fit.most.squeeze_share)
    if fit.eccentric_least is not None:
        margin = min(margin, fit.eccentric_least.squeeze_share)
    return Judgement(verdict, margin, _excess(fit, duty), gravest_first(findings))
