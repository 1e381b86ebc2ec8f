"""A bench's own rings as text."""

import pytest
from ranges import refuses, takes_only

from pentools.errors import InputError
from pentools.sums.seal.stock import read_stock


@pytest.mark.parametrize("text", ["5.28x1.78", "1.78", "1.78 by 5.28", "0.1x5", "x=", "1.78xfive"])
def test_stock_that_cannot_be_read(text):
    with pytest.raises(InputError, match="stock"):
        read_stock([text])


def test_stock_in_words():
    ring = read_stock(["left drawer = 1,80 ± 0.02 × 5.3+/-0.1 mm"])[0]
    assert (
        ring.designation,
        ring.section_mm,
        ring.section_half_width_mm,
        ring.inside_mm,
        ring.inside_half_width_mm,
    ) == ("left drawer", 1.8, 0.02, 5.3, 0.1)
    assert ring.measured


def test_what_is_taken_where_no_plus_minus_was_typed():
    ring = read_stock(["1.78x5.28"])[0]
    assert ring.designation == "5.28x1.78"
    assert (ring.section_half_width_mm, ring.inside_half_width_mm) == (0.02, 0.05)


@pytest.mark.parametrize(
    ("text", "words"),
    [("0.25x5", "0.3 to 8 mm"), ("9x20", "0.3 to 8 mm"), ("2x160", "0.3 to 150"), ("3.1x2", "swapped")],
)
def test_sizes_out_of_range(text, words):
    with pytest.raises(InputError, match=words):
        read_stock([text])


def test_ranges():
    takes_only(lambda x: read_stock([f"{x:.9f}x60"]), 0.3, 8)
    takes_only(lambda x: read_stock([f"0.4x{x:.9f}"]), 0.3, 150)
    # a section of up to one and a half times the inside is a ring, more was typed the wrong way round
    assert read_stock(["3.0x2"])[0].section_mm == 3
    refuses(lambda text: read_stock([text]), "3.01x2")
