"""Threads named from pitch and diameter, and rubber chosen by what it meets."""

import pytest

from pentools import tables
from pentools.calc.seal.rubber import choose_elastomer, choose_lubricant
from pentools.calc.seal.threads import ba_thread, lead_mm, match_thread, pitch_over_crests_mm
from pentools.errors import InputError
from pentools.tables.seals import threads

THREADS = threads()
RUBBER, LUBRICANTS = tables.rows("elastomers"), tables.rows("lubricants")


def topics(found):
    return {f.topic for f in found.findings}


@pytest.mark.parametrize("index", range(0, 355, 7))
def test_a_standard_thread_measured_exactly_is_among_its_nearest(index):
    thread = THREADS[index]
    found = match_thread(thread.pitch_mm, thread.major_mm, THREADS, angle_deg=thread.angle_deg, starts=thread.starts)
    assert len(found.nearest) == 3
    twins = [
        t
        for t in THREADS
        if (t.major_mm, t.angle_deg, t.starts) == (thread.major_mm, thread.angle_deg, thread.starts)
        and abs(t.pitch_mm - thread.pitch_mm) < 1e-3
    ]
    assert found.nearest[0].thread in twins
    assert found.near
    distances = [n.distance for n in found.nearest]
    assert distances == sorted(distances)


def test_a_worn_crest_still_finds_its_thread():
    worn = match_thread(0.794, 7.144 - 0.15, THREADS)
    assert worn.nearest[0].thread.designation == "9/32 x 32"
    # but a diameter above the standard one is not excused
    assert match_thread(0.794, 7.144 + 0.15, THREADS).nearest[0].distance > worn.nearest[0].distance


def test_near_neighbours_are_said_to_be_so():
    # 32 in an inch at a quarter inch: two series have it, with angles of 55 and 60 degrees
    found = match_thread(0.794, 6.35, THREADS)
    assert "ambiguous" in topics(found)
    told = match_thread(0.794, 6.35, THREADS, angle_deg=55)
    assert told.nearest[0].thread.angle_deg == 55
    assert told.margin > found.margin


def test_a_makers_own_thread_is_not_forced_into_a_series():
    found = match_thread(0.93, 9.0, THREADS)
    assert not found.near
    assert "its maker's own" in next(f.text for f in found.findings if f.topic == "own-thread")
    assert len(found.nearest) == 3


def test_pitch_is_not_lead():
    triple = match_thread(0.8, 12.95, THREADS, starts=3)
    assert triple.nearest[0].thread.designation == "13x0.8 triple"
    assert "2.40 mm a turn" in next(f.text for f in triple.findings if f.topic == "multi-start")
    assert "count-starts" in topics(match_thread(0.8, 12.95, THREADS))


def test_without_a_diameter_the_pitch_decides():
    found = match_thread(0.66, None, THREADS)
    assert found.nearest[0].thread.designation == "4 BA"
    assert found.nearest[0].major_off_mm is None


@pytest.mark.parametrize(
    "call",
    [
        lambda: match_thread(7.94, 7.1, THREADS),
        lambda: match_thread(0.8, 100, THREADS),
        lambda: match_thread(0.8, 7, THREADS[:2]),
        lambda: match_thread(0.8, 7, THREADS, pitch_uncertainty_mm=0),
        lambda: ba_thread(26),
        lambda: lead_mm(0.8, 0),
        lambda: pitch_over_crests_mm(0),
        lambda: choose_elastomer([], "sac", RUBBER),
        lambda: choose_elastomer(["honey"], "sac", RUBBER),
        lambda: choose_elastomer(["alcohol"], "bung", RUBBER),
        lambda: choose_lubricant("felt", LUBRICANTS),
    ],
)
def test_refusals(call):
    with pytest.raises(InputError, match="must be"):
        call()


def best(media, use="moving seal"):
    return choose_elastomer(media, use, RUBBER)[0]


def test_what_it_meets_decides():
    assert best(["water-based ink", "ammonia flush"]).elastomer in ("NBR", "EPDM")
    assert best(["mineral oil"]).elastomer == "FKM"
    assert best(["mineral oil", "ammonia flush"]).elastomer == "NBR"
    for medium in ("mineral oil", "silicone grease"):
        order = [c.elastomer for c in choose_elastomer([medium], "moving seal", RUBBER)]
        assert order[-1] == "silicone"


def test_latex_and_ammonia_is_warned_of_with_how_sure_it_is():
    latex = next(c for c in choose_elastomer(["ammonia flush"], "sac", RUBBER) if c.elastomer == "latex")
    assert latex.worst == "F"
    assert any("ammonia" in f.text and "secondary" in f.text for f in latex.findings)


def test_an_unknown_rating_counts_as_poor():
    order = choose_elastomer(["alcohol"], "sac", RUBBER)
    assert order[-1].elastomer == "PVC"
    assert order[-1].worst == ""
    assert any("not known" in f.text for f in order[-1].findings)


def test_every_rating_carries_its_source():
    for choice in choose_elastomer(["water-based ink", "alcohol", "silicone grease"], "moving seal", RUBBER):
        assert all(source and certainty for _, _, source, certainty, _ in choice.ratings)


def test_lubricants():
    verdicts = {
        rubber: {c.lubricant: c.verdict for c in choose_lubricant(rubber, LUBRICANTS)}
        for rubber in ("NBR", "EPDM", "silicone", "latex")
    }
    assert verdicts["NBR"]["silicone grease"] == "ok"
    assert verdicts["silicone"]["silicone grease"] == "avoid"
    assert verdicts["EPDM"]["petroleum jelly"] == "avoid"
    assert verdicts["latex"]["petroleum jelly"] == "avoid"
    assert choose_lubricant("EPDM", LUBRICANTS)[0].verdict == "ok"


def test_a_pitch_that_is_off_is_not_near_though_the_diameter_agrees():
    assert not match_thread(0.93, 9.525, THREADS).near


def test_silicone_is_last_for_a_seal_that_moves_though_it_stands_alcohol_best():
    assert choose_elastomer(["alcohol"], "moving seal", RUBBER)[-1].elastomer == "silicone"
    assert choose_elastomer(["alcohol"], "static seal", RUBBER)[0].elastomer == "silicone"
