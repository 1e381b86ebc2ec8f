"""A form's attributes are its fields, typed as their kind says; a wrong name is found before anything runs."""

from typing import Annotated

import pytest
from mypy import api

from pentools.fields import ask
from pentools.record.forms import Form, asked_by, fields_of
from pentools.record.registry import all_stages
from pentools.record.stages.common import system_choices
from pentools.record.stages.weighing.kinds import DIMENSIONS, SETUP
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.sums.weighing.capacity import CAPACITY, dimension_fields
from pentools.sums.weighing.leak import LEAK
from pentools.units import Reading


def test_every_form_agrees_with_its_fields():
    for stage in all_stages():
        assert len({kind.key for kind in stage.kinds}) == len(stage.kinds)
        for kind in stage.kinds:
            assert kind.stage == stage.key
            assert [field.name for field in kind.fields] == list(kind.form.__struct_fields__)
            assert all(field.label for field in kind.fields)


def test_a_form_whose_type_is_not_its_fields_is_refused():
    class Wrong(Form, frozen=True):
        mass: Annotated[str | None, ask("Mass", "quantity", unit="g")] = None

    class Never(Form, frozen=True):
        mass: Annotated[Reading, ask("Mass", "quantity", unit="g")] = None

    class Bare(Form, frozen=True):
        mass: Reading | None = None

    for form, words in ((Wrong, "Wrong.mass is a quantity"), (Never, "Never.mass"), (Bare, "Bare.mass has no field")):
        with pytest.raises(TypeError, match=words):
            fields_of(form)


def test_a_form_takes_over_what_a_sum_asks():
    hole = next(field for field in KNOCKOUT.fields if field.required)

    class Tool(Form, frozen=True):
        pass

    taken = asked_by(KNOCKOUT, required=False, usual=False)(hole.name)
    assert (taken.label, taken.low, taken.high, taken.unit) == (hole.label, hole.low, hole.high, hole.unit)
    assert (taken.required, taken.default, taken.audience) == (False, "", "everybody")
    assert asked_by(KNOCKOUT)(hole.name).required is True
    with pytest.raises(TypeError, match="asks for no wing"):
        asked_by(KNOCKOUT)("wing")


def test_the_fill_test_asks_for_every_dimension_of_every_system():
    wanted = {field.name for key, _ in system_choices() for field in dimension_fields(key)}
    assert {field.name for field in DIMENSIONS.fields} == wanted
    asked = {field.name for field in (*CAPACITY.fields, *LEAK.fields)}
    assert {field.name for field in SETUP.fields} | wanted <= asked


PLANTED = """
from pentools.record.job import Job
from pentools.record.stages.weighing.kinds import WEIGHING

def right(job: Job) -> float | None:
    mass = job.newest(WEIGHING).mass
    return None if mass is None else mass.value

def also_right(job: Job) -> list[str | None]:
    return [logged.values.state for logged in job.log(WEIGHING)]

def wrong(job: Job) -> object:
    return job.newest(WEIGHING).matreial

def wrong_too(job: Job) -> float:
    return job.newest(WEIGHING).mass.value
"""


def test_a_wrong_name_does_not_pass_the_type_check(tmp_path):
    planted = tmp_path / "planted.py"
    planted.write_text(PLANTED)
    out, _, code = api.run(
        ["--strict", "--follow-imports=silent", "--no-error-summary", "--cache-dir", str(tmp_path), str(planted)]
    )
    found = [line.split("planted.py:")[1] for line in out.splitlines() if "error" in line]
    assert code == 1
    assert len(found) == 2
    assert '"Weighing" has no attribute "matreial"' in found[0]
    assert '"None" of' in found[1]
