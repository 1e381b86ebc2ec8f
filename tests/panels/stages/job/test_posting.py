"""The posting panel: after the end, with the value of the intake in its box."""

from by_name import kind_of

SENT = {"carried": "parcel", "sent_on": "2026-03-30"}


def test_nothing_is_sent_before_the_job_has_an_end(job, sheet, put):
    panel = sheet.panel("posting")
    assert "the job has not ended" in put(panel, "parcel", **SENT)
    job.add("release", "result", {"ending": "returned", "summary": "As it came."})
    assert put(panel, "parcel", **SENT).startswith("saved ")


def test_the_value_declared_at_intake_is_not_asked_again(job, sheet, put):
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "180 EUR", "value_basis": "her own guess"})
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    panel = sheet.panel("posting")
    assert panel.forms["parcel"].boxes["insured"].text == "180 EUR"
    put(panel, "parcel", **SENT)
    assert job.newest(kind_of("posting", "parcel")).insured == "180 EUR"
    assert "Insured for 180 EUR, her own guess." in panel.result_text.value
    assert panel.forms["parcel"].boxes["insured"].text == "180 EUR"
