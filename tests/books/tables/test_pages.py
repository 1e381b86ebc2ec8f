"""Each column of each table holds what it is named for."""

import datetime as dt

import pytest
from books.by_the_careful_reader import rows_of

from pentools.books.tables.pages import pages_of
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job

AT = dt.datetime(2026, 3, 9, 23, 30, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
ADDED = {
    "weighings": ("fill test", "weighing", {"state": "drained", "mass": "18.431 ± 0.002 g", "strokes": "2"},
                  {"state": "drained", "mass_g": 18.431, "mass_u_g": 0.002, "strokes": 2}),
    "leaks": ("fill test", "leak reading", {"after": "2 h", "mass": "20.149 g", "blank": "20.004 g"},
              {"after_h": 2.0, "mass_g": 20.149, "mass_u_g": None, "blank_g": 20.004}),
    "seals": ("seal", "trial", {"place": "head", "what": "ring", "section": "1.78 mm", "inside": "6 mm", "outside": "9.6 mm",
                                "lot": "bag 3", "dry": "yes", "happened": "pulls back"},
              {"place": "head", "what": "ring", "section_mm": 1.78, "inside_mm": 6.0, "outside_mm": 9.6, "lot": "bag 3",
               "dry": True, "happened": "pulls back"}),
    "heatings": ("open", "heat pass", {"joint": "section", "surface": "43 °C", "minutes": "1.5 min", "moved": "a hair",
                                       "broke": "nothing", "free": "no"},
                 {"stage": "open", "joint": "section", "way": None, "surface_c": 43.0, "minutes": 1.5, "seconds": None,
                  "moved": "a hair", "broke": "nothing", "free": False}),
    "abrasives": ("finish", "step", {"grade": "8000", "zone": "plain barrel", "minutes": "3 min", "strokes": "40", "wet": "wet", "fresh": "used",
                                     "direction": "along", "seen": "grey", "cleared": "yes"},
                  {"stage": "finish", "grade": "8000", "zone": "plain barrel", "minutes": 3.0, "strokes": 40, "wet": "wet", "fresh": "used",
                   "direction": "along", "figure": None, "cleared": True, "seen": "grey"}),
    "baths": ("clean", "bath", {"part": "nib", "bath": "alcohol", "strength": "a drop", "minutes": "5 min",
                                "temperature": "19 °C", "came_out": "blue"},
              {"part": "nib", "bath": "alcohol", "strength": "a drop", "minutes": 5.0, "temperature_c": 19.0, "came_out": "blue"}),
    "minutes": ("work log", "work", {"activity": "seal", "minutes": "1.5 h", "done": "a cork", "by": "a friend"},
                {"activity": "seal", "minutes": 90.0, "told_by": "typed", "done": "a cork", "by": "a friend"}),
    "parts": ("work log", "material", {"what": "cork", "way": "added", "part": "seals", "reversible": "yes", "lot": "bag 3", "cost": "4.50"},
              {"what": "cork", "way": "added", "part": "seals", "reversible": True, "lot": "bag 3", "cost": "4.50", "currency": "EUR"}),
    "limits": ("limits", "limit", {"part": "cap", "left": "a hairline", "why": "it is stable", "for_now": "yes", "wanted": "a cap"},
               {"part": "cap", "left": "a hairline", "why": "it is stable", "for_now": True, "wanted": "a cap"}),
}  # fmt: skip


@pytest.fixture
def job(tmp_path):
    (tmp_path / "bench.toml").write_text('[money]\ncurrency = "EUR"\n')
    return create_job(open_bench_folder(tmp_path), "a-pen")


@pytest.mark.parametrize("table", ADDED)
def test_a_row_of_each_table(job, table):
    stage, kind, texts, wanted = ADDED[table]
    which = job.stage(stage).kind(kind)
    values, errors = job.read(which, texts)
    assert not errors
    job.record.append(new_entry("work log", "note", {"note": "a line before it"}, at=AT))
    job.record.append(new_entry(stage, kind, which.to_json(values), at=AT))
    unread, pages = pages_of(job.bench, ["a-pen"])
    assert unread == {}
    place = {"job": "a-pen", "line": 2, "at_utc": AT, "day": "2026-03-09"}
    assert rows_of(pages[table]) == [place | wanted]
    assert {name for name, page in pages.items() if rows_of(page)} == {"jobs", "entries", table}


def test_steps_on_the_tip_and_on_the_pen_stand_in_one_table_in_their_order(job):
    for stage, kind, texts in (("nib", "smoothing", {"grade": "12000", "strokes": "9", "figure": "eight"}),
                               ("finish", "step", {"grade": "8000"}), ("nib", "smoothing", {"grade": "15000", "strokes": "5", "figure": "line"})):  # fmt: skip
        job.add(stage, kind, texts)
    rows = rows_of(pages_of(job.bench, ["a-pen"])[1]["abrasives"])
    assert [(row["line"], row["stage"], row["grade"], row["strokes"], row["figure"]) for row in rows] == [
        (1, "nib", "12000", 9, "eight"), (2, "finish", "8000", None, None), (3, "nib", "15000", 5, "line"),
    ]  # fmt: skip


def test_the_timer_gives_its_spells_between_the_typed_minutes(job):
    def log(kind, data, minutes):
        job.record.append(new_entry("work log", kind, data, at=AT + dt.timedelta(minutes=minutes)))

    log("timer stop", {"done": "never begun"}, 0)
    log("timer start", {"activity": "nib"}, 1)
    job.add("work log", "work", {"activity": "look", "minutes": "4 min", "done": "a look"})
    log("timer stop", {"done": "straight"}, 31.5)
    log("timer start", {"activity": "open"}, 40)
    create_job(job.bench, "b-pen").record.append(
        new_entry("work log", "timer stop", {}, at=AT + dt.timedelta(minutes=60))
    )
    rows = rows_of(pages_of(job.bench, ["a-pen", "b-pen"])[1]["minutes"])
    assert [(row["line"], row["activity"], row["minutes"], row["told_by"], row["done"]) for row in rows] == [
        (2, "nib", 30.5, "timer", "straight"), (3, "look", 4.0, "typed", "a look"),
    ]  # fmt: skip


def test_a_job_in_a_row(job):
    assert rows_of(pages_of(job.bench, ["a-pen"])[1]["jobs"]) == [
        dict.fromkeys(rows_of(pages_of(job.bench, ["a-pen"])[1]["jobs"])[0])
        | {"job": "a-pen", "limits": 0, "entries": 0}
    ]
    job.add("intake", "arrival", {"pen": "red", "system": "piston", "material": "casein", "arrived_on": "2026-03-02"})
    job.add("intake", "owner", {"owner": "Tamsin Oldacre"})
    job.add("intake", "request", {"asked": "Make it drink.", "work": "re-sac", "meant_for": "use"})
    job.add("work log", "work", {"activity": "seal", "minutes": "100 min", "done": "a cork"})
    job.add("work log", "work", {"activity": "nib", "minutes": "3 min", "done": "a look"})
    job.add("limits", "limit", {"part": "cap", "left": "a hairline", "why": "it is stable"})
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "price": "1 USD"})
    job.add(
        "release",
        "result",
        {"ending": "done with limits", "summary": "It writes.", "price": "38.50", "released_on": "2026-03-20"},
    )
    job.record.append(new_entry("work log", "note", {"note": "much later"}, at=AT + dt.timedelta(days=300)))
    job.record.append(new_entry("work log", "note", {"note": "before"}, at=AT - dt.timedelta(days=300)))
    days = [entry.time.date().isoformat() for entry in job.record.entries]
    assert rows_of(pages_of(job.bench, ["a-pen"])[1]["jobs"]) == [{
        "job": "a-pen", "pen": "red", "system": "piston", "material": "casein", "work": "re-sac", "meant_for": "use",
        "arrived_on": "2026-03-02", "ending": "done with limits", "released_on": "2026-03-20", "minutes": 103.0,
        "hours": 1.72, "price": "38.50", "currency": "EUR", "limits": 1, "entries": 10, "first_day": min(days),
        "last_day": max(days), "owner": "Tamsin Oldacre",
    }]  # fmt: skip
