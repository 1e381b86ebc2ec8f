"""One job of another bench, or of an archive, taken over into the same job here: its entries, its pictures, its words."""

from __future__ import annotations

import hashlib
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import msgspec

from pentools.books.exchange.archive import files_of
from pentools.errors import RecordError
from pentools.record.appending import put_in_place, what_failed
from pentools.record.chains import heads
from pentools.record.entries import Entry, encode_entry, now
from pentools.record.job import Job
from pentools.record.layout import RECORD_NAME
from pentools.record.lines import split_lines
from pentools.record.looking import bytes_of
from pentools.record.merging import MergeReport, plan_merge
from pentools.record.registry import STAGES, find_stage
from pentools.record.storage import Record

__all__ = ["Taken", "take_over"]

_NOTE = "The picture’s name was taken when two copies of the job were brought together."
MARK = 8  # figures of its checksum that a file gets behind its name where that is taken


@dataclass(frozen=True, slots=True)
class Taken:
    """What was taken over.

    Parameters
    ----------
    record : MergeReport or None
        What became of the entries; None where the other copy has no record.
    files : tuple of str
        Files that were not here.
    beside : mapping of str to str
        Files whose name is another file's here: their name there to their name here.
    renamed : int
        Entries that name such a picture, and were corrected to its new name.
    """

    record: MergeReport | None
    files: tuple[str, ...]
    beside: Mapping[str, str]
    renamed: int = 0

    @property
    def anything(self) -> bool:
        """Whether anything was taken over."""
        return bool((self.record is not None and self.record.added) or self.files or self.beside)

    @property
    def aside(self) -> int:
        """Lines of the other copy that were, or would be, set aside."""
        return len(self.record.conflicts) + self.record.unread if self.record is not None else 0


def take_over(job: Job, source: Path, *, was: str = "", write: bool = True) -> Taken:
    """Take over a copy of a job.

    Parameters
    ----------
    source : Path
        The copy's folder; it is only read.
    was : str
        The job's name there, for its notebook; the folder's own name by default.
    write : bool
        False to say what would be done, and do nothing.

    Returns
    -------
    Taken
        What was taken over. Doing it once more takes nothing.

    Raises
    ------
    RecordError
        If something cannot be read or written.

    Notes
    -----
    Entries are merged by their ids (`Record.merge`). A file that lies here with the same bytes, under whatever name in its
    folder, is passed by; one whose name is taken by other bytes is laid beside under its name with eight figures of its
    checksum. An entry that comes along and names a picture that goes by another name here is corrected to that name. What
    lies in ``writeup/`` is not taken.
    """
    try:
        found = _files(job, source, was or source.name)
        if write:
            for theirs, here in {**found.fresh, **found.beside}.items():
                _lay(job.folder / here, (source / theirs).read_bytes())
        record, renamed = _entries(job, source / RECORD_NAME, found.known_as | found.beside, write)
    except OSError as error:
        raise RecordError(f"{job.name}: something could not be read or written ({what_failed(error)}).") from error
    return Taken(record, tuple(sorted(found.fresh.values())), found.beside, renamed)


@dataclass(frozen=True, slots=True)
class _Files:
    """Files of the copy by their names there: to lay under their own name, to lay beside, and here under another name."""

    fresh: dict[str, str] = field(default_factory=dict)
    beside: dict[str, str] = field(default_factory=dict)
    known_as: dict[str, str] = field(default_factory=dict)


def _files(job: Job, source: Path, was: str) -> _Files:
    found = _Files()
    sums = {name: _sum(job.folder / name) for name in files_of(job.folder, pages=False)[0]}
    known = {(_folder(name), total): name for name, total in sums.items()}
    for name in files_of(source, pages=False)[0]:
        own, theirs = f"{job.name}.ipynb" if name == f"{was}.ipynb" else name, _sum(source / name)
        if name == RECORD_NAME or sums.get(own) == theirs:
            continue
        if (here := known.get((_folder(own), theirs))) is not None:
            found.known_as[name] = here
        elif own in sums:
            found.beside[name] = _marked(own, theirs)
        else:
            found.fresh[name] = own
    return found


def _folder(name: str) -> str:
    return name.rpartition("/")[0]


def _marked(name: str, total: str) -> str:
    path = Path(name)
    return path.with_name(f"{path.stem}-{total[:MARK]}{path.suffix}").as_posix()


def _sum(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _lay(path: Path, content: bytes) -> None:
    """A new file in one piece; nothing is written over."""
    path.parent.mkdir(parents=True, exist_ok=True)
    if path.exists():
        raise RecordError(f"{path} came into being meanwhile. Do it once more.")
    put_in_place(path, content)


def _entries(job: Job, other: Path, moved: Mapping[str, str], write: bool) -> tuple[MergeReport | None, int]:
    """Merge the other's lines, with corrections for pictures that go by another name here; both in one step."""
    before = _set_aside_before(job.folder)
    lines_there = split_lines(bytes_of(other)) if other.is_file() else []
    theirs = b"\n".join(line for line in lines_there if line.strip() not in before)
    if not theirs.strip():
        return None, 0
    mine = {entry.id for entry in job.record.entries}
    more = tuple(_corrections(Record.open(other).entries, moved, mine))
    lines = b"\n".join((theirs, *(encode_entry(entry) for entry in more)))
    if not write:
        return plan_merge(bytes_of(job.record.path) if job.record.path.is_file() else b"", lines, other.name).done, len(
            more
        )
    with tempfile.TemporaryDirectory() as work:
        copy = Path(work) / RECORD_NAME
        copy.write_bytes(lines)
        return job.record.merge(copy), len(more)


def _set_aside_before(folder: Path) -> set[bytes]:
    """Lines that an earlier merge set aside, so that the same is not set aside twice."""
    kept = (line.strip() for path in folder.glob("record-unlike-*.txt") for line in split_lines(path.read_bytes()))
    return {line for line in kept if line}


def _corrections(theirs: Sequence[Entry], moved: Mapping[str, str], mine: set[str]) -> Iterator[Entry]:
    """For each entry that comes along and names a picture which goes by another name here, its correction."""
    for entry in heads(theirs) if moved else ():
        data = entry.data | {
            name: Path(moved[where]).name
            for name, value in entry.data.items()
            if isinstance(value, str) and (where := f"{_pictures(entry, name)}/{value}") in moved
        }
        if entry.id not in mine and data != entry.data:
            said = msgspec.json.encode([entry.id, data], order="deterministic")
            id_ = hashlib.blake2b(said, digest_size=16).hexdigest()
            at = max(now(), entry.time).isoformat()
            yield Entry(id=id_, at=at, stage=entry.stage, kind=entry.kind, data=data, note=_NOTE, replaces=entry.id)


def _pictures(entry: Entry, name: str) -> str:
    """The folder in which the file that a field names lies; nothing where it names none."""
    if name == "scan":
        return "scans"
    if entry.stage not in STAGES:
        return ""
    kinds = [kind for kind in find_stage(entry.stage).kinds if kind.key == entry.kind]
    return (
        "photos" if any(field.name == name and field.kind == "photo" for kind in kinds for field in kind.fields) else ""
    )
