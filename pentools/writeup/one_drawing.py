"""A drawing as a file of its own: the half page that hangs on the wall of the bench."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from html import escape
from pathlib import Path

from pentools.errors import InputError, RecordError
from pentools.figures.drawing import Drawing

__all__ = ["KINDS", "write_drawing"]


def _page(drawing: Drawing) -> str:
    """A page of paper with the drawing at its own size; it fetches nothing."""
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
        f"<title>{escape(drawing.title)}</title>\n<style>@page {{ size: A4; margin: 14mm; }} body {{ margin: 0; }}"
        f" svg {{ max-width: 100%; height: auto; }}</style>\n</head>\n<body>\n{drawing.svg}\n</body>\n</html>\n"
    )


def _pdf(drawing: Drawing) -> bytes:
    from pentools.writeup.pdf import pdf_of

    return pdf_of(_page(drawing))


KINDS: Mapping[str, Callable[[Drawing], bytes]] = {
    ".svg": lambda drawing: drawing.svg.encode(),
    ".html": lambda drawing: _page(drawing).encode(),
    ".pdf": _pdf,
}
"""What a drawing can be written as, by the ending of the file's name."""


def write_drawing(drawing: Drawing, path: str | Path) -> Path:
    """Write a drawing to a file.

    Parameters
    ----------
    drawing : Drawing
        What any sum or panel draws.
    path : str or Path
        Where to; its ending says as what: .svg, .html or .pdf.

    Returns
    -------
    Path
        The file.

    Raises
    ------
    InputError
        If the ending is none of these.
    RecordError
        If it cannot be written there.
    PdfError
        If a PDF cannot be made on this machine.
    """
    file = Path(path)
    make = KINDS.get(file.suffix.casefold())
    if make is None:
        raise InputError("drawing", "a file that ends with .svg, .html or .pdf", str(path))
    made = make(drawing)
    try:
        file.write_bytes(made)
    except OSError as error:
        raise RecordError(f"{file} cannot be written ({error.strerror or error}).") from error
    return file
