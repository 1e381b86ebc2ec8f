"""Numbers in sentences: plain notation, no exponent, no minus nought."""

import math

import pytest

from pentools.numbers import PlainFormatter, fixed, in_words, percent, plain


@pytest.mark.parametrize(
    ("value", "figures", "words"),
    [
        (140.0, 2, "140"),
        (139.6, 2, "140"),
        (0.000012345, 2, "0.000012"),
        (-1234567.0, 3, "-1230000"),
        (1.75, 3, "1.75"),
        (1.70, 3, "1.7"),
        (-0.0, 3, "0"),
        (9.996, 3, "10"),
        (math.inf, 3, "∞"),
        (25, 3, "25"),
    ],
)
def test_plain(value, figures, words):
    assert plain(value, figures) == words


def test_not_a_number_is_refused():
    with pytest.raises(ValueError, match="not a number"):
        plain(math.nan)


def test_templates_are_plain_too():
    say = PlainFormatter().format
    assert say("{a:.2g} {b:.0f} {c:.1%} {d:,.0f} {e:g} {f}", a=140.0, b=-0.2, c=-0.0001, d=12345.6, e=1e-7, f=1e7) == (
        "140 0 0.0\u202f% 12,346 0.0000001 10000000"
    )
    assert (
        say("{a:+.0%} {b:+.0%} {b:.0%} {c:,.1%}", a=0.15, b=-0.0001, c=12.5)
        == "+15\u202f% +0\u202f% 0\u202f% 1,250.0\u202f%"
    )
    assert percent(-0.0001) == "0\u202f%"
    assert say("{parts:or}", parts=("cap", "clip")) == "cap or clip"
    assert fixed(-0.001, 2) == "0.00"
    assert in_words([]) == ""
