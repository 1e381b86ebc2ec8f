"""The drawer against the jobs: counted less used since, what to order, what is too old, pens of a lot, the tool shelf."""

import datetime as dt
from decimal import Decimal

import msgspec
import pytest

from pentools.books.stock.stock import lot_on, stock_on, tools_on
from pentools.record.bench import open_bench_folder
from pentools.record.drawer import DRAWER
from pentools.record.entries import new_entry
from pentools.record.job import create_job

TODAY = dt.date(2026, 11, 28)
HEAD = "kind,what,size,lot,how many,counted on,opened on,keeps,use by,at least\n"


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    return open_bench_folder(tmp_path / "bench", create=True)


def drawer(bench, lines):
    (bench.folder / DRAWER).write_text(HEAD + lines, encoding="utf-8")
    return open_bench_folder(bench.folder)


def used(bench, name, what, lot="", day="2026-06-01", way="added", **more):
    job = next((one for one in [bench.folder / name] if one.exists()), None)
    from pentools.record.job import open_job

    job = open_job(name, bench=bench) if job else create_job(bench, name)
    entry = new_entry(
        "work log", "material", {"what": what, "way": way, "part": "seals"} | ({"lot": lot} if lot else {}) | more
    )
    job.record.append(msgspec.structs.replace(entry, at=f"{day}T10:00:00+02:00"))
    return job


def rows(bench):
    return {(row.item.what, row.item.lot): row for row in stock_on(bench, TODAY).rows}


def topics(row):
    return [tuple((finding.key.removeprefix("books.") + ":").split(":")[:2]) for finding in row.findings]


def test_what_is_left_is_counted_less_used_since_the_count(bench):
    bench = drawer(
        bench, "sac,latex sac 16,,bag A,10,2026-05-20,,,,8\nadhesive,shellac,,bottle,1,,,,,1\nring,odd,,box,,,,,,2\n"
    )
    used(bench, "before", "latex sac 16", "bag A", "2026-05-19")
    used(bench, "same-day", "latex sac 16", "Bag-a", "2026-05-20")
    used(bench, "after", "2 × latex sac 16", "bag A")
    used(bench, "after", "latex sac 16, old", "bag A", way="removed")
    used(bench, "glued", "shellac", "bottle")
    found = rows(bench)
    sac, shellac, odd = found["latex sac 16", "bag A"], found["shellac", "bottle"], found["odd", "box"]
    assert (sac.left, sac.used, sac.jobs) == (7, 3, ("after", "before", "same-day"))
    assert (sac.to_order, topics(sac)) == (True, [("stock-order", "")])
    assert (shellac.left, shellac.used, shellac.jobs) == (1, 0, ("glued",))  # a drop takes no bottle
    assert (odd.left, odd.to_order) == (None, False)  # not counted is not none


def test_just_what_should_be_there_is_enough(bench):
    bench = drawer(bench, "sac,latex sac 16,,bag A,10,,,,,8\n")
    used(bench, "one", "2 x latex sac 16", "bag A")
    assert not rows(bench)["latex sac 16", "bag A"].to_order
    used(bench, "two", "latex sac 16", "bag A")
    assert rows(bench)["latex sac 16", "bag A"].to_order


def test_where_the_lot_was_not_said_what_may_be_gone_counts_as_gone(bench):
    bench = drawer(bench, "sac,latex sac 16,,bag A,5,,,,,5\nsac,latex sac 16,,bag B,5,,,,,2\n")
    used(bench, "one", "latex sac 16")
    a, b = rows(bench).values()
    assert [(row.left, row.perhaps, row.to_order) for row in (a, b)] == [(5, 1, True), (5, 1, False)]
    assert ("stock-unclear", "") in topics(b)


def test_more_used_than_counted_is_said_and_never_below_nothing(bench):
    bench = drawer(bench, "sac,latex sac 16,,bag A,1,,,,,\n")
    used(bench, "one", "3 x latex sac 16", "bag A")
    row = rows(bench)["latex sac 16", "bag A"]
    assert (row.left, topics(row)) == (Decimal(0), [("stock-more", "")])


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("sac,latex sac,,a,,,,,2026-11-27,", [("stock-past", "date")]),
        ("sac,latex sac,,a,,,,,2026-11-28,", []),
        ("adhesive,shellac,,a,,,2026-05-20,,,", [("stock-old", "")]),
        ("adhesive,shellac,,a,,,2026-06-20,,,", []),
        ("adhesive,shellac flakes,,a,,,2020-05-20,,,", []),
        ("adhesive,shellac,,a,,,2026-05-20,12 months,,", []),  # one's own word counts over what is usual
        ("adhesive,mine,,a,,,2026-05-20,6 months,,", [("stock-past", "keeps")]),
        ("adhesive,mine,,a,,,2026-05-20,,,", []),  # nobody knows how long it keeps
        ("adhesive,shellac,,a,,,,,,", [("stock-no-day", "")]),
        ("ring,silicone ring,,a,,,2017-05-20,,,", []),
        ("ring,nitrile ring,,a,,,2017-05-20,,,", [("stock-old", "")]),
        ("adhesive,silicone adhesive,,a,,,2025-05-20,,,", [("stock-old", "")]),
    ],
)
def test_what_is_too_old(bench, line, said):
    (row,) = stock_on(drawer(bench, line + "\n"), TODAY).rows
    assert topics(row) == said


def test_lots_that_the_drawer_does_not_hold_and_the_bench_files_own_sizes(bench):
    (bench.folder / "bench.toml").write_text('[stock]\nrings = ["2.0x5.0"]\n')
    bench = drawer(bench, "sac,latex sac 16,,bag A,5,,,,,\nsac,,,x\n")
    used(bench, "one", "cork", "Shop 9")
    used(bench, "two", "cork", "shop-9")
    used(bench, "two", "wax")
    told = stock_on(bench, TODAY)
    assert told.not_listed == {"Shop 9": ("one", "two")}
    assert [(row.item.what, row.left, row.item.line) for row in told.rows] == [
        ("latex sac 16", 5, 2),
        ("2.0x5.0", None, 0),
    ]
    assert "line 3" in told.problems[0]


def test_a_job_that_cannot_be_read_stands_in_nobodys_way(bench):
    bench = drawer(bench, "sac,latex sac 16,,bag A,5,,,,,\n")
    used(bench, "one", "latex sac 16", "bag A")
    (bench.folder / "torn").mkdir()
    (bench.folder / "torn" / "record.jsonl").mkdir()
    told = stock_on(bench, TODAY)
    assert (told.rows[0].left, list(told.unread)) == (4, ["torn"])


def test_which_pens_got_a_lot_and_which_came_back(bench):
    bench = drawer(bench, "sac,latex sac 16,,bag A,5,,,,,\n")
    for name in ("one", "two"):
        used(bench, name, "latex sac 16", "bag  a")
    used(bench, "three", "latex sac 16", "bag B")
    job = create_job(bench, "four")
    job.add(
        "seal",
        "trial",
        {"place": "sac", "what": "latex sac 16", "happened": "too stiff", "dry": "yes", "lot": "bag A"},
    )
    create_job(bench, "again").add("intake", "coming back", {"older": "two", "failed": "it leaks", "part": "seals"})
    told = lot_on(bench, "BAG-A")
    assert [(pen.job, pen.went_in) for pen in told.pens] == [("four", False), ("one", True), ("two", True)]
    assert [pen.job for pen in told.got_it] == ["one", "two"]
    assert {pen.job: [(job, one.failed_part) for job, one in pen.came_back] for pen in told.pens}["two"] == [("again", "seals and sac")]  # fmt: skip
    assert set(told.lots) == {"bag A", "bag  a"}
    none = lot_on(bench, "bagg A")
    assert (none.pens, none.near[0] in ("bag A", "bag  a")) == ((), True)
    assert lot_on(bench, "").pens == ()


def test_the_tool_shelf(bench):
    for name, day, data in (
        ("late", "2026-06-02", {"tool": "Knock-out  tube 6.2", "part": "section"}),
        ("first", "2026-05-02", {"tool": "knock-out tube 6.2", "part": "feed", "dimensions": "6.2 mm outside", "made_from": "brass", "photo": "tube.jpg"}),
        ("other", "2026-05-02", {"tool": "cork cutter"}),
    ):  # fmt: skip
        job = create_job(bench, name)
        job.add("intake", "arrival", {"pen": name, "system": "lever-sac"})
        job.record.append(msgspec.structs.replace(new_entry("work log", "tool", data), at=f"{day}T10:00:00+02:00"))
    cutter, tube = tools_on(bench)
    assert (cutter.tool, cutter.dimensions, cutter.jobs) == ("cork cutter", "", ("other",))
    assert (tube.made_in, tube.made_on, tube.dimensions, tube.made_from) == (
        "first",
        "2026-05-02",
        "6.2 mm outside",
        "brass",
    )
    assert (tube.jobs, tube.parts, tube.systems) == (("first", "late"), ("feed", "section"), ("lever-sac",))
    assert tube.photo == "first/photos/tube.jpg"
