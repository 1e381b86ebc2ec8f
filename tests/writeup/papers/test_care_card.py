"""The care card: the restorer's words win and are put under their labels; the rest is what is usual, never against itself."""

import pytest

from pentools.record.stages.job.care import never_on
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.systems.registry import SYSTEMS
from pentools.tables import rows as table_rows
from pentools.writeup.papers.care_card import MOST_LINES, care_card, topics_of
from pentools.writeup.papers.sheet import SIZES_PT, type_size

MATERIALS = sorted({row["material"] for row in table_rows("compatibility")} | {"unknown"})


def lines(job):
    return {row.label: row.lines for row in care_card(job).rows}


def arrive(job, system, material):
    job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": material})


@pytest.mark.parametrize(
    ("sentence", "topics"),
    [
        ("Lift the lever all the way, and wait ten seconds.", ("filling",)),
        ("Flush with plain cool water when you change ink.", ("rinsing",)),
        ("Use water-based fountain pen ink only.", ("ink",)),
        ("If ink shows at the slot, send it.", ()),
        ("Wipe it with a damp cloth for seconds.", ("cleaning",)),
        ("Never soak it, and do not rinse it.", ("rinsing", "cleaning")),
        ("If it is not used, leave a little water in it.", ("resting",)),
        ("Keep it nib up when it is carried.", ("carrying",)),
        ("Close the cap with two fingers only.", ("keeping",)),
        ("It was my aunt's.", ()),
    ],
)
def test_what_a_sentence_is_about(sentence, topics):
    assert topics_of(sentence) == topics


def test_the_restorers_words_win_topic_by_topic_and_are_told_once(new_job):
    job = new_job()
    arrive(job, "lever-sac", "hard rubber")
    usual = lines(job)
    assert usual["Filling"][0] == "Nib in the ink: lever up, lever down, count to ten, then lift the nib out."
    assert "ages the rubber" in " ".join(usual["Rinsing"])
    care = "Lift the lever twice. Rinse it with boiled water, cooled. Speak to it kindly."
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "care": care, "follow_up": "Look at the lip", "promise_until": "2026-09-30"})  # fmt: skip
    told = lines(job)
    assert told["Filling"] == ("Lift the lever twice.",)
    assert told["Rinsing"] == ("Rinse it with boiled water, cooled.",)
    assert told["Also"] == ("Speak to it kindly.",)
    assert told["Ink"] == usual["Ink"]
    assert told["Outside"] == ("Never use hot water on it, and do not soak it.",)
    assert told["If something comes up"][0] == "Look at the lip."
    assert (
        told["If something comes up"][1].replace("\u00a0", " ") == "The work is answered for until 30 September 2026."
    )
    every = [line for found in told.values() for line in found]
    assert len(every) == len(set(every))


def test_no_ammonia_on_casein_and_latex_and_no_soak_of_hard_rubber(new_job):
    job = new_job()
    arrive(job, "lever-sac", "casein")
    assert lines(job)["Never"][0].startswith("Soaking, hot water, ammonia (it is in window cleaner)")
    assert "Never soak it" in " ".join(lines(job)["Outside"])
    arrive(job, "eyedropper", "hard rubber")
    assert "do not soak it" in " ".join(lines(job)["Outside"])


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_card_of_the_tables_is_short_whole_and_agrees_with_its_never(new_job, system, monkeypatch):
    job = new_job()
    arrive(job, system, "unknown")
    drawn = care_card(job).drawing
    monkeypatch.setattr("pentools.writeup.papers.care_card.pen_in_section", lambda _: drawn)  # drawn once, not 28 times
    for key, _ in SEALANTS:
        job.add("seal", "sealant", {"sealant": key, "place": "section"})  # the longest that can be
    for material in MATERIALS:
        arrive(job, system, material)
        card = care_card(job)
        told = [line for row in card.rows for line in row.lines]
        assert all(row.label and row.lines and all(row.lines) for row in card.rows), material
        assert 3 <= len(told) <= MOST_LINES, (material, len(told))
        assert len(told) == len(set(told)), material
        never = never_on(job)
        assert "bleach" in never, material
        words = " ".join(told).casefold()
        if "soaking" in never:
            assert "flush it with plain cool water" not in words, material
            assert "little water in it" not in words, material
        assert type_size(card, notice=True) >= SIZES_PT[2], material


def test_what_is_not_known_is_said_and_taken_strictly(new_job):
    job = new_job()
    arrive(job, "", "perhaps celluloid")
    card = care_card(job)
    assert (
        card.about == "Filling system not entered; the material is not known for sure, so the strictest advice holds."
    )
    assert card.drawing is None
    assert "Filling" not in lines(job)
    arrive(job, "piston", "celluloid")
    card = care_card(job)
    assert card.about == "Piston filler, celluloid."
    assert card.drawing is not None
    assert "piston filler" in card.drawing.alt


@pytest.mark.parametrize("ending", ["returned", "stopped"])
def test_a_pen_that_goes_home_unmended_is_not_to_be_filled(new_job, ending):
    job = new_job()
    arrive(job, "lever-sac", "casein")
    job.add("release", "result", {"ending": ending, "summary": "Too risky."})
    assert lines(job)["Filling"][0].startswith("It was not mended: do not fill it")
    assert "Ink" not in lines(job)
    assert "lever up" not in str(lines(job))
    job.add("release", "result", {"ending": ending, "summary": "Too risky.", "care": "Keep it dry in a drawer."})
    assert "Filling" not in lines(job)
    assert lines(job)["Keeping"] == ("Keep it dry in a drawer.",)
