"""Which standard thread is this: the nearest three, how far apart they are, and what several starts do."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "NearThread",
    "Thread",
    "ThreadMatch",
    "lead_mm",
    "match_thread",
    "pitch_over_crests_mm",
]

WORN_MM = 0.2
WORN_WEIGHT = 0.5
NEAR = 3.0
NEAR_PITCH_MM = 0.012
NEAR_MAJOR_MM = 0.3
OTHER_STARTS = 10.0  # starts are counted, not measured: another count is another thread, whatever the pitch
AMBIGUOUS = 1.0
ANGLE_U_DEG = 2.5
LEAST_PITCH_U_MM = 0.003


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread of a series.

    Parameters
    ----------
    designation, series : str
        Its name and its series.
    major_mm : float or None
        Major diameter [mm]; None where any diameter goes with it.
    pitch_mm : float
        Crest to crest [mm].
    angle_deg : float
        Angle between the flanks [deg].
    starts : int
        Number of starts.
    source : str
        Key of its source.
    """

    designation: str
    series: str
    major_mm: float | None
    pitch_mm: float
    angle_deg: float
    starts: int = 1
    source: str = ""

    @property
    def name(self) -> str:
        """Series and designation."""
        return f"{self.series} {self.designation}"

    @property
    def lead_mm(self) -> float:
        """Advance in one turn [mm]."""
        return self.pitch_mm * self.starts


@dataclass(frozen=True, slots=True)
class NearThread:
    """A thread and how far the measured one is from it.

    Parameters
    ----------
    thread : Thread
        The standard thread.
    distance : float
        Distance in standard uncertainties, pitch and diameter together [1].
    pitch_off_mm, major_off_mm : float or None
        Measured less standard [mm]; None where the thread has no diameter of its own.
    """

    thread: Thread
    distance: float
    pitch_off_mm: float
    major_off_mm: float | None


@dataclass(frozen=True, slots=True)
class ThreadMatch:
    """The nearest threads.

    Parameters
    ----------
    nearest : tuple of NearThread
        Three, nearest first.
    margin : float
        Distance of the second less that of the first, in standard uncertainties [1].
    near : bool
        Whether the first is near enough to be named: in pitch, in diameter, and with as many starts as were counted.
    told : bool
        Whether the readings tell it from the second.
    findings : tuple of Finding
        What it means.
    """

    nearest: tuple[NearThread, ...]
    margin: float
    near: bool
    told: bool
    findings: tuple[Finding, ...]


def pitch_over_crests_mm(length_mm: float, pitches: int = 10) -> float:
    """Pitch from a length over several crests.

    Parameters
    ----------
    length_mm : float
        From one crest to another [mm], above 0.
    pitches : int
        How many pitches lie between: ten pitches run from the first crest to the eleventh.

    Returns
    -------
    float
        Pitch [mm].

    Raises
    ------
    InputError
        If the length is not above 0 or there is no pitch between.

    Examples
    --------
    >>> pitch_over_crests_mm(7.94)
    0.794
    """
    if not (length_mm > 0 and pitches >= 1):
        raise InputError(
            "length over the crests", "above 0 mm, over at least one pitch", f"{length_mm:g} mm over {pitches}"
        )
    return round(length_mm / pitches, 6)


def lead_mm(pitch_mm: float, starts: int) -> float:
    """Advance of a thread in one turn.

    Parameters
    ----------
    pitch_mm : float
        Crest to crest [mm], above 0.
    starts : int
        Starts counted on the end face, 1 or more.

    Returns
    -------
    float
        Lead [mm]: pitch times starts.

    Raises
    ------
    InputError
        If the pitch is not above 0 or there is no start.

    Examples
    --------
    >>> round(lead_mm(0.8, 3), 2)
    2.4
    """
    if not (pitch_mm > 0 and starts >= 1):
        raise InputError("pitch and starts", "above 0 mm, and 1 or more", f"{pitch_mm:g} mm and {starts}")
    return pitch_mm * starts


def match_thread(
    pitch_mm: float,
    major_mm: float | None,
    threads: Sequence[Thread],
    *,
    pitch_uncertainty_mm: float,
    angle_deg: float | None = None,
    starts: int | None = None,
    major_uncertainty_mm: float = 0.03,
) -> ThreadMatch:
    """The three standard threads nearest to a measured one.

    Parameters
    ----------
    pitch_mm : float
        Pitch, best over ten crests [mm], 0.05 to 6.
    major_mm : float or None
        Major diameter [mm], 0.2 to 60; None where it was not measured.
    threads : sequence of Thread
        What to compare with.
    pitch_uncertainty_mm : float
        Standard uncertainty of the pitch [mm]: the calliper's over the number of pitches that were measured together.
    angle_deg : float or None
        Flank angle if it could be told [deg].
    starts : int or None
        Starts counted on the end face.
    major_uncertainty_mm : float
        Standard uncertainty of the diameter [mm].

    Returns
    -------
    ThreadMatch
        Nearest three with their margin.

    Raises
    ------
    InputError
        If a value is out of range or fewer than three threads are given.

    Notes
    -----
    Distance = root of the squares of (pitch off)/u, (diameter off)/u, (angle off)/2.5°, and ten for another number of
    starts than was counted (judged: a count is not a reading). A diameter up to 0.2 mm under the standard counts for
    half: crests wear and old celluloid shrinks (common practice). Always three, never one verdict: makers cut threads
    of their own.
    """
    _check(pitch_mm, major_mm, threads, min(pitch_uncertainty_mm, major_uncertainty_mm))
    measured = _Measured(pitch_mm, major_mm, pitch_uncertainty_mm, major_uncertainty_mm, angle_deg, starts)
    near = sorted(
        (_near(t, measured) for t in threads),
        key=lambda n: (n.distance, n.thread.designation),
    )
    first, margin = near[0], near[1].distance - near[0].distance
    good = abs(first.pitch_off_mm) <= max(NEAR_PITCH_MM, NEAR * pitch_uncertainty_mm) and (
        first.major_off_mm is None or abs(first.major_off_mm) <= NEAR_MAJOR_MM
    )
    other_starts = starts is not None and starts != first.thread.starts
    good, told = good and not other_starts, good and not other_starts and margin >= AMBIGUOUS
    findings = [_match_finding(near, margin, good, told, starts), *_starts_findings(pitch_mm, starts)]
    if pitch_uncertainty_mm > NEAR_PITCH_MM:
        findings.append(Finding("note", "seal.one-crest", u=pitch_uncertainty_mm))
    return ThreadMatch(tuple(near[:3]), margin, good, told, tuple(findings))


def _check(pitch: float, major: float | None, threads: Sequence[Thread], least_uncertainty: float) -> None:
    if not 0.05 <= pitch <= 6:
        raise InputError("pitch", "0.05 to 6 mm", f"{pitch:g} mm", "Was the length over ten crests typed as the pitch?")
    if major is not None and not 0.2 <= major <= 60:
        raise InputError("major diameter", "0.2 to 60 mm", f"{major:g} mm")
    if len(threads) < 3 or not least_uncertainty > 0:
        accepted = "three threads or more, and uncertainties above 0 mm"
        raise InputError("threads and uncertainties", accepted, f"{len(threads)} threads")


class _Measured(NamedTuple):
    """What was measured of a thread, with standard uncertainties."""

    pitch_mm: float
    major_mm: float | None
    pitch_u: float
    major_u: float
    angle_deg: float | None
    starts: int | None


def _near(thread: Thread, measured: _Measured) -> NearThread:
    pitch_off = measured.pitch_mm - thread.pitch_mm
    total = (pitch_off / math.hypot(measured.pitch_u, LEAST_PITCH_U_MM)) ** 2
    major_off = None
    if measured.major_mm is not None and thread.major_mm is not None:
        major_off = measured.major_mm - thread.major_mm
        total += _major_distance(major_off, measured.major_u) ** 2
    elif measured.major_mm is not None:
        total += 1.0  # any diameter goes with it, which is weaker evidence than one that agrees
    if measured.angle_deg is not None:
        total += ((measured.angle_deg - thread.angle_deg) / ANGLE_U_DEG) ** 2
    if measured.starts is not None and measured.starts != thread.starts:
        total += OTHER_STARTS**2
    return NearThread(thread, math.sqrt(total), pitch_off, major_off)


def _major_distance(off: float, u: float) -> float:
    spread = math.hypot(u, 0.05)
    if -WORN_MM <= off <= 0:
        return WORN_WEIGHT * -off / spread
    if off < -WORN_MM:
        return (WORN_WEIGHT * WORN_MM + (-off - WORN_MM)) / spread
    return off / spread


def _match_finding(
    near: Sequence[NearThread], margin: float, good: bool, told: bool, starts: int | None
) -> Finding:  # fmt: skip
    first, second = near[0], near[1]
    if starts is not None and starts != first.thread.starts:
        return Finding("warning", "seal.starts", counted=starts, starts=first.thread.starts, first=first.thread.name)
    if not good:
        return Finding("note", "seal.own-thread", first=first.thread.name, off=first.pitch_off_mm)
    if not told:
        close = [n.thread.name for n in near[:3] if n.distance - first.distance < AMBIGUOUS]
        return Finding("note", "seal.ambiguous", names=close)
    return Finding("ok", "seal.nearest", margin=margin, first=first.thread.name, second=second.thread.name)


def _starts_findings(pitch: float, starts: int | None) -> list[Finding]:
    if starts is None:
        return [Finding("note", "seal.count-starts")]
    return (
        [Finding("note", "seal.multi-start", starts=starts, lead=lead_mm(pitch, starts), pitch=pitch)]
        if starts > 1
        else []
    )
