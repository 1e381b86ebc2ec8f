"""What one job used: each with its day, its lot and its place; a correction keeps the day of what it corrects."""

import msgspec
import pytest

from pentools.books.stock.uses import Use, pieces_in, uses_of
from pentools.record.entries import new_entry
from pentools.record.job import create_job


@pytest.fixture
def job(bench):
    return create_job(bench, "pen")


def put(job, stage, kind, data, day="2026-05-21"):
    entry = msgspec.structs.replace(new_entry(stage, kind, data), at=f"{day}T10:00:00+02:00")
    job.record.append(entry)
    return entry


def test_every_way_of_using_something(job):
    put(job, "intake", "arrival", {"pen": "a lever filler", "system": "lever-sac"})
    put(
        job,
        "work log",
        "material",
        {"what": "3 × cork washer", "way": "added", "part": "seals", "lot": "bag", "cost": "1 EUR"},
    )
    put(job, "work log", "material", {"what": "old sac", "way": "removed"})
    put(
        job,
        "seal",
        "trial",
        {"place": "sac", "what": "latex sac 16", "happened": "pulls back", "dry": True, "lot": "A"},
    )
    put(
        job,
        "seal",
        "trial",
        {"place": "sac", "what": "latex sac 18", "happened": "too stiff", "dry": True, "lot": "B"},
    )
    put(job, "seal", "sealant", {"place": "sac", "sealant": "shellac", "lot": "bottle A"})
    put(job, "repairs", "repair", {"part": "cap", "method": "cap-lip-weld", "with_what": "acetone", "lot": "tin 1"})
    told = uses_of(job)
    assert (told.pen, told.system) == ("a lever filler", "lever-sac")
    assert [(use.way, use.what, use.lot, use.pieces) for use in told.uses] == [
        ("added", "3 × cork washer", "bag", 3), ("removed", "old sac", "", 1), ("fitted", "latex sac 16", "A", 1),
        ("tried", "latex sac 18", "B", 1), ("sealant", "shellac", "bottle A", 1), ("mended", "acetone", "tin 1", 1),
    ]  # fmt: skip
    assert told.uses[0] == Use("added", "3 × cork washer", "bag", "seals and sac", "2026-05-21", 3, "1 EUR")
    assert {use.on for use in told.uses} == {"2026-05-21"}


def test_a_correction_keeps_the_day_and_what_is_taken_back_is_gone(job):
    first = put(job, "work log", "material", {"what": "cork", "way": "added"})
    again = new_entry("work log", "material", {"what": "cork ring", "way": "added"}, replaces=first.id)
    job.record.append(msgspec.structs.replace(again, at="2026-06-01T10:00:00+02:00"))
    assert [(use.what, use.on) for use in uses_of(job).uses] == [("cork ring", "2026-05-21")]
    job.withdraw(job.record.live("work log", "material")[0], "it was another pen")
    assert uses_of(job).uses == ()


def test_the_older_job_and_the_tools(job):
    put(job, "intake", "coming back", {"older": "first", "failed": "it leaks", "part": "seals"})
    put(
        job,
        "work log",
        "tool",
        {"tool": "knock-out tube", "part": "feed", "dimensions": "6.2 mm", "made_from": "brass"},
    )
    told = uses_of(job)
    assert (told.older, told.failed, told.failed_part) == ("first", "it leaks", "seals and sac")
    assert [(tool.tool, tool.part, tool.dimensions, tool.made_from, tool.on) for tool in told.tools] == [
        ("knock-out tube", "feed", "6.2 mm", "brass", "2026-05-21")
    ]


@pytest.mark.parametrize(("what", "pieces"), [("2x ring", 2), ("12 pcs felt", 12), ("1.78x5.28 ring", 1), ("0 x ring", 1), ("16 mm sac", 1), ("", 1)])  # fmt: skip
def test_pieces(what, pieces):
    assert pieces_in(what) == pieces
