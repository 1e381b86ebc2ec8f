"""The tables over all jobs: what each has a row of, its columns, and the kinds of entry that they are read from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from pentools.books.tables.columns import ColumnForm
from pentools.record.kinds import Kind
from pentools.record.stages.finish.kinds import STEP
from pentools.record.stages.job.ending_kinds import LIMIT
from pentools.record.stages.job.work_kinds import MATERIAL, WORK
from pentools.record.stages.nib.kinds import FEED_SETTING, SMOOTHED
from pentools.record.stages.seal.kinds import TEST, TRIAL
from pentools.record.stages.treatment.cleaning_kinds import BATH
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS
from pentools.record.stages.weighing.kinds import LEAK_READING, WEIGHING

__all__ = ["ENTERED", "PLACE", "TABLES", "WORKED", "Column", "TableForm"]


@dataclass(frozen=True, slots=True)
class Column:
    """A column.

    Parameters
    ----------
    name : str
        Its name, with the unit at its end where it is a number of something.
    form : ColumnForm
        What it holds.
    says : str
        What it means, in a few words.
    field : str
        The field that it is read from; its own name unless said.
    part : {"", "value", "standard_uncertainty"}
        Which part of a reading.
    """

    name: str
    form: ColumnForm
    says: str
    field: str = ""
    part: str = ""


@dataclass(frozen=True, slots=True)
class TableForm:
    """A table.

    Parameters
    ----------
    name : str
        What it is called.
    row : str
        What a row of it is.
    columns : tuple of Column
        After the place: job, line, moment and day.
    kinds : tuple of Kind
        The kinds of entry that it has a row for each of; empty where it is made otherwise.
    """

    name: str
    row: str
    columns: tuple[Column, ...]
    kinds: tuple[Kind[Any], ...] = ()


def _reading(name: str, says: str, field: str) -> tuple[Column, Column]:
    spread, unit = f"{name.rpartition('_')[0] or name}_u", name.rpartition("_")[2]
    return (
        Column(name, "number", says, field, "value"),
        Column(f"{spread}_{unit}", "number", "its standard uncertainty, where one was typed", field, "standard_uncertainty"),
    )  # fmt: skip


def _value(name: str, says: str, field: str) -> Column:
    return Column(name, "number", says, field, "value")


JOB = Column("job", "category", "the job’s name")
PLACE = (
    JOB,
    Column("line", "count", "which line of the job’s record it is, in the order in which they count"),
    Column("at_utc", "moment", "when it was entered, in universal time"),
    Column("day", "day", "the day on which it was entered, by the bench’s own clock"),
)
"""The columns that every table read from entries begins with."""

_STAGE = Column("stage", "category", "the stage of the job")

_ENTRIES = TableForm("entries", "every line of a record that could be read", (
    _STAGE,
    Column("kind", "category", "the kind of entry"),
    Column("counts", "yes-no", "whether it counts: it was neither corrected nor withdrawn"),
    Column("odd", "note", "why its data cannot be read"),
    Column("entry", "text", "its id"),
    Column("replaces", "note", "the id of the entry that it corrects or withdraws"),
    Column("note", "note", "the remark on it"),
))  # fmt: skip
_JOBS = TableForm("jobs", "every job", (
    Column("pen", "text", "what pen it is"),
    Column("system", "category", "filling system"),
    Column("material", "category", "what it is made of"),
    Column("work", "category", "what kind of work was asked"),
    Column("meant_for", "category", "what the pen is meant for"),
    Column("arrived_on", "day", "the day it arrived"),
    Column("ending", "category", "how the job ended; not entered while it is open"),
    Column("released_on", "day", "the day it was released"),
    Column("minutes", "number", "minutes of work, typed and timed"),
    Column("hours", "number", "the same in hours, to two decimals"),
    Column("price", "money", "the price at the end"),
    Column("currency", "category", "what the price is in (ISO 4217)", "price"),
    Column("limits", "count", "how many things were left"),
    Column("entries", "count", "how many lines its record has"),
    Column("first_day", "day", "the day of the first entry"),
    Column("last_day", "day", "the day of the newest entry"),
    Column("owner", "text", "whose pen it is; only where asked for"),
))  # fmt: skip
_MINUTES = TableForm("minutes", "every spell of work", (
    Column("activity", "category", "what kind of work"),
    _value("minutes", "how long", "minutes"),
    Column("told_by", "category", "typed, or measured by the timer"),
    Column("done", "text", "what was done"),
    Column("by", "text", "who did it, where somebody is named"),
), (WORK,))  # fmt: skip

ENTERED = (_JOBS, _ENTRIES,
    TableForm("weighings", "every weighing of a fill test", (
        Column("state", "category", "empty and dry, drained, filled …"),
        *_reading("mass_g", "what the balance showed", "mass"),
        Column("strokes", "count", "strokes of the filler"),
    ), (WEIGHING,)),
    TableForm("leaks", "every weighing of a filled pen at rest", (
        _value("after_h", "hours since it was filled", "after"),
        *_reading("mass_g", "what the balance showed", "mass"),
        _value("blank_g", "what a vessel of water beside it showed", "blank"),
    ), (LEAK_READING,)),
    TableForm("seals", "every seal that was tried", (
        Column("place", "category", "where it sits"),
        Column("what", "text", "what was tried"),
        _value("section_mm", "its thickness", "section"),
        _value("inside_mm", "its inside diameter", "inside"),
        _value("outside_mm", "its outside diameter", "outside"),
        Column("lot", "text", "source and lot"),
        Column("dry", "yes-no", "whether it was tried dry"),
        Column("happened", "category", "what happened"),
    ), (TRIAL,)),
    TableForm("tests", "every test of a seal", (
        Column("test", "category", "which test"),
        _value("pushed_mm", "how far it was pushed", "pushed"),
        _value("returned_mm", "how far it came back", "returned"),
        _value("volume_ml", "the volume behind it", "volume"),
        _value("vacuum_start_kpa", "vacuum at the start", "vacuum_start"),
        _value("vacuum_end_kpa", "vacuum at the end", "vacuum_end"),
        _value("seconds", "seconds between", "seconds"),
        _value("rested_h", "hours that it rested", "rested"),
        Column("overnight_seen", "category", "what was seen after the night"),
    ), (TEST,)),
    TableForm("abrasives", "every step with an abrasive, on the pen or on the nib’s tip", (
        _STAGE,
        Column("grade", "category", "which abrasive"),
        Column("zone", "category", "where on the pen"),
        _value("minutes", "how long", "minutes"),
        Column("strokes", "count", "how many strokes"),
        Column("wet", "category", "wet, damp or dry"),
        Column("fresh", "category", "fresh or used"),
        Column("direction", "category", "which way"),
        Column("figure", "category", "which figure, on the tip"),
        Column("cleared", "yes-no", "whether the scratches before it were gone"),
        Column("seen", "text", "what was seen"),
    ), (STEP, SMOOTHED)),
    TableForm("heatings", "every heating of a joint or a feed", (
        _STAGE,
        Column("joint", "category", "which joint"),
        Column("way", "category", "how a feed was set"),
        _value("surface_c", "temperature of the surface", "surface"),
        _value("minutes", "how long, of a joint", "minutes"),
        _value("seconds", "how long, of a feed", "seconds"),
        Column("moved", "text", "what moved"),
        Column("broke", "text", "what broke"),
        Column("free", "yes-no", "whether it came free"),
    ), (HEAT_PASS, FEED_SETTING)),
    TableForm("baths", "every bath that is over", (
        Column("part", "category", "which part"),
        Column("bath", "category", "which bath"),
        Column("strength", "text", "how strong"),
        _value("minutes", "how long", "minutes"),
        _value("temperature_c", "how warm", "temperature"),
        Column("came_out", "text", "how it came out"),
    ), (BATH,)),
    _MINUTES,
    TableForm("parts", "every part or material that went in or came out", (
        Column("what", "text", "what it is"),
        Column("way", "category", "added, removed, or removed and given back"),
        Column("part", "category", "which part of the pen"),
        Column("reversible", "yes-no", "whether it can be undone"),
        Column("lot", "text", "source and lot"),
        Column("cost", "money", "what it cost"),
        Column("currency", "category", "what that is in (ISO 4217)", "cost"),
    ), (MATERIAL,)),
    TableForm("limits", "every thing that was left", (
        Column("part", "category", "which part"),
        Column("left", "text", "what was left"),
        Column("why", "text", "why"),
        Column("for_now", "yes-no", "whether it only holds for now"),
        Column("wanted", "text", "the part that is wanted"),
    ), (LIMIT,)),
)  # fmt: skip
"""What stands in the records as it was entered."""

WORKED = (
    TableForm("fillings", "every filling that was weighed, with what it comes to", (
        Column("number", "count", "which filling of the job, from 1"),
        Column("start", "category", "from dry or from drained"),
        Column("system", "category", "filling system"),
        Column("weighings", "count", "how many weighings it rests on"),
        Column("volume_ml", "number", "what it draws"),
        Column("expanded_uncertainty_ml", "number", "its expanded uncertainty (95 %)"),
        Column("expected_ml", "number", "what it should hold, by its dimensions"),
        Column("share_filled", "number", "the part of that which it draws"),
        Column("share_standard_uncertainty", "number", "its standard uncertainty"),
        Column("verdict", "category", "how that stands to what is usual"),
    )),
    TableForm("findings", "everything that is missing or odd in a record as it stood with its newest entry", (
        Column("level", "category", "stop, warning or note"),
        Column("subject", "category", "what it is about"),
        Column("topic", "category", "its key"),
        Column("text", "text", "what it says"),
    )),
)  # fmt: skip
"""What is worked out from them, job by job."""

TABLES = {form.name: form for form in (*ENTERED, *WORKED)}
"""All of them by name."""
