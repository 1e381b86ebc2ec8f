"""Dates and prices asked from a notebook."""

import numpy as np
import pytest
from signatures import agree, fields, taken

from pentools import InputError, date_range, price_today
from pentools.answers.asking import answer_to


def test_signatures_are_those_of_the_sums():
    assert sorted(taken(date_range)) == sorted(fields("date"))
    assert agree(price_today, "money")


def test_one_text_is_one_piece_of_evidence_and_no_row_of_letters():
    assert date_range("clip 1936/1942").data["edtf"] == "1936/1942"
    both = date_range("clip 1936/1942", "barrel 1938/1945", about=3)
    assert both.data == answer_to("date", {"evidence": "clip 1936/1942; barrel 1938/1945", "about": "3"}).data
    with pytest.raises(InputError, match="Evidence must be filled in"):
        date_range()


def test_many_prices_give_a_frame():
    frame = price_today(np.array(["5.00 USD", "2.75 USD"]), year=1940, to=2023)
    assert frame["sentence"].tolist()[1] == price_today("2.75 USD", year=1940, to=2023).sentence
