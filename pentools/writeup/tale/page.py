"""The story as one page for everybody (``blog.html``): words and pictures lead, the methods are folded at the end."""

from __future__ import annotations

import html
import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from pentools.writeup.forms import Files
from pentools.writeup.photos import PhotoBook
from pentools.writeup.story import embedded_html, text_html
from pentools.writeup.tale.tale import FACTS_TITLE, METHODS_TITLE, tale_of
from pentools.writeup.template import for_css, render, styles
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.writeup.story import StoryPicture
    from pentools.writeup.tale.chapters import Words
    from pentools.writeup.tale.tale import Tale

__all__ = ["story_files", "story_page", "title_html", "title_text"]


def story_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:
    """The story's one file; see `forms`."""
    return {"blog.html": story_page(job, notebook, draft=draft)}


def story_page(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> str:
    """Make the story's page.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; None where there is none.
    draft : bool
        Whether to make it although consent is not recorded; it says so at its head.

    Returns
    -------
    str
        One self-contained HTML page.
    """
    tale = tale_of(job, notebook, draft=draft)
    title = title_text(tale)
    return render(
        job,
        "tale/story.html.j2",
        tale=tale,
        title=title,
        heading=Markup(title_html(tale)),  # noqa: S704 - cleaned
        under_title=tale.pen if tale.title else "",
        facts_title=FACTS_TITLE,
        methods_title=METHODS_TITLE,
        told=_told,
        as_sentence=sentence,
        picture=PhotoBook(job, "everybody").shown,
        running=for_css(title),
        style=styles("tale/story.css"),
    )


def title_html(tale: Tale) -> str:
    """The title as it stands in a heading: the restorer's own, else the pen."""
    return text_html(tale.title, _no_picture) if tale.title else html.escape(tale.pen)


def _no_picture(picture: StoryPicture, alone: bool) -> str:  # noqa: ARG001 - a title is words
    return ""


def title_text(tale: Tale) -> str:
    """The title as plain text."""
    return " ".join(html.unescape(re.sub(r"<[^>]+>", "", title_html(tale))).split()) or tale.pen


def _told(words: Words) -> Markup:
    return Markup(text_html(words.tokens, embedded_html))  # noqa: S704 - cleaned
