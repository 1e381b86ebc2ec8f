"""What lies in the drawer as text: sacs by number or measured, washers and sheets; what cannot be read is said."""

import pytest

from pentools.errors import InputError
from pentools.sums.seal.drawer import InDrawer, read_sacs, read_washers


def test_sacs_by_number_and_by_size():
    found = read_sacs(["latex 16", "bag of May=latex sac 6,40 mm", "LATEX 1/4 in", "silicone 17"], "latex")
    assert [(one.label, round(one.outside_mm, 2), one.number) for one in found] == [
        ("latex 16", 6.35, 16), ("bag of May", 6.4, None), ("LATEX 1/4 in", 6.35, None),
    ]  # fmt: skip
    assert [one.label for one in read_sacs(["pvc 16", "latex 16"], "PVC")] == ["pvc 16"]


@pytest.mark.parametrize(
    "text", ["16", "rubber 16", "latex", "latex 4", "latex 16.5", "latex 60 mm", "latex sixteen", ""]
)
def test_a_sac_that_cannot_be_read(text):
    with pytest.raises(InputError):
        read_sacs([text], "latex")


def test_washers_and_sheets():
    assert read_washers(["washer 8,5 x 1.5 mm", "mine=cork ring 9.6×4.2", "sheet 0.64", "cork sheet 1/4 in"]) == (
        InDrawer("washer 8,5 x 1.5 mm", "washer", 8.5, 1.5), InDrawer("mine", "cork", 9.6, 4.2),
        InDrawer("sheet 0.64", "sheet", thickness_mm=0.64), InDrawer("cork sheet 1/4 in", "cork sheet", thickness_mm=6.35),
    )  # fmt: skip


@pytest.mark.parametrize(
    "text", ["washer 1.5 x 8.5", "washer 8.5", "sheet", "sheet 50 mm", "8.5 x 1.5", "washer 40 x 2", ""]
)
def test_a_washer_that_cannot_be_read(text):
    with pytest.raises(InputError):
        read_washers([text])
