"""The sum treatment: verdicts, what is not named, and the bench's own word over the table."""

import pytest
from sums.treatment.asking import ask

from pentools.errors import InputError
from pentools.sums.treatment.limits import TREATMENT


def test_treatment():
    data = ask(TREATMENT, material="casein", treatment="flush mix soak").data
    assert set(data) >= {"verdict", "limit", "max_minutes", "reason", "source", "certainty"}
    assert (data["verdict"], data["max_minutes"], data["certainty"]) == ("never", 0, "primary")
    assert "Cultural Heritage Agency" in data["source"]
    assert data["no_harm_tests"] == []


def test_treatment_of_what_is_not_named():
    data = ask(TREATMENT, treatment="soak").data
    assert (data["material"], data["verdict"]) == ("unknown", "never")
    assert len(data["no_harm_tests"]) >= 5


def test_treatment_overruled():
    data = ask(TREATMENT, material="casein", treatment="soak", overrule="limited", reason="a test piece").data
    assert (data["verdict"], data["overruled_verdict"], data["reason"], data["source"]) == (
        "limited",
        "never",
        "a test piece",
        "the bench",
    )
    for typed in ({"overrule": "ok"}, {"reason": "no verdict"}):
        with pytest.raises(InputError):
            ask(TREATMENT, material="casein", treatment="soak", **typed)
