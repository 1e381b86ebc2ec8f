"""Which cautions apply, soak clocks, hold points."""

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools import tables
from pentools.calc.base.hold_points import STEPS, JobFacts, held_steps, hold_point
from pentools.calc.treatment.cautions import CLOSING_LINE, cautions_for
from pentools.calc.treatment.soak import Soak, next_due, soak_clock
from pentools.errors import InputError

ROWS = tables.rows("cautions")


def keys(materials, actions, **more):
    return [caution.key for caution in cautions_for(materials, actions, ROWS, **more)]


@pytest.mark.parametrize(
    ("materials", "actions", "some", "none"),
    [
        (["celluloid"], ["dry heat"], {"nitrate-fire", "nitrate-heat", "hot-air", "open-flame", "closed-pen"}, {"latex", "formaldehyde", "ammonia-air"}),
        (["celluloid"], ["wet sanding"], {"nitrate-dust", "nitrate-waste", "dust"}, {"rubber-pigments", "nitrate-heat"}),
        (["degrading celluloid"], ["storing"], {"nitrate-degrading", "nitrate-store"}, {"nitrate-heat"}),
        (["brass"], ["flush mix soak"], {"ammonia-brass", "ammonia-bleach", "ammonia-air"}, {"ammonia-silver", "nitrate-fire"}),
        (["coloured hard rubber"], ["buffing wheel"], {"rubber-pigments", "rubber-sulfur", "wheel"}, {"nitrate-dust"}),
        (["acrylic"], ["acetone"], {"acetone-fire", "bleach-alcohol"}, {"nitrate-fire", "ammonia-air"}),
        (["latex"], ["sac work"], {"latex", "perished-rubber", "blades"}, {"nitrate-fire"}),
    ],
)  # fmt: skip
def test_what_applies(materials, actions, some, none):
    found = set(keys(materials, actions))
    assert some <= found
    assert not none & found


def test_each_ends_with_the_closing_line():
    every = {action.strip() for row in ROWS for action in row["actions"].split(";")} - {"any"}
    found = cautions_for(["unknown"], every, ROWS)
    assert len(found) == len(ROWS)
    for caution in found:
        assert caution.text.endswith(CLOSING_LINE)
        assert caution.hazard.endswith(".")
        assert caution.control.endswith(".")


@pytest.mark.parametrize("materials", [[], ["unknown"], ["celluloid", "unknown"]])
def test_an_unnamed_material_gets_every_materials_cautions(materials):
    found = set(keys(materials, ["dry heat"]))
    assert {"nitrate-heat", "formaldehyde", "rubber-sulfur", "unknown-plastic"} <= found


def test_an_acknowledged_one_is_left_out():
    assert "nitrate-fire" not in keys(["celluloid"], ["dry heat"], acknowledged=["nitrate-fire"])


def test_a_misspelt_action_hides_nothing():
    with pytest.raises(InputError, match="action"):
        keys(["celluloid"], ["dry haet"])
    with pytest.raises(InputError):
        keys(["celluloid"], [])


@pytest.mark.parametrize(
    ("limit", "seconds", "phase", "level"),
    [(5, 0, "running", "ok"), (5, 239, "running", "ok"), (5, 240, "nearly up", "warning"), (5, 300, "over", "stop"), (0, 0, "not allowed", "stop"), (None, 9e4, "no limit on record", "warning")],
)  # fmt: skip
def test_soak(limit, seconds, phase, level):
    state = soak_clock(Soak("section", 1000, limit), 1000 + seconds)
    assert (state.phase, state.finding.level) == (phase, level)


@given(st.floats(0, 1e6), st.floats(0.1, 1440), st.floats(0, 1e5))
def test_elapsed_and_left_make_the_limit(start, limit, passed):
    state = soak_clock(Soak("part", start, limit), start + passed)
    assert state.elapsed_min + state.left_min == pytest.approx(limit)
    assert state.due_s == pytest.approx(start + 60 * limit)


def test_a_clock_set_back_and_other_nonsense():
    with pytest.raises(InputError, match="clock"):
        soak_clock(Soak("part", 100, 5), 99)
    with pytest.raises(InputError):
        soak_clock(Soak("part", 0, -1), 1)
    with pytest.raises(InputError):
        soak_clock(Soak("part", 0, 1), 1, warn_share=2)


def test_the_next_one_due():
    soaks = [Soak("feed", 0, 30), Soak("section", 600, 15), Soak("clip", 0, None)]
    assert next_due(soaks, 700).part == "section"
    assert next_due([soaks[2]], 700).left_min is None
    assert next_due([], 700) is None


GOOD = JobFacts(
    material_named=True,
    consents=frozenset({"polish"}),
    masks_on=True,
    dry_fit_passed=True,
    leak_test_done=True,
    limits_written=True,
    spent=80,
    ceiling=100,
)


def test_nothing_is_held_when_all_is_done():
    assert held_steps(GOOD) == ()


@pytest.mark.parametrize(
    ("change", "steps"),
    [
        ({"material_named": False}, {"heat", "soak", "polish"}),
        ({"consents": frozenset()}, {"polish"}),
        ({"masks_on": False}, {"polish"}),
        ({"dry_fit_passed": False}, {"sealant"}),
        ({"spent": 100.01}, {"spend"}),
        ({"leak_test_done": False}, {"release"}),
        ({"limits_written": False}, {"release"}),
        ({"refusals": frozenset({"heat"})}, {"heat"}),
        ({"refusals": frozenset({"polish"})}, {"polish"}),
        ({"spent": 1e6, "ceiling": None}, set()),
        ({"leak_test_done": False, "limits_written": False, "ended_early": True}, set()),
    ],
)
def test_one_thing_missing_holds_just_its_steps(change, steps):
    assert {state.step for state in held_steps(dataclasses.replace(GOOD, **change))} == steps


def test_a_fresh_job_holds_all_but_spending():
    assert {state.step for state in held_steps(JobFacts())} == set(STEPS) - {"spend"}


@pytest.mark.parametrize("step", ["heat", "soak", "polish", "sealant", "release"])
def test_a_release_with_a_reason_lets_it_go_and_stays_in_sight(step):
    held = hold_point(step, JobFacts())
    assert held.held
    assert all(reason in held.text for reason in held.reasons)
    let_go = hold_point(step, JobFacts(releases={step: "the owner asked for it in writing"}))
    assert not let_go.held
    assert let_go.reasons == held.reasons
    assert "in writing" in let_go.text
    assert hold_point(step, JobFacts(releases={step: "  "})).held, "a release without a reason is none"
    others = {s.step for s in held_steps(JobFacts(releases={step: "a reason"}))}
    assert others == {s.step for s in held_steps(JobFacts())} - {step}


def test_spending_up_to_the_ceiling_and_not_past_it():
    assert not hold_point("spend", GOOD, amount=20).held
    past = hold_point("spend", GOOD, amount=20.01)
    assert past.held
    assert "ceiling of 100" in past.text
    assert not hold_point("spend", dataclasses.replace(GOOD, releases={"spend": "agreed by letter"}), amount=30).held


def test_nonsense_is_refused():
    with pytest.raises(InputError, match="step"):
        hold_point("boil", GOOD)
    with pytest.raises(InputError):
        hold_point("spend", GOOD, amount=-1)
