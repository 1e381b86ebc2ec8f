"""Tables written for other programs: read back by pandas and DuckDB, and nothing in them runs when it is opened."""

import datetime as dt
import sys
from decimal import Decimal

import duckdb
import openpyxl
import pandas as pd
import pytest

from pentools.books.cells import RUNS, defused
from pentools.books.tables import written as tables_out
from pentools.books.tables.columns import packed
from pentools.books.tables.frames import frame
from pentools.books.tables.ledger import ledger
from pentools.books.tables.written import plain_rows, write_csv, write_parquet, write_workbook
from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job

EVIL = ["=1+1", "+1", "-2 mm", "@SUM(A1)", "\t=1", "\r=1", " =1", "\n@x", "＝1"]
KIND = ["9.6 mm", "a = b", "it’s -2", "'quoted", "ünïcode, “ink”; ±", 'with "quotes",\nand a line']


@pytest.fixture
def odd():
    count = len(EVIL) + len(KIND)
    return frame({
        "text": packed("text", EVIL + KIND),
        "kind": packed("category", EVIL + KIND),
        "mass_g": packed("number", [-1.5, None] + [2.25] * (count - 2)),
        "strokes": packed("count", [-3, None] + [4] * (count - 2)),
        "dry": packed("yes-no", [True, None] + [False] * (count - 2)),
        "day": packed("day", ["2026-03-09", None, "0001-01-01"] + ["1969-12-31"] * (count - 3)),
        "at_utc": packed("moment", [1_773_217_878_250_000] * count),
        "cost": packed("money", ["4.50", None, "1234.567"] + ["0"] * (count - 3)),
    })  # fmt: skip


def asked(question):
    """What an outside engine answers."""
    with duckdb.connect() as engine:
        return engine.execute(question).fetchall()


def harmless(text):
    return not text.lstrip().startswith(RUNS)


def test_texts_that_would_run_have_an_apostrophe_before_them_and_others_are_as_they_were():
    assert [defused(text) for text in EVIL] == [f"'{text}" for text in EVIL]
    assert [defused(text) for text in KIND] == KIND


def test_csv_read_back_by_pandas(odd, tmp_path):
    path = tmp_path / "table.csv"
    assert write_csv(odd, path) is False
    back = pd.read_csv(
        path, parse_dates=["at_utc"], dtype={"text": str, "kind": str}, keep_default_na=False, na_values=[""]
    )
    assert list(back) == list(odd)
    assert all(harmless(text) for name in ("text", "kind") for text in back[name])
    for name in ("text", "kind"):
        assert [text.replace("\r\n", "\n") for text in back[name]] == [defused(text) for text in EVIL + KIND]
    for name in ("mass_g", "strokes"):
        assert back[name].isna().tolist() == odd[name].isna().tolist()
        assert back[name].dropna().tolist() == odd[name].dropna().tolist()
    assert back["mass_g"].min() == -1.5
    assert back["day"].tolist()[0] == "2026-03-09"
    assert back["cost"].sum() == pytest.approx(1239.067)
    assert back["at_utc"][0] == pd.Timestamp("2026-03-11T08:31:18.250Z")
    assert path.stat().st_mode & 0o077 == 0
    assert write_csv(odd.head(1), path) is True
    assert len(pd.read_csv(path)) == 1
    assert list(tmp_path.iterdir()) == [path]


def test_a_workbook_read_back_by_pandas(odd, tmp_path):
    path = tmp_path / "book.xlsx"
    assert write_workbook({"odd": odd, "none": odd.head(0)}, path) is False
    back = pd.read_excel(path, sheet_name=None)
    assert list(back) == ["odd", "none"]
    assert list(back["none"]) == list(odd)
    told = back["odd"]
    assert told["text"].tolist() == [
        defused(text).replace("\r", "_x000D_") if "\r" in text else defused(text) for text in EVIL + KIND
    ] or all(harmless(text) for text in told["text"])
    assert told["strokes"].dropna().tolist() == odd["strokes"].dropna().tolist()
    assert told["mass_g"].dropna().tolist() == odd["mass_g"].dropna().tolist()
    assert told["cost"].sum() == pytest.approx(1239.067)
    assert told["day"][0] == pd.Timestamp("2026-03-09")
    assert (told["day"][2], told["at_utc"][0].round("s")) == ("0001-01-01", pd.Timestamp("2026-03-11T08:31:18"))
    sheet = openpyxl.load_workbook(path)["odd"]
    assert sheet.freeze_panes == "B2"
    assert not any(cell.data_type == "f" for row in sheet.iter_rows() for cell in row)
    assert sheet["C2"].data_type == sheet["H2"].data_type == "n"
    assert sheet.column_dimensions["A"].width > 12


def test_a_table_too_long_for_a_sheet_and_a_text_too_long_for_a_cell(tmp_path, monkeypatch):
    monkeypatch.setattr(tables_out, "MOST_ROWS", 2)
    table = frame({"text": packed("text", ["x" * 40_000, "a\x07b", "c", "d", "e"])})
    write_workbook({"long": table}, tmp_path / "book.xlsx")
    back = pd.read_excel(tmp_path / "book.xlsx", sheet_name=None)
    assert [(name, len(part)) for name, part in back.items()] == [("long", 2), ("long 2", 2), ("long 3", 1)]
    assert len(back["long"]["text"][0]) == 32_767
    assert back["long"]["text"][0].endswith("x…")
    assert back["long"]["text"][1] == "a\ufffdb"


def test_parquet_read_back_by_duckdb(odd, tmp_path):
    [path] = write_parquet({"odd": odd}, tmp_path / "out")
    [(count, mass, cost, first, last, at, missing)] = asked(
        "SELECT count(*), sum(mass_g), sum(cost), min(day), max(day), min(at_utc)::VARCHAR, count(*) - count(strokes) "
        f"FROM '{path}'"
    )
    assert (count, missing) == (len(odd), 1)
    assert mass == odd["mass_g"].sum()
    assert cost == Decimal("1239.0670")
    assert isinstance(cost, Decimal)
    assert (first, last) == (dt.date(1, 1, 1), dt.date(2026, 3, 9))
    assert at.startswith("2026-03-11")
    assert asked(f"SELECT text FROM '{path}' WHERE kind = '=1+1'") == [("=1+1",)]
    types = dict(asked(f"SELECT column_name, column_type FROM (DESCRIBE SELECT * FROM '{path}')"))
    assert types["day"] == "DATE"
    assert types["cost"].startswith("DECIMAL")
    assert types["dry"] == "BOOLEAN"


def test_every_table_of_the_samples_in_each_form(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    for name in ("green-piston", "syringe-ladder", "lever-with-limits"):
        create_job(bench, name, sample=name)
    book = ledger(bench.folder)
    for path in write_parquet(book, tmp_path / "out"):
        assert asked(f"SELECT count(*) FROM '{path}'") == [(len(book[path.stem]),)]
    write_workbook(book, tmp_path / "book.xlsx")
    assert {name: len(part) for name, part in pd.read_excel(tmp_path / "book.xlsx", sheet_name=None).items()} == {
        name: len(book[name]) for name in book
    }
    spent = asked(f"SELECT job, sum(minutes) FROM '{tmp_path}/out/minutes.parquet' GROUP BY job")
    assert dict(spent) == pytest.approx(book.jobs.set_index("job")["minutes"].to_dict())
    [(parts,)] = asked(f"SELECT sum(cost) FROM '{tmp_path}/out/parts.parquet'")
    assert parts == book.parts["cost"].dropna().sum()


def test_plain_rows_hold_none_where_nothing_was_entered(odd):
    row = list(plain_rows(odd))[1]
    assert [row[name] for name in ("mass_g", "strokes", "dry", "day", "cost")] == [None] * 5
    assert next(plain_rows(odd))["day"] == dt.date(2026, 3, 9)


def test_a_name_of_another_ending_a_place_that_is_none_and_a_missing_library_are_said(odd, tmp_path, monkeypatch):
    with pytest.raises(InputError, match=r"\.csv"):
        write_csv(odd, tmp_path / "bench.toml")
    with pytest.raises(RecordError, match="cannot be written"):
        write_workbook({"odd": odd}, tmp_path / "none" / "book.xlsx")
    (tmp_path / "file").touch()
    with pytest.raises(RecordError, match="cannot be made"):
        write_parquet({"odd": odd}, tmp_path / "file" / "out")
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    with pytest.raises(InputError, match=r"pentools\[columns\]"):
        write_parquet({"odd": odd}, tmp_path / "out")
    assert "pyarrow" in sys.modules or not (tmp_path / "out").exists()
