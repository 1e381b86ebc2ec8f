"""The drawer: ``stock.csv`` beside the jobs, a table that any spreadsheet opens; what cannot be read is said line by line."""

from __future__ import annotations

import csv
import datetime as dt
import functools
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from pentools.days import read_day
from pentools.errors import InputError
from pentools.money import read_money

__all__ = [
    "COLUMNS",
    "DRAWER",
    "KINDS",
    "MONTH_DAYS",
    "PIECES",
    "Drawer",
    "Item",
    "drawer_template",
    "read_drawer",
    "same_text",
]

DRAWER = "stock.csv"
KINDS: Mapping[str, tuple[str, ...]] = {
    "ring": ("rings", "o-ring", "o-rings", "o ring"),
    "sac": ("sacs", "diaphragm", "diaphragms"),
    "washer": ("washers", "cork", "corks", "packing"),
    "sheet": ("sheets", "cork sheet", "felt"),
    "abrasive": ("abrasives", "paper", "film", "cloth", "polish"),
    "adhesive": ("adhesives", "glue", "sealant", "shellac", "cement", "grease"),
    "part": ("parts", "spare", "spares"),
    "other": (),
}
"""Kinds of item, each with other words for it."""
PIECES = ("ring", "sac", "washer", "part", "other")
"""Kinds that an entry in a job takes one of; of the others it takes some."""
COLUMNS: Mapping[str, tuple[str, ...]] = {
    "kind": (),
    "what": ("name", "item"),
    "size": (),
    "lot": ("source and lot", "batch"),
    "how many": ("count", "number", "quantity"),
    "counted on": ("counted",),
    "opened on": ("opened", "date opened"),
    "keeps": ("keeps after opening", "shelf life"),
    "use by": ("best before", "expires"),
    "at least": ("minimum", "reorder at"),
    "cost": ("price", "each"),
    "where": ("place",),
    "remark": ("note",),
}
"""Headings, each with other words for it; ``kind`` and ``what`` are needed."""
_EXAMPLE = (
    ("sac", "latex sac 16", "6.35 mm", "bag of May 2026", "12", "2026-05-20", "2026-05-20", "", "", "4", "1.20", "", "an example: take this line out"),
)  # fmt: skip
MONTH_DAYS = 30.4375
"""Days of a month, on average."""
_DAYS = {"d": 1.0, "w": 7.0, "m": MONTH_DAYS, "y": 12 * MONTH_DAYS}
_LONGEST = 2_000_000  # letters of the file
_MOST_SAID = 40  # lines with something wrong that are said one by one


@dataclass(frozen=True, slots=True)
class Item:
    """One line of the drawer; None where a cell was left empty.

    Parameters
    ----------
    line : int
        Its line in the file, from 1.
    kind : str
        A key of `KINDS`.
    what, size, lot, where, remark : str
        As typed; empty where nothing was.
    how_many : Decimal or None
        Pieces that were counted, 0 or more.
    counted_on, opened_on, use_by : date or None
        Days.
    keeps_days : float or None
        How long it keeps after it was opened [day].
    at_least : Decimal or None
        Below so many it is to be ordered.
    cost : str
        Of a piece, with its currency; empty where none is known.
    """

    line: int
    kind: str
    what: str
    size: str = ""
    lot: str = ""
    how_many: Decimal | None = None
    counted_on: dt.date | None = None
    opened_on: dt.date | None = None
    keeps_days: float | None = None
    use_by: dt.date | None = None
    at_least: Decimal | None = None
    cost: str = ""
    where: str = ""
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Drawer:
    """What lies in the drawer, and what of the file could not be used, a sentence each."""

    items: tuple[Item, ...] = ()
    problems: tuple[str, ...] = ()


@functools.lru_cache(maxsize=50_000)
def same_text(text: str) -> str:
    """A text as it is compared: its words and numbers, whatever capitals, spaces and signs stand between them."""
    found = re.findall(r"\d+(?:\.\d+)*|[^\W\d_]+|[%½¼¾]", re.sub(r"(?<=\d),(?=\d)", ".", text.casefold()))
    return " ".join(word for word in found if word != "x")


def drawer_template() -> str:
    """An empty ``stock.csv``: its headings and one example."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerows((tuple(COLUMNS), *_EXAMPLE))
    return text.getvalue()


def read_drawer(folder: Path, *, currency: str = "", date_order: str = "") -> Drawer:
    """Read a bench's ``stock.csv``.

    Parameters
    ----------
    folder : Path
        The bench folder; without the file the drawer is empty.
    currency : str
        The bench's own, for costs without one.
    date_order : str
        The bench's own way with ``3/4/2026``, as for `pentools.days.read_day`.

    Returns
    -------
    Drawer
        A cell that cannot be read is taken as empty and said by line and heading; a line without kind or what, or
        with more cells than headings, is passed by and said. Commas, semicolons or tabs may part the cells.
    """
    path = folder / DRAWER
    try:
        if not path.is_file():
            return Drawer((), (f"{path} is no file, so nothing of it is used.",) if path.exists() else ())
        raw = path.read_bytes()
    except OSError as error:
        return Drawer((), (f"{path} cannot be read ({error.strerror or error}), so nothing of it is used.",))
    text = _decoded(raw)
    if len(text) > _LONGEST:
        return Drawer((), (f"{DRAWER} is too long: at most {_LONGEST} letters. Nothing of it is used.",))
    return _Reader(currency, date_order).read(text)


def _decoded(raw: bytes) -> str:
    """Text in UTF-8, or as a spreadsheet on an older system writes it."""
    for encoding in ("utf-8-sig", "utf-16" if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else "cp1252"):
        try:
            return raw.decode(encoding).replace("\0", "")
        except UnicodeDecodeError:
            continue
    return raw.decode("latin-1").replace("\0", "")


class _Reader:
    """Reads one file, and gathers what is wrong with it."""

    def __init__(self, currency: str, date_order: str) -> None:
        self.currency, self.date_order = currency, date_order
        self.problems: list[str] = []

    def read(self, text: str) -> Drawer:
        rows = list(_rows(text))
        names: list[str] = []
        items = []
        for line, cells in rows:
            if names:
                item = self._item(line, cells, names)
                items += [] if item is None else [item]
            else:
                names = _headings(cells)
        if not names:
            said = f"{DRAWER} has no line of headings with kind and what, so nothing of it is used. They are: {', '.join(COLUMNS)}."
            return Drawer((), (said,) if text.strip() else ())
        more = len(self.problems) - _MOST_SAID
        rest = [f"{DRAWER}: {more} more cells or lines cannot be read."] if more > 0 else []
        return Drawer(tuple(items), (*self.problems[:_MOST_SAID], *rest))

    def _say(self, line: int, why: str, what_now: str) -> None:
        self.problems.append(f"{DRAWER}, line {line}: {why} {what_now}")

    def _item(self, line: int, cells: Sequence[str], names: Sequence[str]) -> Item | None:
        if not any(cell.strip() for cell in cells):
            return None
        if any(cell.strip() for cell in cells[len(names) :]):
            self._say(line, "it has more cells than there are headings: put a text with a comma in quotes.", "The line is passed by.")  # fmt: skip
            return None
        given = {name: cell.strip() for name, cell in zip(names, cells, strict=False) if name}
        if not given.get("what"):
            self._say(line, "what it is is missing.", "The line is passed by.")
            return None
        kind = self._kind(line, given.get("kind", ""))
        size, lot, where, remark = (given.get(name, "") for name in ("size", "lot", "where", "remark"))
        return Item(
            line, kind, given["what"], size, lot, where=where, remark=remark,
            how_many=self._number(line, "how many", given), at_least=self._number(line, "at least", given),
            counted_on=self._day(line, "counted on", given), opened_on=self._day(line, "opened on", given),
            use_by=self._day(line, "use by", given), keeps_days=self._keeps(line, given), cost=self._cost(line, given),
        )  # fmt: skip

    def _kind(self, line: int, typed: str) -> str:
        word = typed.casefold()
        for kind, others in KINDS.items():
            if word == kind or word in others:
                return kind
        self._say(line, f"the kind must be one of {', '.join(KINDS)}: got “{typed[:30]}”.", "It is taken as other.")
        return "other"

    def _refused(self, line: int, error: InputError) -> None:
        self._say(line, str(error), "The cell is taken as empty.")

    def _number(self, line: int, name: str, given: Mapping[str, str]) -> Decimal | None:
        typed = given.get(name, "").replace(",", ".")
        if not typed:
            return None
        if not re.fullmatch(r"\d{1,7}(\.\d{1,3})?", typed):
            self._refused(line, InputError(name, "a number, 0 or more", given[name][:30]))
            return None
        return Decimal(typed)

    def _day(self, line: int, name: str, given: Mapping[str, str]) -> dt.date | None:
        typed = given.get(name, "")
        try:
            return dt.date.fromisoformat(read_day(typed, name, order=self.date_order)) if typed else None
        except InputError as error:
            self._refused(line, error)
            return None

    def _keeps(self, line: int, given: Mapping[str, str]) -> float | None:
        typed = given.get("keeps", "")
        found = re.fullmatch(
            r"(\d{1,4}(?:[.,]\d)?)\s*(d|day|days|w|weeks?|m|mo|months?|y|yr|years?)\.?", typed.casefold()
        )
        if found:
            return float(found[1].replace(",", ".")) * _DAYS[found[2][0]]
        if typed:
            self._refused(line, InputError("keeps", "a time such as 6 months or 2 years", typed[:30]))
        return None

    def _cost(self, line: int, given: Mapping[str, str]) -> str:
        typed = given.get("cost", "")
        try:
            money = read_money(typed, self.currency, name="cost", old=False) if typed else None
        except InputError as error:
            self._refused(line, error)
            return ""
        return "" if money is None else str(money)


def _rows(text: str) -> Iterator[tuple[int, list[str]]]:
    """Each row with the line that it begins on."""
    first = next((line for line in text.splitlines() if line.strip()), "")
    sign = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign)
    line = 1
    while True:
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error:
            cells = []
        yield line, cells
        line = reader.line_num + 1


def _headings(cells: Sequence[str]) -> list[str]:
    """The columns that some cells head, empty for one not known; none where kind or what is missing."""
    words = {word: name for name, others in COLUMNS.items() for word in (name, *others)}
    found = [words.get(re.sub(r"[\s_-]+", " ", cell.strip().casefold()), "") for cell in cells]
    return found if {"kind", "what"} <= set(found) else []
