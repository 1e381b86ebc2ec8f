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


def test_every_word_of_a_limit_stands_in_its_table():
    answer = ask(TREATMENT, material="celluloid", treatment="cold water soak")
    assert answer.table == (
        ("quantity", "value"), ("verdict", "limited"), ("limit", "at most 15 minutes, dried at once; better not at all"), ("longest contact", "15 min"),
        ("because", "old celluloid draws water in and can swell"),
        ("source", "Conservation DistList 21:54 (2008): a conservator on water and cellulose nitrate"), ("how sure", "primary"),
    )  # fmt: skip
    assert (answer.data["max_minutes"], answer.data["max_c"], answer.data["overruled_verdict"]) == (15, None, None)
    never = dict(ask(TREATMENT, material="casein", treatment="flush mix soak").table)
    assert (never["limit"], never["longest contact"]) == ("nothing more is said", "0 min")
    assert (
        dict(ask(TREATMENT, material="celluloid", treatment="buffing wheel").table)["longest contact"]
        == "no number on record"
    )
    unnamed = ask(TREATMENT, treatment="soak")
    assert ("is it acrylic?", "no smell when rubbed, a dull sound when tapped, high gloss") in unnamed.table
    assert unnamed.data["no_harm_tests"][0] == {
        "material": "celluloid",
        "sign": "rub it with soft cotton: a smell of camphor, as of mothballs",
    }
