"""A job's folder: how it is laid out in one piece or not at all, and what lies in it."""

from __future__ import annotations

import contextlib
import difflib
import os
import shutil
import tempfile
from pathlib import Path

from pentools.errors import RecordError
from pentools.record.appending import PRIVATE_FILE, sync_folder

__all__ = [
    "BENCH_NOTEBOOK",
    "DOOR",
    "LEDGER_NOTEBOOK",
    "PARTS",
    "RECORD_NAME",
    "YEAR",
    "has_picture",
    "lay_bench_notebook",
    "lay_out",
    "like_it",
    "pictures_in",
    "sample_names",
    "shipped_folder",
]

RECORD_NAME = "record.jsonl"
BENCH_NOTEBOOK = "bench.ipynb"
LEDGER_NOTEBOOK = "ledger.ipynb"
YEAR = "a-year"
"""The folder among the sample jobs that is a bench of its own: fifteen short jobs of one year."""
DOOR = "PENTOOLS_DOOR"
"""The environment's name for where the bench's own notebook is served, where it is."""
PARTS = ("photos", "scans", "writeup")


def shipped_folder(name: str) -> Path:
    """A folder that comes with the kit: ``notebooks`` or ``sample_jobs``."""
    package = Path(__file__).resolve().parents[1]
    for candidate in (package / "_shipped" / name, package.parent / name):
        if candidate.is_dir():
            return candidate
    raise RecordError(f"The folder {name} that comes with the kit is missing. Install the kit again.")


def sample_names() -> tuple[str, ...]:
    """The sample jobs that are told in full, in the order of their names; the short ones of `YEAR` are not among them."""
    return tuple(sorted(path.parent.name for path in shipped_folder("sample_jobs").glob(f"*/{RECORD_NAME}")))


def lay_out(folder: Path, *, sample: Path | None = None) -> None:
    """Make a job's folder, its notebook and the folders in it, all at once.

    Parameters
    ----------
    folder : Path
        Where it is to lie; it must not be there. The notebook takes its name.
    sample : Path or None
        A sample job to copy, with the usual notebook where it has none; otherwise the job is empty.

    Raises
    ------
    OSError
        If that fails; nothing of it is left behind then.

    Notes
    -----
    It is built under another name beside its place and forced to disk before it gets its own. Where the system knows
    rights, the folder and the record are their owner's alone.
    """
    made = not folder.parent.exists()
    folder.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    work = Path(tempfile.mkdtemp(prefix=".new-job-", dir=folder.parent))
    try:
        _fill(work, folder.name, sample)
        work.chmod(0o700)
        for path in work.rglob("*"):
            if path.is_file():
                _force(path)
        work.rename(folder)
    except BaseException:
        shutil.rmtree(work, ignore_errors=True)
        with contextlib.suppress(OSError):
            if made:
                folder.parent.rmdir()
        raise
    sync_folder(folder.parent)


def lay_bench_notebook(bench: Path, name: str = BENCH_NOTEBOOK) -> Path:
    """A notebook over all pens, laid beside the jobs where it is not there yet; the one that is there is left as it is.

    Parameters
    ----------
    bench : Path
        The bench folder.
    name : str
        `BENCH_NOTEBOOK` or `LEDGER_NOTEBOOK`.

    Raises
    ------
    RecordError
        If it cannot be laid there.
    """
    place = bench / name
    if not place.exists():
        try:
            shutil.copyfile(shipped_folder("notebooks") / name, place)
        except OSError as error:
            raise RecordError(
                f"{place} cannot be laid ({error.strerror or error}). A job opens all the same: pentools open JOB"
            ) from error
    return place


def _fill(work: Path, name: str, sample: Path | None) -> None:
    if sample is None:
        shutil.copyfile(shipped_folder("notebooks") / "pen_job.ipynb", work / f"{name}.ipynb")
    else:
        left_out = shutil.ignore_patterns("writeup", ".*")
        shutil.copytree(sample, work, ignore=left_out, copy_function=shutil.copyfile, dirs_exist_ok=True)
        notebook = work / f"{sample.name}.ipynb"
        if not notebook.exists():  # a sample without words of its own
            shutil.copyfile(shipped_folder("notebooks") / "pen_job.ipynb", work / f"{name}.ipynb")
        elif sample.name != name:
            notebook.rename(work / f"{name}.ipynb")
        with contextlib.suppress(FileNotFoundError):
            (work / RECORD_NAME).chmod(PRIVATE_FILE)
    for part in PARTS:
        (work / part).mkdir(exist_ok=True)


def _force(path: Path) -> None:
    """Force a file to disk, so that a disk that is full says so now."""
    handle = os.open(path, os.O_RDWR | getattr(os, "O_BINARY", 0))
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def pictures_in(folder: Path) -> tuple[str, ...]:
    """The names of the files in a job's photos folder; none where it cannot be looked into."""
    try:
        return tuple(sorted(path.name for path in (folder / "photos").iterdir() if path.is_file()))
    except OSError:
        return ()


def has_picture(folder: Path, name: str) -> bool:
    """Whether a file of that name lies in a job's photos folder."""
    try:
        return (folder / "photos" / name).is_file()
    except (OSError, ValueError):  # such as a name that is too long for the file system
        return False


def like_it(folder: Path, name: str) -> str:
    """The picture in a job's photos folder whose name is most like one that is not there; empty where none is."""
    plain = {there.casefold(): there for there in pictures_in(folder)}
    found = difflib.get_close_matches(name.casefold()[:200], plain, n=1)
    return plain[found[0]] if found else ""
