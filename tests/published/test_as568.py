"""The ring tables against lists that others keep, and against the formula of the metric standard."""

import csv
import importlib.resources
import importlib.util

import pytest
from tables.ring_rule_oracle import check_ring_rows

from pentools import tables
from pentools.calc.seal.formulas import squeeze_share

ROWS = {row["dash"]: row for row in tables.rows("as568")}
HAVE_OTHER_LIST = importlib.util.find_spec("bd_warehouse") is not None
needs_other_list = pytest.mark.skipif(
    not HAVE_OTHER_LIST,
    reason="bd_warehouse is not installed: its tables are an outside check only (pip install --no-deps bd_warehouse)",
)


def class_b_tolerance_mm(inside_mm):
    """ISO 3601-1 annex A, equation A.1, as one public list quotes it."""
    return 0.009 * inside_mm**0.95 + 0.11


def other_list(name):
    # its data file is read as a resource; nothing of the package is used otherwise
    with (importlib.resources.files("bd_warehouse") / "data" / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_there_are_349_sizes_by_family():
    # count by family: three public lists agree (50, 77, 84, 87, 51)
    assert len(ROWS) == 349
    families = [sum(dash[0] == family for dash in ROWS) for family in "01234"]
    assert families == [50, 77, 84, 87, 51]


@pytest.mark.parametrize(
    ("dash", "inside_in", "section_in"),
    [
        # AS568 values as printed in a ring maker's quick-reference chart and two open lists
        ("006", 0.114, 0.070), ("008", 0.176, 0.070), ("010", 0.239, 0.070), ("012", 0.364, 0.070), ("112", 0.487, 0.103),
        ("210", 0.734, 0.139), ("236", 3.234, 0.139), ("237", 3.359, 0.139), ("247", 4.609, 0.139), ("339", 3.225, 0.210),
        ("456", 13.475, 0.275), ("475", 25.940, 0.275),
    ],
)  # fmt: skip
def test_sizes_that_charts_print(dash, inside_in, section_in):
    row = ROWS[dash]
    assert float(row["inside_in"]) == inside_in
    assert float(row["section_in"]) == section_in


def test_a_walk_through_that_mistakes_its_ring_is_not_matched():
    # a public gland reference takes 47.22 mm for the inside of 236 and 50.17 mm for 237: both are wrong
    assert float(ROWS["236"]["inside_mm"]) == pytest.approx(82.14, abs=0.005)
    assert float(ROWS["237"]["inside_mm"]) == pytest.approx(85.32, abs=0.005)
    for dash, wrong in (("236", 47.22), ("237", 50.17)):
        assert abs(float(ROWS[dash]["inside_mm"]) - wrong) > 30
    walk_through = [
        {"dash": dash, "inside_in": f"{wrong / 25.4:.3f}"} for dash, wrong in (("236", 47.22), ("237", 50.17))
    ]
    assert [fault.dash for fault in check_ring_rows(walk_through)] == ["236", "237"]


@needs_other_list
def test_all_349_sizes_against_another_list():
    # bd_warehouse 0.4.0 (Apache-2.0), O-ring table, mm, printed to 0.01; an inch row may round the other way
    other = {row["Size"]: row for row in other_list("o-ring_parameters.csv")}
    assert set(other) == set(ROWS)
    for dash, row in ROWS.items():
        theirs = other[dash]
        assert float(row["inside_mm"]) == pytest.approx(float(theirs["iso3601:id"]), abs=0.011), dash
        assert float(row["section_mm"]) == pytest.approx(float(theirs["iso3601:w"]), abs=0.011), dash
        assert float(row["inside_tol_mm"]) == pytest.approx(float(theirs["iso3601:id_tol"]), abs=0.011), dash
        assert float(row["section_tol_mm"]) == pytest.approx(float(theirs["iso3601:w_tol"]), abs=0.011), dash


@needs_other_list
@pytest.mark.parametrize(
    ("name", "least", "most"),
    [
        ("o-ring_dynamic_gland_parameters.csv", "d_min", "d_max"),
        ("o-ring_static_gland_parameters.csv", "d_r_min", "d_r_max"),
    ],
)
def test_squeeze_bands_of_a_gland_chart(name, least, most):
    # its bands in per cent come from depth and section with the section's tolerance; whole or half per cents printed
    tolerance = {row["section_mm"]: float(row["section_tol_mm"]) for row in ROWS.values()}
    low_name, high_name = ("sq_p_min", "sq_p_max") if "dynamic" in name else ("sq_r_p_min", "sq_r_p_max")
    for row in other_list(name):
        section, spread = float(row["w"]), tolerance[f"{float(row['w']):.2f}"]
        low = 100 * squeeze_share(float(row[most]), section - spread)
        high = 100 * squeeze_share(float(row[least]), section + spread)
        assert low == pytest.approx(float(row[low_name]), abs=1.2), row
        assert high == pytest.approx(float(row[high_name]), abs=1.2), row


@pytest.mark.parametrize(
    ("inside", "tolerance"), [(1, 0.12), (5, 0.15), (10, 0.19), (20, 0.26), (50, 0.48), (100, 0.82)]
)
def test_class_b_tolerance(inside, tolerance):
    # ISO 3601-1 annex A, equation A.1, as one public list quotes it; printed to 0.01 mm
    assert class_b_tolerance_mm(inside) == pytest.approx(tolerance, abs=0.0051)


def test_the_metric_table_holds_that_tolerance():
    for row in tables.rows("metric_rings"):
        assert float(row["inside_tol_mm"]) == pytest.approx(
            class_b_tolerance_mm(float(row["inside_mm"])), abs=0.0051
        ), row
