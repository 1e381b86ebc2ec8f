"""What a stage gives to a chapter of the story: the one figure that carries it and one sentence under it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Set
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from pentools.calc.dating.findings import date_sentence
from pentools.record.after_work import now_ml
from pentools.record.registry import find_stage
from pentools.record.stages.dating.identify import dating
from pentools.record.stages.dating.kinds import IDENTITY, MARK
from pentools.record.stages.finish.plan import progress_of
from pentools.record.stages.finish.words import finish_sentence
from pentools.record.stages.job.ending_kinds import LIMIT, NOTHING_LEFT, RESULT
from pentools.record.stages.job.intake_kinds import PART_CONDITION, REQUEST
from pentools.record.stages.seal.measure import places_in_use
from pentools.record.stages.seal.sealing import fit_words, passed_places, trials
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, STEP
from pentools.record.stages.treatment.words import what_came_of_it
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.view import SPOILT
from pentools.writeup.blocks import Audience, FigureBlock, Photo, Photos
from pentools.writeup.drawn import (
    capacity_chart,
    evidence_chart,
    heat_charts,
    pen_in_section,
    pen_with_faults,
    seal_ladder,
    series_chart,
)
from pentools.writeup.letter.now import at_rest
from pentools.writeup.orders import without_orders
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import shown
from pentools.writeup.sections.job.condition import gravest
from pentools.writeup.sections.job.pictures import before_and_after, photo_of, pictures_of
from pentools.writeup.sections.job.pictures import section as pictures_section
from pentools.writeup.sections.job.work_log import time_in_words
from pentools.writeup.sections.seal.sealing import sealed_in_words
from pentools.writeup.sections.treatment.cleaning import cleaned_in_words
from pentools.writeup.words import first_sentence, sentence

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["Carried", "Figure", "carried", "chapter_title", "rest_of_pictures", "weight_of"]

Figure = FigureBlock | Photos

_VALUES_SAID = 3


@dataclass(frozen=True, slots=True)
class Carried:
    """What a stage gives to its chapter.

    Parameters
    ----------
    figure : FigureBlock, Photos or None
        The figure that carries the chapter.
    sentence : str
        What stands under it; it says what the figure does not.
    alone : str
        What is said instead where the restorer wrote nothing of this stage.
    tells : frozenset of str
        The facts that figure and sentence tell, so that the table of facts need not.
    """

    figure: Figure | None = None
    sentence: str = ""
    alone: str = ""
    tells: frozenset[str] = field(default_factory=frozenset)


_Maker = Callable[["Job", Audience, Set[str]], Carried]


def carried(job: Job, key: str, audience: Audience, used: Set[str] = frozenset()) -> Carried:
    """What a stage gives to its chapter, from what this audience may see.

    Parameters
    ----------
    key : str
        The stage; it must be known.
    audience : {"owner", "everybody"}
        Who will read it.
    used : set of str
        Pictures that stand elsewhere already.

    Returns
    -------
    Carried
        Nothing in it where nothing was entered, or where the entries contradict each other.
    """
    if not job.record.live(key) and not pictures_of(job, key, audience):
        return Carried()
    try:
        found = _MAKERS.get(key, _any_stage(key))(job, audience, used)
        own = _own_photo(job, key, audience, used)
    except SPOILT:
        return Carried()
    return found if own is None else replace(found, figure=own)


def chapter_title(key: str) -> str:
    """The heading of a stage that has none of the restorer's."""
    return _TITLES.get(key) or find_stage(key).title


def weight_of(key: str) -> int:
    """Which of several stages carries a chapter: the one with the highest number."""
    return _WEIGHTS.get(key, 0)


def rest_of_pictures(job: Job, audience: Audience, used: Set[str]) -> tuple[Photo, ...]:
    """The pictures that this audience may see and that stand nowhere yet, each once."""
    blocks = (
        *before_and_after(job, audience).blocks,
        *pictures_section(job, find_stage("pictures"), audience).blocks,
    )
    every = (photo for block in blocks if isinstance(block, Photos) for photo in block.photos)
    return tuple({photo.file: photo for photo in every if photo.file not in used}.values())


def _any_stage(key: str) -> _Maker:
    """A stage without a figure of its own: its newest values, the first few of them, in one sentence."""

    def make(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001 - it has no pictures
        for kind in find_stage(key).kinds:
            log = job.log(kind)
            said = [
                f"{each.label[:1].lower()}{each.label[1:]} {shown(each, value).rstrip('. ')}"
                for each in kind.fields_for(audience)
                if log and (value := getattr(log[-1].values, each.name)) is not None
            ]
            if said:
                return Carried(alone=sentence("; ".join(said[:_VALUES_SAID])))
        return Carried()

    return make


def _intake(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    asked = job.newest(REQUEST).asked
    return Carried(alone=f"What was asked: “{asked}”" if asked else "")


def _identify(job: Job, audience: Audience, used: Set[str]) -> Carried:
    result, conclusion = dating(job), job.newest(IDENTITY).conclusion
    drawing = evidence_chart(job)
    marks = (logged.values.photo for logged in job.log(MARK))
    figure = _drawn(drawing) or _first_photo(job, audience, used, marks)
    words = first_sentence(conclusion or "")
    if not words and result is not None and drawing is None:
        words = sentence(date_sentence(result))
    return Carried(figure, words, tells=frozenset({"made"} if result is not None else ()))


def _condition(job: Job, audience: Audience, used: Set[str]) -> Carried:
    found = [logged.values for logged in job.log(PART_CONDITION)]
    if not found:
        return Carried()
    worst = max(found, key=lambda values: int(values.severity or 0))
    figure = _drawn(pen_with_faults(job)) or _first_photo(job, audience, used, (v.photo for v in found))
    reading = first_sentence(worst.means or "")
    under = f"The gravest: {reading[:1].lower()}{reading[1:]}" if reading and worst.severity not in (None, "0") else ""
    if figure is None:
        return Carried(None, gravest(job), gravest(job))
    return Carried(figure, under)


def _open(job: Job, audience: Audience, used: Set[str]) -> Carried:
    steps = [logged.values for logged in job.log(STEP)]
    charts = heat_charts(job)
    figure = _first_photo(job, audience, used, (step.photo for step in steps)) or _drawn(charts[0] if charts else None)
    worked = bool(steps or job.log(HEAT_PASS))
    return Carried(figure, what_came_of_it(job) if worked else "")


def _clean(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    return Carried(sentence=cleaned_in_words(job))


def _work(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    return Carried(alone=time_in_words(job), tells=frozenset({"time"}))


def _seal(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    places = sorted(places_in_use(job), key=lambda place: -len(trials(job, place)))
    drawings = (seal_ladder(job, place) for place in places)
    figure = _drawn(next((drawing for drawing in drawings if drawing is not None), None))
    passed = passed_places(job)
    held = " ".join(fit_words(job, place) for place in places if place in passed)
    sealed = sealed_in_words(job)
    return Carried(figure, sealed or ("" if figure else held), held if figure is None else "")


def _fill_test(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    last = capacity_of(job)
    if last is None:
        return Carried(sentence=at_rest(job), tells=frozenset({"rest"}))
    figure = _drawn(series_chart(job) or capacity_chart(last)) or _drawn(pen_in_section(job))
    if now_ml(job) is None:  # what was weighed before the work says nothing of the pen as it is now
        return Carried(figure, "This was weighed before the work.")
    return Carried(figure, sentence(without_orders(last.sentence)), tells=frozenset({"draws"}))


def _finish(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    from pentools.figures.finish.finishing import ladder_of_job

    if not job.log(find_stage("finish").kind("step")):
        return Carried()
    progress = progress_of(job)
    return Carried(_drawn(ladder_of_job(job)) if progress else None, without_orders(finish_sentence(job, ahead=False)))


def _limits(job: Job, audience: Audience, used: Set[str]) -> Carried:
    left = [logged.values for logged in job.log(LIMIT)]
    figure = _first_photo(job, audience, used, (limit.photo for limit in left))
    words = " ".join(sentence(limit.left or "") for limit in left)
    if not left and job.newest(NOTHING_LEFT).nothing_left is True:
        words = "Nothing that was found was left unmended."
    return Carried(figure, alone=words)


def _pictures(job: Job, audience: Audience, used: Set[str]) -> Carried:
    rest = rest_of_pictures(job, audience, used)
    return Carried(Photos(rest) if rest else None)


def _release(job: Job, audience: Audience, used: Set[str]) -> Carried:  # noqa: ARG001
    return Carried(alone=job.newest(RESULT).summary or "")


def _own_photo(job: Job, key: str, audience: Audience, used: Set[str]) -> Photos | None:
    """The first picture that the restorer said belongs to a stage, where it stands nowhere yet."""
    book = PhotoBook(job, audience)
    own = pictures_of(job, key, audience) if key != "pictures" else ()
    return next((Photos((p,)) for p in own if p.file not in used and book.embed(p.file) is not None), None)


def _drawn(drawing: Drawing | None) -> FigureBlock | None:
    return None if drawing is None else FigureBlock(drawing)


def _first_photo(job: Job, audience: Audience, used: Set[str], files: Iterable[str | None]) -> Photos | None:
    """The first of some pictures that may be seen, that is there, and that stands nowhere yet."""
    return next((Photos((photo,)) for photo in _with_words(job, audience, used, files)), None)


def _with_words(job: Job, audience: Audience, used: Set[str], files: Iterable[str | None]) -> Iterator[Photo]:
    book = PhotoBook(job, audience)
    for file in files:
        if file is not None and file not in used and book.allowed(file) and book.embed(file) is not None:
            own = photo_of(job, file)
            if own is not None:
                yield own


_MAKERS: Mapping[str, _Maker] = {
    "intake": _intake, "identify": _identify, "condition": _condition, "open": _open, "clean": _clean,
    "work log": _work, "seal": _seal, "fill test": _fill_test, "finish": _finish, "limits": _limits,
    "pictures": _pictures, "release": _release,
}  # fmt: skip
_WEIGHTS = {
    "pictures": 9, "fill test": 8, "seal": 7, "condition": 6, "identify": 5, "finish": 4, "open": 3, "limits": 2, "clean": 1,
}  # fmt: skip
_TITLES = {
    "intake": "What was asked", "identify": "What it is and when it was made", "condition": "What was wrong",
    "open": "How it came apart", "clean": "How it was cleaned", "work log": "What was done",
    "seal": "How it was sealed", "fill test": "How it performs now", "finish": "How the surface was finished",
    "release": "How it ended",
}  # fmt: skip
