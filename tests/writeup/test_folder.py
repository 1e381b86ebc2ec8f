"""A folder of files changes place as a whole, and what others laid into it stays."""

import os
import stat
from pathlib import Path

import pytest

from pentools.errors import RecordError
from pentools.writeup.folder import replace_folder


def content(folder):
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "writeup" / "post"


def test_what_an_earlier_writing_left_goes_and_what_others_laid_there_stays(folder):
    replace_folder(folder, {"post.html": b"1", "01-old.jpg": b"a"})
    (folder / "mine.jpg").write_bytes(b"m")
    (folder / "deep").mkdir()
    (folder / "deep" / "more.txt").write_bytes(b"d")
    replace_folder(folder, {"post.html": b"2", "01-new.jpg": b"b"})
    assert content(folder) == {"post.html": b"2", "01-new.jpg": b"b", "mine.jpg": b"m", "deep/more.txt": b"d"}
    assert sorted(p.name for p in folder.parent.iterdir()) == [".post-files.json", "post"]


@pytest.mark.skipif(os.name != "posix", reason="modes are those of POSIX")
def test_it_can_be_sent_by_a_server(folder):
    replace_folder(folder, {"post.html": b"1"})
    assert stat.S_IMODE(folder.stat().st_mode) == 0o755


def test_a_file_of_somebody_else_is_never_replaced(folder):
    replace_folder(folder, {"post.html": b"1"})
    (folder / "01-Side.jpg").write_bytes(b"mine")
    with pytest.raises(RecordError, match=r"post/01-Side\.jpg was not written from here"):
        replace_folder(folder, {"post.html": b"2", "01-side.jpg": b"new"})
    assert content(folder) == {"post.html": b"1", "01-Side.jpg": b"mine"}


@pytest.mark.parametrize("step", [0, 1, 2, 3])
def test_whatever_fails_the_folder_is_as_it_was(folder, monkeypatch, step):
    replace_folder(folder, {"post.html": b"1", "01-a.jpg": b"a"})
    count = iter(range(9))
    real_rename, real_open = Path.rename, Path.open

    def fail_at(number, real):
        def act(self, *args, **more):
            if next(count) == number:
                raise PermissionError(13, "held")
            return real(self, *args, **more)

        return act

    if step < 2:
        monkeypatch.setattr(Path, "rename", fail_at(step, real_rename))
    else:
        monkeypatch.setattr(Path, "open", fail_at(step - 2, real_open))
    with pytest.raises(RecordError, match="could not be written"):
        replace_folder(folder, {"post.html": b"2", "01-b.jpg": b"b"})
    monkeypatch.undo()
    assert content(folder) == {"post.html": b"1", "01-a.jpg": b"a"}
    assert sorted(p.name for p in folder.parent.iterdir()) == [".post-files.json", "post"]


def test_a_writing_that_was_cut_off_is_put_right(folder):
    replace_folder(folder, {"post.html": b"1"})
    (folder / "mine.txt").write_bytes(b"m")
    folder.rename(folder.parent / ".post-before")  # the power went between the two steps
    replace_folder(folder, {"post.html": b"2"})
    assert content(folder) == {"post.html": b"2", "mine.txt": b"m"}
    assert not (folder.parent / ".post-before").exists()


def test_without_a_list_only_files_of_the_same_name_are_taken_for_ours(folder):
    folder.mkdir(parents=True)
    (folder / "post.html").write_bytes(b"0")
    (folder / "holiday.jpg").write_bytes(b"h")
    replace_folder(folder, {"post.html": b"1"})
    assert content(folder) == {"post.html": b"1", "holiday.jpg": b"h"}
