"""The packing list: where it goes, what is in the box, the value with its basis, and what is ticked by hand."""

import pytest

from pentools.writeup.papers.packing_list import packing_list
from pentools.writeup.words import date_in_words


def rows(job):
    return {row.label: row for row in packing_list(job).rows}


def test_an_empty_job_says_what_was_not_entered_and_claims_nothing(new_job):
    found = rows(new_job())
    assert found["To"].lines == ("Not entered.",)
    assert found["In the box"].lines == ("Not entered.",)
    assert found["Insured value"].lines == ("Declared value: not entered.",)
    assert found["Insured value"].big == ""
    assert "Mass of the pen" not in found
    assert found["As it is packed"].lines == ()  # boxes to tick, nothing said to be done
    assert "Empty and dry" in found["As it is packed"].ticks[0]
    assert any("Nib up" in text for text in found["As it is packed"].ticks)


def test_each_value_is_carried_to_its_label(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist", "address": "Rope Walk 3\n00117 Weir", "declared_value": "187 EUR", "value_basis": "her own guess, 2026-03-09", "private_note": "a present"})  # fmt: skip
    job.add("intake", "arrival", {"pen": "a pen", "pieces": "pen with cap; tin"})
    job.add("work log", "material", {"what": "old cork", "way": "returned"})
    job.add("work log", "material", {"what": "new cork", "way": "added"})
    job.add("release", "result", {"ending": "done", "summary": "x", "mass_g": "18.312 g", "released_on": "2026-03-28"})
    found = rows(job)
    assert found["To"].lines == ("Adela Quist", "Rope Walk 3", "00117 Weir")
    assert found["In the box"].ticks == ("Pen with cap", "Tin", "Old part, given back: old cork")
    assert found["Mass of the pen"].lines == ("18.312\u202fg as it leaves.",)
    assert (found["Insured value"].big, found["Insured value"].lines) == (
        "187 EUR",
        ("Basis: her own guess, 2026-03-09.",),
    )
    assert packing_list(job).about.replace("\u00a0", " ") == "Released on 28 March 2026."
    assert "a present" not in str(packing_list(job))
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "187 EUR"})
    since = date_in_words(job.record.entries[0].time)
    assert rows(job)["Insured value"].lines == (f"Basis: not entered; said on {since}.",)


@pytest.mark.parametrize(
    ("material", "burns"), [("celluloid", True), ("crazed celluloid", True), ("acrylic", False), ("", False)]
)
def test_the_carrier_is_asked_and_told_of_celluloid(new_job, material, burns):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "material": material})
    said = rows(job)["The carrier"].lines
    assert said[0].startswith("Check what your carrier asks")
    assert (len(said) == 2) == burns


def test_what_was_posted_stands_on_the_list(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "187 EUR", "value_basis": "her own guess"})
    assert "Goes by" not in rows(job)
    sent = {"carried": "registered", "sent_on": "2026-03-30", "number": "XQ 12345", "packed": "both", "weighs": "210 g"}
    job.add("posting", "parcel", {**sent, "insured": "200 EUR", "basis": "a dealer, March"})
    found = rows(job)
    assert [line.replace("\u00a0", " ") for line in found["Goes by"].lines] == [
        "Registered letter, number XQ 12345, 30 March 2026."
    ]
    assert found["Mass"].lines == ("The parcel: 210\u202fg.",)
    assert (found["Insured value"].big, found["Insured value"].lines) == (
        "200 EUR",
        (
            f"Basis: a dealer, March; said on {date_in_words(job.record.entries[-1].time)}.",
            "Declared at intake: 187 EUR (her own guess).",
        ),
    )
    assert found["As it is packed"].ticks[1] == "In a tube, the tube in a box, so that nothing rattles"


@pytest.mark.parametrize(("said", "label"), [("", "If it crosses a border"), ("yes", "At the border"), ("no", None)])
def test_what_is_asked_at_a_border_stands_there_unless_it_crosses_none(new_job, said, label):
    job = new_job()
    job.add("posting", "parcel", {"carried": "parcel", "sent_on": "2026-03-30", "border": said})
    found = rows(job)
    assert {"At the border", "If it crosses a border"} & set(found) == ({label} if label else set())
    if label:
        assert any("a repaired pen is none" in line for line in found[label].lines)
        assert "check what your carrier asks" in found[label].lines[-1]
