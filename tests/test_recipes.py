"""The recipes of DEVELOPERS.md for a sum and for a table, followed to the letter in a copy of the package."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
LINES = {"pentools/words/seal.py": "WORDS: Mapping", "pentools/sums/__init__.py": "SUMS: dict"}
"""Where a recipe gives lines of a table, and what the table begins with."""


def pieces(heading):
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    section = text.split(f"### {heading}")[1].split("\n### ")[0]
    found = re.findall(r"^`(pentools/[^`]+)`\n\n```\w+\n(.*?)```", section, re.DOTALL | re.MULTILINE)
    assert found
    return found


@pytest.fixture
def copy(tmp_path):
    shutil.copytree(ROOT / "pentools", tmp_path / "pentools", ignore=shutil.ignore_patterns("__pycache__"))
    for folder in ("notebooks", "sample_jobs", "tests"):
        (tmp_path / folder).symlink_to(ROOT / folder)
    return tmp_path


def follow(copy, heading):
    for place, text in pieces(heading):
        path = copy / place
        if place in LINES:
            old = path.read_text(encoding="utf-8")
            start = old.index("{\n", old.index(LINES[place])) + 2
            path.write_text(old[:start] + text + old[start:], encoding="utf-8")
        else:
            before = path.read_text(encoding="utf-8") + "\n\n" if path.exists() else ""
            path.write_text(before + text, encoding="utf-8")


def python(copy, *words):
    environment = {**os.environ, "PYTHONPATH": str(copy), "PENTOOLS_BENCH": ""}
    return subprocess.run([sys.executable, *words], env=environment, cwd=copy, capture_output=True, text=True, check=True).stdout  # fmt: skip


SUM = """
from pentools.answers.seal import piston_way
from pentools.panels.sums import open_sums
panel = open_sums().panel("travel")
panel.boxes["lead"].text, panel.boxes["turns"].text = "2 mm", "40"
panel.work_out()
assert "The piston goes 80 mm." in panel.result.value, panel.result.value
assert "longer than pens are (60 mm)" in panel.result.value
print(piston_way(lead=2, turns="14"))
"""


def test_a_sum_is_there_when_its_recipe_was_followed(copy):
    follow(copy, "Add a sum")
    assert "How far a piston goes" in python(copy, "-m", "pentools.cli", "sums", "--help")
    told = python(copy, "-m", "pentools.cli", "sums", "travel", "--lead", "0.1 in", "--turns", "10", "--json")
    assert json.loads(told)["way_mm"] == 25.4
    assert python(copy, "-c", SUM) == "The piston goes 28 mm.\n"
    # the same test that holds code and words together takes the new words up
    words = "import test_words, pathlib; test_words.PACKAGE = pathlib.Path('pentools'); print(test_words.faults(test_words.PACKAGE, test_words.BOOKS))"
    assert python(copy, "-c", f"import sys; sys.path.insert(0, 'tests/words'); {words}") == "[]\n"


TABLE = """
from pentools import tables
from pentools.tables.source_words import source_words
from pentools.tables.twines import twines
from pentools.words import CERTAINTY
[twine] = twines()
assert twine.holds_n is None and twine.parts == ("sac", "bulb") and twine.certainty in CERTAINTY
assert "twines" in tables.names()
print(*source_words(twine.source, "twines"))
"""


def test_a_table_is_there_when_its_recipe_was_followed(copy):
    follow(copy, "Add a table")
    assert python(copy, "-c", TABLE) == "Common practice, no source.\n"
    table = copy / "pentools" / "tables" / "twines.csv"
    table.write_text(table.read_text().replace("0.6", "0.6 mm"))
    with pytest.raises(subprocess.CalledProcessError) as failed:
        python(copy, "-c", TABLE)
    assert "twines.csv, row 2, column “thickness_mm”" in failed.value.stderr
