"""The date and money sums: words, JSON keys, refusals."""

import json
import shlex

import pytest

from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.dating.date import DATE
from pentools.sums.dating.money import MONEY, index_for


def ask(chosen, **texts):
    return chosen.run(read_options(chosen.fields, texts))


def test_a_date_in_words_and_as_json():
    answer = ask(DATE, evidence="clip 1936/1942; patent 1934; barrel 1938/1945, sure; nib 1950, replaced")
    assert answer.sentence == "All evidence on original parts allows 1938 to 1942."
    data = json.loads(json.dumps(answer.data))
    assert (data["range"], data["edtf"], data["conflicts"]) == ([1938, 1942], "1938/1942", [])
    assert data["findings"] == [finding.as_json() for finding in answer.findings]
    assert len(answer.table) == 5


def test_a_contradiction_as_json():
    data = ask(DATE, evidence="clip 1936/1942; barrel 1938/1945; nib 1950/1955").data
    assert data["range"] is None
    assert data["edtf"] is None
    assert [way["doubt"] for way in data["conflicts"]] == [["nib"]]
    assert data["conflicts"][0]["leaves"] == "1938/1942"
    assert [way["doubt"] for way in data["other_ways"]] == [["clip", "barrel"]]


def test_an_open_end_is_null():
    assert ask(DATE, evidence="patent 1934").data["range"] == [1934, None]


def test_the_width_of_about_is_asked():
    assert ask(DATE, evidence="clip c. 1936", about="4").data["range"] == [1932, 1940]
    assert ask(DATE, evidence="clip c. 1936").data["range"] == [1934, 1938]


@pytest.mark.parametrize(
    ("evidence", "said"),
    [
        ("clip 1942/1936", "Was 1936/1942 meant"),
        ("clip", "clip 1936/1942"),
        ("clip 1396", "mistyped"),
        ("clip 9361", "mistyped"),
        ("", "filled in"),
    ],
)
def test_a_date_is_refused_in_a_sentence(evidence, said):
    with pytest.raises(InputError, match=said):
        ask(DATE, evidence=evidence)


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
