"""What is owed as buttons: each goes to its own form, and the way on follows the record."""


def described(row):
    return [button.description for button in row.widget.children[1:]]


def test_a_button_for_each_thing_owed_with_its_mark(sheet, job):
    row = sheet.owed
    assert "of 12)" in row.label.value
    assert "· who" in described(row)
    job.add("intake", "owner", {"owner": "Adela Quist", "contact": "by letter"})
    sheet.changed(None)
    assert "✓ who" in described(row)
    job.add("intake", "request", {"asked": "only look", "work": "look"})
    sheet.changed(None)
    assert "· the yes" not in described(row)


def test_a_press_goes_to_the_form(sheet):
    sheet.owed.buttons["asked"].click()
    assert sheet.slots["intake"].is_open
    assert sheet.panel("intake").chooser.value == "request"
    sheet.owed.buttons["parts"].click()
    assert not sheet.slots["intake"].is_open
    assert sheet.panel("work log").chooser.value == "material"
    sheet.owed.buttons["done"].click()
    assert sheet.slots["work log"].is_open
    assert sheet.panel("work log").chooser.value == "work"


def test_the_way_on_leads_to_what_is_next(sheet, job):
    assert sheet.onward.button.description == "Next: say whose pen it is and how to reach them"
    sheet.onward.button.click()
    assert sheet.panel("intake").chooser.value == "owner"
    job.add("release", "result", {"ending": "returned", "summary": "It goes back."})
    sheet.changed(None)
    assert sheet.onward.widget.layout.display == "none"


def test_an_entry_that_stands_for_all_leads_on_to_the_next_form(sheet, type_into):
    panel = sheet.panel("intake")
    form = panel.forms["owner"]
    type_into(form, owner="Adela Quist", contact="by letter")
    form.button.click()
    assert panel.chooser.value == "request"  # what arrived is on record already
    assert panel.forms["request"].status.text.endswith(": whose pen it is")
    assert sheet.desk.look_at["selector"] == ".pt-slot-intake .pt-form"


def test_a_job_that_ended_with_nothing_owed_shows_no_row(tmp_path):
    from pentools.panels.bench import BenchSheet
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job

    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lead", sample="green-piston")
    assert BenchSheet(job).owed.widget.layout.display == "none"


def test_after_the_last_that_is_owed_at_a_stage_the_cursor_stands_on_the_way_on(sheet, job, type_into):
    job.add("intake", "owner", {"owner": "Adela Quist", "contact": "by letter"})
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "material": "celluloid"})
    form = sheet.panel("intake").forms["request"]
    type_into(form, asked="mend it")
    form.button.click()
    assert sheet.desk.look_at["selector"] == ".pt-onward"


def test_a_page_that_comes_up_begins_at_what_is_owed(sheet):
    sheet.desk.woken = 1.0
    assert sheet.desk.look_at["selector"] == ".pt-owed .pt-main"
    sheet.open_stage("seal")
    sheet.desk.look_at = {}
    sheet.desk.woken = 2.0
    assert sheet.desk.look_at["selector"] == ".pt-slot-seal .pt-form"
