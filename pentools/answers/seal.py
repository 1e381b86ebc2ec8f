"""Rings, sacs, washers, threads and the knock-out tube."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypedDict, Unpack

from pentools.answers.asking import Answer, BenchGiven, Column, Several, Typed, ask, ask_each

if TYPE_CHECKING:
    import pandas

__all__ = ["knockout_tool", "sac_fit", "seal_fit", "thread_match", "washer_fit"]


class SealOptions(TypedDict, total=False):
    """What else `seal_fit` may be told."""

    head: Typed | Column
    """Head diameter [mm], 1 to 30; the head beside its groove, such as 6.10 mm."""
    guide: Typed | Column
    """Guide hole [mm], 0.5 to 20; for a packing: the hole that guides the rod, such as 3.10 mm."""
    ovality: Typed | Column
    """Ovality [mm], 0 to 1; largest less smallest bore reading; worked out where several readings are given."""
    caliper: Typed | Column
    """Calliper [mm], 0 to 0.3; how far one reading can be wrong, half-width; 0.03 mm unless said."""
    stock: Several
    """Own rings; measured section x inside in mm, such as 1.78x5.28; 2.0x5.0; a name and a ± may be added:
    mine=1.80±0.02x5.3±0.05."""
    drawer: Several
    """In the drawer; rings at hand, as for own rings: they join the list, and are the first to try of those that fit
    alike."""
    hardness: Typed | Column
    """Hardness, 20 to 90; Shore A, for the friction estimate; 70 unless said."""
    meets: Several
    """What it will meet; such as water-based ink; ammonia flush; alcohol; mineral oil; water-based ink; silicone
    grease unless said."""
    all_: bool | str | None
    """List every size; yes for the whole list; no unless said."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def seal_fit(
    *,
    bore: Several | Column = None,
    groove: Typed | Column = None,
    width: Typed | Column = None,
    rod: Typed | Column = None,
    housing: Several | Column = None,
    duty: str | Column | None = None,
    from_: str | Column | None = None,
    **more: Unpack[SealOptions],
) -> Answer | pandas.DataFrame:
    """O-rings for a piston head (bore, groove) or a packing (rod, housing), best first.

    Parameters
    ----------
    bore : Several | Column
        Bore [mm], 2 to 30; where the head runs, best at three angles and two depths, such as 6.30 mm.
    groove : Typed | Column
        Groove diameter [mm], 0.5 to 28; bottom of the head's groove, such as 3.30 mm.
    width : Typed | Column
        Groove width [mm], 0.5 to 15; such as 2.4 mm.
    rod : Typed | Column
        Rod [mm], 0.5 to 15; for a packing: the rod, such as 3.00 mm.
    housing : Several | Column
        Housing bore [mm], 2 to 25; for a packing: where the ring sits, such as 6.20 mm.
    duty : str | Column | None
        Duty; one of hand-turned, low-friction, static; hand-turned unless said.
    from_ : str | Column | None
        Rings from; one of as568, metric, stock; as568 unless said.
    **more : SealOptions
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
    >>> seal_fit(bore="7.40 mm", groove="4.50 mm", width="2.4 mm").data["candidates"][0]["designation"]
    '008'
    """
    return ask_each("seal", locals())


class SacOptions(TypedDict, total=False):
    """What else `sac_fit` may be told."""

    sac: Typed | Column
    """Sac, measured [mm], 2 to 16; outside diameter of the sac in hand, over the pleats of a pleated one, such as
    6.35 mm; it wins over the number."""
    wall: Typed | Column
    """Wall [mm], 0.1 to 2; half of two walls pressed together, such as 0.50 mm."""
    mouth: Typed | Column
    """Sac's mouth [mm], 1 to 14; inside diameter of its mouth or neck, where it was measured, such as 5.6 mm."""
    before: Typed | Column
    """Bore before cleaning [mm], 2 to 16; the same bore with the old rubber in it."""
    cleaned: bool | str | None
    """Old rubber cleaned out; yes or no."""
    pneumatic: bool | str | None
    """Pressed by air in a guard; no unless said."""
    drawer: Several
    """In the drawer; sacs at hand, each with its material: latex 16; latex 6.40 mm; a name may be added: bag of
    May=latex 16."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def sac_fit(
    *,
    barrel: Typed | Column,
    nipple: Typed | Column = None,
    depth: Typed | Column = None,
    nipple_length: Typed | Column = None,
    bar: Typed | Column = None,
    number: Typed | Column = None,
    material: str | Column | None = None,
    **more: Unpack[SacOptions],
) -> Answer | pandas.DataFrame:
    """The sac for a barrel and a nipple: its number, its length, and what is doubtful about it.

    Parameters
    ----------
    barrel : Typed | Column
        Barrel bore [mm], 3 to 16; where the sac lies, after cleaning, such as 8.00 mm.
    nipple : Typed | Column
        Nipple [mm], 1.5 to 14; outside diameter, such as 6.60 mm.
    depth : Typed | Column
        Depth [mm], 10 to 150; from the nipple's shoulder to the barrel's end or the bar's bend, such as 62 mm.
    nipple_length : Typed | Column
        Nipple length [mm], 1 to 25; what of the sac sits on it, such as 6 mm; added to the length.
    bar : Typed | Column
        Press bar takes [mm], 0 to 3; how much of the bore the bar takes up, such as 0.9 mm.
    number : Typed | Column
        Sac number, 5 to 40; what it was sold as, such as 16.
    material : str | Column | None
        Sac material; one of latex, silicone, PVC, pleated; latex unless said.
    **more : SacOptions
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
    >>> sac_fit(barrel="8.00 mm", nipple="6.60 mm", depth="62 mm").data["number"]
    16
    """
    return ask_each("sac", locals())


class WasherOptions(TypedDict, total=False):
    """What else `washer_fit` may be told."""

    drawer: Several
    """In the drawer; washers and sheet at hand, such as washer 8.5 x 1.5 mm; sheet 0.64 mm; cork sheet 6 mm."""
    bench: BenchGiven
    """The bench whose facts fill what is not said; the one of PENTOOLS_BENCH unless given."""


def washer_fit(
    *,
    bore: Several,
    rod: Typed,
    kind: str | None = None,
    backing: Typed = None,
    ovality: Typed = None,
    length: Typed = None,
    thickness: Typed = None,
    **more: Unpack[WasherOptions],
) -> Answer:
    """A washer, cork or packing turned or cut for a bore and a rod.

    Parameters
    ----------
    bore : Several
        Bore [mm], 2 to 25; where it runs, or the packing's housing; one or several readings, such as 8.30 mm.
    rod : Typed
        Rod or seat [mm], 0.5 to 24; rod that carries it, or a cork's seat, such as 1.60 mm.
    kind : str | None
        Kind; one of flat, cup, cork, stacked, felt; flat unless said.
    backing : Typed
        Backing washer [mm], 1 to 20; diameter of the washer or head behind it, such as 7.90 mm.
    ovality : Typed
        Ovality [mm], 0 to 0.9; largest less smallest bore reading; worked out from several readings.
    length : Typed
        Length [mm], 1 to 30; of the seat or the housing, such as 6 mm.
    thickness : Typed
        Ring thickness [mm], 0.3 to 5; of one ring of a packing; 1.5 mm unless said.
    **more : WasherOptions
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
    >>> washer_fit(bore="8.30 mm", rod="1.60 mm").data["ladder_mm"]
    [8.3, 8.4, 8.5, 8.6, 8.7]
    """
    return ask("washer", locals())


def thread_match(
    *,
    pitch: Typed | Column = None,
    crests: Typed | Column = None,
    over: Typed | Column = None,
    major: Typed | Column = None,
    angle: Typed | Column = None,
    starts: Typed | Column = None,
    caliper: Typed | Column = None,
) -> Answer | pandas.DataFrame:
    """Which threads of the table a measured pitch and diameter can be.

    Parameters
    ----------
    pitch : Typed | Column
        Pitch [mm], 0.05 to 6; one crest to the next, such as 0.79 mm; known to the calliper only, or to what is typed
        after ±.
    crests : Typed | Column
        Length over ten pitches [mm], 0.2 to 60; from the first crest to the eleventh, such as 7.94 mm; ten times as
        sure as one pitch.
    over : Typed | Column
        Pitches in that length, 1 to 60; 10 unless the thread is shorter; six crests make five pitches; 10 unless said.
    major : Typed | Column
        Major diameter [mm], 0.2 to 60; over the crests, such as 7.10 mm.
    angle : Typed | Column
        Flank angle [deg], 30 to 90; if it can be told, such as 55 deg.
    starts : Typed | Column
        Starts, 1 to 12; counted on the end face, such as 3.
    caliper : Typed | Column
        Calliper [mm], 0.001 to 0.3; one standard uncertainty of a reading; 0.03 mm unless said.

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
    >>> thread_match(crests="7.94 mm", major="7.10 mm").data["nearest"][0]["designation"]
    '9/32 x 32'
    """
    return ask_each("thread", locals())


def knockout_tool(
    *,
    tail: Typed,
    shoulder: Typed,
    bore: Typed,
    depth: Typed = None,
    front: Typed = None,
    section: Typed = None,
    material: str | None = None,
    clearance: Typed = None,
) -> Answer:
    """A tube that drives feed and nib out of a section, and the hole of its block.

    Parameters
    ----------
    tail : Typed
        Feed's tail [mm], 0 to 8; what must stay clear inside the tube, such as 1.80 mm; 0 mm for a solid punch.
    shoulder : Typed
        Feed's shoulder [mm], 0.5 to 14; what the tube bears on, such as 4.20 mm.
    bore : Typed
        Section bore [mm], 1 to 15; smallest bore on the nipple side, such as 5.00 mm.
    depth : Typed
        Depth [mm], 0 to 60; from the nipple's mouth to the shoulder and the way to drive, such as 18 mm.
    front : Typed
        Nib and feed [mm], 1 to 16; largest width that falls through the block, such as 8.0 mm.
    section : Typed
        Section's front edge [mm], 3 to 20; outside diameter that rests on the block, such as 10.5 mm.
    material : str | None
        Section's material; such as black hard rubber or casein; it decides whether section and feed may be soaked.
    clearance : Typed
        Clearance [mm], 0.02 to 1; gap in diameter to what must stay free; 0.10 mm unless said.

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
    >>> print(knockout_tool(tail="1.80 mm", shoulder="4.20 mm", bore="5.00 mm", depth="18 mm"))  # doctest: +ELLIPSIS
    Tube: ...
    """
    return ask("knockout", locals())
