"""What a sum is handed, asked for as what it is."""

import pytest

from pentools.errors import InputError
from pentools.sums.base import Inputs
from pentools.units import Reading

BORE = Reading(7.4, "mm", 0.02, "7.40 ± 0.02 mm")
GIVEN = Inputs({"bore": BORE, "several": (BORE, Reading(7.5, "mm")), "parts": 9, "yes": True, "word": "water", "rings": ("008", "009"), "blank": None, "empty": ()})  # fmt: skip


def test_each_value_is_given_as_what_it_is():
    assert (GIVEN.number("bore"), GIVEN.number("parts"), GIVEN.whole("parts")) == (7.4, 9.0, 9)
    assert GIVEN.numbers("several") == (7.4, 7.5)
    assert GIVEN.readings("bore") == (BORE,)
    assert GIVEN.reading("bore") is BORE
    assert (GIVEN.text("word"), GIVEN.flag("yes"), GIVEN.texts("rings")) == ("water", True, ("008", "009"))
    assert [name for name in GIVEN if GIVEN.given(name)] == ["bore", "several", "parts", "yes", "word", "rings"]


def test_what_was_not_said_is_none_or_usual_and_never_nought():
    assert GIVEN.number("blank") is None
    assert GIVEN.number("blank", 0.1) == 0.1
    assert GIVEN.number("yes") is None
    assert (GIVEN.numbers("blank"), GIVEN.texts("word"), GIVEN.flag("word")) == ((), (), False)
    assert GIVEN.text("bore") is None
    assert GIVEN.text("nothing", "ink") == "ink"
    with pytest.raises(InputError, match="blank must be filled in"):
        GIVEN.needed("blank")
