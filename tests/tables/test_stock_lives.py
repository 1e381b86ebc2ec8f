"""How long things keep: the first row that a name means, and none for what nobody knows."""

import pytest

from pentools.tables.stock_lives import life_of, stock_lives
from pentools.words import CERTAINTY


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("Shellac, mixed 2 lb", "shellac in alcohol"), ("shellac flakes", None), ("silicone adhesive", "silicone adhesive"), ("latex sac 16", "latex"),
        ("silicone sac", "silicone and fluorocarbon rubber"), ("nitrile ring 1.78x5.28", "nitrile rubber"), ("silicone grease", None), ("cork", None),
    ],
)  # fmt: skip
def test_which_row(words, key):
    row = life_of(words)
    assert (None if row is None else row.key) == key


def test_no_row_is_meant_by_its_own_exceptions():
    for row in stock_lives():
        assert row.opened_months > 0
        assert row.certainty in CERTAINTY
        assert life_of(row.words[0]) is row or life_of(row.words[0]).key == row.key
