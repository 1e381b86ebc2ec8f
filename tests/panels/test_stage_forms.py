"""The forms of a stage: each made once, and only when it is asked for."""

from pentools.panels import stage_forms
from pentools.panels.kind_form import FormHooks
from pentools.record.registry import find_stage


def test_a_form_is_made_when_it_is_first_asked_for_and_once(job, monkeypatch):
    made = []
    monkeypatch.setattr(stage_forms, "KindForm", lambda _, __, kind, ___: made.append(kind.key) or object())
    forms = stage_forms.StageForms(job, find_stage("limits").kinds, FormHooks(lambda _: None))
    assert list(forms) == ["limit", "nothing left"]
    assert (len(forms), forms.title("limit"), made) == (2, "One thing left", [])
    assert forms["limit"] is forms["limit"]
    assert made == ["limit"]
