"""Nibs: ink on a metre, stiffness, the smoothing of a tip, the setting of a feed."""

from __future__ import annotations

import os
from typing import TypedDict, Unpack

from pentools.answers.asking import Answer, BenchGiven, Several, Typed, ask

__all__ = ["feed_setting", "ink_flow", "measure_lines", "nib_flex", "nib_smoothing", "scanner_check"]


class FlowOptions(TypedDict, total=False):
    """What else `ink_flow` may be told."""

    minutes: Typed
    """Time it was open [min], 0 to 1000; such as 5 min; reckoned at 4.5 m of line a minute unless said."""
    density: Typed
    """Density of the ink [g/mL], 0.9 to 1.3; a mass is no volume; 1.005 g/mL unless said."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def ink_flow(
    before: Several,
    after: Several,
    length: Typed,
    *,
    readability: Typed = None,
    repeatability: Typed = None,
    idle: Typed = None,
    width: Typed = None,
    **more: Unpack[FlowOptions],
) -> Answer:
    """Milligrams of ink on a metre of line, and metres from a millilitre, or that this balance cannot tell.

    Parameters
    ----------
    before : Several
        Pen before the line [g], 0 to 200; capped, one or several weighings.
    after : Several
        Pen after the line [g], 0 to 200; weigh the pen and not the paper, which dries.
    length : Typed
        Length of line [m], 0.1 to 2000; strokes counted times their ruled length; known to 1 % unless typed with ±.
    readability : Typed
        Readability [g], 1e-05 to 1; the balance's last digit; 0.01 g unless said.
    repeatability : Typed
        Repeatability [g], 0 to 5; from its sheet; taken from readability if left empty.
    idle : Typed
        Lost by an idle twin [mg], 0 to 200; the same pen open for the same minutes; estimated if left empty.
    width : Typed
        Width of the line [mm], 0.05 to 6; to see whether so much ink can be true.
    **more : FlowOptions
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
    >>> ink_flow("23.5120 g", "23.4220 g", "18 m", readability="0.0001 g").data["verdict"]
    'number'
    """
    return ask("flow", locals())


class FlexOptions(TypedDict, total=False):
    """What else `nib_flex` may be told."""

    maximum: bool | str | None
    """Was it driven to its limit?; yes is refused."""
    printed: Typed
    """Stiffness printed elsewhere for the same readings [N/mm], 0.001 to 100: is it right?"""


def nib_flex(
    loads: Several,
    widths: Several,
    *,
    metal: str | None = None,
    extra: Typed = None,
    wobble: Typed = None,
    width_doubt: Typed = None,
    angle: Typed = None,
    **more: Unpack[FlexOptions],
) -> Answer:
    """How stiff a nib is: the load that widens its line by half a millimetre, and N/mm.

    Parameters
    ----------
    loads : Several
        Readings of the scale [gf], 0 to 500; a gram of a kitchen scale is a gram-force.
    widths : Several
        Widths of those lines [mm], 0.02 to 8; in the same order.
    metal : str | None
        Metal of the nib; one of gold, steel, other; not said: gold, the stricter.
    extra : Typed
        Extra width [mm], 0.05 to 1.5; what nibs are compared at; 0.5 mm unless said.
    wobble : Typed
        How far the load wanders [share, 0 to 0.5; or a text like 8 %]; 8 % unless said, a hand.
    width_doubt : Typed
        Widths are known to [mm], 0 to 0.5; 0.025 mm unless said, a loupe; a scan: 0.005 mm.
    angle : Typed
        Angle of pen to paper [°], 10 to 90; it decides how far a load bends the nib.
    **more : FlexOptions
        Whatever else the sum takes, by name.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, one that is needed is missing, or the nib was driven to its limit.

    Examples
    --------
    >>> round(nib_flex([15, 50, 150, 200], [0.2, 0.5, 1.4, 1.85], metal="steel").data["n_per_mm"], 4)
    1.0969
    """
    return ask("flex", locals())


def nib_smoothing(
    feel: str,
    *,
    own: Several = None,
    aligned: bool | str | None = None,
    tipped: bool | str | None = None,
    bench: BenchGiven = None,
) -> Answer:
    """The plan for a nib's tip: few strokes, a look every few of them; what is taken off is not given back.

    Parameters
    ----------
    feel : str
        How the nib feels; one of a little toothy, scratchy, reshaped; the least that is true.
    own : Several
        Grades owned; each with its scale, such as film 3 um; film 1 um; the bench's own unless said.
    aligned : bool | str | None
        Tines level under the loupe?; not said: nobody has looked.
    tipped : bool | str | None
        Is there hard tipping left?; not said: as if there were none, with half the strokes.
    bench : BenchGiven
        The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given.

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
    >>> plan = nib_smoothing("scratchy", own="film 3 um; film 1 um", aligned=True, tipped=True)
    >>> [step["most_strokes"] for step in plan.data["steps"]]
    [12, 12]
    """
    return ask("smoothing", locals())


def feed_setting(
    feed: Typed = None, *, section: Typed = None, nipple: str | None = None, alone: bool | str | None = None
) -> Answer:
    """Between what temperatures a feed is set against its nib; the strictest of feed, section and nipple wins.

    Parameters
    ----------
    feed : Typed
        What the feed is of, such as hard rubber; unknown unless said, and then it is not set by heat.
    section : Typed
        What the section is of; unknown unless said, taken as the strictest.
    nipple : str | None
        On the nipple; one of none, bare, sac, unknown; unknown unless said, which counts as a sac.
    alone : bool | str | None
        Are nib and feed out of the section?; no unless said; then only the feed counts.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used.

    Examples
    --------
    >>> feed_setting("hard rubber", section="celluloid", nipple="none").data["kind"]
    'none'
    """
    return ask("setting", locals())


def measure_lines(
    scan: str | os.PathLike[str],
    *,
    scale: str | None = None,
    bar_length: Typed = None,
    curve: str | None = None,
    threshold: Typed = None,
) -> Answer:
    """How broad the strokes of a scanned page are.

    Parameters
    ----------
    scan : str or os.PathLike
        A PNG, TIFF or JPEG file of a page of strokes; ``sample`` is one that the kit draws.
    scale : str or None
        Where the scale is taken from: one of auto, card, dpi, bar; auto unless said: a card, else the file, else a bar or a ruler.
    bar_length : Typed
        Bar, first to last mark [mm], 10 to 500; measured with a ruler, such as 99.6 mm; as it was drawn unless said.
    curve : str or None
        Curve of the codes: one of file, srgb, linear, 1.8, 2.2; file unless said, and where it names none the usual
        one, with a wider ±.
    threshold : Typed
        Share of the way from paper to ink at which edges are taken, 0.3 to 0.7; 0.5 unless said.

    Returns
    -------
    Answer
        Its ``result`` is a `PageLines` with ``median_width_um``, ``variation_ratio``, ``skips`` and ``strokes``.

    Raises
    ------
    InputError
        If the file is no picture, has no scale, or shows no stroke that could be measured.

    Examples
    --------
    >>> answer = measure_lines("sample")  # a page that the kit draws: light strokes of 0.42 mm, pressed ones of 0.95
    >>> round(answer.data["light"]["width_um"] / 1000, 2), answer.data["skips"]
    (0.42, 2)
    """
    return ask("lines", locals())


def scanner_check(scan: str | os.PathLike[str], *, length: Typed = None) -> Answer:
    """How true a scanner's own dots an inch are, by a ruler laid on its glass.

    Parameters
    ----------
    scan : str or os.PathLike
        A PNG, TIFF or JPEG file of a ruler in millimetres, flat and whole on the glass, at any angle; ``sample`` is
        one that the kit draws.
    length : Typed
        Its first to last mark [mm], 10 to 500; only for one without longer strokes at every ten.

    Returns
    -------
    Answer
        Sentence, findings, table and data; ``data["rulers"]`` has a row for each ruler.

    Raises
    ------
    InputError
        If the file is no picture or names no resolution, or no ruler is found on it.

    Examples
    --------
    >>> scanner_check("sample").data["rulers"][0]["way"]
    'across'
    """
    return ask("scanner", locals())
