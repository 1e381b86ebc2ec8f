"""Texts compared with what is not for everybody: found however it is written, and quiet where nothing is."""

import pytest

from pentools.record.stages.job.intake_kinds import PASSED
from pentools.record.strangers import found_in, is_ordinary, ordinary_words, passed_over

NOTE = "The widow does not wish her late husband named, so nothing of the regiment either."


@pytest.fixture
def job(new_job):
    made = new_job()
    made.add(
        "intake",
        "owner",
        {
            "owner": "Adela Quist-Müller",
            "address": "Mill Lane 4, 00417 Harrowmere",
            "contact": "adela.q77@weir.example, +44 1632 960123",
        },
        note=NOTE,
    )
    made.add("work log", "material", {"what": "cork", "way": "added", "lot": "K-2231/b, sheet 3"})
    return made


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("It is Quist's pen.", "Quist"),
        ("It is Quist’s pen.", "Quist"),
        ("the Quists’ pen", "Quists"),
        ("ADELA", "ADELA"),
        ("A. QUIST-MÜLLER", "QUIST-MÜLLER"),
        ("frau mueller", "mueller"),
        ("Muller", "Muller"),
        ("quist_before.jpg", "quist"),
        ("QuistBefore2.jpg", "QuistBefore2"),
        ("quist2", "quist2"),
        ("#AdelaQuist", "AdelaQuist"),
        ("Qu\u00adi\u200bst", "Quist"),
        ("Qu**ist**", "Quist"),
        ("Adela Quist came", "Adela Quist"),
        ("adela.q77@weir.example", "adela.q77@weir.example"),
        ("adela.q77 (at) weir (dot) example", "adela.q77 (at) weir (dot) example"),
        ("ask adela.q77", "adela.q77"),
        ("call 01632 960 123", "01632 960 123"),
        ("call +44(0)1632/960-123", "44(0)1632/960-123"),
        ("0044 1632960123", "0044 1632960123"),
        ("960 123", "960 123"),
        ("in mill lane", "mill lane"),
        ("in Mill Ln. 7", "Mill Ln"),
        ("sent to Harrowmere", "Harrowmere"),
        ("00417", "00417"),
        ("lot K 2231 b sheet 3", "K 2231 b sheet 3"),
        ("her late husband named, so nothing", "her late husband named, so nothing"),
    ],
)
def test_it_is_found_however_it_is_written(job, text, word):
    assert [found.word for found in found_in(job, text)] == [word]


@pytest.mark.parametrize(
    "text",
    [
        "Quistel, Inquist and mullered",
        "the mill in the lane",
        "4 mm, 12.31 mm and 00418",
        "in 1632, for 960 hours",
        "The widow of it all",
        "It does not leak, so nothing was done to it.",
        "a sheet of cork 3 mm thick",
        "Turned a new cork and waxed it, then a dry fit for 24 h at 21 °C.",
    ],
)
def test_what_only_resembles_it_is_left_alone(job, text):
    assert found_in(job, text) == ()


def test_parts_of_a_name_side_by_side_are_one_and_the_same_words_stand_once(job):
    found = found_in(job, "Adela Quist came. " + "The pen is Quist’s. " * 3)
    assert (found[0].word, found[0].about) == ("Adela Quist", "the owner’s name")
    assert len(found) == len({one.around for one in found}) <= 4


def test_a_name_of_two_letters_only_as_typed(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Bo Li"})
    assert [found.word for found in found_in(job, "Bo wrote. li bo BO")] == ["Bo"]


def test_a_name_in_a_script_without_spaces(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "佐藤"})
    assert len(found_in(job, "これは佐藤さんの万年筆です")) == 1


def test_a_plural_written_small_of_an_ordinary_word_is_no_name(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Anna Mark"})
    assert {"mark", "may", "green", "celluloid"} <= ordinary_words()
    assert found_in(job, "two marks on the nib") == ()
    assert [found.word for found in found_in(job, "a mark; the Marks’ pen")] == ["mark", "Marks"]


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


def test_texts_of_thousands_of_words_and_letters_are_compared_(new_job):
    """A pattern that looked again from every letter would not come to an end here."""
    job, many = new_job(), " ".join(f"w{number}ord" for number in range(5_000))
    long = {"owner": "Q" * 20_000, "address": "x" * 20_000, "contact": "y" * 20_000 + " 1" * 20_000}
    job.add("intake", "owner", long, note=f"{many} {'z' * 20_000}")
    assert len(found_in(job, many)) == 1
    assert found_in(job, "x" * 100_000 + " 1" * 50_000 + "a." * 20_000 + "@" * 20_000) != ()
