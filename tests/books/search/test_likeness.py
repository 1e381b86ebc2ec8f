"""What is known of a pen: its words without case and accents, what holds, what failed; and nothing of its owner."""

import msgspec
import pytest

from pentools.books.search.likeness import KNOWN, WORDS, folded
from pentools.record.job import create_job


@pytest.fixture
def job(bench):
    job = create_job(bench, "pen")
    job.add("intake", "owner", {"owner": "Adela Quist", "contact": "quist at home", "address": "Rope Walk 3"})
    job.add("intake", "arrival", {"pen": "Grün marbled pen", "system": "piston", "material": "Celluloid", "arrived_on": "2026-03-02"})  # fmt: skip
    job.add("open", "material", {"part": "section", "material": "ebonite", "sure": "yes"})
    for what, happened in (("cork 9.2", "no touch"), ("cork 9.4", "pulls back"), ("cork 9.6", "pulls back"), ("cork 9.6", "too stiff")):  # fmt: skip
        job.add("seal", "trial", {"place": "cork", "what": what, "outside": "9.41 mm", "dry": "yes", "happened": happened, "lot": "bag 3"})  # fmt: skip
    job.add("seal", "trial", {"place": "head", "what": "greased ring", "outside": "9.41 mm", "dry": "no", "happened": "pulls back"})  # fmt: skip
    job.add("seal", "tool", {"tool": "punch", "purpose": "corks", "outside_made": "9.5 mm"})
    job.add("work log", "material", {"what": "a trace of wax", "way": "added", "part": "filler", "lot": "tin 1"})
    job.add("work log", "material", {"what": "the old cork", "way": "removed", "part": "seals"})
    job.add("work log", "tool", {"tool": "hook", "dimensions": "1 mm wire"})
    job.add("work log", "note", {"note": "xylophone"})
    return job


def test_what_was_fitted_and_what_failed(job):
    known = KNOWN.of(job)
    assert [(one.place, one.what, one.lot, one.held) for one in known.came_of_it.fitted] == [
        ("cork on the head", "cork 9.4", "bag 3", True), ("filling mechanism", "a trace of wax", "tin 1", False),
    ]  # fmt: skip
    assert known.came_of_it.failed == (
        "cork 9.2 at the cork on the head: no touch",
        "cork 9.6 at the cork on the head: too stiff",
    )
    assert known.came_of_it.tools == ("punch: 9.50 mm outside, for corks", "hook, 1 mm wire")
    assert set(known.parts) == {"filler", "seals", "section"}
    assert known.body == "celluloid"
    assert (known.made_of, known.days, known.ending) == (" celluloid\n ebonite", None, None)
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "released_on": "2026-03-20"})
    assert (KNOWN.of(job).days, KNOWN.of(job).ended_on) == (18, "2026-03-20")


def test_words_are_folded_and_the_owners_are_not_among_them(job):
    words = WORDS.of(job)
    for phrase in (" grun marbled pen", " cork 9 2", " piston filler", " a trace of wax", " hook"):
        assert phrase in words.folded, phrase
    for word in ("quist", "rope", "xylophone"):
        assert word not in words.folded
    pieces = msgspec.msgpack.decode(words.pieces, type=list[tuple[str, str]])
    assert ("What arrived", "Grün marbled pen") in pieces
    assert [" ".join(folded(text).split()) for _, text in pieces] == [" ".join(line.split()) for line in words.folded.split("\n")]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "plain"), [("Cork washer, 9.5 mm (Müller’s)", " cork washer 9 5 mm muller s"), ("Łódź_pen", " lodz pen"), ("—", ""), ("", "")]
)  # fmt: skip
def test_a_text_is_its_words(text, plain):
    assert folded(text) == plain


def test_a_pen_that_came_back_says_why(bench):
    job = create_job(bench, "again")
    job.add("intake", "coming back", {"older": "pen", "failed": "it leaks"})
    assert (KNOWN.of(job).older, KNOWN.of(job).came_back) == ("pen", "it leaks")
