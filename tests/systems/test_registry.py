"""The table of filling systems and the modules that declare them hold together."""

import pytest

from pentools import tables
from pentools.errors import InputError, RecordError
from pentools.systems import registry
from pentools.systems.registry import SYSTEMS, system_choices, system_named


def test_every_row_of_the_table_is_declared_under_its_own_key_in_its_order():
    assert list(SYSTEMS) == [row["key"] for row in tables.rows("filling_systems")]
    assert len(SYSTEMS) == 17
    assert all(system.key == key for key, system in SYSTEMS.items())


def test_the_choices_are_keys_with_labels():
    assert ("diaphragm-pump", "diaphragm pump filler") in system_choices()
    assert len({label for _, label in system_choices()}) == len(SYSTEMS)


def test_an_unknown_system_is_refused_with_all_that_are_known():
    with pytest.raises(InputError, match=r"eyedropper, lever-sac.*rocket"):
        system_named("rocket")


def test_a_row_without_a_module_says_which_is_missing():
    with pytest.raises(RecordError, match=r"pentools\.systems\.fillers\.steam_pump is missing"):
        registry._declared("steam-pump")


def test_a_module_that_declares_another_key_is_named(monkeypatch):
    from pentools.systems.fillers import bulb, piston

    monkeypatch.setattr(bulb, "SYSTEM", piston.SYSTEM)
    with pytest.raises(RecordError, match="does not declare a System with the key “bulb”"):
        registry._declared("bulb")
