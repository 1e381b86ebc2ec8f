"""Seats worked out from what was measured, and what was found at them in other pens."""

import pytest

from pentools.record.job import create_job
from pentools.record.stages.seal.measure import candidates, work_out
from pentools.record.stages.seal.sealing import SEAL
from pentools.record.stages.seal.seats import seen_in_other_pens
from pentools.record.stages.seal.trials import next_trial, passed_places


def measure(job, place, **sizes):
    job.add("seal", "measure", {"place": place, **sizes})


def test_each_seat_is_worked_out_from_its_own_measures(job):
    measure(job, "bulb", nipple="6.60 mm", mouth="6.00 mm")
    assert work_out(job, "bulb").data["value"] == pytest.approx(0.1)
    assert work_out(job, "bulb").sentence.startswith("The bulb on the barrel’s end fits. It stretches the mouth by 10")
    measure(job, "breather", tube="1.90 mm", tube_hole="2.00 mm", reach="52 mm", depth="55 mm")
    assert work_out(job, "breather").data["verdict"] == "too loose"
    assert work_out(job, "breather").table[-1] == ("from the tube’s end to the end of the barrel", "3 mm")
    measure(job, "inner-cap", lip="8.20 mm", mouth="7.60 mm", lip_reach="14.5 mm", lip_depth="14.0 mm")
    assert work_out(job, "inner-cap").data["verdict"] == "fits"
    measure(job, "collar", nipple="4.00 mm", mouth="4.10 mm")
    assert work_out(job, "collar").data["verdict"] == "too loose"


def test_without_what_it_needs_nothing_is_told(job):
    measure(job, "bulb", nipple="6.60 mm")
    assert work_out(job, "bulb") is None
    measure(job, "diaphragm", groove="8.20 mm", rubber="9.80 mm")
    assert work_out(job, "diaphragm") is None
    assert next_trial(job, "diaphragm") is None


def test_the_benchs_calliper_decides_what_can_be_told(job):
    measure(job, "breather", tube="2.05 mm", tube_hole="2.00 mm")
    assert work_out(job, "breather").data["verdict"] == "cannot tell"


def test_a_pneumatic_ring_is_chosen_from_the_tables(job):
    measure(job, "tube-ring", rod="4.00 mm", housing="6.90 mm", width="2.40 mm")
    fit = candidates(job, "tube-ring")
    assert fit.duty.key == "low-friction"
    assert fit.gland.kind == "packing"
    measure(job, "tube-ring", rod="4.00 mm", housing="6.90 mm", width="2.40 mm", duty="static")
    assert candidates(job, "tube-ring").duty.key == "static"


def test_a_bellows_sac_is_pleated_unless_said(job):
    job.add("intake", "arrival", {"pen": "a pen", "system": "bellows"})
    measure(job, "sac", bore="8.00 mm", nipple="6.00 mm", sac="6.80 mm")
    assert work_out(job, "sac").data["material"] == "pleated"
    measure(job, "sac", bore="8.00 mm", nipple="6.00 mm", sac="6.80 mm", material="latex")
    assert work_out(job, "sac").data["material"] == "latex"


def test_a_diaphragm_passes_by_its_trial_alone(job):
    job.add(
        "seal",
        "trial",
        {"place": "diaphragm", "what": "moulded, 9.8 mm", "dry": "yes", "happened": "pulls back", "lot": "D-2"},
    )
    assert passed_places(job) == {"diaphragm": True}
    assert SEAL.state_of(job).word == "open"


def test_what_was_there_is_found_again_from_the_next_pen(job, bench):
    other = create_job(bench, "pen-b")
    for name, system in (("pen-c", "bulb"), ("pen-d", "diaphragm-pump")):
        older = create_job(bench, name)
        older.add("intake", "arrival", {"pen": "a pen", "system": system})
        measure(older, "diaphragm", groove="8.20 mm", was="moulded, hard", was_outside="9.6 mm", was_length="17 mm")
        older.add(
            "seal",
            "trial",
            {"place": "diaphragm", "what": "new one", "outside": "9.80 mm", "dry": "yes", "happened": "pulls back"},
        )
    (bench.folder / "pen-b" / "record.jsonl").write_bytes(b"{")
    [seen] = seen_in_other_pens(bench, "diaphragm-pump", "diaphragm", without=other.name)
    assert (seen.job, seen.was, seen.fitted) == (
        "pen-d",
        "moulded, hard, 9.60 mm outside, 17.00 mm long",
        "new one, 9.80 mm outside",
    )
    assert seen_in_other_pens(bench, "diaphragm-pump", "diaphragm", without="pen-d") == ()
    assert seen_in_other_pens(bench, "diaphragm-pump", "bulb") == ()
