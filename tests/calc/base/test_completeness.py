"""What is missing of what conservation guidance asks."""

import pytest

from pentools import tables
from pentools.calc.base.completeness import CONDITIONS, ReportRow, report_completeness
from pentools.errors import InputError

ROWS = tables.read(ReportRow, "report_fields")
KEYS = {row.key for row in ROWS}


def test_of_an_empty_record_everything_is_missing():
    result = report_completeness(ROWS, [])
    assert {field.key for field in result.missing} == KEYS
    assert not result.complete
    levels = [finding.level for finding in result.findings]
    assert levels == sorted(levels, key=["warning", "note"].index)


def test_of_a_full_record_nothing_is():
    result = report_completeness(ROWS, KEYS)
    assert result.complete
    assert [finding.level for finding in result.findings] == ["ok"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.key)
def test_each_field_alone_is_told(row):
    result = report_completeness(ROWS, KEYS - {row.key})
    assert [field.key for field in result.missing] == [row.key]
    assert result.complete == (row.level != "must")
    one_place = row.place[-1]
    assert not report_completeness([row], [one_place]).missing


def test_a_pen_that_is_not_treated_is_asked_for_less():
    untreated = report_completeness(ROWS, [], conditions=())
    asked = {field.key for field in untreated.missing}
    assert asked == {row.key for row in ROWS if not row.asked_if}
    assert "dated-log" not in asked
    assert "observation" in asked
    assert {row.asked_if for row in ROWS} <= {*CONDITIONS, None}


def test_not_applicable_needs_a_reason_and_stays_on_record():
    result = report_completeness(ROWS, [], not_applicable={"accessories": "it came alone"})
    field = next(f for f in result.fields if f.key == "accessories")
    assert (field.state, field.reason) == ("not applicable", "it came alone")
    with pytest.raises(InputError, match="does not apply"):
        report_completeness(ROWS, [], not_applicable={"accessories": " "})
    with pytest.raises(InputError, match="one of"):
        report_completeness(ROWS, [], not_applicable={"hat": "none"})
    with pytest.raises(InputError, match="one of treated"):
        report_completeness(ROWS, [], conditions=["lucky"])


def test_guidelines_24_to_28_and_spectrum_are_covered():
    sources = {key.strip() for row in ROWS for key in row.source.split(";")}
    assert {"aic-24", "aic-25", "aic-26", "aic-27", "aic-28", "spectrum-check", "spectrum-object"} <= sources
