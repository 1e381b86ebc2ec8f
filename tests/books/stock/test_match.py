"""Which item an entry means: by its lot, else by words and size; and where it does not tell, all that it may mean."""

import pytest

from pentools.books.stock.match import item_of, items_named, same_lot
from pentools.books.stock.uses import Use
from pentools.record.drawer import Item

MAY = Item(2, "sac", "latex sac 16", "6.40 mm", "bag of May 2026")
JUNE = Item(3, "sac", "latex sac 16", "6.35 mm", "bag of June 2026")
BARE = Item(4, "sac", "latex sac 17")
RING = Item(5, "ring", "nitrile ring", "1.78x5.28", "shop 7")
WIDE = Item(6, "ring", "nitrile ring", "1.78x6.07", "shop 7")
DRAWER = (MAY, JUNE, BARE, RING, WIDE)


def meant(what, lot=""):
    return item_of(Use("added", what, lot, "", "2026-06-01"), DRAWER)


@pytest.mark.parametrize(
    ("what", "lot", "found"),
    [
        ("a sac", "own store, BAG OF may2026", (MAY,)),
        ("latex sac 16", "bag of June 2026", (JUNE,)),
        ("latex sac 16", "", (MAY, JUNE)),  # which of the two it does not say
        ("latex sac 16", "bag of July 2026", ()),  # a lot that the drawer does not hold
        ("a latex sac 17, cut", "bag of July 2026", (BARE,)),  # an item without a lot may be of any
        ("Latex SAC 17", "", (BARE,)),
        ("nitrile ring 1,78 × 6,07", "shop 7", (WIDE,)),
        ("nitrile ring 1.78x5.28", "", (RING,)),
        ("nitrile ring", "shop 7", (RING, WIDE)),
        ("cork", "", ()),
        ("", "", ()),
    ],
)
def test_what_is_meant(what, lot, found):
    assert meant(what, lot) == found


def test_the_name_with_more_words_is_meant():
    plain = Item(7, "sac", "sac 16")
    assert items_named("silicone sac 16", (plain, Item(8, "sac", "silicone sac 16")))[0].line == 8
    assert items_named("sac 16", (plain, Item(8, "sac", "silicone sac 16"))) == (plain,)


def test_lots_are_compared_by_words():
    assert same_lot("bagofmay2026", "Bag of May 2026")
    assert same_lot("May 2026", "bag of May 2026")
    assert not same_lot("bag of May 2026", "bag of May 2025")
    assert not same_lot("7", "70")
    assert not same_lot("", "")
