"""The outside of a pen: closed by its cap, or open with threads and section to be seen."""

import pytest

from pentools.errors import InputError
from pentools.figures.pen.outline import outline_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of


def outside(system, capped, **measured):
    return outline_of(system, proportions_of(PenShape(system, **measured)), capped=capped)


@pytest.mark.parametrize("system", SYSTEMS)
def test_open_and_closed_show_what_they_should(system):
    open_, closed = outside(system, False), outside(system, True)
    assert {"barrel", "cap-threads"} <= set(open_.profiles)
    assert {"cap", "cap-band", "clip", "barrel"} <= set(closed.profiles)
    assert "cap" not in open_.profiles
    assert "section" not in closed.profiles
    assert ("section" in open_.profiles) == (system != "safety")
    assert (open_.clip == (), closed.clip != ()) == (True, True)


@pytest.mark.parametrize(
    ("system", "end"), [("piston", "knob"), ("syringe", "end-cap"), ("bulb", "blind-cap"), ("safety", "knob")]
)
def test_the_end_piece_is_the_systems_own(system, end):
    assert set(outside(system, False).profiles) & {"knob", "end-cap", "blind-cap"} == {end}


def test_a_plain_barrel_is_rounded_and_drawn_once():
    drawn = outside("lever-sac", False, end_length_mm=9.0)
    assert not set(drawn.profiles) & {"knob", "end-cap", "blind-cap"}
    assert len([piece for piece in drawn.anatomy.pieces if piece.part == "barrel"]) == 1
    radii = [r for _, r in drawn.profiles["barrel"]]
    assert radii[-1] < 0.7 * radii[0]


@pytest.mark.parametrize(("system", "part"), [("lever-sac", "lever"), ("crescent-sac", "crescent")])
def test_what_is_seen_of_the_mechanism_lies_on_top(system, part):
    assert part in {piece.part for piece in outside(system, True).over}
    assert {piece.part for piece in outside("bulb", True).over} == set()


def test_threads_are_seen_with_the_cap_off_only():
    lines = [piece for piece in outside("piston", False).over if piece.part == "cap-threads"]
    assert len(lines) == 6  # six millimetres of thread in steps of 0.9 mm
    assert not [piece for piece in outside("piston", True).over if piece.part == "cap-threads"]


def test_a_stretch_follows_the_outside_between_two_distances():
    drawn = outside("lever-sac", False, barrel_length_mm=70.0, barrel_diameter_mm=12.0)
    stretch = drawn.stretch("barrel", 10.0, 30.0)
    start = drawn.profiles["barrel"][0][0]
    assert (stretch[0][0], stretch[-1][0]) == pytest.approx((start + 10.0, start + 30.0))
    assert {r for _, r in stretch} == {6.0}
    whole = drawn.stretch("barrel")
    assert whole[-1][0] == pytest.approx(drawn.profiles["barrel"][-1][0])
    with pytest.raises(InputError, match="less than the part's"):
        drawn.stretch("barrel", 90.0)
    with pytest.raises(InputError, match="one of"):
        drawn.stretch("cap")


def test_height_runs_evenly_between_two_points():
    drawn = outside("piston", False, barrel_diameter_mm=12.0)
    (x0, r0), (x1, r1) = drawn.profiles["barrel"][-2:]
    assert drawn.height("barrel", 0.5 * (x0 + x1)) == pytest.approx(0.5 * (r0 + r1))
    assert drawn.height("barrel", x1 + 5.0) == r1


def test_cap_and_barrel_meet_at_the_caps_mouth():
    drawn = outside("lever-sac", True)
    assert drawn.profiles["barrel"][0][0] == pytest.approx(drawn.profiles["cap"][-1][0])
    assert drawn.spans.keys() <= {
        "barrel_length", "barrel_diameter", "section_length", "section_diameter", "nib_length", "cap_length",
        "cap_diameter", "open_length", "capped_length", "end_length", "thread_diameter", "thread_length",
    }  # fmt: skip
