"""The pages on disk."""

import pytest

from pentools.errors import HoldError, InputError, RecordError
from pentools.writeup.write import write_pages


def test_both_pages_are_written_with_a_line_each(small_job):
    lines = []
    pages = write_pages(small_job, ("client", "blog"), lines.append)
    assert [page.relative_to(small_job.folder).as_posix() for page in pages] == [
        "writeup/client.html",
        "writeup/blog.html",
    ]
    assert all(page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>") for page in pages)
    assert len(lines) == 2
    assert sorted(p.name for p in (small_job.folder / "writeup").iterdir()) == ["blog.html", "client.html"]


def test_a_page_is_replaced_in_one_piece(small_job, monkeypatch):
    [page] = write_pages(small_job, ("client",))
    before = page.read_bytes()
    monkeypatch.setattr(
        "pathlib.Path.replace", lambda *_: (_ for _ in ()).throw(OSError(28, "No space left on device"))
    )
    with pytest.raises(RecordError, match="could not be written"):
        write_pages(small_job, ("client",))
    assert page.read_bytes() == before
    assert [p.name for p in page.parent.iterdir()] == ["client.html"]


def test_without_consent_the_clients_page_is_written_and_the_other_is_held(new_job):
    job = new_job()
    lines = []
    with pytest.raises(HoldError, match="consent to publish is not recorded"):
        write_pages(job, ("blog", "client"), lines.append)
    assert [p.name for p in (job.folder / "writeup").iterdir()] == ["client.html"]
    assert "was not written" in lines[0]
    (job.folder / "writeup" / "blog.html").write_text("older")
    with pytest.raises(HoldError, match=r"An older blog\.html still lies in writeup/"):
        write_pages(job, ("blog",))


def test_an_audience_that_is_not_known_is_refused_before_anything_is_written(new_job):
    job = new_job()
    with pytest.raises(InputError):
        write_pages(job, ("client", "press"))
    assert not (job.folder / "writeup").exists()
