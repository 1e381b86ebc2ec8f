"""British money before 1971: every way it is written, against a table reckoned by hand, and what is refused with its reason."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.errors import InputError
from pentools.shillings import FARTHINGS_A_POUND, in_shillings, read_shillings

# text -> pounds, shillings, pence, farthings. 12 d = 1 s and 20 s = £1 (Coinage Act 1870, and until 15 February 1971);
# guinea 21 s, crown 5 s, half-crown 2s 6d, florin 2 s (common reference: the coins' own faces)
READ = {
    "£1": (1, 0, 0, 0), "£1 1s": (1, 1, 0, 0), "£2 10s 6d": (2, 10, 6, 0), "£2 10s. 6d.": (2, 10, 6, 0), "£1-10-0": (1, 10, 0, 0),
    "£1.10.0": (1, 10, 0, 0), "£1:10:6": (1, 10, 6, 0), "£1 10 6": (1, 10, 6, 0), "£1/10/6": (1, 10, 6, 0), "£10/10/-": (10, 10, 0, 0),
    "£3.3s.0d": (3, 3, 0, 0), "£3. 3s. 0d.": (3, 3, 0, 0), "£1 2/6": (1, 2, 6, 0), "£1 10/-": (1, 10, 0, 0), "£1 6d": (1, 0, 6, 0),
    "£-/5/6": (0, 5, 6, 0), "£1 1s -d": (1, 1, 0, 0), "1l 5s": (1, 5, 0, 0), "1 pound 5 shillings": (1, 5, 0, 0), "2/10/6": (2, 10, 6, 0),
    "£2/1/2": (2, 1, 2, 0), "12/6": (0, 12, 6, 0), "12/6d": (0, 12, 6, 0), "12 / 6": (0, 12, 6, 0), "21/-": (0, 21, 0, 0), "25/=": (0, 25, 0, 0),
    "1/2": (0, 1, 2, 0), "1/3d": (0, 1, 3, 0), "-/6": (0, 0, 6, 0), "0/6": (0, 0, 6, 0), "2/11¾": (0, 2, 11, 3), "2/11 3/4": (0, 2, 11, 3),
    "2/11½d": (0, 2, 11, 2), "2/11 1/2d": (0, 2, 11, 2), "2/0¼": (0, 2, 0, 1), "7s 6d": (0, 7, 6, 0), "7s.6d.": (0, 7, 6, 0), "7s 6": (0, 7, 6, 0),
    "12s/6d": (0, 12, 6, 0), "30s": (0, 30, 0, 0), "63/-": (0, 63, 0, 0), "17s and 6d": (0, 17, 6, 0), "5s 1/2d": (0, 5, 0, 2), "6d": (0, 0, 6, 0),
    "18d": (0, 0, 18, 0), "1d.": (0, 0, 1, 0), "½d": (0, 0, 0, 2), "1½d": (0, 0, 1, 2), "1 1/2d": (0, 0, 1, 2), "1-1/2d": (0, 0, 1, 2),
    "1 ½ d": (0, 0, 1, 2), "4 3/4 d": (0, 0, 4, 3), "£1 1½d": (1, 0, 1, 2), "¼d": (0, 0, 0, 1), "3 farthings": (0, 0, 0, 3), "a farthing": (0, 0, 0, 1),
    "halfpenny": (0, 0, 0, 2), "ha'penny": (0, 0, 0, 2), "penny ha'penny": (0, 0, 1, 2), "tuppence": (0, 0, 2, 0), "threepence": (0, 0, 3, 0),
    "sixpence": (0, 0, 6, 0), "a shilling": (0, 1, 0, 0), "ten bob": (0, 10, 0, 0), "two shillings and sixpence": (0, 2, 6, 0),
    "three shillings and sixpence ha'penny": (0, 3, 6, 2), "a florin": (0, 2, 0, 0), "half a crown": (0, 2, 6, 0), "half-crown": (0, 2, 6, 0),
    "3 half-crowns": (0, 7, 6, 0), "a crown": (0, 5, 0, 0), "half a sovereign": (0, 10, 0, 0), "1 guinea": (0, 21, 0, 0), "a guinea": (0, 21, 0, 0),
    "5 guineas": (0, 105, 0, 0), "2½ gns": (2, 12, 6, 0), "2 1/2 guineas": (2, 12, 6, 0), "half a guinea": (0, 10, 6, 0), "5 gns.": (5, 5, 0, 0),
    "3 and a half guineas": (3, 13, 6, 0), "1 guinea 6d": (1, 1, 6, 0), "2 Guineas": (2, 2, 0, 0),
    "half-sovereign": (0, 10, 0, 0), "2 half-sovereigns": (1, 0, 0, 0), "a sovereign": (1, 0, 0, 0), "a half-guinea": (0, 10, 6, 0), "tanner": (0, 0, 6, 0),
    "2 bob": (0, 2, 0, 0), "thruppence": (0, 0, 3, 0), "two florins": (0, 4, 0, 0), "eleven pence": (0, 0, 11, 0),
    "twenty shillings": (0, 20, 0, 0), "twelve shillings": (0, 12, 0, 0), "thirteen shillings": (0, 13, 0, 0), "nineteen shillings": (0, 19, 0, 0),
}  # fmt: skip


@pytest.mark.parametrize("text", [text for text in READ if text != "£1"])
def test_what_was_written(text):
    pounds, shillings, pence, farthings = READ[text]
    assert read_shillings(text) == ((pounds * 20 + shillings) * 12 + pence) * 4 + farthings


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1/2d", "1/2 of a penny or 1s 2d"), ("1/4d", "1/4 of a penny or 1s 4d"), ("3/4d", "type ½d, ¼d or ¾d"), ("11/2d", "1 1/2d or 11s 2d"), ("1 1/2", "1 1/2d or £1 1s 2d"),
        ("£1 1/2", "£1 1s 2d or £1 and 1/2"), ("£1 1/2d", "£1 1s 2d or £1 0s 1/2d"), ("£12/6", "12s 6d or £12 6s"), ("£5/-", "5/- .5 shillings. or £5"),
        ("1 2/6", "£1 2s 6d"), ("1 2/6d", "£1 2s 6d"), ("25/- 6d", "no pence follow, and 6 follow: is it 25/6 or 25/-"), ("£1 25/- 6d", "no pence follow"),
        ("2/1/2", "2s 1/2d or £2 1s 2d"), ("£1 25s", "fewer than 20 shillings"), ("£1/20/0", "fewer than 20 shillings"), ("£1 19s 12d", "fewer than 12 pence"),
        ("12/12", "fewer than 12 pence"), ("£1 10", "£1 10s or £1 0s 10d"), ("£10-10", "£10 10s. A range"), ("2 crowns", "type 10/-"),
        ("sixpence and two shillings", "larger unit comes first"), ("1s 1s", "larger unit comes first"), ("half a farthing", "whole farthings"),
        ("£12/6½", "12s 6½d or £12"), ("1.10.6d", "could be a date"), ("1-10-6d", "does it mean £1 10s 6d"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said(text, said):
    with pytest.raises(InputError, match=said) as error:
        read_shillings(text, "price")
    assert (error.value.name, error.value.got) == ("price", text)


@pytest.mark.parametrize("text", ["$5", "5 EUR", "£2.50", "2 pounds", "30", "", "£1,250", "£1 250 000", "1250", "guineas", "12s 6d 4", "12/6/", "9999999/6"])  # fmt: skip
def test_what_is_no_old_money_is_left_to_others(text):
    assert read_shillings(text) is None


@settings(deadline=None)
@given(st.integers(1, 100 * FARTHINGS_A_POUND))
def test_what_is_written_is_read_back(farthings):
    text = in_shillings(farthings)
    assert read_shillings(text if "s" in text or "d" in text else f"{text} 0s") == farthings


def test_nothing_is_written_as_nothing():
    assert in_shillings(0) == "0d"
    assert in_shillings(3 * 960 + 7) == "£3 1¾d"
