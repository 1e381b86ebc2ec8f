"""The page's frame: what is set into the style sheet, what folds, and the page that says why there is none."""

import pytest
from writeup.pages import Parsed, notebook

from pentools.writeup.page import render_page
from pentools.writeup.template import for_css, plain_page


def test_a_hostile_job_name_cannot_leave_the_style_sheet(new_job):
    job = new_job(name="a job")
    odd = type(job)('x"; } </style><script>', job.folder, job.bench, job.record)
    page = Parsed(render_page(odd, "owner", notebook()))
    assert "script" not in {tag for tag, _ in page.tags}


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_details_stand_in_the_page_and_print_open(small_job, audience):
    page = render_page(small_job, audience)
    details = [attrs for tag, attrs in Parsed(page).tags if tag == "details"]
    assert details
    assert "details::details-content" in page
    if audience == "owner":
        assert all("open" in attrs for attrs in details)


def test_the_printed_page_is_numbered_and_named(small_job):
    page = render_page(small_job, "owner")
    assert 'content: "Job job-4711"' in page
    assert "counter(page)" in page
    assert "size: A4" in page
    facts = {**small_job.bench.facts, "bench": {**small_job.bench.facts["bench"], "paper": "Letter"}}
    letter = type(small_job)(
        small_job.name, small_job.folder, type(small_job.bench)(small_job.bench.folder, facts), small_job.record
    )
    assert "size: letter" in render_page(letter, "owner")


def test_the_page_that_says_why_there_is_none_keeps_hostile_text_as_text():
    page = Parsed(plain_page("No <b>page</b>", "Because of <script>x()</script>."))
    assert not {"script", "b"} & {tag for tag, _ in page.tags}
    assert "Because of <script>x()</script>." in page.text
    assert page.headings == [1]


def test_the_bench_that_writes_a_comma_reads_commas(small_job):
    facts = {**small_job.bench.facts, "bench": {**small_job.bench.facts["bench"], "decimal_sign": ","}}
    odd = type(small_job)(
        small_job.name, small_job.folder, type(small_job.bench)(small_job.bench.folder, facts), small_job.record
    )
    assert "16,42" in Parsed(render_page(odd, "owner")).text
    assert "16.42" not in Parsed(render_page(odd, "owner")).text


def test_a_running_title_keeps_its_apostrophe_and_nothing_that_could_end_the_string():
    assert for_css("A seed merchant's “green” pen, and the owner’s") == "A seed merchant’s “green” pen, and the owner’s"
    assert not set('"\\;{}<>\n&') & set(for_css('a";} </style> \\ & \n b'))
