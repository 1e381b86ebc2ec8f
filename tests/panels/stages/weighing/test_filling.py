"""The fill test's panel: its sentence and its figure follow the record."""


def test_the_sentence_and_the_figure_follow_the_record(sheet, type_into):
    panel = sheet.stage("fill test")
    form = panel.forms["weighing"]
    assert "Weigh it empty first" in panel.result_text.value
    type_into(form, mass="23.26 g", state="dry")
    form.button.click()
    assert "Now fill it" in panel.result_text.value
    before = panel.result_drawings.value
    type_into(form, mass="25.06 g", state="filled")
    form.button.click()
    assert "It draws 1.79\u202fmL" in panel.result_text.value
    assert "<svg" in panel.result_drawings.value
    assert panel.result_drawings.value != before


def test_the_dimensions_form_shows_where_to_measure(sheet):
    panel = sheet.stage("fill test")
    panel.chooser.value = "dimensions"
    assert panel.result_drawings.value.count("<svg") == 3
    assert "bore" in panel.result_drawings.value
