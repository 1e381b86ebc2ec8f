"""What several tests of opening and cleaning type."""

import datetime as dt

from pentools.record.entries import new_entry

START = dt.datetime(2026, 3, 9, 10, 0, tzinfo=dt.UTC)


def arrive(job, material="celluloid", system="lever-sac"):
    job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": material})


def to_clean(job):
    job.add("intake", "arrival", {"pen": "a pen", "material": "celluloid"})
    job.add("open", "material", {"part": "section", "material": "ebonite"})
    return job


def after(minutes):
    return START + dt.timedelta(minutes=minutes)


def put(job, at, kind, **data):
    job.record.append(new_entry("clean", kind, data, at=after(at)))
