"""What a pen holds and whether it leaks, by weighing."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypedDict, Unpack

from pentools.answers.asking import Answer, BenchGiven, Column, Several, Typed, ask, ask_each

if TYPE_CHECKING:
    import pandas

__all__ = ["capacity_from_weight", "leak_from_weight"]


class CapacityOptions(TypedDict, total=False):
    """What else `capacity_from_weight` may be told."""

    liquid: str | Column | None
    """Liquid; one of water, ink; water unless said."""
    ink_density: Typed | Column
    """Density of the ink [g/ml], 0.9 to 1.3; such as 1.005 ± 0.006 g/ml; assumed if left empty."""
    ink_mass: Typed | Column
    """Syringe of ink [g], 0 to 100; ink alone, filled to one mark, such as 2.013 g."""
    water_mass: Typed | Column
    """The same syringe of water [g], 0 to 100; water alone, to the same mark, such as 1.998 g."""
    temperature: Typed | Column
    """Temperature [°C], 5 to 35; of liquid and air, such as 21 °C; 20 °C unless said."""
    pressure: Typed | Column
    """Air pressure [kPa], 75 to 107; such as 1005 hPa; 1013 hPa unless said."""
    humidity: Typed | Column
    """Humidity [share, 0 to 1; or a text like 50 %]; such as 45 %; 50 % unless said."""
    readability: Typed | Column
    """Readability [g], 1e-05 to 1; the balance's last digit, such as 0.01 g; 0.01 g unless said."""
    repeatability: Typed | Column
    """Repeatability [g], 0 to 5; from its sheet; taken from readability if left empty."""
    linearity: Typed | Column
    """Linearity [g], 0 to 5; from its sheet, half-width, such as 0.02 g."""
    eccentricity: Typed | Column
    """Eccentric loading [g], 0 to 5; from its sheet, half-width, such as 0.01 g."""
    drop: Typed | Column
    """Largest drop at the nib [g], 0 to 0.2; the largest that may hang there after wiping: it only adds, and its mean
    is taken off; a drop is 0.02 to 0.04 g; 0 g where nib and section were blotted dry; 0.04 g unless said."""
    evaporation: Typed | Column
    """Evaporation [g], 0 to 0.5; the most that may have dried away between the weighings: it only takes, and its mean
    is added; 0.005 g unless said."""
    kept: Typed | Column
    """What it keeps when drained [ml], 0 to 1; drained less dry, where both were weighed; 0.25 to 0.32 ml in three
    pens of one wiki, taken as 0 to 0.32 ml if left empty."""
    caliper: Typed | Column
    """Calliper [mm], 0 to 1; one standard uncertainty of a reading; lengths inside are taken as 0.2 mm or this if it
    is more, unless typed with ±; 0.02 mm unless said."""
    level: Typed | Column
    """Level of confidence [share, 0 to 1; or a text like 50 %]; of the ± that is shown, such as 95 % or 95.45 %; 95 %
    unless said."""
    rod: Typed | Column
    """Rod [mm], 0 to 15; diameter of the rod that stands in the ink; leave empty if it does not; such as 2.60 mm."""
    outside: Typed | Column
    """Sac, outside diameter [mm], 2 to 20; measured on the sac, not read from its number; such as 6.35 mm."""
    wall: Typed | Column
    """Sac, wall [mm], 0.1 to 3; half of what two walls pressed together measure; such as 0.50 mm."""
    length: Typed | Column
    """Length inside [mm], 5 to 150; of the sac from nipple to end, or of the cartridge; such as 60 mm."""
    pressed_share: Typed | Column
    """Share that pressing empties [share, 0 to 1; or a text like 50 %]; about 75 % for a bar (judged), such as 75
    %."""
    reach: Typed | Column
    """Reach of the breather tube [mm], 3 to 150; from the section's face in the barrel to the tube's end; such as 55
    mm."""
    tube: Typed | Column
    """Breather tube, outside diameter [mm], 0.3 to 8; such as 2.0 mm."""
    depth: Typed | Column
    """Depth of the barrel [mm], 5 to 160; from the section's face to the bottom, by the depth rod; such as 55 mm."""
    nipple: Typed | Column
    """What stands in the barrel, diameter [mm], 0 to 15; the section's tail or the carrier; such as 6.0 mm."""
    nipple_length: Typed | Column
    """What stands in the barrel, length [mm], 0 to 40; such as 6.0 mm."""
    dead_behind: Typed | Column
    """Dead volume behind the washer [ml], 0 to 1; air that stays behind it when the rod is drawn out; none if left
    empty; such as 0.06 ml."""
    dead_ahead: Typed | Column
    """Dead volume ahead of the washer [ml], 0 to 1; air ahead of it at the end of the stroke; none if left empty;
    such as 0.10 ml."""
    head: Typed | Column
    """Height the liquid is lifted [mm], 0 to 200; from the liquid's surface to the washer at its end; 60 mm if left
    empty."""
    strokes: Typed | Column
    """Strokes made, 0 to 60; with the next one, to say what so many strokes should bring; leave empty if pumped until
    full."""
    stroke_volume: Typed | Column
    """Volume of a stroke [ml], 0 to 3; what the diaphragm or bulb moves; such as 0.28 ml."""
    tube_volume: Typed | Column
    """Content of the breather tube [ml], 0 to 0.5; pushed back first at each stroke; 0.03 ml (judged) if left
    empty."""
    void_share: Typed | Column
    """Share of the cell that is open [share, 0 to 1; or a text like 50 %]; about 60 % (judged)."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def capacity_from_weight(
    *,
    empty: Several | Column = None,
    filled: Several | Column = None,
    gain: Several | Column = None,
    start: str | Column | None = None,
    system: str | Column | None = None,
    bore: Typed | Column = None,
    stroke: Typed | Column = None,
    **more: Unpack[CapacityOptions],
) -> Answer | pandas.DataFrame:
    """What a pen draws, by its mass empty and filled, and against what its dimensions say it should hold.

    Parameters
    ----------
    empty : Several | Column
        Empty mass [g], 0 to 200; one or several, such as 23.26 g; 23.25 g.
    filled : Several | Column
        Filled mass [g], 0 to 200; one or several, such as 25.06 g; 25.05 g.
    gain : Several | Column
        Gain, tared [g], 0 to 20; instead of the two masses: what the balance shows after each dip, the empty pen
        tared away and not emptied between, such as 0.18 g; 0.31 g; 1.20 g.
    start : str | Column | None
        State before filling; one of dry, drained; dry unless said.
    system : str | Column | None
        Filling system.
    bore : Typed | Column
        Bore [mm], 1 to 28; inside diameter where the head runs or the ink stands, at three angles; such as 8.50 mm.
    stroke : Typed | Column
        Stroke [mm], 2 to 150; way of the head from end to end, by the depth rod; such as 28.0 mm.
    **more : CapacityOptions
        Whatever else the sum takes, by name.

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
    >>> answer = capacity_from_weight(empty="23.26 g", filled="25.06 g", temperature="21 °C")
    >>> round(answer.data["volume_ml"], 2)
    1.79
    """
    return ask_each("capacity", locals())


class LeakOptions(TypedDict, total=False):
    """What else `leak_from_weight` may be told."""

    gap: Typed
    """Gap at the cap's seat [mm], 0 to 2; estimated, to say what evaporation alone may take; such as 0.05 mm."""
    seat: Typed
    """Diameter of the seat [mm], 2 to 20; where cap and section meet; such as 10 mm."""
    gap_length: Typed
    """Way through the gap [mm], 0.2 to 40; such as 5 mm."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def leak_from_weight(
    *,
    times: Several,
    masses: Several,
    blanks: Several = None,
    readability: Typed = None,
    repeatability: Typed = None,
    temperature: Typed = None,
    humidity: Typed = None,
    **more: Unpack[LeakOptions],
) -> Answer:
    """Whether a filled pen loses mass, how fast, and the smallest loss that this balance and schedule can tell.

    Parameters
    ----------
    times : Several
        Times since filling [h], 0 to 2000; such as 0 h; 8 h; 24 h.
    masses : Several
        Masses at those times [g], 0 to 200; such as 18.21 g; 18.21 g; 18.20 g.
    blanks : Several
        Masses of a dry dummy [g], 0 to 200; the same solid object each time, or nothing.
    readability : Typed
        Readability [g], 1e-05 to 1; the balance's last digit, such as 0.01 g; 0.01 g unless said.
    repeatability : Typed
        Repeatability [g], 0 to 5; from its sheet; taken from readability if left empty.
    temperature : Typed
        Temperature [°C], 5 to 35; of the room, such as 21 °C; 20 °C unless said.
    humidity : Typed
        Humidity [share, 0 to 1; or a text like 50 %]; of the room, such as 45 %; 50 % unless said.
    **more : LeakOptions
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
    >>> answer = leak_from_weight(times="0 h; 8 h; 24 h", masses="18.214 g; 18.213 g; 18.212 g", readability="0.001 g")
    >>> answer.data["loss_mg_per_h"] < 0.2
    True
    """
    return ask("leak", locals())
