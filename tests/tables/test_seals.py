"""The tables of seals checked against themselves, and the check checked with lists that are wrong."""

import pytest
from tables.ring_rule_oracle import DASH_COUNT, check_ring_rows, dash_inside_in, dash_section_in

from pentools import tables
from pentools.errors import InputError
from pentools.tables import seals


def test_no_row_of_the_ring_table_breaks_the_rule():
    rows = tables.rows("as568")
    assert check_ring_rows(rows) == ()
    assert len(rows) == DASH_COUNT
    assert [row["dash"] for row in rows] == sorted(row["dash"] for row in rows)
    assert sum(dash_inside_in(dash) is not None for dash in range(1000)) == DASH_COUNT


def test_tolerances_are_inches_and_grow_with_the_ring():
    last = {}
    for row in tables.rows("as568"):
        for name in ("inside_tol", "section_tol"):
            assert float(row[f"{name}_mm"]) == pytest.approx(25.4 * float(row[f"{name}_in"]), abs=0.0051), row
        family = (row["dash"][0], row["section_in"])
        assert float(row["inside_tol_in"]) >= last.get(family, 0.0), row
        last[family] = float(row["inside_tol_in"])


def arithmetic_series():
    """A list of the shape of a published one: a made-up arithmetic series, of which few rows can be right."""
    for family, first, last, start, step in (
        ("0", 1, 50, 0.029, 0.0313),
        ("1", 102, 178, 0.049, 0.0625),
        ("2", 201, 284, 0.171, 0.0625),
        ("3", 309, 375, 0.412, 0.0625),
    ):
        for dash in range(first, last + 1):
            yield {
                "dash": f"{dash:03d}",
                "inside_in": f"{start + step * (dash - first):.3f}",
                "section_in": f"{dash_section_in(dash) or 0.07:.3f}",
            }
            assert family == f"{dash:03d}"[0]


def test_a_made_up_arithmetic_series_is_caught():
    # a public list of AS568 is such a series, 264 of its 278 rows wrong (four lists compared)
    wrong = list(arithmetic_series())
    assert len(wrong) == 278
    truth = {row["dash"]: row for row in tables.rows("as568")}
    really_wrong = {
        row["dash"] for row in wrong if abs(float(row["inside_in"]) - float(truth[row["dash"]]["inside_in"])) > 0.0011
    }
    found = {fault.dash for fault in check_ring_rows(wrong)}
    assert found == really_wrong
    assert len(found) > 200


def test_a_cheat_sheet_with_seven_wrong_rows_and_a_size_that_does_not_exist_is_caught():
    # a public sheet has 7 of 28 sampled rows wrong (104, 312, 318, 325, 335, 345, 440) and a size 200
    truth = {row["dash"]: dict(row) for row in tables.rows("as568")}
    wrong_dashes = ["104", "312", "318", "325", "335", "345", "440"]
    right = [
        "006",
        "008",
        "010",
        "012",
        "014",
        "020",
        "030",
        "110",
        "112",
        "116",
        "120",
        "130",
        "150",
        "210",
        "214",
        "222",
        "230",
        "240",
        "310",
        "340",
        "425",
    ]
    sheet = [
        {"dash": dash, "inside_in": truth[dash]["inside_in"], "section_in": truth[dash]["section_in"]}
        for dash in [*right, *wrong_dashes]
    ]
    assert len(sheet) == 28
    for row in sheet:
        if row["dash"] in wrong_dashes:  # a step too far, as if the line above had been read: on the grid, yet wrong
            row["inside_in"] = truth[f"{int(row['dash']) + 1:03d}"]["inside_in"]
    sheet.append({"dash": "200", "inside_in": "0.109", "section_in": "0.139"})
    faults = check_ring_rows(sheet)
    assert [fault.dash for fault in faults] == [*wrong_dashes, "200"]
    assert faults[-1].reason == "there is no such size"


def test_a_swapped_section_a_slip_in_millimetres_and_a_double_row_are_caught():
    good = {"dash": "008", "inside_in": "0.176", "section_in": "0.070", "inside_mm": "4.47", "section_mm": "1.78"}
    assert check_ring_rows([good]) == ()
    assert "family" in check_ring_rows([{**good, "section_in": "0.103"}])[0].reason
    assert "mm" in check_ring_rows([{**good, "inside_mm": "4.74"}])[0].reason
    assert "twice" in check_ring_rows([good, good])[0].reason


def test_metric_rings_hold_the_sections_that_are_stocked():
    sections = {row["section_mm"] for row in tables.rows("metric_rings")}
    assert sections == {"1.0", "1.5", "1.6", "1.78", "1.9", "2.0", "2.4", "2.5", "2.62", "3.0"}
    names = [row["designation"] for row in tables.rows("metric_rings")]
    assert len(names) == len(set(names))


def test_threads_agree_with_themselves():
    for row in tables.rows("thread_series"):
        pitch = float(row["pitch_mm"])
        if row["tpi"]:
            assert pitch == pytest.approx(25.4 / float(row["tpi"]), abs=0.0001), row
        assert float(row["lead_mm"]) == pytest.approx(pitch * int(row["starts"]), abs=0.0002), row
        if row["major_mm"]:
            assert pitch < float(row["major_mm"]), row
    assert len(seals.threads()) == 355


def test_sac_sizes_are_what_their_names_say():
    materials = {}
    for row in tables.rows("sac_sizes"):
        materials.setdefault(row["material"], []).append(float(row["nominal_mm"]))
        if row["number"]:
            assert row["size"] == f"number {row['number']}"
            assert float(row["nominal_mm"]) == pytest.approx(int(row["number"]) * 25.4 / 64, abs=0.0006)
        else:
            assert row["size"] == f"{float(row['nominal_mm']):.1f} mm tube"
    assert {name: len(sizes) for name, sizes in materials.items()} == {"latex": 24, "silicone": 7, "PVC": 11}
    assert all(sizes == sorted(sizes) for sizes in materials.values())
    assert [size.number for size in seals.sac_sizes("silicone")] == [14, 15, 16, 17, 18, 19, 20]
    assert seals.sac_sizes("PVC")[0].number is None
    assert seals.sac_sizes("pleated") == ()
    assert "batch of latex 18s" in seals.sac_note("latex", "number 18")
    assert seals.sac_note("latex", "number 99") == ""


def test_elastomers_and_lubricants_speak_of_the_same_rubbers():
    rubbers = {row["elastomer"] for row in tables.rows("elastomers")}
    assert {row["elastomer"] for row in tables.rows("lubricants")} == rubbers
    assert {row["rating"] for row in tables.rows("elastomers")} <= {"E", "G", "F", "P", ""}
    media = {row["medium"] for row in tables.rows("elastomers")} - {"note on use"}
    pairs = {(row["elastomer"], row["medium"]) for row in tables.rows("elastomers")}
    assert all((rubber, medium) in pairs for rubber in rubbers for medium in media)


def test_lists_and_duties_that_are_not_there_are_refused():
    with pytest.raises(InputError, match="one of"):
        seals.duty("sliding")
    with pytest.raises(InputError, match="one of"):
        seals.rings("inch")


def test_a_ring_is_read_whole():
    ring = next(r for r in seals.rings("as568") if r.designation == "008")
    sizes = (ring.inside_mm, ring.section_mm, ring.inside_half_width_mm, ring.section_half_width_mm, ring.measured)
    assert sizes == (4.47, 1.78, 0.13, 0.08, False)
