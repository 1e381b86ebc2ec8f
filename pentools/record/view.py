"""What has been worked out from a record: kept as long as the record stands as it is, and forgotten with the next line."""

from __future__ import annotations

import functools
import logging
from collections.abc import Callable
from typing import Any, Concatenate, ParamSpec, Protocol, TypeVar

from pentools.errors import PentoolsError, RecordError
from pentools.record.chains import chains
from pentools.record.entries import Entry
from pentools.record.forms import Form, Logged
from pentools.record.kinds import Kind
from pentools.record.storage import Record

__all__ = ["SPOILT", "HasView", "View", "once_a_state", "why_not"]

SPOILT = (
    PentoolsError, ArithmeticError, AssertionError, AttributeError, LookupError, RecursionError, TypeError, ValueError,
)  # fmt: skip
"""What a question about a job may raise where its entries contradict each other, or were written by another program.

Whoever shows a job to somebody (a stage's state, `review`, a panel, a section of a page) catches these, says why in place
of the answer, and goes on with the rest.
"""

_log = logging.getLogger(__name__)
P = ParamSpec("P")
R = TypeVar("R")


def why_not(error: Exception) -> str:
    """Why an answer cannot be given, as a sentence; an error that nobody meant is named by its kind alone."""
    if isinstance(error, PentoolsError):
        return str(error)
    _log.info("a question about a record", exc_info=error)
    return f"What is entered cannot be worked with ({type(error).__name__})."


class View:
    """What is known of a record as it stands: decoded entries, logs, and answers to questions.

    Parameters
    ----------
    record : Record
        The record; an entry is decoded once, an answer is kept until a line is added.
    """

    def __init__(self, record: Record) -> None:
        self._record = record
        self._version = record.version
        self._answers: dict[Any, Any] = {}
        # an entry never changes, so it is decoded once; it is kept with its form so that its id stays its own
        self._decoded: dict[tuple[int, int], tuple[Entry, Kind[Any], Form | RecordError]] = {}

    @property
    def answers(self) -> dict[Any, Any]:
        """The answers kept for the record as it stands now."""
        if self._version != self._record.version:
            self._answers = {}
            self._version = self._record.version
        return self._answers

    def decoded(self, kind: Kind[Any], entry: Entry) -> Form | RecordError:
        """What an entry holds, or the error that says why it cannot be read."""
        key = (id(entry), id(kind))
        if key not in self._decoded:
            found: Form | RecordError
            try:
                found = kind.decode(entry)
            except RecordError as error:
                found = error
            self._decoded[key] = (entry, kind, found)
        return self._decoded[key][2]

    def line_of(self, entry: Entry) -> int:
        """Where an entry stands in the record, counted from the first."""
        answers = self.answers
        if "lines" not in answers:
            answers["lines"] = {id(one): number for number, one in enumerate(self._record.entries)}
        found: int = answers["lines"][id(entry)]
        return found

    def first(self, entry: Entry) -> Entry:
        """The line that an entry began as: itself, or what it corrects."""
        answers = self.answers
        if "firsts" not in answers:
            answers["firsts"] = {line.id: chain[0] for chain in chains(self._record.entries) for line in chain}
        found: Entry = answers["firsts"].get(entry.id, entry) if entry.id else entry
        return found

    def log(self, kind: Kind[Any]) -> tuple[Logged[Any], ...]:
        """The live entries of a kind that can be read, in the order first entered."""
        answers, key = self.answers, ("log", kind.stage, kind.key)
        if key not in answers:
            read = [(entry, self.decoded(kind, entry)) for entry in self._record.live(kind.stage, kind.key)]
            answers[key] = tuple(Logged(entry, form) for entry, form in read if isinstance(form, Form))
        found: tuple[Logged[Any], ...] = answers[key]
        return found


class HasView(Protocol):
    """A job, as far as `once_a_state` knows it."""

    @property
    def view(self) -> View:
        """What has been worked out from its record."""


J = TypeVar("J", bound=HasView)


def once_a_state(question: Callable[Concatenate[J, P], R]) -> Callable[Concatenate[J, P], R]:
    """Answer a question about a job once, and keep the answer until the record changes.

    Parameters
    ----------
    question : callable
        Takes the job, then hashable arguments. It must rest on the record and the bench alone (no clock, no files)
        and give something that nobody can change: a tuple, a frozen structure, a mapping that is only read.

    Returns
    -------
    callable
        The same question. A `PentoolsError` is kept and raised again like an answer.
    """

    @functools.wraps(question)
    def answered(job: J, /, *args: P.args, **kwargs: P.kwargs) -> R:
        answers, key = job.view.answers, (question, args, tuple(sorted(kwargs.items())))
        if key not in answers:
            try:
                answers[key] = (question(job, *args, **kwargs), None)
            except PentoolsError as error:
                answers[key] = (None, error)
        answer, failed = answers[key]
        if failed is not None:
            raise failed.with_traceback(None)
        return answer  # type: ignore[no-any-return]

    return answered
