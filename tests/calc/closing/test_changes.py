"""What a material changes: never against the table of compatibility, and never silent where that says never."""

import pytest

from pentools import tables
from pentools.calc.closing.changes import ChangeRow, action_with, changes_of
from pentools.calc.closing.order import ClosingRow
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits

STEPS = tables.read(ClosingRow, "closing_steps")
ROWS, GRID = tables.read(ChangeRow, "closing_changes"), tables.read(CompatibilityRow, "compatibility")
MATERIALS = list(dict.fromkeys(row.material for row in GRID))


def changed(system, key, body=(), fitted=()):
    step = next(row for row in STEPS if (row.system, row.key) == (system, key))
    return changes_of(step, body, fitted, ROWS, GRID)


def test_every_change_follows_from_a_treatment_that_the_material_does_not_plainly_take():
    steps = {row.key for row in STEPS}
    for row in ROWS:
        assert treatment_limits(row.material, row.treatment, GRID).verdict in ("limited", "never"), row
        assert set(row.steps) <= steps, row
        assert row.words.endswith("."), row


def test_what_a_step_comes_to_is_a_treatment_of_the_table():
    assert {use for row in STEPS for use in row.uses} <= {row.treatment for row in GRID}


@pytest.mark.parametrize("material", MATERIALS)
def test_no_step_comes_to_what_a_body_never_takes_without_a_word(material):
    for row in STEPS:
        never = [use for use in row.uses if treatment_limits(material, use, GRID).verdict == "never"]
        told = [change for change in changes_of(row, [material], (), ROWS, GRID) if change.never]
        assert bool(told) or not never, (row.system, row.key, never)


def test_casein_is_not_soaked_and_celluloid_not_warmed():
    wet = changed("lever-sac", "wet-tested", ["casein"])
    assert [change.never for change in wet] == [True]
    assert "nib alone" in wet[0].words
    assert "No heat" in " ".join(change.words for change in changed("lever-sac", "sealed", ["celluloid"]))
    assert changed("lever-sac", "sealed", ["stainless steel"]) == ()


def test_a_silicone_sac_takes_its_own_adhesive_and_only_where_the_sac_is():
    assert "Silicone adhesive" in changed("lever-sac", "sac-on", (), ["silicone"])[0].words
    assert changed("lever-sac", "sealed", (), ["silicone"]) == ()
    assert "No heat once the new sac is in" in changed("lever-sac", "sealed", (), ["latex"])[0].words


def test_a_body_that_is_not_named_takes_the_strictest_and_is_told_so_once_a_treatment():
    words = [change.words for change in changed("lever-sac", "sealed", ["unknown"])]
    assert len(words) == len(set(words)) == 3
    assert all("not named" in text for text in words)


def test_the_action_itself_says_what_the_materials_leave_of_it():
    for row in ROWS:
        actions = [step.action for step in STEPS if step.key in row.steps]
        assert not row.says or any(row.says in action for action in actions), row
        assert bool(row.says) == bool(row.says_instead), row
    sealed = next(row for row in STEPS if (row.system, row.key) == ("lever-sac", "sealed"))
    assert "warmed" in action_with(sealed, changed("lever-sac", "sealed", ["stainless steel"]))
    assert action_with(sealed, changed("lever-sac", "sealed", ["celluloid"])).endswith("home to its mark, cold.")
    sac = next(row for row in STEPS if (row.system, row.key) == ("lever-sac", "sac-on"))
    assert action_with(sac, changed("lever-sac", "sac-on", [], ["silicone"])).startswith("One thin coat of silicone adhesive")  # fmt: skip
    assert action_with(sac, changed("lever-sac", "sac-on", [], ["latex"])) == sac.action


def test_the_tables_own_no_gives_the_tables_reason_and_for_a_body_not_named_that():
    step = next(row for row in STEPS if "naphtha-based sealant" in row.uses)
    said = {}
    for material in (*MATERIALS, "unknown"):
        said[material] = [
            c.words
            for c in changes_of(step, [material], (), (), GRID)
            if c.words.startswith("No naphtha-based sealant: ")
        ]
    assert said["unknown"] == ["No naphtha-based sealant: the body is not named."]
    never = [m for m in MATERIALS if treatment_limits(m, "naphtha-based sealant", GRID).verdict == "never"]
    assert never
    for material in never:
        assert said[material] == [
            f"No naphtha-based sealant: {treatment_limits(material, 'naphtha-based sealant', GRID).reason}."
        ]
    assert all(said[material] == [] for material in MATERIALS if material not in never)
