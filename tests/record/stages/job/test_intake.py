"""Intake: what is still to ask is named, and what was asked is asked no more."""

from pentools.record.stages.job.intake import may_publish


def topics(job):
    return [(f.level, f.topic) for f in job.stage("intake").checks(job)]


def test_the_state_names_what_is_still_to_ask(new_job):
    job = new_job()
    stage = job.stage("intake")
    assert stage.state_of(job).word == "not begun"
    entries = (
        ("owner", {"owner": "Adela Quist"}),
        ("arrival", {"pen": "a pen"}),
        ("request", {"asked": "mend it"}),
    )
    for number, (kind, texts) in enumerate(entries, 1):
        job.add("intake", kind, texts)
        state = stage.state_of(job)
        assert state.word == ("done" if number == 3 else "open")
        assert len(state.reason.split(", ")) == (3 - number or 1)


def test_whether_the_story_may_be_published_is_said_to_be_open_until_it_was_asked(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist"})
    assert ("note", "not-asked-to-publish") in topics(job)
    assert not may_publish(job)
    yes = {"to": "heat", "not_to": "publish", "answered_on": "2026-03-14", "channel": "letter"}
    job.add("agree", "yes", yes)
    assert ("note", "not-asked-to-publish") not in topics(job)
    assert not may_publish(job)


def test_mass_and_system_are_asked_for_once_a_pen_arrived(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    assert {("note", "arrival-mass"), ("warning", "system-missing")} <= set(topics(job))
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "mass_g": "16.42 g"})
    assert not {"arrival-mass", "system-missing"} & {topic for _, topic in topics(job)}
