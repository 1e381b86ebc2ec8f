"""Published and common-practice ladders judged step by step, and the planner against common practice."""

import csv
import re
from pathlib import Path

import pytest
from outside import Outside

from pentools.calc.finish.grades import sized_grade
from pentools.calc.finish.ladder import check_ladder
from pentools.calc.finish.progression import grit_progression
from pentools.calc.finish.reading import read_grade, read_grades
from pentools.calc.finish.types import PlanLimits, blend_width
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media, zones

# ladders from manuals, papers and trade pages, each with its source in the file; a step whose size is not known is empty
TEXT = (Path(__file__).parents[1] / "data" / "published_ladders.csv").read_text(encoding="utf-8")
LADDERS = list(csv.DictReader(TEXT.splitlines()))
KIND = {"standard": "us-navy-plastics", "common": "abrasive-practice", "from": "ladders-memory"}


def grade_of(step, size):
    """Our grade where we have one (bare numbers read as P, as the file says), else the printed size."""
    bare = re.fullmatch(r"(\d+) \(scale unstated\)", step)
    text = f"P{bare[1]}" if bare else step
    text = re.sub(r"^([\d.]+) um$", r"film \1 um", text)
    if not size:
        return None
    try:
        return read_grade(text, catalogue())
    except InputError:
        return sized_grade(float(size), label=step)


def grades_of(row):
    return [
        grade_of(step.strip(), size.strip())
        for step, size in zip(row["steps"].split(" > "), row["steps_um"].split(" > "), strict=True)
    ]


@pytest.mark.parametrize("row", LADDERS, ids=lambda r: r["name"])
def test_published_ladder(row):
    """Somebody polishes by it, so it goes finer all the way; three are known not to, and are refused for it."""
    check = check_ladder(grades_of(row), media())
    if row["certainty"] != "derived":
        source = KIND.get(row["certainty"].split()[0], "published-ladders")
        Outside(source, "a published ladder goes finer at every step").same(check.monotonic, row["monotonic"] == "yes")
    assert any(f.level == "stop" for f in check.findings) == (row["monotonic"] == "NO")


def test_the_mixed_ladder_is_refused_where_it_goes_coarser():
    check = check_ladder(read_grades("CAMI 320; CAMI 400; P600; P800", catalogue()), media())
    stops = [f.text for f in check.findings if f.level == "stop"]
    Outside("published-ladders", "where a ladder of mixed scales goes coarser").same(
        [s.split(":")[0] for s in stops], ["CAMI 400 to P600 goes coarser by particle"]
    )
    assert "23 µm to 25.8 µm" in stops[0]


def test_the_navy_s_sheets_misread_as_p_end_coarser():
    # NAVEDTRA 14315, sanding of transparent plastic: 320, 400, 500, 600, which in a US manual are CAMI
    right = read_grades("CAMI 320; CAMI 400; CAMI 500; CAMI 600", catalogue())
    check = Outside("us-navy-plastics", "sheets for transparent plastic go finer, read as CAMI")
    check.same(check_ladder(right, media()).monotonic, True)
    wrong = read_grades("P600", catalogue())[0]
    assert wrong.particle_um > 1.5 * right[-1].particle_um


def test_how_wide_to_work():
    blend = blend_width(50, 6)
    # 20 to 1, length to depth: 50 µm deep needs 1 mm
    Outside("faa-ac43", "run-out for a depth of 0.050 mm at 20 to 1 [mm]").agree(blend.run_out_mm, "1.0")
    area = Outside("us-navy-plastics", "area two to three times the defect, 6 mm long [mm]")
    area.agree(blend.area_low_mm, "12")
    area.agree(blend.area_high_mm, "18")


def test_common_practice():
    """Wet paper of the 30s of micrometres for gouges, film in turn, trim unmasked for the last three, an imprint left alone."""
    check = Outside("abrasive-practice", "the planner's ladder for a gouge in celluloid")
    sheets = ["P400", "P600", "P1200", "film 9 um", "film 5 um", "film 3 um", "film 2 um"]
    limits = PlanLimits(materials()["celluloid"], zones()["plain barrel"], media(), trim="solid")
    for order in (sheets, sheets[::-1], sorted(sheets)):
        plan = grit_progression(40, 2, read_grades(order, catalogue()), limits)
        check.same([s.grade.label.replace("µm", "um") for s in plan.steps], sheets)
        check.same((plan.unmask_step.grade.label, len(plan.steps) - plan.unmask_step.number + 1), ("film 5 µm", 3))
    imprint = PlanLimits(materials()["celluloid"], zones()["imprint"], media())
    check.same(grit_progression(40, 2, read_grades(sheets, catalogue()), imprint).steps, ())


@pytest.mark.parametrize(
    ("material", "wet"),
    [("celluloid", True), ("hard rubber", False), ("coloured hard rubber", True), ("casein", False)],
)
def test_wet_or_dry_as_the_trade_does(material, wet):
    Outside("abrasive-practice", "worked wet").same(materials()[material].wet, wet)
