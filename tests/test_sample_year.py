"""The sample year: short jobs that are whole, hold together, and tell the queue, the parts wanted and the drawer a story."""

import datetime as dt

import pytest
from PIL import Image

from pentools.books.queue.parcels import parcels_on
from pentools.books.queue.queue import queue_on
from pentools.books.queue.wanted import wanted_on
from pentools.cli import main
from pentools.demo import lay_year
from pentools.record.bench import open_bench_folder
from pentools.record.drawer import read_drawer
from pentools.record.entries import WITHDRAWAL
from pentools.record.job import jobs_on, open_job
from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.ending_kinds import PICTURE, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, REQUEST
from pentools.record.stages.job.work_kinds import MATERIAL

OPEN = {"2026-030-green-bulb", "2026-033-jade-lever", "2026-035-red-piston"}


@pytest.fixture(scope="module")
def bench(tmp_path_factory):
    folder = tmp_path_factory.mktemp("year") / "bench"
    lay_year(str(folder), say=lambda _: None)
    return open_bench_folder(folder)


@pytest.fixture(scope="module")
def jobs(bench):
    return {name: open_job(name, bench=bench) for name in jobs_on(bench)}


def test_every_entry_is_of_a_known_kind_and_reads_back(jobs, bench):
    assert bench.problems == ()
    assert len(jobs) == 15
    ids = [entry.id for job in jobs.values() for entry in job.record.entries]
    assert len(set(ids)) == len(ids)
    for job in jobs.values():
        assert job.record.problems == []
        assert 8 <= len(job.record.entries) <= 25
        for entry in job.record.entries:
            if entry.kind != WITHDRAWAL:
                kind = find_stage(entry.stage).kind(entry.kind)
                values = kind.decode(entry)
                again, errors = kind.read({f.name: f.typed(getattr(values, f.name)) for f in kind.fields})
                assert (errors, kind.to_json(again)) == ({}, entry.data)


def test_nothing_is_odd_but_what_an_open_job_still_owes(jobs):
    odd = {name: {f.key for f in review(job) if f.level in ("warning", "stop")} for name, job in jobs.items()}
    assert {name: found for name, found in odd.items() if found} == {name: {"job.owed:open"} for name in OPEN}
    assert {name for name, job in jobs.items() if job.newest(RESULT).ending is None} == OPEN


def test_it_is_a_year_in_the_bench_s_own_zone(jobs):
    times = [entry.time for job in jobs.values() for entry in job.record.entries]
    assert min(times).date() == dt.date(2025, 11, 3)
    assert max(times).date() == dt.date(2026, 11, 27)
    for job in jobs.values():
        assert [e.time for e in job.record.entries] == sorted(e.time for e in job.record.entries)
    works = {job.newest(REQUEST).work for job in jobs.values()}
    assert works >= {"re-sac", "cork or ring", "diaphragm", "plunger", "nib only", "finish only", "whole"}
    assert len({job.newest(ARRIVAL).system for job in jobs.values()}) >= 9


def test_its_pictures_are_there_small_and_said_to_be_drawn(jobs):
    for job in jobs.values():
        pictures = [logged.values for logged in job.log(PICTURE)]
        assert {p.photo for p in pictures} == {path.name for path in (job.folder / "photos").iterdir()}
        for picture in pictures:
            assert picture.drawn is True
            assert "drawn for this sample" in picture.shows
            path = job.folder / "photos" / picture.photo
            assert path.stat().st_size < 20_000
            with Image.open(path) as image:
                assert image.size == (880, 300)


def test_the_queue_says_who_waits_for_what(bench):
    lines = {line.job: line for line in queue_on(bench, dt.date(2026, 11, 28))}
    assert {name: line.state for name, line in lines.items() if line.state != "ended"} == {
        "2026-030-green-bulb": "part",
        "2026-033-jade-lever": "owner",
        "2026-035-red-piston": lines["2026-035-red-piston"].state,
        "2026-027-black-down-stroke": "posting",
    }
    assert lines["2026-035-red-piston"].state in ("bench", "test", "clock")
    assert lines["2026-030-green-bulb"].overdue
    assert lines["2026-027-black-down-stroke"].days_here == 96
    assert lines["2026-018-grey-lever-again"].follow_up


def test_one_came_back_because_of_a_bag_and_another_pen_has_of_the_same(jobs):
    again = jobs["2026-018-grey-lever-again"].newest(RETURN)
    bag = "bag of October 2025"
    assert (again.older, again.cause, again.lots) == ("2025-041-grey-lever", "part", (f"seals and sac: {bag}",))
    with_it = {name for name, job in jobs.items() if bag in {logged.values.lot for logged in job.log(MATERIAL)}}
    assert with_it == {"2025-041-grey-lever", "2025-047-coral-button"}


def test_two_came_in_one_parcel_and_two_parts_are_wanted(bench):
    assert dict(parcels_on(bench)) == {
        "2026-009-dropper-of-two": ("2026-009-dropper-of-two", "2026-010-crescent-of-two")
    }
    assert {row["job"] for row in wanted_on(bench)} == {"2026-013-ripple-safety", "2026-030-green-bulb"}


def test_the_drawer_can_be_read_and_holds_the_lots_in_use(bench, jobs):
    drawer = read_drawer(bench.folder, currency="EUR")
    assert drawer.problems == ()
    lots = {logged.values.lot for job in jobs.values() for logged in job.log(MATERIAL)}
    assert {item.lot for item in drawer.items} & lots >= {"bag of February 2026", "sheet B, January 2026"}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (
            "queue --on 2026-11-27",
            "gold-plated cap, 1950s. Since 24 Aug (95 days)",
        ),
        ("queue --on 2026-11-27", "Since 9 Nov (18 days)"),
        ("queue --on 2026-11-27", "was expected by 20 November 2026"),
        ("queue --on 2026-11-27", "Waits for shellac at the section joint to set (until 28 November 18:20)"),
        ("stock --lot October", "2 pens got “bag of October 2025”; 1 of them came back"),
        ("find cork", "2 pens."),
        ("learned", "a new sac: 62 min (45 to 120"),
        ("learned", "a diaphragm or a pump: too few to say; n = 1"),
        ("quote 2026-033-jade-lever", "like the 10 it rests on (any pen, any work)"),
    ],
)
def test_the_guide_tells_what_the_commands_say(bench, capsys, words, said):
    main([*words.split(), "--bench", str(bench.folder)])
    assert said in capsys.readouterr().out
