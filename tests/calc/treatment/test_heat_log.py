"""Logs of heatings read back against the limit."""

import pytest

from pentools.calc.treatment.heat_log import HeatPass, read_heat_log
from pentools.errors import InputError


def topics(result):
    return {finding.topic: finding.level for finding in result.findings}


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
