"""A job: one pen's folder on the bench, with its notebook, its record, its pictures and its pages."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pentools.errors import InputError, PentoolsError, RecordError
from pentools.fields import Field, Value
from pentools.money import Money, read_money
from pentools.record.appending import what_failed
from pentools.record.bench import Bench, bench_folder, check_job_name, open_bench_folder
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry, new_entry
from pentools.record.folders import jobs_on
from pentools.record.forms import F, Logged
from pentools.record.kinds import Kind, Stage
from pentools.record.layout import RECORD_NAME, has_picture, lay_out, like_it, shipped_folder
from pentools.record.registry import find_stage
from pentools.record.storage import Record
from pentools.record.view import View

__all__ = [
    "RECORD_NAME",
    "Job",
    "create_job",
    "job_at",
    "job_folder",
    "job_in",
    "jobs_on",
    "open_job",
    "shipped_folder",
    "start_job",
]


@dataclass(frozen=True, slots=True)
class Job:
    """One pen's job.

    Parameters
    ----------
    name : str
        The job's name, also its folder's and its notebook's.
    folder : Path
        Where it lies.
    bench : Bench
        The bench it belongs to.
    record : Record
        Its record.
    """

    name: str
    folder: Path
    bench: Bench
    record: Record
    view: View = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "view", View(self.record))

    @property
    def notebook(self) -> Path:
        """The job's notebook."""
        return self.folder / f"{self.name}.ipynb"

    def add(
        self, stage: str, kind: str, texts: Mapping[str, str], *, note: str = "", replaces: str | None = None
    ) -> Entry:
        """Read typed texts and append them as one entry.

        Parameters
        ----------
        stage, kind : str
            Where it belongs.
        texts : mapping of str to str
            Field name to typed text.
        note : str
            A remark.
        replaces : str or None
            The id of the entry that this corrects.

        Returns
        -------
        Entry
            The entry on disk.

        Raises
        ------
        InputError
            If a text cannot be used; nothing is written then.
        """
        which = find_stage(stage).kind(kind)
        for name in texts:
            which.field(name)
        values, errors = self.read(which, texts)
        if errors:
            raise next(iter(errors.values()))
        return self.save(stage, which, values, note=note, replaces=replaces)

    def read(self, kind: Kind[Any], texts: Mapping[str, str]) -> tuple[dict[str, Value], dict[str, InputError]]:
        """Read a whole form as `Kind.read` does.

        An amount without a currency is in the bench's own, and a picture must lie in the job's photos folder.
        """
        values, errors = kind.read(texts, *self._customs)
        for name, error in self._missing_pictures(kind, values):
            del values[name]
            errors[name] = error
        return values, errors

    def read_one(self, asked: Field, text: str) -> Value:
        """Read what was typed for one field, as the bench writes money, decimals and dates.

        Raises
        ------
        InputError
            If it is not of the field's kind.
        """
        return asked.read(text, *self._customs)

    @property
    def _customs(self) -> tuple[str, str, str]:
        """The bench's currency, decimal sign and order of a date."""
        text = self.bench.text
        return self.bench.currency, text("bench", "decimal_sign"), text("bench", "date_order")

    def _missing_pictures(self, kind: Kind[Any], values: Mapping[str, Value]) -> list[tuple[str, InputError]]:
        missing = []
        for asked in kind.fields:
            file = values.get(asked.name)
            if asked.kind == "photo" and isinstance(file, str) and not has_picture(self.folder, file):
                like = like_it(self.folder, file)
                advice = f"{file} is not there; there is {like}." if like else "Put the picture into photos/ first."
                error = InputError(
                    asked.label, "the name of a picture that lies in the job's photos folder", file, advice
                )
                missing.append((asked.name, error))
        return missing

    def save(
        self, stage: str, kind: Kind[Any], values: Mapping[str, Value], *, note: str = "", replaces: str | None = None
    ) -> Entry:
        """Append values that were read already.

        Raises
        ------
        InputError
            If a picture is not in the photos folder, or there is no entry that `replaces` names.
        """
        for _, error in self._missing_pictures(kind, values):
            raise error
        if not replaces and not kind.log:
            replaces = None  # the newest counts anyway, and one without an id cannot be named
        if replaces is not None:
            self._find(replaces)
        return self.record.append(new_entry(stage, kind.key, kind.to_json(values), note=note, replaces=replaces))

    def _find(self, entry_id: str) -> None:
        """Refuse to correct or take back what no line of the record goes by."""
        if not entry_id or all(entry.id != entry_id for entry in self.record.entries):
            raise InputError(
                "the entry to correct or take back", "one that stands in this record under an id", entry_id,
                "Look at the log again; the record may have been changed from elsewhere.",
            )  # fmt: skip

    def withdraw(self, entry: Entry, reason: str) -> Entry:
        """Take an entry back; it stays in the file, and the reason with it.

        Parameters
        ----------
        entry : Entry
            What to take back.
        reason : str
            Why; it must not be empty.

        Returns
        -------
        Entry
            The line that withdraws it.

        Raises
        ------
        InputError
            If no reason is given.
        """
        if not reason.strip():
            raise InputError("reason", "given", reason, "Say in a few words why the entry is taken back.")
        self._find(entry.id)
        return self.record.append(new_entry(entry.stage, WITHDRAWAL, {"reason": reason.strip()}, replaces=entry.id))

    def release(self, stage: str, hold: str, reason: str, *, about: str = "") -> Entry:
        """Release a hold point with a reason, which stays in the record.

        Parameters
        ----------
        stage : str
            The stage that is held.
        hold : str
            The hold point's key.
        reason : str
            Why the step may go on all the same; it must not be empty.
        about : str
            For mending a part: the way that is let go (`pentools.record.releases`); no other is.

        Returns
        -------
        Entry
            The release on disk.

        Raises
        ------
        InputError
            If no reason is given.
        """
        if len(reason.split()) < 2:
            raise InputError(
                "reason", "given in a few words", reason, "The reason stays in the record, which its owner reads."
            )
        data = {"hold": hold, "reason": reason.strip()} | ({"about": about} if about else {})
        return self.record.append(new_entry(stage, RELEASE, data))

    def log(self, kind: Kind[F]) -> tuple[Logged[F], ...]:
        """Every live entry of a kind with what it holds; one that cannot be read is passed over (`review` names it).

        Returns
        -------
        tuple of Logged
            In the order first entered; a correction stands in the place of what it corrects.
        """
        return self.view.log(kind)

    def line_of(self, entry: Entry) -> int:
        """Where an entry stands in the record: of two, the later line is the later word."""
        return self.view.line_of(entry)

    def first(self, entry: Entry) -> Entry:
        """The line that an entry began as: a correction starts no clock again."""
        return self.view.first(entry)

    def place_of(self, entry: Entry) -> int:
        """Where an entry was first entered: two of the same second keep their order, and a correction moves nothing."""
        return self.line_of(self.first(entry))

    def money(self, typed: str | None) -> Money | None:
        """An amount, in the bench's own currency where it names none; None where there is none, or it cannot be read."""
        try:
            return read_money(typed or "", self.bench.currency, old=False)
        except InputError:
            return None

    def entered(self, *kinds: Kind[Any]) -> tuple[Entry, ...]:
        """The live entries of some kinds that can be read, one kind after the other."""
        return tuple(logged.entry for kind in kinds for logged in self.log(kind))

    def newest(self, kind: Kind[F]) -> F:
        """What counts for a kind of which the newest stands for all; all None where there is none."""
        found = self.log(kind)
        return found[-1].values if found else kind.form()

    def stage(self, key: str) -> Stage:
        """The stage of that name."""
        return find_stage(key)


def job_folder(bench: Bench, name: str) -> Path:
    """Where a job of that name lies; never outside the bench folder, not even by a link."""
    folder = bench.folder / check_job_name(name)
    if folder.exists() and folder.resolve().parent != bench.folder.resolve():
        raise InputError("job name", "the name of a folder on the bench", name, "It is a link that leads elsewhere.")
    return folder


def create_job(bench: Bench, name: str, *, sample: str | None = None) -> Job:
    """Lay out a new job on the bench.

    Parameters
    ----------
    name : str
        The new job's name.
    sample : str or None
        A sample job that comes with the kit, copied whole.

    Returns
    -------
    Job
        The job, ready to open.

    Raises
    ------
    InputError
        If the name cannot be used.
    RecordError
        If there is a job of that name already, or the folder cannot be made.
    """
    folder = job_folder(bench, name)
    if folder.exists():
        raise RecordError(f"There is already a job {name} in {bench.folder}. Open it, or choose another name.")
    source = shipped_folder("sample_jobs") / check_job_name(sample) if sample else None
    if source is not None and not source.is_dir():
        raise RecordError(f"No sample job {sample} comes with the kit.")
    try:
        lay_out(folder, sample=source)
    except OSError as error:
        raise RecordError(
            f"The job cannot be laid out in {folder} ({what_failed(error)}). Nothing of it was left behind."
        ) from error
    return Job(name, folder, bench, Record.open(folder / RECORD_NAME))


def start_job(bench: str | os.PathLike[str] | None, name: str) -> Job:
    """Lay out a new job, and the bench too where there is none yet; where that fails neither is left behind.

    Parameters
    ----------
    bench : path or None
        The bench folder, as `open_bench_folder` takes it.
    name : str
        The new job's name.

    Raises
    ------
    InputError, RecordError
        As `create_job` does.
    """
    folder = bench_folder(bench)
    made = not folder.exists()
    try:
        return create_job(open_bench_folder(bench, create=True), name)
    except PentoolsError:
        if made:
            with contextlib.suppress(OSError):
                (folder / "bench.toml").unlink(missing_ok=True)
                folder.rmdir()
        raise


def open_job(name: str, *, bench: Bench | None = None) -> Job:
    """Open a job on the bench.

    Parameters
    ----------
    name : str
        The job's name.
    bench : Bench or None
        The bench; the usual one by default.

    Returns
    -------
    Job
        The job with its record read.

    Raises
    ------
    RecordError
        If there is no such job.
    """
    where = bench or open_bench_folder()
    folder = job_folder(where, name)
    if not folder.is_dir():
        there = jobs_on(where) if where.folder.is_dir() else ()
        known = f" There are: {', '.join(there)}." if there else " The bench is empty: pentools new starts a job."
        raise RecordError(f"There is no job {name} in {where.folder}.{known}")
    return Job(name, folder, where, Record.open(folder / RECORD_NAME))


def job_in(folder: Path) -> Job:
    """The job that lies in a folder (a notebook knows the folder it runs in)."""
    folder = Path(folder).resolve()
    return job_at(folder, open_bench_folder(folder.parent))


def job_at(folder: Path, bench: Bench) -> Job:
    """The job that lies in a folder of a bench that is read already."""
    return Job(folder.name, folder, bench, Record.open(folder / RECORD_NAME))
