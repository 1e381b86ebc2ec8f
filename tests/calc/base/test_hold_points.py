"""Hold points: what holds which step, and what lets it go."""

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.base.hold_points import STEPS, JobFacts, hold_point
from pentools.errors import InputError

GOOD = JobFacts(
    material_named=True,
    consents=frozenset({"polish", "send out", "nib work"}),
    masks_on=True,
    dry_fit_passed=True,
    leak_test_done=True,
    limits_written=True,
    spent=80,
    ceiling=100,
)


def held_steps(facts):
    return {step for step in STEPS if hold_point(step, facts).held}


def test_nothing_is_held_when_all_is_done():
    assert held_steps(GOOD) == set()


@pytest.mark.parametrize(
    ("change", "steps"),
    [
        ({"material_named": False}, {"heat", "soak", "polish"}),
        ({"consents": frozenset()}, {"polish", "send out", "nib work"}),
        ({"consents": frozenset({"polish", "nib work"})}, {"send out"}),
        ({"consents": frozenset({"polish", "send out"})}, {"nib work"}),
        ({"flexed_past_limit": True}, {"flex"}),
        ({"untested": True}, {"close"}),
        ({"refusals": frozenset({"nib work"})}, {"nib work"}),
        ({"masks_on": False}, {"polish"}),
        ({"dry_fit_passed": False}, {"sealant"}),
        ({"spent": 100.01}, {"spend"}),
        ({"curing": True}, {"polish"}),
        ({"repair": ("unfit",)}, {"repair"}),
        ({"refusals": frozenset({"send out"})}, {"send out"}),
        ({"leak_test_done": False}, {"release"}),
        ({"limits_written": False}, {"release"}),
        ({"refusals": frozenset({"heat"})}, {"heat"}),
        ({"refusals": frozenset({"polish"})}, {"polish"}),
        ({"spent": 1e6, "ceiling": None}, set()),
        ({"leak_test_done": False, "limits_written": False, "ended_early": True}, set()),
    ],
)
def test_one_thing_missing_holds_just_its_steps(change, steps):
    assert held_steps(dataclasses.replace(GOOD, **change)) == steps


def test_a_fresh_job_holds_all_but_spending():
    assert held_steps(JobFacts()) == set(STEPS) - {"spend", "repair", "flex", "close"}


@pytest.mark.parametrize(
    ("step", "topics"),
    [
        ("heat", ("material",)), ("soak", ("material",)), ("polish", ("consent", "material", "masks")), ("sealant", ("dry fit",)),
        ("repair", ()), ("send out", ("consent",)), ("nib work", ("consent",)), ("flex", ()), ("spend", ()), ("release", ("leak check", "limits")),
    ],
)  # fmt: skip
def test_what_stands_in_the_way_of_a_fresh_job(step, topics):
    assert hold_point(step, JobFacts()).topics == topics


@pytest.mark.parametrize("step", ["heat", "soak", "polish", "sealant", "send out", "nib work"])
def test_a_no_is_a_no_and_is_not_asked_again(step):
    state = hold_point(step, dataclasses.replace(GOOD, refusals=frozenset({step})))
    assert (state.held, state.topics) == (True, ("refused",))
    assert not hold_point("release", dataclasses.replace(GOOD, refusals=frozenset({"release"}))).held


@pytest.mark.parametrize("step", ["heat", "soak", "polish", "sealant", "release"])
def test_a_release_with_a_reason_lets_it_go_and_stays_in_sight(step):
    held = hold_point(step, JobFacts())
    assert held.held
    assert held.release_reason == ""
    let_go = hold_point(step, JobFacts(releases={step: " the owner asked for it in writing "}))
    assert not let_go.held
    assert let_go.topics == held.topics
    assert let_go.release_reason == "the owner asked for it in writing"
    assert hold_point(step, JobFacts(releases={step: "  "})).held, "a release without a reason is none"
    assert held_steps(JobFacts(releases={step: "a reason"})) == held_steps(JobFacts()) - {step}
    assert hold_point(step, dataclasses.replace(GOOD, releases={step: "a reason"})).release_reason == "", (
        "nothing to release"
    )


def test_a_repair_is_held_by_what_stands_in_its_way_and_by_nothing_else():
    facts = dataclasses.replace(JobFacts(), repair=("unknown", "test spot"))
    assert hold_point("repair", facts).topics == ("unknown", "test spot")
    assert not hold_point("repair", JobFacts()).held
    assert not hold_point("repair", dataclasses.replace(facts, releases={"repair": "a reason"})).held


def test_spending_up_to_the_ceiling_and_not_past_it():
    assert not hold_point("spend", GOOD, amount=20).held
    assert hold_point("spend", GOOD, amount=20.01).topics == ("ceiling",)
    assert not hold_point("spend", dataclasses.replace(GOOD, releases={"spend": "agreed by letter"}), amount=30).held


def test_nonsense_is_refused():
    with pytest.raises(InputError, match="step"):
        hold_point("boil", GOOD)
    with pytest.raises(InputError):
        hold_point("spend", GOOD, amount=-1)


@given(
    st.sampled_from(STEPS),
    st.frozensets(st.sampled_from(STEPS)),
    st.frozensets(st.sampled_from(STEPS)),
    st.tuples(*[st.booleans()] * 4),
    st.booleans(),
)
def test_nothing_is_let_go_but_by_a_reason_and_a_yes_never_holds(step, yes, no, marks, released):
    named, masks, past, fitted = marks
    facts = JobFacts(
        material_named=named, masks_on=masks, flexed_past_limit=past, dry_fit_passed=fitted, consents=yes, refusals=no
    )
    state = hold_point(step, facts)
    assert state.held is bool(state.topics)
    if step in no and step in ("heat", "soak", "polish", "sealant", "send out", "nib work"):
        assert state.held, "a no holds, whatever else was said"
    if step in ("polish", "send out", "nib work") and step not in yes:
        assert state.held, "and so does a question that nobody answered"
    if step == "flex":
        assert state.held is past
    more = dataclasses.replace(facts, consents=yes | {step})
    assert set(hold_point(step, more).topics) <= set(state.topics)
    if released:
        let_go = hold_point(step, dataclasses.replace(facts, releases={step: "agreed in writing"}))
        assert (let_go.held, let_go.topics) == (False, state.topics)
