"""The bench's own facts, from ``bench.toml`` beside the jobs: instruments, rates, contact lines, units shown."""

from __future__ import annotations

import contextlib
import os
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from pentools.errors import InputError, RecordError
from pentools.record.appending import put_in_place, what_failed
from pentools.record.bench_file import BENCH_TEMPLATE, read_facts
from pentools.record.drawer_facts import facts_with_drawer

__all__ = ["BENCH_TEMPLATE", "Bench", "bench_folder", "check_job_name", "open_bench_folder"]

MOST_LETTERS = 64  # of a job's name
_RESERVED = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?")


@dataclass(frozen=True, slots=True)
class Bench:
    """A bench: its folder and its facts.

    Parameters
    ----------
    folder : Path
        Where the jobs lie, each in a folder of its own.
    facts : mapping
        ``bench.toml`` as it was read, over the defaults; unknown keys are kept.
    problems : tuple of str
        What of ``bench.toml`` cannot be used and was passed by. For the bench alone: it may repeat what stands there.
    """

    folder: Path
    facts: Mapping[str, Any] = field(default_factory=dict)
    problems: tuple[str, ...] = ()

    def text(self, table: str, key: str) -> str:
        """A fact as text; empty where it is not given."""
        value = self.facts.get(table, {}).get(key, "")
        return "" if value is None else str(value)

    def strings(self, table: str, key: str) -> tuple[str, ...]:
        """A list of facts as texts."""
        return tuple(str(item) for item in self.facts.get(table, {}).get(key, ()))

    def on_paper(self, paper: str) -> Bench:
        """The same bench with another paper for its pages: ``A4`` or ``Letter``."""
        return replace(self, facts={**self.facts, "bench": {**self.facts.get("bench", {}), "paper": paper}})

    @property
    def currency(self) -> str:
        """Its own currency, a code of ISO 4217."""
        return self.text("money", "currency").upper()

    @property
    def large_type(self) -> bool:
        """Whether panels use the bigger letters."""
        return bool(self.facts.get("bench", {}).get("large_type", False))

    @property
    def rate_per_hour(self) -> float:
        """The hourly rate in the bench's currency; 0 where hours are not priced."""
        return float(self.facts.get("money", {}).get("rate_per_hour", 0.0))


def bench_folder(given: str | os.PathLike[str] | None = None) -> Path:
    """The folder of the bench: the one given, else ``PENTOOLS_BENCH``, else ``pen-bench`` in the home folder."""
    chosen = given or os.environ.get("PENTOOLS_BENCH") or Path.home() / "pen-bench"
    return Path(chosen).expanduser().resolve()


def open_bench_folder(given: str | os.PathLike[str] | None = None, *, create: bool = False) -> Bench:
    """Read a bench.

    Parameters
    ----------
    given : path or None
        The folder; by default as `bench_folder` says.
    create : bool
        Whether to make the folder and a commented ``bench.toml`` where they are missing.

    Returns
    -------
    Bench
        The bench with its facts; what cannot be used of them is among its `problems`.

    Raises
    ------
    RecordError
        If the folder cannot be made.
    """
    folder = bench_folder(given)
    path = folder / "bench.toml"
    if create:
        made = not folder.exists()
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            if not path.exists():
                put_in_place(path, BENCH_TEMPLATE.encode())
        except OSError as error:
            with contextlib.suppress(OSError):
                if made:
                    folder.rmdir()
            raise RecordError(
                f"The bench folder {folder} cannot be made ({what_failed(error)}). Choose another with --bench."
            ) from error
    facts, problems = read_facts(path)
    facts, strange = facts_with_drawer(folder, facts)
    return Bench(folder, facts, (*problems, *strange))


def check_job_name(name: str) -> str:
    """Accept a job's name, or say what is wrong with it.

    Parameters
    ----------
    name : str
        Letters, digits, hyphen, underscore and full stop; it begins and ends with a letter or digit; at most 64.

    Returns
    -------
    str
        The name as given.

    Raises
    ------
    InputError
        If the name could leave the bench folder or trouble a file system; the text names the rule.
    """
    rule = _rule_against(name)
    if rule:
        raise InputError("job name", rule, name, "Choose one like 2026-014-green-piston.")
    return name


def _rule_against(name: str) -> str:
    """The first rule that a job's name breaks; empty where it breaks none."""
    odd = "".join(dict.fromkeys(re.findall(r"[^A-Za-z0-9._-]", name)))
    device = name.partition(".")[0].upper()
    rules = (
        (not name.strip(), "given"),
        ("/" in name or "\\" in name, "a name without slashes, not a path: a job lies directly in the bench folder"),
        (len(name) > MOST_LETTERS, f"at most {MOST_LETTERS} letters long (this one has {len(name)})"),
        (bool(odd), f"made of the letters a to z, digits, hyphens, underscores and full stops, without {_shown(odd)}"),
        (".." in name, "without two full stops in a row"),
        (not name[:1].isalnum() or not name[-1:].isalnum(), "begun and ended with a letter or a digit"),
        (bool(_RESERVED.fullmatch(name)), f"none that some systems keep for a device, as they do {device}"),
    )
    return next((rule for broken, rule in rules if broken), "")


def _shown(signs: str) -> str:
    named = {" ": "a space", "\n": "a line end", "\t": "a tab"}
    return ", ".join(named.get(sign, sign if sign.isprintable() else f"U+{ord(sign):04X}") for sign in signs[:5])
