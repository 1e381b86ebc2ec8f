"""Which ring fits: every candidate judged in its worst case, ranked, and what to turn when none fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from pentools.calc.base.findings import Finding
from pentools.calc.seal.friction import RingFriction, ring_friction, suction_force_n
from pentools.calc.seal.gland import Gland, Ring, RingFit, fit_ring
from pentools.calc.seal.judge import VERDICTS, Duty, Judgement, Verdict, judge_fit
from pentools.calc.seal.remedy import Remedy, as_measured, nearest_remedies, wanted_ring
from pentools.errors import InputError

__all__ = ["FITTING", "OFFERED", "Candidate", "SealFit", "seal_fit"]

FITTING: tuple[Verdict, ...] = ("fits", "measure it")
"""Verdicts of rings that fit in the worst case, by the table or once they are measured."""

OFFERED: tuple[Verdict, ...] = (*FITTING, "with a reservation")
"""Verdicts of rings that may be tried."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One ring, judged.

    Parameters
    ----------
    fit : RingFit
        Its geometry with least, nominal and most squeeze.
    verdict : Verdict
        fits / measure it / with a reservation / doubtful / does not fit.
    judgement : Judgement
        Margin and excess in the worst case.
    friction : RingFriction or None
        Estimated drag at the nominal squeeze; None where it does not touch or is far too tight.
    findings : tuple of Finding
        What to know about it, gravest first.
    """

    fit: RingFit
    verdict: Verdict
    judgement: Judgement
    friction: RingFriction | None
    findings: tuple[Finding, ...]

    @property
    def designation(self) -> str:
        """The ring's name."""
        return self.fit.ring.designation


@dataclass(frozen=True, slots=True)
class SealFit:
    """A ranked list of rings for one gland.

    Parameters
    ----------
    gland : Gland
        What was measured.
    duty : Duty
        What the seal does.
    candidates : tuple of Candidate
        Every ring, best first.
    remedies : tuple of Remedy
        Where none fits: what would make the nearest ones fit, least change first.
    suction_n : float
        Pull of a full vacuum on the bore (or of one atmosphere on the rod) [N].
    findings : tuple of Finding
        About the whole answer.
    """

    gland: Gland
    duty: Duty
    candidates: tuple[Candidate, ...] = field(repr=False)  # every ring there is
    remedies: tuple[Remedy, ...]
    suction_n: float
    findings: tuple[Finding, ...]

    @property
    def best(self) -> Candidate:
        """The first candidate."""
        return self.candidates[0]

    @property
    def fitting(self) -> tuple[Candidate, ...]:
        """Those that fit, or that fit if they measure what the table says."""
        return tuple(c for c in self.candidates if c.verdict in FITTING)

    @property
    def offered(self) -> tuple[Candidate, ...]:
        """Those that may be tried: those that fit, and those with a reservation."""
        return tuple(c for c in self.candidates if c.verdict in OFFERED)


def seal_fit(
    gland: Gland, rings: Sequence[Ring], duty: Duty, *, shore_a: float = 70.0, friction_coefficient: float = 0.2
) -> SealFit:
    """Rank rings for a gland by their worst case.

    Parameters
    ----------
    gland : Gland
        Piston head in its bore, or rod in its packing.
    rings : sequence of Ring
        What there is to choose from, with tolerances.
    duty : Duty
        hand-turned / low-friction / static, with its bands.
    shore_a : float
        Hardness for the friction estimate [Shore A].
    friction_coefficient : float
        Lubricated friction coefficient [1].

    Returns
    -------
    SealFit
        Candidates best first, remedies where none fits, findings.

    Raises
    ------
    InputError
        If there is no ring to choose from.

    Notes
    -----
    Order: verdict, then (where it may be tried) those at hand before the others, then how far bounds are passed in the worst case, then the margin to them (in steps of half a per
    cent), then the stretch nearest 2 %. "Measure it" is said of a ring that passes its bounds by its table tolerance
    alone and stays within them if it measures its nominal size to 0.05 mm inside and 0.02 mm in the section.
    Remedies are looked for only where no ring is offered.
    """
    if not rings:
        raise InputError("rings", "at least one", "none", "Name the stock or choose a table.")
    candidates = [_candidate(ring, gland, duty, shore_a, friction_coefficient) for ring in rings]
    candidates.sort(key=_order)
    best = candidates[0]
    suction = suction_force_n(gland.outer_mm if gland.kind == "piston" else gland.inner_mm)
    remedies = () if best.verdict in OFFERED else nearest_remedies(gland, rings, duty)
    return SealFit(gland, duty, tuple(candidates), remedies, suction, _overall(best, remedies, gland, duty))


def _order(candidate: Candidate) -> tuple[int, bool, float, float, float, str]:
    judged = candidate.judgement
    return (
        VERDICTS.index(candidate.verdict),
        candidate.verdict in OFFERED and not candidate.fit.ring.at_hand,
        round(judged.excess_share, 3),
        -round(200 * judged.margin_share) / 200,
        abs(candidate.fit.stretch_share - 0.02),
        candidate.designation,
    )


def _candidate(ring: Ring, gland: Gland, duty: Duty, shore_a: float, mu: float) -> Candidate:
    fit = fit_ring(ring, gland)
    judged = judge_fit(fit, duty)
    verdict, first = _measured_verdict(fit, judged, duty)
    findings = [*first, *judged.findings]
    nominal = fit.nominal.squeeze_share
    friction = None
    if 0 < nominal <= 0.5:
        friction = ring_friction(gland.inner_mm + gland.depth_mm, ring.section_mm, nominal, shore_a, mu)
        if duty.moves and gland.kind == "piston":
            findings += _drag(friction, suction_force_n(gland.outer_mm))
    if duty.moves and _seldom_moving(ring.designation):
        findings.append(Finding("note", "seal.dash-range"))
    return Candidate(fit, verdict, judged, friction, tuple(findings))


def _measured_verdict(fit: RingFit, judged: Judgement, duty: Duty) -> tuple[Verdict, list[Finding]]:
    """The verdict when the ring's own tolerance decides, and what to say of it."""
    ring, least, most = fit.ring, fit.least.squeeze_share, fit.most.squeeze_share
    wide = least < duty.floor < most or least < duty.ceiling < most
    if judged.verdict == "fits" or ring.measured or fit.nominal.squeeze_share <= 0 or not wide:
        return judged.verdict, []
    told = judge_fit(fit_ring(as_measured(ring), fit.gland), duty).verdict
    verdict: Verdict = "measure it" if told == "fits" else min(judged.verdict, told, key=VERDICTS.index)
    how = {"fits": "fits", "with a reservation": "offered"}.get(told, "decides")
    return verdict, [Finding("note", f"seal.measure-ring:{how}", least=least, most=most)]


def _seldom_moving(designation: str) -> bool:
    if not (designation.isdigit() and len(designation) == 3):
        return False
    dash = int(designation)
    return dash <= 3 or 13 <= dash <= 50


def _drag(friction: RingFriction, suction_n: float) -> list[Finding]:
    if friction.running_n > suction_n:
        return [Finding("note", "seal.drag:stiff", drag=friction.running_n, pull=suction_n)]
    if friction.breakout_n > suction_n:
        return [Finding("note", "seal.drag:sticks", drag=friction.breakout_n, pull=suction_n)]
    return []


def _overall(best: Candidate, remedies: tuple[Remedy, ...], gland: Gland, duty: Duty) -> tuple[Finding, ...]:
    name = {"ring": best.designation}
    found = []
    if best.verdict == "fits":
        found.append(Finding("ok", "seal.fit", **name))
    elif best.verdict == "measure it":
        found.append(Finding("note", "seal.measure-first", **name))
    elif best.verdict == "with a reservation":
        found.append(
            Finding("note", "seal.reservation", reasons=[f.topic for f in best.judgement.reservations], **name)
        )
    else:
        found.append(Finding("warning", "seal.nothing-fits", **name))
        wanted = wanted_ring(gland, duty)
        if wanted is not None:
            found.append(Finding("note", "seal.wanted-ring", inside=wanted[0], section=wanted[1]))
        found += [remedy.finding for remedy in remedies[:3]]
    if gland.ovality_mm > gland.outer_half_mm:
        found.append(Finding("note", "seal.ovality", ovality=gland.ovality_mm))
    return tuple(found)
