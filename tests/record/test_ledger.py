"""All jobs in one table."""

from pentools import ledger
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


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
