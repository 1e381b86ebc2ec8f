"""What the pen is and when it was made, on a page: the range, the evidence for it, the marks as they stand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.spans import in_words
from pentools.errors import InputError
from pentools.numbers import capital
from pentools.record.owner_facts import mark_for_everybody
from pentools.record.stages.dating.identify import (
    clues,
    dating,
    dating_findings,
    price_today,
)
from pentools.record.stages.dating.kinds import (
    CERTAINTY_CHOICES,
    COUNTRIES,
    EVIDENCE,
    IDENTITY,
    MARK,
    PART_STATES,
    PRICE_THEN,
    QUESTION,
    Mark,
)
from pentools.writeup.blocks import (
    Audience,
    Block,
    Facts,
    FigureBlock,
    Lead,
    Paragraph,
    Photo,
    Photos,
    Section,
    Table,
)
from pentools.writeup.drawn import evidence_chart
from pentools.writeup.orders import without_orders
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import kind_facts, releases_of
from pentools.writeup.sections.job.pictures import photo_of
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section"]

TITLE = "What it is and when it was made"
# what of the findings is told on a page; the rest is advice for the bench, or stands in the table
_TOLD = ("who contradicts", "contradiction", "does not fit", "if original", "opinion", "narrow")


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What is concluded, and everything it rests on.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    blocks: list[Block] = []
    result = dating(job)
    if result is not None:
        blocks.append(Lead(date_sentence(result)))
    conclusion = job.newest(IDENTITY).conclusion
    if conclusion is not None:
        blocks.append(Paragraph(conclusion))
    drawing = evidence_chart(job)
    if drawing is not None:
        blocks.append(FigureBlock(drawing))
    blocks += _identity(job, stage, audience)
    blocks += _evidence(job)
    told = [text for f in dating_findings(job) if f.topic in _TOLD and (text := without_orders(f.text))]
    if told:
        blocks.append(Paragraph(" ".join(told)))
    blocks += _questions(job)
    blocks += _marks(job, audience)
    blocks += _price(job)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def _identity(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    kind = stage.kind("identity")
    return kind_facts(job, kind, audience, without=("conclusion",), caption="An opinion, from the evidence below")


def _evidence(job: Job) -> list[Block]:
    sure, parts = dict(CERTAINTY_CHOICES), dict(PART_STATES)
    rows = []
    for clue in clues(job):
        if clue.evidence is None:
            rows.append((clue.feature, clue.typed, "cannot be read", "–", EVIDENCE.decode(clue.entry).source or "–"))
            continue
        item = clue.evidence
        allows = in_words(item.spans)
        plain = clue.typed.replace("/", " to ") == item.dates.meaning
        typed = item.dates.meaning if plain else f"{clue.typed}: {item.dates.meaning}"
        what = allows if allows == item.dates.meaning else f"{allows} ({item.kind})"
        rows.append(
            (capital(item.feature), typed, what, f"{sure[item.certainty]}; {parts[item.part]}", item.source or "–")
        )
    if not rows:
        return []
    head = ("Feature", "Dates", "Allows for this pen", "How sure; the part", "Known from")
    note = (
        "The range is what all evidence on original parts has in common, and nothing tighter. "
        "It says when the parts were made; a pen may have been put together later from stock."
    )
    return [Table("The evidence", head, tuple(rows), source_note=note)]


def _questions(job: Job) -> list[Block]:
    asked = [logged.values for logged in job.log(QUESTION)]
    rows = tuple((capital(values.feature or "–"), "; ".join(values.answers)) for values in asked if values.answers)
    return [Table("Not looked at yet, and what it could say", ("Feature", "Dates of its forms"), rows)] if rows else []


def _marks(job: Job, audience: Audience) -> list[Block]:
    log = [logged.values for logged in job.log(MARK)]
    if not log:
        return []
    rows = tuple((capital(mark.where or "–"), _text_of(job, mark, audience), mark.read_with or "–") for mark in log)
    blocks: list[Block] = [
        Table("Marks, letter for letter", ("Where", "The mark", "How it was read"), rows, source_note="Nothing in them is corrected.")
    ]  # fmt: skip
    book, photos = PhotoBook(job, audience), {}
    for mark in log:
        file = mark.photo or ""
        if file and file not in photos and book.allowed(file):
            own = photo_of(job, file)
            words = own.alt if own else f"the mark on the {mark.where}"
            photos[file] = Photo(file, words, f"Mark, {mark.where}: {sentence(words)}", drawn=bool(own and own.drawn))
    return [*blocks, Photos(tuple(photos.values()))] if photos else blocks


def _text_of(job: Job, mark: Mark, audience: Audience) -> str:
    """A mark as it stands; somebody's engraved name only for the owner, or with consent."""
    if audience != "owner" and not mark_for_everybody(job, mark):
        return "a name that is not shown here"
    return mark.text or "–"


def _price(job: Job) -> list[Block]:
    values = job.newest(PRICE_THEN)
    if values.price is None:
        return []
    country = dict(COUNTRIES).get(values.country or "", values.country or "–")
    rows = [("Price", values.price), ("Year", str(values.year or "–")), ("Country", country)]
    if values.known_from is not None:
        rows.append(("Known from", values.known_from))
    blocks: list[Block] = [Facts("What it cost", tuple(rows))]
    try:
        answer = price_today(job)
    except InputError:
        return blocks
    if answer is not None:
        blocks.append(Paragraph(f"{answer.sentence} It says nothing of what the pen is worth."))
    return blocks
