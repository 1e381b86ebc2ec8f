"""The bench's own facts, from ``bench.toml`` beside the jobs: instruments, rates, contact lines, units shown."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from pentools.calc.weighing.balance import FIGURES
from pentools.errors import InputError, RecordError
from pentools.units import read_quantity

__all__ = ["BENCH_TEMPLATE", "Bench", "bench_folder", "check_job_name", "open_bench_folder"]

_BALANCE = "\n".join(f'{figure.name} = "{"0.01 g" if figure.name == "readability" else ""}"' for figure in FIGURES)
BENCH_TEMPLATE = f"""\
# Facts about this bench. Every line may be left out; what is missing is asked for or taken from the defaults shown.

[bench]
name = ""                       # heads the pages you send out
contact = []                    # lines for the foot of the client's page, one string each
language = "en"                  # of the pages; English is the only one so far
decimal_sign = "."              # "." or "," in what is shown
paper = "A4"                    # or "Letter"
large_type = false              # bigger letters and buttons, for reading at arm's length

[money]
currency = "EUR"
rate_per_hour = 0.0             # 0 = hours are counted but not priced

[balance]                       # from the balance's own sheet, with units; what is left empty is taken as usual for its readability
{_BALANCE}

[caliper]
uncertainty = "0.02 mm"         # one standard uncertainty of a reading

[room]
temperature = "20 °C"
pressure = "1013 hPa"
humidity = "50 %"

[stock]                         # what lies in the drawer
rings = []                      # measured rings, "section x inside", such as "1.78 mm x 5.28 mm"
abrasives = []                  # grades with their scale, such as "P400", "film 9 um", or your own cloth with its
                                # figures, "cushioned cloth 4000 = 9 um, finish 7 um"
"""

_JOB_NAME = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9._-]{0,62}[A-Za-z0-9])?")
_RESERVED = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?")
_QUANTITIES = {
    **{("balance", figure.name): "g" for figure in FIGURES}, ("caliper", "uncertainty"): "mm",
    ("room", "temperature"): "degC", ("room", "pressure"): "kPa", ("room", "humidity"): "1",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Bench:
    """A bench: its folder and its facts.

    Parameters
    ----------
    folder : Path
        Where the jobs lie, each in a folder of its own.
    facts : mapping
        ``bench.toml`` as it was read, over the defaults; unknown keys are kept.
    """

    folder: Path
    facts: Mapping[str, Any] = field(default_factory=dict)

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
        The bench with its facts.

    Raises
    ------
    RecordError
        If ``bench.toml`` cannot be read; the text names the place in it.
    """
    folder = bench_folder(given)
    path = folder / "bench.toml"
    if create:
        try:
            folder.mkdir(parents=True, exist_ok=True)
            if not path.exists():
                path.write_text(BENCH_TEMPLATE, encoding="utf-8")
        except OSError as error:
            raise RecordError(
                f"The bench folder {folder} cannot be made ({error.strerror}). Choose another with --bench."
            ) from error
    facts: dict[str, Any] = tomllib.loads(BENCH_TEMPLATE)
    if path.is_file():
        try:
            given_facts = tomllib.loads(path.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
            raise RecordError(
                f"{path} cannot be read: {error}. Mend that line, or move the file away to start afresh."
            ) from error
        for table, content in given_facts.items():
            facts[table] = {**facts.get(table, {}), **content} if isinstance(content, dict) else content
    _check(facts, path)
    return Bench(folder, facts)


def _check(facts: Mapping[str, Any], path: Path) -> None:
    for table in ("bench", "money", "balance", "caliper", "room", "stock"):
        if not isinstance(facts.get(table), dict):
            raise RecordError(f"{path}: [{table}] must be a table.")
    for (table, key), unit in _QUANTITIES.items():
        text = facts[table].get(key, "")
        if not text:
            continue
        try:
            read_quantity(str(text), unit, name=f"[{table}] {key}")
        except InputError as error:
            raise RecordError(f"{path}: {error}") from error
    rate = facts["money"].get("rate_per_hour", 0)
    if isinstance(rate, bool) or not isinstance(rate, (int, float)) or rate < 0:
        raise RecordError(f"{path}: [money] rate_per_hour must be a number, zero or more: got {rate!r}.")


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
        If the name could leave the bench folder or trouble a file system.
    """
    if not _JOB_NAME.fullmatch(name) or ".." in name or _RESERVED.fullmatch(name):
        raise InputError(
            "job name",
            "made of letters, digits, hyphens, underscores and full stops, beginning and ending with a letter or digit",
            name,
            "Choose one like 2026-014-green-piston.",
        )
    return name
