"""Sacs, washers, corks, packing, knock-out tools: edges and what is refused."""

import pytest

from pentools.calc.seal.knockout import knockout_tool
from pentools.calc.seal.sac import sac_fit, sac_number, sac_outside_mm
from pentools.calc.seal.washers import cork_ring, head_washer, rod_packing
from pentools.errors import InputError


def topics(found):
    return {f.topic for f in found.findings}


def level(found, topic):
    return next(f.level for f in found.findings if f.topic == topic)


def test_a_number_and_its_diameter_are_each_others_inverse():
    assert sac_number(sac_outside_mm(17)) == pytest.approx(17)


def test_both_readings_are_given_and_the_sac_keeps_its_air():
    fit = sac_fit(7.9)
    assert fit.outside_mm <= fit.largest_mm == pytest.approx(7.4)
    assert fit.air_mm >= 0.25
    assert fit.number_by_hole > fit.number
    assert sac_outside_mm(fit.number + 1) > fit.largest_mm, "the next size would lose its air"


def test_measured_wins():
    fit = sac_fit(7.9, sac_mm=6.9)
    assert fit.outside_mm == 6.9
    assert "measure-sac" not in topics(fit)
    assert "measure-sac" in topics(sac_fit(7.9))


def test_the_nipple_limits_the_number():
    assert sac_fit(9.0, nipple_mm=6.4).number == 16
    assert sac_fit(9.0, nipple_mm=9.0 - 0.1).number > 18


def test_a_press_bar_takes_its_room():
    assert sac_fit(7.9, bar_mm=0.9).number < sac_fit(7.9).number
    assert "no-bar" in topics(sac_fit(7.9))
    assert "no-bar" not in topics(sac_fit(7.9, bar_mm=0.9))


@pytest.mark.parametrize(
    ("sac", "topic", "grave"), [(8.2, "too-thick", "stop"), (7.86, "rubs", "warning"), (7.6, "close", "note")]
)
def test_a_sac_that_is_too_large(sac, topic, grave):
    assert level(sac_fit(7.9, sac_mm=sac), topic) == grave


def test_nipple_and_sac():
    assert level(sac_fit(9.0, nipple_mm=5.2, sac_mm=6.4, wall_mm=0.5), "nipple-small") == "warning"
    assert level(sac_fit(9.0, nipple_mm=7.5, sac_mm=6.4, wall_mm=0.5), "nipple-large") == "warning"
    assert level(sac_fit(9.0, nipple_mm=5.8, sac_mm=6.4, wall_mm=0.5), "nipple-rule") == "note"
    good = sac_fit(9.0, nipple_mm=6.2, sac_mm=6.4, wall_mm=0.5)
    assert not {"nipple-small", "nipple-large", "nipple-rule"} & topics(good)
    assert good.nipple_stretch_share == pytest.approx(6.2 / 5.4 - 1)


def test_old_rubber():
    assert level(sac_fit(7.9, cleaned=False), "old-rubber") == "stop"
    gained = sac_fit(7.9, bore_before_mm=7.4)
    assert "1.3 sac sizes" in next(f.text for f in gained.findings if f.topic == "old-rubber")
    assert level(sac_fit(7.9, bore_before_mm=8.2), "old-rubber") == "warning"
    assert level(sac_fit(7.9), "old-rubber") == "note"
    assert "old-rubber" not in topics(sac_fit(7.9, cleaned=True))


def test_length_stays_short_of_the_end():
    fit = sac_fit(7.9, depth_mm=60)
    assert (fit.length_low_mm, fit.length_high_mm) == (54, 57)
    assert fit.bar_length_mm < fit.length_mm
    guard = sac_fit(7.9, depth_mm=60, pneumatic=True)
    assert guard.length_high_mm == 60
    assert guard.bar_length_mm is None
    assert sac_fit(7.9).length_mm is None


def test_adhesive_by_material():
    assert sac_fit(7.9).adhesive == "shellac"
    assert sac_fit(7.9, material="silicone").adhesive == "silicone sealant"
    assert "gas" in topics(sac_fit(7.9, material="silicone"))
    assert level(sac_fit(7.9, material="PVC"), "plasticiser") == "warning"
    assert "limp" in topics(sac_fit(10.5, sac_mm=sac_outside_mm(22)))


@pytest.mark.parametrize(
    "call",
    [
        lambda: sac_fit(0.79),
        lambda: sac_fit(7.9, nipple_mm=8.5),
        lambda: sac_fit(7.9, material="rubber"),
        lambda: sac_fit(7.9, bar_mm=4),
        lambda: sac_fit(7.9, wall_mm=4),
        lambda: sac_fit(7.9, depth_mm=5),
        lambda: sac_outside_mm(2),
        lambda: sac_number(25),
        lambda: head_washer(8.3, 9.0),
        lambda: head_washer(8.3, 1.6, backing_mm=8.5),
        lambda: head_washer(8.3, 1.6, kind="lip"),
        lambda: head_washer(0.83, 0.5),
        lambda: head_washer(8.3, 1.6, ovality_mm=2),
        lambda: cork_ring(9, 8.5),
        lambda: rod_packing(3, 3.5, 5),
        lambda: rod_packing(3, 6, 5, kind="cork"),
        lambda: rod_packing(3, 6, 50),
        lambda: knockout_tool(4.2, 1.8, 5.0),
        lambda: knockout_tool(1.8, 4.2, 50),
    ],
)
def test_refusals(call):
    with pytest.raises(InputError, match="must be"):
        call()


def test_a_washer_starts_in_its_window_with_two_sizes_each_way():
    fit = head_washer(8.3, 1.6, backing_mm=7.9)
    assert fit.outside_low_mm <= fit.outside_mm <= fit.outside_high_mm
    assert len(fit.ladder_mm) == 5
    assert fit.ladder_mm[2] == fit.outside_mm
    assert fit.hole_mm < 1.6
    cup = head_washer(8.3, 1.6, kind="cup")
    assert cup.outside_mm > fit.outside_mm
    assert level(head_washer(8.3, 1.6, backing_mm=5), "overhang") == "warning"
    assert "cannot flex" in next(
        f.text for f in head_washer(8.3, 1.6, backing_mm=8.28).findings if f.topic == "overhang"
    )
    assert level(head_washer(8.3, 1.6, ovality_mm=0.2), "ovality") == "warning"


def test_a_cork_is_cut_large_and_carries_its_caution():
    fit = cork_ring(9.0, 5.0)
    assert 9.0 < fit.outside_mm < fit.cut_mm
    assert fit.hole_mm < 5.0
    assert "licensed professional" in next(f.text for f in fit.findings if f.topic == "hot-wax")
    assert level(cork_ring(9.0, 7.5), "thin") == "warning"


def test_a_packing_is_pressed_when_it_is_closed():
    packing = rod_packing(3, 6, 6, thickness_mm=1.5)
    assert packing.count * 1.5 > 6
    assert packing.pressed_share == pytest.approx(1 - 6 / (packing.count * 1.5))
    assert level(rod_packing(3, 6, 1, thickness_mm=2), "pressed") == "warning"
    assert "felt" in topics(rod_packing(3, 6, 6, kind="felt"))


def test_a_knock_out_tube_clears_bears_and_passes():
    tool = knockout_tool(1.8, 4.2, 5.0, depth_mm=18, front_mm=7, section_mm=10.5)
    assert tool.possible
    assert 1.8 < tool.inside_low_mm < tool.inside_high_mm < 4.2
    assert tool.inside_low_mm < tool.outside_low_mm < tool.outside_high_mm < 5.0
    assert tool.reach_mm > 18
    assert 7 < tool.block_low_mm < tool.block_high_mm < 10.5
    assert "licensed professional" in next(f.text for f in tool.findings if f.topic == "force")


def test_a_tube_that_cannot_be_made_and_a_block_that_cannot():
    assert not knockout_tool(4.0, 4.3, 5.0).possible
    assert level(knockout_tool(4.0, 4.3, 5.0), "no-tool") == "stop"
    assert level(knockout_tool(1.8, 4.2, 5.0, front_mm=9, section_mm=10), "block") == "stop"
    assert "punch" in knockout_tool(0, 4.2, 5.0).findings[0].text
