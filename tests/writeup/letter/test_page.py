"""The letter as a whole: each label with its own value, nothing empty, nothing twice, nothing meant for the bench."""

import re

import pytest
from writeup.pages import CONTACT, Parsed

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.writeup.letter.page import first_rows, letter_files
from pentools.writeup.notebook import read_notebook

SAMPLES = ("green-piston", "lever-with-limits", "casein-returned", "mixed-dates", "short-breather", "syringe-ladder")


def letter(job, cells=None):
    return letter_files(job, cells)["client.html"]


def rows(page):
    """What stands beside each label of the first page, read back from the HTML."""
    found = re.findall(r"<div><dt>(.*?)</dt><dd>(.*?)</dd></div>", page, re.DOTALL)
    return {label: Parsed(value).text.replace("\u202f", " ").replace("\u00a0", " ") for label, value in found}


@pytest.fixture
def told_job(new_job):
    """One distinctive value behind every label."""
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist"})
    job.add("intake", "arrival", {"pen": "ochre lever filler, old", "system": "lever-sac", "arrived_on": "2026-03-14"})
    job.add("intake", "request", {"asked": "That it writes.", "price_limit": "77 EUR"})
    job.add("condition", "part", {"part": "seals", "severity": "4", "seen": "Sacseenword."})
    job.add("agree", "survey", {"conclusion": "Surveyword."})
    job.add("agree", "answer", {"action": "heat", "agreed": "yes", "answered_on": "2026-03-16", "channel": "letter", "terms": "Termsword.", "authority": "yes"})  # fmt: skip
    job.add("work log", "work", {"activity": "seal", "minutes": "91 min", "done": "Doneword. Seconddone."})
    job.add("work log", "material", {"what": "Materialword", "way": "added", "reversible": "yes", "cost": "3.33 EUR"})
    job.add("work log", "departure", {"what": "Departword.", "why": "Becauseword.", "agreed_on": "2026-03-20"})
    for state, mass in (("dry", "16.550 g"), ("filled", "17.850 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    job.add("fill test", "leak check", {"rested": "13 h", "dry": "yes", "how": "Layword"})
    job.add("limits", "limit", {"part": "cap", "left": "Leftword.", "why": "Whyword.", "instead": "Insteadword.", "advice": "Adviceword."})  # fmt: skip
    job.add(
        "release",
        "result",
        {
            "ending": "done with limits", "summary": "Summaryword: it writes.", "care": "Careword.", "follow_up": "Watchword.",
            "promise_until": "2027-02-03", "price": "66 EUR", "released_on": "2026-03-28",
        },
    )  # fmt: skip
    return job


def test_every_label_carries_its_own_value(told_job):
    found = rows(letter(told_job))
    assert list(found) == [
        "What it does now", "What was wrong", "What was done", "What was left, and why", "Price", "Care", "If something comes up",
    ]  # fmt: skip
    assert found["What it does now"].startswith("1.29 mL ± 0.0")
    assert "13 h at rest, filled (Layword): dry all over." in found["What it does now"]
    assert found["What was wrong"] == "Seals and sac: Sacseenword."
    assert (
        found["What was done"] == "Doneword. Put in: Materialword. All of it can be taken off again. 1 h 31 min in all."
    )
    assert found["What was left, and why"] == "Leftword. Whyword."
    assert found["Price"] == "66 EUR, of 77 EUR agreed at most. Parts and materials came to 3.33 EUR."
    assert found["Care"] == "Careword."
    assert found["If something comes up"] == f"Watchword. The work is answered for until 3 February 2027. Ask {CONTACT}"


def test_the_head_the_summary_and_the_table(told_job):
    page = letter(told_job)
    text = Parsed(page).text.replace("\u00a0", " ")
    assert re.findall(r"<h1>(.*?)</h1>", page) == ["Your ochre lever filler writes again"]
    assert "For Adela Quist. Done with limits: cap; released 28 March 2026." in text
    assert f"job {told_job.name} · 28 March 2026" in text
    assert page.index("Summaryword") < page.index("<dl")
    assert "record.html" in text
    assert "Heat yes, 16 March 2026, letter “Termsword.”" in text
    assert "Departword. yes, 20 March 2026 Becauseword." in text
    assert "Adviceword" not in text  # to whoever repairs it next: that reader has the record


def test_the_letter_before_the_work_is_done_says_so(new_job):
    job = new_job()
    assert "Unfinished: This job is not finished. Nothing has been entered yet." in Parsed(letter(job)).text
    job.add("intake", "arrival", {"pen": "ochre lever filler"})
    job.add("agree", "proposal", {"part": "seals", "proposed": "A new sac."})
    page = letter(job)
    assert "Your ochre lever filler is still on the bench" in page
    assert "It shows the state of" in page
    assert rows(page)["What is proposed"] == "Seals and sac: A new sac."
    assert "What was left" not in page


def test_a_row_that_was_spoilt_is_left_to_the_record(told_job):
    path = told_job.record.path
    path.write_text(path.read_text().replace('"Sacseenword."', '{"no": "text"}'))
    from pentools.record.job import job_in

    again = job_in(told_job.folder)
    assert "What was wrong" not in rows(letter(again))
    assert rows(letter(again))["Care"] == "Careword."


@pytest.mark.parametrize("name", SAMPLES)
def test_samples_hold_what_a_letter_may_hold(name, tmp_path):
    job = create_job(open_bench_folder(tmp_path, create=True), name, sample=name)
    page = letter(job, read_notebook(job.notebook))
    parsed = Parsed(page)
    assert page.count("<table") <= 1
    assert page.count("<tr") <= 9
    assert not re.findall(r"<(p|dd|td|dt|figcaption|h\d)(?: [^>]*)?>\s*</\1>", page)
    headings = [Parsed(text).text.casefold() for text in re.findall(r"<h[1-6][^>]*>(.*?)</h[1-6]>", page, re.DOTALL)]
    assert len(headings) == len(set(headings))
    assert not re.search(r"</h[1-6]>\s*<h[1-6]", page)  # no heading stands on another
    assert parsed.headings[0] == 1
    assert all(image["alt"] for image in parsed.images)
    assert len(parsed.text.split()) < 2000
    files = [image["src"] for image in parsed.images]
    assert len(files) == len(set(files))
    lines = [line for row in first_rows(job) for line in row.lines]
    assert len(lines) == len(set(lines))
