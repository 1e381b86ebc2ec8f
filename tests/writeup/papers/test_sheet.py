"""What all papers share: whole pages that fetch nothing, nothing of the bench's, and type that keeps them to one page."""

import dataclasses
import re

import pytest
from writeup.pages import CONTACT, Parsed
from writeup.papers.planting import plant

from pentools.figures.drawing import Drawing
from pentools.record.stages.job.intake_kinds import OWNER
from pentools.writeup.forms import PAGE_FORMS, files_of
from pentools.writeup.papers.sheet import SIZES_PT, Grid, Paper, Row, told, type_size
from pentools.writeup.write import write_pages

PAPERS = [key for key, form in PAGE_FORMS.items() if form.file.startswith("papers/")]


def page(job, key):
    return files_of(PAGE_FORMS[key], job, None)[PAGE_FORMS[key].file]


def test_there_are_four_of_them_and_all_are_the_owners():
    assert PAPERS == ["proposal", "care", "parts", "packing"]
    assert {PAGE_FORMS[key].audience for key in PAPERS} == {"owner"}


@pytest.mark.parametrize("key", PAPERS)
def test_a_paper_is_whole_and_fetches_nothing(small_job, key):
    text = page(small_job, key)
    found = Parsed(text)
    assert found.headings == [1]
    assert found.open == []
    assert len(found.ids) == len(set(found.ids))
    assert [link for link in found.links if link[0] != "a"] == []
    assert "default-src 'none'" in text
    assert dict(found.tags)["html"] == {"lang": "en"}
    assert found.text.count(CONTACT) == 1
    assert "job job-4711 · 28\u00a0March 2026".replace("\u00a0", " ") in found.text.replace("\u00a0", " ")
    assert "Unfinished" not in found.text
    assert "None" not in found.text


@pytest.mark.parametrize("key", PAPERS)
def test_an_unfinished_job_says_so_and_an_empty_one_claims_nothing(new_job, key):
    job = new_job()
    assert "This job is not finished. Nothing has been entered yet." in Parsed(page(job, key)).text
    assert "not entered" in Parsed(page(job, key)).text
    job.add("intake", "arrival", {"pen": "a pen"})
    assert re.search(r"This job is not finished. It shows the state of \d+\s\w+ \d{4}\.", Parsed(page(job, key)).text)
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    assert "not finished" not in page(job, key)


def test_what_is_for_the_bench_alone_stands_on_no_paper_and_each_value_has_its_place(new_job):
    job = new_job()
    words = plant(job)
    pages = {key: page(job, key) for key in PAPERS}
    every = " ".join(pages.values())
    assert len(words["bench"]) >= 30
    assert {where: word for where, word in words["bench"].items() if word in every} == {}
    places = {
        "proposal": "intake/request/asked intake/request/expectations intake/request/must_not agree/survey/conclusion "
        "agree/survey/not_examined agree/proposal/proposed agree/proposal/materials agree/proposal/alternative "
        "agree/proposal/leave_it agree/proposal/risk agree/proposal/permanent agree/estimate/parts_cost agree/estimate/price_low "
        "agree/estimate/price_high agree/estimate/ceiling intake/request/price_limit intake/owner/owner intake/arrival/pen",
        "care": "release/result/care release/result/follow_up intake/arrival/pen",
        "parts": "work log/material/what work log/material/lot intake/arrival/pen repairs/repair/lot seal/sealant/lot",
        "packing": "intake/owner/owner intake/owner/address intake/owner/declared_value intake/owner/value_basis "
        "intake/arrival/pieces intake/arrival/pen posting/parcel/insured posting/parcel/basis posting/parcel/number",
    }
    known = words["owner"] | words["everybody"]
    for key, listed in places.items():
        wanted = re.findall(r"(?:work log|\w+)/\w+/\w+", listed)
        assert len(wanted) >= 3
        assert [where for where in wanted if known[where] not in pages[key]] == [], key
        # nothing else of the owner's strays on to a paper that may lie open in a box
        other = {where for where, word in known.items() if word in pages[key]} - set(wanted)
        assert other <= {"agree/answer/channel", "agree/answer/by", "agree/answer/terms"}, (key, other)


def test_a_value_is_withheld_as_soon_as_its_field_is_the_benchs(monkeypatch, new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "180 EUR"})
    owner = job.newest(OWNER)
    assert told(OWNER, owner, "declared_value") == "180 EUR"
    own = type(OWNER).field
    monkeypatch.setattr(type(OWNER), "field", lambda kind, name: dataclasses.replace(own(kind, name), audience="bench"))
    assert told(OWNER, owner, "declared_value") == ""


def test_entries_that_cannot_be_read_do_not_take_the_paper_with_them(small_job, monkeypatch):
    small_job.add("release", "result", {"ending": "done", "summary": "x", "mass_g": "15 g"})
    monkeypatch.setattr("pentools.writeup.papers.packing_list.decimals_of", lambda *_: int("x"))
    text = page(small_job, "packing")
    assert "Entries that belong here cannot be read." in text
    assert "Adela Quist" in text


def test_long_papers_are_set_smaller_and_never_larger_with_a_notice():
    sizes = []
    for lines in range(1, 60, 6):
        paper = Paper("care", "t", "", tuple(Row("a label", ("words " * 30,)) for _ in range(lines)))
        sizes.append(type_size(paper))
        assert type_size(paper, notice=True) <= sizes[-1]
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[0] == SIZES_PT[0]
    assert sizes[-1] == SIZES_PT[-1]


def set_in(count, text="short", **more):
    return type_size(Paper("k", "t", "", (Row("r", (text,)),) * count), **more)


def test_what_fits_a_page_is_counted_row_by_row():
    """At 12 pt a line is 5.50 mm (1.3 of 4.23 mm), a row of one 8.10 mm, of two 13.61 mm; 216 mm hold 26 or 15 of them."""
    assert (set_in(26), set_in(27)) == (12.0, 11.0)
    assert (set_in(25, notice=True), set_in(26, notice=True)) == (12.0, 11.0)
    assert (set_in(16, "x" * 78), set_in(15, "x" * 79), set_in(16, "x" * 79)) == (12.0, 12.0, 11.0)
    assert set_in(200) == 8.0


def test_a_drawing_takes_its_height_as_wide_as_the_text():
    """354 by 200 goes to half its size on 177 mm: 100 mm and a gap of 4, which leaves 112 mm for 13 rows."""
    drawing = Drawing('<svg viewBox="0 0 354 200"></svg>', "t", "a", 354.0)
    narrow = Drawing('<svg viewBox="0 0 100 100"></svg>', "t", "a", 100.0)
    for shown in (drawing, narrow):
        sizes = [type_size(Paper("k", "t", "", (Row("r", ("short",)),) * n, drawing=shown)) for n in (13, 14)]
        assert sizes == [12.0, 11.0]


def test_a_column_that_is_empty_throughout_is_left_out():
    assert Grid(("a", "b", "c"), (("1", "", "2"), ("3", "", ""))).shown() == Grid(("a", "c"), (("1", "2"), ("3", "")))


def test_all_of_them_are_written_by_their_keys(small_job):
    written = write_pages(small_job, PAPERS)
    assert [path.relative_to(small_job.folder / "writeup").as_posix() for path in written] == [
        "papers/proposal.html", "papers/care.html", "papers/parts.html", "papers/packing.html",
    ]  # fmt: skip
