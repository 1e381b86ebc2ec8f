"""The sum mix: strength, refusals, and what it asks back."""

import pytest
from sums.treatment.asking import ask

from pentools.errors import InputError
from pentools.sums.treatment.mix import MIX


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
