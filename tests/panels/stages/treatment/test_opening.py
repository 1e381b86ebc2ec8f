"""The opening panel: no heat unnamed, the order of work, the window, and a stop past the limit."""

from by_name import kind_of

from pentools.record.stages.treatment.opening_kinds import HEAT_PASS
from pentools.record.stages.treatment.work import order_of


def test_no_heat_before_anything_is_named(unnamed, sheet, put):
    panel = sheet.panel("open")
    assert "Hold point on heat" in panel.holds["heat"].text.value
    said = put(panel, "heat pass", joint="section", surface="50 °C")
    assert "NOT SAVED" in said
    assert "material is not named" in said
    assert panel.forms["heat pass"].boxes["surface"].text == "50 °C"
    assert unnamed.log(kind_of("open", "heat pass")) == ()


def test_heat_is_let_go_by_a_name(unnamed, sheet, put):
    panel = sheet.panel("open")
    assert put(panel, "material", part="barrel", material="celluloid", sure="yes").startswith("saved ")
    assert panel.holder.layout.display == "none"
    assert put(panel, "heat pass", joint="section", surface="50 °C").startswith("saved ")


def test_heat_is_released_with_a_reason_that_stays(unnamed, sheet, put, release):
    panel = sheet.panel("open")
    release(panel, "heat", "")
    assert "NOT SAVED" in panel.holds["heat"].status.text
    release(panel, "heat", "it is my own trial barrel")
    assert panel.holder.layout.display == "none"
    assert put(panel, "heat pass", joint="section", surface="40 °C").startswith("saved ")
    assert unnamed.record.releases("heat")[0].data["reason"] == "it is my own trial barrel"


def test_no_heat_at_a_joint_whose_own_body_is_not_named(job, sheet, put):
    panel = sheet.panel("open")
    assert panel.holder.layout.display == "none"
    said = put(panel, "heat pass", joint="nib", surface="50 °C")
    assert "nib and feed in the section" in said
    assert "not named" in said
    assert panel.holder.layout.display == ""
    assert put(panel, "material", part="section", material="ebonite", sure="yes").startswith("saved ")
    assert panel.holder.layout.display == "none"
    assert panel.forms["heat pass"].button.click() is None
    assert len(job.log(kind_of("open", "heat pass"))) == 1


def test_what_is_never_warmed_is_refused_unless_overruled(job, sheet, put):
    panel = sheet.panel("open")
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


def test_the_owners_no_to_heat_holds(job, sheet, put):
    job.add("agree", "answer", {"action": "heat", "agreed": "no", "answered_on": "2026-03-15", "channel": "letter", "authority": "yes"})  # fmt: skip
    panel = sheet.panel("open")
    assert "the owner said no to heat" in put(panel, "heat pass", joint="section", surface="50 °C")


def test_a_step_waits_for_what_must_be_so_first(job, sheet, put):
    panel = sheet.panel("open")
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


def test_the_window_and_the_figure_follow_the_record(job, sheet, put):
    panel = sheet.panel("open")
    assert "<svg" not in panel.result_drawings.value
    put(panel, "joint", joint="section", sealant="shellac")
    assert "no margin; warm to at most 60 °C, 15 °C short of fully soft" in panel.result_text.value
    put(panel, "heat pass", joint="section", surface="48 °C")
    assert "1 heating, the hottest 12 °C under the limit" in panel.result_drawings.value
    assert "read in the source" in panel.result_table.value
    panel.more_button.value = True
    assert "camphor" in panel.more_drawings.value


def test_a_yes_of_one_heating_is_not_that_of_the_next(job, sheet, put):
    panel = sheet.panel("open")
    put(panel, "heat pass", joint="section", surface="48 °C", free="yes")
    assert panel.forms["heat pass"].boxes["free"].text == ""
    clean = sheet.panel("clean")
    put(clean, "rinse", part="barrel", with_what="soap", wets="yes")
    assert clean.forms["rinse"].boxes["wets"].text == ""


def test_past_the_limit_is_saved_and_says_stop_beside_the_button(job, sheet, put):
    panel = sheet.panel("open")
    put(panel, "heat pass", joint="section", surface="58 °C")
    assert "stop" not in panel.forms["heat pass"].status.text
    asked = put(panel, "heat pass", joint="section", surface="95 °C")
    assert asked.startswith("95 °C is past the limit of 60 °C for celluloid: was it so warm?")
    panel.forms["heat pass"].button.click()
    said = panel.forms["heat pass"].status
    assert said.text.startswith("saved ")
    assert "and stop: Section and barrel: Heating 2 went above the limit of 60 °C" in said.text
    assert "alert" in said.widget.value
    assert len(job.log(HEAT_PASS)) == 2
    clean = sheet.panel("clean")
    put(clean, "bath", part="barrel", bath="cold water soak", minutes="10 min")
    assert "look again" not in clean.forms["bath"].status.text
    assert "Was it so long?" in put(clean, "bath", part="barrel", bath="cold water soak", minutes="45 min")
    clean.forms["bath"].button.click()
    assert "but look again: barrel in cool water: 45 min, 30 more than the limit of 15 min" in clean.forms["bath"].status.text  # fmt: skip
