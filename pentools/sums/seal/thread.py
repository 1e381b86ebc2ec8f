"""The thread sum: pitch and diameter in, the nearest three standard threads out."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.calc.seal.threads import NearThread, match_thread, pitch_over_crests_mm
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.tables import seals
from pentools.units import Reading

__all__ = ["THREAD", "thread_answer"]

FIELDS = (
    Field("pitch", "Pitch", "quantity", unit="mm", low=0.05, high=6, hint="crest to crest, such as 0.794 mm"),
    Field("crests", "Length over ten pitches", "quantity", unit="mm", low=0.5, high=60, hint="from the first crest to the eleventh, such as 7.94 mm; better than one pitch"),
    Field("major", "Major diameter", "quantity", unit="mm", low=0.2, high=60, hint="over the crests, such as 7.10 mm"),
    Field("angle", "Flank angle", "quantity", unit="deg", low=30, high=90, hint="if it can be told, such as 55 deg"),
    Field("starts", "Starts", "count", low=1, high=12, hint="counted on the end face, such as 3"),
    Field("caliper", "Calliper", "quantity", unit="mm", low=0.001, high=0.3, default="0.03 mm", hint="one standard uncertainty of a reading"),
)  # fmt: skip


def _mm(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def thread_answer(values: Mapping[str, Value]) -> SumAnswer:
    """The nearest three standard threads.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If no pitch was given, or a value is out of range.
    """
    pitch, length = _mm(values, "pitch"), _mm(values, "crests")
    caliper = _mm(values, "caliper") or 0.03
    if length is not None:
        if pitch is not None and abs(pitch - length / 10) > 0.1 * pitch:
            raise InputError(
                "length over ten pitches",
                f"ten times the pitch, near {10 * pitch:.2f} mm",
                f"{length:g} mm",
                "Count the crests again: eleven crests make ten pitches.",
            )
        pitch = pitch_over_crests_mm(length)
    if pitch is None:
        raise InputError(
            "pitch",
            "measured, or the length over ten pitches",
            "neither",
            "Measure from the first crest to the eleventh.",
        )
    starts = values.get("starts")
    count = starts if isinstance(starts, int) and not isinstance(starts, bool) else None
    # a pitch typed by itself is taken as found over ten crests too
    match = match_thread(
        pitch,
        _mm(values, "major"),
        seals.threads(),
        angle_deg=_mm(values, "angle"),
        starts=count,
        pitch_uncertainty_mm=caliper / 10,
        major_uncertainty_mm=caliper,
    )
    first = match.nearest[0].thread
    sentence = (
        f"Nearest is {first.series} {first.designation}; then {' and '.join(f'{n.thread.series} {n.thread.designation}' for n in match.nearest[1:])}."
        if match.near
        else f"Probably its maker's own thread; the closest standard one is {first.series} {first.designation}."
    )
    data = {
        "sentence": sentence,
        "pitch_mm": pitch,
        "major_mm": _mm(values, "major"),
        "lead_mm": None if count is None else pitch * count,
        "nearest": [_near(n) for n in match.nearest],
        "margin": match.margin,
        "near": match.near,
        "findings": [f.as_json() for f in match.findings],
    }
    return SumAnswer(sentence, data, match.findings, _table(match.nearest), match)


def _near(near: NearThread) -> dict[str, object]:
    thread = near.thread
    return {
        "designation": thread.designation,
        "series": thread.series,
        "major_mm": thread.major_mm,
        "pitch_mm": thread.pitch_mm,
        "angle_deg": thread.angle_deg,
        "starts": thread.starts,
        "lead_mm": thread.lead_mm,
        "distance": near.distance,
        "pitch_off_mm": near.pitch_off_mm,
        "major_off_mm": near.major_off_mm,
        "source": thread.source,
    }


def _table(nearest: tuple[NearThread, ...]) -> tuple[tuple[str, ...], ...]:
    rows: list[tuple[str, ...]] = [("thread", "major", "pitch", "pitch off", "diameter off", "distance")]
    for n in nearest:
        major = "any" if n.thread.major_mm is None else f"{n.thread.major_mm:.2f} mm"
        off = "–" if n.major_off_mm is None else f"{n.major_off_mm:+.2f} mm"
        rows.append(
            (
                f"{n.thread.series} {n.thread.designation}",
                major,
                f"{n.thread.pitch_mm:.3f} mm",
                f"{n.pitch_off_mm:+.3f} mm",
                off,
                f"{n.distance:.1f}",
            )
        )
    return tuple(rows)


THREAD = Sum(
    "thread",
    "Thread",
    "The nearest three standard threads to a pitch and a diameter, how clear the first is, and lead against pitch.",
    FIELDS,
    thread_answer,
    'pentools sums thread --pitch "0.794 mm" --major "7.10 mm"',
)
