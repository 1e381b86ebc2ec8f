"""What the fill test asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import on_disk

from pentools.calc.weighing.balance import FIGURES
from pentools.record.kinds import Kind
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


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_the_setup_asks_for_every_figure_of_a_balance():
    assert {figure.name for figure in FIGURES} <= {field.name for field in kinds.SETUP.fields}


MUST_BE_SAID = {
    "setup": set(),
    "dimensions": set(),
    "weighing": {"state", "mass"},
    "leak reading": {"after", "mass"},
    "leak check": {"rested", "dry"},
}


def test_an_entry_without_what_it_is_for_is_told_of():
    kinds_by_key = {kind.key: kind for kind in vars(kinds).values() if isinstance(kind, Kind)}
    assert {key: {f.name for f in kind.fields if f.required} for key, kind in kinds_by_key.items()} == MUST_BE_SAID


def test_weighings_all_count_and_of_a_setup_the_newest():
    logs = {kind.key: kind.log for kind in vars(kinds).values() if isinstance(kind, Kind)}
    assert {key for key, log in logs.items() if log} == {"weighing", "leak reading", "leak check"}
