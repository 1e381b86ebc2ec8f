"""The sums heat, treatment, mix, dilute and shellac: keys, words, refusals; their options as typed."""

import json

import pytest

from pentools.errors import InputError
from pentools.sums import read_options
from pentools.sums.treatment.dilute import DILUTE
from pentools.sums.treatment.heat import HEAT
from pentools.sums.treatment.limits import TREATMENT
from pentools.sums.treatment.mix import MIX
from pentools.sums.treatment.shellac import SHELLAC

ALL = (HEAT, TREATMENT, MIX, DILUTE, SHELLAC)


def ask(chosen, **typed):
    answer = chosen.run(read_options(chosen.fields, typed))
    json.dumps(answer.data, allow_nan=False)
    assert answer.data["findings"] == [f.as_json() for f in answer.findings]
    assert answer.sentence
    return answer


def test_heat():
    data = ask(HEAT, body="celluloid", sealant="shellac").data
    assert set(data) >= {"window_first_c", "window_full_c", "verdict", "body_limit_c", "sources", "findings"}
    assert (data["window_first_c"], data["window_full_c"], data["body_limit_c"]) == (0, -15, 60)
    assert data["stop"] is None
    assert any("collectors' wiki" in source for source in data["sources"])


def test_heat_with_the_heatings_so_far():
    data = ask(HEAT, body="celluloid", sealant="shellac", passes="48 °C; 131 °F; 61 °C").data
    assert data["heatings"] == 3
    assert data["stop"] is True
    assert data["findings"][0]["topic"] == "over-limit"
    assert ask(HEAT, body="celluloid", sealant="shellac", passes="48 °C; 55 °C").data["stop"] is False


def test_heat_where_none_is_allowed():
    data = ask(HEAT, body="cork", sealant="shellac").data
    assert data["body_limit_c"] is data["window_first_c"] is None


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


def test_mix():
    data = ask(MIX, ammonia="7 %", parts_water="9").data
    assert set(data) >= {"ammonia_percent_w_w", "ph", "findings"}
    assert 0.65 < data["ammonia_percent_w_w"] < 0.7  # close to a tenth of the bottle
    assert 11.35 < data["ph"] < 11.5  # between the mixes of 5 and 10 %
    assert data["refused"] is False
    assert any(f["topic"] == "bleach" for f in data["findings"])


@pytest.mark.parametrize(
    "thing", ["casein", "plated brass", "latex sac", "brass", "bleach", "faded hard rubber", "unknown", "vinegar"]
)
def test_mix_is_refused(thing):
    answer = ask(MIX, ammonia="5 %", beside=f"nylon; {thing}")
    assert answer.data["refused"] is True
    assert answer.sentence.startswith("Refused")


def test_the_gravest_refusal_comes_first():
    assert "chloramine" in ask(MIX, ammonia="5 %", beside="brass; bleach").sentence


def test_mix_beside_what_bears_it():
    answer = ask(MIX, ammonia="5 %", beside="stainless steel; celluloid")
    assert answer.data["refused"] is False
    assert any("inside the section only" in f.text for f in answer.findings)


@pytest.mark.parametrize(("typed", "said"), [("28 %", "laboratory"), ("7", "unit is missing"), ("0.07 %", "per cent")])
def test_mix_asks_back(typed, said):
    with pytest.raises(InputError, match=said):
        ask(MIX, ammonia=typed)


def test_dilute():
    data = ask(DILUTE, liquid="peroxide", strong="3 %", wanted="1 %", volume="90 ml").data
    assert (data["strong_ml"], data["water_ml"]) == (pytest.approx(30), pytest.approx(60))
    assert ask(DILUTE, liquid="alcohol", strong="91 %", wanted="70 %").data["water_ml"] is None


def test_shellac():
    data = ask(SHELLAC, cut="3").data
    assert data["flakes_g"] == pytest.approx(10.78, abs=0.0051)
    assert data["thinning_parts"] is None
    thin = ask(SHELLAC, cut="2", thin_to="1")
    assert thin.data["thinning_parts"] == pytest.approx(0.833, abs=0.0005)
    assert any(f.topic == "printed-chart" for f in thin.findings)
    assert not any(f.topic == "printed-chart" for f in ask(SHELLAC, cut="5", thin_to="2").findings)


@pytest.mark.parametrize("chosen", ALL, ids=lambda s: s.key)
def test_the_example_runs(chosen):
    import shlex

    words = shlex.split(chosen.example)
    assert words[:3] == ["pentools", "sums", chosen.key]
    typed = {words[i].removeprefix("--").replace("-", "_"): words[i + 1] for i in range(3, len(words), 2)}
    ask(chosen, **typed)
