"""What is known before a hand is laid on: one answer for every hold, limits part by part, cautions."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.holds import held, job_facts
from pentools.record.job import create_job
from pentools.record.stages.treatment.facts import (
    all_materials,
    cautions_of,
    cautions_read,
    limit_for,
    material_is_named,
    material_words,
    materials_of,
    named_materials,
)

NOT_NAMED = [
    "perhaps celluloid", "probably casein", "maybe hard rubber", "plastic", "blue stuff", "celluloid?", "celluloid or acrylic",
    "might be acrylic", "looks like celluloid", "some resin", "black material", "unknown", "not sure: casein", "celluloid-like", "resin",
]  # fmt: skip


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("finish", "consent to polish", {"agreed": "yes"})
    job.add("finish", "masks on", {"masks": "yes"})
    return job


def arrive(job, material):
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": material})


def holds(job):
    return {key for key in ("heat", "soak", "polish") if "not named" in held(job, key)}


@pytest.mark.parametrize("text", NOT_NAMED)
def test_what_is_not_named_is_held_for_heat_soak_and_polish_alike(job, text):
    assert holds(job) == {"heat", "soak", "polish"}
    arrive(job, text)
    assert holds(job) == {"heat", "soak", "polish"}
    assert not material_is_named(job)
    assert limit_for(job, "barrel", "cold water soak").verdict == "never"
    job.add("open", "material", {"part": "barrel", "material": text})
    assert holds(job) == {"heat", "soak", "polish"}
    job.add("open", "material", {"part": "barrel", "material": "celluloid", "sure": "no"})
    assert holds(job) == {"heat", "soak", "polish"}
    job.add("open", "material", {"part": "barrel", "material": "celluloid", "sure": "yes"})
    assert holds(job) == set()


def test_another_part_does_not_name_the_barrel(job):
    arrive(job, "plastic")
    job.add("open", "material", {"part": "section", "material": "ebonite"})
    job.add("open", "material", {"part": "nib", "material": "gold"})
    assert set(named_materials(job)) == {"hard rubber", "gold nib"}
    assert holds(job) == {"heat", "soak", "polish"}
    assert (material_is_named(job, "section"), material_is_named(job, "barrel"), material_is_named(job, "whole")) == (True, False, False)  # fmt: skip
    assert job_facts(job).material_named is False


def test_a_name_at_intake_stands_for_cap_barrel_and_blind_cap_only(job):
    arrive(job, "Black chased hard rubber")
    assert {part for part in ("cap", "barrel", "blind-cap", "section", "feed", "nib", "seals", "filler") if material_is_named(job, part)} == {"cap", "barrel", "blind-cap"}  # fmt: skip
    assert material_is_named(job, "whole")
    assert holds(job) == set()


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Green marbled celluloid", "celluloid"), ("ebonite", "hard rubber"), ("red hard rubber", "coloured hard rubber"),
        ("faded ebonite", "faded hard rubber"), ("perhaps celluloid", "unknown"), ("casein?", "unknown"), ("wood", "unknown"),
        ("green hard rubber", "unknown"), ("crazed celluloid", "degrading celluloid"), ("sweating celluloid", "degrading celluloid"), ("", "unknown"),
    ],
)  # fmt: skip
def test_words_for_materials_never_read_kinder_than_they_are(text, name):
    assert material_words(text)[0] == name


def test_the_newest_word_on_a_part_counts(job):
    arrive(job, "celluloid")
    assert materials_of(job, "barrel") == ("celluloid",)
    job.add("open", "material", {"part": "section", "material": "ebonite", "sure": "no"})
    assert materials_of(job, "section") == ("unknown",)
    job.add("open", "material", {"part": "section", "material": "ebonite", "sure": "yes"})
    job.add("open", "material", {"part": "barrel", "material": "casein"})
    assert materials_of(job, "section") == ("hard rubber",)
    assert materials_of(job, "barrel") == ("casein",)
    assert set(materials_of(job, "whole")) == {"celluloid", "casein", "hard rubber"}
    assert [(part, name) for part, name, _ in all_materials(job)] == [("cap", "celluloid"), ("barrel", "casein"), ("section", "hard rubber")]  # fmt: skip
    assert ("cap", "celluloid", "as the intake says") in all_materials(job)


def test_the_blind_cap_is_asked_of_the_whole_only_where_it_was_named(job):
    for part in ("cap", "barrel"):
        job.add("open", "material", {"part": part, "material": "casein"})
    assert materials_of(job, "whole") == ("casein",)
    assert materials_of(job, "blind-cap") == ("unknown",)
    job.add("open", "material", {"part": "blind-cap", "material": "ebonite"})
    assert materials_of(job, "whole") == ("casein", "hard rubber")


def test_gold_is_a_name_on_the_nib_only(job):
    job.add("open", "material", {"part": "nib", "material": "gold"})
    job.add("open", "material", {"part": "clip", "material": "gold"})
    assert (materials_of(job, "nib"), materials_of(job, "clip")) == (("gold nib",), ("unknown",))


def test_the_whole_pen_takes_what_its_weakest_part_takes(job):
    arrive(job, "celluloid")
    job.add("open", "material", {"part": "section", "material": "ebonite"})
    assert limit_for(job, "section", "cold water soak").max_minutes == 30
    assert limit_for(job, "whole", "cold water soak").max_minutes == 15


def test_the_bench_may_overrule_also_for_a_nib_of_gold(job):
    arrive(job, "celluloid")
    job.add("open", "material", {"part": "nib", "material": "gold"})
    job.add("open", "overrule", {"material": "gold", "treatment": "flush mix soak", "verdict": "never", "reason": "ours never see it"})  # fmt: skip
    limit = limit_for(job, "nib", "flush mix soak")
    assert (limit.verdict, limit.overruled.verdict) == ("never", "limited")
    assert limit_for(job, "barrel", "flush mix soak").overruled is None


def test_cautions_come_unread_first_and_of_every_material_while_none_is_named(job):
    unnamed = {caution.key for caution in cautions_of(job, ("dry heat",))}
    assert {"nitrate-heat", "formaldehyde", "unknown-plastic"} <= unnamed
    arrive(job, "celluloid")
    keys = [caution.key for caution in cautions_of(job, ("dry heat",))]
    assert "formaldehyde" not in keys
    job.add("open", "caution read", {"caution": keys[0]})
    assert cautions_read(job) == {keys[0]}
    assert [caution.key for caution in cautions_of(job, ("dry heat",))] == [*keys[1:], keys[0]]
