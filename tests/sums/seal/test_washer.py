"""The washer sum: what to cut, with the next sizes."""

import pytest
from sums.seal.asking import ask

from pentools.errors import InputError
from pentools.sums.seal.washer import WASHER


def test_washers():
    data = ask(WASHER, bore="8.30 mm", rod="1.60 mm").data
    assert data["ladder_mm"][2] == data["outside_mm"] == 8.5
    assert ask(WASHER, bore="9 mm", rod="5 mm", kind="cork").data["cut_mm"] > 9.2
    assert ask(WASHER, bore="6 mm", rod="3 mm", kind="stacked", length="5 mm").data["count"] == 4
    assert ask(WASHER, bore="8.2 mm; 8.4 mm", rod="1.6 mm").data["outside_mm"] > 8.5
    with pytest.raises(InputError, match="length"):
        ask(WASHER, bore="6 mm", rod="3 mm", kind="felt")


def test_words_and_figures_of_a_washer():
    answer = ask(WASHER, bore="8.30 mm", rod="1.60 mm", backing="7.9 mm", kind="cup")
    assert (
        answer.sentence
        == "Start with a cup washer of 8.60 mm, hole 1.50 mm, 0.64 mm thick; next sizes 8.40, 8.50, 8.70, 8.80 mm."
    )
    assert answer.data["outside_low_mm"] == pytest.approx(8.5)
    assert answer.data["thickness_mm"] == 0.64
    cork = ask(WASHER, bore="9 mm", rod="5 mm", kind="cork", length="6 mm")
    assert cork.sentence.startswith(
        "Start with a cork ring of 9.20 mm (cut to 9.60 mm, then sand in), hole 4.70 mm; next"
    )
    assert ask(WASHER, bore="8.3 mm", rod="1.6 mm", ovality="0.2 mm").data["outside_mm"] == pytest.approx(8.6)


def test_words_and_figures_of_a_packing():
    answer = ask(WASHER, bore="6 mm", rod="3 mm", kind="felt", length="5 mm", thickness="1 mm")
    assert (
        answer.sentence == "A felt packing of 6 rings, hole 3.00 mm, outside 6.10 mm, pressed by 17\u202f% when closed."
    )
    assert answer.data["pressed"] == pytest.approx(1 / 6)
    assert (answer.data["outside_mm"], answer.data["hole_mm"], answer.data["ladder_mm"]) == (6.1, 3, [])


def test_an_odd_reading_is_named():
    for more in ({}, {"kind": "cork"}, {"kind": "stacked", "length": "5 mm"}):
        answer = ask(WASHER, bore="8.30 mm; 8.31 mm; 8.29 mm; 8.30 mm; 8.70 mm", rod="3 mm", **more)
        assert answer.findings[0].topic == "odd-reading"
        assert answer.data["findings"][0]["topic"] == "odd-reading"


def test_every_figure_of_a_washer_and_of_a_packing_stands_in_its_table():
    """0.1 to 0.3 mm over 8.30, 6 % under 1.60; four rings of 1.5 mm pressed into 5 mm: judged figures, worked out by hand."""
    washer = ask(WASHER, bore="8.30 mm", rod="1.60 mm")
    assert washer.table == (
        ("quantity", "value"), ("outside", "8.50 mm (8.40 to 8.60)"), ("hole", "1.50 mm"), ("ladder", "8.30; 8.40; 8.50; 8.60; 8.70 mm"),
    )  # fmt: skip
    data = {k: v for k, v in washer.data.items() if k not in ("sentence", "findings")}
    assert data == {
        "kind": "flat", "outside_mm": 8.5, "outside_low_mm": pytest.approx(8.4), "outside_high_mm": pytest.approx(8.6), "cut_mm": 8.5,
        "hole_mm": 1.5, "thickness_mm": 0.64, "ladder_mm": [8.3, 8.4, 8.5, 8.6, 8.7], "count": None, "pressed": None, "in_drawer": [],
    }  # fmt: skip
    packing = ask(WASHER, bore="6 mm", rod="3 mm", kind="stacked", length="5 mm")
    assert packing.table == (("quantity", "value"), ("rings", "4"), ("hole", "3.00 mm"), ("outside", "6.10 mm"))
    assert (packing.data["kind"], packing.data["cut_mm"], packing.data["thickness_mm"]) == ("stacked", 6.1, None)
    assert packing.sentence.startswith("A stacked packing of 4 rings, ")
    assert (
        ask(WASHER, bore="6 mm", rod="3 mm", kind="cork").data["cut_mm"],
        ask(WASHER, bore="9 mm", rod="5 mm", kind="cork").data["thickness_mm"],
    ) == (6.6, None)


@pytest.mark.parametrize(
    ("kind", "drawer", "there"),
    [
        ("flat", "washer 8.5 x 1.5 mm", ["washer 8.5 x 1.5 mm"]),
        ("flat", "mine=washer 8.5 x 1.3; washer 8.9 x 1.5; washer 8.5 x 1.7; cork 8.5 x 1.5", ["mine"]),
        ("flat", "sheet 0.64 mm; sheet 1/32 in; sheet 1.5 mm; cork sheet 0.64 mm", ["sheet 0.64 mm", "sheet 1/32 in"]),
        ("cork", "cork 9.0 x 3.0 mm; cork 8.2 x 3; washer 8.5 x 3", ["cork 9.0 x 3.0 mm"]),
        ("cork", "cork sheet 6 mm; cork sheet 3 mm", ["cork sheet 6 mm"]),
        ("stacked", "sheet 1.5 mm; felt 1.5 mm", ["sheet 1.5 mm"]),
        ("felt", "sheet 1.5 mm; felt 1.6 mm", ["felt 1.6 mm"]),
        ("flat", "", []),
    ],
)
def test_what_lies_in_the_drawer_for_it(kind, drawer, there):
    rod = "3.4 mm" if kind == "cork" else "1.60 mm"
    answer = ask(WASHER, bore="8.30 mm", rod=rod, kind=kind, length="5 mm", drawer=drawer)
    assert answer.data["in_drawer"] == there
    assert ("In the drawer" in answer.sentence) is bool(there)
    assert ("first to try" in answer.sentence) is any(" x " in name or name == "mine" for name in there)
