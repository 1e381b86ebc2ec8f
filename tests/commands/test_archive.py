"""``pentools archive``: what went in, in words and in JSON."""

import json

from pentools.cli import main
from pentools.exits import EXIT_INPUT, EXIT_OK, EXIT_RECORD
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


def test_it_says_what_went_in(tmp_path, capsys, monkeypatch):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lever", sample="lever-back-again")
    (job.folder / "writeup" / "letter.html").write_text("x")
    monkeypatch.chdir(tmp_path)
    assert main(["archive", "lever", "--bench", str(tmp_path / "bench")]) == EXIT_OK
    assert "lever.zip: 5 files" in capsys.readouterr().out
    assert (
        main(["archive", "lever", "two.zip", "--without-pages", "--json", "--bench", str(tmp_path / "bench")])
        == EXIT_OK
    )
    told = json.loads(capsys.readouterr().out)
    assert (told["job"], told["form"], len(told["files"])) == ("lever", 1, 4)
    assert told["bytes"] == sum(line["bytes"] for line in told["files"])
    assert "writeup/" in told["left_out"]


def test_what_cannot_be_archived_is_said(tmp_path, capsys):
    create_job(open_bench_folder(tmp_path / "bench", create=True), "lever", sample="lever-back-again")
    assert main(["archive", "none", str(tmp_path / "a.zip"), "--bench", str(tmp_path / "bench")]) == EXIT_RECORD
    assert main(["archive", "lever", str(tmp_path / "a.tar"), "--bench", str(tmp_path / "bench")]) == EXIT_INPUT
    assert "name ends in .zip" in capsys.readouterr().err
