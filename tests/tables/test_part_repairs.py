"""The table of repairs against itself and against the tables it rests on."""

import pytest

from pentools import tables
from pentools.calc.repairs.fitness import NEEDS, RepairRow
from pentools.calc.treatment.cautions import CautionRow
from pentools.calc.treatment.limits import CompatibilityRow
from pentools.errors import InputError
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.tables.part_repairs import repair_choices, repair_row, repairs_for
from pentools.words import CERTAINTY

ROWS = tables.read(RepairRow, "part_repairs")
COMPATIBLE = {(r.material, r.treatment): r.verdict for r in tables.read(CompatibilityRow, "compatibility")}
MATERIALS = {material for material, _ in COMPATIBLE}
IDS = [row.key for row in ROWS]


def test_each_way_has_a_name_of_its_own_and_a_label_within_its_part():
    assert len(set(IDS)) == len(ROWS)
    for part, _ in PARTS:
        labels = [(row.label, row.fault) for row in repairs_for(part)]
        assert len(set(labels)) == len(labels)


@pytest.mark.parametrize("row", ROWS, ids=IDS)
def test_a_row_names_only_what_there_is(row):
    assert row.part in dict(PARTS)
    assert row.materials == ("any",) or set(row.materials) <= MATERIALS
    assert set(row.needs) <= set(NEEDS)
    assert {row.consent, *row.stopped_by} - {""} <= set(dict(ACTIONS))
    assert not row.treatment or row.treatment in {treatment for _, treatment in COMPATIBLE}
    assert set(row.cautions) <= {c.key for c in tables.read(CautionRow, "cautions")}
    assert row.certainty in CERTAINTY
    assert (row.wait_h is None) == (row.wait_to_h is None) == (not row.until)
    assert row.wait_h is None or row.wait_to_h is None or 0 < row.wait_h <= row.wait_to_h
    assert row.method
    assert row.how


@pytest.mark.parametrize("row", [r for r in ROWS if r.treatment and r.materials != ("any",)], ids=lambda r: r.key)
def test_no_way_is_fit_for_what_the_table_of_limits_forbids(row):
    assert [m for m in row.materials if COMPATIBLE[m, row.treatment] == "never"] == []


def test_what_dissolves_or_colours_or_cuts_the_body_asks_first():
    """Nothing that cannot be undone goes on without the owner's yes; solvent and colour not without a trial either."""
    for row in ROWS:
        if row.reversible == "no":
            assert row.consent, row.key
        if row.treatment == "solvent weld":
            assert "named" in row.needs
            assert row.wait_h is not None
        if row.treatment == "solvent weld" and row.consent == "mend":
            assert "test-spot" in row.needs, row.key


def test_leaving_a_part_asks_for_nothing():
    """Who leaves a part as it is needs neither a yes nor a tool, and can go back on it."""
    left = [row for row in ROWS if row.leaves]
    assert len(left) > 5
    for row in left:
        assert (row.consent, row.cautions, row.treatment, row.wait_h) == ("", (), "", None), row.key


def test_what_is_done_elsewhere_waits_for_a_yes_to_sending():
    assert {row.consent for row in ROWS if row.sent} == {"send out"}


def test_no_way_cuts_an_imprint():
    assert {row.key for row in repairs_for("imprint")} == {"imprint-leave", "imprint-fill"}
    assert all(row.reversible != "no" for row in repairs_for("imprint"))


def test_a_way_is_found_by_its_name():
    assert repair_row("cap-lip-weld").part == "cap"
    assert dict(repair_choices())["cap-lip-weld"] == "lip: solvent weld"
    with pytest.raises(InputError, match="one of cap-lip-weld"):
        repair_row("glue it")
    assert repairs_for("seals") == ()
