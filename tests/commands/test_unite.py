"""``pentools unite``: what came of each job in words and in JSON, and an exit code that says whether to look."""

import json

import pytest

from pentools.cli import main
from pentools.exits import EXIT_FINDINGS, EXIT_INPUT, EXIT_OK, EXIT_RECORD
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, jobs_on, open_job


@pytest.fixture
def two(tmp_path):
    here, there = (open_bench_folder(tmp_path / name, create=True) for name in ("here", "there"))
    create_job(there, "lever", sample="lever-back-again")
    return here, there


def run(bench, *words):
    return main(["--bench", str(bench.folder), "unite", *map(str, words)])


def test_it_says_what_came_of_each_job(two, capsys):
    here, there = two
    assert run(here, there.folder, "--look") == EXIT_OK
    assert jobs_on(here) == ()
    assert "nothing was done: 1 copied" in capsys.readouterr().out
    assert run(here, there.folder) == EXIT_OK
    open_job("lever", bench=there).add("work log", "note", {"note": "there"})
    assert run(here, there.folder, "--json") == EXIT_OK
    told = json.loads(capsys.readouterr().out.split("left.\n", 1)[1])
    assert told["wrote"] is True
    assert {key: told["jobs"][0][key] for key in ("theirs", "here", "did", "added", "conflicts", "files")} == {
        "theirs": "lever", "here": "lever", "did": "merged", "added": 1, "conflicts": [], "files": [],
    }  # fmt: skip
    assert run(here, there.folder) == EXIT_OK
    assert "1 the same here" in capsys.readouterr().out


def test_it_names_pictures_conflicts_and_the_benches_own_facts(two, capsys):
    here, there = two
    run(here, there.folder)
    (there.folder / "bench.toml").write_text("[money]\nrate_per_hour = 40\n")
    (there.folder / "lever" / "photos" / "side-before.jpg").write_bytes(b"other")
    path = there.folder / "lever" / "record.jsonl"
    path.write_bytes(path.read_bytes().replace(b"a blotting paper", b"two blotting papers"))
    capsys.readouterr()
    assert run(here, there.folder) == EXIT_FINDINGS
    said = capsys.readouterr().out
    for words in (
        "is another file here",
        "differs: this bench’s line stays",
        "Lines set aside in record-unlike",
        "money.rate_per_hour: 0.0, and 40",
    ):
        assert words in said


def test_what_cannot_be_united_is_said(two, capsys):
    here, there = two
    assert run(here, here.folder) == EXIT_INPUT
    assert run(here, there.folder / "nowhere") == EXIT_RECORD
    (there.folder / "no job name").mkdir()
    (there.folder / "no job name" / "record.jsonl").write_text("")
    assert run(here, there.folder) == EXIT_FINDINGS
    assert "no job name: left." in capsys.readouterr().out
