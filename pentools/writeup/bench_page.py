"""What a bench's jobs teach as one page to show or to print: a sentence, charts, tables; no owner and no pen is named on it."""

from __future__ import annotations

from html import escape
from pathlib import Path
from typing import TYPE_CHECKING

from pentools.errors import InputError, RecordError
from pentools.markup import table_html
from pentools.writeup.template import resource

if TYPE_CHECKING:
    from collections.abc import Sequence

    from pentools.figures.drawing import Drawing

__all__ = ["bench_page", "write_bench_page"]

_STYLE = """
svg { max-width: 100%; height: auto; margin: 4mm 0; } figure { margin: 0; break-inside: avoid; }
table { break-inside: auto; } tr { break-inside: avoid; } p.about { color: #5b6670; }
"""


def bench_page(
    title: str,
    sentence: str,
    drawings: Sequence[Drawing],
    tables: Sequence[tuple[str, Sequence[Sequence[str]]]],
    headings: Sequence[str] = (),
) -> str:
    """The page as one self-contained text.

    Parameters
    ----------
    title, sentence : str
        What it is, and what it comes to.
    drawings : sequence of Drawing
        Its charts.
    tables : sequence of (str, rows)
        Title and rows of each table.
    headings : sequence of str
        Of the columns.

    Returns
    -------
    str
        HTML that fetches nothing.
    """
    charts = "".join(f"<figure>{drawing.svg}</figure>" for drawing in drawings)
    rows = "".join(table_html(name, headings, body, (1,)) for name, body in tables)
    about = "Every figure stands with n and its interval; under three jobs it is too few to say."
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">"
        f"<title>{escape(title)}</title><style>{resource('style.css')}{_STYLE}</style></head>"
        f'<body><main class="sheet"><h1>{escape(title)}</h1><p>{escape(sentence)}</p><p class="about">{about}</p>'
        f"{charts}{rows}</main></body></html>\n"
    )


def write_bench_page(path: str | Path, text: str) -> Path:
    """Write the page to a file.

    Raises
    ------
    InputError
        If the name does not end in .html.
    RecordError
        If it cannot be written there.
    """
    file = Path(path)
    if file.suffix.casefold() != ".html":
        raise InputError("page", "a file that ends with .html", str(path))
    try:
        file.write_text(text, encoding="utf-8")
        file.chmod(0o600)
    except OSError as error:
        raise RecordError(f"{file} cannot be written ({error.strerror or error}).") from error
    return file
