"""Care follows from what a pen is; the table of compatibility decides what may be said."""

import pytest

from pentools import tables
from pentools.calc.closing.care import TOPICS, CareLine, CareOf, InkRow, care_told, inks_told, lines_for, never_told
from pentools.words import CERTAINTY

ROWS = (
    CareLine("pen", "any", "keeping", "Cap lightly."),
    CareLine("pen", "any", "resting", "Empty it."),
    CareLine("pen", "cool", "keeping", "Keep it cool."),
    CareLine("pen", "bears water", "rinsing", "Flush it."),
    CareLine("pen", "bears no water", "rinsing", "Rinse the nib."),
    CareLine("pen", "decaying", "filling", "Do not fill it."),
    CareLine("pen", "not mended", "filling", "It was not mended."),
    CareLine("system", "piston", "filling", "Turn it."),
    CareLine("material", "clay", "keeping", "No stove.", ("dry heat",)),
    CareLine("material", "chalk", "keeping", "No rain.", ("cold water soak",)),
    CareLine("material", "slate", "cleaning", "No kettle.", ("hot water",)),
    CareLine("fitted", "shellac", "joints", "No alcohol."),
    CareLine("part", "wax", "cleaning", "Wax it."),
    CareLine("resting", "piston", "resting", "A little water."),
)


def judge(names, treatment):
    return "never" if "sponge" in names and treatment == "cold water soak" else "ok"


def told(**more):
    return [line.line for line in care_told(CareOf("piston", more.pop("body", ("clay",)), **more), ROWS, judge)]


def test_lines_stand_by_topic_and_water_only_where_the_body_bears_it():
    assert told() == ["Flush it.", "Turn it.", "Cap lightly.", "No stove.", "A little water."]
    assert told(body=("sponge",)) == ["Rinse the nib.", "Turn it.", "Cap lightly.", "Keep it cool."]
    assert told(sealants=("shellac",), parts=("wax",))[2:] == ["Wax it.", "Cap lightly.", "No stove.", "No alcohol.", "A little water."]  # fmt: skip


def test_a_word_on_warmth_is_one_on_keeping_it_and_on_heat():
    """Another word on keeping it, or one on hot water that is not on keeping, leaves the general one standing."""
    assert told(body=("chalk",))[-3:] == ["Keep it cool.", "No rain.", "A little water."]
    assert "Keep it cool." in told(body=("slate",))
    assert "Keep it cool." not in told(body=("clay", "chalk"))


def test_an_unmended_pen_and_a_decaying_one_are_not_filled():
    assert told(unmended=True) == ["It was not mended.", "Cap lightly.", "No stove."]
    assert told(body=("degrading celluloid",)) == ["Do not fill it."]


def test_what_is_limited_anywhere_is_never_done_at_home_and_soaking_is_the_bodys():
    def strict(names, treatment):
        if treatment == "flush mix soak" and "rubber" in names:
            return "limited"
        return "never" if treatment == "buffing wheel" and "gilt" in names else judge(names, treatment)

    assert never_told(CareOf("piston", ("clay",)), strict) == ()
    assert never_told(CareOf("piston", ("clay",), seals=("rubber", "sponge")), strict) == ("ammonia (it is in window cleaner)",)  # fmt: skip
    assert never_told(CareOf("piston", ("sponge",), outside=("gilt",)), strict) == ("soaking", "polish")
    assert never_told(CareOf("piston", ("clay",), other=("gilt",)), strict) == ()


def test_lines_for_keeps_the_order_asked():
    assert [row.line for row in lines_for(ROWS, "pen", ["cool", "any", "cool"])] == ["Keep it cool.", "Cap lightly.", "Empty it."]  # fmt: skip


INKS = tables.read(InkRow, "ink_advice")


def test_inks_come_gravest_first_and_each_once():
    rows = (
        InkRow("any", ("any",), "Glitter", False, "no", "x", "judged"),
        InkRow("system", ("piston",), "Tar", True, "never", "x", "judged"),
        InkRow("nib", ("steel nib",), "Acid", True, "never", "x", "judged"),
        InkRow("seal", ("cork",), "Glitter", True, "never", "x", "judged"),
    )
    pen = CareOf("piston", ("clay",), seals=("cork",))
    assert [(row.ink, row.grave) for row in inks_told(pen, rows)] == [("Tar", True), ("Glitter", True)]
    assert inks_told(CareOf("piston", ("degrading celluloid",)), rows) == ()
    assert inks_told(CareOf("piston", ("clay",), unmended=True), rows) == ()


@pytest.mark.parametrize("row", INKS, ids=lambda row: f"{row.ink} {row.keys[0]}")
def test_every_advice_on_ink_is_about_something_that_there_is(row):
    known = {
        "any": {"any"},
        "system": {r["key"] for r in tables.rows("filling_systems")},
        **{key: {r["material"] for r in tables.rows("compatibility")} for key in ("seal", "nib", "body")},
    }
    assert set(row.keys) <= known[row.applies_to]
    assert row.certainty in CERTAINTY
    assert not row.advice.endswith(".")


def test_every_system_has_a_word_on_pigment_ink():
    for system in (r["key"] for r in tables.rows("filling_systems")):
        inks = {row.ink for row in inks_told(CareOf(system, ("celluloid",)), INKS)}
        assert {"Pigment ink", "Shimmer ink", "Drawing, calligraphy and India ink"} <= inks, system


def test_topics_are_those_of_the_table():
    assert {row["topic"] for row in tables.rows("care_lines")} <= set(TOPICS)
