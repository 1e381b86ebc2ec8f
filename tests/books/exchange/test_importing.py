"""A table of old jobs becomes jobs; what cannot be taken is said by row and column, and a row is never taken twice."""

import datetime as dt
import shutil

import pytest

from pentools.books.exchange import importing
from pentools.books.exchange.importing import import_table
from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, jobs_on, open_job
from pentools.record.review import review
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, REQUEST
from pentools.record.stages.job.work_kinds import MATERIAL, WORK
from pentools.record.stages.weighing.kinds import DIMENSIONS

MAPPING = """
[file]
delimiter = "semicolon"
decimal_sign = ","
date_order = "day first"
job = "Nr"
entered = "In"

[columns]
Owner = "intake/owner/owner"
Pen = "intake/arrival/pen"
In = "intake/arrival/arrived_on"
Fills = { to = "intake/arrival/system", words = { "hebel" = "lever-sac", "kolben" = "piston" } }
Wish = "intake/request/asked"
Bore = { to = "fill test/dimensions/bore", unit = "mm" }
Open = { to = "work log/work:open/minutes", unit = "min" }
Nib = { to = "work log/work:nib/minutes", unit = "min" }
Part = "work log/material/what"
Cost = "work log/material/cost"
Ending = { to = "release/result/ending", words = { fertig = "done" } }
Said = "release/result/summary"

[fixed]
"work log/work:open/activity" = "open"
"work log/work:open/done" = "as the old list has it"
"work log/work:nib/activity" = "nib"
"work log/work:nib/done" = "as the old list has it"
"work log/material/way" = "added"
"""
HEAD = "Nr;Owner;Pen;In;Fills;Wish;Bore;Open;Nib;Part;Cost;Ending;Said;Shelf"
GOOD = "12/2019;Ilka Dorn;black lever;3.4.2019;Hebel;make it fill;8,52;35;;latex sac;2,80;fertig;it fills;A3"
NEXT = "13/2019;Jorn Fenn;green piston;2019-05-06;piston;look at it;;;20;;;;;"


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def take(tmp_path, bench):
    def taken(*rows, mapping=MAPPING, write=True, encoding="utf-8", name="old.csv", head=HEAD):
        (tmp_path / name).write_bytes("\r\n".join((head, *rows, "")).encode(encoding))
        (tmp_path / "map.toml").write_text(mapping, encoding="utf-8")
        return import_table(bench, tmp_path / name, tmp_path / "map.toml", write=write)

    return taken


def test_each_row_is_a_job_and_each_cell_its_field(take, bench):
    done = take(GOOD, NEXT)
    assert [(one.row, one.job) for one in done.taken] == [(2, "12-2019"), (3, "13-2019")]
    job = open_job("12-2019", bench=bench)
    assert job.newest(OWNER).owner == "Ilka Dorn"
    arrival = job.newest(ARRIVAL)
    assert (arrival.pen, arrival.system, arrival.arrived_on) == ("black lever", "lever-sac", "2019-04-03")
    assert job.newest(REQUEST).asked == "make it fill"
    assert job.newest(DIMENSIONS).bore.value == pytest.approx(8.52)
    assert [(w.values.activity, w.values.minutes.value) for w in job.log(WORK)] == [("open", 35.0)]
    assert [(m.values.what, m.values.way, m.values.cost) for m in job.log(MATERIAL)] == [
        ("latex sac", "added", "2,80 EUR")
    ]
    assert (job.newest(RESULT).ending, job.newest(RESULT).summary) == ("done", "it fills")
    assert [w.values.activity for w in open_job("13-2019", bench=bench).log(WORK)] == ["nib"]
    assert job.notebook.is_file()
    assert not [f for f in review(job) if "cannot be read" in f.text]


def test_each_entry_says_where_it_is_from_and_carries_the_day_given(take, bench):
    take(GOOD)
    for entry in open_job("12-2019", bench=bench).record.entries:
        assert entry.note.startswith("imported from old.csv, row 2, on 20")
        assert entry.time.replace(tzinfo=None) == dt.datetime(2019, 4, 3, 12)


def test_nothing_is_written_unless_asked_and_the_report_is_the_same(take, bench):
    look = take(GOOD, NEXT, GOOD.replace("8,52", "8,5x"), write=False)
    assert jobs_on(bench) == ()
    done = take(GOOD, NEXT, GOOD.replace("8,52", "8,5x"))
    assert (look.taken, look.faults, look.unused) == (done.taken, done.faults, done.unused)
    assert (look.wrote, done.wrote) == (False, True)


@pytest.mark.parametrize(
    ("cell", "wrong", "column", "why"),
    [
        ("8,52", "8.52.1", "Bore", "Bore must be"),
        ("8,52", "85,2", "Bore", "Bore must be"),
        ("8,52", "1.234", "Bore", "Bore must be"),
        ("8,52", "1.234,5", "Bore", "Bore must be"),
        ("3.4.2019", "31.2.2019", "In", "must be"),
        ("3.4.2019", "3.4.19", "In", "must be"),
        ("Hebel", "Pumpe", "Fills", "must be one of"),
        ("35", "-5", "Open", "must be"),
        ("latex sac", "", "Part", "must be filled in"),
        ("2,80", "2,80 XYZ?", "Cost", "must be"),
        ("fertig", "weg", "Ending", "must be one of"),
        ("3.4.2019", "3.4.2032", "In", "still to come"),
        ("3.4.2019", "3.4.1962", "In", "before 1970"),
    ],
)  # fmt: skip
def test_a_cell_that_cannot_be_used_refuses_its_row_by_its_column(take, bench, cell, wrong, column, why):
    done = take(GOOD.replace(cell, wrong, 1), NEXT)
    assert {(fault.row, fault.column) for fault in done.faults} == {(2, column)}
    assert any(why in fault.why for fault in done.faults)
    assert [(one.row, one.job) for one in done.taken] == [(3, "13-2019")]
    assert jobs_on(bench) == ("13-2019",)


def test_a_decimal_comma_is_never_a_thousand(take, bench):
    take(GOOD.replace("8,52", "10,125"))
    assert open_job("12-2019", bench=bench).newest(DIMENSIONS).bore.value == pytest.approx(10.125)
    with_points = MAPPING.replace('decimal_sign = ","', 'decimal_sign = "."')
    done = take(NEXT.replace("look at it;", "look at it;10,125"), mapping=with_points)
    assert [(fault.row, fault.column) for fault in done.faults] == [(2, "Bore")]
    take(NEXT.replace("look at it;", "look at it;10.125"), mapping=with_points)
    assert open_job("13-2019", bench=bench).newest(DIMENSIONS).bore.value == pytest.approx(10.125)


def test_a_row_that_is_taken_twice_is_noticed(take, bench):
    take(GOOD)
    before = (bench.folder / "12-2019" / "record.jsonl").read_bytes()
    done = take(NEXT, GOOD, GOOD, name="exported-again.csv")
    assert done.there == ((3, "12-2019"), (4, "12-2019"))
    assert [one.job for one in done.taken] == ["13-2019"]
    assert (bench.folder / "12-2019" / "record.jsonl").read_bytes() == before
    assert take(NEXT, NEXT, mapping=MAPPING.replace('job = "Nr"', ""), write=False).there[0] == (2, "13-2019")


def test_a_row_that_stands_twice_in_the_file_is_taken_once(take, bench):
    done = take(GOOD, NEXT, GOOD)
    assert ([one.row for one in done.taken], done.there) == ([2, 3], ((4, "12-2019"),))
    ids = [entry.id for entry in open_job("12-2019", bench=bench).record.entries]
    assert len(set(ids)) == len(ids)


def test_a_job_that_is_here_is_not_added_to(take, bench):
    create_job(bench, "12-2019").add("intake", "owner", {"owner": "Oda Hale"})
    take(NEXT)
    done = take(GOOD, NEXT.replace("look at it", "look again"))
    assert [(fault.row, fault.column) for fault in done.faults] == [(2, "Nr"), (3, "Nr")]
    assert "already a job 12-2019" in done.faults[0].why
    assert len(open_job("12-2019", bench=bench).record.entries) == 1


def test_several_rows_may_be_of_one_job_and_two_names_may_not_become_one(take, bench):
    more = "12/2019;;;;;;;;;shellac;0,20;;;"
    done = take(GOOD, more, NEXT, "12 2019;Ulf Bero;red pen;;;look;;;;;;;;")
    assert [one.job for one in done.taken] == ["12-2019", "12-2019", "13-2019"]
    assert [m.values.what for m in open_job("12-2019", bench=bench).log(MATERIAL)] == ["latex sac", "shellac"]
    assert [(fault.row, fault.column) for fault in done.faults] == [(5, "Nr")]
    done = take(NEXT.replace("13/2019", "blue"), NEXT.replace("13/2019", "Blue").replace("look at it", "look"))
    assert [(fault.row, fault.column) for fault in done.faults] == [(3, "Nr")]


def test_a_job_without_a_name_gets_one(take, bench):
    done = take(GOOD, NEXT, mapping=MAPPING.replace('job = "Nr"', ""))
    assert [one.job for one in done.taken] == ["old-0002", "old-0003"]
    assert done.unused == {"Nr": 2, "Shelf": 1}


def test_columns_that_go_nowhere_are_named(take):
    assert take(GOOD, NEXT, write=False).unused == {"Shelf": 1}


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
def test_utf_8_with_or_without_its_mark(take, bench, encoding):
    take(GOOD.replace("Ilka Dorn", "Jörn Ström"), encoding=encoding)
    assert open_job("12-2019", bench=bench).newest(OWNER).owner == "Jörn Ström"


@pytest.mark.parametrize(
    ("encoding", "name"), [("latin-1", "Jörn"), ("windows-1252", "Jörn – Š"), ("utf-16", "Jörn 漢")]
)
def test_another_encoding_by_its_word_and_refused_without_it(take, bench, encoding, name):
    with pytest.raises(InputError, match="encoding ="):
        take(GOOD.replace("Ilka Dorn", name), encoding=encoding)
    assert jobs_on(bench) == ()
    take(
        GOOD.replace("Ilka Dorn", name),
        encoding=encoding,
        mapping=MAPPING.replace("[file]", f'[file]\nencoding = "{encoding}"'),
    )
    assert open_job("12-2019", bench=bench).newest(OWNER).owner == name


def test_rows_that_are_not_whole_and_empty_ones(take):
    done = take(
        "14/2019;too few",
        ";;;;;;;;;;;;;",
        "",
        GOOD,
        '15/2019;"a ""quoted"" name;\nover two lines";pen;;;ask;;;;;;;;',
        NEXT + ";more",
    )
    assert [(fault.row, fault.column) for fault in done.faults] == [(2, ""), (8, "")]
    assert [(one.row, one.job) for one in done.taken] == [(5, "12-2019"), (6, "15-2019")]


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ("intake/owner/owner", "intake/owner", "stage/kind/field"),
        ("intake/owner/owner", "intaek/owner/owner", "the stage"),
        ("intake/owner/owner", "intake/owners/owner", "the kind of entry"),
        ("intake/owner/owner", "intake/owner/name", "the field"),
        ("Owner =", "Besitzer =", "a column of the mapping"),
        ('Said = "release/result/summary"', 'Said = "release/result/ending"', "another field than that of"),
        ("[fixed]", "[fixd]", "a mapping"),
        ('decimal_sign = ","', 'decimal_sign = ";"', "decimal_sign"),
        ('"day first"', '"year first"', "date_order"),
        ('"semicolon"', '"dots"', "delimiter"),
        ("[file]", '[file]\nencoding = "ebcdic"', "encoding"),
        ("[columns]", "[columns", "a mapping"),
        ('Wish = "intake/request/asked"', 'Wish = "pictures/picture/photo"', "the field"),
    ],
)
def test_a_mapping_that_cannot_be_used_is_said(take, bench, old, new, why):
    with pytest.raises(InputError, match=why):
        take(GOOD, mapping=MAPPING.replace(old, new, 1))
    assert jobs_on(bench) == ()


def test_a_file_that_cannot_be_used_is_said(take, bench, tmp_path):
    with pytest.raises(InputError, match="a name once"):
        take(GOOD + ";x", head=HEAD + ";Owner")
    with pytest.raises(InputError, match="names its columns"):
        take(head="")
    with pytest.raises(InputError, match="comma-separated"):
        take(GOOD.replace("Ilka", '"Ilka" x'))
    with pytest.raises(RecordError, match="cannot be read"):
        import_table(bench, tmp_path / "none.csv", tmp_path / "map.toml")
    with pytest.raises(RecordError, match="cannot be read"):
        import_table(bench, tmp_path / "old.csv", tmp_path / "none.toml")


def test_a_job_that_cannot_be_written_leaves_nothing_of_itself(take, bench, monkeypatch):
    def full(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(importing, "append_block", full)
    with pytest.raises(RecordError, match="12-2019 could not be written"):
        take(GOOD)
    assert jobs_on(bench) == ()


def test_what_was_imported_goes_on_like_any_job(take, bench, tmp_path):
    take(GOOD)
    open_job("12-2019", bench=bench).add("work log", "note", {"note": "looked again"})
    shutil.copytree(bench.folder, tmp_path / "copy")
    assert len(open_job("12-2019", bench=open_bench_folder(tmp_path / "copy")).record.entries) > 5
