"""The seal stage's record: measured by place, sizes proposed by bisection, the gate for sealant, tests and tools."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.forms import form_with
from pentools.record.holds import held
from pentools.record.job import create_job, open_job
from pentools.record.stages.seal.kinds import TOOL, Tool
from pentools.record.stages.seal.measure import gland_of
from pentools.record.stages.seal.proof import clock_words, mechanism_of
from pentools.record.stages.seal.sealing import (
    SEAL,
    candidates,
    dry_fit_passed,
    earliest_next_step,
    measured,
    next_trial,
    passed_places,
    proofs_done,
    results_that_count,
    suspects,
    tools_on_bench,
    trials,
    work_out,
)  # fmt: skip

HEAD = {"bore": "8.30 mm; 8.32 mm; 8.29 mm", "bore_deep": "8.31 mm; 8.33 mm; 8.30 mm", "groove": "5.30 mm", "width": "2.40 mm", "head": "8.10 mm"}  # fmt: skip
WASHER = {"place": "washer", "bore": "8.30 mm; 8.30 mm", "rod": "2.40 mm"}
STOCK = ("1.52x5.1", "1.58x5.1", "1.63x5.15", "1.70x5.2", "1.78x5.28", "1.83x5.3")


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def job(bench):
    job = create_job(bench, "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    return job


def with_stock(job, rings=STOCK):
    path = job.bench.folder / "bench.toml"
    text = ", ".join(f'"{ring}"' for ring in rings)
    path.write_text(path.read_text().replace("rings = []", f"rings = [{text}]"))
    return open_job(job.name, bench=open_bench_folder(job.bench.folder))


def try_washer(job, size, happened, dry="yes"):
    return job.add(
        "seal", "trial",
        {"place": "washer", "what": f"washer {size}", "outside": f"{size} mm", "dry": dry, "happened": happened},
    )  # fmt: skip


def test_places_are_measured_by_themselves_and_the_newest_counts(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    job.add("seal", "measure", WASHER)
    job.add("seal", "measure", {**WASHER, "rod": "2.50 mm"})
    assert measured(job, "washer").rod.value == 2.5
    assert measured(job, "head").groove.value == 5.3
    assert measured(job, "packing").rod is None
    assert candidates(job, "packing") is None
    assert work_out(job, "head") is None


def test_six_readings_make_mean_and_ovality_and_the_bench_its_calliper(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    gland = gland_of(job, "head")
    # worked by hand: (8.30 + 8.32 + 8.29 + 8.31 + 8.33 + 8.30)/6, 8.33 - 8.29, 0.02 mm times the root of three
    assert gland.outer_mm == pytest.approx(8.3083, abs=1e-4)
    assert gland.ovality_mm == pytest.approx(0.04)
    assert gland.half_width_mm == pytest.approx(0.03464, abs=1e-5)


def test_candidates_come_from_both_tables_and_the_drawer(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    names = {c.designation for c in candidates(job, "head").candidates}
    assert {"009", "5.28x1.78"} <= names
    assert not [name for name in names if name.startswith("own ")]
    own = [c for c in candidates(with_stock(job), "head").candidates if c.designation.startswith("own ")]
    assert len(own) == len(STOCK)
    assert all(c.fit.ring.measured for c in own)


def test_a_gland_that_contradicts_itself_is_said_and_stays_in_the_way_of_nothing(job):
    job.add("seal", "measure", {"place": "head", "bore": "5.0 mm", "groove": "5.3 mm"})
    with pytest.raises(InputError, match="groove diameter"):
        candidates(job, "head")
    assert [f.topic for f in SEAL.checks(job)] == ["measure"]
    job.add("seal", "trial", {"place": "head", "what": "a ring", "section": "1.7 mm", "dry": "yes", "happened": "pulls back"})  # fmt: skip
    assert dry_fit_passed(job) is True


def test_the_ladder_halves_what_is_left(job):
    job.add("seal", "measure", WASHER)
    # the window of a flat washer is 0.1 to 0.3 mm above the bore of 8.30 mm: 8.5 mm to begin with
    assert next_trial(job, "washer").sizes_mm == (8.3, 8.4, 8.5, 8.6, 8.7)
    assert next_trial(job, "washer").step.next_mm == 8.5
    try_washer(job, 8.7, "too stiff")
    assert next_trial(job, "washer").step.next_mm == 8.4
    try_washer(job, 8.4, "slides, no suction")
    assert next_trial(job, "washer").step.next_mm == 8.5
    try_washer(job, 8.5, "no touch")
    assert next_trial(job, "washer").what == "flat of 8.60 mm"
    try_washer(job, 8.6, "pulls back")
    step = next_trial(job, "washer").step
    assert (step.next_mm, step.held_mm) == (None, 8.6)


def test_rings_go_by_their_outside_in_place_and_the_drawer_comes_first(job):
    job = with_stock(job)
    job.add("seal", "measure", {"place": "head", **HEAD})
    step = next_trial(job, "head")
    assert step.from_stock
    assert len(step.sizes_mm) == len(STOCK)
    # 5.3x1.83 lies on its groove of 5.30 mm unstretched: 5.30 + 2 × 1.83
    assert step.sizes_mm[-1] == pytest.approx(8.96)
    assert step.ring.measured
    job.add("seal", "trial", {"place": "head", "what": "thin one", "section": "1.52 mm", "inside": "5.30 mm", "dry": "yes", "happened": "no touch"})  # fmt: skip
    assert trials(job, "head")[0].size_mm == pytest.approx(5.3 + 2 * 1.52)


def test_a_sac_climbs_by_its_numbers(job):
    job.add("seal", "measure", {"place": "sac", "bore": "8.00 mm; 7.90 mm", "nipple": "6.60 mm", "depth": "62 mm", "cleaned": "yes"})  # fmt: skip
    answer = work_out(job, "sac")
    assert answer.data["number"] == next(n for n in range(30, 5, -1) if n * 25.4 / 64 <= 6.60 + 0.25 * 25.4 / 64)
    step = next_trial(job, "sac")
    assert f"sac number {answer.data['number']}" in step.what


def test_nothing_tried_nothing_passed(job):
    assert dry_fit_passed(job) is False
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.5, "slides, no suction")
    assert dry_fit_passed(job) is False
    assert passed_places(job) == {"washer": False}


def test_only_a_dry_trial_that_pulls_back_passes(job):
    try_washer(job, 8.5, "pulls back", dry="no")
    assert dry_fit_passed(job) is False
    try_washer(job, 8.5, "pulls back")
    assert dry_fit_passed(job) is True


def test_the_same_size_that_fails_later_no_longer_passes(job):
    try_washer(job, 8.5, "pulls back")
    try_washer(job, 8.51, "slides, no suction")
    assert dry_fit_passed(job) is False
    try_washer(job, 8.6, "pulls back")
    assert dry_fit_passed(job) is True


def test_a_second_place_that_still_fails_keeps_the_gate_shut(job):
    try_washer(job, 8.5, "pulls back")
    packing = {"place": "packing", "what": "005", "section": "1.70 mm", "dry": "yes"}
    job.add("seal", "trial", {**packing, "happened": "slides, no suction"})
    assert passed_places(job) == {"packing": False, "washer": True}
    assert dry_fit_passed(job) is False
    assert [f.topic for f in SEAL.checks(job) if f.level == "warning"] == ["dry-fit"]
    job.add("seal", "trial", {**packing, "what": "another 005", "section": "1.79 mm", "happened": "pulls back"})
    assert dry_fit_passed(job) is True


def test_a_withdrawn_trial_does_not_pass(job):
    entry = try_washer(job, 8.5, "pulls back")
    job.withdraw(entry, "that was the other pen")
    assert dry_fit_passed(job) is False


def test_an_altered_part_begins_its_ladder_afresh(job):
    job.add("seal", "measure", WASHER)
    try_washer(job, 8.6, "pulls back")
    job.add("seal", "measure", {**WASHER, "bore": "8.20 mm", "altered": "yes"})
    assert trials(job, "washer") == ()
    assert dry_fit_passed(job) is False
    assert next_trial(job, "washer").step.next_mm == 8.4


def test_the_gate_stands_in_the_jobs_hold_points(job):
    assert "dry fit" in held(job, "sealant")
    try_washer(job, 8.5, "pulls back")
    assert held(job, "sealant") == ""


def test_the_clock_counts_the_longest_time_to_set(job):
    assert earliest_next_step(job) is None
    job.add("seal", "sealant", {"sealant": "grease", "place": "washer"})
    assert earliest_next_step(job) is None
    at = dt.datetime(2026, 3, 20, 10, 0, tzinfo=dt.UTC)
    hours = {"value": 24.0, "unit": "h", "u": None, "typed": "24 h"}
    five = {"value": 5.0, "unit": "min", "u": None, "typed": "5 min"}
    entry = job.record.append(
        new_entry(
            "seal", "sealant", {"sealant": "shellac", "place": "section", "cure": hours, "open_time": five}, at=at
        )
    )
    step = earliest_next_step(job)
    assert step.at == at + dt.timedelta(hours=24)
    assert clock_words(step, at + dt.timedelta(minutes=2)) == (
        "Earliest next step: 21 March 10:00, in 24 h; the shellac at the section joint has to set."
        " It can still be worked until 10:05."
    )
    assert "has had its time" in clock_words(step, at + dt.timedelta(hours=25))
    # a correction a day later does not start the clock again; an age typed beside it counts
    data = {**entry.data, "ago": {"value": 30.0, "unit": "min", "u": None, "typed": "30 min"}}
    job.record.append(new_entry("seal", "sealant", data, replaces=entry.id, at=at + dt.timedelta(days=1)))
    assert earliest_next_step(job).at == at + dt.timedelta(hours=23, minutes=30)


def test_what_the_pen_has(job):
    assert mechanism_of(job).system == "syringe"
    for system in ("lever-sac", "piston", "diaphragm-pump", "eyedropper", "safety"):
        job.add("intake", "arrival", {"pen": "x", "system": system})
        assert mechanism_of(job).system == system


@pytest.mark.parametrize(
    ("entry", "system"),
    [
        (None, "any"),
        ({"place": "sac", "bore": "8 mm"}, "lever-sac"),
        ({"place": "head", "bore": "8 mm", "groove": "5 mm"}, "piston"),
        ({"place": "packing", "rod": "3 mm"}, "plunger-vacuum"),
        ({"place": "section"}, "any"),
    ],
)
def test_a_pen_whose_system_is_not_named_is_asked_by_its_seals(bench, entry, system):
    job = create_job(bench, "nameless")
    if entry is not None:
        job.add("seal", "measure", entry)
    assert mechanism_of(job).system == system


def test_readings_are_judged_and_one_test_names_nothing(job):
    job.add("seal", "test", {"test": "spring-back", "pushed": "30 mm", "returned": "2 mm"})
    assert results_that_count(job) == {"spring-back": "none"}
    assert suspects(job).named == ""
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "bubbles"})
    job.add(
        "seal", "test", {"test": "overnight", "rested": "12 h", "overnight_seen": "at the rod's end", "damp": "knob"}
    )
    assert suspects(job).named == "packing"
    assert SEAL.state_of(job).word == "open"


def test_a_vacuum_is_read_off_its_gauge(job):
    job.add("seal", "test", {"test": "vacuum", "volume": "12 ml", "vacuum_start": "30 kPa", "vacuum_end": "29.8 kPa", "seconds": "10 min", "gauge": "0.5 kPa"})  # fmt: skip
    assert results_that_count(job) == {"vacuum": "holds"}
    job.add("seal", "test", {"test": "vacuum", "volume": "12 ml", "vacuum_start": "30 kPa", "vacuum_end": "5 kPa", "seconds": "20 s"})  # fmt: skip
    assert results_that_count(job) == {"vacuum": "decays"}
    job.add("seal", "test", {"test": "vacuum", "volume": "12 ml", "vacuum_start": "30 kPa", "vacuum_end": "30 kPa", "seconds": "5 s", "gauge": "2 kPa"})  # fmt: skip
    assert proofs_done(job)[-1].result == ""


def test_tests_from_before_a_change_do_not_count(job):
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "bubbles"})
    try_washer(job, 8.5, "pulls back")
    assert suspects(job) is None
    assert [t.counts for t in proofs_done(job)] == [False]
    for texts in (
        {"test": "spring-back", "pushed": "30 mm", "returned": "28 mm"},
        {"test": "shaft", "shaft_seen": "no bubbles"},
        {"test": "overnight", "rested": "14 h", "overnight_seen": "dry"},
    ):
        job.add("seal", "test", texts)
    assert suspects(job).findings[0].topic == "all-clear"
    assert SEAL.state_of(job).word == "done"


def test_a_tool_is_found_from_the_next_pen(bench, job):
    job.add("seal", "tool", {"tool": "tube", "purpose": "feed with a long tail", "inside_made": "2.00 mm", "outside_made": "4.80 mm", "length_made": "60 mm", "kept": "drawer 3"})  # fmt: skip
    other = create_job(bench, "next-pen")
    other.add("seal", "tool", {"tool": "tube", "purpose": "a thin one", "inside_made": "2.00 mm", "outside_made": "3.00 mm", "length_made": "10 mm"})  # fmt: skip
    assert [tool.job for tool in tools_on_bench(bench)] == ["next-pen", "test-pen"]
    assert all(tool.fits is None for tool in tools_on_bench(bench))
    wanted = form_with(Tool, TOOL.read({"tool": "tube", "purpose": "x", "tail": "1.80 mm", "shoulder": "4.20 mm", "bore": "5.00 mm", "depth": "18 mm", "clearance": "0.10 mm"})[0])  # fmt: skip
    # window: inside 1.90 to 3.70 mm, outside up to 4.90 mm, 23 mm long; the thin one is too short
    assert [(tool.job, tool.fits) for tool in tools_on_bench(bench, wanted)] == [
        ("test-pen", True),
        ("next-pen", False),
    ]
    assert tools_on_bench(bench, wanted)[0].words == (
        "knock-out tube: 2.00 mm inside, 4.80 mm outside, 60.00 mm long, for feed with a long tail"
    )


def test_states_say_what_is_next(job):
    assert SEAL.state_of(job).word == "not begun"
    job.add("seal", "measure", WASHER)
    assert SEAL.state_of(job).reason == "nothing was tried dry yet"
    try_washer(job, 8.4, "no touch")
    assert SEAL.state_of(job).reason == "no dry fit yet: washer on the head"
    try_washer(job, 8.5, "pulls back")
    assert SEAL.state_of(job).reason == "dry fit passed; the tests are still to do"
