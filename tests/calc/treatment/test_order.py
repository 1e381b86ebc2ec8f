"""The order of taking a pen apart: what is held, by what, and what was done out of order."""

import re

import pytest

from pentools import tables
from pentools.calc.treatment.order import HoldRow, StepRow, opening_order
from pentools.errors import InputError

SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
OUTSIDE = [row["key"] for row in tables.rows("opening_holds") if row["from_outside"] == "yes"]


def order(system, **more):
    steps, holds = tables.read(StepRow, "opening_steps"), tables.read(HoldRow, "opening_holds")
    return opening_order(system, steps, holds, **more)


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


ROWS = {system: [row for row in tables.rows("opening_steps") if row["system"] == system] for system in SYSTEMS}
GIVEN_BY = {system: {row["gives"]: int(row["step"]) for row in ROWS[system] if row["gives"]} for system in SYSTEMS}
# what an action speaks of, and what must be so before a hand can do it
ASKS_FOR = [
    (r"through the barrel's mouth|out at its mouth|out of the barrel\b|out through the mouth", {"section-out", "knob-off"}),
    (r"off the nipple|sac off|the old sac|pleated sac", {"section-out", "blind-cap-off", "plunger-free", "nib-out"}),
    (r"[Hh]ook the .*ring", {"tube-off"}),
    (r"end cap off|end cap or rod guide off", {"section-out", "sac-out", "nib-out", "ink-out"}),
    (r"(Look at|Take) the (old )?packing", {"rod-out"}),
    (r"[Dd]raw the button|[Pp]eel the bulb", {"blind-cap-off"}),
    (r"[Dd]raw the bar", {"button-out"}),
    (r"[Dd]raw nib and feed out of the carrier", {"nib-wound-out"}),
    (r"[Kk]nock nib and feed", {"section-out"}),
    (r"grip the collar", {"blind-cap-off", "section-out"}),
    (r"diaphragm's pellet", {"pump-out"}),
]  # fmt: skip
# found out only on a pen that is still shut, or only once something is off
SHUT = {"leak-seen"}
ONLY_AFTER = {"no-cross-pin": "blind-cap-off", "tube-back": "pictured"}


def keys_of(text):
    return {key.strip() for key in text.split(";") if key.strip()}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("without", [(), ("sealed joint",)])
def test_whatever_is_answered_nothing_waits_for_what_only_a_later_step_gives(system, without):
    asked = sorted({key for row in ROWS[system] for key in keys_of(row["hold"])} & set(OUTSIDE))
    assert len(asked) <= 8
    for bits in range(2 ** len(asked)):
        met = {key for i, key in enumerate(asked) if bits >> i & 1}
        done = set()
        while following := [s for s in order(system, done=done, met=met, without=without).steps if s.state == "open"]:
            done.add(following[0].number)
        plan = order(system, done=done, met=met, without=without)
        stuck = [step for step in plan.steps if step.state == "held"]
        for step in stuck:
            for hold in step.held_by:
                if hold.from_outside:
                    assert hold.key not in met
                else:
                    assert GIVEN_BY[system][hold.key] < step.number, f"{system} {step.number} waits for {hold.key}"
        if met == set(asked):
            assert not stuck, f"{system}: {[(step.number, [hold.key for hold in step.held_by]) for step in stuck]}"
        else:
            missing = {hold.key for step in stuck for hold in step.held_by if hold.from_outside}
            assert missing or not stuck


@pytest.mark.parametrize("system", SYSTEMS)
def test_no_action_speaks_of_what_is_not_open_yet(system):
    for row in ROWS[system]:
        before = {r["gives"] for r in ROWS[system] if int(r["step"]) < int(row["step"])} - {""}
        for words, any_of in ASKS_FOR:
            if re.search(words, row["action"]) and not re.search(r"^(Only where the sac|Empty it\.)", row["action"]):
                assert any_of & before, f"{system} {row['step']}: “{row['action']}” before {sorted(any_of)}"
                assert any_of & (keys_of(row["hold"]) | _all_before(system, row)), row


def _all_before(system, row):
    """What a step waits for, and what that waits for in turn."""
    found, left = set(), keys_of(row["hold"])
    while left:
        key = left.pop()
        if key not in found:
            found.add(key)
            giver = next((r for r in ROWS[system] if r["gives"] == key), None)
            left |= keys_of(giver["hold"]) if giver else set()
    return found


@pytest.mark.parametrize("system", SYSTEMS)
def test_what_is_asked_from_outside_can_be_known_by_then(system):
    for row in ROWS[system]:
        asked = keys_of(row["hold"])
        if asked & SHUT:  # a leak is seen on a pen that is still shut
            assert "section-out" not in _all_before(system, row)
            assert row["gives"] == "section-out"
        for key in asked & set(ONLY_AFTER):
            assert GIVEN_BY[system][ONLY_AFTER[key]] < int(row["step"])


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_joint_without_sealant_is_not_warmed_and_the_work_goes_on(system):
    warming = [int(row["step"]) for row in ROWS[system] if row["only_with"] == "sealed joint"]
    count = len(ROWS[system])
    spared = order(system, met=OUTSIDE, without=("sealed joint",))
    assert [step.number for step in spared.steps if step.state == "not needed"] == warming
    for number in warming:
        assert "barrel's mouth" in ROWS[system][number - 1]["action"]
        assert order(system, met=OUTSIDE).steps[number - 1].state != "not needed"
        done = range(1, number)
        assert order(system, done=done, met=OUTSIDE, without=("sealed joint",)).next_step.number == number + 1
        assert order(system, done=done, met=OUTSIDE, without=("sealed joint",)).next_step.state == "open"
        assert order(system, done=done, met=OUTSIDE, without=("something else",)).next_step.number == number
    finished = order(system, done=set(range(1, count + 1)) - set(warming), met=OUTSIDE, without=("sealed joint",))
    assert finished.next_step is None


def test_every_word_of_warmth_has_its_yes():
    for rows in ROWS.values():
        for row in rows:
            if "warm" in row["action"].casefold():
                agreed = "heat-agreed" in row["hold"] or "has agreed" in row["action"]
                assert agreed, row
                assert "material-named" in row["hold"], row


def test_rubber_is_never_asked_out_before_the_joint_that_hides_it():
    wrong = re.compile(r"sac (is )?(out|taken out|removed) before|before anything is warmed|open both ends before", re.IGNORECASE)  # fmt: skip
    for name in ("opening_steps", "opening_holds", "compatibility", "cautions", "heat_limits", "materials"):
        for row in tables.rows(name):
            assert not wrong.search(" ".join(row.values())), row
    for system, rows in ROWS.items():
        ink = next(row for row in rows if row["part"] == "ink")
        if "sac-out" in GIVEN_BY[system]:
            assert "perished" in ink["action"], system
            assert "perished-rubber" in ink["caution"]
    row = next(r for r in tables.rows("opening_holds") if r["key"] == "ink-out")
    assert "left dry" in row["condition"]


def test_the_cases_that_were_seen():
    plunger = next(row for row in ROWS["plunger-vacuum"] if row["part"] == "packing")
    assert keys_of(plunger["hold"]) == {"rod-out", "filler-tried"}
    tried = next(row for row in ROWS["plunger-vacuum"] if row["gives"] == "filler-tried")
    assert "bubbles" in tried["action"]
    for system in ("pneumatic-down-stroke", "pneumatic-extending-tube"):
        ring = next(row for row in ROWS[system] if row["gives"] == "ring-out")
        assert "tube-off" in keys_of(ring["hold"])
        assert GIVEN_BY[system]["tube-off"] < int(ring["step"])
    pump = next(row for row in ROWS["diaphragm-pump"] if row["gives"] == "pump-out")
    assert "no-cross-pin" in keys_of(pump["hold"])
    held = order("diaphragm-pump", done=range(1, int(pump["step"])), met=[k for k in OUTSIDE if k != "no-cross-pin"])
    assert held.next_step.state == "held"
    assert any("pin" in f.text and f.level == "stop" for f in held.findings)
    winding = next(row for row in ROWS["safety"] if row["gives"] == "nib-wound-out")
    assert "wind it in again before the cap goes on" in winding["action"]
    for system, key in (("plunger-vacuum", "packing-seen"), ("safety", "packing-seen"), ("piston", "head-seal-out")):
        assert key in GIVEN_BY[system]
