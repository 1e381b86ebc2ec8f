"""The page's frame: the Jinja template and the style sheet of this package, filled with a page's parts."""

from __future__ import annotations

import functools
import html
import re
from importlib import resources
from typing import TYPE_CHECKING

from markupsafe import Markup

from pentools.decimals import in_markup, in_text
from pentools.markup import environment
from pentools.words import LANGUAGES
from pentools.writeup.blocks import Facts

if TYPE_CHECKING:
    import jinja2

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.writeup.blocks import Block
    from pentools.writeup.page_parts import Page
    from pentools.writeup.photos import PhotoBook

__all__ = ["fill_template", "for_css", "named", "plain_page", "render", "resource", "styles"]


def fill_template(job: Job, page: Page, photos: PhotoBook) -> str:
    """A page's parts as one HTML file.

    Parameters
    ----------
    job : Job
        The job; its name stands on the owner's page only, for it may hold the owner's.
    page : Page
        What to show.
    photos : PhotoBook
        Where pictures come from.

    Returns
    -------
    str
        HTML that fetches nothing.
    """
    owner = page.audience == "owner"
    return render(
        job,
        "template.html.j2",
        page=page,
        owner=owner,
        contact=job.bench.strings("bench", "contact") if owner else (),
        job_name=named(job) if owner else "",
        running=for_css(f"Job {job.name}" if owner else page.title),
        style=styles("style.css"),
        picture=photos.shown,
    )


def plain_page(title: str, text: str) -> str:
    """A page that says in words why there is no other.

    Parameters
    ----------
    title : str
        Its heading.
    text : str
        What to say.

    Returns
    -------
    str
        HTML in the style of the other pages.
    """
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" '
        'content="default-src \'none\'; style-src \'unsafe-inline\'"><meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<title>{html.escape(title)}</title><style>{resource("style.css")}</style></head><body><main class="sheet words"><h1>{html.escape(title)}</h1>'
        f"<p>{html.escape(text)}</p></main></body></html>\n"
    )


def render(job: Job, name: str, **values: object) -> str:
    """A template of this package filled, with what every form needs: language, paper, bench, decimal sign.

    Parameters
    ----------
    name : str
        Its path in this package, such as ``letter/letter.html.j2``.
    **values
        What else it asks for; a text is escaped.

    Returns
    -------
    str
        HTML.
    """
    language = job.bench.text("bench", "language")
    paper = job.bench.text("bench", "paper")
    return _template(name, job.bench.text("bench", "decimal_sign")).render(
        language=language if language in LANGUAGES else LANGUAGES[0],  # never one that the words are not in
        bench_name=job.bench.text("bench", "name"),
        paper="letter" if paper.strip().casefold() == "letter" else "A4",
        **values,
    )


def styles(name: str) -> Markup:
    """A style sheet of this package, ready to stand in a page."""
    return Markup(resource(name))  # noqa: S704 - our own file


def named(job: Job) -> Markup:
    """The job's name as a page shows it; it keeps its full stops, whatever the bench's decimal sign."""
    return Markup(html.escape(job.name))  # noqa: S704 - escaped


def for_css(text: str) -> Markup:
    """A text that may stand in a string of a style sheet: signs that could end it are taken out."""
    return Markup(re.sub(r"[^\w .,·()–’“”-]", " ", text.replace("'", "’")))  # noqa: S704 - cleaned


@functools.cache
def _template(name: str, decimal_sign: str) -> jinja2.Template:
    made = environment(
        lambda wanted: resource(wanted) if wanted.endswith(".html.j2") else None,
        functools.partial(_as_shown, decimal_sign),
    )
    made.filters |= {
        "drawing": functools.partial(_inline_svg, decimal_sign),
        "paragraphs": lambda text: [p.strip() for p in re.split(r"\n\s*\n", str(text)) if p.strip()],
        "kind": lambda block: type(block).__name__,
        "grouped": _grouped,
        "safe_story": Markup,
    }
    return made.get_template(name)


@functools.cache
def resource(name: str) -> str:
    """A file of this package as text."""
    return resources.files("pentools.writeup").joinpath(name).read_text(encoding="utf-8")


def _inline_svg(decimal_sign: str, drawing: Drawing) -> Markup:
    """A drawing's SVG with its alternative text, without the frame a stand-alone file carries."""
    svg = re.sub(r"<\?xml.*?\?>|<!DOCTYPE.*?>|<metadata>.*?</metadata>", "", drawing.svg, flags=re.DOTALL).strip()
    opening = re.match(r"<svg\b[^>]*>", svg)
    if opening is None:
        return Markup("")
    tag = opening[0]
    if "role=" not in tag:
        tag = tag.replace("<svg", '<svg role="img"', 1)
    if "aria-label" not in tag:
        tag = tag.replace("<svg", f'<svg aria-label="{html.escape(drawing.alt)}"', 1)
    return Markup(in_markup(tag + svg[opening.end() :], decimal_sign))  # noqa: S704 - drawn by our own figures


def _as_shown(decimal_sign: str, value: object) -> object:
    """A text with the bench's decimal sign, in which no line ends between a value and its uncertainty."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return in_text(value.replace(" ± ", "\u00a0±\u00a0"), decimal_sign)
    return value


def _grouped(blocks: tuple[Block, ...]) -> list[list[Block]]:
    """Blocks in order, lists of facts that follow each other taken together so that they stand side by side."""
    groups: list[list[Block]] = []
    for block in blocks:
        if isinstance(block, Facts) and groups and isinstance(groups[-1][-1], Facts):
            groups[-1].append(block)
        else:
            groups.append([block])
    return groups
