"""The sources of a row in words."""

from pentools.tables.source_words import source_words


def test_keys_become_words_in_order_and_once():
    words = source_words("wiki; trade", "heat_limits", "joint_sealants")
    assert words == ("A collectors' wiki", "Common practice, no source")
    assert source_words(["trade;wiki", "wiki"], "heat_limits") == words[::-1]


def test_a_key_that_is_not_explained_stays_as_it_is():
    assert source_words("lip-page; trade", "heat_limits") == ("lip-page", "Common practice, no source")
    assert source_words("wiki") == ("wiki",)
