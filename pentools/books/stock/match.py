"""Which item of the drawer an entry means: by its lot, else by its words and its size."""

from __future__ import annotations

import functools
import re
from collections.abc import Sequence

from pentools.books.stock.uses import Use
from pentools.record.drawer import Item, same_text

__all__ = ["item_of", "items_named", "same_lot"]

_NUMBER = re.compile(r"\d+(?:\.\d+)?")


@functools.lru_cache(maxsize=100_000)
def same_lot(one: str, other: str) -> bool:
    """Whether two lots are one, however they are spaced: or the words of one stand together in the other; an empty one is none.

    Examples
    --------
    >>> same_lot("bag-of MAY2026", "own shop, bag of May 2026"), same_lot("lot 7", "lot 70"), same_lot("", "lot 7")
    (True, False, False)
    """
    a, b = f" {same_text(one)} ", f" {same_text(other)} "
    if not (a.strip() and b.strip()):
        return False
    return a in b or b in a or a.replace(" ", "") == b.replace(" ", "")


def item_of(use: Use, items: Sequence[Item]) -> tuple[Item, ...]:
    """The items that an entry may mean.

    Parameters
    ----------
    use : Use
        The entry.
    items : sequence of Item
        The drawer.

    Returns
    -------
    tuple of Item
        One where it is plain; several where the entry does not tell; none where the drawer does not hold it. An entry that
        names a lot means no item of another lot.
    """
    by_lot = [item for item in items if same_lot(use.lot, item.lot)]
    if by_lot:
        exact = [item for item in by_lot if same_text(item.lot) == same_text(use.lot)] or by_lot
        return tuple(exact if len(exact) == 1 else (items_named(use.what, exact) or exact))
    return items_named(use.what, [item for item in items if not (use.lot and item.lot)])


def items_named(what: str, items: Sequence[Item]) -> tuple[Item, ...]:
    """The items whose words all stand in a text; of these those whose size stands there too, and those with the most words."""
    said = set(same_text(what).split())
    numbers = set(_NUMBER.findall(same_text(what)))
    found = []
    for item in items:
        words = set(same_text(item.what).split())
        sizes = set(_NUMBER.findall(same_text(item.size)))
        if words and words <= said:
            found.append((bool(sizes) and sizes <= numbers, len(words), item))
    if not found:
        return ()
    best = max((sized, count) for sized, count, _ in found)
    return tuple(item for sized, count, item in found if (sized, count) == best)
