"""The fill test in the record: which weighings make a filling, and what is handed on to the sum."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
from pentools.record.registry import find_stage
from pentools.record.stages.weighing.filling import (
    FROM_BENCH,
    capacity_of,
    cycles,
    kept_when_drained,
    setup_values,
    sum_values,
)
from pentools.record.stages.weighing.kinds import WEIGHING

STAGE = "fill test"


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def job(bench):
    job = create_job(bench, "one", sample=None)
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston"})
    return job


def weigh(job, *pairs):
    for state, mass in pairs:
        job.add(STAGE, "weighing", {"state": state, "mass": f"{mass} g"})


def test_runs_of_weighings_make_fillings(job):
    weigh(job, ("filled", "20.00"), ("dry", "18.30"), ("dry", "18.31"), ("filled", "20.10"), ("filled", "20.11"))
    weigh(job, ("drained", "18.50"), ("dry", "18.32"), ("drained", "18.52"), ("filled", "20.12"), ("drained", "18.51"))
    first, second = cycles(job)
    assert (first.start, first.empty_g, first.filled_g) == ("dry", (18.30, 18.31), (20.10, 20.11))
    assert (second.start, second.empty_g, second.filled_g) == ("drained", (18.52,), (20.12,))
    entries = [logged.entry.id for logged in job.log(WEIGHING)]
    assert first.empty_ids + first.filled_ids == tuple(entries[1:5])
    assert second.empty_ids + second.filled_ids == tuple(entries[7:9])


def test_the_digits_typed_are_handed_on(job):
    weigh(job, ("dry", "23.2"), ("filled", "25.0"))
    answer = capacity_of(job)
    assert answer.data["readability_g"] == 0.1
    assert answer.findings[0].topic == "digits-typed"
    assert answer.data["expanded_uncertainty_ml"] > 0.4
    assert [reading.typed for reading in cycles(job)[0].empty] == ["23.2 g"]


def test_the_digits_outlive_the_file(job, bench):
    weigh(job, ("dry", "23.20"), ("filled", "25.0"))
    assert capacity_of(open_job("one", bench=bench)).data["readability_g"] == 0.1


def test_the_start_is_handed_on(job):
    weigh(job, ("drained", "18.52"), ("filled", "20.10"))
    assert capacity_of(job).data["start"] == "drained"
    weigh(job, ("dry", "18.30"), ("filled", "20.10"))
    assert capacity_of(job).data["start"] == "dry"
    assert capacity_of(job, cycles(job)[0]).data["start"] == "drained"


def test_what_the_feed_keeps_comes_from_the_pens_own_weighings(job):
    weigh(job, ("drained", "18.60"), ("filled", "20.10"), ("dry", "18.30"), ("dry", "18.32"), ("filled", "20.10"))
    weigh(job, ("drained", "18.40"), ("drained", "18.42"), ("filled", "20.10"))
    early, dry, late = cycles(job)
    assert kept_when_drained(job, early) is None
    assert kept_when_drained(job, dry) is None
    kept = kept_when_drained(job, late)
    assert (kept.value, kept.unit) == (pytest.approx(0.10), "ml")
    assert kept.standard_uncertainty == pytest.approx(2**0.5 * 0.01)
    assert sum_values(job, late)["kept"] == kept
    weigh(job, ("drained", "18.30"), ("filled", "20.10"))
    assert kept_when_drained(job, cycles(job)[-1]).value == 0.0  # never below nothing


def test_a_dip_on_a_tared_balance_tells_nothing_of_the_dry_pen(job):
    weigh(job, ("dry", "15.00"), ("filled", "16.00"), ("gain", "1.00"), ("drained", "15.20"), ("filled", "16.00"))
    assert [c.start for c in cycles(job)] == ["dry", "dry", "drained"]
    assert kept_when_drained(job, cycles(job)[-1]).value == pytest.approx(0.20)


def test_dimensions_of_this_system_only(job):
    job.add(STAGE, "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm", "outside": "7.0 mm"})
    weigh(job, ("dry", "18.30"), ("filled", "20.10"))
    values = sum_values(job, cycles(job)[0])
    assert (values["bore"].value, values["stroke"].value, values["outside"]) == (9.0, 28.3, None)
    assert values["system"] == "piston"
    assert "what the stroke sweeps, as is usual" in capacity_of(job).sentence


def test_the_benchs_facts_stand_where_the_job_says_nothing(tmp_path):
    folder = tmp_path / "fine"
    folder.mkdir()
    facts = """[balance]
readability = "0.001 g"
repeatability = "0.003 g"
linearity = "0.004 g"
eccentricity = "0.005 g"
[caliper]
uncertainty = "0.05 mm"
[room]
temperature = "18 °C"
pressure = "990 hPa"
humidity = "30 %"
"""
    (folder / "bench.toml").write_text(facts, encoding="utf-8")
    job = create_job(open_bench_folder(folder), "one", sample=None)
    weigh(job, ("dry", "18.300"), ("filled", "20.100"))
    found = sum_values(job, cycles(job)[0])
    wanted = {
        "readability": 0.001, "repeatability": 0.003, "linearity": 0.004, "eccentricity": 0.005, "caliper": 0.05,
        "temperature": 18.0, "pressure": 99.0, "humidity": 0.3,
    }  # fmt: skip
    assert {name: found[name].value for name in wanted} == pytest.approx(wanted)
    assert set(FROM_BENCH) == set(wanted) - {"caliper"}
    job.add(STAGE, "setup", {"linearity": "0.001 g", "temperature": "25 °C", "drop": "0 g", "evaporation": "0.02 g"})
    now = sum_values(job, cycles(job)[0])
    assert [now[n].value for n in ("linearity", "temperature", "drop", "evaporation")] == [0.001, 25.0, 0.0, 0.02]
    assert now["repeatability"].value == 0.003
    assert capacity_of(job).data["correction_g"] == pytest.approx(0.01)


def test_setup_asks_for_the_gap_of_the_caps_seat(job):
    job.add(STAGE, "setup", {"gap": "0.05 mm", "seat": "9 mm", "gap_length": "6 mm", "liquid": "ink"})
    values = setup_values(job)
    assert [values[n].value for n in ("gap", "seat", "gap_length")] == [0.05, 9.0, 6.0]
    assert values["liquid"] == "ink"


def test_state_and_checks(job):
    stage = find_stage(STAGE)
    assert [f.text for f in stage.checks(job)] == ["Fill test: The pen has not been weighed."]
    weigh(job, ("dry", "18.30"))
    assert [(f.level, f.topic) for f in stage.checks(job)] == [("warning", "no-pair")]
    weigh(job, ("filled", "18.31"))
    assert [f.topic for f in stage.checks(job)] == ["gain-not-told"]
    weigh(job, ("dry", "18.30"), ("filled", "20.10"))
    assert stage.checks(job) == ()
    job.add(STAGE, "weighing", {"state": "stroke", "mass": "18.5 g", "strokes": "1"})
    assert stage.checks(job) == ()


def test_single_strokes_alone_are_no_missing_pair(job):
    weigh(job, ("dry", "18.30"))
    job.add(STAGE, "weighing", {"state": "stroke", "mass": "18.50 g", "strokes": "1"})
    assert find_stage(STAGE).checks(job) == ()


def test_the_stage_is_done_after_the_leak_check(job):
    words = []
    stage = find_stage(STAGE)
    for step in (
        lambda: None,
        lambda: weigh(job, ("dry", "18.30")),
        lambda: weigh(job, ("filled", "20.10")),
        lambda: job.add(STAGE, "leak check", {"rested": "12 h", "dry": "yes"}),
    ):
        step()
        words.append(stage.state(job))
    assert [state.word for state in words] == ["not begun", "open", "open", "done"]


def test_dips_on_a_tared_balance_are_one_filling_and_the_last_counts(job):
    weigh(job, ("gain", "0.18"), ("gain", "0.31"), ("gain", "1.20"))
    [cycle] = cycles(job)
    assert (cycle.start, [r.value for r in cycle.gains], cycle.empty, cycle.filled) == (
        "dry",
        [0.18, 0.31, 1.20],
        (),
        (),
    )
    answer = capacity_of(job)
    assert answer.data["gained_g"] == pytest.approx(1.20)
    assert answer.sentence.startswith("It draws 1.19\u202fmL ± 0.05 in 3 dips")
    assert len(answer.data["dips_ml"]) == 3


def test_gains_begin_again_after_a_weighing_or_below_half(job):
    weigh(job, ("gain", "1.20"), ("gain", "0.59"), ("gain", "1.10"), ("drained", "15.2"), ("gain", "1.15"))
    weigh(job, ("drained", "15.2"), ("filled", "16.3"), ("gain", "1.0"))
    told = [(c.start, [r.value for r in c.gains], len(c.filled)) for c in cycles(job)]
    wanted = [
        ("dry", [1.20], 0),
        ("dry", [0.59, 1.10], 0),
        ("drained", [1.15], 0),
        ("drained", [], 1),
        ("drained", [1.0], 0),
    ]
    assert told == wanted


def test_a_gain_from_drained_says_nothing_of_what_the_feed_keeps(job):
    weigh(job, ("dry", "15.00"), ("filled", "16.00"), ("drained", "15.20"), ("gain", "0.80"))
    assert kept_when_drained(job, cycles(job)[-1]) is None
