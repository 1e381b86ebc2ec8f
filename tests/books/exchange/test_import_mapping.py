"""A mapping is checked against the kit's own forms before a row is read."""

import pytest

from pentools.books.exchange.import_mapping import read_mapping
from pentools.errors import InputError


def read(tmp_path, text):
    (tmp_path / "map.toml").write_text(text, encoding="utf-8")
    return read_mapping(tmp_path / "map.toml")


def test_a_column_goes_into_a_field_of_an_entry(tmp_path):
    said = read(
        tmp_path,
        '[file]\ndelimiter = "tab"\n[columns]\nA = "work log/work:nib/minutes"\n'
        'B = { to = "intake/arrival/system", words = { " Hebel " = "lever-sac" } }\n[fixed]\n"work log/work:nib/activity" = "nib"\n',
    )
    assert said.file.delimiter == "\t"
    assert said.columns["A"].target.entry == ("work log", "work", "nib")
    assert said.columns["A"].target.field.name == "minutes"
    assert said.columns["B"].words == {"hebel": "lever-sac"}
    assert [(target.entry, target.field.name, text) for target, text in said.fixed] == [
        (("work log", "work", "nib"), "activity", "nib")
    ]


def test_two_columns_for_one_field_need_a_word_that_tells_them_apart(tmp_path):
    with pytest.raises(InputError, match="Tell two entries of one kind apart"):
        read(tmp_path, '[columns]\nA = "work log/work/minutes"\nB = "work log/work/minutes"\n')
    assert len(read(tmp_path, '[columns]\nA = "work log/work:a/minutes"\nB = "work log/work:b/minutes"\n').columns) == 2


@pytest.mark.parametrize(
    "text", ["", "[columns]\nA = 3\n", '[columns]\nA = { too = "x" }\n', "\x00", "[columns]\nA = [1]\n"]
)
def test_what_is_no_mapping_is_said(tmp_path, text):
    with pytest.raises(InputError, match="a mapping"):
        read(tmp_path, text)


def test_a_file_that_is_no_text_is_said(tmp_path):
    (tmp_path / "map.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(InputError, match="UTF-8"):
        read_mapping(tmp_path / "map.toml")
