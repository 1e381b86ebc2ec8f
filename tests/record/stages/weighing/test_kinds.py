"""What the fill test asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.calc.weighing.balance import FIGURES
from pentools.record.stages.weighing import kinds

KEPT = {
    "fill test/setup": (
        "liquid:c ink_density:q temperature:q pressure:q humidity:q readability:q repeatability:q "
        "linearity:q eccentricity:q drop:q evaporation:q gap:q seat:q gap_length:q"
    ),
    "fill test/dimensions": (
        "bore:q depth:q nipple:q nipple_length:q outside:q length:q wall:q pressed_share:q reach:q "
        "tube:q strokes:i stroke_volume:q tube_volume:q rod:q stroke:q dead_behind:q dead_ahead:q head:q "
        "void_share:q"
    ),
    "fill test/weighing": "state:c mass:q strokes:i",
    "fill test/leak reading": "after:q mass:q blank:q",
    "fill test/leak check": "rested:q dry:b damp:l how",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "fill test/setup*": "",
    "fill test/dimensions*": "",
    "fill test/weighing": "state! mass!:0-200g strokes:0-60",
    "fill test/leak reading": "after!:0-2000h mass!:0-200g blank:0-200g",
    "fill test/leak check": "rested!:0-2000h dry!",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED


def test_the_setup_asks_for_every_figure_of_a_balance():
    assert {figure.name for figure in FIGURES} <= {field.name for field in kinds.SETUP.fields}
