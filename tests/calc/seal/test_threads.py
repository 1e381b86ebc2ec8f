"""Threads named from pitch and diameter, and what is never named."""

import math

import pytest
from ranges import refuses, takes_only

from pentools.calc.seal.threads import Thread, lead_mm, match_thread, pitch_over_crests_mm
from pentools.tables.seals import threads

THREADS = threads()
TEN = 0.003
ONE = 0.03


def match(pitch, major, known=THREADS, *, u=TEN, **more):
    return match_thread(pitch, major, known, pitch_uncertainty_mm=u, **more)


def topics(found):
    return {f.topic for f in found.findings}


def text(found, topic):
    return next(f.text for f in found.findings if f.topic == topic)


def test_every_standard_thread_measured_exactly_is_its_own_nearest():
    wrong = []
    for thread in THREADS:
        found = match(thread.pitch_mm, thread.major_mm, angle_deg=thread.angle_deg, starts=thread.starts)
        distances = [n.distance for n in found.nearest]
        first = found.nearest[0].thread
        twin = (first.major_mm, first.angle_deg, first.starts) == (thread.major_mm, thread.angle_deg, thread.starts)
        if not (
            twin and abs(first.pitch_mm - thread.pitch_mm) < 1e-3 and found.near and distances == sorted(distances)
        ):
            wrong.append(thread.name)
    assert wrong == []


def test_a_worn_crest_still_finds_its_thread():
    worn = match(0.794, 7.144 - 0.15, THREADS)
    assert worn.nearest[0].thread.designation == "9/32 x 32"
    # but a diameter above the standard one is not excused
    assert match(0.794, 7.144 + 0.15, THREADS).nearest[0].distance > worn.nearest[0].distance


def test_near_neighbours_are_said_to_be_so():
    # 32 in an inch at a quarter inch: two series have it, with angles of 55 and 60 degrees
    found = match(0.794, 6.35, THREADS)
    assert "ambiguous" in topics(found)
    told = match(0.794, 6.35, THREADS, angle_deg=55)
    assert told.nearest[0].thread.angle_deg == 55
    assert told.margin > found.margin


def test_only_those_within_one_standard_uncertainty_of_the_first_are_said_to_be_alike():
    """0.0025, 0.0055 and 0.0445 mm off over hypot(0.004, 0.003): 0.5, 1.1 and 8.9."""
    known = [Thread(name, "s", 10.0, pitch, 60.0) for name, pitch in (("a", 1.0), ("b", 1.003), ("c", 1.05))]
    found = match(1.0055, 10.0, known, u=0.004)
    assert [(n.thread.designation, round(n.distance, 2)) for n in found.nearest] == [("b", 0.5), ("a", 1.1), ("c", 8.9)]
    assert (found.near, found.told) == (True, False)
    assert text(found, "ambiguous").startswith("s b and s a cannot be told apart by these readings")
    # a margin of one standard uncertainty, 0.0045 mm, tells them, a hair less does not
    for second, told in ((0.99549, True), (0.99551, False)):
        pair = [Thread("a", "s", 10.0, 1.0, 60.0), Thread("b", "s", 10.0, second, 60.0), known[2]]
        assert match(1.0, 10.0, pair, u=0.003354102).told is told


def test_a_makers_own_thread_is_not_forced_into_a_series():
    found = match(0.93, 9.0, THREADS)
    assert not found.near
    assert text(found, "own-thread") == (
        "Nothing standard is near: probably its maker's own thread. The closest, Unified 28 28-UN-3/8, is off by +0.023 mm in pitch."
    )
    assert len(found.nearest) == 3


def test_pitch_is_not_lead():
    triple = match(0.8, 12.95, THREADS, starts=3)
    assert triple.nearest[0].thread.designation == "13x0.8 triple"
    assert "3 starts: it advances 2.40 mm a turn (lead), though its crests stand 0.800 mm apart" in text(
        triple, "multi-start"
    )
    assert "count-starts" in topics(match(0.8, 12.95, THREADS))


def test_without_a_diameter_the_pitch_decides():
    found = match(0.66, None, THREADS)
    assert found.nearest[0].thread.designation == "4 BA"
    assert found.nearest[0].major_off_mm is None
    assert text(found, "nearest").startswith(
        "BA 4 BA is nearest, clear of the next, ME 1/2 x 40, by 5.9 standard uncertainties."
    )


def test_a_pitch_that_is_off_is_not_near_though_the_diameter_agrees():
    assert not match(0.93, 9.525).near


def test_another_count_of_starts_is_a_bad_match():
    # 1/32 in and four starts: the series has that pitch with one start only
    found = match(25.4 / 32, 9.525, starts=4)
    assert not found.near
    assert not found.told
    assert found.findings[0].level == "warning"
    assert "4 starts were counted, and the nearest by pitch, ME 3/8 x 32, has 1" in text(found, "starts")
    assert found.nearest[0].distance == pytest.approx(10, abs=0.2)
    assert "nearest" not in topics(found)
    one = match(25.4 / 32, 9.525, starts=1)
    assert one.near
    assert one.nearest[0].distance < 1
    # and one start counted on what is a triple thread
    assert match(0.8, 13.0, starts=1).nearest[0].thread.starts == 1


def test_one_crest_is_one_crest():
    ten, one = match(0.66, None, u=TEN), match(0.66, None, u=ONE)
    assert ten.told
    assert not one.told
    assert {"one-crest", "ambiguous"} <= topics(one)
    assert "one-crest" not in topics(ten)
    assert "4 BA" in text(one, "ambiguous")
    # a diameter that only one thread has tells it all the same
    assert match(0.66, 3.6, u=ONE).told


def test_distances_by_hand():
    known = [Thread("a", "s", 10.0, 1.0, 60.0), Thread("b", "s", None, 1.0, 60.0), Thread("c", "s", 12.0, 2.0, 55.0)]
    found = match_thread(1.02, 10.1, known, pitch_uncertainty_mm=0.004, angle_deg=57.5, major_uncertainty_mm=0.12)
    by_name = {n.thread.designation: n for n in found.nearest}
    # pitch 0.02 over hypot(0.004, 0.003) = 4; diameter 0.1 over hypot(0.12, 0.05); angle 2.5 over 2.5
    assert by_name["a"].distance == pytest.approx(math.sqrt(16 + (0.1 / 0.13) ** 2 + 1))
    assert by_name["b"].distance == pytest.approx(math.sqrt(16 + 1 + 1))
    assert by_name["a"].pitch_off_mm == pytest.approx(0.02)
    assert by_name["a"].major_off_mm == pytest.approx(0.1)
    assert by_name["b"].major_off_mm is None
    assert found.margin == pytest.approx(by_name["b"].distance - by_name["a"].distance)


def test_worn_crests_count_for_half_down_to_their_bound():
    known = [Thread(name, "s", 10.0, pitch, 60.0) for name, pitch in (("a", 1.0), ("b", 3.0), ("c", 4.0))]

    def distance(major):
        return match_thread(1.0, major, known, pitch_uncertainty_mm=TEN, major_uncertainty_mm=0.12).nearest[0].distance

    assert distance(10.13) == pytest.approx(1.0)
    assert distance(9.87) == pytest.approx(0.5)
    assert distance(9.8) == pytest.approx(0.1 / 0.13)
    assert distance(9.67) == pytest.approx((0.1 + 0.13) / 0.13)


def test_a_diameter_far_off_is_not_near():
    assert match(0.66, 3.6 + 0.29).near
    far = [Thread(name, "s", 10.0, pitch, 60.0) for name, pitch in (("a", 1.0), ("b", 3.0), ("c", 4.0))]
    assert match(1.0, 9.71, far).near
    assert not match(1.0, 9.69, far).near
    assert match(1.0119, 10.0, far).near
    assert not match(1.0121, 10.0, far).near


def test_lead_and_length_by_hand():
    assert lead_mm(0.8, 3) == pytest.approx(2.4)
    assert pitch_over_crests_mm(7.94) == pytest.approx(0.794)
    assert pitch_over_crests_mm(3.97, 5) == pytest.approx(0.794)
    assert Thread("x", "s", 13.0, 0.8, 60.0, 3).lead_mm == pytest.approx(2.4)


def test_ranges():
    takes_only(lambda x: match(x, 7.1), 0.05, 6)
    takes_only(lambda x: match(0.8, x), 0.2, 60)
    assert len(match(0.8, 7, THREADS[:3]).nearest) == 3
    refuses(lambda known: match(0.8, 7, known), THREADS[:2])
    refuses(lambda u: match(0.8, 7, u=u), 0, -0.01)
    refuses(lambda u: match(0.8, 7, major_uncertainty_mm=u), 0, -0.01)
    refuses(lambda pitch: lead_mm(pitch, 1), 0)
    refuses(lambda starts: lead_mm(0.8, starts), 0)
    refuses(pitch_over_crests_mm, 0)
    refuses(lambda count: pitch_over_crests_mm(7.9, count), 0)
    assert (lead_mm(0.8, 1), pitch_over_crests_mm(0.8, 1)) == (0.8, 0.8)
