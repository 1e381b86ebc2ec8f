"""Threads against the printed table of BA, the rule of its series, and the list of another package."""

import csv
import importlib.resources
import importlib.util

import pytest

from pentools import tables
from pentools.calc.seal.threads import lead_mm

THREADS = {(row["series"], row["designation"]): row for row in tables.rows("thread_series")}

# BS 93 as printed in an encyclopaedia's table and an open list: number -> pitch, major diameter [mm]
PRINTED = {
    0: (1.00, 6.0), 1: (0.90, 5.3), 2: (0.81, 4.7), 3: (0.73, 4.1), 4: (0.66, 3.6), 5: (0.59, 3.2), 6: (0.53, 2.8),
    7: (0.48, 2.5), 8: (0.43, 2.2), 9: (0.39, 1.9), 10: (0.35, 1.7), 11: (0.31, 1.5), 12: (0.28, 1.3), 13: (0.25, 1.2),
    14: (0.23, 1.0), 15: (0.21, 0.90), 16: (0.19, 0.79),
}  # fmt: skip


def ba_thread(number):
    """Pitch and major diameter of a BA thread by the rule of BS 93, each rounded as it is printed [mm]."""
    pitch = 0.9**number
    return round(pitch, 2), float(f"{6 * pitch**1.2:.2g}")


@pytest.mark.parametrize("number", PRINTED)
def test_ba_rule_and_table_give_the_printed_sizes(number):
    assert ba_thread(number) == pytest.approx(PRINTED[number], abs=1e-9)
    row = THREADS["BA", f"{number} BA"]
    assert (float(row["pitch_mm"]), float(row["major_mm"])) == pytest.approx(PRINTED[number], abs=1e-9)
    assert float(row["angle_deg"]) == 47.5


def test_the_smallest_ba_thread():
    # a tap maker's page: 25 BA is 0.25 mm
    assert ba_thread(25)[1] == pytest.approx(0.25, abs=0.005)


def test_leads_that_makers_state():
    # makers of new pens on a forum: 13 x 0.8 with three starts has a lead of 2.4 mm; 30 in an inch, three starts, 0.1 in
    assert lead_mm(0.8, 3) == pytest.approx(2.4, abs=0.05)
    assert lead_mm(25.4 / 30, 3) == pytest.approx(2.54, abs=0.005)
    assert float(THREADS["multi-start", "30 TPI triple"]["lead_mm"]) == pytest.approx(2.54, abs=0.005)


@pytest.mark.skipif(
    importlib.util.find_spec("bd_warehouse") is None, reason="bd_warehouse is not installed: an outside check only"
)
def test_pipe_threads_against_another_list():
    # bd_warehouse 0.4.0 (Apache-2.0), table of ISO 228-1
    with (importlib.resources.files("bd_warehouse") / "data" / "iso_228_1.csv").open(
        encoding="utf-8", newline=""
    ) as file:
        other = {f"G{row['size']}": row for row in csv.DictReader(file)}
    ours = {name: row for (series, name), row in THREADS.items() if series.startswith("BSPP")}
    assert ours
    for name, row in ours.items():
        assert float(row["tpi"]) == float(other[name]["tpi"])
        assert float(row["major_mm"]) == pytest.approx(float(other[name]["major_diameter"]), abs=0.0005)
