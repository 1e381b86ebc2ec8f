"""Exact factors against the unit library, and spellings that could mean two things."""

import itertools

import pytest

from pentools.errors import InputError
from pentools.unit_table import (  # fmt: skip
    _ALIASES,
    _EXACT,
    LIBRARY_NAMES,
    UNIT_WORDS,
    convert,
    dimension_of,
    registry,
    slope,
    unit_named,
)


def test_every_unit_agrees_with_the_unit_library():
    quantity = registry().Quantity
    wrong = []
    for source, target in itertools.product(LIBRARY_NAMES, repeat=2):
        if dimension_of(source) == dimension_of(target):
            expected = quantity(7.25, LIBRARY_NAMES[source]).to(LIBRARY_NAMES[target]).magnitude
            if convert(7.25, source, target) != pytest.approx(expected, rel=1e-12):
                wrong.append((source, target, convert(7.25, source, target), expected))
    assert wrong == []


def test_a_step_is_no_temperature():
    assert slope("degF", "degC") == pytest.approx(5 / 9)
    assert convert(70, "degF", "degC") == pytest.approx(21.11111111, rel=1e-9)
    assert convert(21, "degC", "K") == 294.15


def test_every_unit_has_its_factor_and_every_spelling_its_unit():
    assert _EXACT.keys() == LIBRARY_NAMES.keys()
    assert set(_ALIASES.values()) <= set(LIBRARY_NAMES)
    assert all(unit_named(word) == unit for word, unit in UNIT_WORDS.items())


@pytest.mark.parametrize(("word", "unit"), [("MM", "mm"), ("G", "g"), ("Inches", "in"), ("KPA", "kPa"), ("Min", "min"), ("Millimetres", "mm"), ("furlong", None)])  # fmt: skip
def test_capitals_are_forgiven(word, unit):
    assert unit_named(word) == unit


@pytest.mark.parametrize("word", ["Mg", "Mm", "Ml", "Mb", "Mbar", "mPa", "Mg/h"])
def test_a_thousandth_or_a_million_times_is_asked(word):
    with pytest.raises(InputError, match="million times"):
        unit_named(word)
