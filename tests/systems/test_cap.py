"""The cap in section: over the nib, its inner cap against the section, its clip on top."""

import pytest
from systems.building import box, built


def test_cap_and_pen_have_their_measured_lengths():
    pen, _, s = built("lever-sac", capped=True, cap_length=62.0, capped_length=132.0, open_length=125.0)
    cap = box(pen, "cap")
    assert cap[2] - cap[0] == pytest.approx(62.0)
    assert s.total - cap[0] == pytest.approx(132.0)
    assert pen.spans["capped_length"].size == pytest.approx(132.0)
    assert pen.spans["cap_length"].size == pytest.approx(62.0)


def test_a_cap_whose_place_was_not_measured_covers_the_threads():
    pen, full, s = built("lever-sac", capped=True)
    assert box(pen, "cap")[2] == pytest.approx(s.mouth + 2.2 + full["thread_length"])
    assert box(pen, "cap")[0] < 0.0


def test_the_inner_cap_seals_on_the_sections_face_inside_the_cap():
    pen, _full, s = built("lever-sac", capped=True, cap_diameter=14.0, barrel_diameter=12.0)
    inner, cap = box(pen, "inner-cap"), box(pen, "cap")
    assert inner[2] == pytest.approx(s.nib - 0.05)
    assert cap[0] < inner[0] < 0.0
    assert inner[3] < cap[3] == pytest.approx(7.0)


def test_band_near_the_lip_and_clip_along_the_top():
    pen, _full, _ = built("lever-sac", capped=True, cap_length=60.0, cap_diameter=14.0)
    cap, band, clip = box(pen, "cap"), box(pen, "cap-band"), box(pen, "clip")
    assert band[2] - band[0] == pytest.approx(0.09 * 60.0)
    assert cap[2] - band[0] == pytest.approx(0.14 * 60.0)
    assert band[3] == pytest.approx(7.18)
    assert clip[3] <= -7.0 + 1e-9  # above the cap only
    assert clip[1] == pytest.approx(-9.3)
    assert cap[0] < clip[0] < clip[2] < band[0]
    assert pen.spans["cap_diameter"].size == pytest.approx(14.0)


def test_a_safety_pens_cap_seals_on_the_barrels_mouth():
    pen, _, s = built("safety", capped=True)
    assert box(pen, "inner-cap")[2] == pytest.approx(s.nib - 0.05)
