"""The pages on disk."""

import pytest

from pentools.errors import HoldError, InputError, RecordError
from pentools.writeup.write import write_pages


def test_the_pages_are_written_with_a_line_each(small_job):
    lines = []
    pages = write_pages(small_job, ("letter", "record", "story"), lines.append)
    assert [page.relative_to(small_job.folder).as_posix() for page in pages] == [
        "writeup/client.html",
        "writeup/record.html",
        "writeup/blog.html",
    ]
    assert all(page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>") for page in pages)
    assert len(lines) == 3
    assert sorted(p.name for p in (small_job.folder / "writeup").iterdir()) == [
        "blog.html",
        "client.html",
        "record.html",
    ]


def test_a_page_is_replaced_in_one_piece(small_job, monkeypatch):
    [page] = write_pages(small_job, ("letter",))
    before = page.read_bytes()
    monkeypatch.setattr(
        "pathlib.Path.replace", lambda *_: (_ for _ in ()).throw(OSError(28, "No space left on device"))
    )
    with pytest.raises(RecordError, match="could not be written"):
        write_pages(small_job, ("letter",))
    assert page.read_bytes() == before
    assert [p.name for p in page.parent.iterdir()] == ["client.html"]


def test_without_consent_the_clients_page_is_written_and_the_other_is_held(new_job):
    job = new_job()
    lines = []
    with pytest.raises(HoldError, match="consent to publish is not recorded"):
        write_pages(job, ("story", "letter"), lines.append)
    assert [p.name for p in (job.folder / "writeup").iterdir()] == ["client.html"]
    assert "Not written: the page for publication" in lines[0]
    (job.folder / "writeup" / "blog.html").write_text("older")
    with pytest.raises(HoldError, match=r"An older blog\.html still lies in writeup/"):
        write_pages(job, ("story",))
    (job.folder / "writeup" / "blog.pdf").write_bytes(b"older")
    with pytest.raises(HoldError, match=r"An older blog\.html and blog\.pdf still lie in writeup/"):
        write_pages(job, ("story",))


def test_a_form_that_is_not_known_is_refused_before_anything_is_written(new_job):
    job = new_job()
    with pytest.raises(InputError):
        write_pages(job, ("letter", "press"))
    assert not (job.folder / "writeup").exists()
