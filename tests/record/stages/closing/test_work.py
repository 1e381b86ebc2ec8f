"""How far it is together: events in the order of time, what a form would close or skip, and the clocks."""

import datetime as dt

import pytest
from record.stages.closing.pens import KEYS, tick, up_to

from pentools.record.stages.closing.kinds import Round, Step
from pentools.record.stages.closing.work import (
    clocks_of,
    closing_of,
    doubts_of,
    fits_dry,
    fitted_of,
    met_of,
    offered_at,
    put_on,
    shut_by,
    step_values,
    words_of_changes,
)
from pentools.record.stages.job.care import care_of
from pentools.record.stages.seal.measure import work_out


def state(job, key):
    return closing_of(job).step(key).state


def test_one_entry_holds_the_whole_order(job):
    steps = [key for key in KEYS if key not in ("sealed", "rested")]
    tick(job, steps, steps, left_out="sealed", so_before="clean-dry; pictured", sac_with="shellac")
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert closing_of(job).next_step is None
    assert [step.state for step in closing_of(job).steps].count("not needed") == 1


def test_step_by_step_comes_to_the_same(job):
    for key in KEYS[:-1]:
        job.add("closing", "step", {"step": key, "outcome": "passed"})
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert closing_of(job).next_step is None
    assert {step.state for step in closing_of(job).steps} == {"done"}


def test_what_was_tested_was_done_and_a_correction_moves_nothing(job):
    entry = up_to(job, "sac-on")
    tick(job, (), ["sac-on"], sac_with="shellac")
    assert state(job, "sac-on") == "done"
    steps = "; ".join(KEYS[: KEYS.index("sac-on")])
    job.add("closing", "order", {"done": steps, "tested": steps, "so_before": "clean-dry"}, replaces=entry.id)
    assert closing_of(job).step("sac-on").skipped == ()


def test_no_system_no_order(job):
    job.add("intake", "arrival", {"pen": "a pen", "material": "acrylic"})
    assert closing_of(job) is None
    assert shut_by(job, Round(done=("sac-on",))) == doubts_of(job, Round(done=("sac-on",))) == ""
    assert not fits_dry(job)


@pytest.mark.parametrize("form", [Round(done=("sac-on",)), Step(step="sac-on", outcome="untested")])
def test_what_would_close_over_something_untested_is_said(job, form):
    up_to(job, "sac-cut")
    tick(job, ["sac-cut"])
    assert shut_by(job, form) == "step 6, the sac, closes over what is not tested. First this has to be so: The cut sac clears bar and barrel"  # fmt: skip
    tick(job, (), ["sac-cut"])
    assert shut_by(job, form) == ""


def test_ticks_of_the_same_entry_count_in_the_order_of_the_list(job):
    all_at_once = tuple(KEYS[:-1])
    assert shut_by(job, Round(done=all_at_once, tested=all_at_once)) == ""
    assert shut_by(job, Round(done=all_at_once, tested=tuple(k for k in all_at_once if k != "sac-on"))).startswith("step 8, the section")  # fmt: skip
    assert shut_by(job, Round(done=tuple(k for k in all_at_once if k != "bar-in"), tested=all_at_once)) == ""


def test_what_was_done_already_is_not_held_a_second_time(job):
    tick(job, ["sac-on"])
    assert shut_by(job, Round(tested=("sac-on",))) == ""


def test_what_is_skipped_is_asked_about(job):
    assert doubts_of(job, Round(done=("cleared",))).startswith("Step 1 wants this first: Every part is clean and dry.")
    assert doubts_of(job, Round(done=("cleared",), so_before=("clean-dry",))) == ""
    asked = doubts_of(job, Round(done=("cleared", "sac-dusted"), so_before=("clean-dry",)))
    assert asked == "Step 7 wants this first: The sac is tight on its joint. Is it so, or was it left out on purpose?"
    assert doubts_of(job, Step(step="sac-dusted", outcome="passed")).startswith("Step 7 wants")
    assert doubts_of(job, Round(left_out=("bar-in",))) == ""


def test_what_was_left_out_gives_what_it_would_have_given(job):
    steps = ["cleared", "nib-set", "dry-fit", "sac-cut"]
    before = ("clean-dry", "pictured")
    assert "Lever and bar move freely" in doubts_of(
        job, Round(done=tuple(steps), tested=tuple(steps), so_before=before)
    )
    assert doubts_of(job, Round(done=tuple(steps), tested=tuple(steps), so_before=before, left_out=("bar-in",))) == ""


def test_the_clock_counts_from_when_it_was_put_on(job):
    up_to(job, "sac-on")
    entry = tick(job, ["sac-on"], sac_with="shellac")
    [clock] = clocks_of(job, entry.time)
    assert (clock.row.key, clock.sealant) == ("sac-on", "shellac")
    assert (clock.test_at - entry.time, clock.ink_at - entry.time) == (dt.timedelta(hours=8), dt.timedelta(hours=24))
    assert clocks_of(job, entry.time + dt.timedelta(hours=24)) == ()


def test_what_the_seal_stage_says_of_the_adhesive_is_taken(job):
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "material": "silicone"})
    assert fitted_of(job) == ("silicone",)
    entry = job.add("seal", "sealant", {"place": "sac", "sealant": "silicone", "ago": "120 min"})
    assert put_on(job, "sac") == ("silicone", entry.time - dt.timedelta(hours=2))
    [clock] = clocks_of(job, entry.time)
    assert clock.test_at == entry.time + dt.timedelta(hours=22)
    assert put_on(job, "section") is None


def test_a_sac_ticked_without_a_word_takes_what_its_material_is_stuck_with(job):
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "material": "silicone"})
    entry = tick(job, ["sac-on"])
    [clock] = clocks_of(job, entry.time)
    assert (clock.sealant, clock.test_at - entry.time) == ("silicone", dt.timedelta(hours=24))


def test_measured_values_and_what_is_so_are_kept(job):
    tick(job, ["sac-cut"], sac_length="52 mm", so_before="clean-dry")
    tick(job, ["sac-cut"], sac_length="51.5 mm", so_before="pictured")
    assert step_values(job) == {"sac_length": "51.5 mm (2.028 in)"} or step_values(job)["sac_length"].startswith("51.5")
    assert {"clean-dry", "pictured"} <= met_of(job)


def test_what_is_known_of_a_step_beforehand_is_offered(job):
    rows = {step.row.key: step.row for step in closing_of(job).steps}
    assert offered_at(job, rows["sac-on"]) == offered_at(job, rows["sac-cut"]) == {}
    sizes = {"bore": "8.3 mm", "nipple": "6.6 mm", "nipple_length": "6 mm", "depth": "50 mm"}
    job.add("seal", "measure", {"place": "sac", "material": "silicone", **sizes})
    cut = work_out(job, "sac").data["cut_length_mm"]
    assert offered_at(job, rows["sac-on"]) == {"sac_with": "silicone"}
    assert offered_at(job, rows["sac-cut"]) == {"sac_length": f"{cut:.0f} mm"}
    assert offered_at(job, rows["sealed"]) == offered_at(job, rows["cleared"]) == {}
    job.add("seal", "measure", {"place": "sac", "material": "latex", **sizes})
    assert offered_at(job, rows["sac-on"]) == {"sac_with": "shellac"}
    job.add("seal", "measure", {"place": "sac", "bore": "8.3 mm", "nipple": "9.6 mm", "depth": "50 mm"})
    assert offered_at(job, rows["sac-cut"]) == {}


def test_a_reach_that_was_measured_with_the_seal_is_known(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "x", "system": "bulb"})
    assert "tube_reach" not in step_values(job)
    job.add("seal", "measure", {"place": "breather", "tube": "2 mm", "tube_hole": "1.95 mm", "reach": "55 mm"})
    assert step_values(job)["tube_reach"].startswith("55\u202fmm")
    tick(job, ["tube-cut"], tube_reach="54 mm")
    assert step_values(job)["tube_reach"].startswith("54\u202fmm")


def test_dry_on_the_way_counts_as_a_dry_fit(job):
    assert not fits_dry(job)
    up_to(job, "sac-on")
    assert fits_dry(job)
    job.add("seal", "trial", {"place": "section", "what": "as found", "dry": "yes", "happened": "too stiff"})
    assert not fits_dry(job)


def test_materials_change_steps_and_care_hears_of_adhesives(job):
    row = closing_of(job).step("sealed").row
    assert any("crazes acrylic" in words for words in words_of_changes(job, row))
    tick(job, ["sac-on"], sac_with="silicone")
    assert any("vinegar" in line.line for line in care_of(job))
