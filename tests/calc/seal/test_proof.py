"""Vacuum decay, spring-back, and the pattern that names a seal."""

import itertools

import pytest

from pentools.calc.seal.faults import HOW, MECHANISMS, SUSPECTS, TESTS, suspect_seal
from pentools.calc.seal.proof import spring_back, vacuum_decay
from pentools.errors import InputError


def test_leak_is_volume_times_pressure_over_time():
    found = vacuum_decay(2.0, 60.0, 30.0, 60.0)
    assert found.leak_pa_m3_s == pytest.approx(2e-6 * 30e3 / 60)
    assert found.half_life_min == pytest.approx(1.0)
    assert found.leak_ml_per_min == pytest.approx(2.0 * 30 / 101.325)
    assert found.leak_uncertainty_pa_m3_s == pytest.approx(2e-6 * 2**0.5 * 1e3 / 60)


@pytest.mark.parametrize(
    ("start", "end", "seconds", "verdict"),
    [
        (60, 10, 60, "decays"),
        (60, 50, 60, "slow"),
        (60, 55, 600, "holds"),
        (60, 60, 600, "holds"),
        (60, 59, 20, "not told"),
        (60, 61, 600, "holds"),
        (60, 0, 30, "decays"),
    ],
)
def test_verdicts_of_a_vacuum(start, end, seconds, verdict):
    found = vacuum_decay(2.0, start, end, seconds)
    assert found.verdict == verdict
    assert found.findings


def test_a_loss_within_the_gauge_is_never_called_a_leak():
    assert vacuum_decay(2.0, 60, 58, 5, gauge_kpa=1.0).verdict == "not told"
    assert vacuum_decay(2.0, 60, 58, 5, gauge_kpa=0.1).verdict in ("slow", "decays")


@pytest.mark.parametrize(
    "values", [(2, 0, 0, 60), (2, 60, 70, 60), (2, 200, 0, 60), (0, 60, 50, 60), (2, 60, 50, 0), (2, 60, -3, 60)]
)
def test_vacuums_that_cannot_be(values):
    with pytest.raises(InputError, match="must be"):
        vacuum_decay(*values)


def test_spring_back():
    assert spring_back(30, 27).verdict == "returns"
    assert spring_back(30, 12).verdict == "part"
    assert spring_back(30, 0).verdict == "none"
    stiff = spring_back(30, 0, bore_mm=8, drag_n=6)
    assert stiff.can_return is False
    assert "cannot spring back" in stiff.findings[-1].text
    assert spring_back(30, 0, bore_mm=8, drag_n=2).can_return is True
    # a thick rod takes area from the room's pressure
    assert spring_back(30, 0, bore_mm=8, drag_n=4, rod_mm=5).can_return is False
    for values in ((1, 0), (30, 31), (30, -1)):
        with pytest.raises(InputError, match="way"):
            spring_back(*values)


@pytest.mark.parametrize("mechanism", MECHANISMS)
def test_no_single_test_names_a_seal(mechanism):
    for test, results in TESTS.items():
        for result in results:
            found = suspect_seal({test: result}, mechanism)
            assert found.named == "", (test, result)
            assert found.findings
            assert not any(f.level == "warning" for f in found.findings)


@pytest.mark.parametrize(
    ("results", "mechanism", "named"),
    [
        ({"spring-back": "none", "shaft": "bubbles", "overnight": "at the rod's end"}, "plunger", "packing"),
        ({"spring-back": "none", "shaft": "no bubbles"}, "plunger", "head"),
        ({"spring-back": "part", "overnight": "behind the head", "shaft": "no bubbles"}, "plunger", "head"),
        ({"spring-back": "returns", "vacuum": "decays", "overnight": "at the section"}, "plunger", "section"),
        ({"press": "bubbles go on", "overnight": "in the barrel"}, "sac", "sac"),
        ({"press": "bubbles at the joint", "overnight": "at the section"}, "sac", "section"),
        ({"overnight": "dry", "capped": "ink in the cap, pen dry when open", "vacuum": "holds"}, "piston", "inner cap"),
        (
            {"press": "bubbles stop", "overnight": "in the cap", "capped": "ink in the cap, pen dry when open"},
            "sac",
            "inner cap",
        ),
    ],
)
def test_patterns_name_a_seal(results, mechanism, named):
    found = suspect_seal(results, mechanism)
    assert found.named == named
    assert SUSPECTS[named] in found.findings[0].text
    assert found.suspicions[0].signs


def test_a_pattern_that_does_not_decide_asks_for_the_test_that_does():
    found = suspect_seal({"spring-back": "none"})
    assert found.named == ""
    assert found.next_test == "shaft"
    assert HOW["shaft"] in found.findings[0].text


def test_all_clear_needs_more_than_one_test():
    assert suspect_seal({"spring-back": "returns"}).findings[0].level == "note"
    assert suspect_seal({"spring-back": "returns", "overnight": "dry"}).findings[0].level == "ok"
    assert suspect_seal({}).findings[0].topic == "no-tests"


def test_a_named_seal_always_has_a_sign_and_a_second_test():
    for (a, ra), (b, rb) in itertools.combinations([(t, r) for t, results in TESTS.items() for r in results], 2):
        if a == b:
            continue
        found = suspect_seal({a: ra, b: rb})
        if found.named:
            first = found.suspicions[0]
            cleared = {c for other in found.suspicions[1:] for c in other.clears}
            assert first.signs
            assert len(set(first.signs) | cleared) >= 2


def test_what_is_not_known_is_refused():
    with pytest.raises(InputError, match="mechanism"):
        suspect_seal({}, "bulb")
    with pytest.raises(InputError, match="test must be"):
        suspect_seal({"smell": "bad"})
    with pytest.raises(InputError, match="result of the shaft test"):
        suspect_seal({"shaft": "dry"})
