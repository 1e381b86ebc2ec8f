"""``pentools import``: looked at first, then written, with a report by row and column."""

import json
import re

import pytest

from pentools.cli import main
from pentools.exits import EXIT_FINDINGS, EXIT_INPUT, EXIT_OK
from pentools.record.bench import open_bench_folder
from pentools.record.job import jobs_on, shipped_folder


@pytest.fixture
def run(tmp_path):
    (tmp_path / "old.csv").write_text("Nr,Pen,Shelf\n1,black lever,A\n2,red piston,\n")
    (tmp_path / "map.toml").write_text('[file]\njob = "Nr"\n[columns]\nPen = "intake/arrival/pen"\n')
    words = [
        "import",
        str(tmp_path / "old.csv"),
        "--mapping",
        str(tmp_path / "map.toml"),
        "--bench",
        str(tmp_path / "bench"),
    ]
    return lambda *more: main([*words, *more])


def test_it_looks_first_and_writes_when_asked(run, tmp_path, capsys):
    assert run() == EXIT_OK
    said = capsys.readouterr().out
    assert "Row 2: 1, 1 entry." in said
    assert "Columns that go nowhere: Shelf (1 filled)." in said
    assert "--write" in said
    assert not (tmp_path / "bench").exists()
    assert run("--write") == EXIT_OK
    assert jobs_on(open_bench_folder(tmp_path / "bench")) == ("1", "2")
    capsys.readouterr()
    assert run("--write", "--json") == EXIT_OK
    told = json.loads(capsys.readouterr().out)
    assert told == {
        "wrote": True,
        "taken": [],
        "there": [{"row": 2, "job": "1"}, {"row": 3, "job": "2"}],
        "refused": [],
        "unused": {"Shelf": 1},
    }


def test_what_is_refused_stands_in_the_exit_code(run, tmp_path, capsys):
    (tmp_path / "map.toml").write_text('[file]\njob = "Nr"\n[columns]\nPen = "intake/arrival/arrived_on"\n')
    assert run() == EXIT_FINDINGS
    assert "Row 2, Pen: refused." in capsys.readouterr().out
    (tmp_path / "map.toml").write_text('[columns]\nPen = "no/such/field"\n')
    assert run() == EXIT_INPUT
    assert "the stage must be one of" in capsys.readouterr().err


def test_the_guide_s_own_example_does_what_the_guide_says(tmp_path, capsys):
    page = (shipped_folder("notebooks").parent / "docs" / "bench.md").read_text(encoding="utf-8")
    mapping, table = (re.search(rf"```{kind}\n(.*?)```", page, re.DOTALL)[1] for kind in ("toml", "csv"))
    (tmp_path / "old.toml").write_text(mapping, encoding="utf-8")
    (tmp_path / "old.csv").write_text(table, encoding="utf-8")
    words = [
        "import",
        str(tmp_path / "old.csv"),
        "--mapping",
        str(tmp_path / "old.toml"),
        "--bench",
        str(tmp_path / "bench"),
    ]
    assert main([*words, "--write", "--json"]) == EXIT_FINDINGS
    told = json.loads(capsys.readouterr().out)
    assert told["taken"] == [{"row": 2, "job": "12-2019", "entries": 5}]
    assert [(one["row"], one["column"]) for one in told["refused"]] == [(3, "Bore")]
    assert "8,5x" in told["refused"][0]["why"]
    assert told["unused"] == {"Shelf": 1}
