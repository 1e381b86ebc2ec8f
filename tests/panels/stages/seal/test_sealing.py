"""The seal's panel both ways: measured, proposed, tried, sealant held and released, tests judged, tools found."""

import pytest
from by_name import kind_of

from pentools.figures.pen.measure_here import measure_here
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job


@pytest.fixture
def panel(sheet, job):
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    path = job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("rings = []", 'rings = ["1.58x5.1", "1.70x5.2", "1.83x5.3"]'))
    reopened = open_job(job.name, bench=open_bench_folder(job.bench.folder))
    return BenchSheet(reopened).panel("seal")


def type_into(panel, kind, **texts):
    panel.show_form(kind)
    for name, text in texts.items():
        panel.forms[kind].boxes[name].text = text


def save(panel, kind, **texts):
    type_into(panel, kind, **texts)
    panel.forms[kind].button.click()
    return panel.forms[kind].status.text


def measure_washer(panel):
    return save(panel, "measure", place="washer", bore="8.30 mm; 8.30 mm; 8.30 mm", rod="2.40 mm")


def measure_head(panel):
    return save(
        panel, "measure", place="head", bore="8.30 mm; 8.32 mm; 8.29 mm", bore_deep="8.31 mm; 8.33 mm; 8.30 mm",
        groove="5.30 mm", width="2.40 mm", head="8.10 mm",
    )  # fmt: skip


def try_washer(panel, happened, outside="8.50 mm", **more):
    return save(panel, "trial", place="washer", outside=outside, dry="yes", happened=happened, **more)


def shown(panel, kind):
    return set(panel.forms[kind].asked)


def test_a_caution_stands_above_the_forms(panel):
    assert "licensed professional" in panel.above.children[0].value


def test_only_what_belongs_to_the_seal_is_asked(panel):
    assert shown(panel, "measure") == {"place"}
    type_into(panel, "measure", place="washer")
    assert {"bore", "bore_deep", "rod", "cleaned"} <= shown(panel, "measure")
    assert not {"groove", "housing", "nipple"} & shown(panel, "measure")
    type_into(panel, "test", test="vacuum")
    assert {"volume", "vacuum_start"} <= shown(panel, "test")
    assert "pushed" not in shown(panel, "test")


def test_the_drawing_follows_the_reading_that_is_next(panel):
    type_into(panel, "measure", place="head")
    assert measure_here("syringe", "bore").title in panel.result_drawings.value
    type_into(panel, "measure", bore="8.30 mm; 8.31 mm; 8.30 mm", bore_deep="8.30 mm")
    assert measure_here("syringe", "groove").title in panel.result_drawings.value
    type_into(panel, "measure", groove="5.30 mm")
    assert measure_here("syringe", "width").title in panel.result_drawings.value


def test_an_empty_measurement_is_not_saved(panel):
    assert save(panel, "measure", place="washer").startswith("NOT SAVED")
    assert panel.job.log(kind_of("seal", "measure")) == ()


def test_rings_are_ranked_and_the_best_is_drawn(panel):
    assert measure_head(panel).startswith("saved ")
    panel.show_form("trial")
    panel.show_form("measure")
    for name in ("bore", "bore_deep", "groove", "width", "head"):
        assert panel.forms["measure"].boxes[name].text == ""
    assert "first to try: squeeze" in panel.result_text.value
    assert 'data-part="ring"' in panel.result_drawings.value
    assert panel.result_table.value.count("<tr>") == 9
    assert "own 5.3x1.83" in panel.result_table.value


def test_a_size_is_offered_and_a_second_press_logs_nothing(panel):
    measure_washer(panel)
    type_into(panel, "trial", place="washer")
    box = panel.forms["trial"].boxes["what"]
    assert box.text == "flat of 8.50 mm"
    assert try_washer(panel, "slides, no suction").startswith("saved ")
    assert box.text == "flat of 8.60 mm"
    assert panel.forms["trial"].boxes["outside"].text == ""
    assert panel.forms["trial"].boxes["happened"].text == ""
    assert "Try flat of 8.60 mm next, dry." in panel.result_text.value
    panel.forms["trial"].button.click()
    assert len(panel.job.log(kind_of("seal", "trial"))) == 1


def test_own_rings_are_offered_with_their_measured_sizes(panel):
    measure_head(panel)
    type_into(panel, "trial", place="head")
    boxes = panel.forms["trial"].boxes
    assert boxes["what"].text == "own 5.3x1.83 (5.30 × 1.83 mm)"
    assert (boxes["section"].text, boxes["inside"].text) == ("1.83 mm", "5.3 mm")
    type_into(panel, "trial", place="washer")
    assert boxes["section"].text == ""


def test_what_was_typed_is_not_overwritten_by_an_offer(panel):
    measure_washer(panel)
    type_into(panel, "trial", what="my own cut", place="washer")
    assert panel.forms["trial"].boxes["what"].text == "my own cut"


def test_a_trial_without_a_measured_size_is_refused(panel):
    said = save(panel, "trial", place="washer", what="some washer", dry="yes", happened="no touch")
    assert said.startswith("NOT SAVED")
    assert "printed on the bag" in said


def test_sealant_is_refused_before_a_dry_fit_and_taken_after_it(panel):
    assert "dry fit" in panel.hold_text.value
    said = save(panel, "sealant", sealant="shellac", place="washer", cure="24 h")
    assert said.startswith("NOT SAVED")
    assert "held" in said
    assert panel.job.log(kind_of("seal", "sealant")) == ()
    try_washer(panel, "slides, no suction", what="one")
    assert save(panel, "sealant", sealant="shellac", place="washer").startswith("NOT SAVED")
    try_washer(panel, "pulls back", "8.60 mm", what="two")
    assert panel.holder.layout.display == "none"
    assert save(panel, "sealant", sealant="shellac", place="washer", reversible="yes", cure="24 h").startswith("saved ")
    assert "Earliest next step" in panel.result_text.value


def test_the_hold_is_released_with_a_reason_that_stays(panel):
    row = panel.holds["sealant"]
    row.button.click()
    assert panel.job.record.releases("sealant") == []
    row.reason.value = "the owner wants the old joint shut for the post"
    row.button.click()
    assert save(panel, "sealant", sealant="rosin", place="section").startswith("saved ")
    assert panel.job.record.releases("sealant")[0].data["reason"] == "the owner wants the old joint shut for the post"


def test_the_ladder_is_drawn_with_what_failed(panel):
    measure_washer(panel)
    try_washer(panel, "too stiff", "8.70 mm")
    try_washer(panel, "slides, no suction", "8.40 mm")
    assert 'data-outcome="too stiff"' in panel.result_drawings.value
    assert 'data-outcome="next"' in panel.result_drawings.value


def test_a_test_needs_its_result_and_nothing_of_another(panel):
    assert save(panel, "test", test="shaft").startswith("NOT SAVED")
    assert save(panel, "test", test="spring-back", pushed="30 mm").startswith("NOT SAVED")
    said = save(panel, "test", returned="28 mm", shaft_seen="bubbles")
    assert said.startswith("NOT SAVED")
    assert "by itself" in said
    assert save(panel, "test", shaft_seen="").startswith("saved ")


def test_the_pattern_names_a_seal_only_from_two_tests(panel):
    save(panel, "test", test="shaft", shaft_seen="bubbles")
    assert "One test does not name a seal" in panel.result_text.value
    save(panel, "test", test="overnight", rested="12 h", overnight_seen="at the rod's end")
    save(panel, "test", test="spring-back", pushed="30 mm", returned="1 mm")
    assert "points to the packing" in panel.result_text.value
    assert "Which seal to suspect" in panel.result_table.value


def test_a_tool_of_another_job_is_found_while_its_size_is_typed(panel):
    other = create_job(panel.job.bench, "earlier-pen")
    other.add("seal", "tool", {"tool": "tube", "purpose": "long tail", "inside_made": "2.00 mm", "outside_made": "4.80 mm", "length_made": "60 mm"})  # fmt: skip
    panel.show_form("tool")
    assert "1 tool lies" in panel.result_text.value
    type_into(panel, "tool", tail="1.80 mm", shoulder="4.20 mm", bore="5.00 mm", depth="18 mm")
    assert "made for earlier-pen" in panel.result_text.value
    type_into(panel, "tool", bore="4.80 mm")
    assert "made for earlier-pen" not in panel.result_text.value
    assert "does not fit" in panel.result_table.value


def test_contradicting_measurements_are_said_in_the_result(panel):
    save(panel, "measure", place="head", bore="5.00 mm", groove="5.30 mm")
    assert "groove diameter" in panel.result_text.value


def test_further_figures_only_on_demand(panel):
    measure_head(panel)
    measure_washer(panel)
    try_washer(panel, "no touch")
    assert panel.more_drawings.value == ""
    panel.more_button.value = True
    assert panel.more_drawings.value.count('data-part="ring"') == 4
    assert 'data-outcome="no touch"' in panel.more_drawings.value


def test_only_the_seals_of_the_pens_own_system_are_offered(job, sheet, put):
    panel = sheet.panel("seal")
    offered = [key for _, key in panel.forms["measure"].boxes["place"].input.options if key]
    assert offered == ["head", "washer", "cork", "section", "inner-cap"]
    job.add("intake", "arrival", {"pen": "a pen", "system": "diaphragm-pump"})
    panel.refresh()
    for form in ("measure", "trial", "sealant"):
        offered = [key for _, key in panel.forms[form].boxes["place"].input.options if key]
        assert offered == ["diaphragm", "breather", "valve", "section", "inner-cap"]
    panel.forms["measure"].boxes["place"].text = "diaphragm"
    assert {"groove", "rubber", "fold", "was"} <= set(panel.forms["measure"].asked)
    assert "bore" not in panel.forms["measure"].asked
    assert put(panel, "measure", place="diaphragm", groove="8.2 mm", was="moulded, hard").startswith("saved ")
    assert "no table of sizes is known" in panel.result_text.value
    assert put(panel, "trial", place="diaphragm", what="moulded", dry="yes", happened="pulls back").startswith("saved ")
    assert put(panel, "sealant", sealant="silicone", place="diaphragm", lot="tube 3").startswith("saved ")


def test_what_was_typed_at_the_fill_test_or_at_closing_is_filled_in(job, sheet):
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "bulb"})
    job.add("closing", "order", {"done": "tube-cut", "tube_reach": "54 mm"})
    job.add("fill test", "dimensions", {"tube": "2 mm"})
    panel = sheet.panel("seal")
    boxes = panel.forms["measure"].boxes
    assert boxes["reach"].text == ""
    boxes["place"].text = "breather"
    assert (boxes["reach"].text, boxes["tube"].text) == ("54 mm", "2 mm")
    boxes["place"].text = "bulb"
    assert boxes["reach"].text == ""
    job.add("seal", "measure", {"place": "breather", "tube": "2 mm", "tube_hole": "1.95 mm", "reach": "53 mm"})
    boxes["place"].text = "breather"
    assert boxes["reach"].text == ""  # measured again, it is read again


@pytest.mark.parametrize(("material", "with_what"), [("silicone", "silicone"), ("latex", "shellac")])
def test_the_adhesive_is_filled_in_by_the_sacs_material(job, sheet, material, with_what):
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "lever-sac"})
    panel = sheet.panel("seal")
    boxes = panel.forms["sealant"].boxes
    boxes["place"].text = "sac"
    assert boxes["sealant"].text == ""
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "material": material})
    boxes["place"].text = "section"
    assert boxes["sealant"].text == ""
    boxes["place"].text = "sac"
    assert boxes["sealant"].text == with_what


def test_a_place_that_an_entry_names_stays_though_the_system_has_none(job, sheet):
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm"})
    offered = [key for _, key in sheet.panel("seal").forms["measure"].boxes["place"].input.options]
    assert "sac" in offered
