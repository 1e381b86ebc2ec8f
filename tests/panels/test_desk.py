"""What the browser's part is told: where the cursor goes, and which drafts may go."""

from pentools.panels.desk import Desk, draft_class


def test_the_same_place_twice_is_told_twice():
    desk, heard = Desk("a-job"), []
    desk.observe(lambda change: heard.append(change["new"]["selector"]), "look_at")
    desk.focus(".a")
    desk.focus(".a")
    assert heard == [".a", ".a"]
    assert desk.job == "a-job"


def test_the_drafts_of_a_saved_form_are_named_as_its_boxes_are():
    desk = Desk("a-job")
    desk.forget("fill test", "leak check")
    [start] = desk.saved["forms"]
    assert draft_class("fill test", "leak check", "rested").removeprefix("pt-draft--").startswith(start)
    assert not draft_class("fill test", "leak reading", "mass").removeprefix("pt-draft--").startswith(start)


def test_every_box_of_a_form_has_a_draft_of_its_own(sheet):
    form = sheet.panel("fill test").forms["weighing"]
    names = [next(c for c in box.widget._dom_classes if c.startswith("pt-draft--")) for box in form.boxes.values()]
    assert len(set(names)) == len(names)


def test_a_saved_form_lets_its_drafts_go(sheet, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    form.button.click()
    assert sheet.desk.saved["forms"] == ["fill-test--weighing--"]


def test_a_refused_form_keeps_its_drafts_and_goes_to_the_box(sheet, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="heavy")
    form.button.click()
    assert sheet.desk.saved == {}
    assert sheet.desk.look_at["selector"] == ".pt-draft--fill-test--weighing--mass"
    assert "Look again at: Mass." in form.status.text


def test_the_question_whether_all_that_was_typed_has_arrived_is_answered(monkeypatch):
    desk = Desk("pen")
    sent = []
    monkeypatch.setattr(desk, "send", lambda content, *_: sent.append(content))
    desk._handle_custom_msg({"settle": 7}, [])
    desk._handle_custom_msg({"other": 1}, [])
    assert sent == [{"settled": 7}]
