"""A bench asked about all its jobs: what they teach, and a year of them; each answer shows itself with its charts."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING, Any

from pentools.markup import shown_alone, table_html

if TYPE_CHECKING:
    import os

    from pentools.books.learning.learning import Learned
    from pentools.books.learning.year import Year
    from pentools.figures.drawing import Drawing

__all__ = ["HEADINGS", "BenchAnswer", "learned", "review"]

HEADINGS = ("of what", "n", "figure (interval)", "beside it")


@dataclass(frozen=True, slots=True, repr=False)
class BenchAnswer:
    """What a bench's jobs teach, or a year of them.

    Parameters
    ----------
    told : Learned or Year
        The figures, each with n and interval.
    """

    told: Learned | Year

    @property
    def data(self) -> dict[str, Any]:
        """Plain values, as the command prints them as JSON."""
        return self.told.as_json()

    def figures(self) -> tuple[Drawing, ...]:
        """Its charts; those with too little to show are left out."""
        from pentools.books.learning.year import Year
        from pentools.figures.books.year import learned_figures, year_figures

        return year_figures(self.told) if isinstance(self.told, Year) else learned_figures(self.told)

    def tables(self) -> tuple[tuple[str, tuple[tuple[str, ...], ...]], ...]:
        """Each chapter's title and its rows, under `HEADINGS`."""
        from pentools.books.learning.year import Year

        learned = self.told.learned if isinstance(self.told, Year) else self.told
        return tuple((chapter.title, chapter.rows) for chapter in learned.chapters if chapter.figures)

    def __repr__(self) -> str:
        return "\n".join(self.told.lines)

    def _repr_html_(self) -> str:
        drawn = "".join(drawing.svg for drawing in self.figures())
        tables = "".join(table_html(title, HEADINGS, rows, (1,)) for title, rows in self.tables())
        return shown_alone(
            f"<p>{escape(self.told.lines[0])}</p>{drawn}<details><summary>All figures</summary>{tables}</details>"
        )


def learned(bench: str | os.PathLike[str] | None = None, *, year: int | None = None) -> BenchAnswer:
    """What a bench can learn from its jobs: time, filling, seals, rates, returns, success.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.
    year : int or None
        Only from jobs that ended in it; from all by default.

    Returns
    -------
    BenchAnswer
        Each figure with n and interval, or "too few to say" under three; it shows its charts in a notebook.

    Raises
    ------
    RecordError
        If the bench cannot be looked into.
    """
    from pentools.books.learning.learning import learned_on

    return BenchAnswer(learned_on(bench, year))


def review(year: int, bench: str | os.PathLike[str] | None = None) -> BenchAnswer:
    """A year at a bench: what came in, how it ended, and what its jobs teach.

    Parameters
    ----------
    year : int
        1900 to 2200.
    bench : str, path or None
        The bench folder; the usual one by default.

    Returns
    -------
    BenchAnswer
        It shows its charts in a notebook.

    Raises
    ------
    InputError
        If the year is out of range.
    RecordError
        If the bench cannot be looked into.
    """
    from pentools.books.learning.year import year_on

    return BenchAnswer(year_on(year, bench))
