"""HTML that panels, pages and answers share: a sentence, findings and tables, made by one set of Jinja macros."""

from __future__ import annotations

import functools
import re
from collections.abc import Callable, Sequence
from importlib import resources
from typing import TYPE_CHECKING, Protocol

from pentools.words import LEVEL_SIGNS, LEVEL_WORDS

if TYPE_CHECKING:
    import jinja2

__all__ = ["Told", "environment", "findings_html", "sentence_html", "shown_alone", "table_html", "text_columns"]

BLOCKS = "blocks.html.j2"


_ALONE = """<style>
.pentools-answer { max-width:52em; line-height:1.45; }
.pentools-answer .pt-sentence { font:1.3em/1.3 Georgia,"Times New Roman",serif; margin:0 0 8px; max-width:34em; }
.pentools-answer ul.findings { list-style:none; margin:0 0 8px; padding:0; max-width:46em; }
.pentools-answer ul.findings li { margin:0 0 5px; padding-left:8px; border-left:4px solid #5b6670; }
.pentools-answer ul.findings li.warning { border-left:4px double #8f6614; }
.pentools-answer ul.findings li.stop { border-left:6px solid #8c2f39; }
.pentools-answer ul.findings li.ok { border-left-color:#2a7565; }
.pentools-answer ul.findings .level { font-weight:600; }
.pentools-answer table.data { border-collapse:collapse; margin:0 0 8px; font-variant-numeric:tabular-nums; }
.pentools-answer table.data caption { text-align:left; font-weight:600; }
.pentools-answer table.data th, .pentools-answer table.data td { text-align:left; padding:2px 14px 2px 0; vertical-align:top; }
.pentools-answer svg { max-width:100%; height:auto; background:#fbfaf6; }
</style>"""


class Told(Protocol):
    """What a finding must have to be shown."""

    @property
    def level(self) -> str:
        """ok, note, warning or stop."""

    @property
    def text(self) -> str:
        """Its words."""


def environment(
    templates: Callable[[str], str | None] | None = None, finalize: Callable[[object], object] | None = None
) -> jinja2.Environment:
    """A Jinja environment that escapes every text and knows the shared blocks as ``blocks.html.j2``.

    Parameters
    ----------
    templates : callable or None
        Further templates, name to text; None for a name it does not have.
    finalize : callable or None
        What every value goes through before it is written.

    Returns
    -------
    jinja2.Environment
        Strict: a missing value is an error.
    """
    import jinja2

    def load(name: str) -> str | None:
        if name == BLOCKS:
            return resources.files("pentools.markup").joinpath(BLOCKS).read_text(encoding="utf-8")
        return templates(name) if templates else None

    made = jinja2.Environment(
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
        loader=jinja2.FunctionLoader(load),
        finalize=finalize or (lambda value: value),
    )
    made.filters |= {
        "level_word": LEVEL_WORDS.__getitem__,
        "level_sign": LEVEL_SIGNS.__getitem__,
        "aligned": aligned,
    }
    return made


@functools.cache
def _blocks() -> jinja2.environment.TemplateModule:
    return environment().get_template(BLOCKS).module


def sentence_html(text: str) -> str:
    """The result's one sentence, as the largest text of a panel."""
    from markupsafe import escape

    return f'<p class="pt-sentence">{escape(text)}</p>' if text else ""


def findings_html(findings: Sequence[Told]) -> str:
    """Findings as a list; empty where there is none."""
    return str(_blocks().findings(findings)).strip()  # type: ignore[attr-defined]


def table_html(caption: str, head: Sequence[str], rows: Sequence[Sequence[str]], numeric: Sequence[int] = ()) -> str:
    """A table with a caption and scoped headings; columns of numbers can be aligned at their decimal signs."""
    return str(_blocks().table(caption, head, rows, numeric)).strip()  # type: ignore[attr-defined]


def shown_alone(markup: str) -> str:
    """Markup of these blocks with the little style it needs where no panel or page brings one, as in a notebook."""
    return f'{_ALONE}<div class="pentools-answer">{markup}</div>'


def aligned(rows: Sequence[Sequence[str]], column: int) -> list[str]:
    """A column's texts padded with figure spaces so that right-aligned decimal signs stand under each other."""
    texts = [row[column] for row in rows]
    shapes = [re.fullmatch(r"(-?\d+)(?:([.,])(\d+))?(.*)", text, re.DOTALL) for text in texts]
    tails = {found[4] for found in shapes if found}
    if len(tails) != 1:
        return texts
    most = max((len(found[3] or "") for found in shapes if found), default=0)
    padded = []
    for text, found in zip(texts, shapes, strict=True):
        if found is None:
            padded.append(text)
            continue
        decimals = found[3] or ""
        gap = "\u2007" * (most - len(decimals)) + ("\u2008" if most and not decimals else "")
        padded.append(f"{found[1]}{found[2] or ''}{decimals}{found[4]}{gap}")
    return padded


def text_columns(table: Sequence[Sequence[str]]) -> list[str]:
    """Rows of a table as lines of text, each column as broad as its broadest cell."""
    if not table:
        return []
    widths = [max(len(row[i]) for row in table if i < len(row)) for i in range(max(map(len, table)))]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=False)).rstrip() for row in table]
