"""The same question put to every job on a bench; one that cannot be read stands in nobody's way."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, TypeVar

from pentools.errors import PentoolsError
from pentools.record.job import RECORD_NAME, job_at
from pentools.record.view import SPOILT

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["ask_each"]

Told = TypeVar("Told")


def ask_each(bench: Bench, question: Callable[[Job], Told], *, without: str = "") -> Iterator[tuple[str, Told | None]]:
    """Ask every job with a record on a bench, in the order of their names.

    Parameters
    ----------
    question : callable
        Takes a job.
    without : str
        A job that is not asked, such as the one in hand.

    Yields
    ------
    tuple of str and answer
        The job's name and its answer; None where it cannot be read or its entries contradict each other (`pentools
        check` says why).
    """
    for path in sorted(bench.folder.glob(f"*/{RECORD_NAME}")):
        if path.parent.name == without:
            continue
        try:
            yield path.parent.name, question(job_at(path.parent.resolve(), bench))
        except (*SPOILT, PentoolsError):
            yield path.parent.name, None
