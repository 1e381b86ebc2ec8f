"""What a fill says: nothing is suspected without a share below what is usual by more than its uncertainty."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.base.uncertainty import Component, combine
from pentools.calc.weighing.diagnosis import Drawn, Suspect, UsualShare, diagnose_fill, implied_pressure
from pentools.calc.weighing.expected import ExpectedVolume
from pentools.errors import InputError

SEAL = Suspect("head-seal", "the head seal", "air slips past", "turn it half down")
STROKE = Suspect("short-stroke", "a short stroke", "it stops early", "measure it")
PISTON = UsualShare(0.75, 0.88, 0.97)


def said(volume, u=0.01, *, expected=2.0, expected_u=0.0, start="drained", kept=(0.0, 0.0), usual=PISTON, **more):
    held = ExpectedVolume(expected, combine([Component("bore", expected_u)]), "what the stroke sweeps", ())
    drawn = Drawn(volume, u, 2.0, start, more.pop("told", True))
    return diagnose_fill(
        more.pop("family", "piston"),
        drawn,
        held,
        usual,
        suspects=more.pop("suspects", (SEAL, STROKE)),
        kept_ml=kept,
        **more,
    )


def test_below_the_lower_end_by_more_than_its_uncertainty_is_short():
    # 0.75 of 2 mL are 1.50 mL; two standard uncertainties are 0.02 mL
    short, unsure, usual = said(1.479), said(1.481), said(1.50)
    assert (short.verdict, unsure.verdict, usual.verdict) == ("short", "cannot tell", "as usual")
    assert (short.first_suspect, unsure.first_suspect, usual.first_suspect) == ("the head seal", "", "")
    assert [(f.level, f.topic) for f in short.findings] == [
        ("warning", "short"),
        ("warning", "suspect-head-seal"),
        ("note", "suspect-short-stroke"),
    ]
    assert short.findings[1].text == "The head seal: air slips past. Next test: turn it half down."
    assert [(f.level, f.topic) for f in unsure.findings] == [("note", "share-cannot-tell")]
    assert "Next test: fill, empty and fill again" in unsure.findings[0].text
    assert [(f.level, f.topic) for f in usual.findings] == [("ok", "full")]
    assert said(1.0, suspects=()).first_suspect == ""


def test_the_uncertainty_of_the_share_comes_from_both():
    # by hand: √(0.02² + (0.5·0.03)²)/2 with f = 0.5
    found = said(1.0, 0.02, expected_u=0.03)
    assert found.share_filled == 0.5
    assert found.share_uncertainty == pytest.approx(math.hypot(0.02, 0.015) / 2)
    assert (
        "50\u202f% ± 2.5 of what the stroke sweeps; sound ones draw 75 to 97\u202f% of it (judged)"
        in found.findings[0].text
    )


def test_from_drained_the_feed_may_have_kept_its_part():
    # 0.32 mL of 2 mL: down to 0.59 may be usual until the pen's own feed was weighed
    unsure = said(1.30, kept=None)
    assert unsure.verdict == "cannot tell"
    assert "0.25 to 0.32 mL in three pens" in unsure.findings[0].text
    assert "Next test: dry it" in unsure.findings[0].text
    assert said(1.15, kept=None).verdict == "short"
    assert "not below 59\u202f% even where the feed kept some" in said(1.15, kept=None).findings[0].text
    known = said(1.30, kept=(0.05, 0.09))
    assert known.verdict == "short"
    assert known.usual.low == pytest.approx(0.75 - 0.045)
    assert said(0.2, expected=0.4, kept=None).usual.low == 0.0


def test_from_dry_the_feed_takes_its_part_besides():
    # to the top of what it sweeps and 0.32 mL more: 1.16 of 2 mL
    assert said(2.33, start="dry", kept=None).verdict == "as usual"
    more = said(2.35, start="dry", kept=None)
    assert more.verdict == "more than full"
    assert "more than its feed takes beside" in more.findings[0].text
    assert said(1.47, start="dry", kept=None).verdict == "short"  # the feed never makes it draw less
    assert said(2.05).verdict == "more than full"
    assert "feed" not in said(2.05).findings[0].text


def test_the_published_drained_pair_is_no_bad_seal():
    # a collectors' wiki: 23.57 g drained, 25.06 g filled; bore 9 mm and stroke 28.3 mm sweep 1.80 mL
    assert said(1.481, 0.024, expected=1.800, expected_u=0.015, kept=None).verdict == "as usual"


@pytest.mark.parametrize(("low", "high", "share"), [(0.55, 0.85, 0.91), (0.80, 0.97, 0.80), (0.45, 0.75, 0.95)])
def test_up_to_the_whole_volume_is_no_fault(low, high, share):
    found = said(2 * share, usual=UsualShare(low, (low + high) / 2, high))
    assert (found.verdict, found.first_suspect) == ("as usual", "")


def test_a_poorly_known_share_says_so():
    # two standard uncertainties of 14 points against 13 from the typical share down to the lower end
    assert [f.topic for f in said(1.8, 0.14).findings] == ["full", "share-uncertain"]
    assert [f.topic for f in said(1.8, 0.12).findings] == ["full"]


def test_the_share_of_the_bench_stands_with_how_sure_it_is():
    own = said(1.7, usual=UsualShare(0.86, 0.9, 0.94, "measured here"))
    assert own.verdict == "cannot tell" or own.verdict == "short"
    assert "(measured here)" in own.findings[0].text
    assert own.usual.certainty == "measured here"


def test_nothing_without_a_volume_or_with_an_unknown_start():
    with pytest.raises(InputError):
        said(1.0, expected=0.0)
    with pytest.raises(InputError):
        said(1.0, start="wet")
    assert said(0.0, 0.02).verdict == "short"


@pytest.mark.parametrize(
    ("share", "kpa"), [(0.95, 5.0), (0.90, 10.1), (0.80, 20.1), (0.70, 30.2), (0.50, 50.4), (0.30, 70.5)]
)
def test_implied_pressure(share, kpa):
    # worked by hand: (101.325 - 0.587) (1 - f)
    assert implied_pressure(share, 0.011).pressure_kpa == pytest.approx(kpa, abs=0.05)
    assert implied_pressure(share, 0.011).standard_uncertainty_kpa == pytest.approx(100.738 * 0.011, abs=1e-3)


def test_above_what_can_be_told_there_is_only_a_bound():
    bound = implied_pressure(0.99, 0.011)
    assert bound.at_most_kpa == pytest.approx(100.738 * (0.01 + 0.022), abs=1e-3)
    assert implied_pressure(0.90, 0.011).at_most_kpa is None
    assert implied_pressure(1.02, 0.011).pressure_kpa == 0
    assert implied_pressure(0.99, 0.011, coverage=0.5).at_most_kpa is None


def test_no_pressure_reaches_that_of_the_room():
    assert implied_pressure(0.022, 0.011) is None
    assert implied_pressure(0.0225, 0.011).pressure_kpa == pytest.approx(98.47, abs=0.01)
    assert implied_pressure(1.0, 0.5) is None  # at most 100.7 kPa: nothing
    assert implied_pressure(1.0, 0.49).at_most_kpa < 100.738


def test_the_air_outside_sets_the_implied_pressure():
    # 80 kPa outside, 60 mm of water: (80 - 0.587) 0.1
    assert implied_pressure(0.90, 0.01, ambient_kpa=80.0).pressure_kpa == pytest.approx(7.94, abs=0.005)
    assert implied_pressure(0.90, 0.01, liquid_head_mm=0.0).pressure_kpa == pytest.approx(10.13, abs=0.005)


@pytest.mark.parametrize(("share", "u"), [(-0.1, 0.01), (1.6, 0.01), (0.5, -0.1), (float("nan"), 0.1)])
def test_impossible_shares_are_refused(share, u):
    with pytest.raises(InputError):
        implied_pressure(share, u)


def test_a_plunger_tells_its_pressure_or_a_bound_or_nothing():
    short = said(1.5, family="plunger").findings[-1]
    assert short.topic == "vacuum"
    assert "25 kPa ± 1 of air was left behind the washer (outside it is 101 kPa)" in short.text
    assert "look just the same" in short.text
    full = said(1.99, family="plunger", ambient_kpa=100.0)
    # 99.413 (0.005 + 0.01) = 1.5 kPa
    assert full.findings[-1].topic == "vacuum-bound"
    assert "at most 1.5 kPa" in full.findings[-1].text
    assert "a vacuum of at least 99 kPa" in full.findings[-1].text
    for nothing in (said(0.1, 0.2, family="plunger"), said(1.5, family="plunger", told=False), said(1.5)):
        assert nothing.implied is None
        assert not any(f.topic.startswith("vacuum") for f in nothing.findings)


@given(st.floats(0.0, 3), st.floats(0.001, 0.5), st.floats(0.1, 3), st.sampled_from(["dry", "drained"]))
def test_every_share_gets_a_verdict_with_words(drawn, u, expected, start):
    result = said(drawn, u, expected=expected, start=start, kept=None, family="plunger")
    assert all(f.text for f in result.findings)
    assert bool(result.first_suspect) == (result.verdict == "short")
    if result.verdict == "short":
        assert result.share_filled + 2 * result.share_uncertainty < 0.75
    if result.implied is not None:
        bound = result.implied.at_most_kpa
        assert max(result.implied.pressure_kpa, bound or 0.0) < 101.325
