"""Sections made one by one: one spoilt, the others whole, each made once a state of the record."""

from pentools.errors import RecordError
from pentools.writeup.blocks import Notice, Paragraph, Section
from pentools.writeup.making import made, safely, section_of


def fails():
    raise RecordError("the third line.")


def test_a_section_that_fails_says_so_and_only_the_owner_is_told_why():
    [notice] = safely(fails, Section("a", "A"), "owner").blocks
    assert notice == Notice("These entries cannot be shown: the third line.", "To be settled")
    [notice] = safely(fails, Section("a", "A"), "everybody").blocks
    assert notice.text == "These entries cannot be shown."


def test_what_nobody_meant_is_named_by_its_kind():
    def raises():
        raise KeyError("ownersword")

    [notice] = safely(raises, Section("a", "A"), "owner").blocks
    assert notice.text == "These entries cannot be shown: What is entered cannot be worked with (KeyError)."


def test_parts_are_made_in_order_each_by_its_own_maker(new_job):
    parts = tuple((key, key.upper(), lambda _job, audience, key=key: Section(key, audience)) for key in "ab")
    assert made(new_job(), "owner", parts) == [Section("a", "owner"), Section("b", "owner")]


def test_a_section_is_made_once_and_again_when_the_record_grows(small_job):
    first = section_of(small_job, "limits", "owner")
    assert section_of(small_job, "limits", "owner") is first
    assert section_of(small_job, "limits", "everybody") is not first
    small_job.add("limits", "limit", {"part": "nib", "left": "A scratch.", "why": "It is small."})
    assert len(section_of(small_job, "limits", "owner").blocks) == 2
    assert not any(isinstance(block, Paragraph) for block in first.blocks)
