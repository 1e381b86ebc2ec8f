"""The panel of the parts mended: the fault of the survey offered, the ways of its part, what is held, and what is refused."""

import pytest
from by_name import kind_of

from pentools import tables
from pentools.calc.repairs.fitness import RepairRow
from pentools.panels.strip import ACTIVITY_OF

REPAIR = kind_of("repairs", "repair")
WELD = {"part": "cap", "method": "cap-lip-weld"}


@pytest.fixture
def surveyed(job):
    job.add("condition", "part", {"part": "cap", "seen": "A hairline at the lip.", "severity": "2"})
    return job


def answer(job, action, agreed="yes"):
    job.add("agree", "answer", {"action": action, "agreed": agreed, "answered_on": "2026-03-10", "channel": "letter"})


def ways(panel, kind="repair"):
    return [key for _, key in panel.forms[kind].boxes["method"].input.options if key]


def test_the_fault_of_the_survey_is_offered_with_its_ways(surveyed, sheet):
    panel = sheet.panel("repairs")
    form = panel.forms["repair"]
    assert form.boxes["part"].text == "cap"
    assert "cap-lip-weld" in ways(panel)
    assert "clip-spring" not in ways(panel)
    assert "A hairline at the lip." in panel.result_table.value
    form.boxes["part"].text = "clip"
    assert "clip-spring" in ways(panel)
    assert "clip-ball" not in ways(panel), "what is done elsewhere has a form of its own"


def test_a_fault_found_while_the_panel_is_open_reaches_it(job, sheet, put):
    panel = sheet.panel("repairs")
    assert panel.forms["repair"].boxes["part"].text == ""
    condition = sheet.panel("condition")
    put(condition, "part", part="clip", seen="It rocks.", severity="2")
    assert "Parts mended offers ways for: clip" in condition.result_table.value
    sheet.open_stage("repairs")
    assert panel.forms["repair"].boxes["part"].text == "clip"


def test_a_weld_is_held_until_yes_and_trial_are_there(surveyed, sheet, put):
    panel = sheet.panel("repairs")
    assert "not tried on a hidden place" in put(panel, "repair", **WELD)
    answer(surveyed, "mend")
    assert put(panel, "test spot", **WELD, passed="yes").startswith("saved ")
    assert put(panel, "repair", **WELD).startswith("saved ")
    assert panel.forms["repair"].boxes["method"].text == ""
    assert "stands until" in panel.result_text.value
    assert len(surveyed.log(REPAIR)) == 1


def test_a_weld_on_hard_rubber_is_refused_and_no_reason_lets_it_go(surveyed, sheet, put, release):
    surveyed.add("open", "material", {"part": "cap", "material": "ebonite", "sure": "yes"})
    answer(surveyed, "mend")
    panel = sheet.panel("repairs")
    assert "the cap is hard rubber (no solvent welds hard rubber)" in put(panel, "repair", **WELD)
    release(panel, "repair", "I have always done it so")
    panel.forms["repair"].button.click()
    assert "Refused" in panel.forms["repair"].status.text
    assert surveyed.log(REPAIR) == ()


def test_a_released_hold_lets_one_way_go_and_not_the_next(surveyed, sheet, put, release):
    panel = sheet.panel("repairs")
    other = {"part": "inner-cap", "method": "inner-cap-ring"}
    assert "This step is held" in put(panel, "repair", **WELD)
    release(panel, "repair", "the owner stood beside me")
    assert put(panel, "repair", **WELD).startswith("saved ")
    assert "This step is held" in put(panel, "repair", **other)
    assert "Hold point on mending a part" in panel.holds["repair"].text.value
    release(panel, "repair", "he asked for this one too")
    assert put(panel, "repair", **other).startswith("saved ")
    said = [entry.data.get("about") for entry in surveyed.record.releases("repair")]
    assert said == ["cap-lip-weld", "inner-cap-ring"]


def test_what_holds_it_and_its_cautions_stand_there_as_it_is_chosen(surveyed, sheet):
    panel = sheet.panel("repairs")
    assert panel.cautions.widget.layout.display == "none"
    panel.forms["repair"].boxes["method"].text = "cap-lip-weld"
    assert "It waits: the owner’s yes to it is not recorded" in panel.result_text.value
    assert "never as strong as new" in panel.result_text.value
    assert "nitrate fire" in panel.cautions.line.value
    assert "lathe" not in panel.cautions.line.value


def test_sending_out_waits_for_a_yes_and_only_what_is_away_comes_back(job, sheet, put):
    panel = sheet.panel("repairs")
    back = {"part": "nib", "back_on": "2026-05-01", "done": "New tipping."}
    out = {"part": "nib", "work": "tipping", "sent_on": "2026-03-14"}
    assert "no part is away" in put(panel, "back again", **back)
    assert "yes to sending it out" in put(panel, "sent out", **out)
    answer(job, "send out")
    assert put(panel, "sent out", **out).startswith("saved ")
    assert "At another workshop: nib." in panel.result_text.value
    job.add("agree", "estimate", {"ceiling": "50 EUR"})
    assert "past the agreed ceiling" in put(panel, "back again", **back, cost="60 EUR")
    assert put(panel, "back again", **back, cost="40 EUR").startswith("saved ")


def test_a_correction_brings_the_way_back_into_its_box(surveyed, sheet, put):
    panel = sheet.panel("repairs")
    put(panel, "repair", part="cap", method="cap-lip-leave", where="at the lip")
    entry = surveyed.record.live("repairs", "repair")[0]
    panel.forms["repair"].boxes["part"].text = "clip"
    panel.forms["repair"].correct(entry)
    assert panel.forms["repair"].boxes["method"].text == "cap-lip-leave"
    panel.forms["repair"].boxes["where"].text = "under the clip"
    panel.forms["repair"].button.click()
    assert [v.values.where for v in surveyed.log(REPAIR)] == ["under the clip"]


def test_the_hold_on_sending_out_stands_on_its_own_form_alone(job, sheet):
    panel = sheet.panel("repairs")
    assert panel.holder.layout.display == "none"
    panel.show_form("sent out")
    assert "Hold point on sending a part out" in panel.holds["send out"].text.value
    assert panel.holder.layout.display == ""
    panel.show_form("repair")
    assert panel.holder.layout.display == "none"


def test_minutes_of_the_open_stage_count_as_mending_and_the_trial_is_offered_at_once(job, sheet):
    assert ACTIVITY_OF["repairs"] == "mend"
    panel = sheet.panel("repairs")
    assert [key for _, key in panel.chooser.options] == ["repair", "test spot", "sent out", "back again"]


def test_how_long_a_way_stands_is_said_as_one_time_or_as_a_span(surveyed, sheet):
    panel = sheet.panel("repairs")
    rows = {row.key: row for row in tables.read(RepairRow, "part_repairs")}
    said = set()
    for part in dict.fromkeys(row.part for row in rows.values()):
        panel.forms["repair"].boxes["part"].text = part
        table = panel.result_table.value
        for row in rows.values():
            if row.part != part or row.sent or row.wait_h is None:
                continue
            low, high = row.wait_h, row.wait_to_h or row.wait_h
            scale, unit = (24, "days") if high >= 72 else (1, "h")
            span = f"{high / scale:g} {unit}" if low == high else f"{low / scale:g} to {high / scale:g} {unit}"
            assert f">{span}<" in table, row.key
            said.add((low == high, unit))
    assert {same for same, _ in said} == {True, False}
