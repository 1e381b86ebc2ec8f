"""The parts wanted, as lines and as JSON."""

import json

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


def test_the_parts_wanted_are_said_as_lines_and_as_json(tmp_path, capsys):
    job = create_job(open_bench_folder(tmp_path, create=True), "a-pen")
    job.add(
        "limits",
        "limit",
        {"part": "clip", "left": "gone", "why": "lost", "instead": "none", "for_now": "yes", "wanted": "a clip"},
    )
    assert main(["wanted", "--bench", str(tmp_path)]) == 0
    assert "a clip" in capsys.readouterr().out
    assert main(["--bench", str(tmp_path), "wanted", "--json"]) == 0
    [part] = json.loads(capsys.readouterr().out)["parts"]
    assert (part["job"], part["wanted"]) == ("a-pen", "a clip")
