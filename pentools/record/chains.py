"""The order of a record's lines, and which of several lines about one entry counts."""

from __future__ import annotations

import datetime as dt
import hashlib
import heapq
import itertools
from collections.abc import Iterable, Sequence

from pentools.record.entries import MERGE_ORDER, Entry
from pentools.record.lines import name_of

__all__ = ["arranged", "chains", "heads", "order_line", "together"]


def arranged(entries: Iterable[Entry]) -> list[Entry]:
    """Entries in the order in which they count: that of the file, as the lines that merges left rearrange it.

    Parameters
    ----------
    entries : iterable of Entry
        In the file's order, the lines on the order among them.

    Returns
    -------
    list of Entry
        Without the lines on the order.
    """
    found: list[Entry] = []
    for entry in entries:
        if entry.kind == MERGE_ORDER:
            found = _rearranged(found, entry.data.get("order"))
        else:
            found.append(entry)
    return found


def _rearranged(entries: list[Entry], order: object) -> list[Entry]:
    """The entries that are named in the order they are named in, put into the places that they hold between them."""
    if not isinstance(order, list):
        return entries
    rank = {name: number for number, name in enumerate(order) if isinstance(name, str)}
    names = [name_of(entry) for entry in entries]
    places = [place for place, name in enumerate(names) if name in rank]
    moved = sorted(places, key=lambda place: rank[names[place]])
    fresh = list(entries)
    for place, source in zip(places, moved, strict=True):
        fresh[place] = entries[source]
    return fresh


def chains(entries: Sequence[Entry]) -> list[list[Entry]]:
    """The lines by what they are about, in their order; a correction may stand before its target.

    Parameters
    ----------
    entries : sequence of Entry
        In the order in which they count.

    Returns
    -------
    list of list of Entry
        A line without an id stands for itself; lines with one and the same id, or that correct each other, are one.
    """
    above: dict[str, str] = {}

    def top(name: str) -> str:
        while above.setdefault(name, name) != name:
            above[name] = above[above[name]]
            name = above[name]
        return name

    for entry in entries:
        if entry.id and entry.replaces:
            above[top(entry.id)] = top(entry.replaces)
    found: dict[object, list[Entry]] = {}
    for number, entry in enumerate(entries):
        found.setdefault(top(entry.id) if entry.id else number, []).append(entry)
    return list(found.values())


def heads(entries: Sequence[Entry]) -> list[Entry]:
    """The line that counts of each chain: within the file the later one wins, whatever the clock said when it was written.

    Returns
    -------
    list of Entry
        Of each chain the last line that no other line corrects; where they correct each other in a circle, the last.
    """
    corrected = {entry.replaces for entry in entries if entry.replaces}
    found = []
    for chain in chains(entries):
        open_ends = [entry for entry in chain if entry.id not in corrected]
        found.append((open_ends or chain)[-1])
    return found


def together(one: Sequence[Entry], other: Sequence[Entry]) -> list[str]:
    """The common order of two copies: each copy's own order first, the time of entry second.

    Parameters
    ----------
    one, other : sequence of Entry
        Each copy's entries in the order in which they count.

    Returns
    -------
    list of str
        The names of all of them. It does not matter which copy is put first.

    Notes
    -----
    No entry comes before one that stands before it in either copy. Of those that could be next the earliest by its
    time is, and at the same time the one with the smaller name. Where the copies contradict each other on the order,
    time decides between all that are left.
    """
    age: dict[str, tuple[dt.datetime, str]] = {}
    for entry in (*one, *other):
        name = name_of(entry)
        age[name] = min(age.get(name, (entry.time, name)), (entry.time, name))
    after: dict[str, set[str]] = {name: set() for name in age}
    before: dict[str, set[str]] = {name: set() for name in age}
    for copy in (one, other):
        names = list(dict.fromkeys(name_of(entry) for entry in copy))
        for earlier, later in itertools.pairwise(names):
            after[earlier].add(later)
            before[later].add(earlier)
    ready = [age[name] for name, waits in before.items() if not waits]
    heapq.heapify(ready)
    left, found = set(age), []
    while left:
        name = heapq.heappop(ready)[1] if ready else min(age[name] for name in left)[1]
        if name not in left:
            continue
        left.remove(name)
        found.append(name)
        for later in after[name]:
            before[later].discard(name)
            if not before[later] and later in left:
                heapq.heappush(ready, age[later])
    return found


def order_line(wanted: Sequence[str], there: Sequence[Entry]) -> Entry | None:
    """The line that brings entries into a wanted order.

    Parameters
    ----------
    wanted : sequence of str
        The names of all of them.
    there : sequence of Entry
        The entries in the order they count in now.

    Returns
    -------
    Entry or None
        It names those from the first that is out of place to the last; None where none is. It says the same, and
        goes by the same id, whoever makes it and whenever.
    """
    names = list(dict.fromkeys(name_of(entry) for entry in there))
    wrong = [place for place, (name, other) in enumerate(zip(names, wanted, strict=True)) if name != other]
    if not wrong:
        return None
    order = list(wanted[wrong[0] : wrong[-1] + 1])
    by_name = {name_of(entry): entry for entry in there}
    made = hashlib.blake2b("\n".join(order).encode("utf-8", "replace"), digest_size=16).hexdigest()
    return Entry(id=made, at=by_name[order[-1]].at, stage="record", kind=MERGE_ORDER, data={"order": order})
