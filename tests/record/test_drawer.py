"""The drawer's file: as a spreadsheet writes it, and what is wrong in it said by line, the rest used."""

import csv
import datetime as dt
import io
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.record.drawer import COLUMNS, DRAWER, Item, drawer_template, read_drawer, same_text

HEAD = "kind,what,size,lot,how many,counted on,opened on,keeps,use by,at least,cost,where,remark\n"


def read(folder, text, **bench):
    (folder / DRAWER).write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_drawer(folder, **bench)


def test_every_cell_arrives_in_its_place(tmp_path):
    line = 'sac,latex sac 16,"6,40 mm",bag of May 2026,12,2026-05-20,2026-05-21,6 months,2027-05-01,4,1.20 EUR,box 2,soft\n'
    assert read(tmp_path, HEAD + line).items == (
        Item(2, "sac", "latex sac 16", "6,40 mm", "bag of May 2026", Decimal(12), dt.date(2026, 5, 20), dt.date(2026, 5, 21), 182.625,
             dt.date(2027, 5, 1), Decimal(4), "1.20 EUR", "box 2", "soft"),
    )  # fmt: skip


def test_nothing_said_is_not_nought(tmp_path):
    item = read(tmp_path, "what;kind\nshellac;glue\n").items[0]
    assert item == Item(2, "adhesive", "shellac")
    assert (item.how_many, item.at_least, item.keeps_days, item.cost) == (None, None, None, "")


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_as_spreadsheets_write_it(tmp_path, encoding, sign):
    rows = [
        ["Kind", "WHAT", "How_many", "unknown"],
        ["Ring", "größer", "3", "kept out"],
        ["", "", "", ""],
        ["sac", 'a "b"\nc', "", ""],
    ]
    text = io.StringIO()
    csv.writer(text, delimiter=sign, lineterminator="\r\n").writerows(rows)
    found = read(tmp_path, text.getvalue().encode(encoding))
    assert found.problems == ()
    assert [(item.line, item.kind, item.what, item.how_many) for item in found.items] == [
        (2, "ring", "größer", Decimal(3)), (4, "sac", 'a "b"\nc', None),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("cells", "said", "kept"),
    [
        (
            "sac,a,,,few,,,,,,,,",
            "line 2: how many must be a number, 0 or more: got “few”. The cell is taken as empty.",
            True,
        ),
        ("sac,a,,,-3,,,,,,,,", "line 2: how many", True),
        ("sac,a,,,,3/4/2026,,,,,,,", "line 2: counted on must be one clear date", True),
        ("sac,a,,,,,,soon,,,,,", "line 2: keeps must be a time such as 6 months", True),
        ("sac,a,,,,,,,,,5 gold,,", "line 2: cost must be", True),
        ("thing,a,,,,,,,,,,,", "the kind must be one of ring, sac", True),
        ("sac,,16,,,,,,,,,,", "what it is is missing. The line is passed by.", False),
        ("sac,a,,,,,,,,,,,,one more", "more cells than there are headings", False),
    ],
)
def test_what_is_wrong_is_said_by_line_and_the_rest_is_used(tmp_path, cells, said, kept):
    found = read(tmp_path, f"{HEAD}{cells}\nring,sound,1.78x5.28,,4,,,,,,,,\n", currency="EUR")
    assert len(found.problems) == 1
    assert said in found.problems[0]
    assert [item.what for item in found.items] == (["a"] if kept else []) + ["sound"]


def test_the_bench_s_own_date_order_and_money(tmp_path):
    item = read(tmp_path, HEAD + "sac,a,,,,3/4/2026,,,,,5,,\n", currency="KWD", date_order="day first").items[0]
    assert (item.counted_on, item.cost) == (dt.date(2026, 4, 3), "5.000 KWD")


def test_a_file_that_is_none(tmp_path):
    assert read_drawer(tmp_path) == read(tmp_path, "")
    assert read_drawer(tmp_path).items == ()
    assert "no line of headings" in read(tmp_path, "a,b\n1,2\n").problems[0]
    found = read(tmp_path, HEAD + "sac,,x\n" * 60)
    assert len(found.problems) == 41
    assert "20 more" in found.problems[-1]
    (tmp_path / DRAWER).unlink()
    (tmp_path / DRAWER).mkdir()
    assert "is no file" in read_drawer(tmp_path).problems[0]


def test_the_template_is_read_back(tmp_path):
    found = read(tmp_path, drawer_template(), currency="EUR")
    assert found.problems == ()
    assert (found.items[0].what, found.items[0].how_many, found.items[0].at_least) == ("latex sac 16", 12, 4)
    assert next(csv.reader(drawer_template().splitlines())) == list(COLUMNS)


@given(st.binary(max_size=300))
def test_anything_is_read_or_said(tmp_path_factory, raw):
    folder = tmp_path_factory.mktemp("drawer")
    found = read(folder, b"kind,what\n" + raw)
    assert all(item.what for item in found.items)


def test_how_texts_are_compared():
    assert same_text("  Bag of MAY–2026,  no. 7 ") == same_text("bag OF may 2026 no 7")
    assert same_text("1,78 × 5,28") == "1.78 5.28"
    assert same_text("lot 7") != same_text("lot 70")
