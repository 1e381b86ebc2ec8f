"""The tables' pages from the lines of many records."""

from __future__ import annotations

import functools
from collections.abc import Callable, Collection, Sequence
from operator import attrgetter
from typing import Any

import numpy as np

from pentools.books.tables.columns import NO_DAY, Packed, Page, joined_pages, packed, recoded, taken
from pentools.books.tables.forms import ENTERED, TABLES, Column, TableForm
from pentools.books.tables.records_read import Lines, Logs, read_lines_of
from pentools.errors import InputError
from pentools.money import read_money
from pentools.record.bench import Bench
from pentools.record.entries import OddEntry
from pentools.record.kinds import Kind
from pentools.record.stages.job.ending_kinds import LIMIT, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, REQUEST
from pentools.record.stages.job.work_kinds import TIMER_START, TIMER_STOP

__all__ = ["pages_of"]

_KINDS = tuple(
    dict.fromkeys((
        *(kind for form in ENTERED for kind in form.kinds),
        ARRIVAL, REQUEST, RESULT, OWNER, TIMER_START, TIMER_STOP,
    ))
)  # fmt: skip
_NEWEST = {
    "pen": ARRIVAL, "system": ARRIVAL, "material": ARRIVAL, "arrived_on": ARRIVAL, "work": REQUEST, "meant_for": REQUEST,
    "ending": RESULT, "released_on": RESULT, "price": RESULT, "currency": RESULT, "owner": OWNER,
}  # fmt: skip
All = dict[Kind[Any], Logs]


def pages_of(
    bench: Bench, names: Sequence[str], careful: Collection[str] = ()
) -> tuple[dict[str, str], dict[str, Page]]:
    """Read the records of some jobs into pages of the tables.

    Parameters
    ----------
    names : sequence of str
        Jobs on the bench, a hundred or so at a time.
    careful : collection of str
        Those that the careful reader must read: whose folder is a link.

    Returns
    -------
    unread : dict
        Why a job could not be read, by its name.
    pages : dict
        Table to page; jobs in the order of `names`, lines in the order first entered.
    """
    lines, own = read_lines_of(bench, names, _KINDS, careful), bench.currency
    logs = {kind: lines.logs(kind) for kind in _KINDS}
    pages = {form.name: _page(lines, logs, form, own) for form in ENTERED if form.kinds}
    pages["entries"] = _entries(lines)
    pages["minutes"] = _with_spells(lines, logs, pages["minutes"])
    pages["jobs"] = _jobs(lines, logs, pages["minutes"], own)
    return lines.unread, pages


def _page(lines: Lines, logs: All, form: TableForm, own: str) -> Page:
    parts = [(kind, logs[kind]) for kind in form.kinds]
    rows = np.concatenate([log.rows for _, log in parts])
    page = lines.place(rows)
    for column in form.columns:
        page[column.name] = packed(
            column.form, [value for kind, log in parts for value in _values(column, kind, log.forms, own)]
        )
    if len(parts) == 1:
        return page
    return taken(page, np.argsort(np.concatenate([log.turns for _, log in parts]), kind="stable"))


def _values(column: Column, kind: Kind[Any], forms: Sequence[Any], own: str) -> list[Any]:
    name = column.field or column.name
    if name == "stage":
        return [kind.stage] * len(forms)
    if all(field.name != name for field in kind.fields):
        return [None] * len(forms)
    if column.part:
        try:
            return list(map(attrgetter(f"{name}.{column.part}"), forms))
        except AttributeError:  # not all of them say it
            values = list(map(attrgetter(name), forms))
            return [None if value is None else getattr(value, column.part) for value in values]
    values = list(map(attrgetter(name), forms))
    if column.form == "money" or column.name == "currency":
        return [_money(value, own)[column.form != "money"] for value in values]
    return values


@functools.lru_cache(maxsize=4096)
def _money(typed: str | None, own: str) -> tuple[str | None, str | None]:
    """Amount and currency, as `Job.money` reads them."""
    try:
        money = read_money(typed or "", own, old=False)
    except InputError:
        return None, None
    return str(money.amount), money.currency


def _entries(lines: Lines) -> Page:
    counts = np.zeros(len(lines.entries), np.int8)
    counts[lines.live] = 1
    replaces, notes = (list(map(attrgetter(name), lines.entries)) for name in ("replaces", "note"))
    odd: list[str | None] = [None] * len(notes)
    if not all(record.plain for record in lines.records):
        odd = [entry.reason if isinstance(entry, OddEntry) else None for entry in lines.entries]
    return lines.place(slice(None)) | {
        "stage": recoded([stage for stage, _ in lines.places], lines.place_of),
        "kind": recoded([kind for _, kind in lines.places], lines.place_of),
        "counts": Packed("yes-no", counts, []),
        "odd": _seldom(odd),
        "entry": packed("text", [entry.id or None for entry in lines.entries]),
        "replaces": _seldom(replaces),
        "note": _seldom(notes),
    }


def _seldom(texts: Sequence[str | None]) -> Packed:
    """Texts that most lines have none of."""
    if not any(texts):
        return Packed("note", np.full(len(texts), -1, np.int32), [])
    return packed("note", [text or None for text in texts])


def _with_spells(lines: Lines, logs: All, typed: Page) -> Page:
    """The spells that were typed and those that the timer measured, in the order of the record."""
    begun, over = logs[TIMER_START], logs[TIMER_STOP]
    starts = dict(zip(begun.rows, begun.forms, strict=True))
    told = [
        *zip(begun.turns, begun.rows, begun.forms, strict=True),
        *zip(over.turns, over.rows, over.forms, strict=True),
    ]
    spells: list[tuple[int, str | None, float, str | None]] = []
    start: int | None = None
    for _, row, form in sorted(told, key=lambda one: one[0]):
        if row in starts:
            start = row
        elif start is not None and lines.job[start] == lines.job[row]:
            minutes = max(0.0, float(lines.at[row] - lines.at[start]) / 60e6)
            spells.append((start, starts[start].activity, minutes, form.done))
            start = None
    page = lines.place(np.array([spell[0] for spell in spells], np.int64)) | {
        "activity": packed("category", [spell[1] for spell in spells]),
        "minutes": packed("number", [spell[2] for spell in spells]),
        "told_by": packed("category", ["timer"] * len(spells)),
        "done": packed("text", [spell[3] for spell in spells]),
        "by": packed("text", [None] * len(spells)),
    }
    typed = typed | {"told_by": packed("category", ["typed"] * len(typed["job"]))}
    both = joined_pages([typed, page])
    return taken(both, np.lexsort((both["line"].numbers, both["job"].numbers)))


def _jobs(lines: Lines, logs: All, minutes: Page, own: str) -> Page:
    count, form = len(lines.records), TABLES["jobs"]
    worked = np.bincount(minutes["job"].numbers, np.nan_to_num(minutes["minutes"].numbers), count).tolist()
    left = np.bincount(lines.job[logs[LIMIT].rows], minlength=count).tolist()
    lengths = [len(record.entries) for record in lines.records]
    columns: dict[str, list[Any]] = {
        "minutes": [time or None for time in worked],
        "hours": [round(time / 60, 2) if time else None for time in worked],
        "limits": left,
        "entries": lengths,
    }
    for kind in set(_NEWEST.values()):
        newest = dict(zip(lines.job[logs[kind].rows].tolist(), logs[kind].forms, strict=True))
        for column in form.columns:
            if _NEWEST.get(column.name) is kind:
                values = _values(column, kind, list(newest.values()), own)
                by_job = dict(zip(newest, values, strict=True))
                columns[column.name] = [by_job.get(job) for job in range(count)]
    page = {"job": Packed("category", np.arange(count, dtype=np.int32), lines.names)}
    for column in form.columns:
        if column.name in ("first_day", "last_day"):
            page[column.name] = _ends_of(lines, lengths, np.min if column.name == "first_day" else np.max)
        else:
            page[column.name] = packed(column.form, columns[column.name])
    return page


def _ends_of(lines: Lines, lengths: Sequence[int], which: Callable[[Any], Any]) -> Packed:
    """The first or the last day of each job; none of one without entries."""
    ends = np.cumsum(lengths, dtype=np.int64)
    days = [
        NO_DAY if not length else int(which(lines.day[end - length : end]))
        for end, length in zip(ends.tolist(), lengths, strict=True)
    ]
    return Packed("day", np.array(days, np.int32), [])
