"""Which material a solvent welds, and how long a mend stands, against what others say."""

import re

import pytest
from outside import Outside

from pentools import tables
from pentools.calc.repairs.fitness import RepairRow, fits_material
from pentools.calc.treatment.cautions import CautionRow
from pentools.tables.part_repairs import repair_row
from pentools.units import convert

WELDS = [row for row in tables.read(RepairRow, "part_repairs") if row.method.startswith("solvent weld")]


@pytest.mark.parametrize(
    ("source", "material", "welds"),
    [
        # a handbook dissolves celluloid in acetone and amyl acetate and joins broken pieces with it
        ("formulas-celluloid", "celluloid", True),
        # a dealer's page: no solvent welds hard rubber; forum threads: a sleeve is the mend
        ("trade-repairs", "hard rubber", False),
        ("trade-repairs", "casein", False),
        # decaying nitrate: a weld does not hold
        ("trade-repairs", "degrading celluloid", False),
    ],
)
def test_solvents_weld_what_they_dissolve(source, material, welds):
    check = Outside(source, f"a solvent welds {material}")
    for row in WELDS:
        check.same(fits_material(row, material), welds)


def caution(key):
    row: CautionRow = next(c for c in tables.read(CautionRow, "cautions") if c.key == key)
    return row


def test_the_figures_of_the_weld_solvent_are_those_of_the_safety_summary():
    figures = [f.replace("−", "-") for f in re.findall(r"−?\d+(?:\.\d+)?", caution("ketone-mek").hazard)]
    check = Outside(
        "prudent-mek", "methyl ethyl ketone: flash point °C, limits in air %, ppm over a day and for 15 min"
    )
    for ours, printed in zip(figures, ("-9", "1.9", "11", "200", "300"), strict=False):
        check.agree(ours, printed)


def test_acrylic_is_cemented_no_colder_than_the_sheet_makers_allow():
    """A maker and a supplier say not under 60 °F, another 65 °F; ours is the stricter."""
    coldest = float(re.search(r"below (\d+) °C", repair_row("cap-lip-cement").limit)[1])
    check = Outside("acrylic-sheet-page", "coldest room to cement acrylic in, °F at least")
    check.agree(
        convert(coldest, "degC", "degF"),
        "60",
        within=6.0,
        because="65 °F by another maker is taken: the stricter, rounded to a degree",
    )
    assert convert(coldest, "degC", "degF") >= 60


@pytest.mark.parametrize(
    ("key", "shortest_h", "longest_h"),
    [
        ("cap-lip-weld", "168", "504"),  # one to three weeks before any abrasive
        ("section-coat", "8", "8"),  # at least eight hours between coats
        ("cap-lip-piece", "504", "504"),  # three weeks before it is turned
    ],
)
def test_mends_stand_as_long_as_repairers_say(key, shortest_h, longest_h):
    check = Outside("trade-repairs", f"{key}: hours it stands")
    row = repair_row(key)
    check.agree(row.wait_h, shortest_h)
    check.agree(row.wait_to_h, longest_h)
