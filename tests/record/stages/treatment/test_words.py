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


def test_a_limit_is_told_in_words_or_numbers_else_a_dash(job):
    arrive(job, "casein")
    rows = {row[1]: row for row in limits_table(job)}
    assert rows["cold water soak"][:4] == (
        "Cap, barrel: casein",
        "cold water soak",
        "never",
        "no bath: a damp wipe of at most a minute",
    )
    assert (rows["ultrasonic"][2:4], rows["ultrasonic"][4]) == (("never", "–"), "it is a water bath")
    assert rows["ultrasonic"][5].endswith(": read in the source")
    overruled = {"material": "casein", "treatment": "dry heat", "verdict": "limited", "reason": "thin", "most_warmth": "45 °C", "most_minutes": "2 min"}  # fmt: skip
    job.add("open", "overrule", overruled)
    assert {row[1]: row[3] for row in limits_table(job)}["dry heat"] == "2 min; 45 °C"


def test_the_sentence_goes_from_a_name_to_the_last_step(job):
    assert opening_sentence(job).startswith("Nothing is named yet")
    job.add("open", "material", {"part": "barrel", "material": "casein"})
    assert opening_sentence(job) == "Say how it fills, at intake."
    arrive(job, "casein")
    assert opening_sentence(job).startswith("Next, step 1: whole pen. Picture it from all sides")
    job.add("open", "step", {"number": "1", "did": "Pictures."})
    job.add("open", "step", {"number": "2", "did": "Rinsed."})
    job.add("open", "step", {"number": "3", "did": "Lifted."})
    job.add("open", "step", {"number": "4", "did": "Looked."})
    waits = "It waits until this is so: The owner agreed to heat."
    assert opening_sentence(job).startswith("Next, step 5: section joint.")
    assert waits in opening_sentence(job)
    job.add("open", "heat pass", {"joint": "section", "surface": "50 °C", "free": "no"})
    assert opening_sentence(job).startswith("Section and barrel, casein")
    job.add("open", "heat pass", {"joint": "section", "surface": "50 °C", "free": "yes"})
    assert opening_sentence(job).startswith("Next, step 5")
    for number in range(5, 10):
        job.add("open", "step", {"number": str(number), "did": "x"})
    assert opening_sentence(job) == "It is apart as far as the order of work goes."


def test_what_came_of_it(job):
    assert what_came_of_it(job) == ""
    arrive(job, "casein")
    assert what_came_of_it(job) == "What it is made of was told apart: casein."
    job.add("open", "step", {"did": "Looked at the joint."})
    assert what_came_of_it(job) == "It stayed closed."
    job.add("open", "step", {"did": "Unscrewed the cap top.", "came_off": "cap top"})
    assert what_came_of_it(job) == "It came apart in 2 steps."
    job.add("open", "heat pass", {"joint": "section", "surface": "40 °C"})
    job.add("open", "step", {"did": "Looked again.", "number": "3"})
    job.add("open", "step", {"did": "And again.", "number": "3"})
    assert what_came_of_it(job) == "It came apart in 3 steps, with 1 heating."
    job.add("open", "heat pass", {"joint": "section", "broke": "a crack at the mouth"})
    assert what_came_of_it(job) == "It came apart in 3 steps, with 2 heatings; something broke, as told below."
