"""The recipes of DEVELOPERS.md for a field and for a stage, followed to the letter in a copy of the package."""

import os
import re
import shutil
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PLACES = {"Arrival": "class Arrival(Form, frozen=True):\n", "WORDS": "WORDS: Mapping", "STAGES": "STAGES: dict"}


def follow(copy, heading):
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    section = text.split(f"### {heading}\n")[1].split("\n### ")[0]
    found = re.findall(r"^`(pentools/[^`]+)`(?:, in `(\w+)`)?\n\n```\w+\n(.*?)```", section, re.DOTALL | re.MULTILINE)
    assert found
    for place, within, lines in found:
        path = copy / place
        if not within:
            path.write_text(lines, encoding="utf-8")
            continue
        old = path.read_text(encoding="utf-8")
        start = old.index("\n", old.index(PLACES[within])) + 1
        if within == "Arrival":
            start = old.index("\n\n", start) + 2  # after what the class says of itself
        path.write_text(
            old[:start] + (textwrap.indent(lines, "    ") if within == "Arrival" else lines) + old[start:],
            encoding="utf-8",
        )


@pytest.fixture
def copy(tmp_path):
    shutil.copytree(ROOT / "pentools", tmp_path / "pentools", ignore=shutil.ignore_patterns("__pycache__"))
    for folder in ("notebooks", "sample_jobs"):
        (tmp_path / folder).symlink_to(ROOT / folder)
    return tmp_path


def python(copy, code):
    environment = {**os.environ, "PYTHONPATH": str(copy)}
    done = subprocess.run([sys.executable, "-c", START + code], env=environment, cwd=copy, capture_output=True, text=True, check=False)  # fmt: skip
    assert done.returncode == 0, done.stderr
    return done.stdout


START = """
import pathlib
import nbformat
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, job_in
from pentools.record.review import review
from pentools.writeup.page import render_page
bench = open_bench_folder(pathlib.Path("bench"), create=True)
"""

FIELD = """
from pentools.record.stages.job.intake_kinds import ARRIVAL
job = create_job(bench, "lead", sample="green-piston")
form = BenchSheet(job).panel("intake").forms["arrival"]
form.boxes["balance_mm"].text = "71,5 mm"
form.save()
assert form.status.text.startswith("saved"), form.status.text
print(job_in(job.folder).newest(ARRIVAL).balance_mm.value)
for audience in ("owner", "everybody"):
    assert "Point of balance" in render_page(job, audience)
"""

STAGE = """
from pentools.record.stages.job.parcel import PACKING
job = create_job(bench, "pen")
job.add("intake", "consent", {"publish": "yes"})
job.add("parcel", "packing", {"wrapped_in": "atubewithpads", "weighs": "180 g", "insured": "no", "shelf": "shelftwo"})
book = nbformat.read(job.notebook, 4)
book.cells.append(nbformat.v4.new_code_cell('bench.stage("parcel")'))
nbformat.write(book, job.notebook)
panel = BenchSheet(job).panel("parcel")
assert panel.forms["packing"].boxes["weighs"].text == "180 g"
assert "done" in panel.header.value
print([f.text for f in review(job) if f.topic == "not-insured"])
client, blog = render_page(job, "owner"), render_page(job, "everybody")
assert "atubewithpads" in client and "atubewithpads" in blog
assert "Is it insured?" in client and "Is it insured?" not in blog
assert "shelftwo" not in client + blog
print(job.newest(PACKING).weighs.value)
"""


def test_a_field_is_there_when_its_recipe_was_followed(copy):
    follow(copy, "Add a field")
    assert python(copy, FIELD) == "71.5\n"


def test_a_stage_is_there_when_its_recipe_was_followed(copy):
    follow(copy, "Add a stage")
    assert python(copy, STAGE) == "['Parcel: it is not insured.']\n180.0\n"
