"""What a page writes, as one says it; never surer than the page."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.base.uncertainty import rounded_pair
from pentools.writeup.card.spoken import spoken, spoken_ml

STEPS = {"a": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}


def plain(text):
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("1 h 42\u202fmin", "1 hour 42 minutes"),
        ("0.5 mm", "0.5 millimetres"),
        ("62\u202f% of 1.8 mL", "62 percent of 1.8 millilitres"),
        ("43 °C", "43 degrees"),
        ("5.1 mg ± 1.8", "5.1 milligrams, give or take 1.8"),
        ("1937 – 1941", "1937 to 1941"),
        ("dry (nib up, nib down) all over", "dry all over"),
        ("1,75 mL", "1,75 millilitres"),
        ("an O-ring 005 in the packing, 7 strokes", "an O-ring 005 in the packing, 7 strokes"),
        ("a 14 mark in gold", "a 14 mark in gold"),
        ("1.0030 mL/g", "1.0030 mL/g"),
    ],
)
def test_units_and_signs_become_words(written, said):
    assert plain(spoken(written)) == said


@pytest.mark.parametrize(
    ("volume", "doubt", "said"),
    [
        (1.748, 0.009, "1.75 millilitres, give or take a hundredth"),
        (0.9412, 0.0404, "0.94 millilitres, give or take four hundredths"),  # the page has ± 0.04
        (1.2, 0.012, "1.20 millilitres, give or take two hundredths"),
        (1.31, 0.2, "1.3 millilitres, give or take two tenths"),
        (1.31, 0.095, "1.3 millilitres, give or take a tenth"),
        (2.4, 1.2, "2 millilitres, give or take 2"),
    ],
)
def test_a_volume_as_one_says_it(volume, doubt, said):
    assert plain(spoken_ml(volume, doubt)) == said


@given(st.floats(0.05, 9), st.floats(0.001, 0.85))
def test_what_is_said_is_never_surer_than_what_is_written(volume, doubt):
    text = plain(spoken_ml(volume, doubt))
    found = re.fullmatch(r"([\d.]+) millilitres, give or take (\w+) (hundredth|tenth)s?", text)
    said = STEPS[found[2]] * (0.01 if found[3] == "hundredth" else 0.1)
    assert said >= float(rounded_pair(volume, doubt)[1]) - 1e-9
    assert abs(float(found[1]) - volume) <= 0.5 * (0.01 if found[3] == "hundredth" else 0.1) + 1e-9
