"""Lines as balances print them: sign, number, unit and marks of a steady display in the usual orders (common practice, no source)."""

import re

import pytest

from pentools.digits import last_digit
from pentools.errors import InputError
from pentools.instruments.balance_line import check_pattern, read_line


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("14.86 g", 14.86),
        ("+  14.86 g", 14.86),
        ("ST,+00014.86  g", 14.86),
        ("S S     14.86 g", 14.86),
        ("  14,860 g ", 14.86),
        ("N  +   0.014860 kg", 14.86),
        ("14860 mg", 14.86),
        ("14.86 g S", 14.86),
        ("0.00 g", 0.0),
        ("-  0.00 g", 0.0),
        ("0.5 oz", 14.1747616),
    ],
)
def test_usual_lines(line, grams):
    assert read_line(line).reading.value == pytest.approx(grams, rel=1e-6)
    assert read_line(line).reading.unit == "g"


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("US,+00014.86  g", "Wait until the display stands still"),
        ("S D     14.86 g", "Wait until the display stands still"),
        ("14.86 g ?", "Wait until the display stands still"),
        ("OL", "overloaded"),
        ("ST,+OL g", "overloaded"),
        ("------", "overloaded"),
        ("14.86 mm", "a unit of length"),
        ("14.86 pcs", "none of mass"),
        ("14.86 %", "print key again"),
        ("14.86", "print key again"),
        (".86 g", "print key again"),
        ("14.8", "print key again"),
        ("ST,+000", "print key again"),
        ("", "print key again"),
        ("14.86 g 15.02 g", "print key again"),
        ("\ufffd\ufffd4.86 g", "print key again"),
        ("-14.86 g", "Tare it"),
        ("9" * 500 + " g", "line from the balance"),
    ],
)
def test_lines_that_cannot_be_taken_are_refused_in_words(line, why):
    with pytest.raises(InputError) as said:
        read_line(line)
    assert why in str(said.value)


def test_the_last_digit_as_printed_is_kept():
    assert last_digit(read_line("ST,+00014.860  g").reading) == pytest.approx(0.001)


def test_a_balance_that_prints_in_its_own_way():
    pattern = check_pattern(r"W:(?P<unstable>!?)(?P<value>\d+\.\d+)")
    assert read_line("W:14.86", pattern).reading.value == 14.86
    with pytest.raises(InputError, match="stands still"):
        read_line("W:!14.86", pattern)
    with pytest.raises(InputError, match="print key again"):
        read_line("14.86 g", pattern)
    assert check_pattern("") is None


@pytest.mark.parametrize(("pattern", "why"), [("(", "a regular expression"), (r"\d+", "a group named value")])
def test_a_pattern_that_cannot_be_used_is_refused(pattern, why):
    with pytest.raises(InputError, match=re.escape(why)):
        check_pattern(pattern)


def test_of_a_line_too_long_for_a_display_the_first_eighty_signs_are_said():
    with pytest.raises(InputError) as refused:
        read_line("x" * 79 + "yz")
    assert "x" * 79 + "y" in str(refused.value)
    assert "yz" not in str(refused.value)
