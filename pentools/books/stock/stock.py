"""The drawer against the jobs: what is left, what to order, what is too old, which pens got a lot, which tools there are."""

from __future__ import annotations

import datetime as dt
import difflib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING

from pentools.books.asked import ask_bench
from pentools.books.stock.match import item_of, same_lot
from pentools.books.stock.uses import USES, JobUses, ToolUse, Use
from pentools.calc.base.findings import Finding
from pentools.record.drawer import MONTH_DAYS, PIECES, Item, same_text
from pentools.record.drawer_facts import drawer_beside
from pentools.tables.stock_lives import life_of
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    from pentools.record.bench import Bench

__all__ = ["LotTold", "PenWithLot", "Shelved", "StockTold", "ToolOnShelf", "lot_on", "stock_on", "tools_on"]

_WENT_IN = ("added", "fitted", "sealant", "mended")
"""Ways by which a lot came into a pen, or lies on it."""
_MOST_NEAR = 3


@dataclass(frozen=True, slots=True)
class Shelved:
    """One item of the drawer as it stands.

    Parameters
    ----------
    item : Item
        Its line.
    used : int
        Pieces that jobs took since it was counted.
    jobs : tuple of str
        The jobs that took some of it, whenever that was.
    left : Decimal or None
        Counted less used, 0 at the least; None where it was not counted, or is not taken by the piece.
    perhaps : int
        Pieces taken of which the entry does not tell from which of several lots.
    findings : tuple of Finding
        To order, too old, no day.
    """

    item: Item
    used: int
    jobs: tuple[str, ...]
    left: Decimal | None
    perhaps: int
    findings: tuple[Finding, ...]

    @property
    def to_order(self) -> bool:
        """Whether less is left than there should be; what may have been taken counts as taken."""
        least = self.item.at_least
        return least is not None and self.left is not None and self.left - self.perhaps < least


@dataclass(frozen=True, slots=True)
class StockTold:
    """The whole drawer.

    Parameters
    ----------
    rows : tuple of Shelved
        As the file has them.
    not_listed : mapping of str to tuple of str
        A lot that jobs name and the drawer does not: the jobs.
    problems : tuple of str
        What of the files could not be used.
    unread : mapping of str to str
        Jobs that could not be asked, and why.
    """

    rows: tuple[Shelved, ...]
    not_listed: Mapping[str, tuple[str, ...]]
    problems: tuple[str, ...]
    unread: Mapping[str, str]


def stock_on(bench: Bench, today: dt.date) -> StockTold:
    """What lies in the drawer, what jobs took of it, and what follows.

    Parameters
    ----------
    today : date
        The day that ages are counted to.

    Notes
    -----
    An entry of what was added takes one piece, or as many as its words begin with (``3 × cork washer``). It belongs to an item by
    its lot, else by its words and size; what was used on the day of the count counts as used after it.
    """
    drawer = drawer_beside(bench.folder, bench.facts)
    items = (*drawer.items, *_of_bench_file(bench))
    told = ask_bench(bench, USES)
    taken: dict[Item, list[tuple[str, Use]]] = {item: [] for item in items}
    perhaps: dict[Item, int] = dict.fromkeys(items, 0)
    not_listed: dict[str, dict[str, None]] = {}
    names: dict[str, str] = {}
    meant: dict[tuple[str, str], tuple[Item, ...]] = {}
    for job, uses in told.answers.items():
        for use in uses.uses:
            if use.way not in _WENT_IN:
                continue
            key = (use.what, use.lot)
            if key not in meant:
                meant[key] = item_of(use, items)
            found = meant[key]
            if len(found) == 1:
                taken[found[0]].append((job, use))
            elif not found and use.lot:
                written = names.setdefault(same_text(use.lot), use.lot)
                not_listed.setdefault(written, {})[job] = None
            for item in found if len(found) > 1 and use.way == "added" else ():
                perhaps[item] += use.pieces if _since(item, use) else 0
    rows = tuple(_shelved(item, taken[item], perhaps[item], today) for item in items)
    return StockTold(rows, {lot: tuple(jobs) for lot, jobs in not_listed.items()}, bench.problems, told.unread)


def _of_bench_file(bench: Bench) -> list[Item]:
    """Rings and abrasives that stand in ``bench.toml`` alone: sizes without lot or count."""
    from pentools.record.bench_file import read_facts

    stock = read_facts(bench.folder / "bench.toml")[0].get("stock", {})
    kinds = {"rings": "ring", "abrasives": "abrasive", "sacs": "sac", "washers": "washer"}
    return [Item(0, kind, str(text), str(text)) for key, kind in kinds.items() for text in stock.get(key, ())]


def _since(item: Item, use: Use) -> bool:
    return item.counted_on is None or use.on >= item.counted_on.isoformat()


def _shelved(item: Item, taken: Sequence[tuple[str, Use]], perhaps: int, today: dt.date) -> Shelved:
    by_piece = item.kind in PIECES
    used = sum(use.pieces for _, use in taken if use.way == "added" and _since(item, use)) if by_piece else 0
    left = item.how_many if item.how_many is None or not by_piece else max(item.how_many - used, Decimal(0))
    jobs = tuple(dict.fromkeys(job for job, _ in taken))
    row = Shelved(item, used, jobs, left, perhaps if by_piece else 0, ())
    return replace(row, findings=tuple(_findings(row, today)))


def _findings(row: Shelved, today: dt.date) -> Iterable[Finding]:
    item = row.item
    name = f"{item.what}, {item.lot}" if item.lot else item.what
    if row.to_order:
        yield Finding(
            "warning", "books.stock-order", what=name, left=float(row.left or 0), least=float(item.at_least or 0)
        )
    if row.perhaps:
        yield Finding("note", "books.stock-unclear", what=item.what, pieces=row.perhaps)
    if item.how_many is not None and row.used > item.how_many:
        yield Finding("warning", "books.stock-more", what=name, used=row.used, counted=float(item.how_many))
    yield from _on_age(item, name, today)


def _on_age(item: Item, name: str, today: dt.date) -> Iterable[Finding]:
    if item.use_by is not None and item.use_by < today:
        yield Finding("warning", "books.stock-past:date", what=name, day=item.use_by.isoformat())
        return
    opened, keeps, life = item.opened_on, item.keeps_days, life_of(item.what)
    if opened is None:
        if item.use_by is None and (keeps is not None or (life is not None and item.kind == "adhesive")):
            yield Finding("note", "books.stock-no-day", what=name)
        return
    age = (today - opened).days
    if keeps is not None:
        if age > keeps:
            yield Finding(
                "warning", "books.stock-past:keeps", what=name, opened=opened.isoformat(), months=keeps / MONTH_DAYS
            )
    elif life is not None and age > life.opened_months * MONTH_DAYS:
        yield Finding("warning", "books.stock-old", what=name, opened=opened.isoformat(), kind=life.key, months=life.opened_months, then=life.then, sure=CERTAINTY[life.certainty])  # fmt: skip


# --- which pens got a lot


@dataclass(frozen=True, slots=True)
class PenWithLot:
    """A pen that a lot came into: its job, what it is, each use, and the jobs in which it came back."""

    job: str
    pen: str
    uses: tuple[Use, ...]
    came_back: tuple[tuple[str, JobUses], ...]

    @property
    def went_in(self) -> bool:
        """Whether it stayed in the pen; a lot that was only tried did not."""
        return any(use.way in _WENT_IN for use in self.uses)


@dataclass(frozen=True, slots=True)
class LotTold:
    """Which pens got a lot.

    Parameters
    ----------
    asked : str
        The lot as asked for.
    lots : tuple of str
        The lots that were taken for it, as written.
    pens : tuple of PenWithLot
        In the order of the jobs' names.
    items : tuple of Item
        Of the drawer.
    near : tuple of str
        Where there is none of that name: lots that are written much like it.
    """

    asked: str
    lots: tuple[str, ...]
    pens: tuple[PenWithLot, ...]
    items: tuple[Item, ...]
    near: tuple[str, ...]

    @property
    def got_it(self) -> tuple[PenWithLot, ...]:
        """The pens that it stayed in."""
        return tuple(pen for pen in self.pens if pen.went_in)


def lot_on(bench: Bench, lot: str) -> LotTold:
    """Which pens got a lot, and which of them came back; capitals, spaces and dashes make no difference."""
    answers = ask_bench(bench, USES).answers
    items = drawer_beside(bench.folder, bench.facts).items
    back: dict[str, list[tuple[str, JobUses]]] = {}
    for job, told in answers.items():
        if told.older:
            back.setdefault(told.older, []).append((job, told))
    pens, lots = [], dict.fromkeys(item.lot for item in items if same_lot(lot, item.lot))
    for job, told in answers.items():
        uses = tuple(use for use in told.uses if same_lot(lot, use.lot))
        lots |= dict.fromkeys(use.lot for use in uses)
        if uses:
            pens.append(PenWithLot(job, told.pen, uses, tuple(back.get(job, ()))))
    written = {same_text(one): one for one in (*(i.lot for i in items), *(u.lot for t in answers.values() for u in t.uses)) if one}  # fmt: skip
    near = () if lots else tuple(written[key] for key in difflib.get_close_matches(same_text(lot), list(written), _MOST_NEAR, 0.5))  # fmt: skip
    return LotTold(lot, tuple(lots), tuple(pens), tuple(i for i in items if same_lot(lot, i.lot)), near)


# --- the tool shelf


@dataclass(frozen=True, slots=True)
class ToolOnShelf:
    """A tool that was made: what it is, where it was made first, and the jobs it served."""

    tool: str
    dimensions: str
    made_from: str
    made_in: str
    made_on: str
    parts: tuple[str, ...]
    systems: tuple[str, ...]
    jobs: tuple[str, ...]
    photo: str


def tools_on(bench: Bench) -> tuple[ToolOnShelf, ...]:
    """The tools of all jobs by their names, each once; what was said last of its dimensions counts."""
    found: dict[str, list[tuple[str, str, ToolUse]]] = {}
    for job, told in ask_bench(bench, USES).answers.items():
        for tool in told.tools:
            found.setdefault(same_text(tool.tool), []).append((job, told.system, tool))
    shelf = []
    for uses in found.values():
        uses.sort(key=lambda one: one[2].on)
        last = {name: next((value for *_, one in reversed(uses) if (value := getattr(one, name))), "") for name in ("dimensions", "made_from")}  # fmt: skip
        made = next((one for one in uses if one[2].made_from), uses[0])
        shelf.append(
            ToolOnShelf(
                uses[-1][2].tool, last["dimensions"], last["made_from"], made[0], made[2].on,
                tuple(dict.fromkeys(one.part for *_, one in uses if one.part)),
                tuple(dict.fromkeys(system for _, system, _ in uses if system)),
                tuple(dict.fromkeys(job for job, *_ in uses)),
                next((f"{job}/photos/{one.photo}" for job, _, one in reversed(uses) if one.photo), ""),
            )
        )  # fmt: skip
    return tuple(sorted(shelf, key=lambda one: one.tool.casefold()))
