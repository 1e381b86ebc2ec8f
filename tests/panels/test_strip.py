"""What is at hand at every stage: one box or button each, Enter saves, and the answer stands under it."""

import datetime as dt
import io

import pytest
from by_name import kind_of
from PIL import Image

from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
from pentools.record.stages.job.work_log import minutes_by_activity, running_timer

NOON = dt.datetime(2026, 3, 14, 12, tzinfo=dt.UTC)


@pytest.fixture
def strip(sheet):
    return sheet.strip


def enter(box, text):
    box.value = text
    box._handle_custom_msg({"event": "submit"}, [])


def weighings(job):
    return [(w.values.state, w.values.mass.value) for w in job.log(kind_of("fill test", "weighing"))]


def test_a_weighing_is_a_number_and_enter_and_after_empty_comes_filled(strip, job, sheet):
    enter(strip.mass, "14,86")
    assert strip.status.text.endswith(": 14.86\u202fg, empty")
    assert strip.mass.value == ""
    assert strip.state.value == "filled"
    enter(strip.mass, "16.05 g")
    assert weighings(job) == [("dry", 14.86), ("filled", 16.05)]
    assert "It draws" in sheet.stage("fill test").sentence.value


def test_gains_go_on_as_gains(strip, job):
    strip.state.value = "gain"
    for text in ("0.18", "0.31", "1.20"):
        enter(strip.mass, text)
        assert strip.state.value == "gain"
    assert [state for state, _ in weighings(job)] == ["gain"] * 3


def test_what_is_unlikely_is_asked_once_and_then_saved(strip, job):
    job.add("intake", "arrival", {"pen": "a pen", "mass_g": "14.2 g"})
    enter(strip.mass, "142")
    assert "it arrived with 14.2 g: is that right?" in strip.status.text
    assert strip.mass.value == "142"
    assert weighings(job) == []
    enter(strip.mass, "142")
    assert weighings(job) == [("dry", 142.0)]


def test_what_cannot_be_read_is_refused_and_stays(strip, job):
    enter(strip.mass, "heavy")
    assert strip.status.text.startswith("NOT SAVED")
    assert strip.mass.value == "heavy"
    enter(strip.minutes, "soon")
    assert "Type it like 12 old sac out" in strip.status.text
    enter(strip.note, "")
    assert strip.status.text.startswith("NOT SAVED")
    assert job.record.live("work log") == []


@pytest.mark.parametrize(
    ("text", "minutes", "done"),
    [
        ("12", 12, "seals and sac"),
        ("12 old sac out", 12, "old sac out"),
        ("12 min: old sac out", 12, "old sac out"),
        ("1.5 h, fitted", 90, "fitted"),
        ("45, turned a ring of 8 mm", 45, "turned a ring of 8 mm"),
    ],
)
def test_minutes_go_to_the_stage_that_is_open(sheet, strip, job, text, minutes, done):
    sheet.open_stage("seal")
    assert strip.minutes.description == "Minutes, seals and sac"
    enter(strip.minutes, text)
    [logged] = job.log(kind_of("work log", "work"))
    assert (logged.values.activity, logged.values.minutes.value, logged.values.done) == ("seal", minutes, done)


def test_the_clock_starts_and_stops_and_keeps_what_was_done(sheet, strip, job):
    sheet.open_stage("clean")
    strip.clock.click()
    assert running_timer(job).values.activity == "clean"
    assert strip.clock.description.startswith("stop the clock (since ")
    strip.minutes.value = "flushed the feed"
    strip.clock.click()
    assert running_timer(job) is None
    assert strip.clock.description == "start the clock"
    [stop] = job.log(kind_of("work log", "timer stop"))
    assert stop.values.done == "flushed the feed"
    assert set(minutes_by_activity(job)) <= {"clean"}


def test_a_note_is_for_the_bench_alone(strip, job):
    enter(strip.note, "old sac hard as glass")
    [logged] = job.log(kind_of("work log", "note"))
    assert logged.values.note == "old sac hard as glass"
    assert {f.audience for f in kind_of("work log", "note").fields} == {"bench"}


def test_a_picture_chosen_goes_into_the_folder_and_the_record(strip, job):
    held = io.BytesIO()
    Image.new("RGB", (40, 20), "grey").save(held, "PNG")
    for _ in range(2):
        strip.picture.value = (
            {
                "name": "IMG 1.png",
                "content": memoryview(held.getvalue()),
                "type": "image/png",
                "size": 1,
                "last_modified": NOON,
            },
        )
        strip.picture.value = ()
    shown = [(p.values.photo, p.values.moment) for p in job.log(kind_of("pictures", "picture"))]
    assert shown == [("IMG-1.png", "before"), ("IMG-1.png", "during")]
    assert (job.folder / "photos" / "IMG-1.png").is_file()
    strip.picture.value = (
        {"name": "a.png", "content": memoryview(b"no picture"), "type": "image/png", "size": 1, "last_modified": NOON},
    )
    assert "that can be read" in strip.status.text


def test_minutes_past_the_agreed_most_are_asked_about_once(job):
    path = job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("rate_per_hour = 0.0", "rate_per_hour = 60.0"))
    job = open_job(job.name, bench=open_bench_folder(job.bench.folder))
    job.add("agree", "yes", {"to": "sealant", "at_most": "10 EUR", "answered_on": "2026-03-14", "channel": "letter"})
    strip = BenchSheet(job).strip
    strip.minutes.value = "12 old sac out"
    strip.enter_minutes()
    assert "past the agreed 10.00 EUR" in strip.status.text
    assert job.log(kind_of("work log", "work")) == ()
    strip.enter_minutes()
    assert len(job.log(kind_of("work log", "work"))) == 1
