"""Identity and agreement at the bench: what is typed, what is refused, and what is shown back."""

import pytest

from pentools.record.report import missing_report_fields


def fill(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text
    form.button.click()
    return form.status.text


@pytest.fixture
def panel(sheet):
    return sheet.stage("identify")


def test_words_are_taken_and_their_meaning_is_shown_back(panel):
    assert fill(panel.forms["evidence"], feature="clip", dates="c. 1936 ± 3").startswith("saved")
    assert "1933 to 1939" in panel.result_table.value
    assert "1933 to 1939" in panel.result_text.value
    assert "<svg" in panel.result_drawings.value


@pytest.mark.parametrize("dates", ["1942/1936", "spring 1930", "1930-35", "30 years ago", "2936"])
def test_dates_that_cannot_be_read_are_refused_and_kept_in_the_box(panel, job, dates):
    assert fill(panel.forms["evidence"], feature="clip", dates=dates).startswith("NOT SAVED")
    assert panel.forms["evidence"].boxes["dates"].text == dates
    assert job.log("identify", "evidence") == []


def test_a_contradiction_says_who_against_whom_and_what_to_find_out(panel):
    fill(panel.forms["evidence"], feature="clip", dates="1948/1953")
    fill(panel.forms["evidence"], feature="barrel imprint", dates="1938/1942", certainty="sure")
    shown = panel.result_text.value
    assert "The evidence contradicts itself. The least to doubt is the clip" in shown
    assert "Contradiction: the clip (1948 to 1953) against the barrel imprint (1938 to 1942)" in shown
    assert "To settle it, find out" in shown
    panel.more_button.value = True
    assert "Every way out" in panel.more_drawings.value


def test_the_mark_is_kept_letter_for_letter(panel, job):
    odd = "MARL0W & SONS\n  PATD  APLD FOR"
    fill(panel.forms["mark"], where="barrel", text=odd)
    assert job.log("identify", "mark")[0][1]["text"] == odd


def test_a_price_is_shown_in_money_of_now(panel):
    panel.chooser.value = "price then"
    fill(panel.forms["price then"], price="5.00 USD", year="1940", country="US")
    assert "5.00 USD in 1940 is about $11" in panel.result_text.value


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
    assert job.log("identify", "price then") == []


def test_a_question_needs_two_answers(panel, job):
    assert fill(panel.forms["question"], feature="feed", answers="1936").startswith("NOT SAVED")
    assert fill(panel.forms["question"], feature="feed", answers="1936; 1940").startswith("saved")


def test_answers_and_ceiling_are_told_in_one_sentence(sheet):
    panel = sheet.stage("agree")
    assert "has not answered yet" in panel.result_text.value
    said = {"answered_on": "2026-04-02", "channel": "letter"}
    fill(panel.forms["answer"], action="heat", agreed="yes", **said)
    fill(panel.forms["answer"], action="polish", agreed="no", **said)
    fill(panel.forms["estimate"], ceiling="150 EUR")
    assert (
        "The owner said yes to heat; no to polishing. 0 of at most 150 EUR spent on materials."
        in panel.result_text.value
    )


def test_an_estimate_out_of_order_is_refused(sheet, job):
    form = sheet.stage("agree").forms["estimate"]
    assert fill(form, hours_low="4 h", hours_high="2 h").startswith("NOT SAVED")
    assert job.log("agree", "estimate") == []


def test_what_guidance_asks_for_is_listed_with_its_state(sheet, job):
    panel = sheet.stage("agree")
    panel.more_button.value = True
    missing = len(missing_report_fields(job).missing)
    assert f": {missing} of " in panel.more_drawings.value
    assert fill(panel.forms["not applicable"], asked="accessories", why="none").startswith("NOT SAVED")
    fill(panel.forms["not applicable"], asked="accessories", why="it came alone")
    assert "it came alone" in panel.more_drawings.value
    assert len(missing_report_fields(job).missing) == missing - 1
