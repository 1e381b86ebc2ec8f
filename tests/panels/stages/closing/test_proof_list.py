"""The tests that are owed: a button for each answer, a clock where it takes hours."""

import datetime as dt

from pentools import tables
from pentools.calc.closing.proofs import Proof, ProofRow
from pentools.panels.guard import Status
from pentools.panels.stages.closing.proof_list import ProofList

ROWS = {row.key: row for row in tables.read(ProofRow, "closing_proofs")}
UNTIL = dt.datetime(2026, 4, 9, 20, tzinfo=dt.UTC)


def made(*proofs):
    told = []
    proof_list = ProofList(Status(), lambda key: told.append(("begin", key)), lambda *said: told.append(said))
    proof_list.show([(proof, (("yes", "dry"), ("no", "damp"))) for proof in proofs], lambda _: "12 h")
    return proof_list, told


def test_each_answer_is_one_click():
    night = Proof(ROWS["night"], "owed")
    proofs, told = made(night, Proof(ROWS["squeeze"], "owed"))
    proofs.buttons["night", "begin"].click()
    proofs.hours["night"].value = "10 h"
    proofs.buttons["night", "no"].click()
    proofs.buttons["squeeze", "yes"].click()
    assert told[0] == ("begin", "night")
    assert told[1] == (night, "no", "10 h")
    assert told[2][1:] == ("yes", "")


def test_what_is_seen_at_once_has_no_clock_and_no_hours():
    proofs, _ = made(Proof(ROWS["squeeze"], "owed"), Proof(ROWS["capped"], "owed"))
    assert ("squeeze", "begin") not in proofs.buttons
    assert ("capped", "begin") in proofs.buttons
    assert proofs.hours == {}


def test_a_clock_that_runs_is_not_begun_again():
    proofs, _ = made(Proof(ROWS["night"], "running", UNTIL))
    assert ("night", "begin") not in proofs.buttons
    words = "".join(getattr(w, "value", "") for row in proofs.body.children for w in getattr(row, "children", ()))
    assert "rests until 09 April 20:00" in words


def test_a_heading_for_each_moment():
    proofs, _ = made(
        Proof(ROWS["squeeze"], "passed"), Proof(ROWS["night"], "failed"), Proof(ROWS["writes"], "due", UNTIL)
    )
    heads = [row.value for row in proofs.body.children if hasattr(row, "value")]
    assert heads == ["<h3>Before the last joint is closed</h3>", "<h3>Before it goes</h3>"]
