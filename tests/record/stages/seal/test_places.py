"""Which places of seals a filling system has: its own, and no other's."""

import pytest

from pentools.record.stages.seal.kinds import MEASURE
from pentools.record.stages.seal.places import PLACES, WAS, asked_for, place_words, places_for
from pentools.systems.registry import SYSTEMS

OWN = {
    "diaphragm-pump": {"diaphragm", "breather", "valve"},
    "bulb": {"bulb", "breather"},
    "bellows": {"sac", "breather"},
    "sleeve-squeeze": {"sac", "breather"},
    "pneumatic-down-stroke": {"sac", "tube-ring", "valve"},
    "pneumatic-extending-tube": {"sac", "tube-ring", "gasket", "valve"},
    "safety": {"packing", "stack", "cap-seat"},
    "lever-sac": {"sac"},
    "eyedropper": set(),
    "capillary": set(),
    "piston": {"head", "cork", "washer"},
}


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_has_a_section_and_an_inner_cap_and_its_own_seals(system):
    found = set(places_for(system))
    assert {"section", "inner-cap"} <= found
    assert OWN.get(system, set()) <= found
    if system in OWN:
        assert found == OWN[system] | {"section", "inner-cap"}


def test_where_the_system_is_not_known_all_stand():
    assert set(places_for(None)) == set(places_for("no such")) == set(PLACES)


def test_every_place_belongs_to_some_system():
    assert {place for system in SYSTEMS for place in places_for(system)} == set(PLACES)


@pytest.mark.parametrize("place", PLACES)
def test_a_place_asks_only_what_the_form_has_and_what_was_there_before(place):
    names = {field.name for field in MEASURE.fields}
    asked = asked_for(place)
    assert set(asked) <= names
    assert set(WAS) <= set(asked)
    assert set(PLACES[place].needs) <= set(asked)
    assert place_words(place) == PLACES[place].words
