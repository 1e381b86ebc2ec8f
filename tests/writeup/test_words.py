"""Dates, sentences, lists and numbers as the pages show them."""

import datetime as dt

import pytest

from pentools.numbers import in_words
from pentools.units import Reading
from pentools.writeup import words


@pytest.mark.parametrize("given", ["2026-03-14", dt.date(2026, 3, 14), dt.datetime(2026, 3, 14, 23, 59)])
def test_a_date_is_told_in_words_and_what_is_none_stays_as_it_is(given):
    assert words.date_in_words(given) == "14\u00a0March 2026"
    assert words.date_in_words("in spring") == "in spring"
    assert words.date_in_words(None) == ""


def test_a_sentence_gets_one_capital_and_one_stop():
    assert words.sentence(" the cork split") == "The cork split."
    assert words.sentence("It split?") == "It split?"
    assert words.sentence("") == ""
    assert words.first_sentence("it split. Then it fell") == "It split."
    assert words.first_sentence("0.2 mm were\nleft over") == "0.2 mm were left over."


@pytest.mark.parametrize(
    ("items", "told"), [((), ""), (("a",), "a"), (("a", "b"), "a and b"), (("a", "b", "c"), "a, b and c")]
)
def test_lists(items, told):
    assert in_words(iter(items)) == told


@pytest.mark.parametrize(
    ("minutes", "told"), [(0.4, "0 min"), (45, "45 min"), (59.6, "1 h"), (60, "1 h"), (130, "2 h 10 min")]
)
def test_minutes_never_come_to_sixty(minutes, told):
    assert words.minutes_in_words(minutes).replace(words.THIN, " ") == told


@pytest.mark.parametrize(
    ("readability", "decimals"), [("0.01 g", 2), ("0,001 g", 3), ("1 g", 0), ("0.0000001 g", 5), ("", 2), ("fine", 2)]
)
def test_a_mass_has_the_decimals_of_the_balance(new_job, readability, decimals):
    job = new_job()
    facts = {**job.bench.facts, "balance": {"readability": readability}}
    odd = type(job)(job.name, job.folder, type(job.bench)(job.bench.folder, facts), job.record)
    assert words.decimals_of(odd) == decimals


def test_a_mass_keeps_the_decimals_that_were_typed():
    assert words.shown_mass(Reading(16.4, "g", typed="16.4 g"), 2) == f"16.40{words.THIN}g"
    assert words.shown_mass(Reading(16.425, "g", typed="16,425 g"), 2) == f"16.425{words.THIN}g"
