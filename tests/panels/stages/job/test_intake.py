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
