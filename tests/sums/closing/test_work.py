"""An order as it is told: both ways alike, the clock by what was put on, the materials' changes beside their steps."""

import pytest

from pentools.calc.closing.order import Did
from pentools.errors import InputError
from pentools.sums.closing.work import (
    closing_rows,
    closing_told,
    closing_work,
    cure_hours,
    numbers_of,
    opening_told,
    step_changes,
    step_keys,
)
from pentools.systems.registry import SYSTEMS


def row(system, key):
    return next(r for r in closing_rows(system) if r.key == key)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_is_told_both_ways(system):
    closing, opening = closing_told(system, ["acrylic"], ["latex"]), opening_told(system, ["acrylic"])
    assert [step.key for step in closing.steps] == list(step_keys(system))
    for told in (closing, opening):
        assert [step.number for step in told.steps] == list(range(1, len(told.steps) + 1))
        assert all(step.undone in ("yes", "partly", "no") and step.action and step.sources for step in told.steps)
        assert all("clock has run" not in step.test for step in told.steps)
    assert all(step.test and step.before for step in closing.steps)
    assert {step.number for step in closing.steps if step.closes}
    assert not any(step.closes for step in opening.steps)


def test_the_clock_is_that_of_what_was_put_on():
    assert cure_hours(row("lever-sac", "sac-on"), ["latex"]) == 8
    assert cure_hours(row("lever-sac", "sac-on"), ["silicone"]) == 24
    assert cure_hours(row("lever-sac", "sac-on"), ["silicone"], "thread") == 8
    assert cure_hours(row("lever-sac", "sac-on"), ["silicone"], moment="ink") == 48
    assert cure_hours(row("lever-sac", "sealed"), ["silicone"]) == 8  # the section, not the sac
    assert cure_hours(row("lever-sac", "sealed"), [], "rosin") == 0
    assert cure_hours(row("lever-sac", "nib-set"), ["latex"]) is None
    told = closing_told("lever-sac", ["acrylic"], ["silicone"]).steps
    assert [step.hours for step in told if step.hours] == [24, 8]
    assert next(step.test for step in told if step.key == "sac-on").startswith("After 24 h: close the nib end")


def test_changes_stand_with_their_step_and_once_among_the_findings():
    told = closing_told("lever-sac", ["casein"], ["silicone"])
    wet = next(step for step in told.steps if step.key == "wet-tested")
    assert "nib alone" in wet.changes[0]
    assert wet.caution.startswith(wet.changes[0])
    said = [f for f in told.findings if f.topic == "material" and f.values["words"] == wet.changes[0]]
    assert [(f.level, f.values["steps"]) for f in said] == [("warning", "steps 9 and 11")]
    assert step_changes(row("lever-sac", "nib-set"), ["casein"], []) == ()


def test_opening_takes_a_named_body_and_warns_of_its_own_fire_only():
    def cautions(body):
        return " ".join(step.caution for step in opening_told("lever-sac", [body]).steps)

    assert "bare nitrate" in cautions("celluloid")
    assert "bare nitrate" in cautions("unknown")
    assert "bare nitrate" not in cautions("hard rubber")
    wet = opening_told("lever-sac", ["celluloid"]).steps[1]
    assert wet.before == ("The material of every part that will be warmed or wetted is named.",)
    assert wet.waits == ()
    assert opening_told("lever-sac", ["unknown"]).steps[1].state == "early"


def test_what_was_done_is_taken_over():
    assert closing_work("piston", did=[Did("cleared", True)]).step("cleared").state == "done"
    assert next(s.state for s in closing_told("piston", [], [], did=[Did("cleared")]).steps) == "untested"
    assert opening_told("piston", ["acrylic"], done=[1]).steps[0].state == "done"


def test_numbers_and_names_are_both_understood():
    assert numbers_of(["2", "cut", " 1 "], ["glue", "cut"], "Steps done") == (2, 2, 1)
    for wrong in ("0", "3", "saw", "-1", ""):
        with pytest.raises(InputError, match="numbers from 1 to 2, or glue, cut"):
            numbers_of([wrong], ["glue", "cut"], "Steps done")
