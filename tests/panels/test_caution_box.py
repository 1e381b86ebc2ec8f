"""A caution is acknowledged once in a job, and stays readable."""

from by_name import kind_of


def test_a_caution_is_read_once_and_then_folded(job, sheet):
    panel, clean = sheet.panel("open"), sheet.panel("clean")
    assert panel.cautions.line.value.count("<summary>") == 1
    assert "<summary>Caution: " in panel.cautions.line.value
    for word in ("nitrate fire", "closed pen"):
        assert word in panel.cautions.line.value.split("</summary>")[0]
    assert "nitrate fire" in clean.cautions.line.value.split("</summary>")[0]
    assert "burns very fast" in panel.cautions.line.value
    assert "Follow local codes; ask a licensed professional." in panel.cautions.line.value
    panel.cautions.button.click()
    assert "it is in the record" in panel.cautions.status.text
    assert "Cautions, read in this job" in panel.cautions.line.value
    assert panel.cautions.button.layout.display == "none"
    clean.refresh()
    assert "nitrate fire" not in clean.cautions.line.value.split("</summary>")[0]
    count = len(job.log(kind_of("open", "caution read")))
    panel.cautions.button.click()
    assert len(job.log(kind_of("open", "caution read"))) == count > 1
