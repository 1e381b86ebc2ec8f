"""Condition on a page: the gravest fault first, the pen with its faults marked, then part by part."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.numbers import capital, in_words
from pentools.record.stages.common import PARTS, SEVERITIES
from pentools.record.stages.job.condition import worst_by_part
from pentools.record.stages.job.intake_kinds import PART_CONDITION, PartCondition
from pentools.writeup.blocks import Audience, Block, FigureBlock, Lead, Photo, Photos, Section, Table
from pentools.writeup.drawn import pen_with_faults
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import releases_of
from pentools.writeup.sections.job.pictures import photo_of
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["gravest", "section"]


def gravest(job: Job) -> str:
    """One sentence on what is wrong, gravest first; empty where nothing was looked at.

    Returns
    -------
    str
        Such as "Of 5 parts looked at, 3 have a fault; the gravest (serious) is in the feed."
    """
    worst = worst_by_part(job)
    if not worst:
        return ""
    faulty = {part: severity for part, severity in worst.items() if severity > 0}
    looked = f"{len(worst)} parts" if len(worst) != 1 else "the one part"
    if not faulty:
        return f"Of {looked} looked at, none has a fault."
    top = max(faulty.values())
    labels = dict(PARTS)
    word = _short(str(top)).split("\u00a0", 1)[1]
    named = in_words(f"the {labels[part]}" for part, severity in faulty.items() if severity == top)
    verb = "has" if len(faulty) == 1 else "have"
    return f"Of {looked} looked at, {len(faulty)} {verb} a fault; the gravest ({word}) is in {named}."


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was wrong, part by part.

    Parameters
    ----------
    stage : Stage
        The condition stage.
    audience : {"owner", "everybody"}
        Who will see the page; pictures for "everybody" only where they may be shown.

    Returns
    -------
    Section
        No blocks where nothing was looked at.
    """
    found = [logged.values for logged in job.log(PART_CONDITION)]
    if not found:
        return Section(stage.key, "What was wrong", tuple(releases_of(job, stage, audience)))
    blocks: list[Block] = [Lead(gravest(job))]
    drawing = pen_with_faults(job)
    if drawing is not None:
        blocks.append(FigureBlock(drawing))
    labels = dict(PARTS)
    earlier = any(values.earlier_repair is not None for values in found)
    means = any(values.means is not None for values in found)
    head = (
        "Part",
        "What is seen",
        *(["What it may mean"] if means else []),
        "How serious",
        *(["Earlier repair"] if earlier else []),
    )
    rows = tuple(_row(values, labels, means=means, earlier=earlier) for values in sorted(found, key=_gravest_first))
    scale = "How serious: " + " · ".join(label for _, label in SEVERITIES) + "."
    blocks.append(Table("Part by part, gravest first", head, rows, source_note=scale))
    photos = _photos(job, audience, found, labels)
    if photos:
        blocks.append(Photos(photos))
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was wrong", tuple(blocks))


def _row(values: PartCondition, labels: dict[str, str], *, means: bool, earlier: bool) -> tuple[str, ...]:
    repair = {None: "–", True: "yes", False: "no"}[values.earlier_repair]
    return (
        labels.get(values.part or "", "–"),
        values.seen or "–",
        *([values.means or "–"] if means else []),
        _short(values.severity or "–"),
        *([repair] if earlier else []),
    )


def _gravest_first(values: PartCondition) -> int:
    return -int(values.severity or 0)


def _short(severity: str) -> str:
    return dict(SEVERITIES).get(severity, severity).split(":")[0].replace(" ", "\u00a0")


def _photos(job: Job, audience: Audience, found: list[PartCondition], labels: dict[str, str]) -> tuple[Photo, ...]:
    """Each picture once, with the parts it shows and, where it has an entry of its own, the words of that."""
    book = PhotoBook(job, audience)
    parts: dict[str, list[PartCondition]] = {}
    for values in found:
        if values.photo is not None and book.allowed(values.photo):
            parts.setdefault(values.photo, []).append(values)
    photos = []
    for file, shown in parts.items():
        named = capital(in_words(dict.fromkeys(labels.get(v.part or "", "–") for v in shown)))
        own = photo_of(job, file)
        words = own.alt if own else " ".join(sentence(v.seen or "") for v in shown)
        photos.append(Photo(file, words, f"{named}: {sentence(words)}", drawn=own.drawn if own else False))
    return tuple(photos)
