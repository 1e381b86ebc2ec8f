"""A line is taken apart by its shape alone; what has not the shape of one whole object is nothing."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.record.members import members, names_twice

VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
)


@given(st.dictionaries(st.text(min_size=1), VALUES), st.booleans(), st.sampled_from([None, 1]))
def test_every_member_stands_as_it_was_written(given, ascii_only, indent):
    line = json.dumps(given, ensure_ascii=ascii_only, indent=indent).encode("utf-8", "surrogatepass")
    assert repr({name: json.loads(part) for name, part in members(line).items()}) == repr(given)


@pytest.mark.parametrize(
    "line",
    [b"", b"x", b"[]", b"7", b'"a"', b'{"a":1', b'{"a":1}}', b'{"a":1}{"b":2}', b'{"a"}', b'{"a":}', b'{"a":1,}', b"{,}",
     b'{"a":[1}', b'{"a":[1}]}', b'{a:1}', b'{"a":"x}', b'{"a":1}x', b'{"a":1,"b"}', b'{:1}'],
)  # fmt: skip
def test_what_is_not_one_whole_object_is_nothing(line):
    assert members(line) is None


def test_depth_and_length_do_not_matter():
    deep = b"[" * 300_000 + b"]" * 300_000
    assert members(b'{"a":' + deep + b',"b":1}') == {"a": deep, "b": b"1"}
    assert members(b'{"a":' + deep[:-1] + b',"b":1}') is None
    assert members(b'{"a":"' + b"\\\\" * 500_000 + b'"}') is not None


@pytest.mark.parametrize(
    ("line", "name"),
    [
        (b'{"a":1,"b":{"a":2},"c":[{"a":1},{"a":2}]}', ""),
        (b'{"a":1,"a":1}', "a"),
        (b'{"a":{"b":1,"c":[2,3],"b":{}}}', "b"),
        (b'{"a":"\\"b\\":1,\\"b\\":2"}', ""),
    ],
)
def test_a_name_given_twice_in_one_object_is_found(line, name):
    assert names_twice(line) == name
