"""Soaks paired with their ends, limits of part and bath, the mix and the drying clock."""

import pytest
from record.stages.treatment.pens import after, put, to_clean

from pentools.record.stages.treatment.baths import (
    bath_findings,
    baths_done,
    cleaning_findings,
    cleaning_sentence,
    drying_of,
    mix_of,
    running_soaks,
    soaks_of,
)
from pentools.units import Reading


@pytest.fixture
def job(job):
    return to_clean(job)


def test_a_soak_runs_until_its_part_comes_out(job):
    put(job, 0, "soak started", part="section", bath="flush mix soak")
    put(job, 5, "soak started", part="barrel", bath="cold water soak")
    assert [soak.part for soak in running_soaks(job)] == ["section", "barrel"]
    put(job, 12, "soak ended", part="barrel", came_out="brown water")
    barrel = soaks_of(job)[1]
    assert (barrel.minutes, barrel.came_out) == (7.0, "brown water")
    assert [soak.part for soak in running_soaks(job)] == ["section"]
    assert job.stage("clean").state_of(job).reason == "a soak is running"


def test_the_shorter_of_the_tables_limit_and_the_benchs_own_counts(job):
    put(job, 0, "soak started", part="barrel", bath="cold water soak")
    assert soaks_of(job)[0].limit_min == 15
    put(job, 0, "soak started", part="section", bath="flush mix soak", limit=Reading(10.0, "min").as_json())
    assert soaks_of(job)[1].limit_min == 10


def test_the_clock_that_is_due_first_leads(job):
    put(job, 0, "soak started", part="section", bath="cold water soak")
    put(job, 0, "soak started", part="barrel", bath="cold water soak")
    assert cleaning_sentence(job, after(5)).startswith("Barrel in cool water: 10 min left of 15. It comes out at ")
    assert cleaning_sentence(job, after(13)).startswith("Barrel in cool water: 2.0 min left")
    assert "5 min over its limit of 15 min" in cleaning_sentence(job, after(20))
    assert cleaning_findings(job, after(20))[0].level == "stop"


def test_a_soak_past_its_limit_stays_in_sight(job):
    put(job, 0, "soak started", part="barrel", bath="cold water soak")
    put(job, 40, "soak ended", part="barrel")
    [finding] = bath_findings(job)
    assert "40 min, 25 more than the limit of 15 min" in finding.text
    assert any(f.topic == "too-long" for f in job.stage("clean").checks(job))


def test_a_bath_the_table_forbids_is_named(job):
    put(job, 0, "bath", part="barrel", bath="ultrasonic", minutes=Reading(2.0, "min").as_json())
    [finding] = bath_findings(job)
    assert finding.text.startswith(
        "barrel in ultrasonic bath: it was done although the table says never, because warmth"
    )
    assert baths_done(job) == (("barrel", "ultrasonic", 2.0, ""),)


def test_drying_says_when_the_next_step_may_begin(job):
    put(job, 0, "drying", part="feed", hours=Reading(24.0, "h").as_json(), begun_ago=Reading(2.0, "h").as_json())
    [dry] = drying_of(job, after(0))
    assert dry.until == after(22 * 60)
    assert not dry.over
    assert "The feed dries until" in cleaning_sentence(job, after(0))
    assert drying_of(job, after(22 * 60))[0].over
    assert cleaning_sentence(job, after(22 * 60)).startswith("Nothing has been in a bath")


def test_the_mix_is_the_sums(job):
    assert mix_of(job) is None
    job.add("clean", "flush mix", {"ammonia": "5 %", "parts_water": "9"})
    # mass balance by hand: 0.05*0.977 / (0.977 + 9*0.998) = 0.0049
    assert mix_of(job).data["ammonia_percent_w_w"] == pytest.approx(0.49, abs=0.005)
    assert any(f.topic == "bleach" for f in cleaning_findings(job))


def test_an_end_belongs_to_the_last_running_soak_of_its_own_part(job):
    put(job, 0, "soak started", part="section", bath="cold water soak")
    put(job, 5, "soak started", part="section", bath="flush mix soak")
    put(job, 9, "soak ended", part="section", came_out="blue")
    put(job, 20, "soak ended", part="section", came_out="clear")
    put(job, 25, "soak ended", part="feed", came_out="never went in")
    assert [(s.bath, s.minutes, s.came_out) for s in soaks_of(job)] == [
        ("cold water soak", 20.0, "clear"),
        ("flush mix soak", 4.0, "blue"),
    ]
    put(job, 30, "bath", part="barrel", bath="cold water soak", minutes=Reading(3.0, "min").as_json())
    assert [(part, minutes) for part, _, minutes, _ in baths_done(job)] == [("barrel", 3.0), ("section", 20.0), ("section", 4.0)]  # fmt: skip


def test_of_parts_that_dry_the_newest_word_on_each_counts_and_the_last_to_dry_comes_last(job):
    put(job, 0, "drying", part="section", hours=Reading(24.0, "h").as_json())
    put(job, 0, "drying", part="feed", hours=Reading(12.0, "h").as_json())
    put(job, 60, "drying", part="feed", hours=Reading(48.0, "h").as_json())
    assert [(dry.part, dry.until) for dry in drying_of(job, after(60))] == [
        ("section", after(24 * 60)),
        ("feed", after(49 * 60)),
    ]
    assert "The feed dries until" in cleaning_sentence(job, after(60))
    assert [f.topic for f in cleaning_findings(job, after(30 * 60))] == ["drying"]
    assert cleaning_findings(job, after(49 * 60)) == ()


def test_what_must_not_be_soaked_has_no_time_to_come_out(job):
    job.add("open", "material", {"part": "barrel", "material": "casein"})
    put(job, 0, "soak started", part="barrel", bath="cold water soak")
    assert cleaning_sentence(job, after(0)).endswith("must not be soaked at all. Take it out and dry it now.")


def test_each_soak_keeps_its_own_strength(job):
    put(job, 0, "soak started", part="section", bath="flush mix soak", strength="1 + 9")
    put(job, 0, "soak started", part="nib", bath="flush mix soak", strength="1 + 19")
    put(job, 0, "soak started", part="feed", bath="cold water soak")
    assert [soak.strength for soak in soaks_of(job)] == ["1 + 9", "1 + 19", ""]


def test_the_baths_are_counted_when_all_is_over_and_dry(job):
    put(job, 0, "bath", part="section", bath="cold water soak")
    assert cleaning_sentence(job, after(1)) == "1 bath so far, all over and dry."
    put(job, 0, "bath", part="feed", bath="cold water soak", came_out="black")
    assert cleaning_sentence(job, after(1)) == "2 baths so far, all over and dry."
    assert baths_done(job) == (("section", "cold water soak", None, ""), ("feed", "cold water soak", None, "black"))


@pytest.mark.parametrize(("minutes", "faults"), [(15.0, 0), (15.1, 1)])
def test_a_bath_just_within_its_limit_is_no_fault(job, minutes, faults):
    put(job, 0, "bath", part="barrel", bath="cold water soak", minutes=Reading(minutes, "min").as_json())
    assert len(bath_findings(job)) == faults


def test_what_another_program_left_half_filled_is_passed_by(job):
    put(job, 0, "drying", part="feed")
    put(job, 0, "drying", hours=Reading(24.0, "h").as_json())
    put(job, 0, "bath", part="feed")
    put(job, 0, "soak started", bath="cold water soak")
    assert (drying_of(job), baths_done(job), soaks_of(job)) == ((), (), ())


def test_a_soak_without_a_limit_is_the_last_that_is_asked_for(job):
    put(job, 0, "soak started", part="nib", bath="naphtha")
    put(job, 0, "soak started", part="barrel", bath="cold water soak")
    limits = {soak.part: soak.limit_min for soak in running_soaks(job)}
    assert limits["barrel"] == 15
    assert cleaning_sentence(job, after(1)).startswith(
        "Barrel in cool water" if limits["nib"] is None else "Nib in naphtha"
    )
    assert job.stage("clean").state_of(job).reason == "2 soaks are running"
