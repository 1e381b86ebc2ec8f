"""Addresses taken apart, with commas, lines or nothing between their parts."""

import pytest

from pentools.record.addresses import told_of_address


def told(address):
    found = {}
    for one in told_of_address(address):
        if not one.joined:
            found.setdefault(one.about.rsplit(" ", 1)[1], set()).add(" ".join(one.words))
    return found


@pytest.mark.parametrize(
    ("address", "street", "town", "code"),
    [
        ("Mill Lane 4, 00417 Harrowmere", "mill lane", "harrowmere", "00417"),
        ("Mill Lane 4 00417 Harrowmere", "mill lane", "harrowmere", "00417"),
        ("4 Mill Ln. Harrowmere", "mill lane", "harrowmere", None),
        ("Mill Lane 4 a Harrowmere", "mill lane", "harrowmere", None),
        ("12b High Street Bath QX1 5XY", "high street", "bath", "qx1 5xy"),
        ("Große Straße 12\n12345 Harrowmere\nNorthland", "grosse strasse", "harrowmere", "12345"),
        ("Hauptstr. 5 50667 Harrowmere", "hauptstr", "harrowmere", "50667"),
        ("Rue du Moulin 3, 75099 Harrowmere", "rue du moulin", "harrowmere", "75099"),
        ("The Old Forge, Harrowmere", "old forge", "harrowmere", None),
    ],
)
def test_street_town_and_code_are_told_whatever_parts_them(address, street, town, code):
    found = told(address)
    assert street in found["street"]
    assert town in found["town"]
    assert found.get("code") is None if code is None else code in found["code"]


def test_a_town_of_few_letters_wants_its_capital_and_a_long_one_does_not():
    assert {(one.words, one.as_typed) for one in told_of_address("High Row 3, Ulm") if "town" in one.about} == {
        (("ulm",), "Ulm")
    }
    assert {one.as_typed for one in told_of_address("High Row 3, Harrowmere")} == {""}


def test_the_country_a_house_number_and_a_flat_are_no_secret():
    words = {word for one in told_of_address("Flat 3\n12 Long Lane\nHarrowmere\nNorthland") for word in one.words}
    assert not {"flat", "3", "12", "northland"} & words


def test_a_code_of_two_parts_and_a_street_are_told_as_one_word_too():
    whole = {one.words for one in told_of_address("Long Lane 3, Harrowmere QX12 3YZ")}
    assert {("longlane",), ("qx12", "3yz"), ("qx123yz",)} <= whole


@pytest.mark.parametrize(
    "address", ["", "-", ",", "\n", "4", "x" * 5000, "1 " * 2000, "Lane " * 2000, "Lane 4 " * 20_000]
)
def test_odd_addresses_are_taken_apart_without_trouble(address):
    assert len(set(told_of_address(address))) < 10
