"""Which sac: the size chosen, its air, its grip, its length; what is said of it."""

import pytest
from ranges import takes_only

from pentools.calc.seal.sac import SacInHand, SacRoom, sac_outside_mm
from pentools.calc.seal.sac_fit import sac_fit
from pentools.errors import InputError
from pentools.tables.seals import sac_sizes


def fit(barrel, *, material="latex", sac=None, wall=None, mouth=None, **room):
    return sac_fit(SacRoom(barrel, **room), SacInHand(material, sac, wall, mouth), sac_sizes(material))


def topics(found):
    return {f.topic for f in found.findings}


def level(found, topic):
    return next(f.level for f in found.findings if f.topic == topic)


def text(found, topic):
    return next(f.text for f in found.findings if f.topic == topic)


def test_both_readings_are_given_and_the_sac_keeps_its_air():
    found = fit(7.9)
    assert (found.number, found.number_by_hole) == (18, 19)
    assert found.largest_mm == pytest.approx(7.4)
    assert found.air_mm == pytest.approx((7.9 - sac_outside_mm(18)) / 2, abs=0.001)
    assert found.air_mm >= 0.25
    assert sac_outside_mm(found.number + 1) > found.largest_mm, "the next size would lose its air"
    # exactly a quarter of a millimetre is enough
    assert fit(sac_outside_mm(18) + 0.5).number == 18


@pytest.mark.parametrize(
    ("material", "barrel", "nipple", "label"),
    [
        ("latex", 7.6, 6.2, "number 16"),
        ("silicone", 8.0, 6.6, "number 17"),
        ("latex", 8.0, 6.6, "number 16"),
        ("PVC", 8.0, 6.6, "6.5 mm tube"),
        ("latex", 9.0, 6.4, "number 16"),
        ("latex", 9.0, 8.9, "number 21"),
    ],
)
def test_the_size_that_grips_without_splitting_is_taken(material, barrel, nipple, label):
    found = fit(barrel, material=material, nipple_mm=nipple)
    assert found.label == label
    assert not {"nipple-large", "nipple-small", "rubs", "too-thick"} & topics(found)


@pytest.mark.parametrize("material", ["latex", "silicone", "PVC"])
def test_no_size_may_split_while_another_clears(material):
    wall = {"latex": 0.5, "silicone": 0.6, "PVC": 0.6}[material]
    for barrel in [round(5.0 + 0.1 * i, 1) for i in range(60)]:
        for nipple in [round(3.0 + 0.2 * i, 1) for i in range(int((barrel - 3.2) / 0.2))]:
            found = fit(barrel, material=material, nipple_mm=nipple)
            fine = [
                size.label
                for size in sac_sizes(material)
                if size.outside_mm > 2 * wall
                and (barrel - size.outside_mm) / 2 >= 0.05
                and 0.02 <= nipple / (size.outside_mm - 2 * wall) - 1 <= 0.25
            ]
            assert not fine or found.label in fine, (material, barrel, nipple)


def test_the_rule_of_thumb_decides_among_those_that_go():
    # 15.6 in 64ths: 16 is a quarter of a size over at most, 15 may split, 17 would grip less
    assert fit(9.0, nipple_mm=6.25).number == 16
    assert fit(9.0, nipple_mm=6.5).number == 16
    assert fit(9.0, nipple_mm=6.65).number == 17


def test_measured_wins_and_its_number_is_only_told():
    found = fit(7.9, sac=6.9)
    assert (found.outside_mm, found.number, found.label) == (6.9, 17, "measured")
    assert "measure-sac" not in topics(found)
    assert text(fit(7.9), "measure-sac").startswith("Measure the sac itself: its number")
    assert "batch" in text(fit(7.9, material="PVC"), "measure-sac")


def test_a_press_bar_takes_its_room():
    with_bar = fit(7.9, bar_mm=0.9)
    assert with_bar.largest_mm == pytest.approx(6.5)
    assert with_bar.number == 16
    assert with_bar.air_mm == pytest.approx((7.0 - 6.35) / 2)
    assert "no-bar" in topics(fit(7.9))
    assert "no-bar" not in topics(with_bar)
    assert "no-bar" not in topics(fit(7.9, pneumatic=True))


@pytest.mark.parametrize(
    ("sac", "topic", "grave"),
    [(8.2, "too-thick", "stop"), (7.86, "rubs", "warning"), (7.79, "close", "note"), (7.42, "close", "note")],
)
def test_a_sac_that_is_too_large(sac, topic, grave):
    assert level(fit(7.9, sac=sac), topic) == grave
    # a quarter of a millimetre all round is enough, to the last digit
    for fine in (7.39, 7.4):
        assert not {"too-thick", "rubs", "close"} & topics(fit(7.9, sac=fine))


def test_words_of_a_sac_that_does_not_go_in():
    assert "0.20 mm of air all round; 0.25 mm is proposed" in text(fit(7.9, sac=7.5), "close")
    assert "rubs on the wall: only 0.02 mm of air" in text(fit(7.9, sac=7.86), "rubs")
    assert text(fit(9.0, nipple_mm=5.2, sac=6.4, wall=0.5), "nipple-small").startswith(
        "The nipple of 5.20 mm hardly stretches this sac: it slips off."
    )
    assert "this sac (wall from memory: measure it): it slips" in text(fit(9.0, nipple_mm=5.2, sac=6.4), "nipple-small")
    assert text(fit(9.0, nipple_mm=5.9, sac=6.4, wall=0.6), "nipple-rule").endswith(
        "64ths, 14.9; it still grips by 13\u202f%."
    )
    assert text(fit(7.9, bore_before_mm=7.4), "old-rubber").startswith("Cleaning gained 0.50 mm of bore, 1.3 sac sizes")
    assert "0.30 mm too thick for the wall" in text(fit(7.9, sac=8.2), "too-thick")
    assert "0.50 mm too thick for bar and wall" in text(fit(7.9, sac=8.0, bar_mm=0.4), "too-thick")


def test_nipple_and_sac():
    assert level(fit(9.0, nipple_mm=5.2, sac=6.4, wall=0.5), "nipple-small") == "warning"
    large = fit(9.0, nipple_mm=7.5, sac=6.4, wall=0.5)
    assert level(large, "nipple-large") == "warning"
    assert "stretches it by 39\u202f%" in text(large, "nipple-large")
    assert "number 18 goes" in text(large, "nipple-large")
    good = fit(9.0, nipple_mm=6.2, sac=6.4, wall=0.5)
    assert not {"nipple-small", "nipple-large", "nipple-rule"} & topics(good)
    assert good.nipple_stretch_share == pytest.approx(6.2 / 5.4 - 1)
    assert fit(9.0).nipple_stretch_share is None
    assert "wall from memory" in text(fit(9.0, nipple_mm=7.5, sac=6.4), "nipple-large")
    assert "wall from memory" not in text(large, "nipple-large")


def test_the_rule_of_thumb_is_told_beyond_one_number():
    assert level(fit(9.0, nipple_mm=5.9, sac=6.4, wall=0.6), "nipple-rule") == "note"
    assert "nipple-rule" not in topics(fit(9.0, nipple_mm=6.1, sac=6.4, wall=0.6))


def test_where_no_straight_sac_goes_a_necked_one_is_named():
    found = fit(5.2, nipple_mm=5.1)
    assert level(found, "nipple-large") == "warning"
    assert "necked sac" in text(found, "nipple-large")


def test_words_turn_where_the_bands_end():
    """Old rubber from a tenth of a millimetre, the rule of thumb from one number over, grip from 2 to 25 % (judged)."""
    assert "old-rubber" not in topics(fit(7.9, bore_before_mm=7.8))
    assert text(fit(7.9, bore_before_mm=7.79), "old-rubber").count("mm")
    assert "old-rubber" not in topics(fit(7.9, bore_before_mm=8.0))
    assert level(fit(7.9, bore_before_mm=8.01), "old-rubber") == "warning"
    size = 16 * 25.4 / 64
    for nipple, told in ((size - 25.4 / 64, False), (size - 25.4 / 64 - 0.001, True)):
        assert ("nipple-rule" in topics(fit(9.0, nipple_mm=nipple, sac=size, mouth=5.3))) == told
    for stretch, topic in ((0.0199, "nipple-small"), (0.0201, None), (0.2499, None), (0.2501, "nipple-large")):
        found = topics(fit(9.0, nipple_mm=5 * (1 + stretch), sac=5.2, mouth=5))
        assert {"nipple-small", "nipple-large"} & found == ({topic} if topic else set())


def test_by_the_hole_a_number_is_the_largest_whose_hole_the_barrel_is():
    hole = 20 * 25.4 / 64
    assert (fit(hole).number_by_hole, fit(hole - 0.001).number_by_hole) == (20, 19)
    assert fit(hole + 0.5, bar_mm=0.5).number_by_hole == 20


def test_a_measured_mouth_wins_over_the_wall():
    found = fit(9.0, nipple_mm=6.0, sac=8.0, mouth=5.5)
    assert found.nipple_stretch_share == pytest.approx(6.0 / 5.5 - 1)


def test_old_rubber():
    assert level(fit(7.9, cleaned=False), "old-rubber") == "stop"
    assert "1.3 sac sizes" in text(fit(7.9, bore_before_mm=7.4), "old-rubber")
    smaller = fit(7.9, bore_before_mm=8.2)
    assert level(smaller, "old-rubber") == "warning"
    assert "0.30 mm smaller" in text(smaller, "old-rubber")
    assert level(fit(7.9), "old-rubber") == "note"
    assert "old-rubber" not in topics(fit(7.9, cleaned=True))
    assert "old-rubber" not in topics(fit(7.9, bore_before_mm=7.85))


def test_length_stays_short_of_the_end():
    found = fit(7.9, depth_mm=60)
    assert (found.length_low_mm, found.length_mm, found.length_high_mm) == (54, 55.5, 57)
    assert found.bar_length_mm == pytest.approx(53)
    guard = fit(7.9, depth_mm=60, pneumatic=True)
    assert (guard.length_low_mm, guard.length_mm, guard.length_high_mm) == (58, 59, 60)
    assert guard.bar_length_mm is None
    assert "pneumatic" in topics(guard)
    assert fit(7.9).length_mm is None


def test_each_material_by_its_own_adhesive_and_cautions():
    assert fit(7.9).adhesive == "shellac"
    silicone = fit(7.9, material="silicone")
    assert silicone.adhesive == "silicone adhesive, or shellac bound with thread"
    assert "Shellac alone does not hold silicone" in text(silicone, "adhesive")
    assert "gas" in topics(silicone)
    assert level(fit(7.9, material="PVC"), "plasticiser") == "warning"
    assert "plasticiser" not in topics(silicone)
    assert "limp" in topics(fit(10.5, sac=sac_outside_mm(22)))
    assert "limp" not in topics(fit(10.5, sac=sac_outside_mm(21)))
    assert "limp" not in topics(fit(10.5, material="silicone", sac=sac_outside_mm(22)))


def test_a_pleated_sac_is_measured_and_not_cut():
    with pytest.raises(InputError, match="sold by no size"):
        fit(9.0, material="pleated", nipple_mm=5.0)
    found = fit(9.0, material="pleated", sac=8.2, mouth=4.6, nipple_mm=5.0, depth_mm=40)
    assert found.length_mm is None
    assert found.bar_length_mm is None
    assert found.choices == ()
    assert {"uncut", "adhesive"} <= topics(found)
    assert found.nipple_stretch_share == pytest.approx(5.0 / 4.6 - 1)


def test_the_sizes_beside_it_are_told():
    found = fit(7.6, nipple_mm=6.2)
    assert [c.size.number for c in found.choices] == [14, 15, 16, 17, 18]
    # 6.2 mm on a mouth of n/64 in less 1 mm, such as 4.556 and 4.953 mm
    assert [c.stretch_share for c in found.choices] == pytest.approx(
        [0.3608, 0.2517, 0.1589, 0.0788, 0.0092], abs=0.0001
    )
    assert [c.grade for c in found.choices] == [2, 2, 0, 0, 2]
    assert all(c.air_mm == pytest.approx((7.6 - c.size.outside_mm) / 2) for c in found.choices)


@pytest.mark.parametrize(
    ("call", "low", "high"),
    [
        (fit, 3, 16), (lambda x: fit(14.5, nipple_mm=x), 1.5, 14), (lambda x: fit(7.9, depth_mm=x), 10, 150),
        (lambda x: fit(16, sac=x), 2, 16), (lambda x: fit(16, sac=15.5, mouth=x), 1, 14), (lambda x: fit(7.9, bore_before_mm=x), 2, 16),
        (lambda x: fit(7.9, sac=7, wall=x), 0.1, 2),
        # the bar leaves the narrowest barrel there is, and takes 3 mm at most
        (lambda x: fit(7.9, bar_mm=x), 0, 3), (lambda x: fit(4.0, bar_mm=x), 0, 1), (lambda x: fit(6.0, bar_mm=x), 0, 3),
    ],
)  # fmt: skip
def test_ranges(call, low, high):
    takes_only(call, low, high)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: fit(7.9, nipple_mm=8.5), "mixed up"),
        (lambda: fit(7.9, nipple_mm=7.9), "mixed up"),
        (lambda: fit(7.9, sac=6.0, material="rubber"), "one of latex, silicone, PVC, pleated"),
        (lambda: fit(7.9, sac=3.0, wall=1.5), "half the sac"),
    ],
)
def test_what_contradicts_itself(call, words):
    with pytest.raises(InputError, match=words):
        call()
