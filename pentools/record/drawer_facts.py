"""What the drawer says to the sums: its sizes as the texts that they read, beside those of ``bench.toml``."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from pentools.errors import InputError
from pentools.record.drawer import DRAWER, Drawer, Item, read_drawer

__all__ = ["drawer_beside", "facts_with_drawer"]

_MATERIALS = {"latex": "latex", "silicone": "silicone", "pvc": "PVC", "vinyl": "PVC", "pleated": "pleated"}


def drawer_beside(folder: Path, facts: Mapping[str, Any]) -> Drawer:
    """The drawer of a bench, its costs and days read as the bench writes them."""
    own = str(facts["money"]["currency"]).upper()
    return read_drawer(folder, currency=own, date_order=str(facts["bench"]["date_order"]))


def facts_with_drawer(folder: Path, facts: dict[str, Any]) -> tuple[dict[str, Any], tuple[str, ...]]:
    """The bench's facts, with the sizes of what lies in its drawer, and what of the drawer cannot be used.

    Counts, days and costs are not among the facts: they change with every pen, and no answer about one pen rests on them.
    What was counted as none is left out.

    Returns
    -------
    facts : dict
        With ``rings``, ``abrasives``, ``sacs`` and ``washers`` of ``[stock]``: those of the file first.
    problems : tuple of str
        A sentence each.
    """
    drawer = drawer_beside(folder, facts)
    stock = {name: list(facts["stock"].get(name, ())) for name in ("rings", "abrasives", "sacs", "washers")}
    problems = list(drawer.problems)
    for item in _at_hand(drawer):
        try:
            found = _text_of(item)
        except InputError as error:
            problems.append(f"{DRAWER}, line {item.line}: {error} The sums pass it by.")
            continue
        if found is not None and found[1] not in stock[found[0]]:
            stock[found[0]].append(found[1])
    return {**facts, "stock": {**facts["stock"], **stock}}, tuple(problems)


def _at_hand(drawer: Drawer) -> list[Item]:
    return [item for item in drawer.items if item.how_many is None or item.how_many > 0]


def _text_of(item: Item) -> tuple[str, str] | None:
    """To which fact an item belongs, and its text there, read once to see that it can be; None where sums ask for no such thing."""
    maker = _MAKERS.get(item.kind)
    return None if maker is None or not (item.size or item.kind in ("abrasive", "sac")) else maker(item)


def _name(item: Item) -> str:
    return re.sub(r"[=;]", " ", item.what).strip()


def _ring(item: Item) -> tuple[str, str]:
    from pentools.sums.seal.stock import read_stock

    text = f"{_name(item)}={item.size}"
    read_stock([text])
    return "rings", text


def _sac(item: Item) -> tuple[str, str] | None:
    from pentools.sums.seal.drawer import read_sacs

    words = item.what.casefold()
    material = next((name for word, name in _MATERIALS.items() if word in words), None)
    if "diaphragm" in words:
        return None
    if material is None:
        raise InputError("what it is", "a sac with its material, such as latex sac 16", item.what)
    number = re.search(r"(?<![\d.,/])(\d{1,2})(?![\d.,/])", item.what)
    size = item.size or (number[1] if number else "")
    if not size:
        return None
    text = f"{_name(item)}={material} {size}"
    read_sacs([text], material)
    return "sacs", text


def _washer(item: Item) -> tuple[str, str]:
    from pentools.sums.seal.drawer import read_washers

    words = item.what.casefold()
    if item.kind == "sheet":
        kind = "cork sheet" if "cork" in words else "felt" if "felt" in words else "sheet"
    else:
        kind = "cork" if "cork" in words else "washer"
    text = f"{_name(item)}={kind} {item.size}"
    read_washers([text])
    return "washers", text


def _abrasive(item: Item) -> tuple[str, str]:
    from pentools.sums.finish.abrasives import read_owned

    text = item.size or item.what
    read_owned([text])
    return "abrasives", text


_MAKERS: dict[str, Callable[[Item], tuple[str, str] | None]] = {
    "ring": _ring,
    "sac": _sac,
    "washer": _washer,
    "sheet": _washer,
    "abrasive": _abrasive,
}
