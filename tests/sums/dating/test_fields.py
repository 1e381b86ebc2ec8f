"""What the sums of dating ask: what must be said, between what a year is plausible, what is taken where it is not said."""

import pytest
from sums.asked import asked_of, without_usual

from pentools.sums.dating.date import DATE
from pentools.sums.dating.money import MONEY

# judged: no index here begins before 1900; "about" of more than half a century says nothing
ASKED = {
    "date": (DATE, {"evidence"}, "about:0-50", {"about": "2"}),
    "money": (MONEY, {"price", "year"}, "year:1900-2100 to:1900-2100", {}),
}


@pytest.mark.parametrize("key", ASKED)
def test_what_is_asked(key):
    chosen, *wanted = ASKED[key]
    assert chosen.key == key
    assert list(asked_of(chosen)) == wanted


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (DATE, {"evidence": "clip c. 1936"}),
        (MONEY, {"price": "5 USD", "year": "1940"}),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
