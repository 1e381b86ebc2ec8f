"""What goes with a ladder: trim, time, what is missing, what stays in the drawer and why."""

import pytest
from calc.finish.planning import SHEETS, limits, names, owned, plan, topics

from pentools.calc.finish.advice import missing_grade
from pentools.calc.finish.limits import NOT_SAID, Interval
from pentools.calc.finish.progression import ladder_progression
from pentools.calc.finish.types import Drawer, PlanLimits
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
    assert next(f.text for f in p.findings if f.topic == "trim-unmask").startswith(
        "Unmask solid trim at film 2 µm and take it through the last 3."
    )
    assert "this last step" in next(f.text for f in plan(15, 5, SHEETS).findings if f.topic == "trim-unmask")
    with pytest.raises(InputError):
        limits(trim="gold")


def test_directions_turn_at_every_grade():
    p = plan(15, 3, SHEETS)
    assert [s.direction.split()[0] for s in p.steps] == ["along", "around"] * (len(p.steps) // 2) + ["along"] * (
        len(p.steps) % 2
    )
    assert ["no line of any" in s.inspect for s in p.steps] == [False] * (len(p.steps) - 1) + [True]
    assert p.steps[0].note == "Work down to the floor of the defect and no further."
    assert p.steps[1].note.startswith(f"Until the last line of {p.steps[0].grade.label} is gone, then as long again.")
    assert ["Unmask" in s.note for s in p.steps] == [s.unmask for s in p.steps]
    cloth = plan(30, 10.5, "P600; cushioned cloth 2000; cushioned cloth 3000")
    assert cloth.steps[1].note.endswith("Grain about 23 µm, finishes like 15 µm (judged).")


def test_what_fills_a_gap_is_looked_for_in_the_scale_before_and_in_film():
    """Nearest the middle on a logarithmic axis; film only where it lies a fifth nearer. Sizes: FEPA's P grades, ISO 6344-3."""
    free = limits(trim="none")

    def fills(before, finish_um, particle_um=0.1, **within):
        drawer = Drawer((), catalogue())
        found = missing_grade(owned(before)[0], (finish_um, particle_um), limits(**within) if within else free, drawer)
        return found.label if found else None

    # P600 (25.8 µm) to 5 µm: the middle is 11.4 µm; P1800 is none of the catalogue's, P2000 is 10.3, film 12 µm nearer but not by a fifth
    assert fills("P600", 5) == "P2000"
    # P2500 (8.4 µm) to 1 µm: the middle is 2.9 µm, the finest paper is 3 µm or so off
    assert fills("P2500", 1) == "film 3 µm"
    # a grain below the gap's must not be coarser than the next grade's
    assert fills("P600", 5, 24) is None
    # casein takes 22 µm at most: P800 (21.8 µm) may, P600 may not
    assert fills("P240", 22.5, material="casein") is None
    assert missing_grade(owned("P600")[0], (5, 0.1), free, Drawer(())) is None


def test_what_is_not_needed_says_which_step_makes_it_so():
    why = {s.grade.label: s.reason for s in plan(20, 3, SHEETS + "; P1500; film 1 um").set_aside}
    used = names(plan(20, 3, SHEETS + "; P1500; film 1 um"))
    assert why["P400"] == f"Coarser than needed: {used[0]} clears the defect."
    assert why["film 1 µm"] == f"Not needed: the finish is reached with {used[-1]}."
    assert why["P1500"].startswith("Not needed: it lies so near P1200 or the grade after it")


def test_ends_of_a_finish_are_neither_too_dull_nor_too_shiny():
    """A finish of 8 to 11 µm: a grade of just that size reaches it, one of a hundredth more or less does not."""
    for size, topic in ((8, None), (7.9, "finish-passed"), (11, None), (11.1, "finish-not-reached")):
        found = topics(
            ladder_progression(owned(f"P600; film {size} um"), 20, Interval(8, 10, 11), limits(), catalogue=catalogue())
        )
        assert {"finish-passed", "finish-not-reached"} & set(found) == ({topic} if topic else set()), size
    # what could follow leaves the finish that was asked, not half of it
    short = ladder_progression(owned("P600"), 20, Interval(8, 10, 11), limits(), catalogue=catalogue())
    text = next(f.text for f in short.findings if f.topic == "finish-not-reached")
    assert text == (
        "P600, the last that this ladder can use, leaves a finish like 25.8 µm; 10 µm was wanted. "
        "P1000 (18.3 µm, not at hand) could follow it."
    )


def test_a_slow_start_begins_after_the_limit():
    # 9 µm film takes 9/12 µm a minute: 11.25 µm in a quarter of an hour
    for depth, slow in ((11.25, False), (11.26, True)):
        assert ("slow-start" in topics(plan(depth, 9, "film 9 um"))) == slow
    named = ladder_progression(
        owned("film 9 um; P2500; P2000; P1500; P1200; P1000"), 40, 3, limits(), catalogue=catalogue()
    )
    assert next(f for f in named.findings if f.topic == "slow-start").values["faster"] == ("P2000", "P1500", "P1200")


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
