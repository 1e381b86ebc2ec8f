"""The order of taking a pen apart: what is held, by what, and what was done out of order."""

import pytest

from pentools import tables
from pentools.calc.treatment.order import opening_order
from pentools.errors import InputError

SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
OUTSIDE = [row["key"] for row in tables.rows("opening_holds") if row["from_outside"] == "yes"]


def order(system, **more):
    return opening_order(system, tables.rows("opening_steps"), tables.rows("opening_holds"), **more)


def number_of(system, part):
    return next(step.number for step in order(system).steps if step.part == part)


@pytest.mark.parametrize("system", SYSTEMS)
def test_nothing_warm_or_wet_before_the_material_is_named(system):
    known = [key for key in OUTSIDE if key != "material-named"]
    plan = order(system, done=[1], met=known)
    second = plan.steps[1]
    assert second.state == "held"
    assert [hold.key for hold in second.held_by] == ["material-named"]
    assert any(f.level == "stop" and "material" in f.text for f in plan.findings)


@pytest.mark.parametrize("system", SYSTEMS)
def test_with_all_known_every_step_opens_in_its_turn(system):
    count = len(order(system).steps)
    for n in range(count):
        plan = order(system, done=range(1, n + 1), met=OUTSIDE)
        assert plan.next_step.number == n + 1
        assert plan.next_step.state == "open", plan.next_step
        assert not any(f.topic == "out of order" for f in plan.findings)
    finished = order(system, done=range(1, count + 1), met=OUTSIDE)
    assert finished.next_step is None
    assert finished.findings[-1].level == "ok"


@pytest.mark.parametrize(
    "system",
    [s for s in SYSTEMS if any("heat-agreed" in r["hold"] for r in tables.rows("opening_steps") if r["system"] == s)],
)
def test_no_warming_without_a_yes(system):
    warm = [
        step
        for step in order(system, met=[k for k in OUTSIDE if k != "heat-agreed"]).steps
        if "heat-agreed" in [h.key for h in step.held_by]
    ]
    assert warm
    assert all(step.state == "held" for step in warm)


def test_button_and_bar_are_out_before_the_section_is_turned():
    section = number_of("button-sac", "section")
    assert number_of("button-sac", "button") < number_of("button-sac", "pressure bar") < section
    plan = order(
        "button-sac", done=[n for n in range(1, section) if n != number_of("button-sac", "pressure bar")], met=OUTSIDE
    )
    held = plan.steps[section - 1]
    assert held.state == "held"
    assert "bar-out" in [hold.key for hold in held.held_by]


def test_a_plunger_pen_is_opened_from_the_front():
    parts = [step.part for step in order("plunger-vacuum").steps]
    assert parts.index("section") < parts.index("end knob") < parts.index("rod and washer") < parts.index("packing")
    rod = order("plunger-vacuum", met=OUTSIDE).steps[parts.index("rod and washer")]
    assert "mouth" in rod.action


def test_left_hand_threads_are_warned_of():
    plan = order("piston", done=range(1, number_of("piston", "filling mechanism")), met=OUTSIDE)
    assert plan.next_step.may_be_left_hand
    assert any(f.topic == "left-hand" for f in plan.findings)
    assert any(f.topic == "certainty" for f in plan.findings)
    without = order("piston", done=range(1, 5), met=[k for k in OUTSIDE if k != "thread-direction-known"])
    assert without.next_step.state == "held"


def test_what_was_done_out_of_order_is_said():
    plan = order("lever-sac", done=[1, 6], met=OUTSIDE)
    text = next(f.text for f in plan.findings if f.topic == "out of order")
    assert "Step 6" in text


def test_refusals():
    with pytest.raises(InputError, match="one of eyedropper"):
        order("steam")
    with pytest.raises(InputError, match="1 to"):
        order("piston", done=[99])
    with pytest.raises(InputError, match="one of pictured"):
        order("piston", met=["luck"])
