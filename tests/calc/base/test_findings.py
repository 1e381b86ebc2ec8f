"""A finding: its words, its values, its level, and the order among several."""

import pytest

from pentools.calc.base.findings import Finding, gravest_first, worst_level
from pentools.words import phrase
from pentools.words.base import WORDS


def test_a_finding_fills_its_words_and_keeps_its_values(monkeypatch):
    monkeypatch.setitem(WORDS, "try:it", "{mm:.2g} mm of {parts:and}, {off:.1f}")
    found = Finding("warning", "base.try:it", mm=140.0, parts=["cap", "clip", "band"], off=-0.01)
    assert found.text == "140 mm of cap, clip and band, 0.0"
    assert found.as_json() == {
        "level": "warning",
        "text": found.text,
        "topic": "try",
        "values": {"mm": 140.0, "parts": ["cap", "clip", "band"], "off": -0.01},
    }
    under = found.under("Opening", "stop")
    assert (under.level, under.text, under.topic) == ("stop", f"Opening: {found.text}", "try")
    assert str(under) == f"Stop: Opening: {found.text}"
    assert found != under
    with pytest.raises(KeyError):
        _ = Finding("note", "base.try:it", mm=1.0).text
    with pytest.raises(KeyError):
        phrase("base.never said", {})


def test_the_gravest_comes_first_and_nothing_twice():
    one, two, three = (Finding(level, "base.refused", sentence=level) for level in ("note", "stop", "ok"))
    assert gravest_first([one, two, three, one]) == (two, one, three)
    assert worst_level([one, three]) == "note"
    assert worst_level([]) == "ok"


def test_a_finding_without_words_of_its_own_is_refused():
    with pytest.raises(ValueError, match=r"a finding.s key is subject\.topic"):
        Finding("note", "A sentence that stands in the code.")
