"""The money sum: words, JSON keys, refusals."""

import shlex

import pytest

from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.dating.date import DATE
from pentools.sums.dating.money import MONEY, index_for


def ask(chosen, **texts):
    return chosen.run(read_options(chosen.fields, texts))


def test_money():
    answer = ask(MONEY, price="5.00 USD", year="1940", to="2023")
    assert (
        answer.sentence
        == "5.00 USD in 1940 is about $109 in the money of 2023, by the US consumer price index (CPI-U, annual averages)."
    )
    assert answer.data["multiplier"] == pytest.approx(304.702 / 14.0)
    assert ask(MONEY, price="$5", year="1940").data["to_year"] == max(index_for("USD").values)
    rough = ask(MONEY, price="12/6", year="1938")
    assert rough.data["figures"] == 2
    assert "about £42 " in rough.sentence


@pytest.mark.parametrize(
    ("texts", "said"),
    [
        ({"price": "5 EUR", "year": "1940"}, "USD and GBP only"),
        ({"price": "5 USD", "year": "1912"}, "1913 to 2024"),
        ({"price": "5 USD", "year": "1940", "to": "2050"}, "1913 to 2024"),
        ({"price": "5 USD"}, "filled in"),
        ({"price": "5 USD", "year": "1940.5"}, "whole number"),
    ],
)
def test_money_is_refused_in_a_sentence(texts, said):
    with pytest.raises(InputError, match=said):
        ask(MONEY, **texts)


def test_there_is_no_index_for_other_money():
    with pytest.raises(InputError, match="USD or GBP"):
        index_for("EUR")


@pytest.mark.parametrize("chosen", [DATE, MONEY])
def test_the_example_names_options_that_exist(chosen):
    words = shlex.split(chosen.example)
    assert words[:3] == ["pentools", "sums", chosen.key]
    options = {field.option for field in chosen.fields}
    assert {word for word in words if word.startswith("--")} <= options
