"""Published and common-practice ladders judged step by step, and the planner against common practice."""

import csv
import re
from pathlib import Path

import pytest

from pentools.calc.finish.grades import sized_grade
from pentools.calc.finish.ladder import check_ladder
from pentools.calc.finish.progression import grit_progression
from pentools.calc.finish.reading import read_grade, read_grades
from pentools.calc.finish.types import PlanLimits, blend_width
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media, zones

# 28 ladders from manuals, papers and trade pages, each with its source; whether each goes finer all the way
# and its largest ratio (by grain, two decimals) were worked out from the printed grades
TEXT = (Path(__file__).parents[1] / "data" / "published_ladders.csv").read_text(encoding="utf-8")
LADDERS = list(csv.DictReader(TEXT.splitlines()))


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


def test_there_are_28():
    assert len(LADDERS) == 28


@pytest.mark.parametrize("row", LADDERS, ids=lambda r: r["name"])
def test_published_ladder(row):
    grades = grades_of(row)
    for grade, size in zip(grades, row["steps_um"].split(" > "), strict=True):
        if grade is not None:
            assert grade.particle_um == pytest.approx(float(size), rel=0.01), f"{grade.label} is another size here"
    check = check_ladder(grades, media())
    assert check.monotonic == (row["monotonic"] == "yes")
    assert any(f.level == "stop" for f in check.findings) == (row["monotonic"] == "NO")
    if row["max_ratio"]:
        assert check.largest_particle_ratio == pytest.approx(float(row["max_ratio"]), abs=0.0051)
    else:
        assert check.largest_particle_ratio is None


def test_most_of_the_ladders_are_read_from_our_tables():
    grades = [g for row in LADDERS for g in grades_of(row) if g is not None]
    own = [g for g in grades if catalogue().find(g.scale, g.name) is not None]
    assert len(own) > 0.85 * len(grades)


def test_the_mixed_ladder_is_refused_where_it_goes_coarser():
    # a published ladder 320, 400, P600, P800 (a hobby axle study): 23.0 to 25.8 um at its third step
    check = check_ladder(read_grades("CAMI 320; CAMI 400; P600; P800", catalogue()), media())
    assert not check.monotonic
    stops = [f.text for f in check.findings if f.level == "stop"]
    assert len(stops) == 1
    assert "CAMI 400 to P600" in stops[0]
    assert "23 µm to 25.8 µm" in stops[0]


def test_cami_400_to_cushioned_1500_is_refused_by_grain_and_explained():
    check = check_ladder(read_grades("CAMI 400; cushioned 1500", catalogue()), media())
    (stop,) = [f.text for f in check.findings if f.level == "stop"]
    for part in ("23 µm to 30 µm", "23 µm to 22 µm", "The trade", "finish"):
        assert part in stop
    assert check_ladder(read_grades("CAMI 400; cushioned 1500", catalogue()), media(), judged_by="finish").monotonic


def test_us_navy_acrylic_sequence_and_its_misreading():
    # US Navy NAVEDTRA 14315, sanding of transparent plastic: 320, 400, 500, 600; as CAMI it ends at 16.0 um, misread
    # as P at 25.8 um, 1.61 times coarser
    right = read_grades("CAMI 320; CAMI 400; CAMI 500; CAMI 600", catalogue())
    wrong = read_grades("P320; P400; P500; P600", catalogue())
    assert check_ladder(right, media()).monotonic
    assert wrong[-1].particle_um / right[-1].particle_um == pytest.approx(1.61, abs=0.005)


def test_faa_blend_and_us_navy_area():
    # FAA AC 43.13-1B, 6-117: blend 20 to 1, length to depth: 50 um needs 1 mm. NAVEDTRA 14315: 2 to 3 times the length
    blend = blend_width(50, 6)
    assert blend.run_out_mm == pytest.approx(1.0)
    assert (blend.area_low_mm, blend.area_high_mm) == (12, 18)


# Common practice, no source: 400 for deep scratches, then the cushioned cloths in turn; trim is unmasked at 6000 and
# taken through the last three grades; an imprint is left alone.
PRACTICE = ["400", "1500", "1800", "2400", "3200", "3600", "4000", "6000", "8000", "12000"]


def practice_plan(order, **more):
    owned = read_grades([("P" if n == "400" else "cushioned ") + n for n in order], catalogue())
    limits = PlanLimits(materials()["celluloid"], zones()[more.pop("zone", "plain barrel")], media(), **more)
    return grit_progression(40, 3, owned, limits)


@pytest.mark.parametrize("order", [PRACTICE, PRACTICE[::-1], sorted(PRACTICE)], ids=["in order", "reversed", "jumbled"])
def test_the_planner_reproduces_common_practice(order):
    plan = practice_plan(order)
    assert [step.grade.name for step in plan.steps] == PRACTICE
    assert plan.unmask_step.grade.name == "6000"
    assert len(plan.steps) - plan.unmask_step.number + 1 == 3


def test_the_order_is_planned_and_not_listed():
    fewer = [n for n in PRACTICE if n not in ("3600", "8000")]
    plan = practice_plan(fewer)
    assert [step.grade.name for step in plan.steps] == fewer
    # without 6000 and 8000 only one grade is fine enough for trim
    assert practice_plan([n for n in PRACTICE if n not in ("6000", "8000")]).unmask_step.grade.name == "12000"
    assert practice_plan(PRACTICE, unmask_um=3).unmask_step.grade.name == "8000"


def test_a_lighter_scratch_starts_later():
    owned = read_grades("P400; cushioned 1500 to 12000", catalogue())
    limits = PlanLimits(materials()["celluloid"], zones()["plain barrel"], media())
    starts = [grit_progression(depth, 3, owned, limits).steps[0].grade.name for depth in (40, 18, 8, 3)]
    assert starts == ["400", "1500", "3200", "6000"]


def test_an_imprint_is_left_alone():
    plan = practice_plan(PRACTICE, zone="imprint")
    assert plan.steps == ()
    assert plan.removed_total_um.high == 0
    assert plan.findings[0].level == "stop"
