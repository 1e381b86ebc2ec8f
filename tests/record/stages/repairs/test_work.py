"""What waits, what is away, and the clocks of what was mended."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.entries import new_entry
from pentools.record.holds import held
from pentools.record.spending import spending_of
from pentools.record.stages.repairs.kinds import Repair
from pentools.record.stages.repairs.work import (
    away,
    clock_sentence,
    curing,
    faults_waiting,
    holds_for_now,
    mended,
    topics_of,
)

NOON = dt.datetime(2026, 3, 14, 12, tzinfo=dt.UTC)
WELD = {"part": "cap", "method": "cap-lip-weld"}


def answer(job, action, agreed="yes"):
    job.add("agree", "answer", {"action": action, "agreed": agreed, "answered_on": "2026-03-10", "channel": "letter"})


def put(job, at, kind="repair", stage="repairs", **data):
    entry = new_entry(stage, kind, data, at=at)
    job.record.append(entry)
    return entry


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": "celluloid"})
    return job


def test_a_weld_waits_for_material_yes_and_trial(new_job):
    job = new_job()
    weld = Repair(**WELD)
    assert topics_of(job, weld) == ("unknown", "consent", "test spot")
    job.add("intake", "arrival", {"pen": "a pen", "material": "celluloid"})
    answer(job, "mend")
    assert topics_of(job, weld) == ("test spot",)
    job.add("repairs", "test spot", {**WELD, "passed": "no"})
    assert topics_of(job, weld) == ("test failed",)
    job.add("repairs", "test spot", {**WELD, "passed": "yes"})
    assert topics_of(job, weld) == ()
    answer(job, "mend", "no")
    assert topics_of(job, weld) == ("refused",)


def test_a_trial_on_another_part_or_for_another_way_says_nothing(job):
    answer(job, "mend")
    job.add("repairs", "test spot", {"part": "barrel", "method": "barrel-weld", "passed": "yes"})
    assert topics_of(job, Repair(**WELD)) == ("test spot",)
    assert topics_of(job, Repair(part="barrel", method="barrel-weld")) == ()


@pytest.mark.parametrize("material", ["ebonite", "casein", "acrylic", "phenolic"])
def test_solvent_is_for_what_it_dissolves(job, material):
    answer(job, "mend")
    job.add("open", "material", {"part": "cap", "material": material, "sure": "yes"})
    assert "unfit" in topics_of(job, Repair(**WELD))
    assert "unfit" not in topics_of(job, Repair(part="barrel", method="barrel-weld")), "each part by its own material"


def test_not_sure_is_not_named(job):
    job.add("open", "material", {"part": "cap", "material": "celluloid", "sure": "no"})
    assert "unknown" in topics_of(job, Repair(**WELD))


def test_the_bench_may_forbid_more_than_the_table(job):
    answer(job, "mend")
    job.add("repairs", "test spot", {**WELD, "passed": "yes"})
    said = {"material": "celluloid", "treatment": "solvent weld", "verdict": "never", "reason": "it is crazed"}
    job.add("open", "overrule", said)
    assert topics_of(job, Repair(**WELD)) == ("treatment",)


def test_a_way_of_another_part_is_refused_with_those_there_are(job):
    with pytest.raises(InputError, match="a way of mending the clip: washer or screw: cleaned and tightened"):
        topics_of(job, Repair(part="clip", method="cap-lip-weld"))


def test_colour_waits_for_a_rubbing_and_a_yes(job):
    fill = Repair(part="imprint", method="imprint-fill")
    assert topics_of(job, fill) == ("consent", "rubbing")
    job.add("repairs", "imprint", {"seen": "faint", "rubbing": "yes"})
    answer(job, "colour")
    assert topics_of(job, fill) == ()


def test_the_clock_of_a_weld_counts_from_when_it_was_done(job):
    put(job, NOON, **WELD)
    [one] = curing(job, NOON + dt.timedelta(days=20))
    assert one.stands.usual == NOON + dt.timedelta(days=21)
    assert curing(job, NOON + dt.timedelta(days=22)) == ()
    assert clock_sentence(one, NOON + dt.timedelta(days=6)) == (
        "The cap (solvent weld) stands until 04 April 12:00, 15 days yet, before it bears load or meets an abrasive. "
        "The shortest time is over on 21 March."
    )
    assert "is over." in clock_sentence(one, NOON + dt.timedelta(days=8))
    later = NOON + dt.timedelta(days=21)
    assert clock_sentence(one, later) == "The cap (solvent weld) has had its time since 04 April 12:00."


def test_said_later_and_corrected_the_clock_keeps_its_start(job):
    ago = {"value": 24.0, "unit": "h", "typed": "24 h"}
    first = put(job, NOON, **WELD, ago=ago)
    corrected = {**WELD, "ago": ago, "where": "lip"}
    job.record.append(new_entry("repairs", "repair", corrected, replaces=first.id, at=NOON + dt.timedelta(days=3)))
    assert mended(job)[0].stands.earliest == NOON + dt.timedelta(days=6)


def test_a_weld_that_stands_holds_polishing_and_nothing_else_does(job):
    job.add("finish", "masks on", {"masks": "yes"})
    answer(job, "polish")
    assert held(job, "polish") == ""
    job.add("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-set"})
    assert held(job, "polish") == ""
    job.add("repairs", "repair", WELD)
    assert held(job, "polish") == "a weld has not stood its time yet"


def test_the_faults_of_the_survey_wait_until_something_is_done_or_left(job):
    for part, severity in (("cap", "2"), ("clip", "3"), ("nib", "0"), ("seals", "4")):
        put(job, NOON, "part", "condition", part=part, seen=f"a fault of the {part}", severity=severity)
    assert [(f.part, f.severity) for f in faults_waiting(job)] == [("clip", 3), ("cap", 2)]
    put(job, NOON + dt.timedelta(hours=1), part="clip", method="clip-leave")
    assert [f.part for f in faults_waiting(job)] == ["cap"]
    job.add("limits", "limit", {"part": "cap", "left": "a hairline", "why": "it is stable"})
    assert faults_waiting(job) == ()
    put(job, NOON + dt.timedelta(hours=2), "part", "condition", part="clip", seen="it broke", severity="4")
    assert [f.seen for f in faults_waiting(job)] == ["it broke"], "a fault found later waits again"


def test_a_part_of_which_nobody_said_how_bad_it_is_waits_for_nothing(job):
    job.record.append(new_entry("condition", "part", {"part": "clip", "seen": "It rocks."}))
    assert faults_waiting(job) == ()


def test_a_part_is_away_until_it_is_back_and_its_cost_counts(job):
    job.add("agree", "estimate", {"ceiling": "100 EUR"})
    put(job, NOON, "sent out", part="nib", work="tipping", sent_on="2026-03-14")
    assert set(away(job)) == {"nib"}
    back = {"part": "nib", "back_on": "2026-04-23", "done": "New tipping.", "cost": "60 EUR"}
    put(job, NOON + dt.timedelta(days=40), "back again", **back)
    assert away(job) == {}
    assert (spending_of(job).spent, spending_of(job).not_counted) == (60, ())
    put(job, NOON + dt.timedelta(days=41), "sent out", part="nib", work="tipping", sent_on="2026-04-24")
    assert set(away(job)) == {"nib"}


def test_what_holds_for_now_is_as_was_said_else_as_is_usual(job):
    for method, said in (("wax", ""), ("wax", "no"), ("bush", "yes"), ("bush", "")):
        job.add("repairs", "repair", {"part": "blind-cap", "method": f"blind-cap-{method}", "for_now": said})
    assert [holds_for_now(one) for one in mended(job)] == [True, False, True, False]


def test_the_benchs_own_time_to_stand_is_handed_on(job):
    put(job, NOON, **WELD, stands={"value": 720.0, "unit": "h", "typed": "720 h"})
    assert mended(job)[0].stands.usual == NOON + dt.timedelta(days=30)
