"""Progressions: start, budget, other ways, trim, wet or dry, and refusals."""

import pytest
from calc.finish.planning import CLOTHS, SHEETS, limits, names, owned, plan, topics
from hypothesis import given, settings
from hypothesis import strategies as st
from ranges import refuses, takes_only

from pentools.calc.finish.grades import with_finish
from pentools.calc.finish.ladder import goes_coarser
from pentools.calc.finish.limits import NOT_SAID, Interval, Zone, zone_budget_um
from pentools.calc.finish.progression import grit_progression, ladder_progression, rate_of
from pentools.calc.finish.rate import LogRow, calibrate_rates
from pentools.calc.finish.types import PlanLimits
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits
from pentools.errors import InputError
from pentools.tables import read
from pentools.tables.abrasives import catalogue, materials, media, zones


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
    cloth = plan(30, 10.5, "P600; cushioned cloth 2000; cushioned cloth 3000")
    assert cloth.steps[2].removed_um.typical == pytest.approx(2 * 0.1 * 15)  # the finish of cloth 2000, not its grain


@pytest.mark.parametrize("zone", ["imprint", "threads", "seat", "plating"])
def test_zones_without_a_budget_get_no_step(zone):
    p = plan(5, 3, CLOTHS, zone=zone)
    assert p.steps == ()
    assert p.removed_total_um.typical == p.budget_high_um == 0
    assert topics(p, "stop") == ["leave-alone"]
    assert p.unmask_step is None


def test_plated_metal_and_gold_layers():
    assert plan(5, 3, CLOTHS, material="plated metal").steps == ()
    p = plan(5, 1, "paste 3 um; paste 1 um; P2500; film 1 um", material="gold-filled", zone=None, trim="none")
    assert names(p) == ["paste 3 µm", "paste 1 µm"]
    assert p.budget_high_um == 0.5
    assert not p.within_budget
    assert p.reduced.removed_total_um.high <= 0.5
    assert {a.grade.label: a.reason for a in p.set_aside} == {
        "P2500": "Never on gold-filled: it cuts down to the brass.", "film 1 µm": "Never on gold-filled: it cuts down to the brass.",
    }  # fmt: skip
    assert [f.text for f in p.findings if f.topic == "never"] == [
        "No paper, film or cloth on gold-filled: it cuts down to the brass. Paste by hand only, and seldom."
    ]
    sheets = plan(5, 1, "P2000; film 3 um", material="silver", zone=None)
    assert sheets.steps == ()
    assert sheets.findings[0].level == "stop"
    assert "it takes silver away" in sheets.findings[0].text
    coarse = plan(5, 1, "paste 6 um", material="gold-filled", zone=None)
    assert coarse.steps == ()
    assert "fine enough" in coarse.findings[0].text


def test_a_ladder_given_in_order_is_stopped_by_what_the_table_forbids():
    p = ladder_progression(owned("P2000; paste 1 um"), 1, 1, limits("silver", None))
    assert [f.text for f in p.findings if f.topic == "never" and f.level == "stop"] == [
        "P2000 never on silver: it takes silver away."
    ]


def test_a_zone_that_is_not_said_is_the_strictest_and_the_steps_stay_on_paper():
    p = plan(15, 3, SHEETS, zone=None)
    assert p.limits.zone == NOT_SAID
    assert (p.budget_high_um, p.within_budget, p.reduced, p.alternatives) == (0, False, None, ())
    assert names(p) == names(plan(15, 3, SHEETS))
    assert topics(p, "stop") == ["zone-not-said"]
    assert not {"over-budget", "within-budget", "budget-upper"} & set(topics(p))
    assert "zone-not-said" not in topics(plan(15, 3, SHEETS))


def test_a_satin_starts_and_ends_at_satin():
    every = "P600; P1200; film 9 um; film 5 um; film 3 um; film 1 um"
    satin = Interval(7, 9, 13)
    for depth, ladder in ((20, ["P600", "P1200", "film 9 µm"]), (3, ["film 9 µm"]), (0.5, ["film 9 µm"])):
        p = grit_progression(depth, satin, owned(every), limits())
        assert names(p) == ladder
        assert not {"finish-not-reached", "finish-passed"} & set(topics(p))
    fine = grit_progression(2, satin, owned("film 3 um; film 1 um"), limits(), catalogue=catalogue())
    assert names(fine) == ["film 3 µm"]
    assert "shinier than the 9 µm" in next(f.text for f in fine.findings if f.topic == "finish-passed")
    dull = grit_progression(20, satin, owned("P600; P1000"), limits(), catalogue=catalogue())
    assert "finish-not-reached" in topics(dull, "warning")
    # what lies inside the ends is satin
    assert "finish-not-reached" not in topics(grit_progression(20, satin, owned("P600; P1200; P1500"), limits()))


def test_the_wall_cuts_the_budget():
    assert zone_budget_um(zones()["plain barrel"], 0.2) == (20, 20)
    assert zone_budget_um(zones()["plain barrel"], 1.2) == (30, 50)
    assert zone_budget_um(zones()["imprint"], 1.2) == (0, 0)
    with pytest.raises(InputError):
        zone_budget_um(zones()["plain barrel"], 0)
    assert plan(15, 3, SHEETS).within_budget
    assert not plan(15, 3, SHEETS, wall_mm=0.2).within_budget


@pytest.mark.parametrize(
    ("material", "wet"),
    [
        ("celluloid", True),
        ("acrylic", True),
        ("hard rubber", False),
        ("faded hard rubber", False),
        ("coloured hard rubber", True),
        ("casein", False),
    ],
)
def test_wet_or_dry(material, wet):
    p = plan(5, 3, "film 9 um; film 3 um", material=material)
    assert {s.wet for s in p.steps} == {wet}
    assert "wet-or-dry" in topics(p)


def test_own_finish_figures_change_the_plan():
    base = owned("P600; cushioned cloth 2000; cushioned cloth 5000; film 3 um")
    coarser = [with_finish(g, 24) if g.label == "cushioned cloth 2000" else g for g in base]
    a, b = (grit_progression(20, 3, grades, limits()) for grades in (base, coarser))
    assert [p.steps[1].grade.finish_um for p in (a, b)] == [15, 24]


def test_the_bench_s_own_rates_move_the_start():
    rows = [LogRow("celluloid", g, r, 10.0) for g, r in zip(owned("P1200; P2000; P600"), (40, 30, 60), strict=True)]
    rates = calibrate_rates(rows, "celluloid", media())
    slow, fast = plan(20, 3, SHEETS), plan(20, 3, SHEETS, rates=rates)
    assert fast.steps[0].grade.finish_um < slow.steps[0].grade.finish_um
    assert all(s.calibrated for s in fast.steps)
    assert "calibrated" in topics(fast, "ok")
    assert "not-calibrated" in topics(slow, "note")
    few = calibrate_rates(rows[:2], "celluloid", media())
    assert any("2 of 3" in f.text for f in plan(20, 3, SHEETS, rates=few).findings)
    assert not rate_of(owned("P600")[0], limits("acrylic", rates=rates)).calibrated


def test_an_edited_ladder_is_judged_with_the_same_figures():
    planned = plan(20, 3, SHEETS)
    again = ladder_progression([s.grade for s in planned.steps], 20, 3, limits(), catalogue=catalogue())
    assert again.steps == planned.steps
    assert again.removed_total_um == planned.removed_total_um
    coarse = ladder_progression(owned("P240; P600"), 20, 3, limits())
    assert [f.text for f in coarse.findings if f.topic == "too-coarse"] == [
        "P240 (58.5 µm) is coarser than celluloid in the zone “plain barrel” allows (36 µm)."
    ]
    bad = ladder_progression(owned("P240; P600; P400"), 20, 3, limits())
    assert {"goes-coarser", "too-coarse"} <= set(topics(bad, "stop"))


@pytest.mark.parametrize("planned", [True, False], ids=["planned", "given"])
def test_ranges(planned):
    def made(defect=20, finish=3):
        if planned:
            return plan(defect, finish, CLOTHS)
        return ladder_progression(owned(CLOTHS), defect, finish, limits())

    takes_only(lambda x: made(defect=x), 0, 500, above=True)
    takes_only(lambda x: made(finish=x), 0.01, 100)
    # the ends in their order, the upper one to twice the deepest
    made(defect=Interval(0, 20, 1000), finish=Interval(3, 3, 3))
    refuses(
        lambda x: made(defect=x),
        Interval(-1, 20, 30),
        Interval(21, 20, 30),
        Interval(10, 20, 19),
        Interval(10, 20, 1001),
    )
    refuses(lambda x: made(finish=x), Interval(0, 3, 4), Interval(3.1, 3, 4), Interval(2, 3, 2.9))


def test_more_refusals():
    with pytest.raises(InputError, match="at least one"):
        grit_progression(20, 3, (), limits())
    with pytest.raises(InputError, match="at least one"):
        ladder_progression((), 20, 3, limits())


def test_where_a_plan_starts():
    """The finest that clears the defect in a quarter of an hour at a twelfth of the grain a minute: 25.8 µm takes 32.25 µm."""
    every = "P400; P600; film 9 um"
    assert names(plan(32.25, 9, every))[0] == "P600"
    assert names(plan(32.26, 9, every))[0] == "P400"
    # none in time: the fastest, which is not the last one named
    assert names(plan(200, 9, "film 9 um; P600; P400; P1200"))[0] == "P400"
    assert names(plan(32.26, 9, every, time_limit_min=20))[0] == "P600"
    # a grade may end a finish that is asked as a size: a fifth finer counts as that finish, more does not
    for size, start in (("7.2", "film 7.2 µm"), ("7.1", "P1200")):
        assert names(plan(1, 9, f"P1200; film {size} um"))[0] == start
    # every owned grade finer than asked: the coarsest of them
    assert names(plan(1, 30, "film 9 um; film 5 um")) == ["film 9 µm"]


def test_where_trim_is_unmasked():
    """Grain of 5 µm or finer, and no earlier than the last three steps."""

    def at(text, finish=1, **more):
        step = plan(6, finish, text, **more).unmask_step
        return step.grade.label if step else None

    assert at("film 9 um; film 5 um; film 3 um; film 1 um") == "film 5 µm"
    assert at("film 9 um; film 5.1 um; film 3 um; film 1 um") == "film 3 µm"
    assert at("film 9 um; film 5 um; film 3 um; film 1 um", last_steps_on_trim=1) == "film 1 µm"
    assert at("film 9 um; film 5 um; film 3 um; film 1 um", unmask_um=9) == "film 5 µm"
    assert at("film 5 um; film 3 um") == "film 5 µm"
    assert at("film 9 um", finish=9) is None


def test_why_a_pen_is_left_alone():
    def why(text, material="celluloid", zone="plain barrel"):
        p = plan(5, 3, text, material=material, zone=zone)
        assert p.steps == ()
        assert p.within_budget
        return p.findings[0].text

    assert why("film 3 um", zone="imprint").startswith("Leave the zone “imprint” alone: its budget is 0 µm. ")
    assert why("film 3 um", material="unknown").startswith("No abrasive on a material that is not named: ")
    assert why("film 3 um", material="cork").startswith("No abrasive on cork: ")
    assert why("film 3 um", material="gold-filled").startswith(
        "No paper, film or cloth on gold-filled: it cuts down to the brass. A paste of "
    )
    assert why("P240; P220").startswith(
        "Nothing owned is fine enough: celluloid in the zone “plain barrel” takes 36 µm at most, the finest owned is P240"
    )


ALL = [g for g in catalogue().grades if g.scale != "mesh"]


@settings(deadline=None, max_examples=80)
@given(
    st.lists(st.sampled_from(ALL), min_size=1, max_size=14, unique=True),
    st.floats(0.5, 150), st.sampled_from([1.0, 3.0, 5.0, 9.0]), st.sampled_from(sorted(materials())),
    st.sampled_from([None, *sorted(zones())]),
)  # fmt: skip
def test_any_plan_goes_finer_and_keeps_its_books(grades, defect, finish, material, zone):
    p = grit_progression(defect, finish, grades, limits(material, zone))
    for a, b in zip(p.steps, p.steps[1:], strict=False):
        assert goes_coarser(a.grade, b.grade) is None
    if p.steps:
        assert p.removed_total_um.typical == pytest.approx(sum(s.removed_um.typical for s in p.steps))
        assert p.removed_total_um.low <= p.removed_total_um.typical <= p.removed_total_um.high
        assert all(p.limits.allows(s.grade) for s in p.steps)
    else:
        assert topics(p, "stop")[0] == "leave-alone"
    assert p.within_budget == (
        p.removed_total_um.high <= p.budget_high_um + 1e-9 and (p.limits.zone_said or not p.steps)
    )
    assert p.within_budget or {"over-budget", "budget-close", "zone-not-said"} & set(topics(p))
    if p.reduced is not None:
        assert p.reduced.removed_total_um.high <= p.budget_high_um + 1e-6
        assert p.reduced.defect_um.typical <= defect
    assert sum(s.unmask for s in p.steps) <= 1
    assert {s.grade for s in p.set_aside} | {s.grade for s in p.steps} == set(grades) or not p.steps


@pytest.mark.parametrize("material", sorted(materials()))
def test_what_the_table_never_allows_is_never_planned(material):
    """The compatibility table is asked itself: never sanded means no paper, film or cloth in any plan."""
    verdict = treatment_limits(material, "wet sanding", read(CompatibilityRow, "compatibility")).verdict
    p = plan(3, 3, SHEETS + "; cloth 7000; paste 1 um; paste 3 um", material=material)
    bound = [s for s in p.steps if s.grade.medium != "paste"]
    assert not (verdict == "never" and bound)
    if verdict == "never":
        assert topics(p, "ok") == []
        assert "never" in topics(p) or topics(p, "stop")[0] == "leave-alone"


def test_a_zone_of_one_s_own():
    own = Zone("cap lip", 10, 20)
    p = grit_progression(10, 3, owned(SHEETS), PlanLimits(materials()["celluloid"], own, media()))
    assert p.budget_high_um == 20
