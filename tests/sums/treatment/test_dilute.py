"""The sum dilute: strengths to volumes."""

import pytest
from sums.treatment.asking import ask

from pentools.sums.treatment.dilute import DILUTE


def test_dilute():
    data = ask(DILUTE, liquid="peroxide", strong="3 %", wanted="1 %", volume="90 ml").data
    assert (data["strong_ml"], data["water_ml"]) == (pytest.approx(30), pytest.approx(60))
    assert ask(DILUTE, liquid="alcohol", strong="91 %", wanted="70 %").data["water_ml"] is None
