"""The rates of an invented bench fit together: every kind of work has its minutes, every seal its work."""

import msgspec

from pentools.books.invented.truth import MINUTES, PACE, SEALS, SYSTEMS_OFTEN, Rates, Truth, work_for_seal
from pentools.record.stages.job.intake_kinds import REQUEST
from pentools.record.stages.job.work_kinds import WORK
from pentools.record.stages.seal.kinds import MEASURE, TRIAL
from pentools.systems.registry import SYSTEMS


def test_every_system_is_met_and_every_word_is_one_of_the_forms():
    assert set(SYSTEMS_OFTEN) == set(SYSTEMS)
    assert set(PACE) <= set(SYSTEMS)
    assert set(MINUTES) == {key for key, _ in REQUEST.field("work").choices}
    activities = {key for key, _ in WORK.field("activity").choices}
    assert {activity for minutes in MINUTES.values() for activity in minutes} <= activities
    places = {key for key, _ in MEASURE.field("place").choices}
    for row in SEALS.values():
        assert row.place in places
        assert {row.at} <= {field.name for field in MEASURE.fields}
        assert {row.by} <= {field.name for field in TRIAL.fields}


def test_the_work_that_a_seal_is():
    assert work_for_seal("plunger-vacuum", "washer") == "plunger"
    assert work_for_seal("syringe", "washer") == "cork or ring"
    assert work_for_seal("lever-sac", "silicone sac") == "re-sac"
    assert work_for_seal("diaphragm-pump", "diaphragm") == "diaphragm"


def test_a_truth_can_be_written_down_and_read_again():
    truth = Truth(1, "2026-10-31", Rates(), {"a|b": 0.5}, {"a|b|c": 3.0}, {}, (), ())
    assert msgspec.json.decode(msgspec.json.encode(truth), type=Truth) == truth
