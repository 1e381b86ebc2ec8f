"""The record of an invented pen stops on the bench's last day, and is filled up before its end."""

import datetime as dt
import json
import random

import msgspec
import pytest

from pentools.books.invented.lines import lines_of
from pentools.books.invented.pens import draw_truth
from pentools.books.invented.truth import Rates


def told(truth, pen, entries=None):
    return [
        json.loads(line)
        for line in lines_of(pen, truth, {p.job: p for p in truth.pens}, random.Random(1), entries).splitlines()
    ]


@pytest.fixture(scope="module")
def truth():
    return draw_truth(30, 7, dt.date(2026, 10, 31), Rates(unanswered=0.0, uncollected=0.0))


def whole(truth):
    return next(pen for pen in truth.pens if pen.work == "re-sac" and pen.price and not pen.again_of)


def test_nothing_is_written_after_the_last_day(truth):
    pen = whole(truth)
    all_of_it = told(truth, pen)
    assert (all_of_it[0]["kind"], all_of_it[-1]["kind"]) == ("owner", "arrived")
    half = all_of_it[len(all_of_it) // 2]["at"][:10]
    cut = told(msgspec.structs.replace(truth, until=half), pen)
    assert cut == [line for line in all_of_it if line["at"][:10] <= half]
    assert 0 < len(cut) < len(all_of_it)


def test_it_is_filled_up_before_what_is_left_and_the_end(truth):
    lines = told(truth, whole(truth), 200)
    assert len(lines) == 200
    assert lines[-1]["kind"] == "arrived"
    assert len({line["id"] for line in lines}) == 200
    assert [line["at"] for line in lines] == sorted(line["at"] for line in lines)


def test_a_pen_that_nobody_fetches_and_an_estimate_that_nobody_answers(truth):
    pen = whole(truth)
    left = msgspec.structs.replace(truth, rates=Rates(unanswered=0.0, uncollected=1.0))
    assert told(left, pen)[-1]["kind"] == "result"
    silent = msgspec.structs.replace(truth, rates=Rates(unanswered=1.0))
    assert "yes" not in [line["kind"] for line in told(silent, pen)]
    assert "estimate" in [line["kind"] for line in told(silent, pen)]
