"""The order of work, what it waits for, and the knock-out block."""

from record.stages.treatment.pens import arrive

from pentools.record.holds import held
from pentools.record.stages.treatment.facts import (
    cautions_of,
    cautions_read,
)
from pentools.record.stages.treatment.work import block_of, opening_actions, order_of, step_waits


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
    job.add("open", "met", {"condition": "heat-agreed", "how": "he said so at the door"})
    assert "heat-agreed" in {hold.key for step in order_of(job).steps for hold in step.held_by}


def test_what_is_so_by_the_record_need_not_be_said_again(job):
    def waiting(*keys):
        return {hold.key for step in order_of(job).steps for hold in step.held_by} & set(keys)

    arrive(job, "plastic", system="sleeve-squeeze")
    job.add("open", "met", {"condition": "material-named", "how": "it is plastic"})
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert waiting("material-named", "leak-seen") == {"material-named", "leak-seen"}
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "no"})
    job.release("clean", "soak", "a trial piece of my own")
    assert waiting("material-named", "leak-seen") == set()
    arrive(job, "casein", system="piston")
    job.add("open", "step", {"number": "1", "did": "Pictures."})
    job.add("open", "joint", {"joint": "nib", "sealant": "shellac"})
    assert waiting("joint-known-front")
    job.add("open", "joint", {"joint": "section", "sealant": "shellac"})
    assert not waiting("joint-known-front")


def test_a_joint_that_nothing_seals_is_not_warmed(job):
    arrive(job)
    count = len(order_of(job).steps)
    assert sum("heat-agreed" in {hold.key for hold in step.held_by} for step in order_of(job).steps) == 1
    job.add("open", "joint", {"joint": "section", "sealant": "none"})
    assert opening_actions(job) == ("opening",)
    assert [step.state for step in order_of(job).steps].count("done") == 0
    assert [step.part for step in order_of(job).steps if step.state == "not needed"] == ["section joint"]
    job.add("open", "joint", {"joint": "section", "sealant": "epoxy"})
    assert opening_actions(job) == ("opening", "dry heat", "epoxy")
    assert len(order_of(job).steps) == count


def test_a_step_that_is_not_in_the_list_is_nobody_s(job):
    arrive(job)
    count = len(order_of(job).steps)
    for number in (str(count), str(count + 1)):
        job.add("open", "step", {"number": number, "did": "x"})
    assert [step.number for step in order_of(job).steps if step.state == "done"] == [count]


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
