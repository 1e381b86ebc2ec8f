"""Ladders: judging steps, paths through owned grades, stock."""

import itertools
import math
import random

import pytest
from ranges import refuses, takes_only

from pentools.calc.finish.grades import sized_grade
from pentools.calc.finish.ladder import (
    JUDGED_BY,
    check_ladder,
    find_paths,
    goes_coarser,
    interval_stock_um,
    stock_plan_um,
)
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.reading import read_grades
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, media


def grades(text):
    return read_grades(text, catalogue())


def test_equal_sizes_do_not_go_finer():
    stop = goes_coarser(*grades("P4000; P5000"))
    assert stop.level == "stop"
    assert "does not go finer" in stop.text
    assert goes_coarser(*grades("P400; P600")) is None
    with pytest.raises(InputError):
        goes_coarser(*grades("P400; P600"), judged_by="colour")


def test_a_finish_that_gets_worse_is_told_apart():
    before, after = sized_grade(5), grades("cushioned cloth 7000")[0]  # grain 4, finish 5
    assert "scratch left is not" in goes_coarser(before, after).text
    assert goes_coarser(before, after, judged_by="particle") is None


def test_cloth_to_film_of_the_same_grain():
    text = goes_coarser(*grades("cushioned cloth 7000; film 4 um")).text
    assert "hard backing" in text


@pytest.mark.parametrize(
    ("ladder", "words"),
    [
        # P800 is 21.8 µm; cloth 2000 grain 23, finish 15; cloth 1000 grain 45, finish 29
        ("P800; cushioned cloth 2000", "By the scratch it leaves it is finer, 21.8 µm to 15 µm, because a soft backing lets the grain sink in."),
        ("P800; cushioned cloth 1000", "goes coarser by particle: 21.8 µm to 45 µm. It puts scratches back that the step before took out."),
        ("cushioned cloth 2000; film 30 um", "goes coarser by particle: 23 µm to 30 µm. It puts scratches back"),
        ("cushioned cloth 2000; cushioned cloth 1000", "goes coarser by particle: 23 µm to 45 µm. It puts scratches back"),
        ("cushioned cloth 7000; film 4 um", "it is finer, 5 µm to 4 µm, if the cloth's finish figure holds"),
        ("P600; P400", "P600 to P400 goes coarser by particle: 25.8 µm to 35 µm. It puts scratches back"),
    ],
)  # fmt: skip
def test_why_a_step_is_a_step_back(ladder, words):
    stop = goes_coarser(*grades(ladder))
    assert (stop.level, words in stop.text) == ("stop", True), stop.text


def test_what_is_judged_by_one_size_only():
    cloth, paper = grades("cushioned cloth 2000; P800")
    assert goes_coarser(paper, cloth, judged_by="finish") is None
    assert goes_coarser(paper, cloth, judged_by="particle").values["by"] == "particle"
    # P1000 after that cloth has the finer grain (18.3 to 23) and the coarser finish (18.3 to 15)
    finer = grades("P1000")[0]
    assert goes_coarser(cloth, finer, judged_by="particle") is None
    assert goes_coarser(cloth, finer, judged_by="finish").text.startswith(
        "cushioned cloth 2000 to P1000 goes coarser by finish: 15 µm to 18.3 µm."
    )


def test_bands():
    check = check_ladder(grades("P400; P2000; P2500"), media())
    assert [(s.coarser, s.in_band) for s in check.steps] == [(False, False), (False, False)]
    assert [f.topic for f in check.findings] == ["step-too-large", "step-small"]
    large, small = (f.text for f in check.findings)  # 35/10.3 and 10.3/8.4
    assert large.startswith("P400 to P2000 is a step of 3.4 times; paper is trusted to 2.")
    assert small.startswith("P2000 to P2500 is a step of only 1.23 times")
    assert check.largest_finish_ratio == pytest.approx(35 / 10.3)


def test_an_unknown_step_is_passed_over_but_not_trusted():
    coarse, fine = grades("P600; P400")
    check = check_ladder([coarse, None, fine], media())
    assert check.steps == ()
    assert not check.monotonic
    assert check_ladder([], media()).monotonic
    assert check_ladder([], media()).largest_particle_ratio is None


def test_stock_plan_takes_its_ranges():
    def plan(defect=20, sizes=(9,), k=0.1, s=2):
        return stock_plan_um(defect, sizes, scratch_share=k, stock_factor=s)

    takes_only(lambda x: plan(defect=x), 0, 1000)
    takes_only(lambda x: plan(k=x), 0.001, 5)
    takes_only(lambda x: plan(s=x), 1, 5)
    refuses(lambda x: plan(sizes=x), [], [0], [9, -1])


def test_the_interval_holds_the_figure():
    for stage in interval_stock_um(
        Interval(15, 20, 25), grades("P600; cushioned cloth 2000; cushioned cloth 5000"), Interval(0.05, 0.1, 0.15), 2
    ):
        assert stage.low <= stage.typical <= stage.high
    assert interval_stock_um(Interval(15, 20, 25), grades("P600; P1200"), Interval(0.05, 0.1, 0.15), 2)[
        1
    ].high == pytest.approx(2 * 0.15 * 26.8)


def cost_of(ladder, finish):
    cost = [abs(math.log(ladder[-1].finish_um / finish)), 0.0, 0.0, 0.0]
    for before, after in itertools.pairwise(ladder):
        ratio = math.log(before.finish_um / after.finish_um)
        band = media()[after.medium]
        cost[1] += max(0.0, ratio - math.log(band.ratio_high) - 1e-9)
        cost[2] += max(0.0, math.log(band.ratio_low) - ratio - 1e-9)
        cost[3] += ratio * ratio
    return tuple(cost)


@pytest.mark.parametrize("seed", range(12))
def test_the_path_is_the_best_of_all_paths(seed):
    """Against trying every ladder there is."""
    chance, judged_by = random.Random(seed), JUDGED_BY[seed % 3]
    owned = chance.sample([g for g in catalogue().grades if 0.5 < g.particle_um < 45 and g.scale != "mesh"], 9)
    finish = chance.choice([1, 3, 5, 9])
    paths = find_paths(owned, finish, media(), judged_by=judged_by)
    order = sorted(owned, key=lambda g: (-g.finish_um, -g.particle_um))
    for start in owned:
        found = paths.ladder_from(start)
        best = None
        later = order[order.index(start) + 1 :]
        for count in range(len(later) + 1):
            for rest in itertools.combinations(later, count):
                ladder = (start, *rest)
                if any(goes_coarser(a, b, judged_by=judged_by) for a, b in itertools.pairwise(ladder)):
                    continue
                if any(g.finish_um <= finish for g in ladder[:-1]):
                    continue
                cost = cost_of(ladder, finish)
                best = cost if best is None or cost < best else best
        assert cost_of(found, finish) == pytest.approx(best)
        assert all(goes_coarser(a, b, judged_by=judged_by) is None for a, b in itertools.pairwise(found))


def test_a_satin_ends_at_the_nearest_grade_from_either_side():
    owned = grades("P1200; film 9 um; film 5 um; film 3 um")
    assert [g.label for g in find_paths(owned, 9, media()).ladder_from(owned[0])] == ["P1200", "film 9 µm"]
    # without 9 µm the paper, 1.7 times coarser, is nearer than the film of 5 µm, 1.8 times finer
    assert [g.label for g in find_paths(owned[:1] + owned[2:], 9, media()).ladder_from(owned[0])] == ["P1200"]
    assert find_paths(owned[2:], 6, media()).ladder_from(owned[2]) == (owned[2],)
