"""Threads against the printed tables of BA and Whitworth, the rule of BA, and the lists of another package."""

import csv
import importlib.resources
import importlib.util
import re

import pytest
from outside import Outside

from pentools import tables
from pentools.calc.seal.threads import lead_mm

ROWS = tables.rows("thread_series")
THREADS = {(row["series"], row["designation"]): row for row in ROWS}
needs_other_list = pytest.mark.skipif(
    importlib.util.find_spec("bd_warehouse") is None, reason="bd_warehouse is not installed: an outside check only"
)

# BS 93 as printed: number -> pitch, major diameter [mm]
BA = {
    0: ("1.00", "6.0"), 1: ("0.90", "5.3"), 2: ("0.81", "4.7"), 3: ("0.73", "4.1"), 4: ("0.66", "3.6"), 5: ("0.59", "3.2"),
    6: ("0.53", "2.8"), 7: ("0.48", "2.5"), 8: ("0.43", "2.2"), 9: ("0.39", "1.9"), 10: ("0.35", "1.7"), 11: ("0.31", "1.5"),
    12: ("0.28", "1.3"), 13: ("0.25", "1.2"), 14: ("0.23", "1.0"), 15: ("0.21", "0.90"), 16: ("0.19", "0.79"),
}  # fmt: skip

# BS 84 as a supplier's table and a chart print them: size -> major diameter [in], threads in an inch
WHITWORTH = {
    "1/16": ("0.0625", "60"), "3/32": ("0.0937", "48"), "1/8": ("0.1250", "40"), "5/32": ("0.1563", "32"),
    "3/16": ("0.1875", "24"), "7/32": ("0.2187", "24"), "1/4": ("0.2500", "20"), "5/16": ("0.3125", "18"),
    "3/8": ("0.3750", "16"), "7/16": ("0.4375", "14"), "1/2": ("0.5000", "12"), "5/8": ("0.6250", "11"),
    "3/4": ("0.7500", "10"), "7/8": ("0.8750", "9"), "1": ("1.0000", "8"),
}  # fmt: skip


def library(name):
    with (importlib.resources.files("bd_warehouse") / "data" / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def row_of(pitch_mm, major_mm):
    """Our row of that pitch and diameter; the nearest, so that a wrong cell is shown and not passed over."""
    same = [row for row in ROWS if row["major_mm"] and abs(float(row["major_mm"]) - major_mm) < 0.02]
    return min(same, key=lambda row: abs(float(row["pitch_mm"]) - pitch_mm))


@pytest.mark.parametrize("number", BA)
def test_ba_table_and_rule(number):
    check = Outside("bs93", "BA threads as printed: pitch, major diameter, angle")
    pitch, major = BA[number]
    row = THREADS["BA", f"{number} BA"]
    check.agree(float(row["pitch_mm"]), pitch)
    check.agree(float(row["major_mm"]), major)
    check.agree(float(row["angle_deg"]), "47.5")
    # the rule, each figure rounded by itself as the series prints it
    rule = Outside("bs93", "BA threads by the rule p = 0.9^n, D = 6 p^1.2")
    rule.agree(float(row["pitch_mm"]), 0.9**number, within=0.0051, because="rounded to 0.01 mm")
    rule.agree(
        float(row["major_mm"]),
        6 * 0.9 ** (1.2 * number),
        within=0.051 if number < 15 else 0.0051,
        because="two figures",
    )


@pytest.mark.parametrize("number", range(17, 26))
def test_the_smallest_ba_threads_by_the_rule(number):
    rule = Outside("bs93", "BA threads 17 to 25 by the rule p = 0.9^n, D = 6 p^1.2")
    row = THREADS["BA", f"{number} BA"]
    rule.agree(float(row["pitch_mm"]), 0.9**number, within=0.0051, because="rounded to 0.01 mm")
    rule.agree(float(row["major_mm"]), 6 * 0.9 ** (1.2 * number), within=0.0051, because="rounded to two figures")


@pytest.mark.parametrize("size", WHITWORTH)
def test_whitworth_table(size):
    check = Outside("bs84", "Whitworth threads as printed: major diameter [in] and threads in an inch")
    major, tpi = WHITWORTH[size]
    row = THREADS["BSW", f"{size} BSW"]
    check.agree(
        float(row["major_mm"]) / 25.4, major, within=0.00006, because="cut off or rounded, from one table to the next"
    )
    check.agree(25.4 / float(row["pitch_mm"]), tpi)
    check.agree(float(row["angle_deg"]), "55")


def test_leads_that_makers_state():
    check = Outside("makers-threads", "leads of several starts")
    check.agree(lead_mm(0.8, 3), "2.4")
    check.agree(lead_mm(25.4 / 30, 3) / 25.4, "0.1")
    check.agree(float(THREADS["multi-start", "30 TPI triple"]["lead_mm"]) / 25.4, "0.1")
    check.agree(float(THREADS["multi-start", "13x0.8 triple"]["lead_mm"]), "2.4")
    check.agree(float(THREADS["BA", "25 BA"]["major_mm"]), "0.25")


@needs_other_list
def test_pipe_threads_against_another_list():
    check = Outside("bd-warehouse", "pipe threads of ISO 228-1: threads in an inch, major diameter [mm]")
    other = {f"G{row['size']}": row for row in library("iso_228_1.csv")}
    ours = {name: row for (series, name), row in THREADS.items() if series.startswith("BSPP")}
    assert ours
    for name, row in ours.items():
        why = "both printed to 0.001 mm"
        check.agree(float(row["tpi"]), float(other[name]["tpi"]), within=1e-9, because="whole numbers")
        check.agree(float(row["major_mm"]), float(other[name]["major_diameter"]), within=0.0005, because=why)


def sizes(names):
    return sorted({row[next(iter(row))] for name in names for row in library(name)})


@needs_other_list
def test_metric_threads_against_the_sizes_of_screws():
    check = Outside("bd-warehouse", "metric threads named in the sizes of screws: diameter and pitch [mm]")
    found = {re.fullmatch(r"M([\d.]+)-([\d.]+)", size) for size in sizes(
        ["socket_head_cap_parameters.csv", "setscrew_parameters.csv", "pan_head_parameters.csv"]
    )}  # fmt: skip
    pairs = {(float(m[1]), float(m[2])) for m in found if m and 1 <= float(m[1]) <= 20}
    assert len(pairs) > 15
    for major, pitch in sorted(pairs):
        metric = [row for row in ROWS if row["series"] == "ISO metric" and float(row["major_mm"]) == major]
        if not metric:  # an old size that the series has not, such as M1.5
            continue
        row = min(metric, key=lambda row, pitch=pitch: abs(float(row["pitch_mm"]) - pitch))
        check.agree(float(row["pitch_mm"]), pitch, within=1e-9, because="the name of the screw")
        check.agree(float(row["major_mm"]), major, within=1e-9, because="the name of the screw")


@needs_other_list
def test_unified_threads_against_the_sizes_of_screws():
    check = Outside("bd-warehouse", "unified threads named in the sizes of screws: threads in an inch, diameter [mm]")
    count = 0
    for size in sizes(["imperial_set_screw_parameters.csv"]):
        name, tpi = size.rsplit("-", 1)
        inches = 0.060 + 0.013 * int(name[1:]) if name.startswith("#") else eval(name)
        if inches > 0.76 or size == "#4-36":  # an old size that the series has not
            continue
        row = row_of(25.4 / int(tpi), 25.4 * inches)
        check.agree(25.4 / float(row["pitch_mm"]), float(tpi), within=0.01, because="pitches are kept to 0.0001 mm")
        check.agree(float(row["major_mm"]), 25.4 * inches, within=0.006, because="kept to 0.01 mm")
        count += 1
    assert count > 20
