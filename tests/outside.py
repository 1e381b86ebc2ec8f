"""Checks against the outside: a value that others printed, its source, and how many digits agree.

A test makes one `Outside` for what it holds against whom, and calls `agree` for numbers and `same` for words. Where the
environment names a file in PENTOOLS_CHECKS, each comparison is noted there; `tests/published/write_checks.py` makes
docs/checks.md of them.
"""

import json
import math
import os
import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

KINDS = ("standard", "handbook", "paper", "open data", "reference library", "common practice", "memory")
SOURCES = tomllib.loads((Path(__file__).parents[1] / "docs" / "sources.toml").read_text(encoding="utf-8"))


@dataclass(frozen=True)
class Outside:
    """One thing held against one source: a key of docs/sources.toml, and what is compared in a few words."""

    source: str
    what: str

    def __post_init__(self):
        assert self.source in SOURCES, f"{self.source} is not in docs/sources.toml"
        assert SOURCES[self.source]["kind"] in KINDS, f"{self.source}: kind must be one of {KINDS}"

    def agree(self, ours, printed, *, within=None, because=""):
        """Ours rounds to what was printed; a wider limit (absolute, in the printed unit) needs its reason.

        `printed` is the text of the source ("0.141", "1.2e-3"), so that its digits set the tolerance. A number of a
        reference library (a float) needs `within`.
        """
        assert within is None or because, "a limit of your own needs its reason"
        value = float(printed)
        limit = within if within is not None else _half_digit(printed)
        off = abs(float(ours) - value)
        assert off <= limit * (1 + 1e-9) + 1e-15, f"{self.what}: {ours!r} against {printed} ({self.source})"
        _note(self, str(printed), "all printed" if within is None else f"{_digits(off, value)}")

    def same(self, ours, printed):
        """Ours is the very word, date or list that the source gives."""
        assert ours == printed, f"{self.what}: {ours!r} against {printed!r} ({self.source})"
        _note(self, str(printed), "the same")


def _half_digit(printed):
    assert isinstance(printed, str), "give the number as the text that was printed, or say within what it must agree"
    found = re.fullmatch(r"[-+]?\d+(?:\.(\d*))?(?:[eE]([-+]?\d+))?", printed)
    assert found, f"{printed!r} is not a printed number"
    return 0.5 * 10.0 ** (int(found[2] or 0) - len(found[1] or ""))


def _digits(off, value):
    if off == 0 or value == 0:
        return 15 if off == 0 else 0
    return max(0, min(15, math.floor(-math.log10(2 * off / abs(value)))))


def _note(check, printed, digits):
    if path := os.environ.get("PENTOOLS_CHECKS"):
        line = {"source": check.source, "what": check.what, "printed": printed, "digits": digits}
        with open(path, "a", encoding="utf-8") as file:
            file.write(json.dumps(line, ensure_ascii=False) + "\n")
