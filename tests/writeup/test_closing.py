"""The foot of a page names the instruments this job was measured with, and pictures keep an earlier no."""

import pytest

from pentools.record.entries import new_entry
from pentools.writeup.closing import methods
from pentools.writeup.photos import PhotoBook


def instruments(job):
    [facts] = [block for block in methods(job, "client").blocks if hasattr(block, "rows")]
    return dict(facts.rows)


def test_the_balance_at_the_foot_is_the_jobs_own(new_job):
    job = new_job()
    assert instruments(job)["Balance, readability"] == "0.01 g"
    job.add("fill test", "setup", {"readability": "0.001 g", "temperature": "23 °C"})
    found = instruments(job)
    assert found["Balance, readability"].startswith("0.001")
    assert found["Room"].startswith("23")
    assert "1013 hPa" in found["Room"]  # what the job does not say is the bench's


@pytest.mark.parametrize(
    ("words", "shown"),
    [(("yes",), True), (("no", "yes"), False), (("yes", "no"), False), (("", "yes"), False), (("yes", "yes"), True)],
)
def test_a_later_yes_does_not_overrule_an_earlier_no(new_job, words, shown):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    for word in words:
        job.add("pictures", "picture", {"photo": "side.jpg", "moment": "during", "shows": "the side", "public": word})
    assert PhotoBook(job, "blog").allowed("side.jpg") is shown
    assert PhotoBook(job, "client").allowed("side.jpg")


def test_an_entry_that_cannot_be_read_is_no_yes(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("pictures", "picture", {"photo": "side.jpg", "moment": "during", "shows": "the side", "public": "yes"})
    job.record.append(new_entry("pictures", "picture", {"photo": "SIDE.jpg", "moment": "sometime"}))
    assert not PhotoBook(job, "blog").allowed("side.jpg")
