"""A question put to every job on a bench: answered once a state of each record, kept, and asked again where stale."""

from __future__ import annotations

import contextlib
import gc
import logging
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Generic, TypeVar

import msgspec

from pentools.books.kept import Kept, Shelf, stamps_on
from pentools.errors import PentoolsError
from pentools.record.bench import Bench
from pentools.record.job import Job, open_job
from pentools.record.view import SPOILT, why_not

if TYPE_CHECKING:
    from concurrent.futures import Executor

__all__ = ["Question", "Told", "ask_bench", "uncollected"]

A = TypeVar("A", bound=msgspec.Struct)
CHUNK = 50  # jobs that one worker is handed at a time
_log = logging.getLogger(__name__)
_encoder = msgspec.msgpack.Encoder()


@dataclass(frozen=True, slots=True)
class Question(Generic[A]):
    """What can be asked of every job.

    Parameters
    ----------
    key : str
        Its name among what is kept.
    answer : type
        The structure of an answer (`msgspec.Struct`, frozen): plain values that can be written down.
    of : callable
        Takes a job and answers. It rests on the record and the bench's facts alone: no clock, no other files, no other
        jobs. A function of a module, so that another process finds it.
    """

    key: str
    answer: type[A]
    of: Callable[[Job], A]


@dataclass(frozen=True, slots=True)
class Told(Generic[A]):
    """What the jobs of a bench answered.

    Parameters
    ----------
    answers : mapping of str to answer
        By the job's name, in the order of the names.
    unread : mapping of str to str
        The jobs that could not answer, each with the reason as a sentence.
    """

    answers: Mapping[str, A]
    unread: Mapping[str, str]


def ask_bench(
    bench: Bench,
    question: Question[A],
    *,
    executor: Executor | None = None,
    stamps: Mapping[str, str] | None = None,
    only: Collection[str] | None = None,
) -> Told[A]:
    """Ask every job on a bench.

    Parameters
    ----------
    executor : concurrent.futures.Executor or None
        Who reads the jobs that must be read; this process by default.
    stamps : mapping of str to str or None
        What `stamps_on` said a moment ago, for who puts several questions; it is asked by default.
    only : collection of str or None
        The jobs that are asked, where not all are.

    Returns
    -------
    Told
        One answer or one reason a job. Only a job whose record, bench facts or kit changed since it was last asked is
        read.

    Raises
    ------
    RecordError
        If the bench folder cannot be looked into; one job stands in nobody's way.
    """
    decode = msgspec.msgpack.Decoder(question.answer).decode
    with uncollected():
        shelf, now = Shelf(bench), stamps_on(bench) if stamps is None else stamps
        kept = shelf.of(question.key)
        some = now if only is None else {name: now[name] for name in now if name in only}
        told = {name: _read(decode, kept.get(name), stamp) for name, stamp in some.items()}
    stale = [name for name, one in told.items() if one is None]
    fresh = {name: Kept(now[name], answer, why) for name, answer, why in _asked(bench, question, stale, executor)}
    told |= {name: _read(decode, one, now[name]) for name, one in fresh.items()}
    gone = [name for name in kept if name not in now]
    if fresh or gone:
        shelf.put(question.key, fresh, gone)
    unread = {name: one for name, one in told.items() if isinstance(one, str)}
    return Told({name: one for name, one in told.items() if one is not None and not isinstance(one, str)}, unread)


@contextlib.contextmanager
def uncollected() -> Iterator[None]:
    """Let the collector of cyclic garbage rest while tens of thousands of small answers are made, none of it garbage."""
    on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if on:
            gc.enable()


def _read(decode: Callable[[bytes], A], kept: Kept | None, stamp: str) -> A | str | None:
    """What is kept of a job, or why it could not answer; None where that no longer holds."""
    if kept is None or kept.stamp != stamp:
        return None
    if kept.answer is None:
        return kept.why
    try:
        return decode(kept.answer)
    except msgspec.MsgspecError:
        return None


def _asked(
    bench: Bench, question: Question[Any], names: Sequence[str], executor: Executor | None
) -> list[tuple[str, bytes | None, str]]:
    if executor is None or not names:
        return _ask_some(bench, question, names)
    chunks = [names[at : at + CHUNK] for at in range(0, len(names), CHUNK)]
    given = executor.map(_ask_some, [bench] * len(chunks), [question] * len(chunks), chunks)
    return [one for chunk in given for one in chunk]


def _ask_some(bench: Bench, question: Question[Any], names: Sequence[str]) -> list[tuple[str, bytes | None, str]]:
    return [(name, *_ask(bench, question, name)) for name in names]


def _ask(bench: Bench, question: Question[Any], name: str) -> tuple[bytes | None, str]:
    try:
        return _encoder.encode(question.of(open_job(name, bench=bench))), ""
    except (*SPOILT, PentoolsError) as error:
        return None, why_not(error)
    except Exception as error:  # noqa: BLE001 - one job must not hide the others
        _log.debug("a job could not be asked", exc_info=True)
        return None, f"Something unexpected went wrong ({type(error).__name__})."
