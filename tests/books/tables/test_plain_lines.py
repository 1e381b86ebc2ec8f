"""Which records are read at once, which of their lines count, and times as numbers against the library's own reading."""

import datetime as dt
import random

import pytest

from pentools.books.tables.plain_lines import counting, moments, plain_lines
from pentools.record.entries import WITHDRAWAL, Entry, encode_entry
from pentools.record.storage import Record

EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)


def entry(name, kind="work", replaces=None, note=""):
    return Entry(
        id=name, at="2026-03-09T10:12:00+01:00", stage="work log", kind=kind, data={}, note=note, replaces=replaces
    )


def written(*entries):
    return b"".join(encode_entry(one) + b"\n" for one in entries)


def test_a_record_as_the_kit_writes_it_is_read_at_once_and_any_other_is_not():
    content = written(entry("a"), entry("b", note="20 ± 1 °C, “ink”"), entry("c", replaces="a"))
    assert [line.id for line in plain_lines(content)] == ["a", "b", "c"]
    assert plain_lines(b"") == []
    for odd in (content[:-1], content.replace(b"\n", b"\r\n"), content + b"\n", content.replace(b'":', b'": '),
                content.replace(b'"b"', b'"a"'), content.replace(b'"b"', b'" "'), content.replace(b'"b"', b'""'),
                content.replace(b'"replaces":"a"', b'"replaces":" "'), content.replace(b'"format":1', b'"format":2'),
                content.replace(b"20", b"\\u0007"), content.replace("°".encode(), b"\xc2\x85"),
                content.replace(b'"kind":"work"', b'"kind":"merge order"'), content.replace(b'"note":"",', b"")):  # fmt: skip
        assert odd != content
        assert plain_lines(odd) is None


@pytest.mark.parametrize("seed", range(40))
def test_those_count_that_count_in_a_record(seed, tmp_path):
    luck = random.Random(seed)
    names = [f"e{number}" for number in range(12)]
    entries = [
        entry(name, luck.choice(("work", "note", WITHDRAWAL)), luck.choice((None, None, luck.choice([*names, "gone"]))))
        for name in names
    ]
    (tmp_path / "record.jsonl").write_bytes(written(*entries))
    wanted = [one.id for one in Record.open(tmp_path / "record.jsonl").live()]
    assert [line.id for line in counting(plain_lines(written(*entries)))] == wanted


def test_a_withdrawal_that_names_nothing_does_not_count():
    lines = plain_lines(written(entry("a"), entry("b", WITHDRAWAL), entry("c")))
    assert [line.id for line in counting(lines)] == ["a", "c"]


def test_times_are_those_that_the_library_reads():
    luck = random.Random(5)
    digits = [f"{luck.randint(1960, 2210):04}-{luck.randint(0, 13):02}-{luck.randint(0, 32):02}T{luck.randint(0, 25):02}:"
              f"{luck.randint(0, 61):02}:{luck.randint(0, 61):02}{luck.choice('+-')}{luck.randint(0, 25):02}:{luck.randint(0, 61):02}"
              for _ in range(4000)]  # fmt: skip
    odd = ["", "2026-03-09T10:12:00Z", "2026-03-09 10:12:00+01:00", "2026-03-09T10:12:00,01:00", "x" * 25, "²" * 25]
    sound_days = ["2024-02-29T23:59:59-05:30", "2100-02-28T00:00:00+14:00", "1969-01-01T00:00:00+00:00"]
    texts = [*digits, *odd, *sound_days, "2100-02-29T00:00:00+00:00", "2023-02-29T10:00:00+01:00"]
    moment, day, sound = moments(texts)
    for place, text in enumerate(texts):
        try:
            wanted = dt.datetime.fromisoformat(text)
            fits = 1969 <= wanted.year < 2200 and len(text) == 25 and text[10] == "T" and text[-2:] < "60"
        except ValueError:
            fits = False
        assert sound[place] == fits, text
        if fits:
            assert EPOCH + dt.timedelta(microseconds=int(moment[place])) == wanted
            assert EPOCH.date() + dt.timedelta(days=int(day[place])) == wanted.date()
    assert sound.sum() > 500
