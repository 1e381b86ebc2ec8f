"""A machine that stops at a chosen step of a write: killed (what was written stays) or without power (what was not forced is lost)."""

import contextlib
import os

STEPS = ("write", "fsync", "ftruncate", "replace", "rename")


class Stopped(BaseException):
    """The machine stopped here; nothing after it ran."""


class Machine:
    """Counts the steps of a write, stops at one of them, and knows what was forced to disk.

    Parameters
    ----------
    monkeypatch : pytest.MonkeyPatch
        Puts the steps in the place of the system's own.
    folder : Path
        The folder whose files are watched.
    """

    def __init__(self, monkeypatch, folder):
        self.folder, self.step, self.stop_at, self.forced = folder, 0, None, {}
        self.real = {name: getattr(os, name) for name in STEPS}
        for name in STEPS:
            monkeypatch.setattr(os, name, getattr(self, f"_{name}"))
        for path in self._files():
            self.forced[path.stat().st_ino] = path.read_bytes()

    def _files(self):
        return [path for path in self.folder.rglob("*") if path.is_file()]

    def _count(self):
        self.step += 1
        if self.step == self.stop_at:
            raise Stopped

    def _write(self, handle, block):
        if self.step + 1 == self.stop_at:
            self.real["write"](handle, block[: len(block) // 2])
        self._count()
        return self.real["write"](handle, block)

    def _fsync(self, handle):
        self._count()
        self.real["fsync"](handle)
        found = os.fstat(handle)
        for path in self._files():
            if path.stat().st_ino == found.st_ino:
                self.forced[found.st_ino] = path.read_bytes()

    def _ftruncate(self, handle, size):
        self._count()
        self.real["ftruncate"](handle, size)

    def _replace(self, source, target, **more):
        self._count()
        self.real["replace"](source, target, **more)

    def _rename(self, source, target, **more):
        self._count()
        self.real["rename"](source, target, **more)

    def run(self, action, stop_at=None):
        """Do something up to a step; True where it came to its end."""
        self.step, self.stop_at = 0, stop_at
        with contextlib.suppress(Stopped):
            action()
            return True
        self.stop_at = None
        return False

    def lose_what_was_not_forced(self):
        """The power fails: every file holds what was last forced of it."""
        for path in self._files():
            path.write_bytes(self.forced.get(path.stat().st_ino, b""))
