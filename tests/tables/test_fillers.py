"""The tables of filling systems and of suspects agree with the formulas and with each other."""

import pytest

from pentools import tables
from pentools.systems.registry import SYSTEMS
from pentools.tables.fillers import fill_suspects, usual_fill


def test_difficulty_is_a_whole_number_from_one_to_seven():
    assert {int(row["difficulty"]) for row in tables.rows("filling_systems")} <= set(range(1, 8))


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_has_suspects_in_a_clear_order(system):
    suspects = fill_suspects(system)
    assert len(suspects) >= 2
    assert len({s.key for s in suspects}) == len(suspects)
    ranks = [int(row["rank"]) for row in tables.rows("fill_suspects") if system in row["systems"].split("; ")]
    assert len(set(ranks)) == len(ranks)
    assert min(ranks) == 1
    assert all(s.why and s.next_test and not s.next_test.endswith(".") for s in suspects)


def test_suspects_name_known_systems_only():
    named = {system for row in tables.rows("fill_suspects") for system in row["systems"].split("; ")}
    assert named == set(SYSTEMS)
    assert fill_suspects("magic") == ()


@pytest.mark.parametrize(
    ("system", "first"),
    [
        ("piston", "head-seal"),
        ("plunger-vacuum", "head-seal"),
        ("lever-sac", "pressure-bar"),
        ("slot-sac", "press"),
        ("diaphragm-pump", "breather-tube"),
        ("pneumatic-down-stroke", "tube-ring"),
    ],
)
def test_first_suspects(system, first):
    assert fill_suspects(system)[0].key == first
    if system != "lever-sac":
        assert "pressure-bar" not in {s.key for s in fill_suspects(system)}


def test_every_system_has_one_usual_share_in_order_and_judged():
    rows = tables.rows("usual_fill")
    assert sorted(row["system"] for row in rows) == sorted(SYSTEMS)
    for row in rows:
        low, typical, high = (float(row[name]) for name in ("low", "typical", "high"))
        assert 0 < low < typical < high <= 1, row["system"]
        assert row["certainty"] == "judged"
    assert usual_fill("plunger-vacuum").high == 0.85
    assert usual_fill("magic") is None
