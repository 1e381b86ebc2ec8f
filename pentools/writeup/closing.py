"""What frames a page: the summary at its head; the full dated log, the methods and the uncertainties at its foot."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from pentools.calc.base.uncertainty import format_value
from pentools.calc.weighing.balance import FIGURES
from pentools.errors import RecordError
from pentools.numbers import capital
from pentools.record.entries import RELEASE, WITHDRAWAL
from pentools.record.registry import STAGES, find_stage
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, REQUEST
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.stages.weighing.kinds import SETUP
from pentools.record.view import SPOILT
from pentools.writeup.blocks import Audience, Block, Details, Facts, Notice, Paragraph, Section, Table
from pentools.writeup.sections.generic import log_rows
from pentools.writeup.sections.job.condition import gravest
from pentools.writeup.sections.job.release import ending_in_words
from pentools.writeup.sections.weighing.filling import leak_in_words
from pentools.writeup.words import THIN, date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = ["answer_of", "full_log", "key_facts", "methods", "pen_title", "summary", "volume_in_words"]


def pen_title(job: Job) -> str:
    """The pen in a few words; "A pen" where it is not described yet."""
    return capital(job.newest(ARRIVAL).pen or "A pen")


def answer_of(job: Job) -> SumAnswer | None:
    """What the pen draws; None where it was not weighed or the weighings contradict each other."""
    try:
        return capacity_of(job)
    except SPOILT:
        return None


def key_facts(job: Job) -> tuple[tuple[str, str], ...]:
    """The few facts that stand under the title, from public fields; only those that are known.

    Returns
    -------
    tuple of (label, value)
        Arrival, release, result, and what the pen draws now with its expanded uncertainty.
    """
    arrival, result = job.newest(ARRIVAL), job.newest(RESULT)
    answer = answer_of(job)
    ended = {
        "done": "Done",
        "done with limits": "Done with limits",
        "stopped": "Stopped",
        "returned": "Returned unrepaired",
    }
    found = [
        ("Arrived", date_in_words(arrival.arrived_on or "")),
        ("Released", date_in_words(result.released_on or "")),
        ("Result", ended.get(result.ending or "", "")),
    ]
    if answer is not None:
        volume, spread = answer.data.get("volume_ml"), answer.data.get("expanded_uncertainty_ml")
        if isinstance(volume, float) and isinstance(spread, float) and spread > 0:
            found.append(("Draws", format_value(volume, spread, "mL")))
    return tuple((label, text) for label, text in found if text)


def summary(job: Job, audience: Audience = "owner") -> Section:  # noqa: ARG001 - the same for both
    """The job in four sentences: what came, what was wrong, what it does now, how it ended.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; both are told the same.

    Returns
    -------
    Section
        Fewer sentences where less is known; it draws on public fields only.
    """
    told = (_arrival, gravest, _performance, lambda job: ending_in_words(job) or "The work is not finished.")
    return Section(
        "summary", "In short", (Paragraph(" ".join(text for tell in told if (text := _if_whole(tell, job)))),)
    )


def full_log(job: Job, audience: Audience = "owner") -> Section:
    """Every line of the record in the order it was entered.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; nothing of it is for publication.

    Returns
    -------
    Section
        Corrected and withdrawn lines stay in it and say so; what is for the bench alone, and remarks, do not.
    """
    if audience != "owner":
        return Section("log", "The full dated log")
    entries = sorted(job.record.entries, key=lambda entry: entry.time)
    if not entries:
        return Section("log", "The full dated log")
    replaced = {entry.replaces: entry for entry in job.record.entries if entry.replaces}
    by_id = {entry.id: entry for entry in job.record.entries}
    rows = tuple((_when(entry), *_what(entry), _content(job, entry, replaced, by_id)) for entry in entries)
    blocks: list[Block] = [Notice(sentence(problem), "About the file") for problem in job.record.problems]
    table = Table(f"All {len(rows)} entries, oldest first", ("When", "Stage", "Entry", "What was entered"), rows)
    blocks.append(Details("Every entry as it was made, with corrections", (table,)))
    return Section("log", "The full dated log", tuple(blocks))


def methods(job: Job, audience: Audience) -> Section:
    """How the figures were reached and how sure they are.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; the bench's instruments are named to the owner.

    Returns
    -------
    Section
        What applies to this job.
    """
    answer = answer_of(job)
    blocks: list[Block] = []
    if answer is not None:
        blocks.append(Paragraph(volume_in_words(answer.data)))
    blocks.append(
        Paragraph(
            "A figure with ± gives an interval that holds the value with about 95\u202f% confidence (expanded uncertainty, evaluated as "
            "in JCGM 100, rounded once at the end). “Not measured” means just that. What was seen is kept apart from what it may mean."
        )
    )
    if job.newest(RESULT).care is not None:
        blocks.append(
            Paragraph("The advice on care is common practice among repairers; no published source stands behind it.")
        )
    if audience == "owner":
        blocks.append(
            Paragraph(
                "Every figure is made from the job’s record: dated lines that are added to and never rewritten, so that a correction shows."
            )
        )
        blocks += _instruments(job)
    return Section("methods", "Methods and uncertainties", tuple(blocks))


def _if_whole(tell: Callable[[Job], str], job: Job) -> str:
    """What a function tells of a job; nothing where the entries it reads were spoilt."""
    try:
        return tell(job)
    except SPOILT:
        return ""


def _performance(job: Job) -> str:
    answer = answer_of(job)
    return sentence(answer.sentence) if answer else leak_in_words(job)


def _arrival(job: Job) -> str:
    arrival = job.newest(ARRIVAL)
    if arrival.pen is None:
        return ""
    when = f" on {date_in_words(arrival.arrived_on)}" if arrival.arrived_on else ""
    count = len(arrival.pieces or ())
    parcel = f" in {count} pieces" if count > 1 else ""
    aim = {
        "use": " and is meant to be written with",
        "collection": " and is meant for a collection",
        "keepsake": " and is a keepsake",
    }
    return f"The pen arrived{when}{parcel}{aim.get(job.newest(REQUEST).meant_for or '', '')}."


def _when(entry: Entry) -> str:
    return f"{date_in_words(entry.time)}, {entry.time:%H:%M}"


def _what(entry: Entry) -> tuple[str, str]:
    if entry.stage not in STAGES:
        return entry.stage, entry.kind
    stage = find_stage(entry.stage)
    title = next((kind.title for kind in stage.kinds if kind.key == entry.kind), entry.kind)
    return stage.title, capital(title)


def _content(job: Job, entry: Entry, replaced: dict[str, Entry], by_id: dict[str, Entry]) -> str:
    parts = []
    older = by_id.get(entry.replaces or "")
    if entry.kind == WITHDRAWAL:
        parts.append(
            f"Takes back the entry of {_when(older) if older else 'an earlier time'}. Reason: {sentence(str(entry.data.get('reason', '')))}"
        )
    elif entry.kind == RELEASE:
        parts.append(
            f"Hold on {entry.data.get('hold', '')} released. Reason: {sentence(str(entry.data.get('reason', '')))}"
        )
    else:
        if older is not None:
            parts.append(f"Corrects the entry of {_when(older)}.")
        parts.append(_data(job, entry))
    later = replaced.get(entry.id)
    if later is not None:
        parts.append(f"({'Taken back' if later.kind == WITHDRAWAL else 'Corrected'} on {_when(later)}.)")
    return " ".join(parts)


def _data(job: Job, entry: Entry) -> str:
    """What the owner may see of an entry; nobody has said who may see what this version does not know."""
    kinds = find_stage(entry.stage).kinds if entry.stage in STAGES else ()
    kind = next((kind for kind in kinds if kind.key == entry.kind), None)
    if kind is None:
        return "An entry of a kind that this version does not know; it is kept."
    values = job.view.decoded(kind, entry)
    if isinstance(values, RecordError):
        return "An entry that cannot be read; it is kept as it stands."
    return log_rows(kind, values)


def volume_in_words(data: Mapping[str, Any]) -> str:
    """How the volume was reached from the masses, and how sure it is, from what the capacity sum answers."""
    z, spread, k, freedom = (
        data.get(key) for key in ("z_ml_per_g", "standard_uncertainty_ml", "coverage_factor", "degrees_of_freedom")
    )
    text = "The volume drawn is the gain in mass between empty and filled times a factor for the liquid’s density and the lift of the air"
    text += f" (here {z:.4f}{THIN}mL/g)." if isinstance(z, float) else "."
    if isinstance(spread, (int, float)):
        text += f" Its standard uncertainty is {spread:.2g}{THIN}mL"
        if isinstance(k, (int, float)):
            text += f", expanded with a factor of {k:.2f}"
        if isinstance(freedom, (int, float)):
            text += (
                f" for {freedom:.0f} effective degrees of freedom"
                if freedom < 1000
                else " for a great many degrees of freedom"
            )
        text += "."
    return text


def _instruments(job: Job) -> list[Block]:
    """The instruments this job was measured with: as its own weighings say, else as the bench has them."""
    lines = (
        *((f"Balance, {f.label[0].lower()}{f.label[1:]}", _setting(job, "balance", f.name)) for f in FIGURES),
        ("Caliper, one standard uncertainty", job.bench.text("caliper", "uncertainty")),
        ("Room", ", ".join(t for key in ("temperature", "pressure", "humidity") if (t := _setting(job, "room", key)))),
    )
    rows = tuple((label, text) for label, text in lines if text)
    return [Facts("The instruments and the room", rows)] if rows else []


def _setting(job: Job, table: str, name: str) -> str:
    """What the job's own fill test says of its balance or room, else what the bench says."""
    own = getattr(job.newest(SETUP), name)
    return SETUP.field(name).shown(own) if own is not None else job.bench.text(table, name)
