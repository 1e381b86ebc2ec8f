"""The closing panel: a re-sac is one screen of ticks and one entry; holds and questions stand where the hand is."""

import pytest

from pentools.record.stages.closing.closing import closing_sentence
from pentools.record.stages.closing.kinds import ROUND, STEP, WRITING
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import closing_of
from pentools.record.stages.seal.kinds import TEST
from pentools.record.stages.weighing.kinds import LEAK_CHECK


@pytest.fixture
def lever(job):
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "lever-sac", "material": "acrylic"})
    return job


@pytest.fixture
def panel(lever, sheet):
    return sheet.panel("closing")


def save(panel):
    form = panel.forms["order"]
    form.button.click()
    return form.status.text


def tick(panel, *keys):
    for key in keys:
        panel.steps.rows[key].tested.value = True


ALL = ("cleared", "nib-set", "dry-fit", "sac-cut", "sac-on", "sac-dusted", "section-in", "wet-tested")


def test_a_whole_re_sac_is_one_screen_of_ticks_and_one_entry(lever, panel):
    tick(panel, *ALL)
    for key in ("bar-in", "sealed"):
        panel.steps.rows[key].left_out.value = True
    panel.steps.before.value = True
    panel.forms["order"].boxes["sac_with"].text = "shellac"
    panel.forms["order"].boxes["sac_length"].text = "52"
    assert save(panel).startswith("saved ")
    [entry] = lever.log(ROUND)
    assert entry.values.done == entry.values.tested == ALL
    assert entry.values.left_out == ("bar-in", "sealed")
    assert entry.values.sac_length.value == 52
    assert [step.row.key for step in closing_of(lever).steps if step.state not in ("done", "not needed")] == ["rested"]


def test_the_adhesive_is_filled_in_by_the_sacs_material_with_its_tick(lever, panel):
    sizes = {"bore": "8.3 mm", "nipple": "6.6 mm", "nipple_length": "6 mm", "depth": "50 mm"}
    lever.add("seal", "measure", {"place": "sac", "material": "silicone", **sizes})
    boxes = panel.forms["order"].boxes
    tick(panel, "cleared")
    assert boxes["sac_with"].text == boxes["sac_length"].text == ""
    tick(panel, "sac-cut", "sac-on")
    assert boxes["sac_with"].text == "silicone"
    assert boxes["sac_length"].text.endswith(" mm")
    panel.steps.rows["sac-on"].done.value = False
    assert boxes["sac_with"].text == ""
    boxes["sac_with"].text = "shellac"
    tick(panel, "sac-on")
    assert boxes["sac_with"].text == "shellac"


def test_step_by_step_what_is_on_record_is_not_asked_again(lever, panel):
    panel.steps.before.value = True
    tick(panel, "cleared")
    assert save(panel).startswith("saved ")
    assert panel.forms["order"].boxes["done"].text == ""
    assert panel.steps.rows["cleared"].done.layout.display == "none"
    assert panel.steps.before.layout.display == "none"
    tick(panel, "nib-set")
    assert save(panel).startswith("saved ")
    assert [logged.values.done for logged in lever.log(ROUND)] == [("cleared",), ("nib-set",)]


def test_a_skipped_step_is_asked_about_once_and_then_saved(lever, panel):
    tick(panel, "sac-dusted")
    said = save(panel)
    assert "Step 7 wants this first: The sac is tight on its joint." in said
    assert lever.log(ROUND) == ()
    assert save(panel).startswith("saved ")


def test_a_step_that_closes_something_untested_is_held_until_it_is_released(lever, panel, release):
    panel.steps.before.value = True
    tick(panel, "cleared", "nib-set", "dry-fit")
    panel.steps.rows["bar-in"].left_out.value = True
    panel.steps.rows["sac-cut"].done.value = True
    panel.steps.rows["sac-on"].done.value = True
    said = save(panel)
    assert "held" in said
    assert "The cut sac clears bar and barrel" in said
    assert panel.steps.rows["sac-on"].done.value  # what was ticked is still there
    assert lever.log(ROUND) == ()
    release(panel, "close", "tried beside the barrel")
    assert save(panel).startswith("saved ") or save(panel).startswith("saved ")
    assert lever.log(ROUND)


def test_a_held_step_told_apart_is_held_too(lever, panel, put):
    assert "closes over what is not tested" in put(panel, "step", step="section-in", outcome="passed")
    assert lever.log(STEP) == ()


def test_nothing_ticked_is_said_by_name(lever, panel):
    panel.forms["order"].boxes["sac_length"].text = "52"
    assert "at least one tick" in save(panel)
    assert lever.log(ROUND) == ()


def test_only_what_belongs_to_the_order_and_is_not_known_is_asked(lever, panel):
    assert panel.forms["order"].asked == ("sac_with", "section_with", "sac_length")
    lever.add("seal", "sealant", {"place": "sac", "sealant": "shellac"})
    lever.add("seal", "trial", {"place": "sac", "what": "16", "dry": "yes", "happened": "pulls back"})
    panel.refresh()
    assert panel.forms["order"].asked == ("section_with",)
    assert "As said elsewhere: sealant put on (Seal)." in panel.steps.rows["sac-on"].note.value
    assert "done and tested" in panel.steps.rows["sac-cut"].note.value


def test_the_steps_of_this_pen_alone_are_offered(panel):
    offered = {key for _, key in panel.forms["step"].boxes["step"].input.options}
    assert "bar-in" in offered
    assert "pump-in" not in offered


def test_an_entry_is_corrected_in_the_list(lever, panel):
    panel.steps.before.value = True
    tick(panel, "cleared", "nib-set")
    save(panel)
    entry = lever.log(ROUND)[0].entry
    panel._correct(entry)
    assert panel.steps.rows["nib-set"].tested.value
    panel.steps.rows["nib-set"].tested.value = False
    save(panel)
    assert lever.log(ROUND)[0].values.tested == ("cleared",)
    assert len(lever.log(ROUND)) == 1


def test_one_click_puts_a_result_where_such_results_are_kept(lever, panel):
    panel.proofs.buttons["squeeze", "bubbles stop"].click()
    assert [logged.values.press_seen for logged in lever.log(TEST)] == ["bubbles stop"]
    panel.proofs.hours["night"].value = "12"
    panel.proofs.buttons["night", "yes"].click()
    [check] = lever.log(LEAK_CHECK)
    assert (check.values.rested.value, check.values.dry, check.values.how) == (12, True, "nib up")
    panel.proofs.buttons["capped", "dry"].click()
    assert lever.log(TEST)[-1].values.capped_seen == "dry"
    panel.proofs.buttons["writes", "after strokes"].click()
    assert lever.log(WRITING)[0].values.wrote == "after strokes"
    assert panel.proof_status.text.startswith("saved ")


def test_a_short_rest_that_stayed_dry_tells_nothing_and_one_that_did_not_does(lever, panel):
    panel.proofs.hours["night"].value = "2 h"
    panel.proofs.buttons["night", "yes"].click()
    assert "at least 8 h" in panel.proof_status.text
    assert lever.log(LEAK_CHECK) == ()
    panel.proofs.buttons["night", "no"].click()
    assert lever.log(LEAK_CHECK)[0].values.dry is False


def test_a_clock_begins_with_one_click(lever, panel):
    panel.proofs.buttons["capped", "begin"].click()
    assert {proof.row.key: proof.state for proof in owed_now(lever)}["capped"] == "running"
    assert ("capped", "begin") not in panel.proofs.buttons


def test_the_result_says_where_it_stands_and_the_wall_page_is_beside_it(lever, panel):
    assert closing_sentence(lever) in panel.result_text.value.replace("&#x27;", "'")
    panel.more_button.value = True
    assert "how it goes together" in panel.more_drawings.value


def test_without_a_system_nothing_is_offered(job, sheet):
    job.add("intake", "arrival", {"pen": "a pen", "material": "acrylic"})
    panel = sheet.panel("closing")
    assert panel.steps.rows == {}
    assert panel.forms["order"].asked == ()


def test_what_was_filled_in_is_saved_once_with_its_own_step(lever, panel):
    sizes = {"bore": "8.3 mm", "nipple": "6.6 mm", "nipple_length": "6 mm", "depth": "50 mm"}
    lever.add("seal", "measure", {"place": "sac", "material": "silicone", **sizes})
    panel.steps.before.value = True
    tick(panel, "cleared", "nib-set", "dry-fit", "sac-cut")
    panel.steps.rows["bar-in"].left_out.value = True
    assert save(panel).startswith("saved ")
    tick(panel, "sac-on")
    assert save(panel).startswith("saved ")
    tick(panel, "sac-dusted")
    assert save(panel).startswith("saved ")
    first, second, third = (logged.values for logged in lever.log(ROUND))
    assert (first.sac_length is not None, first.sac_with) == (True, None)
    assert (second.sac_length, second.sac_with) == (None, "silicone")
    assert (third.sac_length, third.sac_with) == (None, None)
