"""Abrasives and polish."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypedDict, Unpack

from pentools.answers.asking import Answer, BenchGiven, Column, Several, Typed, ask, ask_each

if TYPE_CHECKING:
    import pandas

__all__ = ["abrasive_grade", "grit_progression"]


class AbrasivesOptions(TypedDict, total=False):
    """What else `grit_progression` may be told."""

    spent: Typed
    """Stock already taken there [um], 0 to 200; a side, like 5 um."""
    defect_length: Typed
    """Length of the defect [mm], 0.1 to 150; like 6 mm; for the area to work."""
    cushioned_finish: Several
    """Own finish figures; for cushioned cloth, like cushioned cloth 4000 = 7 um."""
    scratch_share: Typed
    """Scratch depth over grain, 0.001 to 5; k, like 0.10; the material's own where empty."""
    stock_factor: Typed
    """Times the last scratch, 1 to 5; s: 2, or 3 to be cautious; 2 unless said."""
    time_limit: Typed
    """Longest first stage [min], 1 to 240; like 15 min; 15 min unless said."""
    judged_by: str | None
    """Must get finer by; one of both, particle, finish; both unless said."""
    as_given: bool | str | None
    """Judge the grades as a ladder in the order given; yes or no; no unless said."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def grit_progression(
    *,
    material: str | None,
    defect: Typed,
    finish: Typed = None,
    own: Several = None,
    zone: str | None = None,
    wall: Typed = None,
    trim: str | None = None,
    **more: Unpack[AbrasivesOptions],
) -> Answer:
    """A progression of the grades owned, from a defect to a finish, with what it takes off.

    Parameters
    ----------
    material : str | None
        Material; what is polished, such as celluloid, ebonite, rolled gold, lacquered brass; not said: the strictest.
    defect : Typed
        Deepest scratch worth removing; its depth, like 40 um, or a word: hairline, light scratch, deep scratch,
        gouge.
    finish : Typed
        Finish; a word (satin, pre-gloss, gloss, high gloss), a grade, or a size like 3 um; gloss unless said.
    own : Several
        Grades owned; each with its scale, like P400; film 9 um; cushioned cloth 4000; or a run of papers: P600 to P1200.
    zone : str | None
        Zone of the pen; what it can spare differs; not said: the strictest.
    wall : Typed
        Thinnest wall there [mm], 0.2 to 5; measured, like 1.1 mm; a tenth of it at most is taken.
    trim : str | None
        Metal trim; one of solid, plated, none; not said: plated.
    **more : AbrasivesOptions
        Whatever else the sum takes, by name.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> plan = grit_progression(material="celluloid", defect="light scratch", own="P400; P800; 3 um", zone="plain barrel")
    >>> plan.data["material"], plan.data["within_budget"]
    ('celluloid', True)
    """
    return ask("abrasives", locals())


def abrasive_grade(grade: Typed | Column) -> Answer | pandas.DataFrame:
    """An abrasive grade in micrometres with its spread and source, and its neighbours in every scale.

    Parameters
    ----------
    grade : Typed | Column
        Grade; with its scale, like P400, CAMI 320, film 9 um, cushioned cloth 4000.

    Returns
    -------
    Answer or pandas.DataFrame
        One answer; a frame, a row a question, where an array or a Series was given.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> print(abrasive_grade("P400"))  # doctest: +ELLIPSIS
    P400 is 35 µm ...
    """
    return ask_each("grade", locals())
