"""What stands in the way of a repair, and how long a mend stands."""

import dataclasses
import datetime as dt
import itertools

import msgspec
import pytest

from pentools.calc.repairs.fitness import TOPICS, RepairFacts, RepairRow, fits_material, repair_topics, standing
from pentools.errors import InputError

NOON = dt.datetime(2026, 3, 14, 12, tzinfo=dt.UTC)


def row(**values):
    usual = {
        "key": "weld", "part": "cap", "place": "lip", "fault": "crack", "method": "solvent weld", "how": "", "materials": ("celluloid", "ABS"),
        "needs": ("named", "test-spot"), "consent": "mend", "stopped_by": (), "treatment": "solvent weld", "cautions": (), "reversible": "no",
        "wait_h": 168.0, "wait_to_h": 504.0, "until": "", "limit": "", "for_now": False, "sent": False, "source": "s", "certainty": "judged",
    }  # fmt: skip
    return RepairRow(**(usual | values))


GOOD = RepairFacts(("celluloid",), yes=frozenset({"mend"}), tested=True)


def test_nothing_is_in_the_way_when_all_is_said():
    assert repair_topics(row(), GOOD) == ()


@pytest.mark.parametrize(
    ("change", "topics"),
    [
        ({"materials": ("unknown",)}, ("unknown",)),
        ({"materials": ()}, ("unknown",)),
        ({"materials": ("celluloid", "unknown")}, ("unknown",)),
        ({"materials": ("hard rubber",)}, ("unfit",)),
        ({"materials": ("celluloid", "casein")}, ("unfit",)),
        ({"never": ("celluloid",)}, ("treatment",)),
        ({"materials": ("casein",), "never": ("casein",)}, ("unfit",)),
        ({"yes": frozenset()}, ("consent",)),
        ({"yes": frozenset({"mend"}), "no": frozenset({"mend"})}, ("refused",)),
        ({"yes": frozenset(), "no": frozenset({"mend"})}, ("refused",)),
        ({"tested": None}, ("test spot",)),
        ({"tested": False}, ("test failed",)),
    ],
)
def test_one_thing_missing_is_said_alone(change, topics):
    assert repair_topics(row(), dataclasses.replace(GOOD, **change)) == topics


def test_a_way_for_any_material_asks_for_none_and_still_bears_no_no():
    easy = row(materials=("any",), needs=(), consent="", stopped_by=("sealant",), treatment="")
    assert repair_topics(easy, RepairFacts()) == ()
    assert repair_topics(easy, RepairFacts(no=frozenset({"sealant"}))) == ("refused",)
    assert repair_topics(easy, RepairFacts(no=frozenset({"mend"}))) == ()
    assert repair_topics(msgspec.structs.replace(easy, needs=("named",)), RepairFacts()) == ("unknown",)
    assert repair_topics(msgspec.structs.replace(easy, needs=("rubbing",)), RepairFacts()) == ("rubbing",)
    assert repair_topics(easy, RepairFacts(tested=False)) == ("test failed",), (
        "a failed trial counts though none was asked"
    )


def test_more_knowledge_never_holds_more():
    """By brute force: naming, asking and trying only ever take topics away."""
    met = set()
    weld = row(needs=("named", "test-spot", "rubbing"))
    worst = set(repair_topics(weld, RepairFacts()))
    for material, yes, tested, rubbing in itertools.product(
        ("unknown", "celluloid"), ((), ("mend",)), (None, True), (False, True)
    ):
        found = set(repair_topics(weld, RepairFacts((material,), yes=frozenset(yes), tested=tested, rubbing=rubbing)))
        met |= found
        assert found <= worst
    assert met == worst == {"unknown", "consent", "test spot", "rubbing"}
    assert met < set(TOPICS)


def test_an_unknown_material_is_fit_only_where_any_is():
    assert not fits_material(row(), "unknown")
    assert fits_material(row(materials=("any",)), "unknown")
    assert fits_material(row(), "ABS")


def test_a_weld_stands_one_to_three_weeks():
    found = standing(row(), NOON)
    assert (found.earliest, found.usual) == (NOON + dt.timedelta(days=7), NOON + dt.timedelta(days=21))
    assert not found.typed


@pytest.mark.parametrize(("typed", "days"), [(24 * 10, 10), (24 * 30, 30), (24, 7), (0, 7)])
def test_the_benchs_own_time_counts_but_never_less_than_the_shortest(typed, days):
    found = standing(row(), NOON, typed_h=typed)
    assert found.earliest == found.usual == NOON + dt.timedelta(days=days)
    assert found.typed


def test_what_need_not_stand_has_no_clock_unless_one_is_typed():
    free = row(wait_h=None, wait_to_h=None)
    assert standing(free, NOON) is None
    assert standing(free, NOON, typed_h=0) is None
    assert standing(free, NOON, typed_h=8).usual == NOON + dt.timedelta(hours=8)
    assert standing(row(wait_to_h=None), NOON).usual == NOON + dt.timedelta(hours=168)
    with pytest.raises(InputError, match="0 h or more"):
        standing(row(), NOON, typed_h=-1)


def test_a_way_is_called_by_place_and_method():
    assert row().label == "lip: solvent weld"
    assert row(place="").label == "solvent weld"
