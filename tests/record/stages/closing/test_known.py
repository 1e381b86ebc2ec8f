"""What another stage has on record is not asked again."""

from record.stages.closing.pens import tick, up_to

from pentools.record.stages.closing.known import body_of, known_conditions, known_steps
from pentools.record.stages.closing.work import closing_of


def state(job, key):
    return closing_of(job).step(key).state


def test_a_sac_that_was_tried_dry_and_sealed_is_known(job):
    assert known_steps(job) == {}
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "cleaned": "yes"})
    assert state(job, "cleared") == "done"
    job.add("seal", "trial", {"place": "sac", "what": "16", "dry": "yes", "happened": "too stiff"})
    assert "sac-cut" not in known_steps(job)
    job.add("seal", "trial", {"place": "sac", "what": "15", "dry": "yes", "happened": "pulls back"})
    assert state(job, "sac-cut") == "done"
    job.add("seal", "sealant", {"place": "sac", "sealant": "shellac"})
    assert state(job, "sac-on") == "untested"
    job.add("seal", "test", {"test": "press", "press_seen": "bubbles stop"})
    assert state(job, "sac-on") == "done"


def test_what_closing_says_itself_goes_before(job):
    job.add("seal", "sealant", {"place": "sac", "sealant": "shellac"})
    assert state(job, "sac-on") == "untested"
    job.add("closing", "step", {"step": "sac-on", "outcome": "failed", "happened": "it crept"})
    assert state(job, "sac-on") == "failed"


def test_a_night_before_the_pen_was_closed_says_nothing_of_how_it_is_closed(job):
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert state(job, "rested") == "early"
    up_to(job, "rested")
    assert state(job, "rested") == "open"
    job.add("fill test", "leak check", {"rested": "2 h", "dry": "yes"})
    assert state(job, "rested") == "open"
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "no", "damp": "lever slot"})
    assert state(job, "rested") == "failed"
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert state(job, "rested") == "done"


def test_two_fillings_are_the_wet_test_and_one_is_not(job):
    up_to(job, "wet-tested")
    for empty, full in (("14.00 g", "15.00 g"), ("14.10 g", "15.01 g")):
        assert state(job, "wet-tested") == "open"
        job.add("fill test", "weighing", {"state": "drained", "mass": empty})
        job.add("fill test", "weighing", {"state": "filled", "mass": full})
    assert state(job, "wet-tested") in ("done", "untested")
    assert known_steps(job)["wet-tested"].by == "two fillings weighed (Fill test)"


def test_fillings_before_it_was_opened_do_not_count(job):
    for empty, full in (("14.00 g", "15.00 g"), ("14.10 g", "15.01 g")):
        job.add("fill test", "weighing", {"state": "drained", "mass": empty})
        job.add("fill test", "weighing", {"state": "filled", "mass": full})
    up_to(job, "wet-tested")
    assert state(job, "wet-tested") == "open"


def test_conditions_that_the_record_shows(job):
    assert known_conditions(job) == {"sealant-suits"}
    job.add("clean", "drying", {"hours": "24 h", "part": "feed"})
    job.add("open", "met", {"condition": "tool-fits", "how": "own make"})
    job.add("open", "met", {"condition": "thread-direction-known", "how": "seen under the loupe"})
    job.add("open", "step", {"number": "1", "did": "Pictures and measures."})
    assert known_conditions(job) == {"sealant-suits", "clean-dry", "tool-fits", "turn-known", "knob-turn-known", "pictured"}  # fmt: skip
    job.add("seal", "trial", {"place": "sac", "what": "15", "dry": "yes", "happened": "pulls back"})
    assert "seal-made" in known_conditions(job)


def test_shellac_does_not_suit_what_never_takes_it_nor_what_is_not_named(job):
    for material in ("lacquer", "perhaps celluloid"):
        job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": material})
        assert "sealant-suits" not in known_conditions(job), material
    assert body_of(job) == ("unknown",)


def test_ticks_of_another_system_are_left_alone(job):
    tick(job, ["pump-in"], ["pump-in"])
    assert all(step.state != "done" for step in closing_of(job).steps)
