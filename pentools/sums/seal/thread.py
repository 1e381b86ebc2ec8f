"""The thread sum: pitch and diameter in, the nearest three standard threads out."""

from __future__ import annotations

from pentools.calc.seal.threads import NearThread, ThreadMatch, match_thread, pitch_over_crests_mm
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import in_words
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables import seals
from pentools.units import Reading

__all__ = ["THREAD", "thread_answer"]

CALLIPER_MM = 0.03

FIELDS = (
    Field("pitch", "Pitch", "quantity", unit="mm", low=0.05, high=6, hint="one crest to the next, such as 0.79 mm; known to the calliper only, or to what is typed after ±"),
    Field("crests", "Length over ten pitches", "quantity", unit="mm", low=0.2, high=60, hint="from the first crest to the eleventh, such as 7.94 mm; ten times as sure as one pitch"),
    Field("over", "Pitches in that length", "count", low=1, high=60, default="10", hint="10 unless the thread is shorter; six crests make five pitches"),
    Field("major", "Major diameter", "quantity", unit="mm", low=0.2, high=60, hint="over the crests, such as 7.10 mm"),
    Field("angle", "Flank angle", "quantity", unit="deg", low=30, high=90, hint="if it can be told, such as 55 deg"),
    Field("starts", "Starts", "count", low=1, high=12, hint="counted on the end face, such as 3"),
    Field("caliper", "Calliper", "quantity", unit="mm", low=0.001, high=0.3, default="0.03 mm", hint="one standard uncertainty of a reading"),
)  # fmt: skip


def thread_answer(given: Inputs) -> SumAnswer:
    """The nearest three standard threads.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If no pitch was given, or a value is out of range.
    """
    pitch, u = _pitch(given)
    starts, major = given.whole("starts"), given.reading("major")
    match = match_thread(
        pitch,
        None if major is None else major.value,
        seals.threads(),
        pitch_uncertainty_mm=u,
        angle_deg=given.number("angle"),
        starts=starts,
        major_uncertainty_mm=_typed(major, given),
    )
    sentence = _sentence(match)
    data = {
        "sentence": sentence,
        "pitch_mm": pitch,
        "pitch_uncertainty_mm": u,
        "major_mm": None if major is None else major.value,
        "lead_mm": None if starts is None else pitch * starts,
        "nearest": [_near(n) for n in match.nearest],
        "margin": match.margin,
        "near": match.near,
        "told": match.told,
        "findings": [f.as_json() for f in match.findings],
    }
    return SumAnswer(sentence, data, match.findings, _table(match.nearest), match)


def _typed(reading: Reading | None, given: Inputs) -> float:
    """Standard uncertainty of a reading [mm]: what was typed after ±, or the calliper's."""
    typed = None if reading is None else reading.standard_uncertainty
    return typed or given.number("caliper", CALLIPER_MM)


def _pitch(given: Inputs) -> tuple[float, float]:
    """Pitch and its standard uncertainty [mm]: a length over several is divided by their number, one crest is one."""
    pitch, length, count = given.reading("pitch"), given.reading("crests"), given.whole("over", 10)
    if length is not None:
        found = pitch_over_crests_mm(length.value, count)
        if pitch is not None and abs(pitch.value - found) > 0.1 * pitch.value:
            raise InputError(
                f"length over {count} pitches",
                f"{count} times the pitch, near {count * pitch.value:.2f} mm",
                f"{length.value:g} mm",
                f"Count the crests again: {'eleven' if count == 10 else count + 1} crests make {'ten' if count == 10 else count} pitches.",
            )
        return found, _typed(length, given) / count
    if pitch is None:
        raise InputError(
            "pitch",
            "measured, or the length over ten pitches",
            "neither",
            "Measure from the first crest to the eleventh.",
        )
    return pitch.value, _typed(pitch, given)


def _sentence(match: ThreadMatch) -> str:
    first, *others = (n.thread.name for n in match.nearest)
    if match.told:
        return f"Nearest is {first}; then {in_words(others)}."
    if match.near:
        return f"These readings cannot tell {first} from {in_words(others, 'or')}."
    if match.findings[0].topic == "starts":
        return (
            f"A bad match: nothing standard has that pitch and so many starts; by pitch alone it is nearest to {first}."
        )
    return f"Probably its maker's own thread; the closest standard one is {first}."


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
                n.thread.name,
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
    'pentools sums thread --crests "7.94 mm" --major "7.10 mm"',
)
