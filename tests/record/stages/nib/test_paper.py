"""The nib on paper from the record: each figure from its own entry, as found and after."""

import pytest

from pentools.errors import InputError
from pentools.record.stages.nib.kinds import FlexTest
from pentools.record.stages.nib.paper import (
    answer_of,
    flex_of,
    flex_past_limit,
    flow_of,
    metal_of,
    paper_findings,
    past_limit,
    writes,
)
from pentools.units import Reading

PAGE = {"ink": "a blue iron-gall ink", "paper": "smooth pad paper", "wetness": "rather wet"}
FLEX = {"loads": "15 g; 60 g", "widths": "0.50 mm; 1.00 mm"}


def topics(found):
    return [f.topic for f in found]


def test_nothing_written(job):
    assert (writes(job), flow_of(job, "after"), flex_of(job, "after")) == (None, None, None)


def test_each_moment_has_its_own_line(job):
    job.add("nib", "writing test", {"when": "found", **PAGE, "wetness": "dry"})
    job.add("nib", "lines", {"when": "found", "line": "0.40 mm"})
    assert (writes(job).when, writes(job).line_u_mm) == ("found", 0.025)
    job.add("nib", "writing test", {"when": "after", **PAGE})
    job.add(
        "nib",
        "lines",
        {
            "when": "after",
            "line": "0.523 ± 0.004 mm",
            "pressed": "0.8 mm",
            "ratio": "1.4",
            "skips": "3",
            "written": "6 m",
            "drawn": "yes",
        },
    )
    job.add("nib", "start", {"when": "after", "way": "12 mm"})
    found = writes(job)
    assert (found.when, found.line.value, found.line_u_mm, found.pressed.value, found.ratio) == (
        "after",
        0.523,
        0.004,
        0.8,
        1.4,
    )
    assert (found.skips_per_m, found.start.value, found.drawn) == (0.5, 12, True)
    assert (found.ink, found.paper, found.wetness) == ("a blue iron-gall ink", "smooth pad paper", "rather wet")
    assert (writes(job, "found").wetness, writes(job, "found").drawn) == ("dry", False)


def test_skips_without_a_length_are_no_rate(job):
    job.add("nib", "lines", {"when": "after", "line": "0.5 mm", "skips": "3"})
    assert (writes(job).skips, writes(job).skips_per_m) == (3, None)
    job.add("nib", "lines", {"when": "after", "line": "0.5 mm", "skips": "3", "written": "4.9 m"})
    assert writes(job).skips_per_m is None, "of less than five metres it is no rate"
    job.add("nib", "lines", {"when": "after", "line": "0.5 mm", "skips": "0", "written": "5 m"})
    assert writes(job).skips_per_m == 0


def test_flow_takes_the_balance_of_the_fill_test_and_the_width_of_the_line(job):
    job.add("nib", "flow", {"when": "after", "before": "23.5120 g", "after": "23.4220 g", "length": "18 m"})
    assert flow_of(job, "after").data["verdict"] == "about", "the bench's own balance shows a hundredth"
    job.add("fill test", "setup", {"readability": "0.0001 g"})
    assert flow_of(job, "after").data["verdict"] == "number"
    assert flow_of(job, "found") is None
    job.add("nib", "lines", {"when": "after", "line": "0.2 mm"})
    assert "flow-ceiling" in topics(flow_of(job, "after").findings)
    assert "flow-ceiling" in topics(paper_findings(job))


def test_flow_before_and_after_is_compared(job):
    job.add("fill test", "setup", {"readability": "0.0001 g"})
    for when, after in (("found", "23.4660 g"), ("after", "23.4220 g")):
        job.add("nib", "flow", {"when": when, "before": "23.5120 g", "after": after, "length": "18 m"})
    assert "wetter than before" in " ".join(f.text for f in paper_findings(job))


def test_a_test_that_gives_no_result_is_said_and_spoils_nothing(job):
    job.add("nib", "flow", {"when": "after", "before": "23.42 g", "after": "23.52 g", "length": "18 m"})
    with pytest.raises(InputError):
        flow_of(job, "after")
    assert "test-refused" in topics(paper_findings(job))


@pytest.mark.parametrize(
    ("material", "metal"), [("gold", "gold"), ("stainless steel", "steel"), ("gold plated steel", "steel"), ("brass", "other"), ("unknown", None)],
)  # fmt: skip
def test_the_metal_is_that_of_the_opening(job, material, metal):
    assert metal_of(job) is None
    job.add("open", "material", {"part": "nib", "material": material, "sure": "yes"})
    assert metal_of(job) == metal


def test_flex_is_held_to_the_metal(job):
    job.add("nib", "flex", {"when": "after", **FLEX, "loads": "15 g; 160 g"})
    assert "flex-load" in topics(flex_of(job, "after").findings)
    assert flex_past_limit(job)
    job.add("open", "material", {"part": "nib", "material": "stainless steel", "sure": "yes"})
    assert "flex-load" not in topics(flex_of(job, "after").findings)
    assert not flex_past_limit(job)


@pytest.mark.parametrize(
    ("most", "metal", "maximum", "held"),
    [
        (60, None, None, ""), (150, None, None, ""), (151, None, None, "nobody said the metal"), (151, "gold", None, "a gold nib"),
        (200, "steel", None, ""), (60, "steel", True, "never driven"), (60, None, True, "never driven"), (60, "gold", False, ""),
    ],
)  # fmt: skip
def test_what_is_past_a_limit(job, most, metal, maximum, held):
    said = FlexTest(when="after", loads=(Reading(15, "gf"), Reading(most, "gf")), metal=metal, maximum=maximum)
    reason = past_limit(job, said)
    assert held in reason
    assert bool(reason) is bool(held)


def test_a_test_not_saved_yet_is_answered_like_one_that_is(job):
    said = FlexTest(
        when="after", loads=(Reading(15, "gf"), Reading(60, "gf")), widths=(Reading(0.5, "mm"), Reading(1.0, "mm"))
    )
    job.add("nib", "flex", {"when": "after", **FLEX})
    assert answer_of(job, said).data == flex_of(job, "after").data


def test_unlike_tests_and_late_starts_are_named(job):
    job.add("nib", "writing test", {"when": "found", **PAGE})
    job.add("nib", "writing test", {"when": "after", **PAGE})
    assert paper_findings(job) == ()
    job.add("nib", "writing test", {"when": "after", **PAGE, "paper": "rough paper"})
    assert topics(paper_findings(job)) == ["unlike-test"]
    job.add("nib", "start", {"when": "after", "way": "30 mm", "starts": "7"})
    assert topics(paper_findings(job)) == ["unlike-test", "starts-few"]
    job.add("nib", "start", {"when": "after", "way": "0 mm", "starts": "10"})
    assert topics(paper_findings(job)) == ["unlike-test"]
