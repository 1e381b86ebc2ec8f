"""A printed bar or a ruler on a page: its even marks read to a fraction of an element, and what they stand for."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Flags, Floats, Ints
from pentools.calc.nib.combs import Comb, rough_combs
from pentools.calc.nib.sampling import made_small, read_at

__all__ = ["FIELD_MM", "FIELD_SHAPE", "OTHER_WAY", "Bar", "BarSearch", "find_bars"]

FIELD_MM = 10.0
"""Length of a field of the bar on the kit's own sheet [mm]."""
FIELD_SHAPE = 5.0
"""Length of such a field over its height [1]."""
_FIELD_OFF = 0.12  # by how much of that another field may differ
_LONGEST_PX = 3600
_BLOCK = 0.42  # marks that fill so much of a step are fields, not strokes
_UNEVEN_MM, _UNEVEN_PX = 0.05, 0.25  # scatter of marks about their even places, above which nobody made them evenly
_UNEVEN_STEP = 0.05  # of a step: what scatters more was never meant to be even
_BENT = 0.006  # change of the step from one end to the other
_LONGER = 1.12  # a longer stroke of a ruler is longer by this at least
_PRINTED = 0.005  # judged: how true a printer prints a length
_MEASURED_MM = 0.2  # judged: what a ruler held against a bar tells
_RULER = 0.0015  # judged: a ruler of steel, read over its marks
OTHER_WAY = 0.003
"""How far a scanner's scale down may be off that across, of which a bar shows one [1]; judged."""
_UNITS_MM = (1.0, 10.0)  # what even marks without longer ones among them may stand for
_TAG_NEAR = 0.03


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar or a ruler on the page.

    Parameters
    ----------
    kind : {"bar", "ruler"}
        Fields in turn, or strokes.
    um_per_px : float
        Size of an element along it [µm].
    u_share : float
        Standard uncertainty of that over the page [1].
    step_mm : float
        What was taken for the way from one mark to the next of its kind [mm].
    marks : int
        Strokes or fields that were read [1].
    long_mm : float
        From the first to the last edge of them, of a ruler from the first to the last stroke [mm].
    corners : array
        The stretch of page that it and its numbers take [px], shape (4, 2).
    """

    kind: str
    um_per_px: float
    u_share: float
    step_mm: float
    marks: int
    long_mm: float
    corners: Floats


@dataclass(frozen=True, slots=True)
class BarSearch:
    """What was found.

    Parameters
    ----------
    bars : tuple of Bar
        All that pass every gate, the longest first.
    nearly : str
        Why the likeliest other thing was refused: "uneven", "aslant", "unit", "inch"; empty where there is none.
    """

    bars: tuple[Bar, ...]
    nearly: str


@dataclass(frozen=True, slots=True)
class _Even:
    """Even marks: middle of the first (of fields its beginning), step, how many, their scatter, what the step changes by."""

    first: float
    step: float
    marks: int
    reach: float
    scatter: float
    bend: float


@dataclass(frozen=True, slots=True)
class _Read:
    """A comb read on the page itself."""

    comb: Comb
    even: _Even
    lengths: Floats

    @property
    def block(self) -> bool:
        return self.comb.filled >= _BLOCK

    @property
    def steps(self) -> float:
        """From the first mark to the last, of fields from edge to edge [1]."""
        return round(2 * self.even.reach / self.even.step) / 2 if self.block else self.even.marks - 1


def find_bars(grey: Bytes, light: Floats, said_mm: float | None = None, tag_um: float | None = None) -> BarSearch:
    """Look for printed bars and rulers.

    Parameters
    ----------
    grey : array of uint8
        Codes of one brightness, the whole page.
    light : array
        Linear brightness of the same page.
    said_mm : float or None
        What somebody measured from its first to its last mark [mm].
    tag_um : float or None
        Size of an element by the file [µm]: it only decides between millimetres and centimetres, where marks do not.

    Returns
    -------
    BarSearch
        Marks that are even, straight, and of which it is known what they stand for.
    """
    small, factor = made_small(grey, _LONGEST_PX)
    bars: list[Bar] = []
    nearly = ""
    for comb in rough_combs(small):
        read = _read(light, _on_page(comb, factor))
        if read is None:
            continue
        found = _judged(read, said_mm, tag_um)
        if isinstance(found, Bar):
            bars.append(found)
        else:
            nearly = nearly or found
    return BarSearch(tuple(sorted(bars, key=lambda bar: -bar.long_mm)), nearly)


def _on_page(comb: Comb, factor: int) -> Comb:
    start = (comb.start + 0.5) * factor - 0.5
    return Comb(start, comb.along, comb.out, comb.step_px * factor, comb.count, comb.long_px * factor, comb.filled)


def _sampled(light: Floats, comb: Comb, along: Floats, out: Floats) -> Floats:
    """Brightness at places along the comb and out from its line, shape (along, out)."""
    places = comb.start + along[:, None, None] * comb.along + out[None, :, None] * comb.out
    return read_at(light, places[..., 0], places[..., 1]).astype(np.float64)


def _read(light: Floats, comb: Comb) -> _Read | None:
    along = np.arange(-1.2 * comb.step_px, (comb.count + 1.2) * comb.step_px, 0.5)
    level = _sampled(light, comb, along, comb.long_px * np.linspace(0.3, 0.8, 7)).mean(axis=1)
    ink, ground = np.percentile(level, [min(max(40 * comb.filled, 0.5), 15), 85])
    if ground - ink < 0.1 * ground:
        return None
    share = (ground - level) / (ground - ink)
    even = _even_places([_crossings(along, share, rising) for rising in (True, False)], comb)
    if even is None:
        return None
    middles = even.first + even.step * np.arange(even.marks)
    lengths = np.zeros(0) if comb.filled >= _BLOCK else _lengths(light, comb, middles, ground, ink)
    return _Read(comb, even, lengths)


def _crossings(along: Floats, share: Floats, rising: bool) -> Floats:
    over = share > 0.5
    at = np.nonzero(~over[:-1] & over[1:] if rising else over[:-1] & ~over[1:])[0]
    part = (0.5 - share[at]) / (share[at + 1] - share[at])
    found: Floats = along[at] + part * (along[at + 1] - along[at])
    return found


def _even_places(edges: list[Floats], comb: Comb) -> _Even | None:
    """Beginning and ending edges on one step, each kind with its own first place: ink that spreads moves neither."""
    if min(len(places) for places in edges) < 3:
        return None
    kind = np.repeat([0, 1], [len(places) for places in edges])
    place = np.concatenate(edges)
    number, keep = _numbered(kind, place, comb.step_px)
    design = np.column_stack([kind == 0, kind == 1, number]).astype(np.float64)
    for _ in range(3):
        if keep.sum() < 6 or np.ptp(number[keep]) < 2:
            return None
        fit = np.linalg.lstsq(design[keep], place[keep], rcond=None)[0]
        off = place - design @ fit
        keep = np.abs(off) < max(6 * float(np.median(np.abs(off[keep]))), 0.3)
    low, count = number[keep].min(), int(np.ptp(number[keep])) + 1
    begins, ends = fit[:2] + fit[2] * low
    middle = number[keep] - number[keep].mean()
    bent = np.linalg.lstsq(np.column_stack([design[keep], middle**2]), place[keep], rcond=None)[0]
    bend = abs(float(2 * bent[3] * (count - 1) / fit[2])) if count > 4 else 0.0
    first = begins if comb.filled >= _BLOCK else 0.5 * (begins + ends)
    scatter = float(np.sqrt(np.mean(off[keep] ** 2)))
    return _Even(float(first), float(fit[2]), count, float(np.ptp(place[keep])), scatter, bend)


def _numbered(kind: Ints, place: Floats, step: float) -> tuple[Floats, Flags]:
    """The number of the mark that each edge belongs to, and which edges lie where one should."""
    number, keep = np.zeros(len(place)), np.zeros(len(place), np.bool_)
    for which in (0, 1):
        own = np.nonzero(kind == which)[0]
        turn = np.exp(2j * np.pi * place[own] / step)
        # the phase that most edges share, each against those near to it
        phase = float(np.angle(turn[int(np.argmax((np.abs(turn[:, None] - turn[None, :]) < 0.5).sum(axis=1)))]))
        at = place[own] / step - phase / (2 * np.pi)
        number[own], keep[own] = np.round(at), np.abs(at - np.round(at)) < 0.12
    first = place[kind == 0][keep[kind == 0]]
    if len(first):  # an ending edge belongs to the beginning one before it
        base = float(first.min())
        for which in (0, 1):
            own = kind == which
            number[own] = np.floor((place[own] - base) / step + (0.25 if which == 0 else 0.0))
    return number, keep


def _lengths(light: Floats, comb: Comb, middles: Floats, ground: float, ink: float) -> Floats:
    """How long each stroke is, out from the line that they stand on [px]."""
    grain = max(0.5, comb.long_px / 60)
    out = np.arange(0.3 * comb.long_px, 3.5 * comb.long_px, grain)
    share = (ground - _sampled(light, comb, middles, out)) / (ground - ink)
    over = share > 0.5 * np.clip(share[:, :5].max(axis=1, keepdims=True), 0.3, 1.2)
    ended = np.where((~over).any(axis=1), np.argmax(~over, axis=1), out.size - 1)
    return out[ended]


def _judged(read: _Read, said_mm: float | None, tag_um: float | None) -> Bar | str:
    """A bar, or why it is none."""
    even = read.even
    if even.scatter > _UNEVEN_STEP * even.step + _UNEVEN_PX:
        return ""
    if even.bend > _BENT:
        return "aslant"
    step_mm = _step_mm(read, said_mm, tag_um)
    if isinstance(step_mm, str):
        return step_mm
    um = 1000 * step_mm / even.step
    if even.scatter > _UNEVEN_PX + 1000 * _UNEVEN_MM / um or not 3 <= um <= 400:
        return "uneven"
    long_px = read.steps * even.step
    true = _RULER if not read.block else _MEASURED_MM / said_mm if said_mm is not None else _PRINTED
    share = float(np.sqrt(true**2 + OTHER_WAY**2 + 12 * even.scatter**2 / (long_px**2 * even.marks)))
    kind, marks = ("bar", round(2 * read.steps)) if read.block else ("ruler", even.marks)
    return Bar(kind, um, share, step_mm, marks, long_px * um / 1000, _place(read, long_px, um))


def _step_mm(read: _Read, said_mm: float | None, tag_um: float | None) -> float | str:
    """What a step stands for [mm], or why nobody can tell."""
    if said_mm is not None:
        return said_mm / read.steps
    step = read.even.step
    if read.block and abs(0.5 * step / read.comb.long_px / FIELD_SHAPE - 1) < _FIELD_OFF:
        return 2 * FIELD_MM
    unit = "unit" if read.block else _of_lengths(read.lengths)
    if isinstance(unit, float) or unit == "inch":
        return unit
    wanted = [2 * one if read.block else one for one in _UNITS_MM]
    near = [one for one in wanted if tag_um is not None and abs(1000 * one / step / tag_um - 1) < _TAG_NEAR]
    return near[0] if near else "unit"


def _of_lengths(lengths: Floats) -> float | str:
    """What the strokes of a ruler stand for by which of them are longer: every tenth, and every fifth, or by halves."""
    if len(lengths) < 21:
        return "unit"
    at = np.arange(len(lengths))
    for first in range(10):
        place = (at - first) % 10
        tens, fives, rest = lengths[place == 0], lengths[place == 5], lengths[(place != 0) & (place != 5)]
        second, odd = lengths[np.isin(place, (2, 4, 6, 8))], lengths[np.isin(place, (1, 3, 7, 9))]
        longer = float(np.mean(tens > _LONGER * np.median(rest))) > 0.85 and np.median(fives) < 1.02 * np.median(tens)
        steady = [float(np.mean(some < 1.06 * np.median(some))) > 0.85 for some in (rest, second, odd)]
        even = float(np.median(second) / np.median(odd))
        if longer and steady[0] and abs(even - 1) < 0.05:
            return 1.0
        if longer and steady[1] and steady[2] and even > _LONGER and np.median(fives) < 1.05 * np.median(odd):
            return 0.5
    return "inch" if _halved(lengths, at) else "unit"


def _halved(lengths: Floats, at: Ints) -> bool:
    """Whether every second stroke is longer than the others, and every fourth than these."""
    for first in range(4):
        place = (at - first) % 4
        fours, twos, odd = (np.median(lengths[np.isin(place, which)]) for which in ((0,), (2,), (1, 3)))
        if fours > _LONGER * twos > _LONGER**2 * odd:
            return True
    return False


def _place(read: _Read, long_px: float, um: float) -> Floats:
    """The marks with what is printed beside them."""
    comb, mm = read.comb, 1000 / um
    longest = max(comb.long_px, float(read.lengths.max(initial=0.0)))
    first, last = read.even.first - 4 * mm, read.even.first + long_px + 12 * mm
    near, far = -6 * mm, longest + 6 * mm
    return np.array(
        [
            comb.start + a * comb.along + o * comb.out
            for a, o in ((first, near), (last, near), (last, far), (first, far))
        ]
    )
