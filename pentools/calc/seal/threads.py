"""Which standard thread is this: the nearest three, how far apart they are, and what several starts do."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "NearThread",
    "Thread",
    "ThreadMatch",
    "ba_thread",
    "lead_mm",
    "match_thread",
    "pitch_over_crests_mm",
    "threads_from_rows",
]

WORN_MM = 0.2
WORN_WEIGHT = 0.5
NEAR = 3.0
NEAR_PITCH_MM = 0.012
NEAR_MAJOR_MM = 0.3


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
        Whether the first is near enough to be named.
    findings : tuple of Finding
        What it means.
    """

    nearest: tuple[NearThread, ...]
    margin: float
    near: bool
    findings: tuple[Finding, ...]


def threads_from_rows(rows: Sequence[Mapping[str, str]]) -> tuple[Thread, ...]:
    """Threads from the rows of their table.

    Parameters
    ----------
    rows : sequence of mapping
        Rows with designation, series, major_mm, pitch_mm, angle_deg, starts and source.

    Returns
    -------
    tuple of Thread
        One a row.
    """
    return tuple(
        Thread(
            row["designation"],
            row["series"],
            float(row["major_mm"]) if row["major_mm"] else None,
            float(row["pitch_mm"]),
            float(row["angle_deg"]),
            int(row["starts"]),
            row["source"],
        )
        for row in rows
    )


def ba_thread(number: int) -> tuple[float, float]:
    """Pitch and major diameter of a BA thread by the rule of its series.

    Parameters
    ----------
    number : int
        Number of the thread, 0 to 25.

    Returns
    -------
    tuple of float
        Pitch rounded to 0.01 mm and major diameter to two figures, as the series prints them [mm].

    Raises
    ------
    InputError
        If the number is out of range.

    Notes
    -----
    p = 0.9^n, D = 6 p^1.2 (BS 93), each rounded by itself; flank angle 47.5°.

    Examples
    --------
    >>> ba_thread(4)
    (0.66, 3.6)
    """
    if not 0 <= number <= 25:
        raise InputError("BA number", "0 to 25", number)
    pitch = 0.9**number
    return round(pitch, 2), float(f"{6 * pitch**1.2:.2g}")


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
    angle_deg: float | None = None,
    starts: int | None = None,
    pitch_uncertainty_mm: float = 0.003,
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
    angle_deg : float or None
        Flank angle if it could be told [deg].
    starts : int or None
        Starts counted on the end face.
    pitch_uncertainty_mm : float
        Standard uncertainty of the pitch [mm]: the caliper's over the number of pitches.
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
    Distance = root of the squares of (pitch off)/u, (diameter off)/u, (angle off)/2.5° and one for another number of
    starts. A diameter up to 0.2 mm under the standard counts for half: crests wear and old celluloid shrinks (common
    practice). Always three, never one verdict: makers cut threads of their own.
    """
    if not 0.05 <= pitch_mm <= 6:
        raise InputError(
            "pitch", "0.05 to 6 mm", f"{pitch_mm:g} mm", "Was the length over ten crests typed as the pitch?"
        )
    if major_mm is not None and not 0.2 <= major_mm <= 60:
        raise InputError("major diameter", "0.2 to 60 mm", f"{major_mm:g} mm")
    if len(threads) < 3 or not (pitch_uncertainty_mm > 0 and major_uncertainty_mm > 0):
        raise InputError(
            "threads and uncertainties",
            "three threads or more, and uncertainties above 0 mm",
            f"{len(threads)} threads",
        )
    near = []
    for thread in threads:
        pitch_off = pitch_mm - thread.pitch_mm
        total = (pitch_off / math.hypot(pitch_uncertainty_mm, 0.003)) ** 2
        major_off = None if major_mm is None or thread.major_mm is None else major_mm - thread.major_mm
        if major_off is not None:
            total += _major_distance(major_off, major_uncertainty_mm) ** 2
        elif major_mm is not None:
            total += 1.0  # any diameter goes with it, which is weaker evidence than one that agrees
        if angle_deg is not None:
            total += ((angle_deg - thread.angle_deg) / 2.5) ** 2
        if starts is not None and starts != thread.starts:
            total += 1.0
        near.append(NearThread(thread, math.sqrt(total), pitch_off, major_off))
    near.sort(key=lambda n: (n.distance, n.thread.designation))
    first, second = near[0], near[1]
    good = abs(first.pitch_off_mm) <= max(NEAR_PITCH_MM, NEAR * pitch_uncertainty_mm) and (
        first.major_off_mm is None or abs(first.major_off_mm) <= NEAR_MAJOR_MM
    )
    margin = second.distance - first.distance
    return ThreadMatch(tuple(near[:3]), margin, good, tuple(_thread_findings(near, margin, good, pitch_mm, starts)))


def _major_distance(off: float, u: float) -> float:
    spread = math.hypot(u, 0.05)
    if -WORN_MM <= off <= 0:
        return WORN_WEIGHT * -off / spread
    if off < -WORN_MM:
        return (WORN_WEIGHT * WORN_MM + (-off - WORN_MM)) / spread
    return off / spread


def _thread_findings(
    near: Sequence[NearThread], margin: float, good: bool, pitch: float, starts: int | None
) -> list[Finding]:
    first, second = near[0], near[1]
    name = f"{first.thread.series} {first.thread.designation}"
    found = []
    if not good:
        found.append(
            Finding(
                "note",
                f"Nothing standard is near: probably its maker's own thread. The closest, {name}, is off by {first.pitch_off_mm:+.3f} mm in pitch.",
                "own-thread",
            )
        )
    elif margin < 1:
        found.append(
            Finding(
                "note",
                f"{name} and {second.thread.series} {second.thread.designation} cannot be told apart by these readings; pitch over ten crests and the flank angle decide.",
                "ambiguous",
            )
        )
    else:
        found.append(
            Finding(
                "ok",
                f"{name} is nearest, clear of the next by {margin:.1f} standard uncertainties. Check with a gauge before cutting.",
                "nearest",
            )
        )
    if starts is not None and starts > 1:
        found.append(
            Finding(
                "note",
                f"{starts} starts: it advances {pitch * starts:.2f} mm a turn (lead), though its crests stand {pitch:.3f} mm apart (pitch).",
                "multi-start",
            )
        )
    elif starts is None:
        found.append(
            Finding(
                "note",
                "Pitch is not lead: count the starts on the end face. With three starts it advances three pitches a turn.",
                "count-starts",
            )
        )
    return found
