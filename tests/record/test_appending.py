"""Writing: in one piece or not at all, nothing written over, and a lock that never makes a folder."""

import errno
import os

import pytest

from pentools.errors import RecordError
from pentools.record import appending
from pentools.record.appending import append_block, close_tail, locked, put_in_place, set_aside


@pytest.fixture
def path(tmp_path):
    return tmp_path / "record.jsonl"


@pytest.fixture
def full(monkeypatch):
    """A disk with room for five more bytes."""
    real = os.write

    def write(handle, block):
        real(handle, block[:5])
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("pentools.record.appending.os.write", write)


def there(path):
    return {p.name: p.read_bytes() for p in path.parent.iterdir() if p.name != ".record.lock"}


def test_a_full_disk_leaves_the_file_as_it_was(path, full):
    path.write_bytes(b"{}\n")
    with pytest.raises(OSError, match="No space"):
        append_block(path, b"{1}\n", fresh=False)
    assert there(path) == {path.name: b"{}\n"}
    with pytest.raises(OSError, match="No space"):
        put_in_place(path, b"longer than five")
    with pytest.raises(OSError, match="No space"):
        set_aside(path, "torn", b"longer than five")
    assert there(path) == {path.name: b"{}\n"}


def test_a_full_disk_leaves_no_new_file(path, full):
    with pytest.raises(OSError, match="No space"):
        append_block(path, b"{1}\n", fresh=True)
    assert there(path) == {}


def test_the_torn_piece_stays_where_it_cannot_be_set_aside(path, full):
    path.write_bytes(b'{}\n{"torn')
    with pytest.raises(OSError, match="No space"):
        close_tail(path)
    assert there(path) == {path.name: b'{}\n{"torn'}


def test_a_file_that_is_gone_is_not_made_again(path):
    with pytest.raises(FileNotFoundError):
        append_block(path, b"{}\n", fresh=False)
    path.write_bytes(b"another's\n")
    with pytest.raises(FileExistsError):
        append_block(path, b"{}\n", fresh=True)
    assert path.read_bytes() == b"another's\n"


def test_what_is_set_aside_in_one_second_is_never_written_over(path):
    names = [set_aside(path, "unlike", str(n).encode()) for n in range(5)]
    assert [name.read_bytes() for name in names] == [b"0", b"1", b"2", b"3", b"4"]
    assert all(name.match("record-unlike-*.txt") for name in names)


def test_too_many_in_one_second_are_refused_in_words(path, monkeypatch):
    moment = appending.now()
    monkeypatch.setattr("pentools.record.appending.now", lambda: moment)
    for _ in range(1000):
        set_aside(path, "torn", b"")
    with pytest.raises(RecordError, match="within one second"):
        set_aside(path, "torn", b"")


@pytest.mark.parametrize(
    ("tail", "left"),
    [
        (b'{"id":"a"}', b'{}\n{"id":"a"}\n'),
        (b'{"id":"a"}\r', b'{}\n{"id":"a"}\r\n'),
        (b"  ", b"{}\n  \n"),
        (b'{"id":"a"', b"{}\n"),
        (b"12", b"{}\n"),
        (b"\xff\xfe", b"{}\n"),
        (b"\0" * 100, b"{}\n"),
        (b'{"a":' * 5000 + b"1" + b"}" * 5000, None),
        (b'{"a":' * 5000, b"{}\n"),
    ],
)
def test_a_last_line_without_an_end_is_kept_where_it_is_a_whole_object(path, tail, left):
    path.write_bytes(b"{}\n" + tail)
    said = close_tail(path)
    assert path.read_bytes() == (left or b"{}\n" + tail + b"\n")
    aside = [p.read_bytes() for p in path.parent.glob("record-torn-*.txt")]
    assert aside == ([tail] if left == b"{}\n" else [])
    assert bool(said) == (left == b"{}\n")


def test_a_lock_makes_no_folder(tmp_path):
    with pytest.raises(RecordError, match="moved, renamed or deleted"), locked(tmp_path / "gone" / "record.jsonl", 1):
        pass
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name != "posix", reason="this system keeps no such rights")
def test_what_is_written_is_its_owners_alone(path):
    append_block(path, b"{}\n", fresh=True)
    aside = set_aside(path, "torn", b"x")
    put_in_place(path.with_name("anew"), b"x")
    with locked(path, 1):
        pass
    for made in (path, aside, path.with_name("anew"), path.with_name(".record.lock")):
        assert made.stat().st_mode & 0o777 == 0o600


def test_it_is_forced_to_disk_before_it_is_said_to_be_there(path, monkeypatch):
    forced = []
    real = os.fsync
    monkeypatch.setattr(
        "pentools.record.appending.os.fsync", lambda handle: (forced.append(size(handle)), real(handle))
    )

    def size(handle):
        return os.fstat(handle).st_size if not os.path.isdir(f"/proc/self/fd/{handle}") else "folder"

    append_block(path, b"{}\n", fresh=True)
    assert forced[-1] == 3
    if os.path.isdir("/proc/self/fd"):
        assert forced == ["folder", 3]
