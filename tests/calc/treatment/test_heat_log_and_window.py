"""Heat windows and logs of heatings."""

import pytest

from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.heat_log import HeatPass, read_heat_log
from pentools.calc.treatment.heat_window import heat_window
from pentools.errors import InputError

LIMITS, SEALANTS = tables.rows("heat_limits"), tables.rows("joint_sealants")


def window(body, sealant):
    return heat_window(body, sealant, LIMITS, SEALANTS)


def topics(result):
    return {finding.topic: finding.level for finding in result.findings}


def test_celluloid_with_shellac_in_words():
    found = window("celluloid", "shellac")
    for words in ("no margin", "warm", "test", "rest", "repeat", "each heating costs plasticiser"):
        assert words in found.verdict
    assert any(f.topic == "nitrate" and f.text.endswith(CLOSING_LINE) for f in found.findings)
    assert found.sources == ("wiki", "trade", "cool-shellac")
    assert found.certainty == "body: trade; sealant: primary"


@pytest.mark.parametrize("body", ["degrading celluloid", "cork", "latex"])
def test_what_is_never_warmed(body):
    found = window(body, "shellac")
    assert found.kind == "no heat"
    assert found.body_limit_c is None
    assert found.window_first_c is None
    assert topics(found)["window"] == "stop"


@pytest.mark.parametrize("body", ["unknown", "", "some resin nobody knows"])
def test_an_unnamed_body_gets_no_heat(body):
    found = window(body, "shellac")
    assert found.kind == "no heat"
    assert topics(found)["window"] == topics(found)["not-named"] == "stop"
    assert found.body_limit_c == min(float(r["value"]) for r in LIMITS if r["rule"] == "working limit")


def test_words_follow_the_window():
    assert "20 °C of margin" in window("acrylic", "shellac").verdict
    assert "10 °C of margin to first softening" in window("hard rubber", "shellac").verdict
    assert "20 °C short" in window("celluloid", "rosin").verdict
    assert "never water" in window("casein", "shellac").verdict
    assert "plasticiser" not in window("acrylic", "shellac").verdict


def test_an_unknown_sealant_is_refused():
    with pytest.raises(InputError, match="sealant"):
        window("celluloid", "chewing gum")


def test_a_good_log():
    log = read_heat_log([HeatPass(45), HeatPass(52, moved="a little"), HeatPass(55, free=True)], 60, nitrate=True)
    assert (log.passes, log.hottest_c, log.over_limit, log.left, log.stop) == (3, 55, (), 2, False)
    assert topics(log) == {"free": "ok", "plasticiser": "note"}


@pytest.mark.parametrize(
    ("surface", "over", "near"), [(57.9, False, False), (58.1, False, True), (60, False, True), (60.1, True, False)]
)
def test_the_limit_is_a_limit(surface, over, near):
    log = read_heat_log([HeatPass(surface)], 60)
    assert bool(log.over_limit) == log.stop == over
    assert ("near-limit" in topics(log)) == near


def test_the_stop_count():
    assert not read_heat_log([HeatPass(50)] * 4, 60, stop_after=5).stop
    log = read_heat_log([HeatPass(50)] * 5, 60, stop_after=5)
    assert log.stop
    assert log.left == 0
    assert topics(log)["count"] == "stop"
    freed = read_heat_log([*[HeatPass(50)] * 4, HeatPass(50, free=True)], 60, stop_after=5)
    assert not freed.stop


def test_what_was_not_measured_is_said():
    log = read_heat_log([HeatPass(None), HeatPass(50)], 60)
    assert log.not_measured == (1,)
    assert topics(log)["not-measured"] == "warning"
    assert read_heat_log([HeatPass(None)], 60).hottest_c is None


def test_steps_too_large_and_breaks():
    log = read_heat_log([HeatPass(25), HeatPass(51, broke="a crack at the lip")], 60)
    assert topics(log)["step"] == "warning"
    assert topics(log)["broke"] == "stop"
    assert "step" not in topics(read_heat_log([HeatPass(25), HeatPass(50)], 60))


def test_heat_on_what_is_never_warmed():
    assert topics(read_heat_log([HeatPass(40)], None)) == {"no-heat": "stop"}
    assert not read_heat_log([], None).findings


@pytest.mark.parametrize("bad", [{"stop_after": 0}, {"largest_step_c": 0}, {"thermometer_c": -1}])
def test_figures_out_of_range(bad):
    with pytest.raises(InputError):
        read_heat_log([], 60, **bad)
    with pytest.raises(InputError):
        read_heat_log([], 600)
