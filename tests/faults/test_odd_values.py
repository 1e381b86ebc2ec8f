"""An odd value blocks nothing but its own entry: every field of every kind × every wrong type, and values at the edge of sense."""

import itertools
import os
import re

import pytest
from faults import harmless
from faults.harmless import line_of, record_of
from record.odd_values import ODD_PARTS, WRONG, line_with

from pentools.books.tables.ledger import ledger
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.entries import OddEntry
from pentools.record.holds import state_of
from pentools.record.job import create_job, job_in
from pentools.record.registry import all_stages
from pentools.record.review import review
from pentools.record.stages.weighing.kinds import WEIGHING
from pentools.units import may_be_negative
from pentools.writeup.forms import files_of, page_forms
from pentools.writeup.notebook import read_notebook

KINDS = [(stage.key, kind) for stage in all_stages() for kind in stage.kinds]
SAMPLE = "green-piston"
MORE = ("\x00", "\x1b[31m", [[1], {"a": 2}], {"value": "x"}, [[[[[[[[1]]]]]]]])
EVERYTHING = os.environ.get("PENTOOLS_FAULTS") == "all"  # minutes instead of seconds


def in_its_own_unit(field):
    """Readings in the field's unit with one thing wrong, and numbers out of a hard range."""
    if field.kind in ("quantity", "quantities"):
        sound = {"value": 1.0, "unit": field.unit, "u": None, "typed": ""}
        odd = [{"value": value} for value in ("1", True, None, [1], 10**400, -(10**400))]
        odd += [{"u": u} for u in ("x", True, -1, 10**400)] + [{"typed": typed} for typed in (3, "\x00", "9" * 121)]
        odd += [] if may_be_negative(field.unit, field.negative) else [{"value": -1}]
        readings = [{**sound, **one} for one in odd]
        return readings if field.kind == "quantity" else [[sound, one] for one in readings]
    if field.kind in ("number", "count"):
        low = 0 if field.kind == "count" and field.low is None else field.low
        return [bound + step for bound, step in ((low, -1), (field.high, 1)) if bound is not None]
    return []


def odd_lines(stage, kind):
    """A line for each wrong value of each field of a kind."""
    for field in kind.fields:
        for value in (*WRONG[field.kind], *in_its_own_unit(field), *MORE):
            yield line_of(stage, kind.key, {field.name: value})


def all_odd_lines():
    return [line for stage, kind in KINDS for line in odd_lines(stage, kind)]


@pytest.fixture(scope="module")
def spoilt(tmp_path_factory):
    """A sample as it is, and the same with every wrong value of every field of every kind written behind it."""
    bench = open_bench_folder(tmp_path_factory.mktemp("odd") / "bench", create=True)
    whole = create_job(bench, "whole", sample=SAMPLE)
    odd = create_job(bench, "odd", sample=SAMPLE)
    with odd.record.path.open("ab") as file:
        file.write(b"".join(all_odd_lines()))
    return whole, job_in(odd.folder)


def test_each_of_them_is_named_and_nothing_else_changes(spoilt):
    whole, odd = spoilt
    added = len(odd.record.entries) - len(whole.record.entries)
    assert added == len(all_odd_lines()) > 4000
    for _, kind in KINDS:
        assert [logged.values for logged in odd.log(kind)] == [logged.values for logged in whole.log(kind)], kind
    assert {s.key: state_of(odd, s) for s in all_stages()} == {s.key: state_of(whole, s) for s in all_stages()}
    unread = [f for f in review(odd) if f.key == "job.value:unread"]
    assert len(unread) == added
    assert sorted(f.text for f in review(odd) if f.key != "job.value:unread") == sorted(f.text for f in review(whole))
    assert all(len(f.text) < 1500 for f in unread)


def test_the_bench_counts_both_jobs_alike(spoilt):
    whole, _ = spoilt
    rows = ledger(whole.bench.folder).jobs.drop(columns=["job", "entries", "first_day", "last_day"])
    assert len(rows) == 2
    assert rows.iloc[0].equals(rows.iloc[1])


def test_pages_panels_and_commands_work_and_the_story_shows_nothing_of_them(spoilt):
    _, odd = spoilt
    assert harmless.looked_at(odd) + harmless.paged(odd) + harmless.panelled(odd) + harmless.commanded(odd.folder) == []
    story = page_forms(["story"])[0]
    stories = [files_of(story, job, read_notebook(job.notebook), draft=True)["blog.html"] for job in spoilt]
    stories = [re.sub(r"\b(c|[a-z]+-)\d+-", "n-", page) for page in stories]  # numbered as drawn
    assert stories[0] == stories[1]


def test_lines_that_can_only_be_placed_are_named_and_the_rest_counts(tmp_path):
    base = record_of(SAMPLE)
    odd = [
        line_with(**{"id": f'"{number}"', "stage": f'"{stage}"', "kind": f'"{kind.key}"', **parts})
        for number, ((stage, kind), (parts, _)) in enumerate(itertools.product(KINDS, ODD_PARTS.values()))
    ]
    folder = harmless.lay_out(tmp_path, SAMPLE, b"\n".join([base.rstrip(), *odd, b""]))
    job = job_in(folder)
    assert sum(isinstance(entry, OddEntry) for entry in job.record.entries) == len(odd)
    for (parts, reason), _ in zip(ODD_PARTS.values(), odd, strict=False):
        assert any(reason in f.text for f in review(job) if f.key == "job.value:unread"), parts
    assert harmless.everything(folder) == []
    other = create_job(open_bench_folder(tmp_path), "other", sample="lever-with-limits")
    alone = create_job(open_bench_folder(tmp_path / "alone", create=True), "other", sample="lever-with-limits")
    assert [str(f) for f in review(other)] == [str(f) for f in review(alone)]
    assert {s.key: state_of(other, s) for s in all_stages()} == {s.key: state_of(alone, s) for s in all_stages()}


def test_an_odd_entry_stands_in_the_log_and_can_be_taken_back(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen")
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    with job.record.path.open("ab") as file:
        file.write(line_with(stage='"fill test"', kind='"weighing"', data='{"mass":NaN}') + b"\n")
    job.record.refresh()
    panel = harmless.panel_of(BenchSheet(job), "fill test")
    assert "cannot be read: JSON is malformed" in panel.log.table.value
    panel.log.pick.value, panel.log.why.value = "a", "another program wrote it"
    panel.log.withdraw_button.click()
    assert "withdrawn" in panel.log.status.text
    assert "cannot be read" not in panel.log.table.value
    assert [f for f in review(job) if f.key == "job.value:unread"] == []
    assert [logged.values.mass.value for logged in job.log(WEIGHING)] == [15]


# values that can be read and make little sense: they may be refused by a calculation, in words
TEXTS = ["", " ", "-", "?", "½½ zonk", "9" * 400, "1/0", "1/" + "9" * 5000, "nan", "1e999", "-5 EUR", "999999999999999999999999 EUR",
         "2026-99-99", "1/1/0001", "9999/10000", "%s{0}{x}", "<!--", "]]>", "</svg>", "\u202eabc", "\u2028", "\ufffe", "x" * 5000, "\r\n\r\n"]  # fmt: skip


def at_the_edge(field):
    """Values of a field that are of its type, and extreme."""

    def reading(value=1.0, u=None, typed=""):
        return {"value": value, "unit": field.unit, "u": u, "typed": typed}

    numbers = [0.0, -0.0, 5e-324, 1e-9, 1e6, 1e15, -1.0, -1e15]
    readings = [
        *map(reading, numbers),
        reading(u=0.0),
        reading(u=1e15),
        reading(typed="½½ zonk"),
        reading(typed="9" * 120),
    ]
    return {
        "quantity": readings,
        "quantities": [[], *([one] for one in readings), [reading()] * 300, [reading(), reading(1e15)]],
        "number": numbers,
        "count": [0, 1, 10**6, 10**15],
        "choice": [key for key, _ in field.choices],
        "ticks": [[], [key for key, _ in field.choices], [field.choices[0][0]] * 300] if field.choices else [],
        "yes-no": [True, False],
        "date": ["0001-01-01", "9999-12-31", "2062-01-01"],
        "photo": ["a.jpg", "x" * 200 + ".png"],
        "items": [[], [""], ["x" * 5000], ["a"] * 500],
    }.get(field.kind, TEXTS)


@pytest.mark.parametrize("sample", harmless.SAMPLES)
def test_values_at_the_edge_of_sense_are_answered_in_words(sample, tmp_path):
    kinds = KINDS[harmless.SAMPLES.index(sample) :: len(harmless.SAMPLES)] if not EVERYTHING else KINDS
    base = record_of(sample)
    for stage, kind in kinds:
        alone = [line_of(stage, kind.key, {field.name: value}) for field in kind.fields for value in at_the_edge(field)]
        for lines in [[line] for line in alone] if EVERYTHING else [alone, alone[::-1]]:
            folder = harmless.lay_out(tmp_path, sample, base + b"".join(lines))
            assert harmless.looked_at(job_in(folder)) == [], lines[-1][:300]
