"""The sum dilute: strengths to volumes."""

import pytest
from sums.treatment.asking import ask

from pentools.sums.treatment.dilute import DILUTE


def test_dilute():
    data = ask(DILUTE, liquid="peroxide", strong="3 %", wanted="1 %", volume="90 ml").data
    assert (data["strong_ml"], data["water_ml"]) == (pytest.approx(30), pytest.approx(60))
    assert ask(DILUTE, liquid="alcohol", strong="91 %", wanted="70 %").data["water_ml"] is None


def test_volume_and_hazard_are_handed_on():
    """C1 V1 = C2 V2; from 8 % peroxide damages eyes for good (Eye Dam. 1, H318: the labelling rules)."""
    strong = ask(DILUTE, liquid="peroxide", strong="9 %", wanted="3 %", volume="60 ml")
    assert {k: v for k, v in strong.data.items() if k not in ("sentence", "findings")} == {
        "strong_ml": pytest.approx(20), "water_ml": pytest.approx(40), "final_ml": 60, "stop": True,
    }  # fmt: skip
    assert strong.sentence.startswith("Stop: The bottle’s 9\u202f%: it damages eyes for good")
    assert strong.sentence.endswith("20.0 ml of the 9\u202f% and 40.0 ml of water make 60 ml of 3\u202f%.")
    assert ask(DILUTE, liquid="peroxide", strong="3 %", wanted="1 %").data["final_ml"] == 100
    assert ask(DILUTE, liquid="alcohol", strong="91 %", wanted="70 %").data["stop"] is False
