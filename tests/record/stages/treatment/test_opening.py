"""Opening from the record: the bench's own limit, heat that was held, and the tray."""

from record.stages.treatment.pens import arrive

from pentools.record.holds import passed_by
from pentools.record.stages.treatment.heat import joint_heat
from pentools.record.stages.treatment.opening import opening_findings


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


def test_heat_logged_although_held_is_named(job):
    job.add("open", "heat pass", {"joint": "section", "surface": "50 °C"})
    assert any(f.topic == "heat-held" for f in passed_by(job))


def test_parts_that_came_off_want_a_tray(job):
    arrive(job)
    job.add("open", "step", {"number": "1", "did": "Pictures", "came_off": "clip screw"})
    assert [f.topic for f in job.stage("open").checks(job)] == ["tray"]
    job.add("open", "parts tray", {"items": "clip screw", "all_there": "yes"})
    assert job.stage("open").checks(job) == ()
