"""The speaking card as one printed page (``card.html``), in large type."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pentools.writeup.card.sentences import LINES, card_sentences, that_fit
from pentools.writeup.closing import pen_title
from pentools.writeup.forms import Files, held_back
from pentools.writeup.template import render, styles
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["card_files", "card_page"]

_LONGEST_TITLE = 110
_NOTICE_LINES = 3


def card_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - it needs no story
    """The card's one file; see `forms`."""
    return {"card.html": card_page(job, draft=draft)}


def card_page(job: Job, *, draft: bool = False) -> str:
    """Make the speaking card.

    Parameters
    ----------
    draft : bool
        Whether to make it although consent is not recorded; it says so at its head.

    Returns
    -------
    str
        One self-contained HTML page that prints on one sheet, A4 or Letter.
    """
    title = pen_title(job)
    if len(title) > _LONGEST_TITLE:
        title = title[:_LONGEST_TITLE].rsplit(" ", 1)[0].rstrip(",;:") + "…"
    kept_back = held_back(job) if draft else ""
    room = LINES - (_NOTICE_LINES if kept_back else 0)
    return render(
        job,
        "card/card.html.j2",
        title=title,
        kept_back=sentence(kept_back),
        sentences=[one.text for one in that_fit(card_sentences(job), room)],
        style=styles("card/card.css"),
    )
