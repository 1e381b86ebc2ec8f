"""The queue on the command line: as of now or of a day, in lines or as JSON."""

import json

import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    bench = open_bench_folder(tmp_path / "bench", create=True)
    job = create_job(bench, "pen-1")
    job.add("intake", "arrival", {"pen": "a red pen", "arrived_on": "2026-03-02"})
    job.add("intake", "request", {"asked": "make it write", "promised_by": "2026-03-20"})
    return bench


def said(capsys, *words):
    code = main(["queue", *words])
    out, err = capsys.readouterr()
    return code, out, err


def test_the_day_is_given(bench, capsys):
    code, out, _ = said(capsys, "--bench", str(bench.folder), "--on", "2026-03-14", "--json")
    [row] = json.loads(out)["jobs"]
    assert (code, json.loads(out)["on"], row["since"], row["in_danger"], row["overdue"]) == (0, "2026-03-14", "2026-03-02", True, [])  # fmt: skip
    _, out, _ = said(capsys, "--bench", str(bench.folder), "--on", "21 March 2026", "--json")
    assert json.loads(out)["jobs"][0]["overdue"] == ["promised by 20 March 2026"]


def test_lines_and_an_odd_day(bench, capsys):
    code, out, _ = said(capsys, "--bench", str(bench.folder))
    assert (code, out.splitlines()[0]) == (0, "To work on now (1)")
    assert "a red pen: say whose pen it is" in out
    code, _, err = said(capsys, "--bench", str(bench.folder), "--on", "2026-13-01")
    assert (code, "--on must be a date" in err) == (2, True)
