"""The recipe of DEVELOPERS.md, followed to the letter in a copy of the package: one file and its rows, and all is there."""

import csv
import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LIKE = "lever-sac"
KEYED = ("filling_systems", "care_lines")
"""Tables in which a system is told by its key; in the others there is a column for it."""

WHAT_FOLLOWS = """
import json
from pentools import tables
from pentools.calc.treatment.order import HoldRow, StepRow, opening_order
from pentools.figures.pen.measure_here import measurable
from pentools.figures.pen.outline import outline_of
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.record.stages.common import system_choices
from pentools.record.stages.job.care import care_lines
from pentools.record.stages.job.intake import INTAKE
from pentools.record.stages.weighing.filling import FILL_TEST
from pentools.sums.weighing.capacity import CAPACITY
from pentools.sums.weighing.fields import dimension_fields
from pentools.systems.parts import drawn_part
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of
from pentools.tables.fillers import fill_suspects

key = "twist-sac"
drawing = draw_pen(PenShape(key, sac_outside_mm=7.0, sac_length_mm=44.0), PenOptions(marks=[("filler", "bent", "serious")]))
typed = {"empty": "16.10 g; 16.11 g", "filled": "17.00 g; 17.01 g", "start": "drained", "system": key,
         "outside": "7.0 mm", "length": "44 mm"}
answer = CAPACITY.run({f.name: f.read(typed.get(f.name, f.default)) for f in CAPACITY.fields})
arrival = next(kind for kind in INTAKE.kinds if kind.key == "arrival")
dimensions = next(kind for kind in FILL_TEST.kinds if kind.key == "dimensions")
print(json.dumps({
    "choice": dict(system_choices())[key],
    "asked at intake": dict(next(f for f in arrival.fields if f.name == "system").choices)[key],
    "said": drawing.alt,
    "labelled": "wringing rod" in drawing.svg,
    "at": [drawn_part(key, part) for part in ("seals", "filler", "blind-cap")],
    "seen from outside": sorted(outline_of(key, proportions_of(PenShape(key)), capped=False).profiles),
    "measured": "sac_length" in measurable(key),
    "asked": [field.name for field in dimension_fields(key)],
    "in the record": {field.name for field in dimension_fields(key)} <= {field.name for field in dimensions.fields},
    "care": [row.line for row in care_lines("system", key)],
    "share": answer.data["share_filled"],
    "suspects": len(fill_suspects(key)),
    "steps": len(opening_order(key, tables.read(StepRow, "opening_steps"), tables.read(HoldRow, "opening_holds")).steps),
}))
"""


def recipe():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    section = text.split("### Add a filling system")[1].split("\n### ")[0]
    return re.search(r"```python\n(.*?)```", section, re.DOTALL).group(1)


def column_of(table, columns):
    return "key" if table.stem in KEYED else "system" if "system" in columns else "systems"


def add_rows(table, like, key):
    """The rows of a system that is alike, once more under the new key."""
    with table.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    own = column_of(table, rows[0])
    if own == "systems":
        for row in rows:
            if like in row[own].split("; "):
                row[own] += f"; {key}"
    else:
        rows += [{**row, own: key} for row in rows if row[own] == like]
    with table.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]), lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)


def tables_of_systems(folder):
    for table in sorted(folder.glob("*.csv")):
        with table.open(encoding="utf-8", newline="") as file:
            columns = next(csv.reader(file))
        if table.stem in KEYED or {"system", "systems"} & set(columns):
            yield table


@pytest.fixture(scope="module")
def followed(tmp_path_factory):
    folder = tmp_path_factory.mktemp("recipe")
    shutil.copytree(ROOT / "pentools", folder / "pentools", ignore=shutil.ignore_patterns("__pycache__"))
    (folder / "pentools" / "systems" / "fillers" / "twist_sac.py").write_text(recipe(), encoding="utf-8")
    for table in tables_of_systems(folder / "pentools" / "tables"):
        add_rows(table, LIKE, "twist-sac")
    done = subprocess.run(
        [sys.executable, "-c", WHAT_FOLLOWS],
        check=False,
        cwd=folder,
        env={"PYTHONPATH": str(folder)},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return json.loads(done.stdout)


def test_the_choices_and_forms_have_it(followed):
    assert followed["choice"] == followed["asked at intake"] == "twist sac filler"
    assert followed["asked"] == ["outside", "length", "wall", "pressed_share"]
    assert followed["in the record"]


def test_it_is_drawn_with_its_own_part(followed):
    assert followed["labelled"]
    assert "A drawing in section of a twist sac filler" in followed["said"]
    assert "Tag 1, wringing rod: bent (serious)." in followed["said"]
    assert followed["at"] == ["sac", "wringer", "knob"]
    assert "knob" in followed["seen from outside"]
    assert followed["measured"]


def test_it_is_weighed_suspected_and_opened(followed):
    # π/4 6² times 41 mm and the half sphere, of which 75 % are pressed out: 0.91 mL; the gain of 0.9 g is all of it
    assert followed["share"] == pytest.approx(0.99, abs=0.02)
    assert followed["suspects"] >= 2
    assert followed["steps"] >= 5
    assert len(followed["care"]) == 2


def test_every_table_of_systems_knows_all_of_them():
    from pentools.systems.registry import SYSTEMS

    for table in tables_of_systems(ROOT / "pentools" / "tables"):
        with table.open(encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
        own = column_of(table, rows[0])
        named = {key for row in rows for key in row[own].split("; ") if key}
        assert named >= set(SYSTEMS), table.stem
