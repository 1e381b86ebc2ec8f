"""The opening and cleaning panels both ways: every hold enforced, every one released with a reason that stays."""

import asyncio
import datetime as dt

import pytest
from by_name import kind_of

from pentools.panels.stages.treatment import cleaning as clean_panel
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS
from pentools.record.stages.treatment.work import order_of


def type_into(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text


def put(panel, kind, **texts):
    form = panel.forms[kind]
    type_into(form, **texts)
    form.button.click()
    return form.status.text


@pytest.fixture
def unnamed(job):
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "lever-sac", "material": "unknown"})
    return job


def release(panel, key, reason):
    row = panel.holds[key]
    row.reason.value = reason
    row.button.click()


# holds ---------------------------------------------------------------------------------------------------


def test_no_heat_before_anything_is_named(unnamed, sheet):
    panel = sheet.stage("open")
    assert "Hold point on heat" in panel.holds["heat"].text.value
    said = put(panel, "heat pass", joint="section", surface="50 °C")
    assert "NOT SAVED" in said
    assert "material is not named" in said
    assert panel.forms["heat pass"].boxes["surface"].text == "50 °C"
    assert unnamed.log(kind_of("open", "heat pass")) == ()


def test_heat_is_let_go_by_a_name(unnamed, sheet):
    panel = sheet.stage("open")
    assert put(panel, "material", part="barrel", material="celluloid", sure="yes").startswith("saved ")
    assert panel.holder.layout.display == "none"
    assert put(panel, "heat pass", joint="section", surface="50 °C").startswith("saved ")


def test_heat_is_released_with_a_reason_that_stays(unnamed, sheet):
    panel = sheet.stage("open")
    release(panel, "heat", "")
    assert "NOT SAVED" in panel.status.text
    release(panel, "heat", "it is my own trial barrel")
    assert panel.holder.layout.display == "none"
    assert put(panel, "heat pass", joint="section", surface="40 °C").startswith("saved ")
    assert unnamed.record.releases("heat")[0].data["reason"] == "it is my own trial barrel"


def test_no_heat_at_a_joint_whose_own_body_is_not_named(job, sheet):
    panel = sheet.stage("open")
    assert panel.holder.layout.display == "none"
    said = put(panel, "heat pass", joint="nib", surface="50 °C")
    assert "nib and feed in the section" in said
    assert "not named" in said
    assert panel.holder.layout.display == ""
    assert put(panel, "material", part="section", material="ebonite", sure="yes").startswith("saved ")
    assert panel.holder.layout.display == "none"
    assert panel.forms["heat pass"].button.click() is None
    assert len(job.log(kind_of("open", "heat pass"))) == 1


def test_what_is_never_warmed_is_refused_unless_overruled(job, sheet):
    panel = sheet.stage("open")
    put(panel, "material", part="barrel", material="crazed celluloid", sure="yes")
    said = put(panel, "heat pass", joint="section", surface="35 °C")
    assert "Refused" in said
    assert "never" in said
    put(
        panel,
        "overrule",
        material="degrading celluloid",
        treatment="dry heat",
        verdict="limited",
        reason="hand warm only",
    )
    assert panel.forms["heat pass"].button.click() is None
    assert panel.forms["heat pass"].status.text.startswith("saved ")


def test_the_owners_no_to_heat_holds(job, sheet):
    job.add("agree", "answer", {"action": "heat", "agreed": "no", "answered_on": "2026-03-15", "channel": "letter", "authority": "yes"})  # fmt: skip
    panel = sheet.stage("open")
    assert "the owner said no to heat" in put(panel, "heat pass", joint="section", surface="50 °C")


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("bath", {"part": "barrel", "bath": "cold water soak", "minutes": "5 min"}),
        ("soak started", {"part": "barrel", "bath": "cold water soak"}),
        ("rinse", {"part": "barrel", "with_what": "a drop of washing-up liquid"}),
    ],
)
def test_no_soak_before_anything_is_named_and_a_release_keeps_its_reason(unnamed, sheet, kind, texts):
    panel = sheet.stage("clean")
    assert "Hold point on soaking" in panel.holds["soak"].text.value
    said = put(panel, kind, **texts)
    assert "NOT SAVED" in said
    assert "material" in said
    assert unnamed.log(kind_of("clean", kind)) == ()
    release(panel, "soak", "it is glass, as anyone can see")
    panel.forms[kind].button.click()
    assert panel.forms[kind].status.text.startswith("saved ")
    assert unnamed.record.releases("soak")[0].data["reason"].startswith("it is glass")


def test_no_soak_for_a_part_that_is_not_named(job, sheet):
    panel = sheet.stage("clean")
    assert panel.holder.layout.display == "none"
    assert "material of the feed is not named" in put(panel, "bath", part="feed", bath="ultrasonic", minutes="2 min")
    assert panel.holder.layout.display == ""
    opening = sheet.stage("open")
    put(opening, "material", part="feed", material="ebonite", sure="yes")
    panel.forms["bath"].button.click()
    assert panel.forms["bath"].status.text.startswith("saved ")


def test_a_bath_the_material_never_takes_is_refused_unless_overruled(job, sheet):
    panel = sheet.stage("clean")
    type_into(panel.forms["bath"], part="barrel", bath="ultrasonic")
    assert "celluloid, ultrasonic: never" in panel.verdicts["bath"].value
    assert "Refused. celluloid, ultrasonic: never, because" in put(panel, "bath", minutes="2 min")
    opening = sheet.stage("open")
    put(opening, "overrule", material="celluloid", treatment="ultrasonic", verdict="limited", reason="new stock, tried on an offcut")  # fmt: skip
    panel.forms["bath"].button.click()
    assert panel.forms["bath"].status.text.startswith("saved ")


# order of work --------------------------------------------------------------------------------------------


def test_a_step_waits_for_what_must_be_so_first(job, sheet):
    panel = sheet.stage("open")
    assert "○ may be done" in panel.result_table.value
    assert "■ waits" in panel.result_table.value
    said = put(panel, "step", number="6", did="Drew the section out.")
    assert "Step 6 waits until this is so" in said
    assert job.log(kind_of("open", "step")) == ()
    assert put(panel, "step", number="1", did="Pictures and measures.").startswith("saved ")
    assert "✓ done" in panel.result_table.value
    for hold in order_of(job).steps[5].held_by:
        assert put(panel, "met", condition=hold.key, how="found so on arrival").startswith("saved ")
    assert put(panel, "step", number="6", did="Drew the section out.", came_off="section; nib; feed").startswith(
        "saved "
    )
    assert "1 to " in put(panel, "step", number="39", did="Something else.")
    assert put(panel, "step", number="", did="Something of my own.").startswith("saved ")


# what is shown --------------------------------------------------------------------------------------------


def test_the_window_and_the_figure_follow_the_record(job, sheet):
    panel = sheet.stage("open")
    assert "<svg" not in panel.result_drawings.value
    put(panel, "joint", joint="section", sealant="shellac")
    assert "no margin; warm to at most 60 °C, 15 °C short of fully soft" in panel.result_text.value
    put(panel, "heat pass", joint="section", surface="48 °C")
    assert "1 heating, the hottest 12 °C under the limit" in panel.result_drawings.value
    assert "read in the source" in panel.result_table.value
    panel.more_button.value = True
    assert "camphor" in panel.more_drawings.value


def test_a_yes_of_one_heating_is_not_that_of_the_next(job, sheet):
    panel = sheet.stage("open")
    put(panel, "heat pass", joint="section", surface="48 °C", free="yes")
    assert panel.forms["heat pass"].boxes["free"].text == ""
    clean = sheet.stage("clean")
    put(clean, "rinse", part="barrel", with_what="soap", wets="yes")
    assert clean.forms["rinse"].boxes["wets"].text == ""


def test_a_caution_is_read_once_and_then_folded(job, sheet):
    panel, clean = sheet.stage("open"), sheet.stage("clean")
    assert {"nitrate-fire", "closed-pen"} <= set(panel.cautions.buttons)
    assert "nitrate-fire" in clean.cautions.buttons
    button = panel.cautions.buttons["nitrate-fire"]
    assert button.description == "I have read this: nitrate fire"
    button.click()
    assert "caution read" in panel.status.text
    assert "nitrate-fire" not in panel.cautions.buttons
    assert "nitrate-fire" not in clean.cautions.buttons
    assert "burns very fast" in panel.cautions.read.value
    assert "Follow local codes; ask a licensed professional." in panel.cautions.read.value
    button.click()
    assert len(job.log(kind_of("open", "caution read"))) == 1


def test_the_soak_clock_runs_and_stops(job, sheet, monkeypatch):
    panel = sheet.stage("clean")
    assert panel.look.layout.display == "none"
    assert put(panel, "soak started", part="barrel", bath="cold water soak").startswith("saved ")
    assert panel.look.layout.display == ""
    assert "15 min left of 15" in panel.result_text.value
    later = clean_panel.now() + dt.timedelta(minutes=20)
    monkeypatch.setattr(clean_panel, "now", lambda: later)
    panel.look.click()
    assert "5 min over its limit of 15 min. Take it out" in panel.result_text.value
    assert "out of its bath before the next one" in put(panel, "soak started", part="barrel", bath="cold water soak")
    assert put(panel, "soak ended", part="barrel", came_out="brown").startswith("saved ")
    assert "in a bath now" in put(panel, "soak ended", part="barrel")


def test_the_clock_looks_by_itself_while_a_soak_runs(job, sheet, monkeypatch):
    monkeypatch.setattr(clean_panel, "TICK_S", 0.01)

    async def at_the_bench():
        panel = sheet.stage("clean")
        assert not panel.ticker.running
        put(panel, "soak started", part="barrel", bath="cold water soak")
        assert panel.ticker.running
        later = clean_panel.now() + dt.timedelta(minutes=13)
        monkeypatch.setattr(clean_panel, "now", lambda: later)
        for _ in range(100):
            await asyncio.sleep(0.01)
            if "2.0 min left of 15" in panel.result_text.value:
                break
        assert "2.0 min left of 15" in panel.result_text.value
        put(panel, "soak ended", part="barrel")
        assert not panel.ticker.running

    asyncio.run(at_the_bench())


def test_the_mix_answers_while_it_is_typed_and_refuses_what_it_must_not_meet(job, sheet):
    panel = sheet.stage("clean")
    assert "Never with bleach" in panel.mix_shown.value
    type_into(panel.forms["flush mix"], ammonia="7 %")
    assert "0.68\u202f% of ammonia by weight" in panel.mix_shown.value
    assert job.log(kind_of("clean", "flush mix")) == ()
    for thing in ("bleach", "casein"):
        assert "Refused" in put(panel, "flush mix", beside=thing)
    assert put(panel, "flush mix", beside="").startswith("saved ")
    assert "ammonia-bleach" in panel.cautions.buttons


def test_drying_leads_until_it_is_over(job, sheet):
    panel = sheet.stage("clean")
    put(panel, "drying", part="feed", hours="24 h", begun_ago="1 h")
    assert "The feed dries until" in panel.result_text.value
    assert "still wet" in panel.result_table.value


def test_past_the_limit_is_saved_and_says_stop_beside_the_button(job, sheet):
    panel = sheet.stage("open")
    put(panel, "heat pass", joint="section", surface="58 °C")
    assert "stop" not in panel.forms["heat pass"].status.text
    put(panel, "heat pass", joint="section", surface="95 °C")
    said = panel.forms["heat pass"].status
    assert said.text.startswith("saved ")
    assert "and stop: Section and barrel: Heating 2 went above the limit of 60 °C" in said.text
    assert "alert" in said.widget.value
    assert len(job.log(HEAT_PASS)) == 2
    clean = sheet.stage("clean")
    put(clean, "bath", part="barrel", bath="cold water soak", minutes="10 min")
    assert "look again" not in clean.forms["bath"].status.text
    put(clean, "bath", part="barrel", bath="cold water soak", minutes="45 min")
    assert "but look again: barrel in cool water: 45 min, 30 more than the limit of 15 min" in clean.forms["bath"].status.text  # fmt: skip
