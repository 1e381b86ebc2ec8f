"""Zones and materials: the stricter of two, and what a wall and rows of a table give."""

import pytest
from ranges import takes_only

from pentools.calc.finish.limits import (
    NOT_SAID,
    Interval,
    MaterialFact,
    Medium,
    MediumFact,
    Zone,
    ZoneFact,
    materials_from_rows,
    media_from_rows,
    strictest_zone,
    zone_budget_um,
    zones_from_rows,
)
from pentools.errors import InputError


def test_the_stricter_of_place_and_surface_holds():
    place, layer = Zone("place", 30, 50, None, "x"), Zone("layer", 0, 0.5, 3, "y")
    assert strictest_zone(place, layer) == strictest_zone(layer, place) == Zone("layer", 0, 0.5, 3, "y")
    both = strictest_zone(Zone("a", 5, 10, 9), Zone("b", 8, 9, 13))
    assert (both.name, both.budget_low_um, both.budget_high_um, both.coarsest_um) == ("b", 5, 9, 9)
    assert strictest_zone(None, None) is NOT_SAID
    assert strictest_zone(place, None) == place


def test_a_wall_spares_a_tenth_of_itself():
    """Common practice, no source; 0.05 to 10 mm can be measured on a pen."""
    place = Zone("place", 30, 50, None, "x")
    takes_only(lambda wall: zone_budget_um(place, wall), 0.05, 10)
    assert [zone_budget_um(place, wall) for wall in (None, 0.25, 0.4, 0.5, 2)] == [
        (30, 50),
        (25, 25),
        (30, 40),
        (30, 50),
        (30, 50),
    ]


def test_what_rows_give_and_what_must_not_be_empty():
    rows = [
        ZoneFact("lip", "budget", 10, 20, "thin there", "judged"), ZoneFact("lip", "coarsest", None, 9, "", "judged"), ZoneFact("rim", "budget", 1, 2, "", "judged"),
    ]  # fmt: skip
    found = zones_from_rows(rows)
    assert found["lip"] == Zone("lip", 10, 20, 9, "thin there", "judged")
    assert found["rim"].coarsest_um is None
    (film,) = media_from_rows(
        [MediumFact("film", "ratio", 1.3, None, 2.0), MediumFact("film", "cut share", None, 0.8, None)]
    ).values()
    assert film == Medium("film", 1.3, 2.0, 0.8)
    for wrong in (
        [ZoneFact("lip", "budget", None, 20, "", "judged")],
        [ZoneFact("lip", "budget", 10, None, "", "judged")],
    ):
        with pytest.raises(InputError, match="figure of lip"):
            zones_from_rows(wrong)


def fact(what, value, text="", low=None, high=None):
    return MaterialFact("horn", what, value, low, high, text, "judged")


def test_a_material_is_its_rows():
    rows = [
        fact("scratch share", "0.1", low=0.05, high=0.2),
        fact("wet or dry", "wet", "wet it"),
        fact("coarsest", "36", "P400"),
        fact("caution", "", "dust"),
    ]
    horn = materials_from_rows(rows)["horn"]
    assert (horn.scratch_share, horn.density_g_ml, horn.wet, horn.wet_text) == (
        Interval(0.05, 0.1, 0.2),
        None,
        True,
        "wet it",
    )
    assert (horn.coarsest_um, horn.coarsest_text, horn.caution, horn.certainty, horn.zone) == (
        36,
        "P400",
        "dust",
        "judged",
        "",
    )
    more = materials_from_rows(
        [*rows, fact("density", "1.3"), fact("zone", "lip"), fact("wet or dry", "dry", "keep it dry")]
    )["horn"]
    assert (more.density_g_ml, more.zone, more.wet) == (1.3, "lip", False)
    with pytest.raises(InputError, match="coarsest of horn"):
        materials_from_rows([*rows, fact("coarsest", "fine")])
