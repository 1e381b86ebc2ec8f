"""What a plan is made within: its refusals, what it allows, and how wide a defect is blended out."""

from dataclasses import replace

import pytest
from ranges import takes_only

from pentools.calc.finish.types import Blend, Drawer, PlanLimits, blend_width
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media, zones


def within(material="celluloid", zone="plain barrel", **more):
    return PlanLimits(materials()[material], zones()[zone], media(), **more)


def test_limits_out_of_range_are_refused():
    with pytest.raises(InputError, match="not said, solid, plated, none"):
        within(trim="golden")
    takes_only(lambda x: within(spent_um=x), 0, 1000)
    takes_only(lambda x: within(time_limit_min=x), 0, 600, above=True)


def test_the_stricter_of_material_and_zone_counts():
    p1000, film = (catalogue().find(scale, name) for scale, name in (("P", "1000"), ("film", "3")))
    assert within().coarsest_um == materials()["celluloid"].coarsest_um
    silver = within(zone="silver")
    assert silver.coarsest_um == 3
    assert silver.allows(film)
    assert not silver.allows(p1000)
    assert within().allows(p1000)
    # the size that is printed is let through, whatever its last digit; a hundredth more is not
    assert within(zone="silver").allows(replace(film, particle_um=3.001))
    assert not within(zone="silver").allows(replace(film, particle_um=3.03))


def test_a_drawer_holds_what_has_that_scale_and_name():
    p400 = catalogue().find("P", "400")
    drawer = Drawer((p400,))
    assert drawer.holds(p400)
    assert not drawer.holds(catalogue().find("CAMI", "400"))


def test_how_wide_a_defect_is_blended_out():
    # 20 to 1 (FAA AC 43.13-1B, 6-117), 2 to 3 times its length (US Navy NAVEDTRA 14315)
    assert blend_width(25, 4) == Blend(0.5, 8, 12)
    assert blend_width(25) == Blend(0.5, None, None)
    assert blend_width(1000, 500).run_out_mm == 20
    takes_only(blend_width, 0, 1000)
    takes_only(lambda x: blend_width(10, x), 0, 500)
