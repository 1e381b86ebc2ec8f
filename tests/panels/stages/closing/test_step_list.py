"""The list of ticks: one click an answer, what is on record told and not asked, closing steps marked."""

import pytest

from pentools.calc.closing.order import Did
from pentools.panels.stages.closing.step_list import ANSWERED_BELOW, StepList
from pentools.sums.closing.work import closing_work


@pytest.fixture
def seen():
    return []


@pytest.fixture
def steps(seen):
    made = StepList(lambda: seen.append(1))
    made.show(closing_work("lever-sac"), {"sac-on": ["thin ring"]}, {"clean-dry": "It is dry."})
    return made


def test_a_test_that_passed_says_that_the_step_was_done(steps, seen):
    steps.rows["nib-set"].tested.value = True
    assert steps.ticked() == (["nib-set"], ["nib-set"], [], [])
    assert seen
    steps.rows["nib-set"].done.value = False
    assert steps.ticked() == ([], [], [], [])


def test_what_was_not_out_was_neither_done_nor_tested(steps):
    row = steps.rows["bar-in"]
    row.tested.value = True
    row.left_out.value = True
    assert steps.ticked() == ([], [], ["bar-in"], [])
    row.done.value = True
    assert steps.ticked() == (["bar-in"], [], [], [])


def test_ticks_are_told_in_the_order_of_the_list(steps):
    for key in ("sac-on", "cleared", "dry-fit"):
        steps.rows[key].done.value = True
    assert steps.ticked()[0] == ["cleared", "dry-fit", "sac-on"]


def test_what_must_be_so_before_is_one_tick(steps):
    assert "It is dry." in steps.before.description
    steps.before.value = True
    assert steps.ticked()[3] == ["clean-dry"]
    steps.show(closing_work("lever-sac"), {}, {})
    assert steps.before.layout.display == "none"


def shown(tick):
    return tick.layout.display != "none"


def test_what_is_on_record_is_told_and_what_is_owed_is_asked(steps):
    did = [Did("cleared", True), Did("nib-set")]
    steps.show(closing_work("lever-sac", did=did, met=["clean-dry", "pictured"]), {}, {})
    cleared, nib, fit = (steps.rows[key] for key in ("cleared", "nib-set", "dry-fit"))
    assert (shown(cleared.done), shown(cleared.tested)) == (False, False)
    assert "done and tested" in cleared.note.value
    assert (shown(nib.done), shown(nib.tested)) == (False, True)
    assert "not tested" in nib.note.value
    assert (shown(fit.done), shown(fit.tested), shown(fit.left_out)) == (True, True, False)
    assert shown(steps.rows["bar-in"].left_out)


def test_an_entry_loaded_for_correction_shows_its_boxes(steps):
    steps.show(closing_work("lever-sac", did=[Did("cleared", True)], met=["clean-dry"]), {}, {})
    steps.set({"cleared"}, {"cleared"}, {"bar-in"}, True)
    assert shown(steps.rows["cleared"].done)
    assert steps.ticked()[:3] == (["cleared"], ["cleared"], ["bar-in"])


def test_a_closing_step_is_marked_by_a_word_and_lines_stand_under_their_step(steps):
    assert "closes" in steps.rows["sac-on"].note.value
    assert "thin ring" in steps.rows["sac-on"].note.value
    assert "closes" not in steps.rows["nib-set"].note.value
    assert "Cannot be taken back" in steps.rows["sac-cut"].note.value


def test_the_night_is_answered_where_it_is_kept(steps):
    row = steps.rows[ANSWERED_BELOW]
    assert (shown(row.done), shown(row.tested)) == (False, False)
    assert "answered below" in row.note.value


def test_without_a_system_there_is_a_hint(steps):
    steps.show(None, {}, {})
    assert steps.rows == {}
    assert "Name the filling system" in steps.head.value


def test_a_step_that_cannot_be_taken_back_says_so_until_it_is_on_record():
    fresh, over = StepList(lambda: None), StepList(lambda: None)
    fresh.show(closing_work("lever-sac"), {}, {})
    final = [key for key, row in fresh.rows.items() if "taken back" in row.note.value.lower()]
    free = [key for key in fresh.rows if key not in final]
    assert final
    assert free
    over.show(
        closing_work("lever-sac", did=[Did(key, True) for key in fresh.rows], met=["clean-dry", "pictured"]), {}, {}
    )
    assert not any("taken back" in row.note.value.lower() for row in over.rows.values())
