"""The sum shellac: flakes, thinning, and a printed chart that is off."""

import pytest
from sums.treatment.asking import ask

from pentools.sums.treatment.shellac import SHELLAC


def test_shellac():
    data = ask(SHELLAC, cut="3").data
    assert data["flakes_g"] == pytest.approx(10.78, abs=0.0051)
    assert data["thinning_parts"] is None
    thin = ask(SHELLAC, cut="2", thin_to="1")
    assert thin.data["thinning_parts"] == pytest.approx(0.833, abs=0.0005)
    assert any(f.topic == "printed-chart" for f in thin.findings)
    assert not any(f.topic == "printed-chart" for f in ask(SHELLAC, cut="5", thin_to="2").findings)
