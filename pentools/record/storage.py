"""The file behind a record: append-only lines, locked and forced to disk, nothing ever rewritten or lost."""

from __future__ import annotations

import os
import uuid
from dataclasses import dataclass, field
from pathlib import Path

from filelock import FileLock, Timeout
from msgspec import structs

from pentools.errors import RecordError
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry, decode_entry, encode_entry, now

__all__ = ["MergeReport", "Record"]

LOCK_SECONDS = 10.0


@dataclass(frozen=True, slots=True)
class MergeReport:
    """What a merge did: how many entries were taken over, and the ids that stand twice with unlike content."""

    added: int
    conflicts: tuple[str, ...]


@dataclass
class Record:
    """A job's record: its entries in order, and what was odd about the file.

    Parameters
    ----------
    path : Path
        The ``record.jsonl`` file; it need not exist yet.
    entries : list of Entry
        Every line that could be read, in the file's order.
    problems : list of str
        What was odd about the file.
    version : int
        Counts the times that something was read; what was worked out for an older one no longer holds.
    """

    path: Path
    entries: list[Entry] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    version: int = 0
    _offset: int = 0
    _lines: int = 0
    _counting: dict[tuple[str | None, str | None], list[Entry]] | None = None

    @classmethod
    def open(cls, path: Path) -> Record:
        """Read a record; a torn last line is set aside first.

        Parameters
        ----------
        path : Path
            The file; a missing one is an empty record.

        Returns
        -------
        Record
            The record as it stands.
        """
        record = cls(Path(path))
        if record._tail_is_open():
            with record._lock():
                record._mend_tail()
        record.refresh()
        return record

    def refresh(self) -> bool:
        """Read what was added since the last look, perhaps by another notebook; True if there was something."""
        if not self.path.is_file():
            return False
        size = self.path.stat().st_size
        if size < self._offset:
            self.problems.append("The record became shorter while it was open: it was read again from the start.")
            self.entries.clear()
            self._offset = self._lines = 0
            self._changed()
        if size == self._offset:
            return False
        with self.path.open("rb") as file:
            file.seek(self._offset)
            fresh = file.read()
        whole = fresh[: fresh.rfind(b"\n") + 1]
        self._offset += len(whole)
        for line in whole.split(b"\n")[:-1]:
            self._lines += 1
            self._take(line)
        if whole:
            self._changed()
        return bool(whole)

    def _changed(self) -> None:
        self.version += 1
        self._counting = None

    def _take(self, line: bytes) -> None:
        if not line.strip():
            return
        try:
            self.entries.append(decode_entry(line.removeprefix(b"\xef\xbb\xbf")))
        except RecordError as error:
            self.problems.append(f"Line {self._lines} of {self.path.name} was left as it is: {error}")

    def append(self, entry: Entry) -> Entry:
        """Write one entry: locked, in one piece, forced to disk before this returns.

        Parameters
        ----------
        entry : Entry
            What to write.

        Returns
        -------
        Entry
            The same entry, now on disk.

        Raises
        ------
        RecordError
            If the file cannot be locked or written; nothing is half-written then.
        """
        self._write([encode_entry(entry)])
        self.refresh()
        return entry

    def _write(self, lines: list[bytes]) -> None:
        block = b"".join(line + b"\n" for line in lines)
        try:
            with self._lock():
                fresh = not self.path.exists()
                self._mend_tail()
                handle = os.open(self.path, os.O_WRONLY | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0), 0o644)
                try:
                    before = os.fstat(handle).st_size
                    written = 0
                    try:
                        while written < len(block):
                            written += os.write(handle, block[written:])
                        os.fsync(handle)
                    except OSError:
                        os.ftruncate(handle, before)
                        raise
                finally:
                    os.close(handle)
                if fresh:
                    self._sync_folder()
        except OSError as error:
            raise RecordError(
                f"{self.path} could not be written ({error.strerror or error}). Nothing was saved; the text is still in its box."
            ) from error

    def _sync_folder(self) -> None:
        if not hasattr(os, "O_DIRECTORY"):
            return
        folder = os.open(self.path.parent, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)

    def _lock(self) -> _Locked:
        return _Locked(self.path)

    def _tail_is_open(self) -> bool:
        if not self.path.is_file() or self.path.stat().st_size == 0:
            return False
        with self.path.open("rb") as file:
            file.seek(-1, os.SEEK_END)
            return file.read(1) != b"\n"

    def _mend_tail(self) -> None:
        """Close a last line that has no end: keep it if it is whole, else set it aside beside the file."""
        if not self._tail_is_open():
            return
        with self.path.open("r+b") as file:
            content = file.read()
            start = content.rfind(b"\n") + 1
            tail = content[start:]
            try:
                decode_entry(tail)
            except RecordError:
                aside = self._name_aside()
                with aside.open("xb") as kept:
                    kept.write(tail)
                    kept.flush()
                    os.fsync(kept.fileno())
                file.truncate(start)
                self.problems.append(
                    f"The last line of {self.path.name} was torn off in the middle of a save. It was set aside as {aside.name}; everything before it is whole."
                )
            else:
                file.seek(0, os.SEEK_END)
                file.write(b"\n")
            file.flush()
            os.fsync(file.fileno())

    def _name_aside(self) -> Path:
        stem = f"record-torn-{now().strftime('%Y%m%dT%H%M%S')}"
        for number in range(1000):
            candidate = self.path.with_name(f"{stem}{f'-{number}' if number else ''}.txt")
            if not candidate.exists():
                return candidate
        raise RecordError(f"There are too many torn lines set aside beside {self.path}.")

    def live(self, stage: str | None = None, kind: str | None = None) -> list[Entry]:
        """The entries that count: corrected and withdrawn ones left out, in the order first entered.

        Parameters
        ----------
        stage, kind : str or None
            Only entries of this stage and kind.

        Returns
        -------
        list of Entry
            A correction stands in the place of the entry it corrects.
        """
        if self._counting is None:
            self._counting = {}
            for entry in self._live():
                for key in ((None, None), (entry.stage, None), (None, entry.kind), (entry.stage, entry.kind)):
                    self._counting.setdefault(key, []).append(entry)
        return list(self._counting.get((stage, kind), ()))

    def _live(self) -> list[Entry]:
        return [entry for entry in self._heads() if entry.kind != WITHDRAWAL]

    def _heads(self) -> list[Entry]:
        """Within the file the later line wins, whatever the clock said when it was written.

        Of the lines about one entry the last one counts that no other line corrects; where they correct each other in
        a circle, the last one. A line without an id stands for itself.
        """
        corrected = {entry.replaces for entry in self.entries if entry.replaces}
        heads = []
        for chain in self._chains():
            open_ends = [entry for entry in chain if entry.id not in corrected]
            heads.append((open_ends or chain)[-1])
        return heads

    def _keep_later(self, before: list[Entry]) -> None:
        """After a merge: of two corrections made apart the one made later counts, so it is said again if it is this copy's."""
        now_first = {entry.id: entry for entry in self._heads()}
        corrected = {entry.replaces for entry in self.entries}
        said_again = []
        for mine in before:
            if mine.id in now_first or mine.id in corrected:
                continue
            theirs = next((head for head in self.history(mine) if head.id in now_first), None)
            if theirs is not None and theirs.time < mine.time:
                said_again.append(structs.replace(mine, id=uuid.uuid4().hex, replaces=theirs.id))
        if said_again:
            self._write([encode_entry(entry) for entry in said_again])

    def _chains(self) -> list[list[Entry]]:
        """The lines by what they are about, in the file's order; a correction may stand before its target."""
        above: dict[str, str] = {}

        def top(name: str) -> str:
            while above.setdefault(name, name) != name:
                above[name] = above[above[name]]
                name = above[name]
            return name

        for entry in self.entries:
            if entry.id and entry.replaces:
                above[top(entry.id)] = top(entry.replaces)
        chains: dict[object, list[Entry]] = {}
        for number, entry in enumerate(self.entries):
            chains.setdefault(top(entry.id) if entry.id else number, []).append(entry)
        return list(chains.values())

    def history(self, entry: Entry) -> list[Entry]:
        """All lines about one entry: the first, its corrections, its withdrawal."""
        for chain in self._chains():
            if any(line is entry or (line.id and line.id == entry.id) for line in chain):
                return chain
        return []

    def latest(self, stage: str, kind: str) -> Entry | None:
        """The last live entry of a kind, for kinds of which only the newest counts."""
        found = self.live(stage, kind)
        return found[-1] if found else None

    def releases(self, hold: str) -> list[Entry]:
        """The recorded releases of a hold point."""
        return [e for e in self.live(kind=RELEASE) if e.data.get("hold") == hold]

    def merge(self, other: Path) -> MergeReport:
        """Take over the entries of another copy of this record.

        Parameters
        ----------
        other : Path
            The other copy; it is only read.

        Returns
        -------
        MergeReport
            How many lines were taken over; ids that both copies hold with unlike content (this copy's line
            stays, the other line is set aside beside the record).

        Notes
        -----
        Lines keep the order of their own file and are put after this copy's. Where both copies corrected one entry,
        the later correction by the clock counts: if that is this copy's, it is written once more after the other's.

        Raises
        ------
        RecordError
            If the other file cannot be read.
        """
        try:
            content = Path(other).read_bytes()
        except OSError as error:
            raise RecordError(f"{other} cannot be read ({error.strerror}).") from error
        self.refresh()
        mine = {e.id: encode_entry(e) for e in self.entries}
        heads = self._heads()
        fresh, clashes, conflicts = [], [], []
        for line in content.split(b"\n"):
            if not line.strip():
                continue
            try:
                entry = decode_entry(line)
            except RecordError as error:
                self.problems.append(f"A line of {Path(other).name} was not taken over: {error}")
                clashes.append(line)
                continue
            if entry.id not in mine:
                fresh.append(line)
                mine[entry.id] = encode_entry(entry)
            elif mine[entry.id] != encode_entry(entry):
                conflicts.append(entry.id)
                clashes.append(line)
        if fresh:
            self._write(fresh)
            self.refresh()
            self._keep_later(heads)
        if clashes:
            aside = self.path.with_name(f"record-unlike-{now().strftime('%Y%m%dT%H%M%S')}.txt")
            aside.write_bytes(b"\n".join(clashes) + b"\n")
        self.refresh()
        return MergeReport(len(fresh), tuple(conflicts))


class _Locked:
    """The record's lock, with a sentence instead of a time-out."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._lock = FileLock(path.with_name(".record.lock"), timeout=LOCK_SECONDS)

    def __enter__(self) -> None:
        try:
            self._lock.acquire()
        except Timeout as error:
            raise RecordError(
                f"Another program has held the lock on {self._path} for {LOCK_SECONDS:.0f} s. Close the other notebook and try again; nothing was lost."
            ) from error
        except OSError as error:
            raise RecordError(f"{self._path.parent} cannot be written to ({error.strerror}).") from error

    def __exit__(self, *_: object) -> None:
        self._lock.release()
