"""The knock-out sum: a pair of diameters, and no soak where the section does not bear it."""

import pytest
from sums.seal.asking import ask

from pentools.sums.seal.knockout import KNOCKOUT

SIZES = {"tail": "1.80 mm", "shoulder": "4.20 mm", "bore": "5.00 mm", "depth": "18 mm"}


def force(**more):
    return next(f.text for f in ask(KNOCKOUT, **SIZES, **more).findings if f.topic == "force")


def test_inside_and_outside_are_said_as_a_pair():
    answer = ask(KNOCKOUT, **SIZES, front="7 mm", section="10.5 mm")
    data = answer.data
    assert (data["inside_mm"], data["outside_mm"], data["wall_mm"]) == (1.9, 4.9, pytest.approx(1.5))
    assert answer.sentence.startswith("Tube: 1.90 mm inside with 4.90 mm outside (wall 1.50 mm), at least 23 mm long.")
    assert "at least 0.80 mm more than its inside" in answer.sentence
    assert (data["block_low_mm"], data["block_high_mm"]) == pytest.approx((7.2, 8.5))
    assert (
        data["inside_low_mm"],
        data["inside_high_mm"],
        data["outside_low_mm"],
        data["outside_high_mm"],
    ) == pytest.approx((1.9, 3.7, 2.7, 4.9))
    assert data["least_wall_mm"] == 0.4
    assert data["reach_mm"] == 23
    assert data["possible"] is True
    assert {row[0]: row[1] for row in answer.table}["wall"] == "1.50 mm"


def test_what_cannot_be_made_and_a_punch():
    none = ask(KNOCKOUT, tail="4.0 mm", shoulder="4.3 mm", bore="5.00 mm")
    assert "No tube" in none.sentence
    assert (none.data["inside_mm"], none.data["outside_mm"], none.data["possible"]) == (None, None, False)
    punch = ask(KNOCKOUT, tail="0 mm", shoulder="4.3 mm", bore="5.00 mm")
    assert punch.sentence.startswith("Punch: 4.90 mm, solid")
    assert ask(KNOCKOUT, **SIZES, clearance="0.2 mm").data["inside_mm"] == 2.0


@pytest.mark.parametrize(
    ("material", "soak"),
    [
        ("acrylic", True), ("black hard rubber", False), ("casein", False), ("celluloid", False), ("faded hard rubber", False),
        ("", False), ("perhaps casein", False), ("blue stuff", False), ("probably hard rubber", False),
    ],
)  # fmt: skip
def test_soaking_is_named_only_of_what_bears_it(material, soak):
    said = force(material=material) if material else force()
    assert ("longer soak" in said) is soak
    assert "more force" not in said or "not more force" in said


def test_the_tables_own_limit_is_told():
    from pentools import tables

    row = next(
        r for r in tables.rows("compatibility") if (r["material"], r["treatment"]) == ("celluloid", "cold water soak")
    )
    assert row["verdict"] == "limited"
    assert row["limit"] in force(material="celluloid")
    assert "bears no soak" in force(material="casein")
    assert "Soak nothing before" in force()


def test_every_figure_of_a_tool_stands_in_its_table():
    """Tail 1.8 and a tenth; shoulder 4.2 less two bearings of 0.25; bore 5.0 less a tenth; front 7 and two tenths; edge 10.5 less two ledges of 1 mm."""
    answer = ask(KNOCKOUT, **SIZES, front="7 mm", section="10.5 mm")
    assert answer.table == (
        ("what", "take", "from", "to"), ("tube inside", "1.90 mm", "1.90 mm", "3.70 mm"),
        ("tube outside", "4.90 mm", "its inside and 0.80 mm", "4.90 mm"), ("wall", "1.50 mm", "0.40 mm", "–"), ("block hole", "–", "7.20 mm", "8.50 mm"),
    )  # fmt: skip
    assert answer.sentence.endswith(
        "Any other pair does that is 1.90 to 3.70 mm inside and, outside, at least 0.80 mm more than its inside and at most 4.90 mm."
    )
    bare = ask(KNOCKOUT, tail="0 mm", shoulder="4.20 mm", bore="5.00 mm")
    assert bare.table[-1] == ("block hole", "–", "–", "–")
    assert bare.sentence == "Punch: 4.90 mm, solid, at least 5 mm long."
