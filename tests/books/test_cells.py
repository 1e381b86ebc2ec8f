"""A text that a spreadsheet would run is defused; any other stays as it is."""

import pytest

from pentools.books.cells import RUNS, defused


def test_a_cell_is_no_formula():
    assert [defused(text) for text in ("=1+1", "+1", "-1", "@x", "a=b")] == ["'=1+1", "'+1", "'-1", "'@x", "a=b"]


@pytest.mark.parametrize("sign", [sign for sign in RUNS if sign.strip()])
def test_after_blanks_too(sign):
    assert defused(f"  {sign}1") == f"'  {sign}1"
