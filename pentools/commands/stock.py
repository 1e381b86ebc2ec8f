"""``pentools stock``: the drawer against the jobs, which pens got a lot, and the tool shelf."""

from __future__ import annotations

import argparse
import datetime as dt
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from pentools.exits import EXIT_INPUT, EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    from pentools.books.stock.stock import LotTold, Shelved, StockTold, ToolOnShelf

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("--lot", metavar="LOT", help="which pens got this lot, and which of them came back")
    command.add_argument("--tools", action="store_true", help="the tools made, and the pens they served")
    command.add_argument("--start", action="store_true", help="lay an empty stock.csv beside the jobs")
    command.add_argument("--json", action="store_true", help="print it as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say what was asked for."""
    if given.start:
        return _start(bench, say)
    if given.lot is not None:
        return _lot(given.lot, bench, say, as_json=given.json)
    if given.tools:
        return _tools(bench, say, as_json=given.json)
    return _stock(bench, say, as_json=given.json)


def _dump(found: Any) -> str:
    return json.dumps(found, ensure_ascii=False, indent=2)


def _start(bench: Bench, say: Callable[[str], None]) -> int:
    from pentools.record.appending import put_in_place
    from pentools.record.drawer import DRAWER, drawer_template

    path = bench.folder / DRAWER
    if path.exists():
        say(f"{path} is there already. Nothing was changed.")
        return EXIT_INPUT
    put_in_place(path, b"\xef\xbb\xbf" + drawer_template().encode())  # so that a spreadsheet knows its letters
    say(f"{path} is laid. Open it with a spreadsheet: one line an item, and only kind and what are needed.")
    return EXIT_OK


def _stock(bench: Bench, say: Callable[[str], None], *, as_json: bool) -> int:
    from pentools.books.stock.stock import stock_on
    from pentools.markup import text_columns
    from pentools.numbers import in_words

    told = stock_on(bench, dt.date.today())
    if as_json:
        say(_dump(_stock_json(told)))
        return EXIT_OK
    if not told.rows:
        say("The drawer is not written down yet. Lay its list with: pentools stock --start")
    rows = [("what", "size", "lot", "left", "used", "pens"), *map(_cells, told.rows)]
    for line in text_columns(tuple(rows)) if told.rows else ():
        say(line)
    for finding in (finding for row in told.rows for finding in row.findings):
        say(str(finding))
    for lot, jobs in told.not_listed.items():
        say(
            f"Not in the drawer’s list: {lot} ({in_words(jobs[:5])}{f' and {len(jobs) - 5} more' if len(jobs) > 5 else ''})."
        )
    for job, why in told.unread.items():
        say(f"{job} could not be read: {why}")
    return EXIT_OK


def _cells(row: Shelved) -> tuple[str, ...]:
    item = row.item
    size = item.size if item.size != item.what else ""
    left = "not counted" if row.left is None else f"{row.left:f}"
    return item.what, size, item.lot, left, str(row.used), str(len(row.jobs))


def _stock_json(told: StockTold) -> dict[str, Any]:
    items = [_row_json(row) for row in told.rows]
    topics = {"reorder": ("stock-order",), "too_old": ("stock-past", "stock-old")}
    lists = {
        name: [row["what"] for row in items if any(finding["topic"] in wanted for finding in row["findings"])]
        for name, wanted in topics.items()
    }
    return {
        "items": items,
        **lists,
        "lots_not_listed": [{"lot": lot, "jobs": list(jobs)} for lot, jobs in told.not_listed.items()],
        "problems": list(told.problems),
        "unread": dict(told.unread),
    }


def _row_json(row: Shelved) -> dict[str, Any]:
    item = row.item

    def number(value: Any) -> float | None:
        return None if value is None else float(value)

    def day(value: dt.date | None) -> str | None:
        return None if value is None else value.isoformat()

    return {
        "kind": item.kind,
        "what": item.what,
        "size": item.size or None,
        "lot": item.lot or None,
        "counted": number(item.how_many),
        "counted_on": day(item.counted_on),
        "used": row.used,
        "perhaps_used": row.perhaps,
        "left": number(row.left),
        "at_least": number(item.at_least),
        "reorder": row.to_order,
        "opened_on": day(item.opened_on),
        "use_by": day(item.use_by),
        "keeps_days": item.keeps_days,
        "cost": item.cost or None,
        "where": item.where or None,
        "jobs": list(row.jobs),
        "line": item.line or None,
        "findings": [{**finding.as_json(), "text": finding.text} for finding in row.findings],
    }


def _lot(lot: str, bench: Bench, say: Callable[[str], None], *, as_json: bool) -> int:
    from pentools.books.stock.stock import lot_on

    told = lot_on(bench, lot)
    sentence = _lot_sentence(told)
    if as_json:
        say(_dump(_lot_json(told, sentence)))
        return EXIT_OK
    say(sentence)
    for pen in told.pens:
        uses = "; ".join(dict.fromkeys(f"{use.what}{f' at {use.where}' if use.where else ''} ({use.way}, {use.on})" for use in pen.uses))  # fmt: skip
        back = "".join(
            f" It came back as {job}: {(one.failed or 'not said why').rstrip('. ')}." for job, one in pen.came_back
        )
        say(f"{pen.job}: {pen.pen or 'pen not named'}: {uses}.{back}")
    return EXIT_OK


def _lot_sentence(told: LotTold) -> str:
    from pentools.calc.books.share import share_of
    from pentools.numbers import in_words, percent

    if not told.lots:
        near = f" Written much like it: {in_words(told.near)}." if told.near else ""
        return f"No job and no item of the drawer names a lot “{told.asked}”.{near}"
    n, back = len(told.got_it), sum(bool(pen.came_back) for pen in told.got_it)
    tried = len(told.pens) - n
    pens = f"{n} {'pen' if n == 1 else 'pens'} got {in_words(f'“{lot}”' for lot in told.lots)}"
    came = "none came back" if not back else f"{back} of them came back"
    share = share_of(back, n)
    sure = "too few to say more" if share is None else f"between {percent(share.low)} and {percent(share.high)} of such pens, n = {n}"  # fmt: skip
    only = f" In {tried} more it was only tried or taken out." if tried else ""
    return f"{pens}; {came} ({sure}).{only}"


def _lot_json(told: LotTold, sentence: str) -> dict[str, Any]:
    from pentools.calc.books.share import share_of

    back = sum(bool(pen.came_back) for pen in told.got_it)
    share = share_of(back, len(told.got_it))
    return {
        "lot": told.asked,
        "lots": list(told.lots),
        "n": len(told.got_it),
        "came_back": back,
        "share": None
        if share is None
        else {"share": share.share, "low": share.low, "high": share.high, "confidence": share.confidence},
        "jobs": [
            {
                "job": pen.job,
                "pen": pen.pen or None,
                "went_in": pen.went_in,
                "uses": [
                    {
                        "way": use.way,
                        "what": use.what,
                        "lot": use.lot,
                        "where": use.where or None,
                        "on": use.on,
                        "pieces": use.pieces,
                    }
                    for use in pen.uses
                ],
                "came_back": [
                    {"job": job, "failed": one.failed or None, "part": one.failed_part or None}
                    for job, one in pen.came_back
                ],
            }
            for pen in told.pens
        ],
        "items": [{"what": item.what, "size": item.size or None, "lot": item.lot} for item in told.items],
        "near": list(told.near),
        "sentence": sentence,
    }


def _tools(bench: Bench, say: Callable[[str], None], *, as_json: bool) -> int:
    from pentools.books.stock.stock import tools_on

    shelf = tools_on(bench)
    if as_json:
        say(_dump({"tools": [_tool_json(tool) for tool in shelf]}))
        return EXIT_OK
    for tool in shelf:
        size = f", {tool.dimensions}" if tool.dimensions else ""
        made = f" of {tool.made_from}" if tool.made_from else ""
        others = [job for job in tool.jobs if job != tool.made_in]
        say(f"{tool.tool}{size}: made{made} for {tool.made_in} on {tool.made_on}{f'; served {len(others)} more: ' + ', '.join(others) if others else ''}.")  # fmt: skip
    if not shelf:
        say("No tool is on record. A job’s work log takes one, under “Tool made or used”.")
    return EXIT_OK


def _tool_json(tool: ToolOnShelf) -> dict[str, Any]:
    return {
        "tool": tool.tool,
        "dimensions": tool.dimensions or None,
        "made_from": tool.made_from or None,
        "made_in": tool.made_in,
        "made_on": tool.made_on,
        "parts": list(tool.parts),
        "systems": list(tool.systems),
        "jobs": list(tool.jobs),
        "photo": tool.photo or None,
    }
