"""The words of a typed date one by one: what each says, and that none is passed over."""

import pytest

from pentools.calc.dating.tokens import Mention, tokens_of
from pentools.errors import InputError


def wrong(advice, accepted="a date"):
    return InputError("date", accepted, "typed", advice)


def kinds(text):
    return [token.kind for token in tokens_of(text, wrong)]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("not later than c. 1942", ["<=", "circa", "date"]), ("introduced in the early 1930s", ["in", "part", "date"]), ("1936 or later", ["date", "or later"]),
        ("after 1936 and before 1942", [">", "date", "and", "<", "date"]), ("1936 and before", ["date", "or earlier"]), ("1936 ± 3 years", ["date", "width"]),
        ("1936-42", ["date", "-", "date"]), ("1936-1942", ["date", "-", "date"]), ("pre-1942", ["<", "date"]), ("mid-1930s", ["part", "-", "date"]),
        ("last seen in 1942", ["out", "date"]), ("on or after 12 may 1936", [">=", "date"]), ("from 1936 on", ["from", "date", "or later"]),
        ("first half of 1936", ["half", "date"]), ("never made before 1936", [">=", "date"]), ("some time in the year 1936", ["date"]), ("1936?", ["date"]),
    ],
)  # fmt: skip
def test_what_each_word_says(text, wanted):
    assert kinds(text) == wanted


def test_a_word_within_a_word_is_none():
    for text in ("byname 1936", "intime 1936", "fromage 1936", "latest-issue 1936", "beforehand 1936"):
        with pytest.raises(InputError):
            tokens_of(text, wrong)


def test_a_date_knows_its_days_its_mark_and_what_lies_beside_it():
    (token,) = tokens_of("1936?", wrong)
    date = token.date
    assert (date.edtf, date.mark, date.until + 1, date.since - 1) == ("1936", "?", date.first, date.last)
    (century,) = tokens_of("20th century?", wrong)
    assert (century.date.edtf, century.date.mark) == ("1901/2000", "?")
    assert (century.date.until + 1, century.date.since - 1) == (century.date.first, century.date.last)
    (month,) = tokens_of("1905-10", wrong)
    assert month.note.startswith("Taken as month 10")


def test_marks_add_up():
    date = Mention(1, 2, "0001-01-01")
    assert [date.marked(marks).mark for marks in ("", "~", "?", "~?", "%")] == ["", "~", "?", "%", "%"]
    assert date.marked("~").marked("?").mark == "%"
    assert date.marked("~").marked("").mark == "~"
