"""The forms a job is written up in: which file each is, whom it is for, and what makes it.

How a form is added: a line in `PAGE_FORMS` and a maker, a function

    def letter_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files

that gives every file of the form, by its path below ``writeup/``, as text (HTML, Markdown) or bytes (pictures). The
maker is named as ``module:function`` and imported when it is asked for. A form that is a folder has a ``file`` that
ends with ``/``, and all its files lie below it. ``notebook`` is the notebook's content, None where there is none.

The maker need not ask for consent, and what it makes is not yet out: `files_of` is the one door. There a form for
everybody is held until consent to publish is recorded (or, as a draft, is made with a word at its head, which the maker
sets from ``draft``), and there all its text is compared with what is known of the owner and with what is the bench's.
"""

from __future__ import annotations

import importlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from pentools.errors import HoldError, InputError
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.intake import may_publish
from pentools.writeup.blocks import Audience
from pentools.writeup.strangers import hold_back

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["PAGE_FORMS", "Files", "PageForm", "files_of", "held_back", "page_forms"]

Files = Mapping[str, str | bytes]


@dataclass(frozen=True, slots=True)
class PageForm:
    """One form of write-up.

    Parameters
    ----------
    key : str
        What ``--only`` calls it.
    file : str
        Its file below ``writeup/``; a folder where it ends with ``/``.
    audience : {"owner", "everybody"}
        Whom it is for; what is for everybody needs the owner's consent.
    words : str
        What it is called in a sentence.
    maker : str
        ``module:function`` that makes its files.
    """

    key: str
    file: str
    audience: Audience
    words: str
    maker: str


PAGE_FORMS = {
    form.key: form
    for form in (
        PageForm(
            "letter", "client.html", "owner", "the letter to the owner", "pentools.writeup.letter.page:letter_files"
        ),
        PageForm("record", "record.html", "owner", "the full record", "pentools.writeup.record.page:record_files"),
        PageForm(
            "story", "blog.html", "everybody", "the page for publication", "pentools.writeup.tale.page:story_files"
        ),
        PageForm("post", "post/", "everybody", "the post to paste", "pentools.writeup.post.post:post_files"),
        PageForm("card", "card.html", "everybody", "the speaking card", "pentools.writeup.card.page:card_files"),
        PageForm(
            "proposal",
            "papers/proposal.html",
            "owner",
            "the proposal to send",
            "pentools.writeup.papers.proposal:proposal_files",
        ),
        PageForm(
            "care", "papers/care.html", "owner", "the care card", "pentools.writeup.papers.care_card:care_card_files"
        ),
        PageForm(
            "parts",
            "papers/parts.html",
            "owner",
            "the slip of parts for the box",
            "pentools.writeup.papers.parts_slip:parts_slip_files",
        ),
        PageForm(
            "packing",
            "papers/packing.html",
            "owner",
            "the packing list",
            "pentools.writeup.papers.packing_list:packing_list_files",
        ),
        PageForm(
            "pictures",
            "pictures.html",
            "owner",
            "the contact sheet",
            "pentools.writeup.contact.page:contact_sheet_files",
        ),
    )
}


def page_forms(keys: Iterable[str] | None = None) -> tuple[PageForm, ...]:
    """The forms of these keys.

    Parameters
    ----------
    keys : iterable of str or None
        Keys of `PAGE_FORMS`; all of them by default.

    Returns
    -------
    tuple of PageForm
        In the order asked for, each once.

    Raises
    ------
    InputError
        If a key is not known.
    """
    wanted = PAGE_FORMS if keys is None else dict.fromkeys(keys)
    for key in wanted:
        if key not in PAGE_FORMS:
            raise InputError("form", f"one of {', '.join(PAGE_FORMS)}", key)
    return tuple(PAGE_FORMS[key] for key in wanted)


def files_of(form: PageForm, job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:
    """Make a form's files, unless it is held.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; None where there is none.
    draft : bool
        Whether to make a form for everybody although consent is not recorded; it says so at its head.

    Returns
    -------
    mapping of str to str or bytes
        Path below ``writeup/`` to content.

    Raises
    ------
    HoldError
        If the form is for everybody, is no draft, and the owner's consent is not recorded; or if it would show what is
        the owner's or the bench's own (`StrangersError`).
    """
    if form.audience == "everybody" and not draft and (reason := held_back(job)):
        raise HoldError(reason)
    module, name = form.maker.split(":")
    files: Files = getattr(importlib.import_module(module), name)(job, notebook, draft=draft)
    if form.audience == "everybody" and not draft:
        hold_back(job, form.words, _texts(files), notebook)
    return files


def _texts(files: Files) -> dict[str, str]:
    """Everything of a form that can be read: its texts, and the names of the files beside them."""
    texts = {f"the finished {path}": content for path, content in files.items() if isinstance(content, str)}
    return texts | {f"the file name {path}": path for path, content in files.items() if isinstance(content, bytes)}


def held_back(job: Job) -> str:
    """Why nothing may be published; empty where it may."""
    if may_publish(job):
        return ""
    if consents(job).get("publish") is False:
        return "The owner has said no to publication, so this page is held. If that changed, enter the new consent under Intake, “Consent to publish”."
    return "The owner’s consent to publish is not recorded, so this page is held. Ask, then enter it under Intake, “Consent to publish”."
