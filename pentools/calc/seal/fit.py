"""Which ring fits: every candidate judged in its worst case, ranked, and what to turn when none fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.seal.friction import RingFriction, ring_friction, suction_force_n
from pentools.calc.seal.gland import Gland, Ring, RingFit, fit_ring
from pentools.calc.seal.judge import Duty, Judgement, Verdict, judge_fit
from pentools.calc.seal.remedy import Remedy, as_measured, nearest_remedies
from pentools.calc.seal.trials import LadderStep, Trial, next_trial_size
from pentools.errors import InputError

__all__ = ["Candidate", "LadderStep", "SealFit", "Trial", "next_trial_size", "seal_fit"]

VERDICTS: tuple[Verdict, ...] = ("fits", "measure it", "doubtful", "does not fit")


@dataclass(frozen=True, slots=True)
class Candidate:
    """One ring, judged.

    Parameters
    ----------
    fit : RingFit
        Its geometry with least, nominal and most squeeze.
    verdict : Verdict
        fits / measure it / doubtful / does not fit.
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
    candidates: tuple[Candidate, ...]
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
        return tuple(c for c in self.candidates if c.verdict in ("fits", "measure it"))


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
    Order: verdict, then how far bounds are passed in the worst case, then the margin to them (in steps of half a per
    cent), then the stretch nearest 2 %. "Measure it" is said of a ring that passes its bounds by its table tolerance
    alone and stays within them if it measures its nominal size to 0.05 mm inside and 0.02 mm in the section.
    """
    if not rings:
        raise InputError("rings", "at least one", "none", "Name the stock or choose a table.")
    candidates = [_candidate(ring, gland, duty, shore_a, friction_coefficient) for ring in rings]
    candidates.sort(key=_order)
    suction = suction_force_n(gland.outer_mm if gland.kind == "piston" else gland.inner_mm)
    good = [c for c in candidates if c.verdict in ("fits", "measure it")]
    remedies = () if good else nearest_remedies(gland, rings, duty)
    return SealFit(gland, duty, tuple(candidates), remedies, suction, _overall(candidates[0], remedies, gland))


def _order(candidate: Candidate) -> tuple[int, float, float, float, str]:
    judged = candidate.judgement
    return (
        VERDICTS.index(candidate.verdict),
        round(judged.excess_share, 3),
        -round(200 * judged.margin_share) / 200,
        abs(candidate.fit.stretch_share - 0.02),
        candidate.designation,
    )


def _candidate(ring: Ring, gland: Gland, duty: Duty, shore_a: float, mu: float) -> Candidate:
    fit = fit_ring(ring, gland)
    judged = judge_fit(fit, duty)
    verdict, findings = judged.verdict, list(judged.findings)
    nominal = fit.nominal.squeeze_share
    least, most = fit.least.squeeze_share, fit.most.squeeze_share
    unsure = not ring.measured and nominal > 0 and (least < duty.floor < most or least < duty.ceiling < most)
    if verdict in ("doubtful", "does not fit") and unsure:
        fits = _good_if_measured(ring, gland, duty)
        verdict = "measure it" if fits else verdict
        span = f"{100 * least:.0f} to {100 * most:+.0f}\u202f%".replace("-", "−")
        end = "at its nominal size it fits" if fits else "its own size decides"
        findings.insert(
            0,
            Finding(
                "note",
                f"Measure this ring: by its tolerance it may squeeze anything from {span}; {end}.",
                "measure-ring",
            ),
        )
    friction = None
    if 0 < nominal <= 0.5:
        friction = ring_friction(gland.inner_mm + gland.depth_mm, ring.section_mm, nominal, shore_a, mu)
        if duty.moves and gland.kind == "piston":
            findings += _drag_findings(friction, suction_force_n(gland.outer_mm))
    if duty.moves and _seldom_moving(ring.designation):
        findings.append(
            Finding(
                "note",
                "A chart of moving seals leaves this dash size out (it allows 004 to 012): it rolls more easily.",
                "dash-range",
            )
        )
    return Candidate(fit, verdict, judged, friction, tuple(findings))


def _good_if_measured(ring: Ring, gland: Gland, duty: Duty) -> bool:
    return judge_fit(fit_ring(as_measured(ring), gland), duty).verdict == "fits"


def _seldom_moving(designation: str) -> bool:
    if not (designation.isdigit() and len(designation) == 3):
        return False
    dash = int(designation)
    return dash <= 3 or 13 <= dash <= 50


def _drag_findings(friction: RingFriction, suction_n: float) -> list[Finding]:
    if friction.running_n > suction_n:
        return [
            Finding(
                "note",
                f"Estimated drag {friction.running_n:.1f} N is above the {suction_n:.1f} N that a full vacuum pulls: it will feel stiff and will not spring back.",
                "drag",
            )
        ]
    if friction.breakout_n > suction_n:
        return [
            Finding(
                "note",
                f"Estimated force to start it, up to {friction.breakout_n:.1f} N, is above the {suction_n:.1f} N that a full vacuum pulls: it may stick after a rest.",
                "drag",
            )
        ]
    return []


def _overall(best: Candidate, remedies: tuple[Remedy, ...], gland: Gland) -> tuple[Finding, ...]:
    found = []
    if best.verdict == "fits":
        found.append(Finding("ok", f"{best.designation} fits in the worst case. Try it dry before any sealant.", "fit"))
    elif best.verdict == "measure it":
        found.append(
            Finding(
                "note",
                f"{best.designation} fits if it measures what the table says: measure inside and section before it goes in.",
                "measure-ring",
            )
        )
    else:
        found.append(
            Finding("warning", f"No ring of this list fits; {best.designation} comes nearest.", "nothing-fits")
        )
        found += [Finding("note", remedy.sentence, "remedy") for remedy in remedies[:3]]
    if gland.ovality_mm > gland.half_width_mm:
        found.append(
            Finding(
                "note",
                f"The bore is {gland.ovality_mm:.2f} mm out of round, more than one reading is unsure: the ring must follow it.",
                "ovality",
            )
        )
    return tuple(found)
