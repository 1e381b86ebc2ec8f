"""The page of answers: every public name is on it, and every example runs."""

import doctest
from pathlib import Path

import pentools

PAGE = Path(__file__).resolve().parents[1] / "docs" / "answers.md"


def test_every_example_runs():
    failed, tried = doctest.testfile(str(PAGE), module_relative=False, optionflags=doctest.ELLIPSIS)
    assert (failed, tried > 20) == (0, True)


def test_every_public_name_is_on_the_page():
    text = PAGE.read_text(encoding="utf-8")
    assert [name for name in pentools.__all__ if f"`{name}`" not in text] == []
