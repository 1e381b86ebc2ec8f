"""The job's notebook read as data: which cells tell a story, which name a stage, which outputs are published.

The file is read as plain JSON and nothing in it is run.
"""

from __future__ import annotations

import ast
import functools
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import msgspec

from pentools.errors import RecordError
from pentools.record.job import shipped_folder
from pentools.record.lines import without_mark

__all__ = ["PublishedCell", "StageCell", "StoryCell", "cells_for", "read_notebook", "stages_named"]

PRIVATE, HOW_TO, PUBLISH = "private", "how-to", "publish"


@dataclass(frozen=True, slots=True)
class StoryCell:
    """A markdown cell: the restorer's own text, with the pictures pasted into it."""

    text: str
    attachments: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class StageCell:
    """A code cell that brings up one stage; ``follows`` where the same cell brought up another before it."""

    key: str
    follows: bool = False


@dataclass(frozen=True, slots=True)
class PublishedCell:
    """A code cell tagged for publishing: its stored outputs, as the notebook keeps them."""

    outputs: tuple[Mapping[str, Any], ...]


def read_notebook(path: Path) -> Mapping[str, Any] | None:
    """Read a notebook file.

    Parameters
    ----------
    path : Path
        The ``.ipynb`` file.

    Returns
    -------
    mapping or None
        Its content; None where there is no such file.

    Raises
    ------
    RecordError
        If the file is there but is no notebook.
    """
    if not path.exists():
        return None
    try:
        if not path.is_file():  # reading a pipe would never end
            raise OSError("it is no file")
        content = msgspec.json.decode(without_mark(path.read_bytes()))
    except (OSError, msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise RecordError(
            f"The notebook {path.name} cannot be read: {error}. Save it again from JupyterLab, or take an older copy."
        ) from error
    if not isinstance(content, dict) or not isinstance(content.get("cells"), list):
        raise RecordError(
            f"{path.name} is not a notebook of the present format. Open it in JupyterLab and save it again."
        )
    return content


def cells_for(notebook: Mapping[str, Any] | None, audience: str) -> Iterator[StoryCell | StageCell | PublishedCell]:
    """The cells that count for an audience, in order.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content.
    audience : {"owner", "everybody"}
        For "everybody" cells tagged ``private`` are left out; cells tagged ``how-to`` are left out for both.

    Yields
    ------
    StoryCell or StageCell or PublishedCell
        Code cells that neither name a stage nor are tagged ``publish`` are passed over, and so are the prompts
        that came with the kit and were left as they were.
    """
    for cell in (notebook or {}).get("cells", ()):
        if not isinstance(cell, Mapping):
            continue
        tags = _tags(cell)
        if HOW_TO in tags or (PRIVATE in tags and audience != "owner"):
            continue
        source = _text(cell.get("source"))
        if cell.get("cell_type") == "markdown":
            own = _without_prompts(_without_comments(source))
            if own:
                kept = cell.get("attachments")
                yield StoryCell(own, kept if isinstance(kept, Mapping) else {})
        elif cell.get("cell_type") == "code":
            keys = stages_named(source)
            if keys:
                yield from (StageCell(key, number > 0) for number, key in enumerate(keys))
            elif PUBLISH in tags:
                outputs = cell.get("outputs")
                yield PublishedCell(
                    tuple(o for o in outputs if isinstance(o, Mapping)) if isinstance(outputs, list) else ()
                )


def stages_named(source: str) -> tuple[str, ...]:
    """The stages that a cell brings up.

    Parameters
    ----------
    source : str
        The cell's code.

    Returns
    -------
    tuple of str
        The keys in ``bench.stage("…", "…")`` or ``job.stage("…")``; none for any other code.
    """
    if "stage" not in source:
        return ()
    try:
        body = ast.parse(source).body
    except (SyntaxError, ValueError):
        return ()
    if len(body) != 1 or not isinstance(body[0], ast.Expr):
        return ()
    match body[0].value:
        case ast.Call(func=ast.Attribute(value=ast.Name(id="bench" | "job"), attr="stage"), args=args, keywords=[]):
            keys = [a.value for a in args if isinstance(a, ast.Constant) and isinstance(a.value, str)]
            return tuple(keys) if len(keys) == len(args) else ()
    return ()


def _tags(cell: Mapping[str, Any]) -> frozenset[str]:
    metadata = cell.get("metadata")
    tags = metadata.get("tags") if isinstance(metadata, Mapping) else None
    return frozenset(str(tag).strip().lower() for tag in tags) if isinstance(tags, list) else frozenset()


def _text(source: Any) -> str:
    return "".join(str(line) for line in source) if isinstance(source, list) else str(source or "")


# code in a cell is shown letter for letter, so a comment inside it stays
_CODE_OR_COMMENT = re.compile(
    r"(?P<code>(?:^|(?<=\n))[ ]{0,3}(?P<fence>`{3,}|~{3,})[^\n]*\n(?:.*?\n)??[ ]{0,3}(?P=fence)[`~]*[ ]*(?=\n|\Z)"
    r"|(?<!`)(?P<ticks>`+)(?!`)(?:(?!\n\s*\n).)+?(?<!`)(?P=ticks)(?!`))|<!--.*?(?:-->|\Z)",
    re.DOTALL,
)


def _without_comments(source: str) -> str:
    """The text without its HTML comments, which the notebook does not show either; one without an end goes on to the last word."""
    return _CODE_OR_COMMENT.sub(lambda found: found["code"] or "", source) if "<!--" in source else source


def _without_prompts(source: str) -> str:
    """The text without the prompts that came with the kit; empty where nothing of one's own was written."""
    cells, prompts = _shipped_prompts()
    if source.strip() in cells:
        return ""
    return "\n\n".join(p for p in source.split("\n\n") if p.strip() not in prompts).strip()


@functools.cache
def _shipped_prompts() -> tuple[frozenset[str], frozenset[str]]:
    try:
        notebook = read_notebook(shipped_folder("notebooks") / "pen_job.ipynb")
    except RecordError:
        return frozenset(), frozenset()
    texts = [
        _text(cell.get("source")).strip()
        for cell in (notebook or {}).get("cells", ())
        if cell.get("cell_type") == "markdown" and "template" in _tags(cell)
    ]
    prompts = {
        p.strip() for text in texts for p in text.split("\n\n") if p.strip().startswith("*") and p.strip().endswith("*")
    }
    return frozenset(texts), frozenset(prompts)
