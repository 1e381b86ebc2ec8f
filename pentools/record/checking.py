"""What ``pentools check`` says: of one job, of every job on a bench at once, and of what was mended."""

from __future__ import annotations

import logging
from collections.abc import Callable
from dataclasses import dataclass, replace

from pentools.errors import InputError, PentoolsError
from pentools.record.bench import Bench
from pentools.record.holds import state_of
from pentools.record.job import Job, jobs_on, open_job
from pentools.record.mending import Mended
from pentools.record.mending import mend as mend_files
from pentools.record.merging import MergeReport
from pentools.record.registry import all_stages
from pentools.record.review import matters_and_fuller, review

__all__ = ["Checked", "check", "check_bench", "check_job", "mended_in_words", "merged_in_words"]

_log = logging.getLogger(__name__)
Say = Callable[[str], object]


@dataclass(frozen=True, slots=True)
class Checked:
    """What a check came to: how many findings ask to be looked at, and how many jobs cannot be read."""

    grave: int = 0
    unread: int = 0


def check(bench: Bench, name: str | None, say: Say, *, mend: bool = False) -> Checked:
    """Check a job, or every job on the bench.

    Parameters
    ----------
    name : str or None
        The job's name; None for all.
    say : callable
        Takes each line.
    mend : bool
        Whether to set aside what cannot be read first.

    Raises
    ------
    InputError
        If all jobs are to be mended at once.
    RecordError
        If there is no such job, or it cannot be read or mended.
    """
    if name is None:
        if mend:
            raise InputError(
                "the job to mend", "named", "", "Type it like: pentools check 2026-014-green-piston --mend"
            )
        return check_bench(bench, say)
    job = open_job(name, bench=bench)
    if mend:
        for line in mended_in_words(mend_files(job.record, job.folder)):
            say(line)
        job = open_job(name, bench=bench)
    return check_job(job, say)


def check_job(job: Job, say: Say, *, stages: bool = True) -> Checked:
    """Say where a job stands and what is missing or odd.

    Parameters
    ----------
    say : callable
        Takes each line.
    stages : bool
        Whether to list the stages too.
    """
    matters, fuller = matters_and_fuller(review(job))
    outcome = _outcome(len(matters), len(fuller))
    count = len(job.record.live())
    say(f"{job.name}: {count} {'entry' if count == 1 else 'entries'}" + ("" if stages else f". {outcome}"))
    for stage in all_stages() if stages else ():
        state = state_of(job, stage)
        say(f"  {stage.title:<32} {state.word}{': ' + state.reason if state.reason else ''}")
    for heading, findings in (("Matters here:", matters), ("For a fuller record:", fuller)):
        for number, finding in enumerate(findings):
            if number == 0:
                say(f"  {heading}")
            say(f"    {finding}")
    if stages:
        say(outcome)
    return Checked(len(matters))


def _outcome(matters: int, fuller: int) -> str:
    """What a check came to; "nothing" only where there is nothing at all."""
    if not matters and not fuller:
        return "Nothing is missing."
    more = f"{fuller} for a fuller record" if fuller else ""
    if not matters:
        return f"Nothing that matters is missing; {more}."
    return f"{matters} {'matters' if matters == 1 else 'matter'} here{f', {more}' if more else ''}."


def check_bench(bench: Bench, say: Say) -> Checked:
    """Say what is missing or odd in every job on a bench; one that cannot be read stands in nobody's way.

    Parameters
    ----------
    say : callable
        Takes each line.

    Raises
    ------
    RecordError
        If the bench folder cannot be looked into.
    """
    names = jobs_on(bench)
    for problem in bench.problems:
        say(problem)
    if not names:
        say(f"There is no job in {bench.folder} yet.")
    quiet = replace(bench, problems=())  # said once, not with every job
    each = {name: _check_one(quiet, name, say) for name in names}
    total = Checked(sum(c.grave for c in each.values()) + len(bench.problems), sum(c.unread for c in each.values()))
    if names:
        again = sum(bool(c.grave) for c in each.values())
        jobs = "1 job" if len(names) == 1 else f"{len(names)} jobs"
        say(
            f"{jobs}: {again} to look at again, {total.unread} that cannot be read, {len(names) - again - total.unread} with nothing that matters missing."
        )
    return total


def _check_one(bench: Bench, name: str, say: Say) -> Checked:
    try:
        return check_job(open_job(name, bench=bench), say, stages=False)
    except PentoolsError as error:
        say(f"{name}: cannot be read. {error}")
    except Exception as error:  # noqa: BLE001 - one job must not hide the others
        _log.debug("a job could not be checked", exc_info=True)
        say(
            f"{name}: cannot be read. Something unexpected went wrong ({type(error).__name__}); its files are as they were."
        )
    return Checked(unread=1)


def mended_in_words(done: Mended) -> list[str]:
    """What was mended, a sentence each."""
    said = []
    if done.lines:
        many = len(done.lines) > 1
        numbers = ", ".join(str(number) for number in done.lines)
        said.append(
            f"Line{'s' if many else ''} {numbers} of the record cannot be read and {'were' if many else 'was'} set aside in "
            f"{done.aside}. The whole record as it was is kept in {done.kept}. Nothing was deleted."
        )
    if done.tightened:
        said.append(f"From now on only you can read {' and '.join(done.tightened)}.")
    return said or ["There is nothing to mend."]


def merged_in_words(done: MergeReport) -> list[str]:
    """What a merge did, a sentence each."""
    said = [f"{done.added} entries taken over. {done.there} passed by: they were here already."]
    if done.strangers:
        said.append("Not one line of the other file was here before. Is it a copy of this very job?")
    if done.both:
        said.append("Each file's own order stands first; between lines of the two files the time of entry decides.")
    said += [
        f"Entry {entry_id} differs between the copies: this copy's line stays, the other was set aside beside the record."
        for entry_id in done.conflicts
    ]
    if done.aside:
        lines = len(done.conflicts) + done.unread
        unread = f", {done.unread} of them because they cannot be read" if done.unread else ""
        said.append(f"{lines} {'line' if lines == 1 else 'lines'} set aside in {done.aside}{unread}.")
    else:
        said.append("0 set aside.")
    return said
