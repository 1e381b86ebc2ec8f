"""The sum heat: the window, the heatings so far, and where none is allowed."""

from sums.treatment.asking import ask

from pentools.sums.treatment.heat import HEAT


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
