"""Fields that several stages share: their units, ranges and who may see them."""

import pytest

from pentools.errors import InputError
from pentools.record.stages.common import length, mass, measured, yes_no
from pentools.systems.dimensions import ASKED


def test_a_length_is_read_in_millimetres_within_its_range():
    field = length("Cap", "such as 60 mm", 10, 90)
    assert field.read("6 cm").value == pytest.approx(60)
    for text in ("9.9 mm", "90.1 mm", "60 g"):
        with pytest.raises(InputError):
            field.read(text)


def test_a_mass_is_read_in_grams_up_to_200():
    field = mass("Mass", "such as 20 g")
    assert field.read("0.2 kg").value == pytest.approx(200)
    for text in ("200.1 g", "-0.1 g", "20 mm"):
        with pytest.raises(InputError):
            field.read(text)


def test_a_measured_length_is_the_vocabularys_own_for_everybody():
    for name, asked in ASKED.items():
        own, field = asked.field(), measured(name)
        assert (field.label, field.unit, field.low, field.high) == (own.label, own.unit, own.low, own.high)
        assert (field.name, field.audience) == ("", "everybody")


def test_a_yes_or_no_is_the_owners_to_see_unless_said_otherwise():
    assert yes_no("Agreed").audience == "owner"
    assert yes_no("Agreed", audience="bench").audience == "bench"
    assert (yes_no("Agreed").read("no"), yes_no("Agreed").read("")) == (False, None)
