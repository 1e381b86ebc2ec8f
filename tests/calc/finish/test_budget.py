"""The total against the budget by its upper end, and other ways with their numbers."""

import pytest
from calc.finish.planning import CLOTHS, SHEETS, limits, owned, plan, topics

from pentools.calc.finish.limits import Interval
from pentools.calc.finish.progression import grit_progression, ladder_progression


def test_over_budget_reduces_with_numbers():
    p = plan(60, 3, SHEETS)
    assert not p.within_budget
    assert topics(p)[0] == "over-budget"
    assert "Reduce the defect, do not remove it" in p.findings[0].text
    assert p.reduced.within_budget
    reduce = next(a for a in p.alternatives if a.kind == "reduce")
    assert reduce.left_um == pytest.approx(60 - p.reduced.defect_um.typical)
    assert f"leave {reduce.left_um:.2g} µm" in reduce.text
    assert p.reduced.removed_total_um == reduce.removed_um
    # it uses the budget up, by its upper end
    assert p.reduced.removed_total_um.high == pytest.approx(50, abs=0.3)  # a quarter of an hour of P600
    assert reduce.first_minutes == pytest.approx(p.reduced.steps[0].minutes.typical)


def test_the_upper_end_is_held_against_the_budget():
    inside, close = plan(30, 3, SHEETS), plan(34, 3, SHEETS.removeprefix("P400; "))
    assert inside.removed_total_um.high <= 50
    assert inside.within_budget
    assert "budget-upper" in topics(inside, "note")
    assert close.removed_total_um.typical < 50 < close.removed_total_um.high
    assert not close.within_budget
    assert "budget-close" in topics(close, "warning")
    assert close.reduced.removed_total_um.high <= 50 + 1e-9
    assert not any("inside" in a.text for a in close.alternatives if a.removed_um.high > 50)
    assert all(a.within_budget == (a.removed_um.high <= 50 + 1e-9) for a in close.alternatives)


def test_a_defect_of_uncertain_depth_is_held_by_its_upper_end():
    p = grit_progression(Interval(30, 45, 80), 3, owned(SHEETS), limits())
    assert p.removed_total_um.high > 80
    assert topics(p, "stop") == ["over-budget"]


def test_a_coarser_start_is_priced():
    p = plan(
        10,
        3,
        "P1500; P2000; P2500; film 5 um; film 4 um; film 3 um",
        material="hard rubber",
        zone="near an imprint",
    )
    assert p.steps[0].grade.label == "P2500"
    coarser = next(a for a in p.alternatives if a.kind == "coarser start")
    direct = ladder_progression(owned("P2000; film 5 um; film 3 um"), 10, 3, limits("hard rubber", "near an imprint"))
    assert coarser.start.label == "P2000"
    assert coarser.removed_um.typical == pytest.approx(direct.removed_total_um.typical)
    assert coarser.first_minutes < p.steps[0].minutes.typical
    assert not coarser.within_budget


def test_not_even_the_finishing_steps_fit():
    p = plan(10, 3, CLOTHS, zone="near an imprint", spent_um=10)
    assert p.budget_high_um == 0
    assert p.reduced is None
    assert "leave the defect" in next(a.text for a in p.alternatives if a.kind == "reduce")


def test_budget_findings_by_degree():
    assert "within-budget" in topics(plan(3, 3, SHEETS), "ok")
    assert "budget-upper" in topics(plan(20, 3, "P600; P1200; film 9 um; film 5 um; film 3 um"), "note")
    close = limits(scratch_share=Interval(0.05, 0.1, 0.4))
    p = grit_progression(20, 3, owned("P600; P1200; film 9 um; film 5 um; film 3 um"), close)
    assert "budget-close" in topics(p, "warning")
    # one micrometre either side of the lower end: ok up to it by the upper figure, a note beyond
    assert "within-budget" in topics(plan(30, 9, "film 9 um"), "ok")
    assert "budget-upper" in topics(plan(30.1, 9, "film 9 um"), "note")


def test_other_ways_are_told_with_figures_worked_by_hand():
    """10 µm out of hard rubber: k = 0.10 (0.05 to 0.15), s = 2; a twelfth of the grain a minute; P2500 is 8.4, P2000 10.3 µm."""
    papers = "P1500; P2000; P2500; film 5 um; film 4 um; film 3 um"
    p = plan(10, 3, papers, material="hard rubber", zone="near an imprint")
    reduce, coarser, finer = p.alternatives
    # a quarter of an hour of 5 µm film takes 15 · 5/12 = 6.25 µm; then 2 · 0.10 · 5 = 1 µm with the last
    assert (reduce.kind, reduce.start.label, reduce.left_um) == ("reduce", "film 5 µm", pytest.approx(3.75))
    assert reduce.text.startswith(
        "Reduce: starting with film 5 µm, take 6.2 µm of the defect's 10 µm and leave 3.8 µm; "
    )
    assert "that is 7.2 µm a side (6.7 to 7.9), inside" in reduce.text
    # 10 + 2 · 0.10 · (10.3 + 5) = 13.06, 10/(10.3/12) = 11.7 min, against 10 + 2 · 0.10 · (8.4 + 5) = 12.68 and 14.3 min
    assert coarser.removed_um.typical == pytest.approx(13.06)
    assert coarser.text.startswith(
        "A coarser start, P2000: 13 µm a side in all (up to 15), 0.38 µm more, first stage about 12 min"
    )
    # 10 + 2 · 0.10 · 5 = 11 µm, 10/(5/12) = 24 min
    assert (finer.kind, finer.start.label, finer.removed_um.typical, finer.left_um) == (
        "finer start",
        "film 5 µm",
        pytest.approx(11),
        0,
    )
    assert finer.first_minutes == pytest.approx(24)
    assert finer.text.endswith("1.7 µm less, first stage about 24 min against 14 min: still over the budget.")
    told = [f for f in p.findings if f.topic in ("reduce", "coarser-start", "finer-start")]
    assert [(f.level, f.text) for f in told] == [("note", other.text) for other in p.alternatives]


def test_another_start_that_fits_is_said_to_fit():
    # 44 + 2 · 0.10 · 25.8 = 49 µm, with k of 0.15 more than 50; with the 9 µm film from the start just 44
    p = plan(44, 9, "P600; film 9 um")
    assert not p.within_budget
    (finer,) = [a for a in p.alternatives if a.kind == "finer start"]
    assert (finer.start.label, finer.within_budget, finer.removed_um.high) == ("film 9 µm", True, 44)
    assert finer.text.endswith(": inside the budget.")
    # no finer start than the finish that was asked
    assert [a.kind for a in plan(60, 13, "P600; film 9 um").alternatives] == ["reduce"]


def test_what_is_spent_and_measured_is_told():
    spent = plan(30, 3, "P600; P1200; film 9 um; film 5 um; film 3 um", spent_um=5)
    assert (spent.budget_low_um, spent.budget_high_um) == (25, 45)
    text = next(f.text for f in spent.findings if f.topic == "budget-close")
    assert "“plain barrel” can spare 25 to 45 µm after the 5 µm already taken" in text
    assert "about 41 µm a side (35 to 48)" in text
    wall = plan(20, 3, "P600; P1200; film 9 um; film 5 um; film 3 um", wall_mm=0.4)
    assert (wall.budget_low_um, wall.budget_high_um) == (30, 40)
    assert "A tenth of the wall at most" in next(f.text for f in wall.findings if f.topic == "budget-upper")
    # all of the budget gone to the last micrometre is inside, a thousandth more is not
    assert plan(20, 9, "film 9 um", spent_um=30).within_budget
    assert not plan(20.001, 9, "film 9 um", spent_um=30).within_budget


def test_nothing_to_spare_for_a_single_grade():
    p = plan(10, 9, "film 9 um", zone="near an imprint", spent_um=10)
    assert next(a.text for a in p.alternatives if a.kind == "reduce") == (
        "Nothing of the defect can be taken out within 0 µm: leave it, clean and wax only."
    )
    assert p.reduced is None
