"""Agreement on the pages: what only the client sees."""

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Table
from pentools.writeup.making import section_of
from pentools.writeup.page import render_page


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac"})
    job.add("intake", "consent", {"publish": "yes"})
    return job


def test_nothing_entered_nothing_shown(job):
    for audience in ("owner", "everybody"):
        assert section_of(job, "agree", audience).blocks == ()


def test_money_and_answers_are_for_the_client(job):
    job.add("agree", "survey", {"conclusion": "it can be mended", "grade": "fair"})
    job.add("agree", "proposal", {"part": "seals", "proposed": "a new sac", "leave_it": "it will not write"})
    job.add("agree", "estimate", {"ceiling": "157 EUR"})
    job.add(
        "agree",
        "answer",
        {"action": "heat", "agreed": "no", "answered_on": "2026-04-02", "channel": "letter", "by": "Adela Quist"},
    )
    job.add("agree", "not applicable", {"asked": "accessories", "why": "it came alone"})
    cells = notebook(stage("agree"))
    client, blog = (Parsed(render_page(job, audience, cells)).text for audience in ("owner", "everybody"))
    for words in ("It can be mended.", "a new sac", "it will not write"):
        assert words in client
        assert words in blog
    for words in ("157 EUR", "You said yes to publishing the story, and no to heat.", "Adela Quist", "it came alone"):
        assert words in client
        assert words not in blog


def test_a_no_at_the_agreement_says_so_where_the_page_is_held(job):
    job.add("agree", "answer", {"action": "publish", "agreed": "no", "answered_on": "2026-04-02", "channel": "letter"})
    text = render_page(job, "everybody", notebook(stage("agree")), draft=True)
    assert "has said no to publication" in text


def answers(job):
    [table] = [
        b for b in section_of(job, "agree", "owner").blocks if isinstance(b, Table) and b.caption == "Your answers"
    ]
    return table.head, [tuple(cell.replace("\u00a0", " ") for cell in row) for row in table.rows]


def test_the_answers_are_one_table_however_much_was_noted_of_each(job):
    answer = {"answered_on": "2026-04-02", "channel": "letter"}
    job.add("agree", "answer", {**answer, "action": "heat", "agreed": "no"})
    assert answers(job) == (("On", "To what", "Yes or no", "How"), [("2 April 2026", "heat", "no", "letter")])
    job.add("agree", "answer", {**answer, "action": "soak", "agreed": "yes", "by": "Adela Quist", "authority": "yes", "terms": "Not long."})  # fmt: skip
    job.add("agree", "answer", {**answer, "action": "polish", "agreed": "yes", "authority": "no"})
    head, rows = answers(job)
    assert head[4:] == ("By whom", "In your words")
    assert [row[4:] for row in rows] == [
        ("–", "–"), ("Adela Quist (may decide)", "Not long."), ("not named (may not decide: a yes does not count)", "–"),
    ]  # fmt: skip
    assert [row[2] for row in rows] == ["no", "yes", "yes"]


def test_what_was_received_and_billed_stands_in_the_owners_record_in_short(job):
    job.add("agree", "money received", {"amount": "40 EUR", "received_on": "2026-03-05", "how": "in cash"})
    job.add("agree", "invoice", {"number": "2026-001", "place": "1", "given_on": "2026-03-30", "lines": "a | b | c | 5.00 EUR | ", "total": "60.00 EUR"})  # fmt: skip
    tables = {b.caption: b for b in section_of(job, "agree", "owner").blocks if isinstance(b, Table)}
    assert [cell.replace("\u00a0", " ") for cell in tables["Money received"].rows[0][1:]] == ["40 EUR", "5 March 2026", "in cash"]  # fmt: skip
    assert tables["Invoices"].head[1:] == ("Number", "Of", "Total")
    assert tables["Invoices"].rows[0][1] == "2026-001"
    assert section_of(job, "agree", "everybody").blocks == ()
