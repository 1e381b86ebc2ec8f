"""The condition panel says what keeps the pen from working, and only then."""


def test_the_gravest_faults_are_named_and_slight_ones_are_counted(sheet, put):
    panel = sheet.panel("condition")
    assert "No part has been looked at yet." in panel.result_text.value
    assert put(panel, "part", part="cap", seen="nothing", severity="0").startswith("saved ")
    put(panel, "part", part="barrel", seen="a scratch", severity="2")
    assert "2 parts looked at, 1 of them sound; nothing that stops the pen." in panel.result_text.value
    assert "<svg" in panel.result_drawings.value
    put(panel, "part", part="blind-cap", seen="it does not turn", severity="3")
    assert "What keeps it from working: blind cap or end knob." in panel.result_text.value
