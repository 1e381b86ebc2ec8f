"""A torn last line wherever a job is looked at: it is named, what is whole is shown, and looking writes nothing into the record."""

import pytest

from pentools.panels.bench import open_bench
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.finish.rates import bench_log
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.writeup.write import write_pages


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")
    job.add("intake", "arrival", {"pen": "a pen from the drawer"})
    with job.record.path.open("ab") as file:
        file.write(b'{"id":"torn')
    return job


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"])
def test_looking_at_it_shows_what_is_whole_and_writes_nothing(job, end):
    job.record.path.write_bytes(job.record.path.read_bytes().replace(b"\n", end))
    content = job.record.path.read_bytes()
    sheet = open_bench(job.folder)
    assert sheet.job.newest(ARRIVAL).pen == "a pen from the drawer"
    assert "torn off" in sheet.head.value
    [page] = write_pages(sheet.job, ["letter"])
    assert "from the drawer" in page.read_text(encoding="utf-8")
    assert bench_log(job.bench) == ()
    assert job.record.path.read_bytes() == content
    assert not list(job.folder.glob("record-*"))
