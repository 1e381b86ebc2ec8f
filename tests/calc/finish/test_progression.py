"""Progressions: start, budget, other ways, trim, wet or dry, and refusals."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.calc.finish.grades import with_finish
from pentools.calc.finish.ladder import goes_coarser
from pentools.calc.finish.limits import Interval, Zone, zone_budget_um
from pentools.calc.finish.progression import grit_progression, ladder_progression, rate_of
from pentools.calc.finish.rate import LogRow, calibrate_rates
from pentools.calc.finish.reading import read_grades
from pentools.calc.finish.types import PlanLimits, blend_width
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media, zones

CLOTHS = "P400; cushioned 1500 to 12000"


def owned(text):
    return read_grades(text, catalogue())


def limits(material="celluloid", zone="plain barrel", **more):
    return PlanLimits(materials()[material], zones()[zone], media(), **more)


def plan(defect, finish, text, *, material="celluloid", zone="plain barrel", **more):
    return grit_progression(defect, finish, owned(text), limits(material, zone, **more), catalogue=catalogue())


def topics(p, level=None):
    return [f.topic for f in p.findings if level in (None, f.level)]


def names(p):
    return [s.grade.label for s in p.steps]


def test_stock_goes_by_the_finish_of_the_step_before():
    p = plan(20, 2, "P600; P1200; film 9 um; film 5 um; film 3 um; film 2 um")
    assert [s.removed_um.typical for s in p.steps] == pytest.approx([20, 5.16, 3.06, 1.8, 1.0, 0.6])
    assert p.removed_total_um.typical == pytest.approx(31.62)
    assert p.steps[-1].cumulative_um == p.removed_total_um
    cautious = plan(
        20,
        2,
        "P600; P1200; film 9 um; film 5 um; film 3 um; film 2 um",
        stock_factor=3,
        scratch_share=Interval(0.15, 0.15, 0.15),
    )
    assert cautious.removed_total_um.typical == pytest.approx(46.145)
    cloth = plan(30, 12, "P600; cushioned 1800; cushioned 2400")
    assert cloth.steps[2].removed_um.typical == pytest.approx(2 * 0.1 * 15)


def test_over_budget_reduces_with_numbers():
    p = plan(40, 3, CLOTHS)
    assert not p.within_budget
    assert topics(p)[0] == "over-budget"
    assert "Reduce the defect, do not remove it" in p.findings[0].text
    assert p.reduced.within_budget
    assert p.reduced.removed_total_um.typical <= p.budget_high_um + 1e-9
    reduce = next(a for a in p.alternatives if a.kind == "reduce")
    assert reduce.left_um == pytest.approx(40 - p.reduced.defect_um.typical)
    assert f"{reduce.left_um:.2g} µm" in reduce.text
    assert p.reduced.removed_total_um.typical == pytest.approx(reduce.removed_um.typical)


def test_a_coarser_start_is_priced():
    p = plan(
        10,
        3,
        "P1500; P2000; P2500; cushioned 6000; cushioned 8000; cushioned 12000",
        material="hard rubber",
        zone="near an imprint",
    )
    assert p.steps[0].grade.label == "P2500"
    coarser = next(a for a in p.alternatives if a.kind == "coarser start")
    direct = ladder_progression(
        owned("P2000; cushioned 6000; cushioned 8000; cushioned 12000"), 10, 3, limits("hard rubber", "near an imprint")
    )
    assert coarser.start.label == "P2000"
    assert coarser.removed_um.typical == pytest.approx(direct.removed_total_um.typical)
    assert coarser.first_minutes < p.steps[0].minutes.typical
    assert not coarser.within_budget


def test_not_even_the_finishing_steps_fit():
    p = plan(10, 3, CLOTHS, zone="near an imprint", spent_um=10)
    assert p.budget_high_um == 0
    assert p.reduced is None
    assert "leave the defect" in next(a.text for a in p.alternatives if a.kind == "reduce")


@pytest.mark.parametrize("zone", ["imprint", "threads", "seat", "plating"])
def test_zones_without_a_budget_get_no_step(zone):
    p = plan(5, 3, CLOTHS, zone=zone)
    assert p.steps == ()
    assert p.removed_total_um.typical == p.budget_high_um == 0
    assert topics(p, "stop") == ["leave-alone"]
    assert p.unmask_step is None


def test_plated_metal_and_gold_layers():
    assert plan(5, 3, CLOTHS, material="plated metal").steps == ()
    p = plan(5, 1, "paste 3 um; paste 1 um; P2500", material="gold-filled", zone="gold-filled", trim="none")
    assert names(p)[0] == "paste 3 µm"
    assert not p.within_budget
    assert p.reduced.removed_total_um.typical <= 0.5
    assert "Too coarse" in next(a.reason for a in p.set_aside)
    only_coarse = plan(5, 1, "P400", material="gold-filled", zone="gold-filled")
    assert only_coarse.steps == ()
    assert "fine enough" in only_coarse.findings[0].text


def test_the_wall_cuts_the_budget():
    assert zone_budget_um(zones()["plain barrel"], 0.2) == (20, 20)
    assert zone_budget_um(zones()["plain barrel"], 1.2) == (30, 50)
    assert zone_budget_um(zones()["imprint"], 1.2) == (0, 0)
    with pytest.raises(InputError):
        zone_budget_um(zones()["plain barrel"], 0)
    assert plan(15, 3, CLOTHS).within_budget
    assert not plan(15, 3, CLOTHS, wall_mm=0.2).within_budget


def test_budget_findings_by_degree():
    assert "within-budget" in topics(plan(3, 3, CLOTHS), "ok")
    assert "budget-upper" in topics(plan(20, 3, "P600; P1200; film 9 um; film 5 um; film 3 um"), "note")
    close = limits(zone="plain barrel", scratch_share=Interval(0.05, 0.1, 0.4))
    assert "budget-close" in topics(
        grit_progression(20, 3, owned("P600; P1200; film 9 um; film 5 um; film 3 um"), close), "warning"
    )


@pytest.mark.parametrize(
    ("material", "wet"),
    [("celluloid", True), ("acrylic", True), ("hard rubber", False), ("casein", False), ("solid gold", True)],
)
def test_wet_or_dry(material, wet):
    p = plan(5, 3, "film 9 um; film 3 um", material=material)
    assert {s.wet for s in p.steps} == {wet}
    assert "wet-or-dry" in topics(p)


def test_no_wheel_on_celluloid_and_the_dust_is_named():
    p = plan(5, 3, "film 9 um; film 3 um")
    texts = {f.topic: f.text for f in p.findings}
    assert "No wheel for a beginner" in texts["wheel"]
    assert "wet" in texts["caution"]
    rubber = {f.topic: f.text for f in plan(5, 3, "film 9 um; film 3 um", material="hard rubber").findings}
    assert "mercury" in rubber["caution"]
    for p in (texts, rubber):
        assert "ask a licensed professional" in p["caution"]


def test_trim():
    assert plan(15, 3, CLOTHS, trim="plated").unmask_step is None
    assert "trim-masked" in topics(plan(15, 3, CLOTHS, trim="plated"), "warning")
    assert not {"trim-masked", "trim-unmask"} & set(topics(plan(15, 3, CLOTHS, trim="none")))
    assert plan(15, 9, "P1200; film 9 um").unmask_step is None
    # the last three only, even where four are fine enough
    assert (
        plan(6, 0.5, "film 5 um; film 3 um; film 2 um; film 1 um; film 0.5 um").unmask_step.grade.label == "film 2 µm"
    )
    with pytest.raises(InputError):
        limits(trim="gold")


def test_directions_turn_at_every_grade():
    p = plan(15, 3, CLOTHS)
    assert all(a.direction != b.direction for a, b in zip(p.steps, p.steps[1:], strict=False))
    assert all("loupe" in s.inspect for s in p.steps)


def test_what_is_left_in_the_drawer_has_a_reason():
    p = plan(20, 3, "P240; P360; CAMI 400; cushioned 1500 to 12000; paste 1 um")
    why = {s.grade.label: s.reason for s in p.set_aside}
    assert set(why) | set(names(p)) == {
        g.label for g in owned("P240; P360; CAMI 400; cushioned 1500 to 12000; paste 1 um")
    }
    assert "Too coarse for celluloid" in why["P240"]
    assert "goes coarser by particle" in why["cushioned 1500"]
    assert "finish is reached" in why["paste 1 µm"]
    by_finish = plan(20, 3, "CAMI 400; cushioned 1500 to 12000", judged_by="finish")
    assert names(by_finish)[:2] == ["CAMI 400", "cushioned 1800"]  # 1500 is finer by finish, but by 4 percent only
    assert "would do little" in by_finish.set_aside[0].reason


def test_slow_start_gap_and_finish_not_reached():
    p = plan(20, 1, "P2500; film 1 um; film 0.5 um")
    assert "slow-start" in topics(p, "warning")
    assert "step-too-large" in topics(p, "warning")
    gap = next(f.text for f in p.findings if f.topic == "missing-grade")
    assert "film 3 µm" in gap
    short = plan(20, 1, "P600; P1000; P1500")
    text = next(f.text for f in short.findings if f.topic == "finish-not-reached")
    assert "12.6 µm" in text
    assert "P2500" in text or "P2000" in text


def test_own_finish_figures_change_the_plan():
    base = owned("P600; cushioned 1800; cushioned 4000; cushioned 12000")
    coarser = [with_finish(g, 24) if g.label == "cushioned 1800" else g for g in base]
    a, b = (grit_progression(20, 3, grades, limits()) for grades in (base, coarser))
    assert b.steps[1].grade.finish_um != a.steps[1].grade.finish_um or names(a) != names(b)


def test_the_bench_s_own_rates_move_the_start():
    rows = [LogRow("celluloid", g, r, 10.0) for g, r in zip(owned("P1200; P2000; P600"), (40, 30, 60), strict=True)]
    rates = calibrate_rates(rows, "celluloid", media())
    slow, fast = plan(20, 3, CLOTHS), plan(20, 3, CLOTHS, rates=rates)
    assert fast.steps[0].grade.finish_um < slow.steps[0].grade.finish_um
    assert all(s.calibrated for s in fast.steps)
    assert "calibrated" in topics(fast, "ok")
    assert "not-calibrated" in topics(slow, "note")
    few = calibrate_rates(rows[:2], "celluloid", media())
    assert any("2 of 3" in f.text for f in plan(20, 3, CLOTHS, rates=few).findings)
    assert not rate_of(owned("P600")[0], limits("acrylic", rates=rates)).calibrated


def test_an_edited_ladder_is_judged_with_the_same_figures():
    planned = plan(20, 3, CLOTHS)
    again = ladder_progression([s.grade for s in planned.steps], 20, 3, limits(), catalogue=catalogue())
    assert again.steps == planned.steps
    assert again.removed_total_um == planned.removed_total_um
    bad = ladder_progression(owned("P240; P600; P400"), 20, 3, limits())
    assert {"goes-coarser", "too-coarse"} <= set(topics(bad, "stop"))


@pytest.mark.parametrize(
    ("defect", "finish"), [(0, 3), (-1, 3), (600, 3), (20, 0), (20, 500), (float("nan"), 3), (20, float("nan"))]
)
def test_refusals(defect, finish):
    with pytest.raises(InputError):
        plan(defect, finish, CLOTHS)
    with pytest.raises(InputError):
        ladder_progression(owned(CLOTHS), defect, finish, limits())


def test_more_refusals():
    with pytest.raises(InputError, match="at least one"):
        grit_progression(20, 3, (), limits())
    with pytest.raises(InputError, match="at least one"):
        ladder_progression((), 20, 3, limits())
    with pytest.raises(InputError):
        limits(spent_um=-1)
    with pytest.raises(InputError):
        limits(time_limit_min=0)
    with pytest.raises(InputError):
        blend_width(-1)
    with pytest.raises(InputError):
        blend_width(10, -1)


ALL = [g for g in catalogue().grades if g.scale != "mesh"]


@settings(deadline=None, max_examples=80)
@given(
    st.lists(st.sampled_from(ALL), min_size=1, max_size=14, unique=True),
    st.floats(0.5, 150), st.sampled_from([1.0, 3.0, 5.0, 9.0]), st.sampled_from(sorted(materials())), st.sampled_from(sorted(zones())),
)  # fmt: skip
def test_any_plan_goes_finer_and_keeps_its_books(grades, defect, finish, material, zone):
    p = grit_progression(defect, finish, grades, limits(material, zone))
    for a, b in zip(p.steps, p.steps[1:], strict=False):
        assert goes_coarser(a.grade, b.grade) is None
    if p.steps:
        assert p.removed_total_um.typical == pytest.approx(sum(s.removed_um.typical for s in p.steps))
        assert p.removed_total_um.low <= p.removed_total_um.typical <= p.removed_total_um.high
        assert max(s.grade.particle_um for s in p.steps) <= p.limits.coarsest_um * 1.001
    assert p.within_budget == (not any(f.topic == "over-budget" for f in p.findings))
    assert p.within_budget or p.removed_total_um.typical > p.budget_high_um
    if p.reduced is not None:
        assert p.reduced.removed_total_um.typical <= p.budget_high_um + 1e-6
        assert p.reduced.defect_um.typical <= defect
    assert sum(s.unmask for s in p.steps) <= 1
    assert {s.grade for s in p.set_aside} | {s.grade for s in p.steps} == set(grades) or not p.steps


def test_a_zone_of_one_s_own():
    own = Zone("cap lip", 10, 20)
    p = grit_progression(10, 3, owned(CLOTHS), PlanLimits(materials()["celluloid"], own, media()))
    assert p.budget_high_um == 20
