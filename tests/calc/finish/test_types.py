"""What a plan is made within: its refusals, what it allows, and how wide a defect is blended out."""

import pytest

from pentools.calc.finish.types import Blend, Drawer, PlanLimits, blend_width
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media, zones


def within(material="celluloid", zone="plain barrel", **more):
    return PlanLimits(materials()[material], zones()[zone], media(), **more)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"trim": "golden"}, "not said, solid, plated, none"), ({"spent_um": -1}, "0 to 1000"), ({"spent_um": 1001}, "0 to 1000"),
        ({"time_limit_min": 0}, "above 0"), ({"time_limit_min": 601}, "to 600"),
    ],
)  # fmt: skip
def test_limits_out_of_range_are_refused(wrong, said):
    with pytest.raises(InputError, match=said):
        within(**wrong)


def test_the_stricter_of_material_and_zone_counts():
    p1000, film = (catalogue().find(scale, name) for scale, name in (("P", "1000"), ("film", "3")))
    assert within().coarsest_um == materials()["celluloid"].coarsest_um
    silver = within(zone="silver")
    assert silver.coarsest_um == 3
    assert silver.allows(film)
    assert not silver.allows(p1000)
    assert within().allows(p1000)


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
    for wrong in ((-1,), (1001,), (10, -1), (10, 501)):
        with pytest.raises(InputError):
            blend_width(*wrong)
