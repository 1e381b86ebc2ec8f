"""The tables once more, entry by entry through `Record` and `Job.log`: what the quick way is held against."""

import datetime as dt
import math

from pentools.books.tables.columns import NO_COUNT, NO_DAY
from pentools.books.tables.forms import ENTERED
from pentools.record.entries import OddEntry
from pentools.record.forms import Form
from pentools.record.stages.job.work_log import minutes_by_activity

EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)


def rows_of(page):
    """A page as plain rows: None where nothing was entered."""
    columns = {name: plain_values(column) for name, column in page.items()}
    return [dict(zip(columns, row, strict=True)) for row in zip(*columns.values(), strict=True)]


def plain_values(column):
    if column.array is None:
        return column.texts
    values = column.array.tolist()
    match column.form:
        case "category" | "note":
            return [None if place < 0 else column.texts[place] for place in values]
        case "number":
            return [None if math.isnan(value) else value for value in values]
        case "count":
            return [None if value == NO_COUNT else value for value in values]
        case "yes-no":
            return [None if value < 0 else bool(value) for value in values]
        case "day":
            return [None if day == NO_DAY else (EPOCH + dt.timedelta(days=day)).date().isoformat() for day in values]
        case _:
            return [EPOCH + dt.timedelta(microseconds=value) for value in values]


def place_of(job, entry):
    return {
        "job": job.name, "line": job.line_of(entry) + 1, "at_utc": entry.time, "day": entry.time.date().isoformat(),
    }  # fmt: skip


def entries_of(job):
    live = {id(entry) for entry in job.record.live()}
    return [
        place_of(job, entry)
        | {
            "stage": entry.stage, "kind": entry.kind, "counts": id(entry) in live,
            "odd": entry.reason if isinstance(entry, OddEntry) else None, "entry": entry.id or None,
            "replaces": entry.replaces or None, "note": entry.note or None,
        }
        for entry in job.record.entries
    ]  # fmt: skip


def table_of(job, form):
    """The rows of a table that is read from kinds of entries."""
    kinds = {(kind.stage, kind.key): kind for kind in form.kinds}
    found = []
    for entry in job.record.live():
        kind = kinds.get((entry.stage, entry.kind))
        values = kind and job.view.decoded(kind, entry)
        if isinstance(values, Form):
            found.append(place_of(job, entry) | {c.name: value_of(job, c, kind, values) for c in form.columns})
    return found


def value_of(job, column, kind, values):
    value = getattr(values, column.field or column.name, None)
    if column.name == "stage":
        return kind.stage
    if column.part:
        return None if value is None else getattr(value, column.part)
    if column.form == "money" or column.name == "currency":
        money = job.money(value)
        return None if money is None else str(money.amount) if column.form == "money" else money.currency
    return value


def assert_same(job, pages):
    """Every table of one job holds what the careful reader gives."""
    assert rows_of(pages["entries"]) == entries_of(job)
    for form in ENTERED:
        if form.kinds and form.name != "minutes":
            assert rows_of(pages[form.name]) == table_of(job, form), form.name
    spells = rows_of(pages["minutes"])
    told = {}
    for spell in spells:
        told[spell["activity"] or "other"] = told.get(spell["activity"] or "other", 0.0) + (spell["minutes"] or 0.0)
    wanted = dict(minutes_by_activity(job))
    assert {key: round(value, 6) for key, value in told.items() if value > 0} == {
        key: round(value, 6) for key, value in wanted.items()
    }
    [row] = rows_of(pages["jobs"])
    total = sum(wanted.values())
    assert row["hours"] == (round(total / 60, 2) if wanted else None)
    assert row["entries"] == len(job.record.entries)
