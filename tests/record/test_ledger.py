"""All jobs in one table."""

import pytest

from pentools import ledger
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.ledger import ledger_row
from pentools.record.stages.weighing.filling import capacity_of


def test_samples_side_by_side(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    for name in ("green-piston", "lever-with-limits", "short-breather"):
        create_job(bench, name, sample=name)
    create_job(bench, "zz-new").add("intake", "arrival", {"pen": "just arrived"})
    table = ledger(tmp_path).set_index("job")
    assert list(table.index) == ["green-piston", "lever-with-limits", "short-breather", "zz-new"]
    assert table.loc["green-piston", "ending"] == "done"
    assert table.loc["lever-with-limits", "limits"] == 3
    assert table.loc["short-breather", "system"] == "diaphragm-pump"
    assert table["hours"].iloc[:3].between(2, 20).all()
    assert table["share_filled"].iloc[:3].between(0.7, 1.1).all()
    assert table.loc["zz-new", ["hours", "volume_ml", "ending"]].isna().all()


def test_an_empty_bench(tmp_path):
    assert len(ledger(tmp_path)) == 0


def test_each_column_holds_what_it_is_named_for(new_job):
    job = new_job("a-pen")
    assert set(ledger_row(job).values()) == {"a-pen", None, 0}
    job.add("intake", "arrival", {"pen": "red", "system": "piston", "material": "casein", "arrived_on": "2026-03-02"})
    job.add("work log", "work", {"activity": "seal", "minutes": "100 min", "done": "a cork"})
    job.add("work log", "work", {"activity": "nib", "minutes": "3 min", "done": "a look"})
    for state, mass in (("dry", "18.30"), ("filled", "20.10")):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    job.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm"})
    job.add("limits", "limit", {"part": "cap", "left": "a hairline", "why": "it is stable"})
    job.add("release", "result", {"ending": "done with limits", "summary": "It writes."})
    row, told = ledger_row(job), capacity_of(job).data
    volumes = [row.pop(name) for name in ("volume_ml", "expanded_uncertainty_ml", "share_filled")]
    assert row == {
        "job": "a-pen", "pen": "red", "system": "piston", "material": "casein", "arrived_on": "2026-03-02",
        "ending": "done with limits", "hours": 1.72, "limits": 1,
    }  # fmt: skip
    assert volumes == [told["volume_ml"], told["expanded_uncertainty_ml"], told["share_filled"]]
    assert volumes[0] == pytest.approx(1.792, abs=0.001)


def test_weighings_that_contradict_each_other_leave_their_columns_empty(new_job):
    job = new_job()
    for state, mass in (("dry", "20.30"), ("filled", "18.10")):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    row = ledger_row(job)
    assert (row["volume_ml"], row["share_filled"], row["hours"]) == (None, None, None)


def test_a_job_that_cannot_be_read_has_a_row_with_its_name_alone(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    create_job(bench, "pen-a").add("intake", "arrival", {"pen": "a pen"})
    (create_job(bench, "pen-b").folder / "record.jsonl").mkdir()
    table = ledger(tmp_path).set_index("job")
    assert table.loc["pen-a", "pen"] == "a pen"
    assert table.loc["pen-b"].isna().all()
