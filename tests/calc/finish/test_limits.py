"""Zones and materials: the stricter of two, and what a wall and rows of a table give."""

from pentools.calc.finish.limits import NOT_SAID, Zone, strictest_zone


def test_the_stricter_of_place_and_surface_holds():
    place, layer = Zone("place", 30, 50, None, "x"), Zone("layer", 0, 0.5, 3, "y")
    assert strictest_zone(place, layer) == strictest_zone(layer, place) == Zone("layer", 0, 0.5, 3, "y")
    both = strictest_zone(Zone("a", 5, 10, 9), Zone("b", 8, 9, 13))
    assert (both.name, both.budget_low_um, both.budget_high_um, both.coarsest_um) == ("b", 5, 9, 9)
    assert strictest_zone(None, None) is NOT_SAID
    assert strictest_zone(place, None) == place
