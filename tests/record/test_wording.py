"""Words as they are compared: what a reader takes for the same word is the same."""

import unicodedata

import pytest

from pentools.record.wording import digits_in, fold, parts_of, seen_text, spellings, words_of


@pytest.mark.parametrize(
    ("written", "same"),
    [("QUIST", "quist"), ("Łucja", "lucja"), ("Groß", "gross"), ("Søren", "soren"), ("Ægir", "aegir"), ("Zoë", "zoe")],
)
def test_case_and_accents_do_not_count(written, same):
    assert fold(written) == same
    assert fold(unicodedata.normalize("NFD", written)) == same


def test_an_umlaut_is_met_in_three_spellings():
    assert set(spellings("Müller")) == {"muller", "mueller"}
    assert set(spellings("Mueller")) == {"mueller", "muller"}
    assert spellings("Quist") == ("quist",)


@pytest.mark.parametrize(
    "written",
    [
        "Qu\u00adist",
        "Qu\u200bist",
        "Q\u2060uist",
        "Qu**is**t",
        "&#81;uist",
        "\uff31uist",
        "Qu\\ist".replace("\\i", "i"),
    ],
)
def test_what_is_not_seen_does_not_hide_a_word(written):
    assert [word.folded for word in words_of(seen_text(written))] == ["quist"]


def test_words_stand_alone_between_all_that_is_no_letter_or_figure():
    text = "open-before_quist.jpg, Quist’s (O'Neill) No2"
    assert [word.folded for word in words_of(text)] == [
        "open",
        "before",
        "quist",
        "jpg",
        "quist",
        "s",
        "o",
        "neill",
        "no2",
    ]
    word = words_of(text)[2]
    assert text[word.start : word.end] == word.shown == "quist"


def test_a_word_with_capitals_inside_has_parts_and_others_have_none():
    assert [part.folded for part in parts_of(words_of("AdelaQuistBefore")[0])] == ["adela", "quist", "before"]
    assert [parts_of(words_of(word)[0]) for word in ("quist", "QUIST", "Quist")] == [[], [], []]


def test_figures_are_read_whatever_parts_them():
    found = [digits for digits, _, _ in digits_in("+44 (0)1632 960 123 or 01632/960-123, 1948, 12.31 mm")]
    assert found[:2] == ["441632960123", "01632960123"]
    assert digits_in("1948 and 12.31 mm") == []
