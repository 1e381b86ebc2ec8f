"""The ledger: every job on a bench as tidy tables."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from pentools.books.asked import ask_bench
from pentools.books.tables.columns import Packed, packed
from pentools.books.tables.forms import JOB, PLACE, TABLES, WORKED
from pentools.books.tables.frames import DTYPES, frame
from pentools.books.tables.kept_pages import TablesKept
from pentools.books.tables.worked import DRAWN, FILLINGS, FINDINGS, Drawn, worked_page
from pentools.errors import InputError
from pentools.record.bench import open_bench_folder

if TYPE_CHECKING:
    import os
    from concurrent.futures import Executor

    import pandas as pd

__all__ = ["Ledger", "ledger"]

_JOBS = (
    "job", "pen", "system", "material", "arrived_on", "ending", "hours", "volume_ml", "expanded_uncertainty_ml",
    "share_filled", "limits", "work", "meant_for", "released_on", "minutes", "price", "currency", "entries", "first_day",
    "last_day", "unread",
)  # fmt: skip
_QUESTIONS: Mapping[str, Any] = {"fillings": FILLINGS, "findings": FINDINGS}


class Ledger(Mapping[str, "pd.DataFrame"]):
    """Every job on a bench as tables, each made when it is first asked for, by its name: ``.jobs`` or ``["jobs"]``.

    Parameters
    ----------
    bench : path or None
        The bench folder; the usual one by default.
    executor : concurrent.futures.Executor or None
        Who reads and works out what is not kept ready; this process by default.
    with_owners : bool
        Whether the table of jobs says whose pen each is.

    Attributes
    ----------
    tables : tuple of str
        The names of the tables.
    unread : dict of str to str
        The jobs that could not be read, each with the reason.

    Notes
    -----
    Every table has the column ``job``. Those read from entries also have ``line`` (the entry's place in the record),
    ``at_utc`` and ``day``, so that ``entries`` can be laid to any of them by job and line. Only entries that count have a
    row there; `entries` has all lines, with what was corrected and withdrawn. What was not entered is NA, never nought.
    A ledger shows the bench as it was when it was made.
    """

    def __init__(
        self,
        bench: str | os.PathLike[str] | None = None,
        *,
        executor: Executor | None = None,
        with_owners: bool = False,
    ) -> None:
        self.bench = open_bench_folder(bench)
        self._executor = executor
        self._with_owners = with_owners
        self._kept = TablesKept(self.bench, executor)
        self._frames: dict[str, pd.DataFrame] = {}

    @property
    def tables(self) -> tuple[str, ...]:
        """The names of the tables."""
        return tuple(TABLES)

    @property
    def unread(self) -> dict[str, str]:
        """The jobs that could not be read, each with the reason."""
        return self._kept.unread

    def __getitem__(self, table: str) -> pd.DataFrame:
        if table not in TABLES:
            raise InputError("table", "one of " + ", ".join(TABLES), str(table))
        if table not in self._frames:
            self._frames[table] = self._made(table)
        return self._frames[table]

    def __getattr__(self, name: str) -> pd.DataFrame:
        if name in TABLES:
            return self[name]
        raise AttributeError(f"a ledger has no {name}; it has the tables {', '.join(TABLES)}")

    def __iter__(self) -> Iterator[str]:
        return iter(TABLES)

    def __len__(self) -> int:
        return len(TABLES)

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *TABLES]

    def __repr__(self) -> str:
        jobs = "1 job" if len(self._kept.names) == 1 else f"{len(self._kept.names)} jobs"
        unread = f", {len(self.unread)} of them unread" if self.unread else ""
        return f"<ledger of {jobs}{unread} in {self.bench.folder}: {', '.join(TABLES)}>"

    def columns(self, table: str) -> pd.DataFrame:
        """What the columns of a table mean.

        Returns
        -------
        pandas.DataFrame
            Name, type and meaning.
        """
        import pandas as pd

        form = TABLES[table]
        place = (JOB,) if table == "jobs" or form in WORKED else PLACE
        known = {column.name: column for column in (*place, *form.columns)}
        if table == "jobs":
            known |= {
                column.name: column for column in TABLES["fillings"].columns if column.name in Drawn.__struct_fields__
            }
        rows = [
            (name, DTYPES[known[name].form], known[name].says)
            if name in known
            else (name, DTYPES["text"], "why it cannot be read")
            for name in (_jobs_columns(self._with_owners) if table == "jobs" else known)
        ]
        return pd.DataFrame(rows, columns=["column", "dtype", "means"])

    def _made(self, table: str) -> pd.DataFrame:
        if table in _QUESTIONS:
            return frame(worked_page(table, ask_bench(self.bench, _QUESTIONS[table], executor=self._executor)))
        return self._jobs() if table == "jobs" else frame(self._kept.page(table))

    def _jobs(self) -> pd.DataFrame:
        page, names = self._kept.page("jobs"), self._kept.names
        read = frame(page).set_index("job").reindex(list(names)).rename_axis("job").reset_index()
        answers = ask_bench(self.bench, DRAWN, executor=self._executor).answers
        told = [answers.get(name, Drawn()) for name in names]
        drawn = {column: packed("number", [getattr(one, column) for one in told]) for column in Drawn.__struct_fields__}
        extra = frame(drawn | {"unread": self._reasons(names)})
        for name in extra:
            read[name] = extra[name]
        read["job"] = frame({"job": packed("category", names)})["job"]
        return read[_jobs_columns(self._with_owners)]

    def _reasons(self, names: Sequence[str]) -> Packed:
        unread = self.unread
        return packed("note", [unread.get(name) for name in names])


def _jobs_columns(with_owners: bool) -> list[str]:
    return [*_JOBS, "owner"] if with_owners else list(_JOBS)


def ledger(
    bench: str | os.PathLike[str] | None = None, *, executor: Executor | None = None, with_owners: bool = False
) -> Ledger:
    """Every job on a bench as tidy pandas tables.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.
    executor : concurrent.futures.Executor or None
        Who reads and works out what is not kept ready, such as a pool of processes; this process by default.
    with_owners : bool
        Whether the table of jobs says whose pen each is.

    Returns
    -------
    Ledger
        The tables by name: jobs, entries, weighings, leaks, seals, tests, abrasives, heatings, baths, minutes, parts,
        limits, fillings, findings. A job that cannot be read has a row in ``jobs`` with the reason, and is in ``unread``.

    Raises
    ------
    RecordError
        If the bench folder is not there or cannot be looked into.
    """
    return Ledger(bench, executor=executor, with_owners=with_owners)
