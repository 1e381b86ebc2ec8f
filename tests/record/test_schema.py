"""The published form of a record: kept true to the declarations, met by every sample, and as strict as the reader."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from record.odd_values import WRONG

from pentools.record.entries import encode_entry, new_entry
from pentools.record.job import shipped_folder
from pentools.record.layout import sample_names
from pentools.record.registry import all_stages
from pentools.record.schema import record_schema, schema_text

FILE = Path(__file__).resolve().parents[2] / "docs" / "record.schema.json"
CHECK = Draft202012Validator(record_schema())


def line(stage, kind, data):
    return json.loads(encode_entry(new_entry(stage, kind, data)))


def test_the_file_is_what_the_declarations_make():
    assert FILE.read_text(encoding="utf-8") == schema_text(), (
        "python -m pentools.record.schema > docs/record.schema.json"
    )


def test_it_is_a_schema():
    Draft202012Validator.check_schema(record_schema())


@pytest.mark.parametrize("name", sample_names())
def test_every_line_of_every_sample_meets_it(name):
    lines = (shipped_folder("sample_jobs") / name / "record.jsonl").read_text(encoding="utf-8").splitlines()
    assert [error.message for text in lines for error in CHECK.iter_errors(json.loads(text))] == []


def test_it_refuses_what_the_reader_refuses():
    let_through = []
    for stage in all_stages():
        for kind in stage.kinds:
            needed = {field.name: None for field in kind.fields if field.required}
            for field in kind.fields:
                for odd in WRONG[field.kind]:
                    found = CHECK.iter_errors(line(stage.key, kind.key, {**needed, field.name: odd}))
                    if not any(field.name in error.absolute_path for error in found):
                        let_through.append((field.kind, str(odd)[:20]))
    # a calendar is more than a pattern can know
    assert set(let_through) <= {("date", "2026-02-30"), ("photo", "script.svg")}


@pytest.mark.parametrize(
    ("stage", "kind", "data", "good"),
    [
        ("limits", "withdrawal", {"reason": "typed twice"}, True),
        ("limits", "withdrawal", {}, False),
        ("release", "hold release", {"hold": "release", "reason": "it is mine"}, True),
        ("release", "hold release", {"hold": "release"}, False),
        ("unheard of", "thing", {"what": 3}, True),
        ("work log", "timer start", {}, False),
        ("work log", "timer start", {"activity": "clean"}, True),
        ("fill test", "weighing", {"state": "dry", "mass": {"value": 15, "unit": "g"}, "later": "kept"}, True),
        ("fill test", "weighing", {"state": "dry"}, False),
    ],
)
def test_lines_of_every_sort(stage, kind, data, good):
    assert CHECK.is_valid(line(stage, kind, data)) is good


@pytest.mark.parametrize("at", ["2026-03-01T10:00:00", "yesterday", "2026-03-01"])
def test_a_time_needs_a_zone(at):
    assert not CHECK.is_valid({**line("limits", "limit", {"part": "cap", "left": "a", "why": "b"}), "at": at})
