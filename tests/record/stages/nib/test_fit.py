"""Nib, feed and cap from the record: known measures are not asked again, and what is not named is the strictest."""

import pytest

from pentools.record.stages.nib.fit import (
    clearance_of,
    fit_findings,
    nipple_of,
    reach_of,
    setting_findings,
    setting_window,
    window_for,
)
from pentools.record.stages.nib.kinds import FeedSetting


def topics(found):
    return [f.topic for f in found]


def name(job, **parts):
    for part, material in parts.items():
        job.add("open", "material", {"part": part, "material": material, "sure": "yes"})


def test_the_reach_as_found_is_the_intakes(job):
    assert reach_of(job, "found").value == 19.2
    assert reach_of(job, "after") is None
    job.add("nib", "fit", {"when": "found", "reach": "19.4 mm"})
    job.add("nib", "fit", {"when": "after", "reach": "19.9 mm"})
    assert (reach_of(job, "found").value, reach_of(job, "after").value) == (19.4, 19.9)


def test_the_caps_depth_is_measured_once(job):
    assert clearance_of(job, "found") is None
    job.add("nib", "fit", {"when": "found", "inner_cap": "20.5 mm"})
    found = clearance_of(job, "found")
    assert (found.verdict, found.clearance_mm) == ("clear", pytest.approx(1.3))
    assert clearance_of(job, "after") is None
    job.add("nib", "fit", {"when": "after", "reach": "20.3 mm"})
    assert clearance_of(job, "after").verdict == "may touch"
    assert topics(fit_findings(job)) == ["clearance"]
    assert "may touch" in fit_findings(job)[0].text


def test_what_was_typed_with_its_own_doubt_counts(job):
    job.add("nib", "fit", {"when": "found", "reach": "19.20 ± 0.02 mm", "inner_cap": "20.50 ± 0.02 mm"})
    assert clearance_of(job, "found").expanded_mm == pytest.approx(2 * 2**0.5 * 0.02, rel=1e-3)


def test_a_section_that_goes_past_the_mouth_is_not_reckoned_with(job):
    job.add("nib", "fit", {"when": "found", "inner_cap": "25 mm", "seated": "no"})
    assert clearance_of(job, "found").verdict == "cannot tell"


def test_a_nib_that_moved_asks_for_the_cap(job):
    job.add("nib", "fit", {"when": "after", "reach": "20.0 mm"})
    assert topics(fit_findings(job)) == ["reach-moved"]


@pytest.mark.parametrize(
    ("system", "nipple"), [("piston", "none"), ("lever-sac", "sac"), ("bulb", "none"), (None, "unknown")]
)
def test_the_filling_system_says_what_is_on_the_nipple(job, system, nipple):
    job.add("intake", "arrival", {"pen": "a pen", **({"system": system} if system else {})})
    assert nipple_of(job) == nipple


def test_the_window_follows_what_was_named(job):
    assert setting_window(job).kind == "never", "a feed that nobody named is not set by heat"
    name(job, feed="ebonite")
    assert (setting_window(job).kind, setting_window(job).strictest.material) == ("none", "not named")
    assert setting_window(job, alone=True).high_c == 97
    name(job, section="celluloid")
    assert (setting_window(job).kind, setting_window(job).high_c) == ("none", 60)
    name(job, section="phenolic")
    assert (setting_window(job).kind, setting_window(job).high_c) == ("open", 90)
    assert setting_window(job, nipple="sac").kind == "none"
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac"})
    assert setting_window(job).kind == "none"
    assert setting_window(job, nipple="bare").kind == "open"


def test_a_setting_that_does_not_say_so_was_done_in_the_section(job):
    name(job, feed="ebonite", section="celluloid")
    assert window_for(job, FeedSetting(way="water")).kind == "none"
    assert window_for(job, FeedSetting(way="water", alone=False)).kind == "none"
    assert window_for(job, FeedSetting(way="water", alone=True)).kind == "open"


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"way": "cold"}, []), ({"way": "water", "alone": "yes", "surface": "90 °C"}, []),
        ({"way": "water", "alone": "yes", "surface": "99 °C"}, ["setting-hot"]), ({"way": "water", "alone": "yes"}, ["setting-unmeasured"]),
        ({"way": "water", "surface": "75 °C"}, ["setting"]), ({"way": "dry", "alone": "yes", "surface": "80 °C"}, []),
    ],
)  # fmt: skip
def test_heat_past_what_it_bears_is_named(job, said, told):
    name(job, feed="ebonite", section="celluloid")
    job.add("nib", "feed setting", {"gap": "slides", **said})
    assert topics(setting_findings(job)) == told


@pytest.mark.parametrize(("gap", "told"), [("slides", []), ("falls", ["feed-off"]), ("refused", ["feed-tight"])])
def test_the_sheet_of_paper_says_whether_it_is_set(job, gap, told):
    job.add("nib", "feed setting", {"way": "cold", "gap": gap})
    assert topics(setting_findings(job)) == told
