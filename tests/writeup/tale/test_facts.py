"""The small table of facts and the methods: what is known, once, from public fields."""

from writeup.samples import LEAD, sample

from pentools.writeup.tale.facts import MOST_FACTS, facts, method_sentences


def test_facts_of_a_finished_job(small_job):
    found = dict(facts(small_job))
    assert list(found) == ["Draws now", "At rest", "Work", "On the bench", "Result"]
    assert found["Draws now"] == "1.28\u202fmL ± 0.05"
    assert found["Work"] == "1\u202fh 30\u202fmin"
    assert found["On the bench"] == "14\u00a0March 2026 to 28\u00a0March 2026"
    assert found["Result"] == "Done with limits: cap left alone"
    assert len(found) <= MOST_FACTS


def test_what_was_told_is_not_told_again(small_job):
    left = dict(facts(small_job, {"draws", "time"}))
    assert "Draws now" not in left
    assert "Work" not in left
    # nor what the description of the pen says: it is a green piston filler
    assert "Fills by" not in left
    small_job.add("intake", "arrival", {"pen": "green pen", "system": "piston", "material": "celluloid"})
    assert dict(facts(small_job))["Fills by"] == "Piston filler"
    assert dict(facts(small_job))["Made of"] == "Celluloid"


def test_what_it_writes_is_a_fact_and_of_nine_the_dates_go(small_job):
    small_job.add("nib", "writing test", {"when": "after", "ink": "a blue ink", "paper": "pad paper", "wetness": "wet"})
    assert dict(facts(small_job))["Writes"] == "A wet line on pad paper, with a blue ink."
    small_job.add(
        "intake", "arrival", {"pen": "pen", "system": "piston", "material": "celluloid", "arrived_on": "2026-03-14"}
    )
    small_job.add(
        "identify",
        "evidence",
        {
            "feature": "clip",
            "dates": "1936/1942",
            "evidence_kind": "production",
            "certainty": "likely",
            "part_state": "original",
        },
    )
    found = dict(facts(small_job))
    assert len(found) == MOST_FACTS
    assert "On the bench" not in found
    assert list(found)[-1] == "Result"


def test_an_open_job_is_not_called_done(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "arrived_on": "2026-03-14"})
    assert facts(job) == (("On the bench", "Since 14\u00a0March 2026"), ("Result", "The work is not finished"))


def test_methods_say_what_applies():
    text = " ".join(method_sentences(sample(LEAD)))
    assert "mL/g" in text
    assert "95\u202f%" in text
    assert "care" not in text
    assert "licensed" not in text  # nothing was heated, mixed, sanded or shellacked
    heated = " ".join(method_sentences(sample("mixed-dates")))
    assert "Nitrate fire: it burns very fast" in heated
    assert heated.count("Follow local codes; ask a licensed professional.") == 1
    assert heated.endswith("Follow local codes; ask a licensed professional.")
    assert "mL/g" not in " ".join(method_sentences(sample("casein-returned")))
