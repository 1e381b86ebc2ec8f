"""The money sum: words, JSON keys, refusals."""

import shlex

import pytest

from pentools.errors import InputError
from pentools.money import read_money
from pentools.sums.base import read_options
from pentools.sums.dating.date import DATE
from pentools.sums.dating.money import MONEY, index_for, price_answer


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


def test_the_whole_answer_as_json_and_table():
    answer = ask(MONEY, price="12/6", year="1938", to="2003")
    data = answer.data
    index = index_for("GBP").values
    assert (data["price"], data["currency"], data["read_as"], data["currency_assumed"]) == (
        0.625,
        "GBP",
        "12s 6d",
        False,
    )
    assert (data["year"], data["to_year"], data["figures"], data["about"]) == (1938, 2003, 2, True)
    assert (data["index_then"], data["index_now"]) == (index[1938], index[2003])
    assert data["amount"] == pytest.approx(0.625 * index[2003] / index[1938])
    assert data["half_width"] == pytest.approx(data["amount"] * (0.01 + 0.03))
    assert data["amount_rounded"] == round(data["amount"])
    assert data["findings"] == [finding.as_json() for finding in answer.findings]
    assert answer.table[1:4] == (("price then", "12/6 in 1938"), ("read as", "12s 6d"), ("index in 1938", "155.84"))
    assert answer.table[4][0] == "index in 2003"
    assert answer.sentence.endswith("in the money of 2003, by the UK consumer price chain.")


@pytest.mark.parametrize(
    ("price", "year", "to", "said"),
    [("5.00 USD", "1940", "2023", "$109 "), ("1.00 USD", "1940", "2023", "$21.8 "), ("10 cents", "1940", "2023", "$2.18 "), ("$100", "1940", "2023", "$2,180 "),
     ("½d", "1938", "2003", "£0.08 "), ("£20", "1938", "2003", "£770 ")],
)  # fmt: skip
def test_figures_in_the_sentence(price, year, to, said):
    assert f"is about {said}in the money" in ask(MONEY, price=price, year=year, to=to).sentence


def test_money_that_is_not_typed_is_shown():
    answer = ask(MONEY, price="5.00", year="1940", currency="USD")
    assert answer.sentence.startswith("5.00 USD in 1940 is about")
    assert answer.data["currency_assumed"] is True
    assert answer.data["read_as"] == "5.00 USD (the bench’s own money)"
    with pytest.raises(InputError, match="currency is missing"):
        ask(MONEY, price="5.00", year="1940")


@pytest.mark.parametrize(
    ("price", "year", "said"),
    [("12/6", "1972", "1971 or earlier for shillings"), ("50p", "1970", "type old pence with d"), ("5 new pence", "1938", "New pence began in 1971"), ("1/2d", "1938", "1s 2d"),
     ("1 1/2d", "1899", "at least 1900|1900 to"), ("0 USD", "1940", "above zero")],
)  # fmt: skip
def test_money_of_another_time_is_refused(price, year, said):
    with pytest.raises(InputError, match=said):
        ask(MONEY, price=price, year=year)


def test_both_moneys_were_good_in_the_year_of_the_change():
    assert ask(MONEY, price="10/-", year="1971").data["amount"] == ask(MONEY, price="50p", year="1971").data["amount"]
    assert ask(MONEY, price="1 1/2d", year="1938").data["price"] == pytest.approx(1.5 / 240)
    assert price_answer(read_money("£1"), 1938).data["to_year"] == 2024
