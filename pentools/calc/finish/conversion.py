"""What lies beside a grade in every scale, and from one scale to another with the spread that an honest comparison has."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from pentools.calc.finish.grades import SCALES, Catalogue, Grade
from pentools.errors import InputError
from pentools.numbers import plain

__all__ = ["Conversion", "Neighbours", "convert_grade", "method_ratio", "neighbours"]


@dataclass(frozen=True, slots=True)
class Neighbours:
    """What lies beside a grade in one scale.

    Parameters
    ----------
    scale : str
        The scale looked into.
    nearest : Grade
        The grade nearest in size on a logarithmic axis.
    ratio : float
        Its size over the size asked for: above 1 it is coarser.
    coarser, finer : Grade or None
        The next ones on either side of the size asked for; None at the scale's end.
    """

    scale: str
    nearest: Grade
    ratio: float
    coarser: Grade | None
    finer: Grade | None


@dataclass(frozen=True, slots=True)
class Conversion:
    """A grade set beside another scale.

    Parameters
    ----------
    grade : Grade
        The grade asked about.
    scale : str
        The scale it is set beside.
    nearest : Grade
        The nearest grade there as the sizes are printed.
    ratio : float
        Its printed size over the grade's: above 1 it is coarser.
    within : tuple of Grade
        Every grade there whose spread meets the grade's own, coarsest first; may be empty.
    like_for_like_um : float or None
        The grade's size as the other scale's method would read it [µm]; None where the methods' ratio is not known.
    nearest_like_for_like : Grade or None
        The nearest grade to that size.
    text : str
        The conversion as a sentence.
    """

    grade: Grade
    scale: str
    nearest: Grade
    ratio: float
    within: tuple[Grade, ...]
    like_for_like_um: float | None
    nearest_like_for_like: Grade | None
    text: str


def neighbours(grade: Grade, catalogue: Catalogue, *, by: str = "particle") -> tuple[Neighbours, ...]:
    """The grades beside one grade, scale by scale.

    Parameters
    ----------
    grade : Grade
        The grade asked about.
    catalogue : Catalogue
        Where to look.
    by : {"particle", "finish"}
        Which of the two sizes is compared.

    Returns
    -------
    tuple of Neighbours
        One for each scale of the catalogue; in the grade's own scale the grade itself is left out.

    Raises
    ------
    InputError
        If `by` is something else.

    Notes
    -----
    Sizes are compared as they are printed. Methods differ (sedimentation reads up to 1.4 times the
    electrical-resistance size in JIS R 6001), so a neighbour in a scale measured otherwise is no equal:
    `convert_grade` says by how much.
    """
    if by not in ("particle", "finish"):
        raise InputError("comparison", "particle or finish", by)
    size = grade.particle_um if by == "particle" else grade.finish_um
    found = []
    for scale in SCALES:
        others = [g for g in catalogue.in_scale(scale) if (g.scale, g.name) != (grade.scale, grade.name)]
        if not others:
            continue
        sizes = [(g.particle_um if by == "particle" else g.finish_um, g) for g in others]
        near_size, nearest = min(sizes, key=lambda pair: abs(math.log(pair[0] / size)))
        coarser = min((p for p in sizes if p[0] > size), key=lambda p: p[0], default=None)
        finer = max((p for p in sizes if p[0] < size), key=lambda p: p[0], default=None)
        found.append(
            Neighbours(scale, nearest, near_size / size, coarser[1] if coarser else None, finer[1] if finer else None)
        )
    return tuple(found)


def method_ratio(size_um: float, catalogue: Catalogue) -> float:
    """Sedimentation size over electrical-resistance size of one and the same JIS grit.

    Parameters
    ----------
    size_um : float
        Sedimentation size [µm], above 0.
    catalogue : Catalogue
        Holds both JIS columns.

    Returns
    -------
    float
        The ratio, on a straight line over the logarithm of the size; held at the ends.

    Raises
    ------
    InputError
        If the size is not above 0 or the catalogue lacks the two columns.

    Notes
    -----
    Good for 5.7 to 60 µm. From JIS R 6001 (electrical column read, sedimentation column from memory): 1.05 at
    #240, 1.35 at #1000, 1.43 at #3000.
    """
    pairs = [
        (math.log(sed.particle_um), sed.particle_um / el.particle_um)
        for sed in catalogue.in_scale("JIS sedimentation")
        if (el := catalogue.find("JIS electrical", sed.name)) is not None
    ]
    if size_um <= 0 or not pairs:
        raise InputError("size", "above 0 µm, with both JIS columns at hand", size_um)
    at = math.log(size_um)
    if at >= pairs[0][0]:
        return pairs[0][1]
    for (x1, y1), (x0, y0) in itertools.pairwise(pairs):
        if at >= x0:
            return y0 + (y1 - y0) * (at - x0) / (x1 - x0)
    return pairs[-1][1]


def convert_grade(grade: Grade, scale: str, catalogue: Catalogue, *, by: str = "finish") -> Conversion:
    """The grade of another scale that comes nearest, and everything it might be taken for.

    Parameters
    ----------
    grade : Grade
        The grade to convert.
    scale : str
        A key of `pentools.calc.finish.grades.SCALES`.
    catalogue : Catalogue
        Where to look.
    by : {"finish", "particle"}
        Compared by the scratch it leaves, or by the grain; the two differ for cushioned cloth only.

    Returns
    -------
    Conversion
        Nearest grade, all grades within the spread, and the like-for-like figure where it can be given.

    Raises
    ------
    InputError
        If the scale is not known, has no grades here, or `by` is something else.

    Notes
    -----
    Two grades are "within" when the intervals of their medians meet. Medians mostly hold to 9 percent only, so a
    conversion never says more than "about".
    """
    if by not in ("finish", "particle"):
        raise InputError("comparison", "finish or particle", by)
    others = catalogue.in_scale(scale)
    if not others:
        raise InputError("scale", "one of " + ", ".join(SCALES), scale)

    def span(one: Grade) -> tuple[float, float, float]:
        if by == "finish":
            return one.finish_um, one.finish_low_um, one.finish_high_um
        return one.particle_um, one.low_um, one.high_um

    size, low, high = span(grade)
    nearest = min(others, key=lambda g: abs(math.log(span(g)[0] / size)))
    within = tuple(g for g in others if span(g)[1] <= high and span(g)[2] >= low)
    like = _like_for_like(grade, others[0].method, others[0].scale, size, catalogue)
    near_like = min(others, key=lambda g: abs(math.log(span(g)[0] / like))) if like else None
    ratio = span(nearest)[0] / size
    return Conversion(
        grade, scale, nearest, ratio, within, like, near_like, _words(grade, nearest, ratio, within, (like, near_like))
    )


def _like_for_like(grade: Grade, method: str, scale: str, size: float, catalogue: Catalogue) -> float | None:
    fine = {"sedimentation", "electrical resistance"}
    if scale == "P" and size <= 60:
        method = "sedimentation"
    if not {grade.method, method} <= fine:
        return None
    if grade.method == method:
        return size
    if method == "electrical resistance":
        return size / method_ratio(size, catalogue)
    guess = size
    for _ in range(20):  # the ratio is given over the sedimentation size, so a few rounds find it
        guess = size * method_ratio(guess, catalogue)
    return guess


def _words(
    grade: Grade,
    nearest: Grade,
    ratio: float,
    within: tuple[Grade, ...],
    like_for_like: tuple[float | None, Grade | None],
) -> str:
    side = (
        "as coarse"
        if abs(ratio - 1) < 0.02
        else (f"{ratio:.2f} times as coarse" if ratio > 1 else f"{1 / ratio:.2f} times finer")
    )
    text = f"{grade.label} comes nearest to {nearest.label} ({side} as printed)"
    if len(within) > 1:
        text += f"; within the spread it could pass for {within[0].label} to {within[-1].label}"
    elif not within:
        text += "; not within the spread of either"
    like, near_like = like_for_like
    if like is not None and near_like is not None and near_like != nearest:
        text += f"; measured by that scale's own method it would read about {plain(like, 2)} µm, {near_like.label}"
    return text + "."
