"""Any stage as tables: who sees which field, what was not given, and what does not fit a page."""

import pytest

from pentools.fields import ask
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, PART_CONDITION, Owner
from pentools.writeup.blocks import Facts, Notice, Table
from pentools.writeup.sections import generic


@pytest.mark.parametrize(
    ("audience", "pages"), [("bench", []), ("owner", ["owner"]), ("everybody", ["owner", "everybody"])]
)
def test_which_page_shows_a_field(audience, pages):
    field = ask("Colour", audience=audience)
    assert [page for page in ("owner", "everybody") if generic.may_show(field, page)] == pages


def test_what_is_missing_is_a_dash_and_a_date_is_in_words():
    field = ARRIVAL.field("arrived_on")
    assert generic.shown(field, None) == "–"
    assert generic.shown(field, "2026-03-14") == "14\u00a0March 2026"


def test_the_log_tells_the_owner_what_the_owner_may_see():
    told = generic.log_rows(OWNER, Owner(owner="Adela Quist", may_decide=True, private_note="pays late"))
    assert told == "Owner: Adela Quist; May this person decide about the pen? yes"


def test_a_table_has_no_empty_column_and_dates_for_the_owner_only(new_job):
    job = new_job()
    job.add("condition", "part", {"part": "cap", "seen": "Dull.", "severity": "1"})
    [client] = generic.kind_table(job, PART_CONDITION, "owner")
    [blog] = generic.kind_table(job, PART_CONDITION, "everybody", without=("severity",), caption="Seen")
    assert client.head == ("Date", "Part", "What is seen", "How serious")
    assert blog == Table("Seen", ("Part", "What is seen"), (("cap", "Dull."),))


def test_a_kind_too_wide_for_a_page_is_set_entry_by_entry(new_job, monkeypatch):
    job = new_job()
    for part in ("cap", "clip"):
        job.add("condition", "part", {"part": part, "seen": "Dull.", "severity": "1"})
    monkeypatch.setattr(generic, "WIDEST", 2)
    client, blog = (generic.kind_table(job, PART_CONDITION, audience) for audience in ("owner", "everybody"))
    assert [card.caption for card in blog] == ["One part, 1 of 2", "One part, 2 of 2"]
    assert all(isinstance(card, Facts) for card in client + blog)
    assert {card.rows[0][0] for card in client} == {"Entered"}
    assert {card.rows[0][0] for card in blog} == {"Part"}


def test_a_released_hold_is_told_to_the_owner_with_its_reason(new_job):
    job = new_job()
    job.release("release", "release", "the owner travels")
    [notice] = generic.releases_of(job, job.stage("release"), "owner")
    assert isinstance(notice, Notice)
    assert notice.text.endswith("for this reason: The owner travels.")
    assert generic.releases_of(job, job.stage("release"), "everybody") == []
