"""Complete dimensions: looked up by name, halved for a radius."""

import pytest

from pentools.systems.proportions import Proportions


def test_a_dimension_and_its_half():
    full = Proportions({"bore": 9.0}, frozenset({"bore"}))
    assert (full["bore"], full.radius("bore")) == (9.0, 4.5)
    with pytest.raises(KeyError):
        full.radius("rocket")
