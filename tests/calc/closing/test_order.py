"""The order of putting a pen together: reachable, free of circles, soft where it may be and held where it must."""

import itertools
import re

import pytest

from pentools import tables
from pentools.calc.closing.order import ClosingRow, Did, closing_order
from pentools.calc.treatment.order import HoldRow
from pentools.errors import InputError

SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
ROWS, HOLDS = tables.read(ClosingRow, "closing_steps"), tables.read(HoldRow, "closing_holds")
OUTSIDE = frozenset(row.key for row in HOLDS if row.from_outside)

SAC = [r"old rubber", r"nib and feed", r"section in the barrel bare", r"cut it to length", r"shellac.*silicone adhesive", r"talc", r"without heat|section fully home|section in with|section into"]  # fmt: skip
NAMED = {
    "lever-sac": [*SAC[:3], r"Put the bar in", *SAC[3:], r"under water", r"cold, or warmed", r"a night"],
    "button-sac": [*SAC, r"bar in last", r"button on", r"under water", r"a night"],
    "crescent-sac": [*SAC[:3], r"arc and bar in", *SAC[3:], r"under water", r"a night"],
    "slot-sac": [*SAC[:3], r"plate", *SAC[3:], r"under water", r"a night"],
    "sleeve-squeeze": [r"breather tube", r"cut it to length", r"shellac", r"sleeve straight", r"under water", r"a night", r"barrel on"],
    "bulb": [r"bulb dry", r"bulb drawn on", r"cut the tube", r"section home", r"under water", r"blind cap on"],
    "diaphragm-pump": [r"by its seat.*pellet or peg", r"[Ff]old the diaphragm", r"pump in by hand", r"cut the tube", r"section straight home", r"Stroke", r"blind cap on"],
    "plunger-vacuum": [r"packing", r"Washer", r"Rod in", r"end knob on", r"section home", r"stroke"],
    "piston": [r"cork", r"grease", r"mechanism in", r"nib unit home", r"second time"],
    "syringe": [r"head's seal", r"rod's seal", r"end cap", r"section home", r"second time"],
    "pneumatic-down-stroke": [r"ring into its groove", r"Tube through", r"cut it to length", r"guard", r"Screw the section", r"push"],
    "pneumatic-extending-tube": [r"ring into its groove", r"tube through", r"cut it to length", r"[Gg]uard", r"front seal", r"section into", r"push"],
    "eyedropper": [r"grease on the section's thread", r"section in", r"lay it down"],
    "safety": [r"cork or ring", r"Helix", r"set nib and feed", r"cap screwed"],
    "bellows": [r"pleated sac", r"plunger to the sac", r"section and sac home", r"under water"],
    "capillary": [r"rinsed cell", r"Open end in water", r"End cap"],
    "cartridge-converter": [r"converter by itself", r"straight on its nipple", r"barrel on"],
}  # fmt: skip
"""What each order must have, in this order: the steps a workshop names."""


def order(system, **more):
    return closing_order(system, ROWS, HOLDS, **more)


def keys(system):
    return [row.key for row in ROWS if row.system == system]


def test_every_system_has_an_order_and_nothing_else_has():
    assert list(dict.fromkeys(row.system for row in ROWS)) == SYSTEMS
    assert set(NAMED) == set(SYSTEMS)


@pytest.mark.parametrize("system", SYSTEMS)
def test_it_has_the_steps_that_a_workshop_names_in_that_order(system):
    actions = [step.row.action for step in order(system).steps]
    at = -1
    for wanted in NAMED[system]:
        places = [n for n, action in enumerate(actions) if re.search(wanted, action) and n >= at]
        assert places, (wanted, actions[max(at, 0) :])
        at = places[0]


def test_a_buttons_bar_goes_in_after_the_section_and_a_levers_before_the_sac():
    button = keys("button-sac")
    assert button.index("section-home") < button.index("bar-in") < button.index("button-in")
    assert [step.state for step in order("button-sac", met=OUTSIDE).steps if step.row.key == "bar-in"] == ["early"]
    for system in ("lever-sac", "crescent-sac", "slot-sac"):
        own = keys(system)
        assert own.index("bar-in") < own.index("sac-cut") < own.index("section-in")


@pytest.mark.parametrize("system", SYSTEMS)
def test_no_step_asks_for_what_only_a_later_one_gives(system):
    given = set(OUTSIDE)
    for number, row in enumerate((r for r in ROWS if r.system == system), 1):
        assert row.step == number
        assert set(row.hold) <= given, row
        assert row.gives not in given, row
        given.add(row.gives)


def test_every_condition_is_used_and_every_step_gives_one():
    held = {key for row in ROWS for key in row.hold}
    given = {row.gives for row in ROWS}
    assert {row.key for row in HOLDS} == held | given
    assert held >= OUTSIDE
    assert not given & OUTSIDE


@pytest.mark.parametrize("system", SYSTEMS)
def test_by_brute_force_every_state_leads_home_and_no_step_opens_too_early(system):
    """All sets of steps whose tests have passed: what is open in each is what its holds say; from every set that can be
    reached the whole order can be, which no circle and no dead end would allow."""
    own = [row for row in ROWS if row.system == system]
    reached, ahead = {frozenset()}, [frozenset()]
    while ahead:
        passed = ahead.pop()
        states = order(system, met=OUTSIDE, did=[Did(row.key, True) for row in own if row.key in passed]).steps
        given = OUTSIDE | {row.gives for row in own if row.key in passed}
        open_now = {step.row.key for step in states if step.state == "open"}
        assert open_now == {row.key for row in own if row.key not in passed and set(row.hold) <= given}
        assert open_now or len(passed) == len(own), f"{sorted(passed)} leads nowhere"
        for key in open_now:
            more = passed | {key}
            if more not in reached:
                reached.add(more)
                ahead.append(more)
    assert frozenset(row.key for row in own) in reached
    assert len(reached) >= len(own)


@pytest.mark.parametrize("system", SYSTEMS)
def test_what_closes_something_untested_is_held_and_what_closes_nothing_is_only_early(system):
    """Every step, with every one of its conditions missing in turn."""
    own = [row for row in ROWS if row.system == system]
    for row in own:
        for missing in row.hold:
            did = [Did(r.key, None if r.gives == missing else True) for r in own if r.step < row.step]
            step = order(system, met=OUTSIDE - {missing}, did=did).step(row.key)
            held = row.closes and missing not in OUTSIDE
            assert step.state == ("held" if held else "early"), (row.key, missing)
            assert [hold.key for hold in step.missing] == [missing]


ANSWERS = (None, True, False)


@pytest.mark.parametrize("system", SYSTEMS)
def test_whatever_is_answered_at_any_three_neighbours_the_findings_say_so(system):
    """A test that failed or was not made is never taken for one that passed, wherever it stands."""
    own = [row for row in ROWS if row.system == system]
    for first, answers in itertools.product(range(len(own) - 2), itertools.product(ANSWERS, repeat=3)):
        said = {own[first + n].key: answer for n, answer in enumerate(answers)}
        plan = order(system, met=OUTSIDE, did=[Did(row.key, said.get(row.key, True)) for row in own])
        for row, step in zip(own, plan.steps, strict=True):
            assert step.state == {True: "done", None: "untested", False: "failed"}[said.get(row.key, True)]
        topics = [finding.topic for finding in plan.findings]
        assert topics.count("failed") == answers.count(False)
        assert ("together" in topics) == (answers == (True, True, True))
        bad = {row.gives for row in own if said.get(row.key, True) is not True}
        shut = [row.key for row in own if row.closes and bad & set(row.hold)]
        assert topics.count("shut") == len(shut), shut


def test_a_step_done_before_its_turn_is_told_of_and_stays_so():
    did = [Did("cleared", True), Did("sac-dusted", True), Did("nib-set", True)]
    plan = order("lever-sac", met=OUTSIDE, did=did)
    told = [f for f in plan.findings if f.topic == "skipped"]
    assert [f.values["part"] for f in told] == ["sac"]
    assert told[0].values["missing"] == ("The sac is tight on its joint.",)
    later = order("lever-sac", met=OUTSIDE | {"sac-tight"}, did=did)
    assert not [f for f in later.findings if f.topic == "skipped"]


def test_what_was_tested_afterwards_is_let_go_and_what_fails_again_is_taken_back():
    did = [Did(key, True) for key in keys("lever-sac")[:4]]
    untested = order("lever-sac", met=OUTSIDE, did=[*did, Did("sac-cut")])
    assert untested.next_step.row.key == "sac-cut"
    assert untested.step("sac-on").state == "held"
    assert [hold.key for hold in untested.step("sac-on").untested] == ["sac-clears"]
    passed = order("lever-sac", met=OUTSIDE, did=[*did, Did("sac-cut"), Did("sac-cut", True)])
    assert passed.step("sac-on").state == "open"
    failed = order("lever-sac", met=OUTSIDE, did=[*did, Did("sac-cut", True), Did("sac-cut", False)])
    assert failed.step("sac-on").state == "held"
    assert failed.findings[0].level == "stop"
    assert "made anew" in failed.findings[0].text  # a cut sac does not grow


def test_only_what_the_table_holds_for_optional_is_passed_over():
    own = keys("lever-sac")
    did = [Did(key, True) for key in own if key != "bar-in"]
    plan = order("lever-sac", met=OUTSIDE, did=did, left_out=["bar-in"])
    assert plan.step("bar-in").state == "not needed"
    assert plan.next_step is None
    assert [f.topic for f in plan.findings] == ["together"]
    did = [Did(key, True) for key in own if key != "dry-fit"]
    plan = order("lever-sac", met=OUTSIDE, did=did, left_out=["dry-fit"])
    assert plan.next_step.row.key == "dry-fit"
    assert any(f.topic == "shut" for f in plan.findings)


def test_what_is_not_known_is_refused_in_words():
    with pytest.raises(InputError, match="filling system"):
        order("steam")
    with pytest.raises(InputError, match="step"):
        order("piston", did=[Did("bar-in")])
    with pytest.raises(InputError, match="step"):
        order("piston", left_out=["bar-in"])
    with pytest.raises(InputError, match="condition"):
        order("piston", met=["dry-ish"])
    with pytest.raises(InputError, match="step"):
        order("piston").step("bar-in")


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_last_word_of_every_order_is_a_night_or_a_cap(system):
    own = [row for row in ROWS if row.system == system]
    assert any(row.key == "rested" and row.gives == "night-dry" for row in own)
    after = [row.key for row in own[[row.key for row in own].index("rested") + 1 :]]
    assert set(after) <= {"barrel-on", "blind-cap-on"}


def test_the_next_step_says_what_cannot_be_taken_back_and_what_is_from_memory():
    did = [Did(key, True) for key in keys("lever-sac")[:4]]
    topics = {f.topic for f in order("lever-sac", met=OUTSIDE, did=did).findings}
    assert topics == {"undone-no", "memory"}
    did = [Did(key, True) for key in keys("lever-sac")[:5]]
    assert {f.topic for f in order("lever-sac", met=OUTSIDE, did=did).findings} == {"undone-partly"}


def test_the_findings_name_step_and_part_each_in_its_place():
    done = [Did(key, True) for key in keys("lever-sac")[:4]]
    cut = order("lever-sac").step("sac-cut").row
    [failed] = [
        f.text
        for f in order("lever-sac", did=[*done, Did("sac-cut", False)], met=OUTSIDE).findings
        if f.topic == "failed"
    ]
    assert failed.startswith(f"Step 5, the sac, did not pass (sound is: {cut.passes}). It cannot be taken back")
    [mind] = [f.text for f in order("lever-sac", did=done, met=OUTSIDE).findings if f.topic == "undone-no"]
    assert mind == "Step 5, the sac, cannot be taken back."
    untested = [
        f.text for f in order("lever-sac", did=[*done, Did("sac-cut")], met=OUTSIDE).findings if f.topic == "untested"
    ]
    assert untested == [f"Step 5, the sac, is done but not tested. {cut.test} Passed: {cut.passes}."]
