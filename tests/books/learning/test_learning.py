"""What a bench learns: each figure from the jobs it is of, held against an invented bench whose truth is known."""

import datetime as dt

import pytest

from pentools.books.invented.bench import invent_bench
from pentools.books.invented.truth import POLISHED, SEALS
from pentools.books.learning.craft import CutRate, HeldSize, JobCraft
from pentools.books.learning.learning import learned_from, learned_on
from pentools.books.learning.time_taken import JobTime


def craft(system="lever-sac", ending="done", **more):
    return JobCraft(system=system, ending=ending, ended=dt.date(2026, 5, 1), **more)


def figures(learned, key):
    return {one.label: one for one in learned.chapter(key).figures}


def test_a_return_counts_for_the_part_that_failed_and_no_other():
    jobs = {
        "a": craft(lots=(("seals", "bag 1"), ("barrel", "tin 2")), ways=(("seals", "shellac at sac"),)),
        "b": craft(lots=(("seals", "bag 1"),), ways=(("seals", "shellac at sac"),)),
        "c": craft(lots=(("seals", "bag 1"), ("seals", "bag 2")), ways=(("seals", "shellac at sac"),)),
        "d": craft(ending="stopped", lots=(("seals", "bag 1"),)),
        "back": craft(older="a", part="seals", cause="part"),
    }
    learned = learned_from({}, jobs)
    lots = figures(learned, "returns_by_lot")
    assert (lots["bag 1"].told.count, lots["bag 1"].n) == (1, 3)
    assert (lots["tin 2"].more["came_back"], lots["tin 2"].told) == (0, None)
    assert next(iter(lots)) == "bag 1"
    assert figures(learned, "returns_by_way")["shellac at sac"].told.count == 1


def test_success_goes_by_the_rank_of_the_system_and_leaves_returns_out():
    jobs = {
        str(n): craft("safety", ending)
        for n, ending in enumerate(("done", "done with limits", "stopped", "returned", ""))
    } | {"x": craft("safety", older="0")}
    [rank] = learned_from({}, jobs).chapter("success_by_difficulty").figures
    assert (rank.label, rank.n, rank.told.count) == ("difficulty 7", 4, 2)
    assert rank.more["endings"] == {"done": 1, "done with limits": 1, "stopped": 1, "returned": 1}
    assert rank.note == "1 done, 1 done with limits, 1 stopped, 1 returned unrepaired"


def test_seals_rates_and_fillings_are_grouped_by_what_they_are_of():
    jobs = {
        str(n): craft(
            "piston", seal="cork", share=0.8 + 0.02 * n, held=(HeldSize("cork", 9.0, 9.2 + 0.1 * n),),
            rates=(CutRate("celluloid", "P 1500", 1.0 + n),),
        )
        for n in range(3)
    } | {"no": craft("piston", "stopped", share=0.1)}  # fmt: skip
    learned = learned_from({}, jobs)
    fills = learned.chapter("share_filled").as_json()
    assert [(row["seal"], row["n"], row["median"]) for row in fills] == [("", 3, 0.82), ("cork", 3, 0.82)]
    assert fills[0]["usual_here"] == "10 pens are wanted, there are 3"
    assert learned.chapter("seal_over_bore").figures[0].told.median == pytest.approx(0.3)
    assert learned.chapter("removal_rates").as_json()[0]["median"] == 2.0


def test_minutes_of_one_year_rest_on_jobs_that_ended_in_it():
    jobs = {
        str(n): JobTime(work="re-sac", system="lever-sac", ending="done", ended=dt.date(2025 + n % 2, 3, 1), minutes={"seal": 40.0 + n, "test": 10.0})
        for n in range(8)
    }  # fmt: skip
    learned = learned_from(jobs, {}, 2026)
    assert (learned.jobs, learned.counted) == (4, 4)
    assert learned.chapter("minutes_by_work").as_json()[0]["median"] == 54
    parts = figures(learned, "minutes_by_activity")
    assert parts["seals and sac"].told.median == 44
    assert parts["testing"].more["share_of_all_minutes"] == pytest.approx(40 / 216, abs=1e-4)
    assert learned_from(jobs, {}).jobs == 8


def test_an_invented_bench_teaches_what_it_was_made_with(tmp_path):
    invent_bench(tmp_path / "b", 240, seed=4)
    learned = learned_on(tmp_path / "b")
    over = {row["seal"]: row for row in learned.as_json()["seal_over_bore"]}
    for place, true in (("cork", SEALS["cork"].over), ("washer", SEALS["washer"].over), ("head", SEALS["O-ring"].over)):
        assert over[place]["low"] - 0.03 <= true <= over[place]["high"] + 0.03, place
    rates = {(row["material"], row["grade"]): row for row in learned.as_json()["removal_rates"]}
    true = POLISHED["P1500"]
    assert rates["celluloid", "P 1500"]["median"] == pytest.approx(true, rel=0.15)
    groups = {row["work"]: row for row in learned.as_json()["minutes_by_work"]}
    assert groups["whole"]["low"] > groups["re-sac"]["high"]
    assert 0.5 < groups["re-sac"]["leaning_on_the_others"]["likely"] / groups["re-sac"]["median"] < 1.5
    assert learned.unread == {}


def test_a_bench_of_few_says_so(bench):
    learned = learned_on(bench)
    assert learned.jobs == 3
    assert all(line.endswith("too few to say") for line in learned.lines if line.startswith("  "))
