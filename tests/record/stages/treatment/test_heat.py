"""Heat at a joint: what is warmed, how far, and the sealant nobody named."""

import datetime as dt

from record.stages.treatment.pens import after, arrive

from pentools.record.entries import new_entry
from pentools.record.stages.treatment.heat import heated_joints, joint_body, joint_heat, stop_count
from pentools.units import Reading


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


def test_of_several_materials_the_joint_is_warmed_for_the_one_that_gives_way_first(job):
    arrive(job, "hard rubber")
    assert joint_body(job, "other") == "hard rubber"
    job.add("open", "material", {"part": "section", "material": "celluloid"})
    assert joint_body(job, "other") == "celluloid"  # at most 60 °C, against 70 °C
    arrive(job, "ABS")
    job.add("open", "material", {"part": "section", "material": "casein"})
    assert joint_body(job, "other") == "casein"  # at most 60 °C, against 70 °C
    job.add("open", "material", {"part": "feed", "material": "blue stuff"})
    assert joint_body(job, "other") == "unknown"


def warm(job, at, surface, joint="section", **more):
    reading = Reading(surface, "degC").as_json()
    job.record.append(new_entry("open", "heat pass", {"joint": joint, "surface": reading, **more}, at=at))


def test_the_stop_count_is_that_of_the_last_day_at_this_joint(job):
    arrive(job)
    assert joint_heat(job, "section") is None
    for minute, surface in enumerate((40.0, 44.0, 48.0)):
        warm(job, after(minute), surface)
    warm(job, after(3) + dt.timedelta(days=1), 52.0, moved="a quarter turn")
    warm(job, after(4) + dt.timedelta(days=1), 55.0, joint="clip", free=True)
    heat = joint_heat(job, "section")
    assert [one.surface_c for one in heat.passes] == [40, 44, 48, 52]
    assert [(one.surface_c, one.moved, one.broke, one.free) for one in heat.session] == [
        (52, "a quarter turn", "", False)
    ]
    assert joint_heat(job, "clip").session[0].free is True
    assert heat.log.left == stop_count()[0] - 1
    assert heated_joints(job) == ("clip", "section")


def test_celluloid_is_warmed_by_its_own_rule_of_shock(job):
    """Of nitrate the log says more than of a rubber that is warmed alike."""
    arrive(job)
    warm(job, after(0), 75.0)
    said = " ".join(f.text for f in joint_heat(job, "section").findings)
    arrive(job, "acrylic")
    assert " ".join(f.text for f in joint_heat(job, "section").findings) != said
