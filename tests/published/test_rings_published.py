"""The ring tables against lists that others keep, and against the formula of the metric standard."""

import csv
import importlib.resources
import importlib.util

import pytest
from outside import Outside
from tables.ring_rule_oracle import check_ring_rows

from pentools import tables
from pentools.calc.seal.formulas import squeeze_share

ROWS = {row["dash"]: row for row in tables.rows("as568")}
CHART = Outside("ring-chart", "ring sizes of AS568")
needs_other_list = pytest.mark.skipif(
    importlib.util.find_spec("bd_warehouse") is None,
    reason="bd_warehouse is not installed: its tables are an outside check only (pip install --no-deps bd_warehouse)",
)


def other_list(name):
    # its data file is read as a resource; nothing of the package is used otherwise
    with (importlib.resources.files("bd_warehouse") / "data" / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_there_are_349_sizes_by_family():
    families = [sum(dash[0] == family for dash in ROWS) for family in "01234"]
    CHART.same(families, [50, 77, 84, 87, 51])


@pytest.mark.parametrize(
    ("dash", "inside_in", "section_in"),
    [
        ("006", "0.114", "0.070"), ("008", "0.176", "0.070"), ("010", "0.239", "0.070"), ("012", "0.364", "0.070"),
        ("112", "0.487", "0.103"), ("210", "0.734", "0.139"), ("236", "3.234", "0.139"), ("237", "3.359", "0.139"),
        ("247", "4.609", "0.139"), ("339", "3.225", "0.210"), ("456", "13.475", "0.275"), ("475", "25.940", "0.275"),
    ],
)  # fmt: skip
def test_sizes_that_charts_print(dash, inside_in, section_in):
    row = ROWS[dash]
    CHART.agree(float(row["inside_in"]), inside_in)
    CHART.agree(float(row["section_in"]), section_in)


def test_a_walk_through_that_mistakes_its_ring_is_not_matched():
    # a public gland reference takes 47.22 mm for the inside of 236 and 50.17 mm for 237: both are wrong
    check = Outside("as568", "millimetres of two sizes that a public walk-through has wrong")
    check.agree(float(ROWS["236"]["inside_mm"]), "82.14")
    check.agree(float(ROWS["237"]["inside_mm"]), "85.32")
    walk_through = [{"dash": dash, "inside_in": f"{mm / 25.4:.3f}"} for dash, mm in (("236", 47.22), ("237", 50.17))]
    assert [fault.dash for fault in check_ring_rows(walk_through)] == ["236", "237"]


@needs_other_list
@pytest.mark.parametrize(
    ("ours", "theirs", "what"),
    [
        ("inside_mm", "iso3601:id", "inside diameters of all 349 rings [mm]"),
        ("section_mm", "iso3601:w", "sections of all 349 rings [mm]"),
        ("inside_tol_mm", "iso3601:id_tol", "tolerances of the inside of all 349 rings [mm]"),
        ("section_tol_mm", "iso3601:w_tol", "tolerances of the section of all 349 rings [mm]"),
    ],
)
def test_all_349_sizes_against_another_list(ours, theirs, what):
    check = Outside("bd-warehouse", what)
    other = {row["Size"]: row for row in other_list("o-ring_parameters.csv")}
    assert set(other) == set(ROWS)
    for dash, row in ROWS.items():
        within = 0.011
        check.agree(
            float(row[ours]),
            float(other[dash][theirs]),
            within=within,
            because="rounded from inches to 0.01 mm by each list",
        )


@needs_other_list
@pytest.mark.parametrize(
    ("name", "least", "most"),
    [
        ("o-ring_dynamic_gland_parameters.csv", "d_min", "d_max"),
        ("o-ring_static_gland_parameters.csv", "d_r_min", "d_r_max"),
    ],
)
def test_squeeze_bands_of_a_gland_chart(name, least, most):
    kind = "moving" if "dynamic" in name else "static"
    check = Outside("bd-warehouse", f"squeeze of {kind} glands, least and most, from depth and section [%]")
    tolerance = {row["section_mm"]: float(row["section_tol_mm"]) for row in ROWS.values()}
    low_name, high_name = ("sq_p_min", "sq_p_max") if kind == "moving" else ("sq_r_p_min", "sq_r_p_max")
    why = "the chart rounds depth to 0.01 mm and the band to a half or a whole per cent"
    for row in other_list(name):
        section, spread = float(row["w"]), tolerance[f"{float(row['w']):.2f}"]
        check.agree(
            100 * squeeze_share(float(row[most]), section - spread), float(row[low_name]), within=1.2, because=why
        )
        check.agree(
            100 * squeeze_share(float(row[least]), section + spread), float(row[high_name]), within=1.2, because=why
        )


@pytest.mark.parametrize(
    ("inside", "tolerance"),
    [("1", "0.12"), ("5", "0.15"), ("10", "0.19"), ("20", "0.26"), ("3", "0.14"), ("40", "0.41")],
)
def test_class_b_tolerance_of_the_metric_table(inside, tolerance):
    # ISO 3601-1 annex A, equation A.1 as one public list quotes it, 0.009 d^0.95 + 0.11, printed to 0.01 mm
    check = Outside("iso3601-1", "class B tolerance of the inside of metric rings [mm]")
    found = {row["inside_tol_mm"] for row in tables.rows("metric_rings") if float(row["inside_mm"]) == float(inside)}
    assert len(found) == 1, found
    check.agree(float(found.pop()), tolerance)


def test_the_whole_metric_table_holds_that_tolerance():
    check = Outside("iso3601-1", "class B tolerance by its equation, every inside diameter of the metric table [mm]")
    for inside in sorted({float(row["inside_mm"]) for row in tables.rows("metric_rings")}):
        (ours,) = {
            float(row["inside_tol_mm"]) for row in tables.rows("metric_rings") if float(row["inside_mm"]) == inside
        }
        check.agree(ours, 0.009 * inside**0.95 + 0.11, within=0.0051, because="rounded to 0.01 mm")
