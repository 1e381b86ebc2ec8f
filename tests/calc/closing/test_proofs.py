"""What a pen owes in tests: by its system, with the clock of each rest."""

import datetime as dt

import pytest

from pentools import tables
from pentools.calc.closing.proofs import ProofRow, proofs_owed

ROWS = tables.read(ProofRow, "closing_proofs")
SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
NOON = dt.datetime(2026, 4, 9, 12, tzinfo=dt.UTC)


def owed(system="lever-sac", results=(), begun=(), after_h=0.0):
    found = proofs_owed(system, ROWS, dict(results), dict(begun), NOON + dt.timedelta(hours=after_h))
    return {proof.row.key: proof for proof in found}


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_owes_a_night_a_look_into_the_cap_and_a_line_written(system):
    assert {"night", "capped", "writes"} <= set(owed(system))
    assert ("nib-down" in owed(system)) == (system != "safety")


def test_each_mechanism_owes_its_own_test_before_it_is_closed():
    assert "squeeze" in owed("lever-sac")
    assert "half-stroke" in owed("plunger-vacuum")
    assert "mouth" in owed("piston")
    assert not {"squeeze", "half-stroke", "mouth"} & set(owed("eyedropper"))


def test_a_rest_runs_until_its_hours_are_over_and_is_then_due():
    begun = {"night": NOON}
    assert owed(begun=begun, after_h=7.9)["night"].state == "running"
    assert owed(begun=begun, after_h=8.0)["night"].state == "due"
    assert owed(begun=begun)["night"].until == NOON + dt.timedelta(hours=8)
    assert owed(begun={"capped": NOON})["capped"].until == NOON + dt.timedelta(hours=1)


def test_a_result_stands_until_the_rest_is_begun_anew():
    assert owed(results={"night": True})["night"].state == "passed"
    assert owed(results={"night": False})["night"].state == "failed"
    assert owed(results={"night": True}, begun={"night": NOON})["night"].state == "running"
    assert owed()["night"].state == "owed"


def test_a_test_is_kept_where_such_results_are_kept_and_passes_by_a_sign_of_it():
    signs = {(row["test"], row["result"]) for row in tables.rows("seal_signs")}
    given = {row["gives"] for row in tables.rows("closing_steps")}
    for row in ROWS:
        assert set(row.systems) <= set(SYSTEMS), row
        assert row.systems
        assert set(row.gives) <= given, row
        if row.records.startswith("seal test "):
            test = row.records.removeprefix("seal test ")
            assert (test, row.passes) in signs, row
            told = [r["systems"].split("; ") for r in tables.rows("seal_tests") if r["test"] == test]
            assert set(row.systems) <= {system for systems in told for system in systems}, row
