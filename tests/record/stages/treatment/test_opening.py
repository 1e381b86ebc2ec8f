"""Opening from the record: materials, limits with their overrules, heat windows, the order of work and the checks."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.holds import held, passed_by
from pentools.record.job import create_job
from pentools.record.stages.treatment.facts import (
    cautions_of,
    cautions_read,
    limit_for,
)
from pentools.record.stages.treatment.heat import joint_body, joint_heat
from pentools.record.stages.treatment.opening import opening_findings
from pentools.record.stages.treatment.words import limits_table, opening_sentence, what_came_of_it
from pentools.record.stages.treatment.work import block_of, opening_actions, order_of, step_waits


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")


def arrive(job, material="celluloid", system="lever-sac"):
    job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": material})


def test_an_overrule_holds_with_its_reason_and_the_table_stays_in_sight(job):
    arrive(job, "casein")
    assert limit_for(job, "barrel", "cold water soak").verdict == "never"
    job.add(
        "open", "overrule",
        {"material": "casein", "treatment": "cold water soak", "verdict": "limited", "reason": "a damp swab for seconds", "most_minutes": "0.5 min"},
    )  # fmt: skip
    limit = limit_for(job, "barrel", "cold water soak")
    assert (limit.verdict, limit.max_minutes, limit.overruled.verdict) == ("limited", 0.5, "never")
    assert any("limited (the table: never)" in row for row in limits_table(job))
    assert limit_for(job, "barrel", "flush mix soak").verdict == "never"


def test_the_window_has_a_sign_and_a_size(job):
    arrive(job)
    job.add("open", "joint", {"joint": "section", "sealant": "shellac"})
    sentence = opening_sentence(job)
    assert sentence.startswith(
        "Section and barrel, celluloid with shellac: no margin; warm to at most 60 °C, 15 °C short of fully soft"
    )
    assert joint_heat(job, "section").sources


def test_a_joint_with_an_unknown_sealant_still_has_a_limit(job):
    arrive(job, "hard rubber")
    job.add("open", "joint", {"joint": "section", "sealant": "unknown"})
    heat = joint_heat(job, "section")
    assert heat.limit_c == 70
    assert "taken as rosin, which softens last: no margin" in heat.sentence
    assert any(f.topic == "sealant-not-named" for f in heat.findings)


def test_a_body_said_at_the_joint_goes_before_the_parts(job):
    arrive(job)
    assert joint_body(job, "nib") == "unknown"
    job.add("open", "joint", {"joint": "nib", "sealant": "none", "body": "ebonite"})
    assert joint_body(job, "nib") == "hard rubber"
    assert "nothing seals it" in joint_heat(job, "nib").sentence


def test_the_bench_may_lower_or_raise_the_limit_of_heat(job):
    arrive(job)
    job.add("open", "joint", {"joint": "section", "sealant": "rosin and castor oil"})
    job.add(
        "open", "overrule",
        {"material": "celluloid", "treatment": "dry heat", "verdict": "limited", "reason": "this barrel is thin", "most_warmth": "50 °C"},
    )  # fmt: skip
    heat = joint_heat(job, "section")
    assert heat.limit_c == 50
    assert heat.sentence.endswith("The bench overrules the limit: at most 50 °C.")
    job.add("open", "heat pass", {"joint": "section", "surface": "52 °C"})
    assert any(f.topic == "over-limit" and f.text.startswith("Section and barrel: ") for f in opening_findings(job))
    assert any("above the limit of 50 °C" in f.text for f in job.stage("open").checks(job))


def test_the_order_of_work_follows_the_record(job):
    assert order_of(job) is None
    arrive(job)
    order = order_of(job)
    ink = next(step for step in order.steps if step.part == "ink")
    assert ink.state == "open"
    warm = next(step for step in order.steps if "heat-agreed" in {hold.key for hold in step.held_by})
    assert "The owner agreed to heat" in step_waits(warm)
    job.add("open", "met", {"condition": "heat-agreed", "how": "by letter of 3 March"})
    job.add("open", "step", {"number": "1", "did": "Pictures from all sides."})
    order = order_of(job)
    assert order.steps[0].state == "done"
    assert "heat-agreed" not in {hold.key for hold in order.steps[warm.number - 1].held_by}
    assert job.stage("open").state_of(job).reason == f"1 of {len(order.steps)} steps done"


def test_a_yes_of_the_owner_and_a_leak_seen_meet_their_conditions(job):
    arrive(job)
    job.add("agree", "answer", {"action": "heat", "agreed": "yes", "answered_on": "2026-03-14", "channel": "letter", "authority": "yes"})  # fmt: skip
    waiting = {hold.key for step in order_of(job).steps for hold in step.held_by}
    assert "heat-agreed" not in waiting
    assert held(job, "heat") == ""
    job.add("agree", "answer", {"action": "heat", "agreed": "no", "answered_on": "2026-03-15", "channel": "letter", "authority": "yes"})  # fmt: skip
    assert held(job, "heat") == "the owner said no to heat"


def test_heat_logged_although_held_is_named(job):
    job.add("open", "heat pass", {"joint": "section", "surface": "50 °C"})
    assert any(f.topic == "heat-held" for f in passed_by(job))


def test_parts_that_came_off_want_a_tray(job):
    arrive(job)
    job.add("open", "step", {"number": "1", "did": "Pictures", "came_off": "clip screw"})
    assert [f.topic for f in job.stage("open").checks(job)] == ["tray"]
    job.add("open", "parts tray", {"items": "clip screw", "all_there": "yes"})
    assert job.stage("open").checks(job) == ()


def test_the_block_comes_from_the_sum(job):
    assert block_of(job) is None
    job.add("open", "knock-out block", {"tail": "1.80 mm", "shoulder": "4.20 mm", "bore": "5.00 mm", "front": "8.0 mm", "section": "10.5 mm"})  # fmt: skip
    assert block_of(job).sentence.startswith("Tube: ")
    assert "Soak nothing" in " ".join(f.text for f in block_of(job).findings)
    job.add("open", "material", {"part": "section", "material": "casein"})
    assert "bears no soak" in " ".join(f.text for f in block_of(job).findings)


def test_cautions_follow_material_and_action_and_are_read_once(job):
    keys = [c.key for c in cautions_of(job, opening_actions(job))]
    assert "latex" in keys, "nothing is named, so all apply"
    arrive(job)
    job.add("open", "joint", {"joint": "section", "sealant": "rosin"})
    assert opening_actions(job) == ("opening", "dry heat", "rosin sealant")
    keys = [c.key for c in cautions_of(job, opening_actions(job))]
    assert {"nitrate-fire", "nitrate-heat", "rosin-fume", "closed-pen"} <= set(keys)
    assert "latex" not in keys
    job.add("open", "caution read", {"caution": "nitrate-fire"})
    assert cautions_read(job) == {"nitrate-fire"}
    assert [c.key for c in cautions_of(job, opening_actions(job))][-1] == "nitrate-fire"


def test_what_came_of_it(job):
    assert what_came_of_it(job) == ""
    arrive(job, "casein")
    assert what_came_of_it(job) == "It was not opened; what it is made of was told apart: casein."
    job.add("open", "step", {"did": "Looked at the joint."})
    assert what_came_of_it(job) == "It stayed closed, with no heat; nothing broke."
    job.add("open", "step", {"did": "Unscrewed the cap top.", "came_off": "cap top"})
    assert what_came_of_it(job) == "It came apart in 2 steps, with no heat; nothing broke."
    job.add("open", "heat pass", {"joint": "section", "broke": "a crack at the mouth"})
    assert what_came_of_it(job) == "It came apart in 2 steps, with 1 heating; something broke, as told below."


def test_of_several_materials_the_joint_is_warmed_for_the_one_that_gives_way_first(job):
    arrive(job, "hard rubber")
    assert joint_body(job, "other") == "hard rubber"
    job.add("open", "material", {"part": "section", "material": "celluloid"})
    assert joint_body(job, "other") == "celluloid"  # at most 60 °C, against 70 °C
    job.add("open", "material", {"part": "feed", "material": "blue stuff"})
    assert joint_body(job, "other") == "unknown"
