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
