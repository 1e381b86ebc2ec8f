"""The registry of forms: what each is called, where it lies, and that nothing for everybody gets past the door unasked."""

import importlib

import pytest

from pentools.errors import HoldError, InputError
from pentools.writeup.forms import PAGE_FORMS, files_of, page_forms


def test_every_form_has_a_place_of_its_own_and_a_maker():
    files = [form.file for form in PAGE_FORMS.values()]
    assert len(set(files)) == len(files)
    assert {"client.html", "record.html", "blog.html"} <= set(files)
    for form in PAGE_FORMS.values():
        module, name = form.maker.split(":")
        assert callable(getattr(importlib.import_module(module), name))
        assert form.words


@pytest.mark.parametrize("key", PAGE_FORMS)
def test_a_form_makes_the_file_it_is_named_after(key, small_job):
    form = PAGE_FORMS[key]
    files = files_of(form, small_job, None)
    if form.file.endswith("/"):
        assert files
        assert all(name.startswith(form.file) for name in files)
    else:
        assert list(files) == [form.file]


@pytest.mark.parametrize("key", [form.key for form in PAGE_FORMS.values() if form.audience == "everybody"])
def test_every_form_for_everybody_waits_for_consent_and_a_draft_says_so(key, new_job):
    job = new_job()
    with pytest.raises(HoldError, match="consent to publish is not recorded"):
        files_of(PAGE_FORMS[key], job, None)
    made = files_of(PAGE_FORMS[key], job, None, draft=True)
    assert any("Not for publication" in str(content) for content in made.values())


def test_forms_are_asked_for_by_key_each_once():
    assert [form.key for form in page_forms(["story", "letter", "story"])] == ["story", "letter"]
    assert [form.key for form in page_forms()] == list(PAGE_FORMS)
    with pytest.raises(InputError, match="one of letter, record, story"):
        page_forms(["press"])
