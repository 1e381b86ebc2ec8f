"""A job's pages written into its writeup folder, each file in one piece."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pentools.errors import HoldError, RecordError
from pentools.numbers import in_words
from pentools.writeup.folder import replace_folder
from pentools.writeup.forms import Files, PageForm, files_of, page_forms
from pentools.writeup.notebook import read_notebook
from pentools.writeup.pdf import PdfError, pdf_of
from pentools.writeup.photos import left_out
from pentools.writeup.strangers import StrangersError, check_reason, pass_over

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["WRITEUP", "put_files", "write_pages"]

WRITEUP = "writeup"


def write_pages(
    job: Job,
    forms: Iterable[str] | None = None,
    progress: Callable[[str], object] | None = None,
    *,
    anyway: str = "",
    pdf: bool = False,
) -> list[Path]:
    """Write a job's pages, each form once; what several share is worked out and drawn once.

    Parameters
    ----------
    forms : iterable of str or None
        Which forms, by the keys of `PAGE_FORMS`; all by default.
    progress : callable or None
        Takes one line a form, such as `print`.
    anyway : str
        Why words of the owner's or the bench's may stand on a page for everybody; it goes into the record for each.
    pdf : bool
        Whether each page is written as a PDF too, beside its HTML file.

    Returns
    -------
    list of Path
        The first file of each form in the order asked for, such as ``writeup/client.html``.

    Raises
    ------
    InputError
        If a form is not known, or ``anyway`` is no reason.
    HoldError
        If a form for everybody is asked for and consent is not recorded, or it would show what is the owner's or the
        bench's own; the other forms are written first.
    RecordError
        If the notebook cannot be read or a page cannot be written.
    PdfError
        If a PDF is asked for and this machine cannot make one; all HTML pages are written first.
    """
    wanted = page_forms(forms)
    if anyway:
        check_reason(anyway)
    notebook = read_notebook(job.notebook)
    written: list[Path] = []
    pages: list[Path] = []
    held: dict[str, list[str]] = {}
    for form in wanted:
        try:
            files = _made(form, job, notebook, anyway, progress)
        except HoldError as error:
            older = _older(job, form)
            held.setdefault(str(error), []).append(older)
            _say(progress, f"Not written: {form.words}. {error}{older}")
            continue
        size = sum(len(content) for content in files.values())
        written.append(put_files(job, form, files))
        _say(progress, f"Written: {form.words}, {written[-1]} ({max(1, size // 1024)} KiB)")
        pages += written[-1:] if form.file.endswith(".html") else []
    for line in left_out(job) if written else ():
        _say(progress, line)
    failed = _as_pdfs(pages, progress) if pdf else None
    if not pdf:
        _tell_of_older_pdfs(pages, progress)
    if held:
        _say(progress, str(failed or ""))
        raise HoldError(" ".join(reason + "".join(older) for reason, older in held.items()))
    if failed is not None:
        raise failed
    return written


def _as_pdfs(pages: Iterable[Path], progress: Callable[[str], object] | None) -> PdfError | None:
    """Write each page as a PDF beside its HTML file; the error where this machine cannot."""
    for page in pages:
        path = page.with_suffix(".pdf")
        try:
            content = pdf_of(page.read_text(encoding="utf-8"))
        except PdfError as error:
            return error
        _replace(path, content, page.stat().st_mode & 0o777)
        _say(progress, f"Written: {path} ({max(1, len(content) // 1024)} KiB)")
    return None


def _tell_of_older_pdfs(pages: Iterable[Path], progress: Callable[[str], object] | None) -> None:
    for page in pages:
        if page.with_suffix(".pdf").exists():
            _say(progress, f"{page.with_suffix('.pdf').name} beside it is older; --pdf writes it anew.")


def _made(
    form: PageForm, job: Job, notebook: Mapping[str, Any] | None, anyway: str, progress: Callable[[str], object] | None
) -> Files:
    """A form's files; where words hold it and there is a reason for them, the reason is entered first."""
    try:
        return files_of(form, job, notebook)
    except StrangersError as error:
        if not anyway:
            raise
        pass_over(job, error.hits, anyway)
        for told in dict.fromkeys(hit.told for hit in error.hits):
            _say(progress, f"Shown all the same, with your reason in the record: {told}.")
        return files_of(form, job, notebook)


def _older(job: Job, form: PageForm) -> str:
    path = job.folder / WRITEUP / form.file
    there = [one.name for one in dict.fromkeys((path, path.with_suffix(".pdf"))) if one.exists()]
    verb = "still lies" if len(there) == 1 else "still lie"
    return f" An older {in_words(there)} {verb} in {path.parent.name}/." if there else ""


def put_files(job: Job, form: PageForm, files: Files) -> Path:
    """Every file of a form; of a folder, all of it or nothing."""
    folder = job.folder / WRITEUP
    content = {name: text.encode("utf-8") if isinstance(text, str) else text for name, text in files.items()}
    if form.file.endswith("/"):
        replace_folder(folder / form.file, {name.removeprefix(form.file): found for name, found in content.items()})
    else:
        for name, found in content.items():
            # what is for the owner nobody else on this machine need read
            _replace(folder / name, found, 0o644 if form.audience == "everybody" else 0o600)
    return folder / next(iter(files))


def _say(progress: Callable[[str], object] | None, line: str) -> None:
    if progress is not None and line:
        progress(line)


def _replace(path: Path, content: bytes, mode: int) -> None:
    """Write beside the file, then put it in its place: a page is never half there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.stem}-", suffix=".tmp", dir=path.parent)
        fresh = Path(name)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
            fresh.chmod(mode)
            fresh.replace(path)
        except BaseException:
            fresh.unlink(missing_ok=True)
            raise
    except OSError as error:
        raise RecordError(
            f"{path} could not be written ({error.strerror or error}). Close the program that holds it, or make room on the disk."
        ) from error
