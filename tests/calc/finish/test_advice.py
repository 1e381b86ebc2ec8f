"""What goes with a ladder: trim, time, what is missing, what stays in the drawer and why."""

import pytest
from calc.finish.planning import SHEETS, limits, names, owned, plan, topics

from pentools.calc.finish.limits import NOT_SAID
from pentools.calc.finish.progression import ladder_progression
from pentools.calc.finish.types import PlanLimits
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, materials, media


def test_what_is_left_in_the_drawer_has_a_reason():
    text = "P240; P360; CAMI 400; cloth 2000 = 30 um, finish 22 um; film 9 um; film 3 um; paste 1 um; P500; P2500"
    p = plan(20, 3, text)
    why = {s.grade.label: s.reason for s in p.set_aside}
    assert names(p) == ["CAMI 400", "film 9 µm", "film 3 µm"]
    assert set(why) | set(names(p)) == {g.label for g in owned(text)}
    assert "Too coarse for celluloid: 36 µm at most (P400" in why["P240"]
    assert "goes coarser by particle" in why["cushioned cloth 2000"]
    assert "finish is reached" in why["paste 1 µm"]
    assert "CAMI 400 clears the defect" in why["P500"]
    assert "would do little" in why["P2500"]
    near = plan(5, 1, "P600; film 3 um; film 1 um", zone="solid gold nib", material="gold nib")
    assert "Too coarse for the zone “solid gold nib”: 9 µm" in near.set_aside[0].reason
    by_finish = plan(20, 3, "CAMI 400; cloth 2000 = 30 um, finish 15 um; film 9 um; film 3 um", judged_by="finish")
    assert names(by_finish)[:2] == ["CAMI 400", "cushioned cloth 2000"]


def test_slow_start_gap_and_finish_not_reached():
    p = plan(20, 1, "P2500; film 1 um; film 0.5 um")
    slow = next(f for f in p.findings if f.topic == "slow-start")
    assert slow.level == "warning"
    assert "Nothing faster is at hand" in slow.text
    assert "step-too-large" in topics(p, "warning")
    gap = next(f.text for f in p.findings if f.topic == "missing-grade")
    assert gap.startswith("film 3 µm (3 µm, not at hand) would lie well between P2500 and film 1 µm")
    short = plan(20, 1, "P600; P1000; P1500")
    text = next(f.text for f in short.findings if f.topic == "finish-not-reached")
    assert "12.6 µm" in text
    assert "P2500" in text or "P2000" in text


def test_what_is_at_hand_is_never_called_missing():
    # P400 is owned, but casein takes 22 µm at most
    p = plan(40, 3, "P400; P2500; film 3 um", material="casein")
    slow = next(f.text for f in p.findings if f.topic == "slow-start")
    assert "P400 would be faster, but is too coarse here (22 µm at most)" in slow
    two = plan(40, 3, "P360; P400; P2500; film 3 um", material="casein")
    assert "P360 and P400 would be faster, but are too" in next(f.text for f in two.findings if f.topic == "slow-start")
    # a ladder begun with the finer sheet although the faster one is in it
    given = ladder_progression(owned("P2500; P400"), 40, 3, limits(), catalogue=catalogue())
    slow = next(f.text for f in given.findings if f.topic == "slow-start")
    assert "P400 is at hand and allowed, and faster" in slow
    # a grade for the gap that lies in the drawer is said to lie there, and one that is not allowed is not named
    gap = ladder_progression(owned("P600; film 3 um"), 20, 3, limits(), catalogue=catalogue())
    assert "(8.4 µm, not at hand)" in next(f.text for f in gap.findings if f.topic == "missing-grade")
    wide = plan(20, 3, "P400; film 3 um", material="nylon")
    assert wide.steps[0].grade.label == "film 3 µm"
    assert all("P600" not in f.text for f in wide.findings)


def test_trim():
    masked = plan(15, 3, SHEETS, trim="plated")
    assert masked.unmask_step is None
    assert "trim-masked" in topics(masked, "warning")
    unsaid = plan(15, 3, SHEETS, trim="not said")
    assert unsaid.unmask_step is None
    assert "trim-not-said" in topics(unsaid, "warning")
    assert PlanLimits(materials()["celluloid"], NOT_SAID, media()).trim == "not said"
    assert not {"trim-masked", "trim-unmask", "trim-not-said"} & set(topics(plan(15, 3, SHEETS, trim="none")))
    assert plan(15, 9, "P1200; film 9 um").unmask_step is None
    # the last three only, even where four are fine enough
    p = plan(6, 0.5, "film 5 um; film 3 um; film 2 um; film 1 um; film 0.5 um")
    assert p.unmask_step.grade.label == "film 2 µm"
    assert "through the last 3" in next(f.text for f in p.findings if f.topic == "trim-unmask")
    assert "this last step" in next(f.text for f in plan(15, 5, SHEETS).findings if f.topic == "trim-unmask")
    with pytest.raises(InputError):
        limits(trim="gold")


def test_directions_turn_at_every_grade():
    p = plan(15, 3, SHEETS)
    assert all(a.direction != b.direction for a, b in zip(p.steps, p.steps[1:], strict=False))
    assert all("loupe" in s.inspect for s in p.steps)


def test_no_wheel_on_celluloid_and_the_dust_is_named():
    p = plan(5, 3, "film 9 um; film 3 um")
    texts = {f.topic: f.text for f in p.findings}
    assert texts["wheel"].startswith("A wheel: by hand or a slow wheel")
    assert "always wet" in texts["sanding"]
    assert "No wheel for a beginner" in texts["caution"]
    rubber = {f.topic: f.text for f in plan(5, 3, "film 9 um; film 3 um", material="hard rubber").findings}
    assert "mercury" in rubber["caution"]
    for p in (texts, rubber):
        assert "ask a licensed professional" in p["caution"]
