"""What was found in a text for everybody: whether it is an ordinary word, and whether a reason was given to show it."""

import pytest

from pentools.record.stages.job.intake_kinds import PASSED
from pentools.record.strangers import found_in, is_ordinary, own_fields, passed_over, strangers_found


@pytest.fixture
def job(new_job):
    made = new_job()
    made.add("intake", "owner", {"owner": "Adela Quist-Müller"})
    return made


def test_a_field_for_everybody_is_named_by_its_place_once_publication_is_agreed(job):
    job.add("condition", "part", {"part": "cap", "seen": "Adela’s cap is whole.", "severity": "0"})
    assert [own.place for own in own_fields(job) if "Adela" in own.text] == ["Condition: one part, What is seen"]
    assert strangers_found(job) == ()
    job.add("intake", "consent", {"publish": "yes"})
    assert [(f.values["place"], f.values["word"]) for f in strangers_found(job)] == [
        ("Condition: one part, What is seen", "Adela")
    ]
    job.add(PASSED.stage, PASSED.key, {"word": "Adela", "reason": "she wants it shown"})
    assert strangers_found(job) == ()


def test_ordinary_are_the_kits_words_and_the_pens_own_written_small(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Rosalind Burgundy Quist"})
    job.add("intake", "arrival", {"pen": "burgundy pen of Quist"})
    judged = {found.word: is_ordinary(job, found) for found in found_in(job, "burgundy, Quist; rosalind")}
    assert judged == {"burgundy": True, "Quist": False, "rosalind": False}


def passed(job, **said):
    job.add(PASSED.stage, PASSED.key, {"reason": "she wants it shown", **said})


def test_a_reason_covers_a_word_everywhere_at_a_place_or_among_its_words(job):
    one, other = (found_in(job, text)[0] for text in ("The pen of Quist is here.", "Quist wrote to me."))
    passed(job, word="Quist", around=one.around, place="story cell 1")
    assert passed_over(job, one, "story cell 9")
    assert not passed_over(job, other, "story cell 1")
    passed(job, word="quist", place="Story cell 2")
    assert passed_over(job, other, "story cell 2")
    assert not passed_over(job, other, "story cell 3")
    passed(job, word="Quist")
    assert passed_over(job, other, "story cell 3")
    assert not passed_over(job, found_in(job, "Adela")[0], "story cell 3")


def test_a_reason_can_be_taken_back(job):
    found = found_in(job, "Quist")[0]
    passed(job, word="Quist")
    job.withdraw(job.record.live(PASSED.stage, PASSED.key)[-1], "she changed her mind")
    assert not passed_over(job, found, "story cell 1")


def test_an_ordinary_word_written_small_is_passed_once_and_with_a_capital_asked_anew(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Anna Green"})
    first, second, capital = (found_in(job, text)[0] for text in ("a green pen", "and a green cap", "Mrs Green came"))
    passed(job, word="green", around=first.around, place="story cell 1")
    assert passed_over(job, second, "story cell 2")
    assert not passed_over(job, capital, "story cell 2")
