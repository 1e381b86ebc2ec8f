"""The intake panel says what arrived, in how many pieces, and draws it."""

import pytest

from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.strangers import strangers_found


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


def test_a_word_that_holds_the_page_is_filled_in_so_that_the_reason_is_the_one_box(job, sheet, put):
    job.add("intake", "owner", {"owner": "Adela Quist"})
    for part, seen in (("cap", "Adela’s cap is whole."), ("barrel", "Quist is scratched in.")):
        job.add("condition", "part", {"part": part, "seen": seen, "severity": "1"})
    panel = sheet.panel("intake")
    panel.show_form("shown all the same")
    boxes = panel.forms["shown all the same"].boxes
    assert boxes["word"].text == ""  # nothing is published, so nothing is held
    job.add("intake", "consent", {"publish": "yes"})
    panel.show_form("arrival")
    panel.show_form("shown all the same")
    offered = []
    for _ in range(2):
        offered.append(boxes["word"].text)
        assert put(panel, "shown all the same", reason="the owner wants it shown").startswith("saved ")
    assert sorted(offered) == ["Adela", "Quist"]
    assert boxes["word"].text == ""
    assert strangers_found(job) == ()
