"""A job's pages written into its writeup folder, each in one piece."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TYPE_CHECKING, cast

from pentools.errors import HoldError, InputError, RecordError
from pentools.writeup.blocks import Audience
from pentools.writeup.notebook import read_notebook
from pentools.writeup.page import render_page

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["write_pages"]

_WORDS = {"client": "the page for the client", "blog": "the page for publication"}


def write_pages(
    job: Job, audiences: Iterable[str] = ("client", "blog"), progress: Callable[[str], object] | None = None
) -> list[Path]:
    """Write a job's pages.

    Parameters
    ----------
    audiences : iterable of {"client", "blog"}
        Which pages.
    progress : callable or None
        Takes one line a page, such as `print`.

    Returns
    -------
    list of Path
        The pages in the order asked for: ``writeup/client.html``, ``writeup/blog.html``.

    Raises
    ------
    InputError
        If an audience is not known.
    HoldError
        If the page for publication is asked for and consent is not recorded; the other pages are written first.
    RecordError
        If the notebook cannot be read or a page cannot be written.
    """
    wanted = list(audiences)
    for audience in wanted:
        if audience not in _WORDS:
            raise InputError("audience", "client or blog", audience)
    notebook = read_notebook(job.notebook) or {"cells": []} if job.notebook.exists() else None
    written: list[Path] = []
    held: list[str] = []
    for audience in wanted:
        path = job.folder / "writeup" / f"{audience}.html"
        try:
            page = render_page(job, cast("Audience", audience), notebook)
        except HoldError as error:
            older = f" An older {path.name} still lies in {path.parent.name}/." if path.exists() else ""
            held.append(f"{error}{older}")
            _say(progress, f"{_WORDS[audience].capitalize()} was not written. {error}{older}")
            continue
        _replace(path, page)
        written.append(path)
        _say(progress, f"{_WORDS[audience].capitalize()} was written: {path} ({max(1, len(page) // 1024)} KiB)")
    if held:
        raise HoldError(" ".join(held))
    return written


def _say(progress: Callable[[str], object] | None, line: str) -> None:
    if progress is not None:
        progress(line)


def _replace(path: Path, text: str) -> None:
    """Write beside the file, then put it in its place: a page is never half there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.stem}-", suffix=".tmp", dir=path.parent)
        fresh = Path(name)
        try:
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
                file.write(text)
            fresh.chmod(0o644)
            fresh.replace(path)
        except BaseException:
            fresh.unlink(missing_ok=True)
            raise
    except OSError as error:
        raise RecordError(
            f"{path} could not be written ({error.strerror or error}). Close the program that holds it, or make room on the disk."
        ) from error
