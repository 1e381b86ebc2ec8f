"""The tables of materials and treatments against themselves and against each other."""

import pytest

from pentools import tables

CERTAINTIES = {"primary", "secondary", "trade", "common practice", "from memory", "judged", "computed"}
READ = {"primary", "secondary", "trade"}
NAMES = ("compatibility", "materials", "joint_sealants", "heat_limits", "cautions", "mixtures", "substance_hazards")
ROWS = tables.rows("compatibility")


@pytest.mark.parametrize("name", NAMES)
def test_every_row_says_how_sure_it_is(name):
    kinds = {source["key"]: source["kind"] for source in tables.sidecar(name)["sources"]}
    for row in tables.rows(name):
        assert row["source"]
        assert row["certainty"] in CERTAINTIES, row
        of_sources = {kinds[key.strip()] for key in row["source"].split(";")}
        if row["certainty"] in READ:
            assert of_sources - {"common practice", "from memory", "judged"}, f"{row} claims to be read"


@pytest.mark.parametrize("name", NAMES)
def test_every_listed_source_is_used(name):
    used = {key.strip() for row in tables.rows(name) for key in row["source"].split(";")}
    assert {source["key"] for source in tables.sidecar(name)["sources"]} == used


def test_the_grid_is_full():
    cells = {(row["material"], row["treatment"]) for row in ROWS}
    materials, treatments = {m for m, _ in cells}, {t for _, t in cells}
    assert (len(materials), len(treatments), len(ROWS), len(cells)) == (27, 21, 567, 567)


def test_every_cell_is_whole():
    for row in ROWS:
        assert row["verdict"] in ("ok", "limited", "never")
        assert row["reason"]
        if row["verdict"] == "limited":
            assert row["limit"], f"{row}: limited, but how far?"
        if row["max_minutes"]:
            assert (float(row["max_minutes"]) == 0) == (row["verdict"] == "never"), row
        if row["verdict"] == "never":
            assert row["max_minutes"] == "0"
            assert not row["max_c"]


def test_minutes_in_words_and_in_figures_agree():
    for row in ROWS:
        words = row["limit"].split()
        if row["max_minutes"] not in ("", "0") and any(word.startswith("minute") for word in words):
            at = next(i for i, word in enumerate(words) if word.startswith("minute"))
            said = {"a": 1.0}.get(words[at - 1]) or float(words[at - 1])
            assert said == float(row["max_minutes"]), row


def test_the_dry_heat_column_is_the_table_of_heat_limits():
    limits = {row["material"]: row for row in tables.rows("heat_limits") if row["rule"] in ("working limit", "no heat")}
    for row in ROWS:
        if row["treatment"] != "dry heat" or row["material"] == "gold nib":  # bare gold: nothing at a bench limits it
            continue
        limit = limits[row["material"]]
        assert limit["value"] == row["max_c"], row
        assert (limit["rule"] == "no heat") == (row["verdict"] == "never"), row


def test_no_body_may_get_warmer_than_where_it_starts_to_soften():
    soft = {}
    for row in tables.rows("materials"):
        if row["property"] == "softens" and row["unit"] == "degC":
            soft[row["material"]] = float(row["low"])
    assert len(soft) >= 5
    for row in tables.rows("heat_limits"):
        if row["rule"] == "working limit" and row["material"] in soft:
            assert float(row["value"]) <= soft[row["material"]], row


def test_nothing_known_to_dissolve_a_body_is_allowed_on_it():
    verdict = {(row["material"], row["treatment"]): row["verdict"] for row in ROWS}
    for row in tables.rows("materials"):
        if "never" in row["text"] and row["property"] == "acetone":
            assert verdict[row["material"], "acetone"] == "never"
    assert verdict["casein", "cold water soak"] == "never"
    assert verdict["gold-filled", "flush mix soak"] == "never"
    assert verdict["latex", "flush mix soak"] == "never"


def test_cautions_name_known_materials_and_actions():
    materials = {row["material"] for row in ROWS} | {"any", "unknown"}
    treatments = {row["treatment"] for row in ROWS}
    actions = set()
    for row in tables.rows("cautions"):
        assert {part.strip() for part in row["materials"].split(";")} <= materials, row
        actions |= {part.strip() for part in row["actions"].split(";")}
    # beside the table's treatments, what else is done at a bench
    others = {
        "any",
        "hot air",
        "waste",
        "storing",
        "cutting",
        "opening",
        "sac work",
        "flame",
        "rosin sealant",
        "luminous paint",
        "acrylic cement",
        "spring work",
        "turning",
        "plating",
        "soldering",
        "welding a nib",
    }
    assert actions - treatments == others
    assert len({row["key"] for row in tables.rows("cautions")}) == len(tables.rows("cautions"))


def test_ends_are_in_order():
    for name in ("materials", "joint_sealants", "mixtures"):
        for row in tables.rows(name):
            if row["low"] and row["high"]:
                assert float(row["low"]) <= float(row["high"]), row
