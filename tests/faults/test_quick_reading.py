"""The quick way into the tables gives what the careful reader gives, whatever has happened to a record."""

import random

import msgspec
import pytest
from books.by_the_careful_reader import assert_same
from faults.harmless import SAMPLES, record_of
from faults.test_mutated import cut, flip, join, names, replace, swap
from faults.test_odd_values import all_odd_lines

from pentools.books.tables import records_read
from pentools.books.tables.pages import pages_of
from pentools.record.bench import open_bench_folder
from pentools.record.entries import Entry
from pentools.record.job import create_job, job_in
from pentools.record.storage import Record

MARK = b"\xef\xbb\xbf"


@pytest.fixture
def read(tmp_path):
    """Reads a record of the given bytes both ways; gives back whether the careful reader was needed for the tables."""
    bench = open_bench_folder(tmp_path / "bench", create=True)
    folder = create_job(bench, "pen").folder

    def told(content):
        (folder / "record.jsonl").write_bytes(content)
        asked = []
        with pytest.MonkeyPatch.context() as patch:
            careful = records_read._carefully
            patch.setattr(records_read, "_carefully", lambda *given: asked.append(1) or careful(*given))
            unread, pages = pages_of(bench, ["pen"])
        assert unread == {}
        assert_same(job_in(folder), pages)
        return bool(asked)

    return told


def again(line):
    """A line as the kit itself would write it."""
    return msgspec.json.encode(msgspec.json.decode(line, type=Entry))


@pytest.mark.parametrize("sample", SAMPLES)
def test_samples(read, sample):
    lines = record_of(sample).splitlines()
    read(b"".join(line + b"\n" for line in lines))
    assert not read(b"".join(again(line) + b"\n" for line in lines))


def spoilt_files():
    lines = record_of("short-breather").splitlines()
    first, *rest = lines
    whole = b"\n".join(lines) + b"\n"
    twice = first.replace(b'"data":{', b'"data":{"pen":"another","pen":"one",', 1)
    yield from {
        "nothing": b"",
        "torn": whole[:-40],
        "no end": whole[:-1],
        "marked": MARK + whole,
        "marked within": whole.replace(b"\n", b"\n" + MARK, 3),
        "carriage returns": whole.replace(b"\n", b"\r\n"),
        "blank lines": whole.replace(b"\n", b"\n\n", 5),
        "spaces": whole.replace(b'":', b'": '),
        "newer form": whole.replace(b'"format":1', b'"format":2', 4),
        "a name twice": b"\n".join([twice, *rest, b""]),
        "an id twice": whole + first + b"\n",
        "no id": whole.replace(lines[3][7:39], b"", 1),
        "blank id": whole.replace(lines[3][7:39], b"   ", 1),
        "a line end in the data": whole.replace(b'"data":{', b'"data":{\n', 1),
        "a control character": whole.replace(b'"note":""', b'"note":"\\u0007"', 1),
        "another half of a sign": whole.replace(b'"note":""', b'"note":"\\ud800"', 1),
        "no zone": whole.replace(b"+02:00", b"", 1).replace(b"+01:00", b"", 1),
        "an impossible day": whole.replace(lines[5][47:57], b"2026-02-30", 1),
        "a fraction of a second": whole.replace(b":00+02:00", b":00.25+02:00", 2),
        "universal time": whole.replace(b"+02:00", b"Z", 3),
        "an older order": b"\n".join([lines[-1], *lines[:-1], b""]),
        "a number without end": whole.replace(b'"value":', b'"value":1e999,"x":', 1),
        "an unknown kind": whole.replace(b'"kind":"weighing"', b'"kind":"weighing by ear"', 2),
        "unknown fields": whole.replace(b'"data":{', b'"data":{"hue":[1,{"a":2}],', 6),
    }.items()  # fmt: skip


@pytest.mark.parametrize(("what", "content"), list(spoilt_files()))
def test_spoilt_files(read, what, content):
    read(content)


def test_a_merged_record(read, tmp_path):
    for name, keep in (("mine", slice(0, 70)), ("theirs", slice(30, None))):
        lines = record_of("short-breather").splitlines()[:40] + record_of("short-breather").splitlines()[40:][keep]
        (tmp_path / name).write_bytes(b"".join(line + b"\n" for line in dict.fromkeys(lines)))
    record = Record.open(tmp_path / "mine")
    record.merge(tmp_path / "theirs")
    read(record.path.read_bytes())


def test_every_wrong_value_written_as_the_kit_writes(read):
    lines = []
    for line in all_odd_lines():
        try:
            lines.append(again(line))
        except msgspec.ValidationError:
            continue
    content = record_of("green-piston") + b"".join(line + b"\n" for line in lines if b"\\u" not in line)
    assert len(lines) > 3000
    assert not read(content)
    read(content + b"\n".join(lines))


def test_files_spoilt_at_random(read):
    luck = random.Random(20261128)
    careful = []
    for _ in range(60):
        lines = record_of(luck.choice(("button-in-an-evening", "lever-with-limits", "green-piston"))).splitlines()
        for _ in range(luck.randint(1, 3)):
            luck.choice((flip, cut, join, swap, replace, names))(lines, luck)
        careful.append(read(b"".join(line + b"\n" for line in lines)))
    assert any(careful)
    assert not all(careful)
