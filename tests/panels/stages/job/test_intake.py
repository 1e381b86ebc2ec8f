"""The intake panel says what arrived, in how many pieces, and draws it."""

import pytest

from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.mark.parametrize(
    ("pieces", "said"),
    [
        ("cap; barrel; loose nib", "A drawn test pen, in 3 pieces."),
        ("the pen", "A drawn test pen."),
        ("", "A drawn test pen."),
    ],
)
def test_what_arrived(sheet, put, pieces, said):
    panel = sheet.panel("intake")
    assert put(panel, "arrival", pieces=pieces).startswith("saved ")
    assert said in panel.result_text.value
    assert "<svg" in panel.result_drawings.value


def test_of_a_new_job_nothing_is_known(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "new-pen")
    panel = BenchSheet(job).panel("intake")
    assert "Nothing is known of this pen yet." in panel.result_text.value
    assert "<svg" not in panel.result_drawings.value


def test_naming_an_older_job_takes_over_what_it_knows_and_fills_the_forms(job, sheet, put):
    older = create_job(job.bench, "pen-old")
    older.add("intake", "owner", {"owner": "Adela Quist"})
    older.add("release", "result", {"ending": "done", "summary": "It writes.", "promise_until": "2026-06-14"})
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston", "arrived_on": "2026-06-20"})
    panel = sheet.panel("intake")
    assert "no job pen-9" in put(panel, "coming back", older="pen-9", failed="it leaks")
    assert "another job" in put(panel, "coming back", older=job.name, failed="it leaks")
    assert put(panel, "coming back", older="pen-old", failed="it leaks").startswith("saved ")
    assert panel.forms["owner"].boxes["owner"].text == "Adela Quist"
    assert (
        "It was here as pen-old. It was answered for until 14 June 2026. It came back after that."
        in panel.result_text.value
    )
    assert panel.forms["coming back"].boxes["covered"].text == "no"
    assert panel.forms["coming back"].boxes["failed"].text == "it leaks"
