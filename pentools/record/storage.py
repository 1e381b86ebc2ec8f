"""The file behind a record: append-only lines, locked and forced to disk, nothing ever rewritten or lost."""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from pentools.errors import RecordError
from pentools.record.appending import append_block, close_tail, locked, set_aside, what_failed
from pentools.record.chains import arranged, chains, heads
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry, encode_entry
from pentools.record.lines import Line, read_line, read_lines, split_lines, whole_part, without_mark
from pentools.record.looking import Stamp, bytes_of, folder_of, read_file, stamp_from, stamp_of
from pentools.record.merging import MergeReport, plan_merge

__all__ = ["MergeReport", "Record"]

LOCK_SECONDS = 10.0
MOST_NAMED = 20  # unreadable lines that are named one by one


@dataclass
class Record:
    """A job's record: its entries in order, and what was odd about the file.

    Parameters
    ----------
    path : Path
        The ``record.jsonl`` file; it need not exist yet.
    lines : list of Line
        Every line of the file that is not blank, in the file's order.
    version : int
        Counts the times that something was read; what was worked out for an older one no longer holds.

    Notes
    -----
    Reading never writes. What was read is told from what another program put in its place by the bytes themselves:
    a file that was changed in any way but by adding to it is read again from the start.
    """

    path: Path
    lines: list[Line] = field(default_factory=list)
    version: int = 0
    _notices: dict[str, str] = field(default_factory=dict)  # what happened while it was open, by topic
    _offset: int = 0
    _count: int = 0  # lines that are ended, blank ones too
    _digest: hashlib._Hash = field(default_factory=hashlib.sha256)
    _stamp: Stamp | None = None
    _tail: str = ""  # of a last line without an end: "", "whole" or "torn"
    _before: frozenset[str] = frozenset()  # names of lines that were read and then no longer found
    _folder: Stamp | None = None
    _strange: str = ""  # why nothing may be added
    _entries: list[Entry] | None = None
    _counting: dict[tuple[str | None, str | None], list[Entry]] | None = None

    def __post_init__(self) -> None:
        self._folder = folder_of(self.path)

    @classmethod
    def open(cls, path: Path) -> Record:
        """Read a record; nothing is written.

        Parameters
        ----------
        path : Path
            The file; a missing one is an empty record.

        Returns
        -------
        Record
            The record as it stands; a torn last line is named in `problems` and set aside by the next append.

        Raises
        ------
        RecordError
            If the file is there and cannot be read at all.
        """
        record = cls(Path(path))
        record.refresh()
        return record

    @property
    def entries(self) -> list[Entry]:
        """Every line that could be read, in the order in which they count (the file's, or that agreed by a merge)."""
        if self._entries is None:
            self._entries = arranged(line.entry for line in self.lines if line.entry is not None)
        return self._entries

    @property
    def problems(self) -> list[str]:
        """What is odd about the file, a sentence each."""
        unread = [line for line in self.lines if not line.whole]
        told = [
            f"Line {line.number} of {self.path.name} was left as it is: {line.problem}" for line in unread[:MOST_NAMED]
        ]
        if len(unread) > MOST_NAMED:
            told.append(
                f"{len(unread) - MOST_NAMED} more lines of {self.path.name} cannot be read and were left as they are."
            )
        if self._tail == "torn":
            told.append(
                f"The last line of {self.path.name} (line {self._count + 1}) was torn off in the middle of a save. "
                "It is passed by, and will be set aside when the next entry is saved; everything before it is whole."
            )
        return [*self._notices.values(), *told]

    # reading -------------------------------------------------------------------------------------------------

    def refresh(self) -> bool:
        """Read what was added since the last look, perhaps by another notebook; True if anything changed.

        Raises
        ------
        RecordError
            If the file is there and cannot be read.
        """
        before = self.version
        self._look_at_folder()
        stamp = stamp_of(self.path)
        if stamp == self._stamp:
            return False
        if stamp is None:
            self._start_again()
            self._notices["gone"] = f"{self.path.name} was there and is not in {self.path.parent} any more."
            return True
        data, stamp = read_file(self.path)
        if not self._continues(data):
            self._start_again()
            self._notices["changed"] = "The record was changed while it was open: it was read again from the start."
        self._take(data[self._offset :])
        self._stamp = stamp
        self._compare()
        return self.version != before

    def _look_at_folder(self) -> None:
        folder = folder_of(self.path)
        if folder is None or folder == self._folder:
            return
        if self._folder is not None and not self.lines and not self._before:
            self._strange = f"Another folder lies at {self.path.parent} than the one that was opened."
        self._folder = folder

    def _continues(self, data: bytes) -> bool:
        """Whether a file begins with all that was read of it."""
        return len(data) >= self._offset and hashlib.sha256(data[: self._offset]).digest() == self._digest.digest()

    def _start_again(self) -> None:
        if not self._strange:
            self._before |= {line.name for line in self.lines}
        self.lines.clear()
        self._offset = self._count = 0
        self._digest = hashlib.sha256()
        self._stamp, self._tail = None, ""
        self._changed()

    def _compare(self) -> None:
        """Once a record was read again: is it the one that was open, and is all of it still there?"""
        if not self._before:
            return
        here = {line.name for line in self.lines}
        if not self._before & here:
            self._strange = (
                f"Another record lies at {self.path} than the one that was opened: none of its lines was there before."
            )
            self._notices["strange"] = self._strange
            return
        missing = len(self._before - here)
        self._strange, self._before = "", frozenset()
        for topic in ("gone", "strange"):
            self._notices.pop(topic, None)
        if missing:
            them = "One line that was" if missing == 1 else f"{missing} lines that were"
            self._notices["missing"] = (
                f"{them} read before cannot be found in {self.path.name}. Was an older copy put back?"
            )

    def _changed(self) -> None:
        self.version += 1
        self._entries = self._counting = None

    def _take(self, fresh: bytes) -> None:
        """Read on: ended lines for good, a last line without an end until the next look."""
        if self._tail == "whole":
            self.lines.pop()
        end = whole_part(fresh)
        whole, tail = fresh[:end], fresh[end:]
        self.lines += [line for _, line in read_lines(whole, self._count + 1)]
        self._count += len(split_lines(whole)) - 1
        self._offset += end
        self._digest.update(whole)
        self._tail = ""
        if without_mark(tail).strip():
            last = read_line(tail, self._count + 1)
            self._tail = "whole" if last.whole else "torn"
            self.lines += [last] if self._tail == "whole" else []
        self._changed()

    # writing -------------------------------------------------------------------------------------------------

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
            If the file cannot be locked or written, or is not the one that was opened; nothing is half-written then.
        """
        with _in_words(self.path, "Nothing was saved; the text is still in its box."), locked(self.path, LOCK_SECONDS):
            self._prepare()
            self._write([encode_entry(entry)])
        return entry

    def _prepare(self) -> None:
        """Under the lock: is this the record that was opened? Then close its last line."""
        self.refresh()
        reason = self._strange or (self._notices.get("gone", "") if self._before else "")
        if reason:
            raise RecordError(
                f"{reason} Nothing was saved. Put the right folder back, or open the job's notebook again from where it lies now."
            )
        said = close_tail(self.path)
        if said:
            self._notices[said] = said

    def _write(self, lines: Sequence[bytes]) -> None:
        append_block(self.path, b"".join(line + b"\n" for line in lines), fresh=self._stamp is None)
        with self.path.open("rb") as file:
            stamp = stamp_from(os.fstat(file.fileno()))
            file.seek(self._offset)
            self._take(file.read())
        self._stamp = stamp

    # what counts ---------------------------------------------------------------------------------------------

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
            for entry in heads(self.entries):
                if entry.kind == WITHDRAWAL:
                    continue
                for key in ((None, None), (entry.stage, None), (None, entry.kind), (entry.stage, entry.kind)):
                    self._counting.setdefault(key, []).append(entry)
        return list(self._counting.get((stage, kind), ()))

    def history(self, entry: Entry) -> list[Entry]:
        """All lines about one entry: the first, its corrections, its withdrawal."""
        for chain in chains(self.entries):
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
        """Take over the lines of another copy of this record.

        Parameters
        ----------
        other : Path
            The other copy; it is only read.

        Returns
        -------
        MergeReport
            What was taken over, what was there already, and what was set aside beside the record.

        Raises
        ------
        RecordError
            If the other file cannot be read or is no record, or this one cannot be written.

        Notes
        -----
        Each copy keeps its own order; where both have lines of their own, the time of entry decides between them, and
        one more line states the order. So it comes out the same whichever copy takes over the other.
        """
        theirs = bytes_of(Path(other))
        with _in_words(self.path, "Nothing was taken over."), locked(self.path, LOCK_SECONDS):
            self._prepare()
            mine = read_file(self.path)[0] if self._stamp is not None else b""
            plan = plan_merge(mine, theirs, Path(other).name)
            aside = (
                set_aside(self.path, "unlike", b"".join(line + b"\n" for line in plan.aside)) if plan.aside else None
            )
            if plan.lines:
                self._write(plan.lines)
        return plan.report(aside.name if aside else "")


@contextlib.contextmanager
def _in_words(path: Path, left: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise RecordError(f"{path} could not be written ({what_failed(error)}). {left}") from error
