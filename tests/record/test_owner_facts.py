"""What is known of the owner, of engraved names and of the bench's own texts: taken out of every line of the record."""

import pytest

from pentools.record.entries import new_entry
from pentools.record.owner_facts import engraving_shown, facts_of, is_engraved_name, mark_for_everybody
from pentools.record.stages.dating.kinds import MARK, Mark


@pytest.fixture
def job(new_job):
    return new_job()


def words(job, kind, about=""):
    return {" ".join(fact.words) for fact in facts_of(job) if fact.kind == kind and about in fact.about}


def test_the_parts_of_a_name_and_no_titles(job):
    job.add("intake", "owner", {"owner": "Dr. Adela M. Quist-Berg, née Sørholt (for her brother)"})
    parts = words(job, "name")
    assert {"adela", "quist", "berg", "sorholt", "soerholt", "adelaquist"} <= parts
    assert not {"dr", "nee", "for", "her", "brother", "m"} & parts


def test_a_name_may_be_a_word_of_the_stop_list_where_it_stands_last(job):
    job.add("intake", "owner", {"owner": "Anna Street"})
    assert "street" in words(job, "name")


def test_a_name_of_two_letters_is_kept_as_typed(job):
    job.add("intake", "owner", {"owner": "Bo Quist"})
    assert [fact.as_typed for fact in facts_of(job) if fact.words == ("bo",)] == ["Bo"]


@pytest.mark.parametrize(
    ("owner", "parts"),
    [
        ("Edmund Tollis <ed@tollis.example>", {"edmund", "tollis"}),
        ("Edmund Tollis [for his son]", {"edmund", "tollis"}),
        ("Edmund | Ada Tollis", {"edmund", "ada", "tollis"}),
        ("<b>Edmund</b> Tollis", {"edmund", "tollis"}),
        ("Jan van der Meerholt", {"jan", "meerholt", "vandermeerholt"}),
        ("王小明", {"王小明", "王小", "小明"}),
    ],
)
def test_a_name_is_taken_out_of_what_stands_around_it(job, owner, parts):
    job.add("intake", "owner", {"owner": owner})
    assert parts <= words(job, "name")
    assert not {"b", "for", "his", "son"} & words(job, "name")


def test_that_no_name_is_given_is_no_name(job):
    job.add("intake", "owner", {"owner": "owner (name withheld)"})
    assert words(job, "name") == set()


def test_the_domain_of_the_owners_mail_counts_and_not_that_of_one_in_a_remark(job):
    job.add("intake", "owner", {"owner": "Q", "contact": "ed@tollis.example"}, note="parts from shop@springs.example")
    assert "tollis example" in words(job, "mail", "after the @")
    assert "springs example" not in words(job, "mail")


def test_street_post_code_and_town_but_not_the_country(job):
    job.add(
        "intake", "owner", {"owner": "A. Quist", "address": "The Toll House\nMill Ln. 4\n00417 Harrowmere\nNorthland"}
    )
    assert {"toll house", "mill lane"} <= words(job, "words", "street")
    assert words(job, "words", "town") == {"harrowmere"}
    assert words(job, "words", "post code") == {"00417"}
    assert not [fact for fact in facts_of(job) if "northland" in fact.words]


def test_contact_gives_mail_telephone_tag_and_other_names(job):
    contact = "edda.m@marlowen.example, tel. +44 (0)1632 960 123, or @edda_pens; else by her brother Jon Weir"
    job.add("intake", "owner", {"owner": "E. Marlowen", "contact": contact})
    assert "edda m marlowen example" in words(job, "mail")
    assert "edda m" in words(job, "words")
    assert words(job, "telephone") == {"632960123"}
    assert "edda pens" in " ".join(words(job, "words")).replace("_", " ")
    assert {"jon", "weir"} <= words(job, "name", "contact")
    assert "tel" not in words(job, "name")


def test_a_corrected_and_a_withdrawn_name_still_count(job):
    first = job.add("intake", "owner", {"owner": "Adela Quist"})
    second = job.add("intake", "owner", {"owner": "Edda Marlowen"}, replaces=first.id)
    job.withdraw(second, "another pen altogether")
    assert {"quist", "marlowen"} <= words(job, "name")


def test_a_value_that_cannot_be_read_counts_by_its_text(job):
    job.record.append(new_entry("intake", "owner", {"owner": "Adela Quist", "may_decide": "perhaps"}))
    assert "quist" in words(job, "name")


def test_the_parcels_number_a_lot_and_another_workshop(job):
    job.add("posting", "parcel", {"carried": "insured", "sent_on": "2026-03-30", "number": "XQ48211 DE"})
    job.add("repairs", "repair", {"part": "clip", "method": "clip-tighten", "lot": "washers 20417"})
    job.add("repairs", "sent out", {"part": "nib", "work": "tipping", "sent_on": "2026-03-14", "whom": "Ostry of Weir"})
    assert words(job, "words", "number") == {"xq48211 de"}
    assert words(job, "words", "lot") == {"washers 20417"}
    assert {"ostry", "weir"} <= words(job, "name", "workshop")


def test_what_only_the_bench_or_the_owner_may_read(job):
    job.add("intake", "owner", {"owner": "Q", "private_note": "The divorce is not to be mentioned anywhere."})
    job.add(
        "condition",
        "part",
        {"part": "cap", "seen": "A crack.", "severity": "1"},
        note="Dropped it myself on Friday night.",
    )
    job.record.append(new_entry("later stage", "thing", {"text": "Something that nobody knows yet at all"}))
    runs = words(job, "run")
    assert "the divorce is not to be mentioned anywhere" in runs
    assert "dropped it myself on friday night" in runs
    assert "something that nobody knows yet at all" in runs
    assert not [run for run in runs if "crack" in run]


def test_what_only_the_owner_may_read_counts_too(job):
    job.add(
        "intake",
        "request",
        {"asked": "That it writes again.", "must_not": "Nobody is to touch the dent of the accident."},
    )
    job.add("work log", "departure", {"what": "The lever was straightened cold.", "why": "It jammed in the barrel."})
    runs = words(job, "run", "only the owner")
    assert {"nobody is to touch the dent of the accident", "it jammed in the barrel"} <= runs
    assert not [run for run in words(job, "run") if "writes again" in run]


def test_who_answers_for_the_owner_is_a_name_too(job):
    answer = {
        "action": "publish",
        "agreed": "yes",
        "answered_on": "2026-03-14",
        "channel": "letter",
        "by": "the owner's son, Ivo Tarn",
    }
    job.add("agree", "answer", answer)
    assert {"ivo", "tarn"} <= words(job, "name")
    assert not {"owner", "son", "the"} & words(job, "name")


@pytest.mark.parametrize(
    ("where", "text", "said", "personal"),
    [
        ("barrel, imprint", "PATENT PENDING", None, False),
        ("barrel, engraved by hand", "A. Quist 1948", None, True),
        ("cap band", "monogram AQ", None, True),
        ("barrel, engraved", "MODEL 2", False, False),
        ("clip", "AQ", True, True),
    ],
)
def test_a_mark_is_somebodys_name_as_said_or_as_its_words_say(where, text, said, personal):
    assert is_engraved_name(Mark(where=where, text=text, engraved_name=said)) is personal


def test_an_engraved_name_is_kept_back_until_the_owner_agrees(job):
    job.add("identify", "mark", {"where": "barrel, engraved", "text": "E. VOSS 1948"})
    mark = job.newest(MARK)
    assert "voss" in words(job, "name", "engraved")
    assert not mark_for_everybody(job, mark)
    job.add("intake", "consent", {"publish": "yes", "engraving": "yes"})
    assert engraving_shown(job)
    assert mark_for_everybody(job, mark)
    assert "voss" not in words(job, "name", "engraved")
    # the newest word counts, wherever it was said
    answer = {"action": "engraving", "agreed": "no", "answered_on": "2026-03-20", "channel": "letter"}
    job.add("agree", "answer", answer)
    assert not engraving_shown(job)


@pytest.mark.parametrize(
    "seen",
    [
        "Engraved “E. Voss” along the barrel.",
        "Along the barrel an engraving: E. Voss, worn.",
        "It bears the inscription 'To E. Voss' on the cap.",
        "Engraved with the name Voss.",
    ],
)
def test_what_a_description_says_is_engraved_is_a_name(job, seen):
    job.add("condition", "part", {"part": "barrel", "seen": seen, "severity": "0"})
    assert "voss" in words(job, "name", "engraved")
