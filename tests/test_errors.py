"""What an error says: one sentence with what was given, cut where it is long."""

import pytest

from pentools.errors import HoldError, InputError, PentoolsError, RecordError


def test_a_text_is_shown_in_quotes_a_number_bare_and_the_advice_last():
    assert str(InputError("bore", "2 to 20 mm", "wide", "Measure it.")) == "bore must be 2 to 20 mm: got “wide”. Measure it."  # fmt: skip
    assert str(InputError("bore", "2 to 20 mm", 21.5)) == "bore must be 2 to 20 mm: got 21.5."


@pytest.mark.parametrize(("letters", "shown"), [(200, "x" * 200), (201, "x" * 199 + "…")])
def test_more_than_200_letters_are_cut_in_the_sentence_only(letters, shown):
    error = InputError("bore", "a length", "x" * letters)
    assert f"“{shown}”" in str(error)
    assert error.got == "x" * letters


def test_all_are_of_one_family_and_bad_input_is_a_value_error_too():
    assert all(issubclass(kind, PentoolsError) for kind in (InputError, RecordError, HoldError))
    assert issubclass(InputError, ValueError)
    assert not issubclass(RecordError, ValueError)
