"""The demonstration: the sample pen's job laid on the bench, its pages written, its result in plain words."""

from __future__ import annotations

from collections.abc import Callable

from pentools.numbers import capital
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, job_folder, open_job
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.stages.weighing.filling import capacity_of
from pentools.writeup.write import write_pages

__all__ = ["SAMPLE", "run_demo"]

SAMPLE = "green-piston"


def run_demo(bench: str | None, *, say: Callable[[str], None], bench_option: str = "") -> None:
    """Run the main job on the sample pen.

    Parameters
    ----------
    bench : str or None
        The bench folder; the usual one by default.
    say : callable
        Takes each line of progress.
    bench_option : str
        What to repeat in the command that opens the notebook.
    """
    where = open_bench_folder(bench, create=True)
    if job_folder(where, SAMPLE).exists():
        say(f"The sample job {SAMPLE} is on the bench already; it is left as it is.")
        job = open_job(SAMPLE, bench=where)
    else:
        job = create_job(where, SAMPLE, sample=SAMPLE)
        say(f"The sample job {SAMPLE} was laid out in {job.folder}.")
    pages = write_pages(job, progress=say)
    say("")
    pen = job.newest(ARRIVAL).pen or ""
    say(f"{capital(pen)} (an invented pen)")
    answer = capacity_of(job)
    if answer is not None:
        say(answer.sentence)
    end = ending(job)
    say(f"Result: {dict(ENDINGS)[end]}." if end else "The job is open.")
    say("")
    say(f"Look at the pages: {pages[0]}")
    for page in pages[1:]:
        say(f"                   {page}")
    say(f"Open the notebook: pentools open {SAMPLE}{bench_option}")
