"""Abrasive grades in micrometres: what a grade is, how far it spreads, and the curve that cushioned cloth runs on."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

import msgspec

from pentools.errors import InputError

__all__ = [
    "CLOTH",
    "SCALES",
    "Catalogue",
    "Grade",
    "GradeRow",
    "PasteRow",
    "catalogue_from_rows",
    "cloth_grade",
    "sized_grade",
    "with_finish",
]


class GradeRow(msgspec.Struct, frozen=True):
    """One row of the table ``abrasive_grades``: a figure of a grade, its size and spread [µm]."""

    scale: str
    grade: str
    figure: str
    size_um: float
    spread_um: float | None
    method: str
    medium: str
    source: str
    certainty: str
    note: str


class PasteRow(msgspec.Struct, frozen=True):
    """One row of the table ``polishing_pastes``: its size and the ends of its range [µm]."""

    paste: str
    size_um: float
    low_um: float | None
    high_um: float | None
    source: str
    certainty: str
    note: str


SCALES: Mapping[str, str] = {
    "P": "P (ISO 6344, coated abrasives)",
    "F": "F (ISO 8486, bonded grits and powders)",
    "CAMI": "CAMI (ANSI B74.18, up to 600)",
    "JIS electrical": "JIS R 6001, electrical-resistance method",
    "JIS sedimentation": "JIS R 6001, sedimentation method",
    "film": "lapping film, by its micrometres",
    "cushioned": "cushioned cloth",
    "mesh": "sieve number (ASTM E11)",
    "paste": "polishing paste",
}
"""The scales that are known, with a name in words."""
CLOTH = "cushioned"
"""The scale of soft-backed polishing cloth: a curve from number to size, and no list."""


@dataclass(frozen=True, slots=True)
class Grade:
    """One abrasive grade.

    Parameters
    ----------
    scale, name : str
        A key of `SCALES` and the grade within it ("P", "400").
    particle_um : float
        Median particle size [µm]: what cuts.
    finish_um : float
        Size of the plain-backed grade that leaves the same scratch [µm]; differs from the particle only for
        cushioned cloth.
    low_um, high_um : float
        Spread of the median: tolerance, and what other sources print [µm].
    finish_low_um, finish_high_um : float
        The same for the finish figure [µm].
    coarsest_um : float or None
        Three percent by volume of the grains are coarser than this [µm]; None where it is not known.
    method : str
        How the size is measured.
    medium : str
        What carries the grain: paper, film, cushioned, paste, powder.
    source, certainty : str
        Where the median comes from and how sure it is.
    finish_source, finish_certainty : str
        The same for the finish figure.
    note : str
        What to know about it.
    finish_overridden : bool
        Whether a person has put their own finish figure in.
    """

    scale: str
    name: str
    particle_um: float
    finish_um: float
    low_um: float
    high_um: float
    finish_low_um: float
    finish_high_um: float
    coarsest_um: float | None = None
    method: str = ""
    medium: str = "paper"
    source: str = ""
    certainty: str = ""
    finish_source: str = ""
    finish_certainty: str = ""
    note: str = ""
    finish_overridden: bool = False

    @property
    def label(self) -> str:
        """The grade as a person writes it: "P400", "cushioned cloth 4000", "film 9 µm"."""
        match self.scale:
            case "P" | "F":
                return f"{self.scale}{self.name}"
            case "JIS electrical" | "JIS sedimentation":
                return f"JIS {self.name} {self.scale.removeprefix('JIS ')}"
            case "film":
                return f"film {self.name} µm"
            case "cushioned":
                return f"cushioned cloth {self.name}"
            case "paste":
                return f"paste {self.name} µm" if self.name.replace(".", "").isdigit() else f"paste {self.name}"
            case _:
                return f"{self.scale} {self.name}"

    @property
    def soft_backed(self) -> bool:
        """Whether particle and finish are two different figures."""
        return self.medium == CLOTH


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All known grades, ready to be looked up.

    Parameters
    ----------
    grades : tuple of Grade
        Every grade.
    by_name : dict
        (scale, lower-case name) to grade.
    """

    grades: tuple[Grade, ...]
    by_name: Mapping[tuple[str, str], Grade] = field(default_factory=dict)

    def in_scale(self, scale: str) -> tuple[Grade, ...]:
        """The grades of one scale, coarsest first."""
        return tuple(sorted((g for g in self.grades if g.scale == scale), key=lambda g: -g.particle_um))

    def find(self, scale: str, name: str) -> Grade | None:
        """The grade of that scale and name; for cushioned cloth any number on the curve. None where there is none."""
        known = self.by_name.get((scale, name.casefold()))
        if known is None and scale == CLOTH and name.isdigit():
            return _on_curve(int(name), self.in_scale(CLOTH))
        return known

    def cloth_numbers(self) -> tuple[int, int]:
        """The lowest and the highest number on the curve of cushioned cloth."""
        numbers = sorted(int(g.name) for g in self.in_scale(CLOTH))
        return numbers[0], numbers[-1]


def catalogue_from_rows(grade_rows: Iterable[GradeRow], paste_rows: Iterable[PasteRow] = ()) -> Catalogue:
    """Grades out of the rows of the tables ``abrasive_grades`` and ``polishing_pastes``.

    Parameters
    ----------
    grade_rows : iterable of GradeRow
        The table ``abrasive_grades``.
    paste_rows : iterable of PasteRow
        The table ``polishing_pastes``.

    Returns
    -------
    Catalogue
        One `Grade` for each median; its spread spans the tolerance and every figure "also seen".

    Raises
    ------
    InputError
        If two rows give the median of one grade.
    """
    facts: dict[tuple[str, str], dict[str, list[GradeRow]]] = {}
    for row in grade_rows:
        facts.setdefault((row.scale, row.grade), {}).setdefault(row.figure, []).append(row)
    grades = []
    for (scale, name), figures in facts.items():
        medians = figures.get("median", [])
        if len(medians) != 1:
            raise InputError("abrasive grade", "a row with one median", f"{scale} {name}: {len(medians)}")
        grades.append(_grade(scale, name, figures))
    grades += [_paste(row) for row in paste_rows]
    return Catalogue(tuple(grades), {(g.scale, g.name.casefold()): g for g in grades})


def cloth_grade(
    number: int, catalogue: Catalogue, *, particle_um: float | None = None, finish_um: float | None = None
) -> Grade:
    """A cushioned cloth by its number, with a person's own figures where there are any.

    Parameters
    ----------
    number : int
        The number on the cloth; without a grain of one's own it must lie on the curve.
    catalogue : Catalogue
        Holds the curve.
    particle_um, finish_um : float or None
        Own figures for the grain, and for the plain grade that leaves the same scratch [µm], 0.05 to 200; None: the
        curve's. With a grain of one's own the finish is read off the curve where it has that grain.

    Returns
    -------
    Grade
        The cloth; figures of one's own are marked as the bench's.

    Raises
    ------
    InputError
        If the number is not on the curve and no grain was given, or a figure is outside its range.

    Notes
    -----
    Judged: lists of such cloths disagree by a fifth on the grain and by a third on the finish, and every maker numbers
    as he likes. A figure printed on the cloth goes before the curve.
    """
    grade = catalogue.find(CLOTH, str(number))
    if particle_um is not None:
        if not 0.05 <= particle_um <= 200:
            raise InputError(f"grain of cushioned cloth {number}", "0.05 to 200 µm", particle_um)
        finish, low, high = _finish_of_grain(particle_um, catalogue.in_scale(CLOTH))
        grade = Grade(
            CLOTH, str(number), particle_um, finish, particle_um * 0.91, particle_um * 1.09, low, high, None, "nominal",
            CLOTH, "this bench", "stated by the bench", "curve over the grain", "judged",
        )  # fmt: skip
    if grade is None:
        low_number, high_number = catalogue.cloth_numbers()
        raise InputError(
            "grade", f"a cushioned cloth from {low_number} to {high_number}", number,
            f"Beyond that the curve says nothing: give its own figure, like cushioned cloth {number} = 20 um.",
        )  # fmt: skip
    return grade if finish_um is None else with_finish(grade, finish_um)


def sized_grade(
    size_um: float, *, scale: str = "film", medium: str = "film", spread_share: float = 0.09, label: str = ""
) -> Grade:
    """A grade whose label is its size: film, diamond or alumina paste, or a size read off a published ladder.

    Parameters
    ----------
    size_um : float
        Size [µm], 0.01 to 5000.
    scale, medium : str
        What it is.
    spread_share : float
        Plus or minus on the size, as a share 0-1.
    label : str
        Its name within the scale; the size itself where empty.

    Returns
    -------
    Grade
        The grade, marked as nominal.

    Raises
    ------
    InputError
        If the size is outside 0.01 to 5000 µm.

    Notes
    -----
    The spread of 9 percent is what a chart author's notes give as usual for medians; nothing was found for film.
    """
    if not 0.01 <= size_um <= 5000:
        raise InputError("grade size", "0.01 to 5000 µm", size_um)
    low, high = size_um * (1 - spread_share), size_um * (1 + spread_share)
    return Grade(
        scale, label or f"{size_um:g}", size_um, size_um, low, high, low, high, None, "nominal", medium,
        "the label is the nominal size", "judged", "the label is the nominal size", "judged",
    )  # fmt: skip


def with_finish(grade: Grade, finish_um: float) -> Grade:
    """The grade with a person's own finish figure.

    Parameters
    ----------
    grade : Grade
        Any grade.
    finish_um : float
        Size of the plain grade that leaves the same scratch [µm], 0.01 to 500.

    Returns
    -------
    Grade
        The same grade; its finish figure is marked as the bench's own.

    Raises
    ------
    InputError
        If the figure is outside 0.01 to 500 µm.
    """
    if not 0.01 <= finish_um <= 500:
        raise InputError(f"finish of {grade.label}", "0.01 to 500 µm", finish_um)
    return replace(
        grade, finish_um=finish_um, finish_low_um=finish_um * 0.91, finish_high_um=finish_um * 1.09,
        finish_source="this bench", finish_certainty="measured here", finish_overridden=True,
    )  # fmt: skip


_SIZES = ("particle_um", "low_um", "high_um", "finish_um", "finish_low_um", "finish_high_um")


def _between(at: float, ends: Sequence[tuple[float, float]]) -> float:
    """The value on the straight line through two points, on logarithmic axes."""
    (x0, y0), (x1, y1) = ends
    return math.exp(math.log(y0) + math.log(y1 / y0) * math.log(at / x0) / math.log(x1 / x0))


def _on_curve(number: int, points: Sequence[Grade]) -> Grade | None:
    for one, other in itertools.pairwise(points):
        first, last = int(one.name), int(other.name)
        if first < number < last:
            particle, low, high, finish, finish_low, finish_high = (
                float(f"{_between(number, ((first, getattr(one, size)), (last, getattr(other, size)))):.2g}")
                for size in _SIZES
            )
            return replace(
                one, name=str(number), particle_um=particle, low_um=low, high_um=high,
                finish_um=finish, finish_low_um=finish_low, finish_high_um=finish_high,
            )  # fmt: skip
    return None


def _finish_of_grain(particle_um: float, points: Sequence[Grade]) -> tuple[float, float, float]:
    """Finish with its ends of a cloth of that grain; beyond the curve in the ratio of its end."""
    for one, other in itertools.pairwise(points):
        if one.particle_um >= particle_um >= other.particle_um:
            pairs = [((one.particle_um, getattr(one, s)), (other.particle_um, getattr(other, s))) for s in _SIZES[3:]]
            finish, low, high = (float(f"{_between(particle_um, pair):.2g}") for pair in pairs)
            return finish, low, high
    end = points[0] if particle_um > points[0].particle_um else points[-1]
    share = particle_um / end.particle_um
    finish, low, high = (float(f"{share * getattr(end, s):.2g}") for s in _SIZES[3:])
    return finish, low, high


def _spread(row: GradeRow, also: Iterable[GradeRow]) -> tuple[float, float, float]:
    size = row.size_um
    tolerance = row.spread_um or 0.0
    seen = [other.size_um for other in also]
    return size, min([size - tolerance, *seen]), max([size + tolerance, *seen])


def _grade(scale: str, name: str, figures: Mapping[str, list[GradeRow]]) -> Grade:
    row = figures["median"][0]
    size, low, high = _spread(row, figures.get("median also seen", ()))
    finish_row = figures.get("finish", [row])[0]
    also = figures.get("finish also seen" if "finish" in figures else "median also seen", ())
    finish, finish_low, finish_high = _spread(finish_row, also)
    coarsest = figures.get("coarsest")
    notes = [r.note for r in (row, *figures.get("median also seen", ()), *figures.get("finish", ())) if r.note]
    return Grade(
        scale, name, size, finish, low, high, finish_low, finish_high,
        coarsest[0].size_um if coarsest else None, row.method, row.medium, row.source,
        row.certainty, finish_row.source, finish_row.certainty, "; ".join(dict.fromkeys(notes)),
    )  # fmt: skip


def _paste(row: PasteRow) -> Grade:
    size = row.size_um
    low = size * 0.5 if row.low_um is None else row.low_um
    high = size * 1.5 if row.high_um is None else row.high_um
    return Grade(
        "paste", row.paste, size, size, low, high, low, high, None, "nominal", "paste", row.source,
        row.certainty, row.source, row.certainty, row.note,
    )  # fmt: skip
