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


def rows(**typed):
    return [row for row in ask(HEAT, **typed).table if row[0] != "source"]


def test_every_figure_of_a_window_stands_in_its_table():
    """Celluloid bears 60 °C, acrylic 80; shellac softens from 60 to 75, rosin to 100: the tables' figures, each with its source there."""
    assert rows(body="celluloid", sealant="shellac") == [
        ("quantity", "value"), ("limit of the body's surface", "60 °C"), ("sealant softens", "60 to 75 °C"), ("window to first softening", "0 °C"),
        ("window to full softening", "-15 °C"), ("how sure", "body: trade; sealant: primary"),
    ]  # fmt: skip
    assert rows(body="acrylic")[1:4] == [
        ("limit of the body's surface", "80 °C"), ("sealant softens", "80 to 100 °C, taken as rosin"), ("window to first softening", "0 °C"),
    ]  # fmt: skip
    assert [row[1] for row in rows(body="cork", sealant="shellac")[1:5]] == [
        "never warmed",
        "60 to 75 °C",
        "never warmed",
        "never warmed",
    ]
    none = "none: heat does not soften it"
    assert [row[1] for row in rows(body="acrylic", sealant="grease")[1:5]] == [
        "80 °C",
        "heat does not soften it",
        none,
        none,
    ]
    data = ask(HEAT, body="acrylic").data
    assert {k: data[k] for k in ("body", "sealant", "taken_as", "lets_go", "kind", "sealant_first_c", "sealant_full_c", "heatings", "certainty")} == {
        "body": "acrylic", "sealant": "unknown", "taken_as": "rosin", "lets_go": True, "kind": "none", "sealant_first_c": 80, "sealant_full_c": 100,
        "heatings": 0, "certainty": "body: from memory; sealant: secondary",
    }  # fmt: skip


def test_the_rules_of_heating_are_handed_to_the_log():
    """Five heatings, steps of 25 °C, and plasticiser lost from celluloid: the table's rules for any material."""

    def said(body, passes):
        answer = ask(HEAT, body=body, sealant="shellac", passes=passes)
        return answer.data["stop"], [f.topic for f in answer.findings if f.topic in ("count", "step", "plasticiser")]

    assert said("celluloid", "40 °C; 40 °C; 40 °C; 40 °C") == (False, ["plasticiser"])
    assert said("celluloid", "40 °C; 40 °C; 40 °C; 40 °C; 40 °C") == (True, ["count", "plasticiser"])
    assert said("acrylic", "20 °C; 45 °C") == (False, [])
    assert said("acrylic", "20 °C; 45.5 °C") == (False, ["step"])
