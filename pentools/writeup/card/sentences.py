"""What the card says, in the order of the work: each sentence from the view that the pages take it from."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.dating.findings import date_sentence
from pentools.numbers import percent, plain
from pentools.record.after_work import drawn_at_first, now_ml
from pentools.record.stages.dating.identify import dating
from pentools.record.stages.job.ending_kinds import LIMIT, NOTHING_LEFT, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.measure import places_in_use
from pentools.record.stages.seal.sealing import fit_words, passed_places
from pentools.record.stages.treatment.heat import heated_joints, joint_heat
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, STEP
from pentools.record.stages.treatment.words import what_came_of_it
from pentools.record.stages.weighing.strokes import strokes_of
from pentools.record.view import SPOILT
from pentools.writeup.card.spoken import spoken, spoken_ml
from pentools.writeup.letter.now import at_rest
from pentools.writeup.sections.job.condition import gravest
from pentools.writeup.sections.job.work_log import time_in_words
from pentools.writeup.sections.treatment.cleaning import cleaned_in_words
from pentools.writeup.words import date_in_words, first_sentence, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = ["LINES", "CardSentence", "card_sentences", "that_fit"]

LINES = 20
"""Lines of large type that a page holds under its heading, A4 or Letter."""
_SIGNS_A_LINE = 47
_BETWEEN = 0.35  # of a line


@dataclass(frozen=True, slots=True)
class CardSentence:
    """One sentence to say; ``weight`` tells how much would be missing without it, 1 to 10."""

    text: str
    weight: int

    @property
    def lines(self) -> float:
        """How much room it takes, in lines."""
        return -(-len(self.text) // _SIGNS_A_LINE) + _BETWEEN


def card_sentences(job: Job) -> tuple[CardSentence, ...]:
    """Everything the card could say, from public fields.

    Returns
    -------
    tuple of CardSentence
        In the order of the work; a sentence whose entries contradict each other is left out.
    """
    found = []
    for weight, make in _MAKERS:
        try:
            said = [spoken(text) for text in make(job) if text]
        except SPOILT:
            continue
        found += [CardSentence(sentence(text), weight) for text in said]
    return tuple(found)


def that_fit(sentences: tuple[CardSentence, ...], lines: float = LINES) -> tuple[CardSentence, ...]:
    """As many sentences as a page holds: the most telling chosen first, all in their order.

    Parameters
    ----------
    lines : float
        Room on the page, in lines.
    """
    left, chosen = lines, set()
    for number, one in sorted(enumerate(sentences), key=lambda pair: -pair[1].weight):
        if one.lines <= left:
            chosen.add(number)
            left -= one.lines
    return tuple(one for number, one in enumerate(sentences) if number in chosen)


def _came(job: Job) -> Iterator[str]:
    day = job.newest(ARRIVAL).arrived_on
    yield f"It came on {date_in_words(day)}." if day else ""


def _made(job: Job) -> Iterator[str]:
    result = dating(job)
    yield date_sentence(result) if result is not None else ""


def _faults(job: Job) -> Iterator[str]:
    yield gravest(job)


def _opened(job: Job) -> Iterator[str]:
    if bool(job.log(STEP)) or bool(job.log(HEAT_PASS)):
        yield what_came_of_it(job)


def _heat(job: Job) -> Iterator[str]:
    warmed = [
        (one.surface_c, heat.limit_c)
        for joint in heated_joints(job)
        if (heat := joint_heat(job, joint)) is not None
        for one in heat.passes
        if one.surface_c is not None
    ]
    if warmed:
        hottest, limit = max(warmed, key=lambda pair: pair[0])
        end = f"; the limit is {plain(limit)} °C." if limit is not None else "."
        yield f"The warmest it got was {plain(hottest)} °C{end}"


def _cleaned(job: Job) -> Iterator[str]:
    yield cleaned_in_words(job)


def _sealed(job: Job) -> Iterator[str]:
    passed = passed_places(job)
    yield from (fit_words(job, place) for place in places_in_use(job) if passed.get(place))


def _drew(job: Job) -> Iterator[str]:
    answer = drawn_at_first(job)
    yield _volume(answer, "Before the work it drew") if answer is not None else ""


def _draws(job: Job) -> Iterator[str]:
    answer = now_ml(job)
    yield _volume(answer, "It now draws") if answer is not None else ""


def _volume(answer: SumAnswer, begins: str) -> str:
    data = answer.data
    if not data["gain_told"]:
        return ""
    share = data["share_filled"]
    of = f": {percent(share)} of {data['expected_holds']}" if isinstance(share, float) else ""
    return f"{begins} {spoken_ml(data['volume_ml'], data['expanded_uncertainty_ml'])}{of}."


def _strokes(job: Job) -> Iterator[str]:
    series = strokes_of(job)
    if series is not None and series.plateau_stroke is not None:
        yield f"It is full after {series.plateau_stroke} strokes."


def _rested(job: Job) -> Iterator[str]:
    words = at_rest(job)
    yield f"After {words[:1].lower()}{words[1:]}" if words else ""


def _took(job: Job) -> Iterator[str]:
    yield time_in_words(job)


def _left(job: Job) -> Iterator[str]:
    for logged in job.log(LIMIT):
        yield first_sentence(logged.values.left or "")
    if not job.log(LIMIT) and job.newest(NOTHING_LEFT).nothing_left is True:
        yield "Nothing that was found was left unmended."


def _ended(job: Job) -> Iterator[str]:
    result = job.newest(RESULT)
    when = f" on {date_in_words(result.released_on)}" if result.released_on else ""
    ended = {
        "done": f"The work is done, and it went home{when}.",
        "done with limits": f"The work is done with limits, and it went home{when}.",
        "stopped": f"The work was stopped{when}.",
        "returned": f"It went home unrepaired{when}.",
    }
    yield ended.get(result.ending or "", "The work is not finished.")


_MAKERS: tuple[tuple[int, Callable[[Job], Iterator[str]]], ...] = (
    (2, _came), (6, _made), (7, _faults), (9, _drew), (5, _opened), (4, _heat), (1, _cleaned), (7, _sealed),
    (10, _draws), (8, _strokes), (9, _rested), (6, _took), (8, _left), (10, _ended),
)  # fmt: skip
