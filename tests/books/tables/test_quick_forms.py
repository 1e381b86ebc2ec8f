"""What is read many at a time is what each kind reads by itself."""

import datetime as dt
import json

import msgspec
import pytest
from record.odd_values import WRONG

from pentools.books.tables.quick_forms import all_kinds, held, quick_form
from pentools.record.entries import Entry
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.kinds import WEIGHING


def raw(data):
    return msgspec.Raw(json.dumps(data, separators=(",", ":"), ensure_ascii=False).encode())


def plainly(value):
    """A value in one way, whichever reader it comes from."""
    if isinstance(value, tuple):
        return [plainly(one) for one in value]
    if hasattr(value, "unit"):
        return value.value, value.unit, value.standard_uncertainty, value.typed
    return value.isoformat() if isinstance(value, dt.date) else value


@pytest.mark.parametrize("kind", all_kinds().values(), ids=lambda kind: f"{kind.stage}, {kind.key}")
def test_each_field_is_taken_or_refused_as_the_kind_does(kind):
    for field in kind.fields:
        sound = {"value": 1.0, "unit": field.unit, "u": None, "typed": "1"}
        values = [*WRONG[field.kind], sound, [sound], "2026-02-28", "2026-02-30", 1, 0, -1, 2.0, True, None, [], ["x"]]
        values += [key for key, _ in field.choices] + [{**sound, "value": -1}, {**sound, "u": 0.2}, {**sound, "u": -1}]
        for value in values:
            try:
                data = raw({field.name: value})
                decoded = msgspec.json.decode(data)
            except msgspec.MsgspecError:
                continue
            [form], odd = held(kind, [data])
            if odd:
                continue  # it is not as the kit writes it, so its line is read carefully
            try:
                wanted = kind.decode(Entry(id="", at="", stage="", kind="", data=decoded))
            except Exception:  # noqa: BLE001 - refused, in whatever words
                assert form is None
                continue
            for one in kind.fields:
                assert plainly(getattr(form, one.name)) == plainly(getattr(wanted, one.name))


def test_an_odd_one_among_many_is_told_and_the_rest_is_read():
    mass = {"value": 18.4, "unit": "g", "u": 0.01, "typed": "18.4"}
    data = [
        raw({"state": "dry", "mass": mass}),
        msgspec.Raw(b'{"state":"dry","state":"dry"}'),
        raw({"mass": mass, "state": "dry"}),
    ]
    forms, odd = held(WEIGHING, data)
    assert odd == [1]
    assert forms[1] is None
    assert [(form.state, form.mass.value, form.mass.standard_uncertainty) for form in (forms[0], forms[2])] == [
        ("dry", 18.4, 0.01)
    ] * 2
    assert held(None, data)[1] == [1]
    assert held(WEIGHING, data[:1] * 3) == ([forms[0]] * 3, [])


def test_a_day_is_a_date():
    [form], _ = held(ARRIVAL, [raw({"arrived_on": "2026-03-09"})])
    assert form.arrived_on == dt.date(2026, 3, 9)
    assert quick_form(ARRIVAL) is quick_form(ARRIVAL)
