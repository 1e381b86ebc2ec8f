"""The demonstration: the sample pen's job laid on the bench, its pages written, its result in plain words."""

from __future__ import annotations

from collections.abc import Callable

from pentools.errors import RecordError
from pentools.numbers import capital
from pentools.record.appending import put_in_place, what_failed
from pentools.record.bench import bench_folder, open_bench_folder
from pentools.record.job import create_job, job_folder, open_job
from pentools.record.layout import YEAR, lay_out, shipped_folder
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.stages.weighing.filling import capacity_of
from pentools.writeup.write import write_pages

__all__ = ["SAMPLE", "lay_year", "run_demo"]

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


def lay_year(bench: str | None, *, say: Callable[[str], None], bench_option: str = "") -> None:
    """Lay the sample year on a bench: fifteen short jobs, so that there is something to queue, to find and to quote.

    Parameters
    ----------
    bench : str or None
        The bench folder, the usual one by default. One that is new gets the sample bench's own facts and drawer too.
    say : callable
        Takes each line of progress.
    bench_option : str
        What to repeat in the commands that are named.

    Raises
    ------
    RecordError
        If a job cannot be laid out; those before it are there then.
    """
    year, folder = shipped_folder("sample_jobs") / YEAR, bench_folder(bench)
    if not (folder / "bench.toml").exists() and not (folder.is_dir() and any(folder.iterdir())):
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        for name in ("bench.toml", "stock.csv"):
            put_in_place(folder / name, (year / name).read_bytes())
    where = open_bench_folder(bench, create=True)
    names = sorted(path.name for path in year.iterdir() if path.is_dir())
    fresh = [name for name in names if not job_folder(where, name).exists()]
    for name in fresh:
        try:
            lay_out(job_folder(where, name), sample=year / name)
        except OSError as error:
            raise RecordError(f"The job {name} cannot be laid out ({what_failed(error)}).") from error
    say(f"{len(fresh)} jobs of a year were laid out in {where.folder}; {len(names) - len(fresh)} were there already.")
    say("Every pen and owner is invented. See what is on the bench, and what waits for whom:")
    say(f"  pentools queue{bench_option}")
