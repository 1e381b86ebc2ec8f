"""A page as a PDF: tagged, with its fonts in it, made from the finished HTML and from nothing else."""

from __future__ import annotations

import base64
import html
import logging
import re
from types import ModuleType

from pentools.errors import PentoolsError

__all__ = ["PdfError", "engine", "pdf_of"]

VARIANT = "pdf/ua-1"
"""ISO 14289-1: tagged, with language, title and alternative texts."""
DOTS_PER_INCH, JPEG_QUALITY = 220, 85
_HTML_STANDS = "The HTML pages are written, and any browser prints them."
_SVG = re.compile(r"<svg\b[^>]*>.*?</svg>", re.DOTALL)
_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)


class PdfError(PentoolsError):
    """A PDF cannot be made on this machine as it is; the text says what to install."""


def engine() -> ModuleType:
    """WeasyPrint, which makes the PDFs.

    Returns
    -------
    module
        Imported when it is first asked for.

    Raises
    ------
    PdfError
        If it, or a library of the system that it needs, is missing.
    """
    from PIL import ImageFile

    asked = ImageFile.LOAD_TRUNCATED_IMAGES
    try:
        import weasyprint
    except ImportError as error:
        raise PdfError(
            f"No PDF was written, because WeasyPrint is not installed. Install it with: pip install 'pentools[pdf]'. {_HTML_STANDS}"
        ) from error
    except OSError as error:
        raise PdfError(
            "No PDF was written, because WeasyPrint needs the system's Pango library, which is not here. Install it (Debian, Ubuntu: "
            "apt install libpango-1.0-0 libpangoft2-1.0-0; macOS: brew install pango; Windows: as WeasyPrint's page on installation says). "
            f"{_HTML_STANDS}"
        ) from error
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = asked  # importing it makes half a picture pass for a whole one everywhere
    return weasyprint  # type: ignore[no-any-return]


def pdf_of(page: str) -> bytes:
    """A finished page as a PDF.

    Parameters
    ----------
    page : str
        A whole page of HTML with its style and pictures in it; anything else that it names is not fetched.

    Returns
    -------
    bytes
        Tagged (PDF/UA-1), with the page's own language, title, paper and alternative texts; drawings stay lines and
        text, photographs have at most 220 dots to the inch.

    Raises
    ------
    PdfError
        As `engine` does.
    """
    weasyprint = engine()
    from weasyprint.urls import URLFetcher

    log = logging.getLogger("weasyprint")
    level = log.level
    log.setLevel(logging.ERROR)  # it names every property that only screens know
    try:
        made = weasyprint.HTML(string=_with_pictures(page), url_fetcher=URLFetcher(allowed_protocols=("data",)))
        pdf: bytes = made.write_pdf(
            pdf_variant=VARIANT, pdf_tags=True, optimize_images=True, jpeg_quality=JPEG_QUALITY, dpi=DOTS_PER_INCH
        )
    finally:
        log.setLevel(level)
    return pdf


def _with_pictures(page: str) -> str:
    """The page with its drawings as pictures: they are set six times as fast, and each has its alternative text."""
    page = _STYLE.sub(lambda found: re.sub(r"(?<![\w.#-])svg(?![\w-])", "img.drawn", found[0]), page)
    return _SVG.sub(_as_picture, page)


def _as_picture(found: re.Match[str]) -> str:
    svg = found[0]
    label = re.search(r'aria-label="([^"]*)"', svg[: svg.index(">")])
    said = re.search(r"<desc[^>]*>(.*?)</desc>", svg, re.DOTALL) or re.search(
        r"<title[^>]*>(.*?)</title>", svg, re.DOTALL
    )
    alt = html.unescape(label[1] if label else said[1] if said else "")
    if "xmlns=" not in svg[: svg.index(">")]:
        svg = svg.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1)
    packed = base64.b64encode(svg.encode("utf-8")).decode("ascii")
    return f'<img class="drawn" style="border:0;background:none" alt="{html.escape(alt)}" src="data:image/svg+xml;base64,{packed}">'
