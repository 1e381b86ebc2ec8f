"""The computer's clock put forward and back while a job is worked on: what was said last is what counts."""

import datetime as dt
import time

import pytest

from pentools.errors import RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, job_in
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.intake_kinds import ARRIVAL

TO_1970 = -56 * 365.25 * 24
HOURS = {
    "forward": [0, 24 * 400, 24 * 400],
    "back": [0, -24 * 400, -24 * 800],
    "forward, then right again": [0, 24 * 400, 0],
    "back, then right again": [0, -5, 0],
    "standing still": [0, 0, 0],
    "at its beginning": [TO_1970, TO_1970 + 1, 0],
}


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")


@pytest.fixture
def clock(monkeypatch):
    """Puts the clock so many hours off."""
    right = dt.datetime(2026, 3, 14, 12, tzinfo=dt.timezone(dt.timedelta(hours=1)))

    def put(hours):
        moment = right + dt.timedelta(hours=hours)
        monkeypatch.setattr("pentools.record.entries.now", lambda: moment)
        monkeypatch.setattr("pentools.record.appending.now", lambda: moment)

    put(0)
    return put


@pytest.mark.parametrize("hours", HOURS.values(), ids=HOURS)
def test_the_last_word_counts_whatever_the_clock_says(job, clock, hours):
    for number, off in enumerate(hours):
        clock(off)
        job.add("intake", "arrival", {"pen": f"pen {number}"}, replaces=job.record.entries[-1].id if number else None)
    assert job.newest(ARRIVAL).pen == job_in(job.folder).newest(ARRIVAL).pen == "pen 2"
    clock(hours[0] - 24 * 30)
    job.withdraw(job.record.latest("intake", "arrival"), "another pen")
    assert job_in(job.folder).newest(ARRIVAL).pen is None
    assert len(job.record.entries) == 4


@pytest.mark.parametrize("hours", HOURS.values(), ids=HOURS)
def test_a_consent_withdrawn_stays_withdrawn(job, clock, hours):
    yes = {"action": "publish", "agreed": "yes", "answered_on": "2026-03-14", "channel": "letter"}
    clock(hours[0])
    given = job.add("agree", "answer", yes)
    assert consents(job_in(job.folder)).get("publish") is True
    clock(hours[1])
    job.withdraw(given, "the owner thought again")
    assert "publish" not in consents(job_in(job.folder))
    clock(hours[2])
    job.add("agree", "answer", {**yes, "agreed": "no"})
    assert consents(job_in(job.folder)).get("publish") is False


@pytest.mark.parametrize("zone", ["UTC", "Pacific/Kiritimati", "Pacific/Pago_Pago", "Europe/Berlin"])
def test_another_zone_changes_nothing(job, monkeypatch, zone):
    if not hasattr(time, "tzset"):
        pytest.skip("this system cannot be put into another zone")
    first = job.add("intake", "arrival", {"pen": "one"})
    monkeypatch.setenv("TZ", zone)
    time.tzset()
    try:
        job.add("intake", "arrival", {"pen": "two"}, replaces=first.id)
        assert job_in(job.folder).newest(ARRIVAL).pen == "two"
    finally:
        monkeypatch.undo()
        time.tzset()


def test_what_is_set_aside_while_the_clock_stands_or_goes_back_is_all_kept(job, clock):
    for off in (0, 0, -1, 0):
        clock(off)
        with job.record.path.open("ab") as file:
            file.write(b'{"torn')
        job.add("intake", "arrival", {"pen": f"pen {off}"})
    assert [p.read_bytes() for p in job.folder.glob("record-torn-*.txt")] == [b'{"torn'] * 4


def test_a_year_that_no_entry_is_read_of_is_refused_and_nothing_is_saved(job, clock):
    clock(TO_1970 * 1.1)
    with pytest.raises(RecordError, match="clock says 1964"):
        job.add("intake", "arrival", {"pen": "a pen"})
    assert not job.record.path.exists()
