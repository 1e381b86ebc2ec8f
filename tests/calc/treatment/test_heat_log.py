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


@pytest.mark.parametrize(
    ("name", "low", "high", "off"),
    [("limit_c", 30, 150, 0.1), ("stop_after", 1, 50, 1), ("thermometer_c", 0, 20, 0.1)],
)
def test_both_ends_of_every_range(name, low, high, off):
    def read(value):
        more = {"limit_c": 60, name: value}
        return read_heat_log([], more.pop("limit_c"), **more)

    read(low)
    read(high)
    for value in (low - off, high + off):
        with pytest.raises(InputError):
            read(value)


def test_the_thermometer_and_the_step_as_they_are_given():
    near = read_heat_log([HeatPass(55)], 60, thermometer_c=6)
    assert topics(near) == {"near-limit": "warning"}
    assert "within 6 °C" in near.findings[0].text
    assert topics(read_heat_log([HeatPass(30), HeatPass(41)], 60, largest_step_c=10)) == {"step": "warning"}
    assert topics(read_heat_log([HeatPass(30), HeatPass(40)], 60, largest_step_c=10)) == {}


def test_heatings_are_counted_from_one_and_listed():
    log = read_heat_log([HeatPass(61), HeatPass(None), HeatPass(62, moved="x")], 60)
    assert (log.over_limit, log.not_measured, log.passes, log.left) == ((1, 3), (2,), 3, 2)
    assert "Heating 1, 3 went above the limit of 60 °C" in log.findings[0].text
    assert [f.level for f in log.findings] == ["stop", "warning"]


def test_plasticiser_is_counted_in_words():
    one, two = (read_heat_log([HeatPass(40)] * n, 60, nitrate=True).findings[-1].text for n in (1, 2))
    assert one.startswith("1 heating so far")
    assert two.startswith("2 heatings so far")
    assert "plasticiser" not in topics(read_heat_log([], 60, nitrate=True))
