"""What every pen has: stations along the axis, nib over feed, section, barrel and end piece."""

import pytest
from systems.building import box, built


def test_the_stations_add_up_from_the_tip_of_the_nib():
    _, full, s = built("piston", nib_length=20.0, section_length=16.0, barrel_length=70.0, end_length=14.0)
    assert (s.nib, s.mouth, s.end, s.total) == (20.0, 36.0, 106.0, 120.0)
    assert s.tenon == pytest.approx(36.0 + 8.0)  # at most 8 mm, 13 % of the barrel
    assert built("piston", nib_length=20.0, section_length=16.0, barrel_length=40.0)[2].tenon == pytest.approx(36 + 5.2)
    assert (s.outer, s.bore) == (full.radius("barrel_diameter"), full.radius("bore"))


def test_the_end_is_a_little_thinner_but_never_than_the_bore_and_its_wall():
    assert built("piston", barrel_diameter=12.0, bore=7.0)[2].tail == pytest.approx(0.87 * 6.0)
    assert built("piston", barrel_diameter=12.0, bore=9.6)[2].tail == pytest.approx(4.8 + 0.9)
    assert built("piston", barrel_diameter=12.0, bore=11.8)[2].tail == pytest.approx(6.0)


def test_nib_over_feed():
    pen, _, s = built("lever-sac", nib_length=20.0, feed_diameter=5.0)
    nib, feed = box(pen, "nib"), box(pen, "feed")
    assert nib[0] == pytest.approx(0.0)
    assert s.nib < nib[2] < s.mouth < feed[2]
    assert nib[1] < feed[1]  # the nib lies on top
    assert feed[3] == pytest.approx(2.5)
    assert pen.spans["nib_length"].size == 20.0
    assert pen.spans["feed_diameter"].size == 5.0
    assert pen.spans["feed_tail"].size == pytest.approx(2 * 0.75 * s.passage)


def test_the_fins_are_cut_into_the_feed():
    pen, _, s = built("lever-sac", nib_length=20.0)
    fins = [p.points for p in pen.pieces if p.part == "feed" and p.style == "line" and len(p.points) == 2]
    assert len(fins) == 13  # from 18.9 mm forwards in steps of 0.95 mm while behind 7.2 mm
    assert all(y0 - y1 == pytest.approx(0.34 * s.feed) for (_, y0), (_, y1) in fins)


def test_a_section_for_a_sac_has_a_nipple_and_one_for_a_bore_a_thread():
    sac, _, s = built("lever-sac", nipple=5.6)
    assert sac.spans["nipple"].size == pytest.approx(5.6)
    assert box(sac, "section")[2] == pytest.approx(s.tenon + 5.5)
    assert "section-joint" not in sac.anchors
    bore, _, t = built("piston")
    assert box(bore, "section")[2] == pytest.approx(t.tenon)
    joint = box(bore, "section-joint")
    assert t.mouth < joint[0] < joint[2] < t.tenon
    assert "nipple" not in bore.spans


def test_a_closed_barrel_has_its_depth_and_a_rounded_end():
    pen, _, s = built("lever-sac", barrel_length=70.0, barrel_depth=66.0, barrel_diameter=12.0)
    barrel = box(pen, "barrel")
    assert (barrel[0], barrel[2]) == pytest.approx((s.mouth, s.mouth + 70.0))
    assert barrel[3] == pytest.approx(6.0)
    assert pen.spans["barrel_depth"].size == pytest.approx(66.0)
    assert pen.spans["barrel_length"].size == pytest.approx(70.0)
    assert pen.spans["open_length"].size == pytest.approx(s.total)


def test_the_cap_threads_start_behind_the_mouth_and_have_their_length():
    pen, _, s = built("lever-sac", thread_length=5.0, thread_diameter=11.6, barrel_diameter=12.0)
    x0, _, x1, r = box(pen, "cap-threads")
    assert (x0, x1) == pytest.approx((s.mouth + 1.2, s.mouth + 6.2))
    assert r == pytest.approx(5.8)
    assert pen.spans["thread_length"].size == pytest.approx(5.0)


def test_an_end_piece_is_hollow_and_as_long_as_measured():
    pen, _, s = built("plunger-vacuum", end_length=15.0)
    end = box(pen, "blind-cap")
    assert end[2] == pytest.approx(s.end + 15.0)
    assert end[3] == pytest.approx(s.tail)
    assert pen.spans["end_length"].size == pytest.approx(15.0)
