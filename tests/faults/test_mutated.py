"""Records spoilt at random: no line that can be read is lost, and nothing that looks at the job raises."""

import os
import random

import msgspec
import pytest
from faults import harmless

from pentools.errors import RecordError
from pentools.record.entries import Entry, decode_entry
from pentools.record.job import job_in

ROUNDS = int(os.environ.get("PENTOOLS_MUTATIONS", "1000"))
SEED = int(os.environ.get("PENTOOLS_SEED", "20261128"))
PAGES, PANELS = 50, 200  # of every so many rounds one is looked at with all pages, with all panels
PIECES = [b"null", b"true", b"-1", b"1e999", b"NaN", b"[]", b"{}", b"[[[[]]]]", b'""', b'"\\u0000"', b'"\\ud800"', b'"' + b"x" * 20_000 + b'"',
          b"9" * 400, b"1e15", b'{"value":-3,"unit":"mm","u":null,"typed":"x"}', b'["a",1]', b'"2026-02-30"', b"[" * 2000 + b"]" * 2000]  # fmt: skip
NAMES = [b'"at"', b'"id"', b'"stage"', b'"kind"', b'"data"', b'"note"', b'"replaces"', b'"value"', b'"unit"', b'"u"']
_plain = msgspec.json.Decoder(Entry)


def flip(lines, luck):
    """Bytes changed."""
    at = luck.randrange(len(lines))
    line = bytearray(lines[at] or b" ")
    for _ in range(luck.randint(1, 6)):
        line[luck.randrange(len(line))] = luck.randrange(256)
    lines[at : at + 1] = bytes(line).split(b"\n")


def cut(lines, luck):
    """A line cut short, at its end or its beginning."""
    at = luck.randrange(len(lines))
    place = luck.randrange(len(lines[at]) + 1)
    lines[at] = lines[at][:place] if luck.random() < 0.7 else lines[at][place:]


def join(lines, luck):
    """Two lines without the line end between them."""
    at = luck.randrange(max(1, len(lines) - 1))
    lines[at : at + 2] = [b"".join(lines[at : at + 2])]


def swap(lines, luck):
    """Lines out of order, one of them perhaps twice or gone."""
    one, other = luck.randrange(len(lines)), luck.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]
    if luck.random() < 0.3:
        lines.insert(one, lines[other])
    elif len(lines) > 1 and luck.random() < 0.3:
        del lines[one]


def replace(lines, luck):
    """Another value in the place of one, at any depth."""
    at = luck.randrange(len(lines))
    line = lines[at]
    places = [i for i, sign in enumerate(line) if sign == ord(":") and line[i - 1 : i] == b'"']
    if places:
        start = luck.choice(places) + 1
        lines[at] = line[:start] + luck.choice(PIECES) + line[start + _length(line[start:]) :]


def _length(text):
    """How long the value is that a text begins with."""
    depth, quoted, escaped = 0, False, False
    for place, sign in enumerate(text):
        if quoted:
            quoted, escaped = escaped or sign != ord('"'), not escaped and sign == ord("\\")
        elif depth == 0 and sign in b",}]":
            return place
        elif sign == ord('"'):
            quoted = True
        else:
            depth += (sign in b"{[") - (sign in b"}]")
    return len(text)


def names(lines, luck):
    """A name changed for another."""
    at = luck.randrange(len(lines))
    lines[at] = lines[at].replace(luck.choice(NAMES), luck.choice(NAMES), 1)


MUTATIONS = (flip, cut, join, swap, replace, replace, replace, names)


def spoilt(sample, luck):
    """A sample's lines after one to eight mutations."""
    lines = harmless.record_of(sample).splitlines()
    for _ in range(luck.choice((1, 1, 2, 3, 5, 8))):
        luck.choice(MUTATIONS)(lines, luck)
    return lines


def readable(lines):
    """Ids of the lines that a plain reader takes for entries, and whose time a clock could say."""
    for line in lines:
        try:
            entry = _plain.decode(line)
            decode_entry(line)
        except (RecordError, msgspec.MsgspecError, RecursionError, ValueError):
            continue
        yield entry.id


@pytest.mark.parametrize("part", range(10))
def test_a_spoilt_record_harms_nothing(part, tmp_path):
    luck = random.Random(SEED + part)
    each = max(1, ROUNDS // 10)
    for number in range(part * each, (part + 1) * each):
        sample = luck.choice(harmless.SAMPLES)
        lines = spoilt(sample, luck)
        content = b"\n".join(lines) + b"\n"
        folder = harmless.lay_out(tmp_path, sample, content)
        said = f"round {number}, {sample}"
        job = job_in(folder)
        kept = {entry.id for entry in job.record.entries}
        assert [name for name in readable(lines) if name not in kept] == [], said
        assert harmless.looked_at(job) == [], said
        if number % PAGES == 0:
            assert harmless.paged(job) == [], said
        if number % PANELS == 0:
            assert [*harmless.panelled(job), *harmless.commanded(folder)] == [], said
        assert (folder / "record.jsonl").read_bytes() == content, said
