"""Dry trials: the ladder, what counts, and what has passed."""

import pytest
from record.stages.seal.pens import HEAD, STOCK, WASHER, try_washer, with_stock

from pentools.record.stages.seal.measure import work_out
from pentools.record.stages.seal.sealing import SEAL
from pentools.record.stages.seal.trials import dry_fit_passed, fitted_unlisted, next_trial, passed_places, trials


def test_the_ladder_halves_what_is_left(job):
    job.add("seal", "measure", WASHER)
    # the window of a flat washer is 0.1 to 0.3 mm above the bore of 8.30 mm: 8.5 mm to begin with
    assert next_trial(job, "washer").sizes_mm == (8.3, 8.4, 8.5, 8.6, 8.7)
    assert next_trial(job, "washer").step.next_mm == 8.5
    assert not next_trial(job, "washer").from_stock
    try_washer(job, 8.7, "too stiff")
    assert next_trial(job, "washer").step.next_mm == 8.4
    try_washer(job, 8.4, "slides, no suction")
    assert next_trial(job, "washer").step.next_mm == 8.5
    try_washer(job, 8.5, "no touch")
    assert next_trial(job, "washer").what == "flat of 8.60 mm"
    try_washer(job, 8.6, "pulls back")
    step = next_trial(job, "washer").step
    assert (step.next_mm, step.held_mm) == (None, 8.6)


def test_rings_go_by_their_outside_in_place_and_the_drawer_comes_first(job):
    job = with_stock(job)
    job.add("seal", "measure", {"place": "head", **HEAD})
    step = next_trial(job, "head")
    assert step.from_stock
    assert len(step.sizes_mm) == len(STOCK)
    # 5.3x1.83 lies on its groove of 5.30 mm unstretched: 5.30 + 2 × 1.83
    assert step.sizes_mm[-1] == pytest.approx(8.96)
    assert step.ring.measured
    job.add("seal", "trial", {"place": "head", "what": "thin one", "section": "1.52 mm", "inside": "5.30 mm", "dry": "yes", "happened": "no touch"})  # fmt: skip
    assert trials(job, "head")[0].size_mm == pytest.approx(5.3 + 2 * 1.52)


def test_a_sac_climbs_by_its_numbers(job):
    job.add("seal", "measure", {"place": "sac", "bore": "8.00 mm; 7.90 mm", "nipple": "6.60 mm", "depth": "62 mm", "cleaned": "yes"})  # fmt: skip
    answer = work_out(job, "sac")
    assert answer.data["number"] == next(n for n in range(30, 5, -1) if n * 25.4 / 64 <= 6.60 + 0.25 * 25.4 / 64)
    step = next_trial(job, "sac")
    assert f"sac number {answer.data['number']}" in step.what


def test_nothing_tried_nothing_passed(job):
    assert dry_fit_passed(job) is False
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.5, "slides, no suction")
    assert dry_fit_passed(job) is False
    assert passed_places(job) == {"washer": False}


def test_only_a_dry_trial_that_pulls_back_passes(job):
    try_washer(job, 8.5, "pulls back", dry="no")
    assert dry_fit_passed(job) is False
    try_washer(job, 8.5, "pulls back")
    assert dry_fit_passed(job) is True


def test_the_same_size_that_fails_later_no_longer_passes(job):
    try_washer(job, 8.5, "pulls back")
    try_washer(job, 8.51, "slides, no suction")
    assert dry_fit_passed(job) is False
    try_washer(job, 8.6, "pulls back")
    assert dry_fit_passed(job) is True


def test_a_second_place_that_still_fails_keeps_the_gate_shut(job):
    try_washer(job, 8.5, "pulls back")
    packing = {"place": "packing", "what": "005", "section": "1.70 mm", "dry": "yes"}
    job.add("seal", "trial", {**packing, "happened": "slides, no suction"})
    assert passed_places(job) == {"packing": False, "washer": True}
    assert dry_fit_passed(job) is False
    assert [f.topic for f in SEAL.checks(job) if f.level == "warning"] == ["dry-fit"]
    job.add("seal", "trial", {**packing, "what": "another 005", "section": "1.79 mm", "happened": "pulls back"})
    assert dry_fit_passed(job) is True


def test_a_withdrawn_trial_does_not_pass(job):
    entry = try_washer(job, 8.5, "pulls back")
    job.withdraw(entry, "that was the other pen")
    assert dry_fit_passed(job) is False


def test_an_altered_part_begins_its_ladder_afresh(job):
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.6, "pulls back")
    job.add("seal", "measure", {**WASHER, "bore": "8.20 mm", "altered": "yes"})
    assert trials(job, "washer") == ()
    assert dry_fit_passed(job) is False
    assert next_trial(job, "washer").step.next_mm == 8.4


def test_a_silicone_sac_climbs_by_its_own_sizes(job):
    job.add("seal", "measure", {"place": "sac", "material": "silicone", "bore": "8.00 mm", "nipple": "6.60 mm"})
    step = next_trial(job, "sac")
    assert step.what == "silicone sac number 17, 6.75 mm"
    assert len(step.sizes_mm) == 5
    assert not step.from_stock
    job.add("seal", "measure", {"place": "sac", "material": "pleated", "sac": "7.0 mm", "bore": "8.00 mm"})
    assert next_trial(job, "sac").what == "pleated sac of 7.00 mm"


def test_a_greased_trial_is_kept_but_does_not_move_the_ladder(job):
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.5, "too stiff", dry="no")
    assert [t.dry for t in trials(job, "washer")] == [False]
    assert next_trial(job, "washer").step.next_mm == 8.5


def test_a_ring_without_its_inside_lies_on_its_groove(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    job.add(
        "seal", "trial", {"place": "head", "what": "a ring", "section": "1.6 mm", "dry": "yes", "happened": "no touch"}
    )
    (trial,) = trials(job, "head")
    assert trial.size_mm == pytest.approx(5.3 + 3.2)
    assert (trial.what, trial.happened, trial.dry) == ("a ring", "no touch", True)


def test_rings_too_loose_or_too_stretched_are_not_proposed(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    job = with_stock(job, ("1.78x4.6", "1.78x5.28", "1.78x5.9"))
    # on 5.30: stretched 15 %, 0.4 %, loose 10 %
    assert next_trial(job, "head").sizes_mm == (pytest.approx(8.85, abs=0.02),)


def test_the_same_words_are_the_same_size_where_nothing_was_measured(job):
    trial = {"place": "section", "what": "As it was", "dry": "yes"}
    job.add("seal", "trial", {**trial, "happened": "pulls back"})
    assert passed_places(job) == {"section": True}
    job.add("seal", "trial", {**trial, "what": "as it WAS", "happened": "too stiff"})
    assert passed_places(job) == {"section": False}
    assert dry_fit_passed(job) is False


def test_what_held_and_is_not_listed_among_the_parts_is_the_newest(job):
    assert fitted_unlisted(job) is None
    for what, happened in (("sac 16", "too stiff"), ("sac 15", "pulls back")):
        job.add("seal", "trial", {"place": "sac", "what": what, "outside": "6 mm", "dry": "yes", "happened": happened})
    assert fitted_unlisted(job).what == "sac 15"
    job.add("work log", "material", {"what": "Latex SAC 15, cut to 52 mm", "way": "added"})
    assert fitted_unlisted(job) is None
    job.add(
        "seal", "trial", {"place": "sac", "what": "sac 15", "outside": "6 mm", "dry": "yes", "happened": "too stiff"}
    )
    job.add(
        "seal", "trial", {"place": "head", "what": "ring", "outside": "8 mm", "dry": "no", "happened": "pulls back"}
    )
    assert fitted_unlisted(job) is None, "what holds no more, or was not dry, has not been fitted"
