"""Intake: what is still to ask is named, and what was asked is asked no more."""

from pentools.record.stages.job.intake import may_publish


def topics(job):
    return [(f.level, f.topic) for f in job.stage("intake").checks(job)]


def test_the_state_names_what_is_still_to_ask(new_job):
    job = new_job()
    stage = job.stage("intake")
    assert stage.state_of(job).word == "not begun"
    assert topics(job) == [("warning", "intake-missing")] * 4
    entries = (
        ("owner", {"owner": "Adela Quist"}),
        ("arrival", {"pen": "a pen"}),
        ("request", {"asked": "mend it"}),
        ("consent", {"publish": "no"}),
    )
    for number, (kind, texts) in enumerate(entries, 1):
        job.add("intake", kind, texts)
        state = stage.state_of(job)
        assert state.word == ("done" if number == 4 else "open")
        assert len(state.reason.split(", ")) == (4 - number or 1)
        assert topics(job).count(("warning", "intake-missing")) == 4 - number
    assert not may_publish(job)


def test_mass_and_system_are_asked_for_once_a_pen_arrived(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    assert {("note", "arrival-mass"), ("warning", "system-missing")} <= set(topics(job))
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "mass_g": "16.42 g"})
    assert not {"arrival-mass", "system-missing"} & {topic for _, topic in topics(job)}
