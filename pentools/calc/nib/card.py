"""A card of a known size lying on a page, found without help: as a scale, or as a plane seen aslant."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Floats
from pentools.calc.nib.outlines import Outline, exact, rough_outlines, side_lengths
from pentools.calc.nib.plane import homography, mapped, pose
from pentools.calc.nib.sampling import made_small

__all__ = ["CARD_MM", "THICK_MM", "Card", "Search", "find_cards", "true_corners"]

CARD_MM = (85.60, 53.98)
"""Length and width of an ID-1 card [mm] (ISO/IEC 7810)."""
THICK_MM = 0.76
"""Its thickness [mm] (ISO/IEC 7810)."""
_ROUND_MM = 3.18  # radius of its corners, 2.88 to 3.48 (ISO/IEC 7810)
_PASSED = 2**0.5 - 1  # a round corner passes its sharp one at so many radii
_ROUND_LOW, _ROUND_HIGH = 2.0, 4.8  # mm that are taken for such a radius
_SIZE_SHARE = 0.0010  # judged: length and width, worn, against what the standard allows (0.15 % either way)
_FLAT = 0.006  # a card seen from straight above has the standard's shape to this
_SQUARE = 0.006
_ASLANT_SHAPE, _ASLANT_SQUARE = 0.018, 0.03
_STRAIGHT = 0.004  # scatter of a side as a share of the card's length
_SEEN = 0.7
_SEARCH_PX = 1300
_FOCAL = (0.62, 0.70, 0.78, 0.88, 1.0)  # focal lengths of telephones over the longer side of their pictures; judged


@dataclass(frozen=True, slots=True)
class Card:
    """A card on the page.

    Parameters
    ----------
    corners : array
        Where its sides would meet [px], shape (4, 2); the first side is a long one.
    um_per_px : float
        Size of an element at the card's middle [µm].
    u_share : float
        Standard uncertainty of that [1].
    aslant : bool
        Whether it was seen at an angle.
    tilt_deg : float
        The angle between its plane and the picture's [°].
    height_mm : float or None
        How far the camera was [mm]; None where it was seen from straight above.
    """

    corners: Floats
    um_per_px: float
    u_share: float
    aslant: bool
    tilt_deg: float
    height_mm: float | None


@dataclass(frozen=True, slots=True)
class Search:
    """What was found.

    Parameters
    ----------
    cards : tuple of Card
        All that pass every gate, the best seen first.
    nearly : str
        Why the likeliest other thing is no card: "corners", "shape", "sides"; empty where there is none.
    """

    cards: tuple[Card, ...]
    nearly: str


def find_cards(grey: Bytes, light: Floats, focal_share: float | None = None, *, camera: bool = False) -> Search:
    """Look for cards.

    Parameters
    ----------
    grey : array of uint8
        Codes of one brightness, the whole page.
    light : array
        Linear brightness of the same page.
    focal_share : float or None
        Focal length over the longer side of the picture [1]; None where nobody knows.
    camera : bool
        Whether a camera took it.

    Returns
    -------
    Search
        Cards that have four straight sides, round corners and the right shape.
    """
    small, factor = made_small(grey, _SEARCH_PX)
    cards: list[tuple[float, Card]] = []
    nearly: list[tuple[float, str]] = []
    for rough in rough_outlines(small):
        outline = exact(light, (rough + 0.5) * factor - 0.5, 4.0 * factor + 2.0)
        if outline is None:
            continue
        card, why, likeness = _judged(outline, light.shape, focal_share, camera=camera)
        if card is not None:
            cards.append((likeness, card))
        elif why:
            nearly.append((likeness, why))
    return Search(_apart([card for _, card in sorted(cards, key=lambda c: c[0])]), min(nearly)[1] if nearly else "")


def _apart(cards: list[Card]) -> tuple[Card, ...]:
    """Each card once, the best seen of several outlines of it."""
    kept: list[Card] = []
    for card in cards:
        middle, size = card.corners.mean(axis=0), np.ptp(card.corners, axis=0).max()
        if all(np.linalg.norm(middle - other.corners.mean(axis=0)) > 0.2 * size for other in kept):
            kept.append(card)
    return tuple(kept)


def _judged(
    outline: Outline, shape: tuple[int, ...], focal_share: float | None, *, camera: bool
) -> tuple[Card | None, str, float]:
    """A card, or why it is none; and how far it is from one."""
    corners = _long_first(outline.corners)
    sides = side_lengths(corners)
    if sides.min() < 40 or not _convex(corners):
        return None, "", 9.0
    if outline.off_px > _STRAIGHT * sides.max() + 0.4 or outline.seen < _SEEN:
        return None, "sides", 3.0
    flat = _flat(corners)
    likeness = abs(flat)
    if likeness > 0.6:
        return None, "", 9.0
    if likeness <= _FLAT and _right_angles(corners) <= _SQUARE and not camera:
        card = _from_above(corners, outline.off_px)
    else:
        found = _aslant(corners, outline.off_px, shape, focal_share)
        if found is None:
            return None, "shape", likeness
        card = found
    round_px = outline.rounding / _PASSED
    local = sides.mean() / np.mean(CARD_MM)
    radius = round_px / local
    if np.sum((radius > _ROUND_LOW) & (radius < _ROUND_HIGH)) < 3:
        return None, "corners", likeness
    return card, "", likeness + outline.off_px / sides.max()


def _long_first(corners: Floats) -> Floats:
    """The same corners going round clockwise as seen, a long side first."""
    x, y = corners[:, 0], corners[:, 1]
    if float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) < 0:
        corners = corners[::-1]
    sides = side_lengths(corners)
    return corners if sides[0] + sides[2] >= sides[1] + sides[3] else np.roll(corners, -1, axis=0)


def _convex(corners: Floats) -> bool:
    a, b = np.roll(corners, -1, axis=0) - corners, np.roll(corners, -2, axis=0) - np.roll(corners, -1, axis=0)
    turn = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    return bool((turn > 0).all())


def _flat(corners: Floats) -> float:
    """By how much the shape differs from a card's, as a share."""
    sides = side_lengths(corners)
    return float((sides[0] + sides[2]) / (sides[1] + sides[3]) / (CARD_MM[0] / CARD_MM[1]) - 1)


def _right_angles(corners: Floats) -> float:
    """Largest cosine of its angles, and largest difference of opposite sides as a share."""
    ways = np.roll(corners, -1, axis=0) - corners
    lengths = np.linalg.norm(ways, axis=1)
    cosines = np.abs((ways * np.roll(ways, -1, axis=0)).sum(axis=1)) / (lengths * np.roll(lengths, -1))
    return float(max(cosines.max(), abs(lengths[0] / lengths[2] - 1), abs(lengths[1] / lengths[3] - 1)))


def _from_above(corners: Floats, off_px: float) -> Card:
    sides = side_lengths(corners)
    seen = np.array([0.5 * (sides[0] + sides[2]), 0.5 * (sides[1] + sides[3])])
    true = np.array(CARD_MM)
    scale = float(1000 * (true * seen).sum() / (seen**2).sum())
    # both sides of one card should give one scale: what they differ by is doubt too
    differ = abs(float(true[0] / seen[0] / (true[1] / seen[1]) - 1)) / 4
    return Card(
        corners, scale, float(np.hypot(_SIZE_SHARE, np.hypot(differ, 0.3 * off_px / sides.max()))), False, 0.0, None
    )


def _aslant(corners: Floats, off_px: float, shape: tuple[int, ...], focal_share: float | None) -> Card | None:
    """The card as a plane in space, where a camera of a likely focal length can see it so."""
    matrix = homography(true_corners(), corners)
    best = None
    for share in (focal_share,) if focal_share is not None else _FOCAL:
        seen = pose(matrix, share * max(shape[:2]), (shape[1] / 2 - 0.5, shape[0] / 2 - 0.5))
        wrong = max(abs(seen.shape - 1) / _ASLANT_SHAPE, abs(seen.lean) / _ASLANT_SQUARE)
        if best is None or wrong < best[0]:
            best = (wrong, seen)
    assert best is not None
    wrong, seen = best
    if wrong > 1 or seen.tilt_deg > 60:
        return None
    middle = np.array(CARD_MM) / 2
    at = mapped(matrix, middle + np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]]))
    scale = 1000 / float(np.sqrt(abs(np.linalg.det(np.stack([at[1] - at[0], at[2] - at[0]])))))
    focal = 0.03 if focal_share is not None else 0.15
    height = seen.height_mm
    thick = THICK_MM / height
    # its thickness is taken off the scale; what the focal length leaves open of it stays
    u = float(
        np.hypot(np.hypot(_SIZE_SHARE, 0.002), np.hypot(focal * thick, 0.3 * off_px / np.ptp(corners, axis=0).max()))
    )
    return Card(corners, scale * (1 + thick), u, True, seen.tilt_deg, height)


def true_corners() -> Floats:
    """The corners of a card lying straight, in the order of `Card.corners` [mm]."""
    long, wide = CARD_MM
    return np.array([[0.0, 0.0], [long, 0.0], [long, wide], [0.0, wide]])
