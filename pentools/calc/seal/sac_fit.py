"""Which sac: the size that slides into the barrel, goes on the nipple and keeps off the bar, its length, its adhesive."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.seal.sac import (
    AIR_MM,
    MATERIALS,
    SIXTY_FOURTH_MM,
    STRETCH_HIGH,
    STRETCH_LOW,
    TOUCH_MM,
    SacChoice,
    SacInHand,
    SacMaterial,
    SacRoom,
    SacSize,
    sac_number,
)
from pentools.errors import InputError

__all__ = ["SacFit", "sac_fit"]

END_MM = (3.0, 6.0)
GUARD_END_MM = (0.0, 2.0)
BAR_SHORTER_MM = 2.5
LIMP_NUMBER = 22
SAME_BORE_MM = 0.1 + 1e-9  # two readings of a cleaned bore may differ by that much (judged)
CLOSE_FIT = 1  # the last grade of a sac that goes in
NUMBER_OFF = 0.25  # the rule of thumb asks for the nipple in 64ths; a quarter of a size over is measuring


@dataclass(frozen=True, slots=True)
class SacFit:
    """A sac for a pen.

    Parameters
    ----------
    number : int or None
        Number by the outside-diameter reading; None where that material is not sold by number.
    label : str
        The size in words; "measured" for the sac in hand.
    outside_mm : float
        Outside diameter that the answer is worked out with [mm]: the measured one where there is one.
    number_by_hole : int
        Number by the other reading: the largest whose hole the barrel is.
    largest_mm : float
        Largest outside diameter that keeps its air all round, bar included [mm].
    air_mm : float
        Air left all round, a radial gap [mm].
    nipple_stretch_share : float or None
        How far the nipple stretches the sac's mouth [1]; None where the nipple was not measured.
    length_mm, length_low_mm, length_high_mm : float or None
        Length beyond the shoulder, and its window [mm]; None where the depth was not measured or it is not cut.
    bar_length_mm : float or None
        Longest press bar for that sac [mm]; None where the depth was not measured.
    adhesive : str
        What holds the sac on its nipple.
    choices : tuple of SacChoice
        The sizes sold next to it with their air and stretch, smallest first.
    findings : tuple of Finding
        What to know.
    in_drawer : bool
        Whether the size is one that lies in the drawer.
    by_rule : str
        The size that the rule of thumb names, where another of the same verdict is taken because it lies in the drawer;
        else empty.
    """

    number: int | None
    label: str
    outside_mm: float
    number_by_hole: int
    largest_mm: float
    air_mm: float
    nipple_stretch_share: float | None
    length_mm: float | None
    length_low_mm: float | None
    length_high_mm: float | None
    bar_length_mm: float | None
    adhesive: str
    choices: tuple[SacChoice, ...]
    findings: tuple[Finding, ...]
    in_drawer: bool = False
    by_rule: str = ""


def sac_fit(room: SacRoom, sac: SacInHand, sizes: Sequence[SacSize] = (), drawer: Sequence[SacSize] = ()) -> SacFit:
    """A sac for a barrel, its nipple and its depth.

    Parameters
    ----------
    room : SacRoom
        The pen.
    sac : SacInHand
        What is known of the sac; material alone where it is still to be chosen.
    sizes : sequence of SacSize
        What is sold in that material; needed where the sac was not measured.
    drawer : sequence of SacSize
        What of that material lies in the drawer: taken first where it goes as well as the size of the rule of thumb.

    Returns
    -------
    SacFit
        Size by both readings, clearance, length, adhesive, findings.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another, the material is not known, or a sac that is sold by no
        size was not measured.

    Notes
    -----
    The sac slides in easily with air all round; err small (a repairer's page); 0.25 mm all round is proposed here.
    Of the sizes sold the one is taken that keeps its air and whose mouth the nipple stretches by 2 to 25 % (judged),
    nearest to the rule of thumb: sac number at most the nipple in 64ths (a size note), or the largest that keeps its
    air where the nipple was not measured. A size that may split is never taken while another clears the barrel.
    Length: 3 to 6 mm short of the barrel's end or the bar's bend, plus what goes on the nipple (from memory, common
    practice); a pneumatic sac only just reaches its guard's end, rather short. Bar about the sac's length, ending 2
    to 3 mm short (common practice). A pleated sac is not cut. A sac in the drawer goes as well where its verdict is the
    same and it is within two sizes (1/32 in) of the rule's, within one where the nipple was not measured (judged).

    Examples
    --------
    >>> from pentools.calc.seal.sac import sac_outside_mm
    >>> sold = [SacSize(f"number {n}", sac_outside_mm(n), n) for n in range(9, 33)]
    >>> sac_fit(SacRoom(7.6, nipple_mm=6.2), SacInHand("latex"), sold).number
    16
    """
    _check(room, sac, sizes)
    material = MATERIALS[sac.material]
    wall = material.wall_mm if sac.wall_mm is None else sac.wall_mm
    largest = room.barrel_mm - room.bar_mm - 2 * AIR_MM
    graded = [_held(size, room, sac, wall) for size in sizes if size.outside_mm > 2 * wall]
    chosen = _chosen(graded, room, largest) if sac.outside_mm is None and graded else None
    at_hand = [_held(size, room, sac, wall) for size in drawer if size.outside_mm > 2 * wall]
    by_rule, lies_there = chosen, _in_drawer(chosen, at_hand, room, largest)
    chosen = lies_there or chosen
    if chosen is None:
        assert sac.outside_mm is not None
        chosen = _held(SacSize("measured", sac.outside_mm, round(sac_number(sac.outside_mm))), room, sac, wall)
    length, low, high = _length(room, material)
    findings = [
        *_bore_findings(room),
        *_size_findings(chosen, room, sac),
        *_nipple_findings(chosen, graded, room, sac),
        *_material_findings(sac.material, room.pneumatic),
    ]
    return SacFit(
        chosen.size.number, chosen.size.label, chosen.size.outside_mm,
        math.floor(sac_number(room.barrel_mm - room.bar_mm) + 1e-9), largest, chosen.air_mm, chosen.stretch_share,
        length, low, high, None if length is None or room.pneumatic else length - BAR_SHORTER_MM,
        material.adhesive, _neighbours(graded, chosen), tuple(findings), lies_there is not None,
        by_rule.size.label if lies_there and by_rule and not _same(lies_there, by_rule) else "",
    )  # fmt: skip


def _held(size: SacSize, room: SacRoom, sac: SacInHand, wall: float) -> SacChoice:
    air = (room.barrel_mm - room.bar_mm - size.outside_mm) / 2
    mouth = size.outside_mm - 2 * wall if sac.mouth_mm is None else sac.mouth_mm
    return SacChoice(size, air, None if room.nipple_mm is None else room.nipple_mm / mouth - 1)


def _chosen(graded: Sequence[SacChoice], room: SacRoom, largest: float) -> SacChoice:
    wanted = largest if room.nipple_mm is None else min(largest, room.nipple_mm + NUMBER_OFF * SIXTY_FOURTH_MM)

    def order(choice: SacChoice) -> tuple[int, bool, float]:
        over = choice.size.outside_mm - wanted
        return choice.grade, over > 1e-9, abs(over)

    return min(graded, key=order)


def _in_drawer(rule: SacChoice | None, at_hand: Sequence[SacChoice], room: SacRoom, largest: float) -> SacChoice | None:
    """The sac in the drawer that goes as well as the rule's; None where none does."""
    if rule is None or rule.grade > CLOSE_FIT:
        return None
    near = (1 if room.nipple_mm is None else 2) * SIXTY_FOURTH_MM + 1e-9
    as_good = [c for c in at_hand if c.grade <= rule.grade and abs(c.size.outside_mm - rule.size.outside_mm) <= near]
    return _chosen(as_good, room, largest) if as_good else None


def _same(one: SacChoice, other: SacChoice) -> bool:
    return abs(one.size.outside_mm - other.size.outside_mm) < SIXTY_FOURTH_MM / 2


def _neighbours(graded: Sequence[SacChoice], chosen: SacChoice) -> tuple[SacChoice, ...]:
    near = sorted(graded, key=lambda c: abs(c.size.outside_mm - chosen.size.outside_mm))[:5]
    return tuple(sorted(near, key=lambda c: c.size.outside_mm))


def _length(room: SacRoom, material: SacMaterial) -> tuple[float | None, float | None, float | None]:
    if room.depth_mm is None or not material.cut:
        return None, None, None
    least, most = GUARD_END_MM if room.pneumatic else END_MM
    low, high = room.depth_mm - most, room.depth_mm - least
    return (low + high) / 2, low, high


def _check(room: SacRoom, sac: SacInHand, sizes: Sequence[SacSize]) -> None:
    for name, value, low, high in (
        ("barrel bore", room.barrel_mm, 3.0, 16.0),
        ("nipple", room.nipple_mm, 1.5, 14.0),
        ("depth", room.depth_mm, 10.0, 150.0),
        ("sac", sac.outside_mm, 2.0, 16.0),
        ("sac's mouth", sac.mouth_mm, 1.0, 14.0),
        ("bore before cleaning", room.bore_before_mm, 2.0, 16.0),
    ):
        if value is not None and not low <= value <= high:
            raise InputError(name, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it typed in another unit?")
    if sac.material not in MATERIALS:
        raise InputError("sac material", "one of " + ", ".join(MATERIALS), sac.material)
    if room.nipple_mm is not None and room.nipple_mm >= room.barrel_mm:
        most = f"below the barrel's bore of {room.barrel_mm:g} mm"
        raise InputError("nipple", most, f"{room.nipple_mm:g} mm", "Were the two mixed up?")
    room_for_bar = min(3.0, room.barrel_mm - 3.0)
    if not 0 <= room.bar_mm <= room_for_bar:
        raise InputError("bore that the press bar takes", f"0 to {room_for_bar:g} mm", f"{room.bar_mm:g} mm")
    if sac.outside_mm is not None and sac.wall_mm is not None and 2 * sac.wall_mm >= sac.outside_mm:
        raise InputError("sac wall", f"below half the sac's {sac.outside_mm:.2f} mm", f"{sac.wall_mm:g} mm")
    if sac.wall_mm is not None and not 0.1 <= sac.wall_mm <= 2:
        raise InputError("sac wall", "0.1 to 2 mm", f"{sac.wall_mm:g} mm")
    if sac.outside_mm is None and not sizes:
        raise InputError(
            "sac", "measured", "nothing", f"A {sac.material} sac is sold by no size: measure it over its widest place."
        )


def _bore_findings(room: SacRoom) -> list[Finding]:
    barrel, before = room.barrel_mm, room.bore_before_mm
    if room.cleaned is False:
        return [Finding("stop", "seal.old-rubber:clean")]
    gained = None if before is None else barrel - before
    if gained is not None and gained > SAME_BORE_MM:
        return [Finding("note", "seal.old-rubber:gained", gained=gained, sizes=gained / SIXTY_FOURTH_MM)]
    if gained is not None and -gained > SAME_BORE_MM:
        return [Finding("warning", "seal.old-rubber:smaller", by=-gained)]
    if room.cleaned is None and before is None:
        return [Finding("note", "seal.old-rubber:asked")]
    return []


def _size_findings(choice: SacChoice, room: SacRoom, sac: SacInHand) -> list[Finding]:
    air, where = choice.air_mm, "bar and wall" if room.bar_mm else "the wall"
    found = []
    if air < 0:
        found.append(Finding("stop", "seal.too-thick", by=-2 * air, where=where))
    elif air < TOUCH_MM:
        found.append(Finding("warning", "seal.rubs", air=air, where=where))
    elif air < AIR_MM - 1e-9:
        found.append(Finding("note", "seal.close", air=air, proposed=AIR_MM))
    if not room.bar_mm and not room.pneumatic and sac.material != "pleated":
        found.append(Finding("note", "seal.no-bar"))
    if choice.size.outside_mm >= LIMP_NUMBER * SIXTY_FOURTH_MM - 1e-9 and sac.material == "latex":
        found.append(Finding("note", "seal.limp", number=LIMP_NUMBER))
    if sac.outside_mm is None:
        found.append(Finding("note", f"seal.measure-sac:{'number' if choice.size.number else 'size'}"))
    return found


def _nipple_findings(
    choice: SacChoice, graded: Sequence[SacChoice], room: SacRoom, sac: SacInHand
) -> list[Finding]:  # fmt: skip
    stretch, nipple = choice.stretch_share, room.nipple_mm
    if stretch is None or nipple is None:
        return []
    guess = sac.wall_mm is None and sac.mouth_mm is None
    if stretch < STRETCH_LOW:
        return [Finding("warning", "seal.nipple-small", nipple=nipple, guess=guess)]
    if stretch > STRETCH_HIGH:
        better = next((c.size.label for c in graded if c.grade <= 1), "")
        return [Finding("warning", "seal.nipple-large", nipple=nipple, stretch=stretch, guess=guess, better=better)]
    if choice.size.number is not None and choice.size.outside_mm > nipple + SIXTY_FOURTH_MM:
        return [Finding("note", "seal.nipple-rule", number=nipple / SIXTY_FOURTH_MM, stretch=stretch)]
    return []


def _material_findings(material: str, pneumatic: bool) -> list[Finding]:
    found = [Finding("note", f"seal.adhesive:{material.lower()}")]
    if material == "silicone":
        found.append(Finding("note", "seal.gas"))
    elif material == "PVC":
        found.insert(0, Finding("warning", "seal.plasticiser"))
    elif material == "pleated":
        found.append(Finding("note", "seal.uncut"))
    if pneumatic:
        found.append(Finding("note", "seal.pneumatic"))
    return found
