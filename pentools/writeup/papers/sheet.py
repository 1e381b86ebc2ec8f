"""What a paper is made of, how large its type may be so that it stays on one page, and how it becomes HTML."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.numbers import capital
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.view import SPOILT
from pentools.writeup.forms import PAGE_FORMS, Files
from pentools.writeup.sections.generic import may_show, shown
from pentools.writeup.template import for_css, named, render, styles
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.forms import F
    from pentools.record.job import Job
    from pentools.record.kinds import Kind

__all__ = ["NOT_ENTERED", "Grid", "Paper", "Row", "paper_files", "paper_html", "rows_of", "told", "type_size"]

NOT_ENTERED = "not entered"
SIZES_PT = (12.0, 11.0, 10.2, 9.4, 8.6, 8.0)
"""Type that a paper may be set in, largest first [pt]; what does not fit the smallest goes on to a second page."""

# of a Letter page, the shorter of the two: what rows may take, what a notice takes of it, and how wide the text beside a
# label is [mm]; set against a browser's own print, where the rows of three long proposals are up to 7 % lower than this
_ROOM_MM, _NOTICE_MM, _TEXT_MM, _PAGE_MM = 216.0, 9.0, 140.0, 177.0
_LEADING, _EM_A_LETTER, _PT_MM = 1.3, 0.42, 25.4 / 72


@dataclass(frozen=True, slots=True)
class Grid:
    """A small table: a heading and rows, a column that is empty throughout left out."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: str = ""
    """The heading of the column whose cells are numbers, set to the right; empty for none."""

    def shown(self) -> Grid:
        """The same without empty columns."""
        kept = [i for i in range(len(self.head)) if any(row[i] for row in self.rows)]
        rows = tuple(tuple(row[i] for i in kept) for row in self.rows)
        return Grid(tuple(self.head[i] for i in kept), rows, self.numbers)


@dataclass(frozen=True, slots=True)
class Row:
    """What stands beside one label.

    Parameters
    ----------
    label : str
        Such as "What is proposed".
    lines : tuple of str
        Paragraphs.
    parts : tuple of (str, str)
        What is said of each part of the pen: its name and the words.
    big : str
        What stands large before the first paragraph, such as an amount.
    ticks : tuple of str
        Lines with a box before them, ticked by hand; one that ends with a colon has a line to write on.
    asks : str
        The question over the answers.
    answers : tuple of (str, str)
        What is asked for, each with a yes and a no to tick; or what was said to it already, in the second text.
    blanks : tuple of str
        What is filled in by hand: a label over a line each.
    grid : Grid or None
        A small table.
    """

    label: str
    lines: tuple[str, ...] = ()
    parts: tuple[tuple[str, str], ...] = ()
    big: str = ""
    ticks: tuple[str, ...] = ()
    asks: str = ""
    answers: tuple[tuple[str, str], ...] = ()
    blanks: tuple[str, ...] = ()
    grid: Grid | None = None

    def __bool__(self) -> bool:
        return bool(self.lines or self.parts or self.big or self.ticks or self.answers or self.blanks or self.grid)


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper before it becomes HTML.

    Parameters
    ----------
    key : str
        Its form, a key of `PAGE_FORMS`.
    title : str
        Its heading.
    about : str
        The pen in a few words.
    rows : tuple of Row
        Those with nothing in them are left out.
    foot : str
        One small line at its foot; empty for none.
    drawing : Drawing or None
        What stands under the rows.
    """

    key: str
    title: str
    about: str
    rows: tuple[Row, ...]
    foot: str = ""
    drawing: Drawing | None = None


def told(kind: Kind[F], values: F, name: str) -> str:
    """What the owner may read of a field; empty where it was not given, or is for the bench alone."""
    field, value = kind.field(name), getattr(values, name)
    return shown(field, value) if value is not None and may_show(field, "owner") else ""


def rows_of(job: Job, *makers: Callable[[Job], Row]) -> tuple[Row, ...]:
    """The rows that have something in them; one whose entries were spoilt says so."""
    made = (_if_whole(make, job) for make in makers)
    return tuple(row for row in made if row)


def _if_whole(make: Callable[[Job], Row], job: Job) -> Row:
    try:
        return make(job)
    except SPOILT:
        return Row("To be settled", ("Entries that belong here cannot be read.",))


def paper_files(job: Job, paper: Paper) -> Files:
    """A paper's one file.

    Returns
    -------
    mapping of str to str
        Its path below ``writeup/`` to its HTML, which fetches nothing.
    """
    return {PAGE_FORMS[paper.key].file: paper_html(job, paper)}


def paper_html(job: Job, paper: Paper, *, day: str = "", pen: str = "") -> str:
    """A paper as HTML, which fetches nothing.

    Parameters
    ----------
    day : str
        The day in its head, in words; by default that of the pen's release.
    pen : str
        What it is about; by default the pen as it was described on arrival.
    """
    unfinished = _unfinished(job)
    return render(
        job,
        "papers/paper.html.j2",
        sheet=paper,
        about=pen or capital(job.newest(ARRIVAL).pen or "") or f"The pen: {NOT_ENTERED}",
        unfinished=unfinished,
        date=day or _date(job),
        job_name=named(job),
        running=for_css(f"Job {job.name}"),
        contact=_contact(job, paper),
        style=styles("papers/paper.css"),
        size=type_size(paper, notice=bool(unfinished)),
    )


def _contact(job: Job, paper: Paper) -> tuple[str, ...]:
    """The bench's lines for the foot, where no row has said them."""
    contact = job.bench.strings("bench", "contact")
    said = " ".join(line for row in paper.rows for line in row.lines)
    return () if any(line in said for line in contact) else contact


def _date(job: Job) -> str:
    """When the pen was released; while it was not, when something was last entered."""
    released = job.newest(RESULT).released_on
    if released is not None:
        return date_in_words(released)
    return date_in_words(max((entry.time for entry in job.record.entries), default=None))


def _unfinished(job: Job) -> str:
    if ending(job) is not None:
        return ""
    moments = [entry.time for entry in job.record.entries]
    state = f"It shows the state of {date_in_words(max(moments))}." if moments else "Nothing has been entered yet."
    return f"This job is not finished. {state}"


def type_size(paper: Paper, *, notice: bool = False) -> float:
    """The largest type that keeps a paper on one page, on Letter as on A4.

    Parameters
    ----------
    paper : Paper
        What it says.
    notice : bool
        Whether a notice stands at its head.

    Returns
    -------
    float
        One of `SIZES_PT` [pt].
    """
    room = _ROOM_MM - (_NOTICE_MM if notice else 0.0)
    return next((size for size in SIZES_PT if _height_mm(paper, size) <= room), SIZES_PT[-1])


def _height_mm(paper: Paper, size: float) -> float:
    """About how high the rows are [mm]; letters are taken somewhat wider than they usually are."""
    em = size * _PT_MM
    line = em * _LEADING
    letters = int(_TEXT_MM / (em * _EM_A_LETTER))
    total = 0.0 if paper.drawing is None else _drawing_mm(paper.drawing) + 4.0
    for row in paper.rows:
        beside = sum(math.ceil(len(text) / letters) * line + 0.4 for text in _texts(row, letters))
        total += max(beside, line) + 2.2 + 0.6 * line * bool(row.big)
    return total


def _drawing_mm(drawing: Drawing) -> float:
    """How high a drawing is when it is as wide as the page's text [mm]."""
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', drawing.svg)
    wide, high = (float(found[1]), float(found[2])) if found else (1.0, 0.5)
    return high * min(1.0, _PAGE_MM / wide)


def _texts(row: Row, letters: int) -> Iterator[str]:
    """Every line of a row as a text about as long as what is set."""
    yield from row.lines
    for name, words in row.parts:
        yield f"{name}: {words}"
    for text in row.ticks:
        yield f"[]  {text}"
    if row.answers:
        yield row.asks
    for _ in range(math.ceil(len(row.answers) / 2)):
        yield "answers"
    for _ in range(math.ceil(len(row.blanks) / 2)):
        yield "a line to write on" * (3 * letters // 18)  # as high as three lines
    if row.grid is not None:
        yield "heading"
        columns = max(1, len(row.grid.head))
        for cells in row.grid.rows:
            yield "x" * (columns * max(len(cell) for cell in cells) if cells else 1)
