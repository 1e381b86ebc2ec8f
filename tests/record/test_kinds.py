"""An odd value makes its entry unreadable, with a reason that names the field, and stops nothing else."""

import pytest
from record.odd_values import GRAM, MANY, WRONG

from pentools.errors import RecordError
from pentools.record.entries import new_entry
from pentools.record.job import create_job, job_in
from pentools.record.layout import sample_names
from pentools.record.registry import all_stages
from pentools.record.review import review
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.kinds import WEIGHING


def test_every_field_of_every_kind_refuses_every_wrong_type():
    tried = 0
    for stage in all_stages():
        for kind in stage.kinds:
            for field in kind.fields:
                for odd in WRONG[field.kind]:
                    with pytest.raises(RecordError) as caught:
                        kind.decode(new_entry(stage.key, kind.key, {field.name: odd}))
                    assert field.label in str(caught.value)
                    assert len(str(caught.value)) < 1500
                    tried += 1
    assert tried > 2000


def test_an_odd_entry_is_passed_by_and_named(new_job):
    job = new_job()
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    job.record.append(new_entry("fill test", "weighing", {"state": "soggy", "mass": GRAM}))
    job.record.append(new_entry("intake", "arrival", {"pen": "a pen", "capped_mm": {"value": MANY, "unit": "mm"}}))
    assert [logged.values.state for logged in job.log(WEIGHING)] == ["dry"]
    assert job.newest(ARRIVAL) == ARRIVAL.form()
    named = [finding.text for finding in review(job) if finding.topic == "value"]
    assert len(named) == 2
    assert any(
        "State of the pen must be one of: dry, drained, filled, stroke, gain: got “soggy”" in text for text in named
    )
    assert any("Length capped must be a quantity in mm" in text for text in named)


def test_what_is_kept_comes_back_as_it_was(new_job):
    job = new_job()
    job.add("fill test", "weighing", {"state": "filled", "mass": "16.42 ± 0.02 g", "strokes": "3"})
    again = job_in(job.folder).newest(WEIGHING)
    assert again == job.newest(WEIGHING)
    assert (again.state, again.mass.value, again.mass.standard_uncertainty, again.strokes) == ("filled", 16.42, 0.02, 3)


@pytest.mark.parametrize("name", sample_names())
def test_shipped_records_all_read(bench, name):
    job = create_job(bench, "job", sample=name)
    assert [finding.text for finding in review(job) if finding.topic in ("value", "unknown", "file")] == []
