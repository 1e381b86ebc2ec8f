"""The tables' pages kept on this machine, some jobs to a shelf mark, and read anew where a record changed."""

from __future__ import annotations

import zlib
from collections.abc import Iterator, Mapping, Sequence
from hashlib import blake2b
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from pentools.books.asked import uncollected
from pentools.books.kept import Kept, Shelf, stamps_on
from pentools.books.tables.columns import ColumnForm, Packed, Page, from_wire, joined_pages, packed, taken, to_wire
from pentools.books.tables.forms import ENTERED, JOB, PLACE, TABLES
from pentools.books.tables.pages import pages_of
from pentools.record.bench import Bench
from pentools.record.folders import links_on

if TYPE_CHECKING:
    from concurrent.futures import Executor

__all__ = ["TablesKept"]

AT_ONCE = 100  # jobs that are read and kept together
_INDEX = "tables"
_Wire = dict[str, tuple[ColumnForm, bytes, list[str | None]]]
_encoder = msgspec.msgpack.Encoder()
_page_decoder = msgspec.msgpack.Decoder(_Wire)
Pages = dict[str, Page]


class _Group(msgspec.Struct, frozen=True):
    """Jobs whose pages are kept together: by what each record was known, and why it could not be read."""

    stamps: dict[str, str]
    unread: dict[str, str]

    @property
    def stamp(self) -> str:
        """By what their pages are known."""
        return blake2b(_encoder.encode(self), digest_size=12).hexdigest()


class TablesKept:
    """What the records of a bench hold, as pages of the tables.

    Parameters
    ----------
    bench : Bench
        The bench.
    executor : concurrent.futures.Executor or None
        Who reads the records that must be read; this process by default.
    """

    def __init__(self, bench: Bench, executor: Executor | None = None) -> None:
        self.bench = bench
        self._executor = executor
        self._shelf = Shelf(bench)
        self._now = stamps_on(bench)
        self._groups: dict[str, _Group] = {}
        self._fresh: dict[str, Pages] = {}
        self._look()

    @property
    def names(self) -> tuple[str, ...]:
        """Every job, in the order of their names."""
        return tuple(self._now)

    @property
    def unread(self) -> dict[str, str]:
        """Why some jobs could not be read, by name."""
        found = {name: why for group in self._groups.values() for name, why in group.unread.items()}
        return {name: found[name] for name in self._now if name in found}

    def page(self, table: str) -> Page:
        """All rows of a table, by the jobs' names."""
        found = {group: pages[table] for group, pages in self._fresh.items()}
        lacking = [group for group in self._groups if group not in found]
        kept = self._shelf.of(_question(table)) if lacking else {}
        for group in lacking:
            page = _page_in(table, kept.get(group), self._groups[group].stamp)
            found[group] = self._again(group)[table] if page is None else page
        return self._in_order(joined_pages([found[group] for group in self._groups] or [_nothing(table)]))

    def _in_order(self, page: Page) -> Page:
        job = page["job"]
        rank = {name: place for place, name in enumerate(self._now)}
        codes = np.array([rank[str(name)] for name in job.texts], np.int32)[job.numbers]
        page = page | {"job": Packed("category", codes, list(self._now))}
        return page if bool((np.diff(codes) >= 0).all()) else taken(page, np.argsort(codes, kind="stable"))

    # reading -------------------------------------------------------------------------------------------------

    def _look(self) -> None:
        """Take over what is kept and still holds, and read the rest."""
        kept = {name: group for name, one in self._shelf.of(_INDEX).items() if (group := _group_in(one)) is not None}
        homes: dict[str, str] = {}
        for name, group in kept.items():
            homes |= {job: name for job in group.stamps if job in self._now and job not in homes}
        members: dict[str, list[str]] = {name: [] for name in kept}
        for job, home in homes.items():
            members[home].append(job)
        for job in self._now:
            if job not in homes:
                members.setdefault(_room(members), []).append(job)
        wanted: dict[str, list[str]] = {}
        for name, jobs in members.items():
            before = kept.get(name)
            stale = [job for job in jobs if before is None or before.stamps.get(job) != self._now[job]]
            if before is not None and not stale and len(jobs) == len(before.stamps):
                self._groups[name] = before
            elif jobs:
                wanted[name] = stale
        self._read(wanted, members, kept)
        gone = [name for name in kept if not members[name]]
        if wanted or gone:
            self._keep(list(wanted), gone)

    def _read(
        self, wanted: Mapping[str, Sequence[str]], members: Mapping[str, Sequence[str]], kept: Mapping[str, _Group]
    ) -> None:
        """Read what is stale, and lay it to what is kept of the other jobs of its group."""
        old: dict[str, Pages | None] = {
            name: self._kept_pages(name, kept[name].stamp) if set(members[name]) - set(stale) else {}
            for name, stale in wanted.items()
            if name in kept
        }
        asked = {name: stale if old.get(name) is not None else members[name] for name, stale in wanted.items()}
        for name, (unread, pages) in zip(asked, self._told(list(asked.values())), strict=True):
            still = [job for job in members[name] if job not in asked[name]]
            before = old.get(name)
            why = unread
            self._fresh[name] = pages
            if still and before:
                self._fresh[name] = {table: _laid(before[table], pages[table], still) for table in pages}
                why = {job: said for job, said in kept[name].unread.items() if job in still} | unread
            self._groups[name] = _Group({job: self._now[job] for job in members[name]}, why)

    def _told(self, chunks: Sequence[Sequence[str]]) -> Iterator[tuple[dict[str, str], Pages]]:
        links = links_on(self.bench) if chunks else frozenset[str]()
        if self._executor is None:
            with uncollected():
                yield from (pages_of(self.bench, chunk, links) for chunk in chunks)
        else:
            count = len(chunks)
            yield from self._executor.map(_pages_of, [self.bench] * count, chunks, [links] * count)

    def _again(self, name: str) -> Pages:
        """Read a group whose pages are not kept as they should be."""
        self._read({name: list(self._groups[name].stamps)}, {name: list(self._groups[name].stamps)}, {})
        self._keep([name], [])
        return self._fresh[name]

    # keeping -------------------------------------------------------------------------------------------------

    def _kept_pages(self, name: str, stamp: str) -> Pages | None:
        """The pages of a group; None where one of them is not kept as it should be."""
        pages = {form.name: _page_in(form.name, self._shelf.one(_question(form.name), name), stamp) for form in ENTERED}
        return None if None in pages.values() else {table: page for table, page in pages.items() if page is not None}

    def _keep(self, names: Sequence[str], gone: Sequence[str]) -> None:
        stamps = {name: self._groups[name].stamp for name in names}
        for form in ENTERED:
            rows = {name: Kept(stamps[name], _written(self._fresh[name][form.name])) for name in names}
            self._shelf.put(_question(form.name), rows, gone)
        self._shelf.put(_INDEX, {n: Kept(stamps[n], _encoder.encode(self._groups[n])) for n in names}, gone)


def _question(table: str) -> str:
    return f"table {table}"


def _room(members: Mapping[str, Sequence[str]]) -> str:
    """The group that a job without one goes to: the last, while there is room in it."""
    last = max(members, default="")
    if last and len(members[last]) < AT_ONCE:
        return last
    return f"{int(last or 0) + 1:06}"


def _pages_of(bench: Bench, names: Sequence[str], links: frozenset[str]) -> tuple[dict[str, str], Pages]:
    with uncollected():
        return pages_of(bench, names, links)


def _laid(old: Page, new: Page, still: Sequence[str]) -> Page:
    """What is kept of some jobs and what was read of others, as one page."""
    stay = [place for place, name in enumerate(old["job"].texts) if name in set(still)]
    return joined_pages([taken(old, np.flatnonzero(np.isin(old["job"].numbers, stay))), new])


def _nothing(table: str) -> Page:
    form = TABLES[table]
    return {column.name: packed(column.form, []) for column in ((JOB,) if table == "jobs" else PLACE) + form.columns}


def _written(page: Page) -> bytes:
    told = _encoder.encode(to_wire(page))
    return zlib.crc32(told).to_bytes(4, "big") + told


def _page_in(table: str, kept: Kept | None, stamp: str) -> Page | None:
    if kept is None or kept.stamp != stamp or kept.answer is None:
        return None
    told = memoryview(kept.answer)[4:]
    if zlib.crc32(told) != int.from_bytes(kept.answer[:4], "big"):
        return None
    try:
        page = from_wire(_page_decoder.decode(told))
    except (msgspec.MsgspecError, ValueError):
        return None
    return page if page.keys() == _nothing(table).keys() else None


def _group_in(kept: Kept) -> _Group | None:
    try:
        group = msgspec.msgpack.decode(kept.answer or b"", type=_Group)
    except msgspec.MsgspecError:
        return None
    return group if group.stamp == kept.stamp else None
