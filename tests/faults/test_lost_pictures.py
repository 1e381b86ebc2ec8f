"""Pictures that were listed and then deleted, renamed or spoilt: no form stops for them, and each is named."""

import json

import pytest
from faults.harmless import commanded, looked_at, paged
from PIL import Image

from pentools import cli
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


def cut_short(path):
    path.write_bytes(path.read_bytes()[:200])


WAYS = {
    "deleted": lambda path: path.unlink(),
    "renamed": lambda path: path.rename(path.with_name("another.jpg")),
    "no picture": lambda path: path.write_bytes(b"no picture at all"),
    "empty": lambda path: path.write_bytes(b""),
    "cut short": cut_short,
    "a folder": lambda path: (path.unlink(), path.mkdir()),
}


@pytest.mark.parametrize("way", WAYS)
def test_no_form_stops_and_the_picture_is_named(tmp_path, way, capsys):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen")
    path = job.folder / "photos" / "side.jpg"
    Image.linear_gradient("L").save(path)
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("condition", "part", {"part": "cap", "seen": "Whole.", "severity": "0", "photo": "side.jpg"})
    for moment in ("before", "during", "after"):
        job.add("pictures", "picture", {"photo": "side.jpg", "moment": moment, "shows": "the side", "public": "yes"})
    WAYS[way](path)
    notebook = json.loads(job.notebook.read_text())
    stages = [{"cell_type": "code", "metadata": {}, "source": f'bench.stage("{s}")'} for s in ("pictures", "condition")]
    story = {"cell_type": "markdown", "metadata": {}, "source": "A story. ![the side](photos/side.jpg)"}
    for cells in ([*notebook["cells"], *stages], [story, *stages], stages):
        job.notebook.write_text(json.dumps({**notebook, "cells": cells}))
        assert looked_at(job) + paged(job) + commanded(job.folder) == []
    capsys.readouterr()
    cli.main(["check", "pen", "--bench", str(job.bench.folder)])
    assert "side.jpg" in capsys.readouterr().out
