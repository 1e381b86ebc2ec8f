"""Identity at the bench: what is typed, what is refused, and what is shown back."""

import re

import pytest
from by_name import kind_of


def fill(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text
    form.button.click()
    return form.status.text


@pytest.fixture
def panel(sheet):
    return sheet.panel("identify")


def test_words_are_taken_and_their_meaning_is_shown_back(panel):
    assert fill(panel.forms["evidence"], feature="clip", dates="c. 1936 ± 3").startswith("saved")
    assert "1933 to 1939" in panel.result_table.value
    assert "1933 to 1939" in panel.result_text.value
    assert "<svg" in panel.result_drawings.value


def test_how_each_date_was_read_stands_in_a_table(panel):
    fill(panel.forms["evidence"], feature="clip", dates="not later than 1942", certainty="sure")
    fill(
        panel.forms["evidence"],
        feature="patent",
        dates="1934",
        evidence_kind="patent",
        certainty="likely",
        part_state="unknown",
    )
    shown = re.sub(r"<[^>]+>", "|", panel.result_table.value)
    shown = re.sub(r"\|+", "|", re.sub(r"\s*\|\s*", "|", shown))
    assert "|Feature|Typed|Read as|Allows for this pen|Kind, how sure|Part|" in shown
    assert "|clip|not later than 1942|1942 or earlier (../1942)|1942 or earlier|production, sure|original|" in shown
    assert "|patent|1934|1934 (1934)|1934 or later|patent, likely|unknown|" in shown


def test_before_anything_is_known_the_marks_are_counted(panel):
    assert "No dating evidence has been entered yet." in panel.result_text.value
    fill(panel.forms["mark"], where="barrel", text="A")
    assert "1 mark noted; no dating evidence" in panel.result_text.value
    fill(panel.forms["mark"], where="cap", text="B")
    assert "2 marks noted; no dating evidence" in panel.result_text.value


@pytest.mark.parametrize("dates", ["1942/1936", "spring 1930", "1930-35", "30 years ago", "2936"])
def test_dates_that_cannot_be_read_are_refused_and_kept_in_the_box(panel, job, dates):
    assert fill(panel.forms["evidence"], feature="clip", dates=dates).startswith("NOT SAVED")
    assert panel.forms["evidence"].boxes["dates"].text == dates
    assert job.log(kind_of("identify", "evidence")) == ()


def test_a_contradiction_says_who_against_whom_and_what_to_find_out(panel):
    fill(panel.forms["evidence"], feature="clip", dates="1948/1953")
    fill(panel.forms["evidence"], feature="barrel imprint", dates="1938/1942", certainty="sure")
    shown = panel.result_text.value
    assert "The evidence contradicts itself. The least to doubt is the clip" in shown
    assert "Contradiction: the clip (1948 to 1953) against the barrel imprint (1938 to 1942)" in shown
    assert "To settle it, find out" in panel.result_table.value
    panel.more_button.value = True
    assert "Every way out" in panel.more_drawings.value
    assert "1938 to 1942" in panel.more_drawings.value
    assert "What else is worth finding out" in panel.more_drawings.value


def test_the_mark_is_kept_letter_for_letter(panel, job):
    odd = "MARL0W & SONS\n  PATD  APLD FOR"
    fill(panel.forms["mark"], where="barrel", text=odd)
    assert job.log(kind_of("identify", "mark"))[0].values.text == odd


def test_a_price_is_shown_in_money_of_now(panel):
    panel.show_form("price then")
    fill(panel.forms["price then"], price="5.00 USD", year="1940", country="US")
    assert "5.00 USD in 1940 is about $11" in panel.result_text.value


def test_a_price_without_its_money_is_that_of_the_country(panel):
    panel.show_form("price then")
    fill(panel.forms["price then"], price="5.00", year="1940", country="US")
    assert "5.00 USD in 1940 is about $11" in panel.result_text.value
    panel.more_button.value = True
    assert "index in 1940" in panel.more_drawings.value


def test_a_price_of_another_country_is_kept_as_it_stands(panel, job):
    assert fill(panel.forms["price then"], price="12 marks", year="1938", country="other").startswith("saved")
    assert "no dating evidence" in panel.result_text.value.lower()


@pytest.mark.parametrize(
    "texts",
    [
        {"price": "much", "year": "1940", "country": "US"},
        {"price": "12/6", "year": "1940", "country": "US"},
        {"price": "5.00 USD", "year": "1899", "country": "US"},
    ],
)
def test_a_price_that_no_index_knows_is_refused(panel, job, texts):
    assert fill(panel.forms["price then"], **texts).startswith("NOT SAVED")
    assert job.log(kind_of("identify", "price then")) == ()


def test_a_question_needs_two_answers(panel, job):
    assert fill(panel.forms["question"], feature="feed", answers="1936").startswith("NOT SAVED")
    assert fill(panel.forms["question"], feature="feed", answers="1936; 1940").startswith("saved")
