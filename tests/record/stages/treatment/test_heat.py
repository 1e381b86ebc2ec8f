"""Heat at a joint: what is warmed, how far, and the sealant nobody named."""

from record.stages.treatment.pens import arrive

from pentools.record.stages.treatment.heat import joint_body, joint_heat


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
    job.add("open", "material", {"part": "feed", "material": "blue stuff"})
    assert joint_body(job, "other") == "unknown"
