"""Opening in words: the window, the table of limits, and what came of it."""

from record.stages.treatment.pens import arrive

from pentools.record.stages.treatment.facts import (
    limit_for,
)
from pentools.record.stages.treatment.heat import joint_heat
from pentools.record.stages.treatment.words import limits_table, opening_sentence, what_came_of_it


def test_an_overrule_holds_with_its_reason_and_the_table_stays_in_sight(job):
    arrive(job, "casein")
    assert limit_for(job, "barrel", "cold water soak").verdict == "never"
    job.add(
        "open", "overrule",
        {"material": "casein", "treatment": "cold water soak", "verdict": "limited", "reason": "a damp swab for seconds", "most_minutes": "0.5 min"},
    )  # fmt: skip
    limit = limit_for(job, "barrel", "cold water soak")
    assert (limit.verdict, limit.max_minutes, limit.overruled.verdict) == ("limited", 0.5, "never")
    assert any("limited (the table: never)" in row for row in limits_table(job))
    assert limit_for(job, "barrel", "flush mix soak").verdict == "never"


def test_the_window_has_a_sign_and_a_size(job):
    arrive(job)
    job.add("open", "joint", {"joint": "section", "sealant": "shellac"})
    sentence = opening_sentence(job)
    assert sentence.startswith(
        "Section and barrel, celluloid with shellac: no margin; warm to at most 60 °C, 15 °C short of fully soft"
    )
    assert joint_heat(job, "section").sources


def test_what_came_of_it(job):
    assert what_came_of_it(job) == ""
    arrive(job, "casein")
    assert what_came_of_it(job) == "It was not opened; what it is made of was told apart: casein."
    job.add("open", "step", {"did": "Looked at the joint."})
    assert what_came_of_it(job) == "It stayed closed, with no heat; nothing broke."
    job.add("open", "step", {"did": "Unscrewed the cap top.", "came_off": "cap top"})
    assert what_came_of_it(job) == "It came apart in 2 steps, with no heat; nothing broke."
    job.add("open", "heat pass", {"joint": "section", "broke": "a crack at the mouth"})
    assert what_came_of_it(job) == "It came apart in 2 steps, with 1 heating; something broke, as told below."
