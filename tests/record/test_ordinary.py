"""Words that the kit's own sentences use."""

from pentools.record.ordinary import is_ordinary_word, ordinary_words


def test_words_of_forms_findings_tables_and_months_are_ordinary_and_names_are_not():
    assert {"mark", "may", "green", "celluloid", "august"} <= ordinary_words()
    assert is_ordinary_word("feed")
    assert not any(is_ordinary_word(word) for word in ("quist", "harrowmere", "grudgingly", ""))
