"""The seal stage: what it finds odd, where it stands, the gate for sealant."""

from record.stages.seal.pens import WASHER, try_washer

from pentools.record.holds import held
from pentools.record.stages.seal.sealing import SEAL, fit_words, seal_findings


def test_the_gate_stands_in_the_jobs_hold_points(job):
    assert "dry fit" in held(job, "sealant")
    try_washer(job, 8.5, "pulls back")
    assert held(job, "sealant") == ""


def test_states_say_what_is_next(job):
    assert SEAL.state_of(job).word == "not begun"
    job.add("seal", "measure", WASHER)
    assert SEAL.state_of(job).reason == "nothing was tried dry yet"
    try_washer(job, 8.4, "no touch")
    assert SEAL.state_of(job).reason == "no dry fit yet: washer on the head"
    try_washer(job, 8.5, "pulls back")
    assert SEAL.state_of(job).reason == "dry fit passed; the tests are still to do"


def test_words_of_the_trials(job):
    assert fit_words(job, "washer") == ""
    try_washer(job, 8.5, "pulls back", dry="no")
    assert fit_words(job, "washer") == "The washer on the head was tried, but not dry."
    try_washer(job, 8.3, "no touch")
    assert (
        fit_words(job, "washer")
        == "The washer on the head does not hold yet: 1 size tried, the last: washer 8.3 (no touch)."
    )
    try_washer(job, 8.4, "slides, no suction")
    assert "2 sizes tried, the last: washer 8.4 (slides, no suction)" in fit_words(job, "washer")
    try_washer(job, 8.6, "pulls back")
    assert fit_words(job, "washer") == "The washer on the head holds dry: washer 8.6, after two that did not do."


def test_a_fit_at_the_first_trial_is_told_as_that(job):
    try_washer(job, 8.6, "pulls back")
    assert fit_words(job, "washer") == "The washer on the head holds dry: washer 8.6, at the first trial."


def topics(job):
    return [f.topic for f in seal_findings(job)]


def test_findings_gravest_first_and_only_what_is_odd(job):
    assert topics(job) == []
    try_washer(job, 8.5, "slides, no suction")
    assert topics(job) == ["dry-fit"]
    try_washer(job, 8.6, "pulls back")
    assert topics(job) == ["no-test"]
    job.add("seal", "test", {"test": "overnight", "overnight_seen": "dry"})
    assert topics(job) == []
    for test, seen in (("shaft", "bubbles"), ("overnight", "at the rod's end"), ("spring-back", "none")):
        job.add("seal", "test", {"test": test, f"{test.replace('-', '_')}_seen": seen})
    assert topics(job) == ["suspect"]
    assert seal_findings(job)[0].level == "warning"


def test_contradicting_trials_are_told(job):
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.4, "too stiff")
    try_washer(job, 8.6, "no touch")
    assert topics(job).count("contradiction") == 1


def test_sealed_but_never_tested_is_told_and_no_sealant_is_no_seal(job):
    job.add("seal", "sealant", {"sealant": "none", "place": "section"})
    assert topics(job) == []
    job.add("seal", "sealant", {"sealant": "shellac", "place": "section"})
    assert topics(job) == ["no-test"]


def test_a_silicone_sac_on_shellac_alone_is_told(job):
    job.add("seal", "measure", {"place": "sac", "material": "silicone", "bore": "8 mm", "nipple": "6.6 mm"})
    job.add("seal", "sealant", {"sealant": "shellac", "place": "sac"})
    assert "shellac-silicone" in topics(job)
    job.add("seal", "sealant", {"sealant": "thread", "place": "sac"})
    assert "shellac-silicone" not in topics(job)
    job.add("seal", "measure", {"place": "sac", "material": "latex", "bore": "8 mm", "nipple": "6.6 mm"})
    assert "shellac-silicone" not in topics(job)


def test_the_stage_is_done_only_when_two_tests_clear_it(job):
    try_washer(job, 8.6, "pulls back")
    job.add("seal", "test", {"test": "overnight", "overnight_seen": "dry"})
    assert SEAL.state_of(job).reason == "the tests do not clear it yet"
    job.add("seal", "test", {"test": "capped", "capped_seen": "dry"})
    assert (SEAL.state_of(job).word, SEAL.state_of(job).reason) == ("done", "nothing wrong in 2 tests")
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "bubbles"})
    assert SEAL.state_of(job).word == "open"
