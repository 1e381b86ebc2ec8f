"""A caution is acknowledged once in a job, and stays readable."""

from by_name import kind_of


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
