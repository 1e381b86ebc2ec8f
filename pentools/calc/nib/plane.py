"""A plane seen aslant: from four known points to a picture of it from straight above."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats

__all__ = ["Pose", "Upright", "homography", "mapped", "pose", "upright"]

_MOST_STRETCH = 1.8  # an element may be so much larger than at the card
_MOST_PX = 60_000_000


@dataclass(frozen=True, slots=True)
class Pose:
    """How a plane lies before a camera.

    Parameters
    ----------
    shape : float
        What the plane's first way measures over its second one, as a share of what it should [1]: 1 where it fits.
    lean : float
        Cosine of the angle between them [1]: 0 where it fits.
    height_mm : float
        Distance of the camera from the plane's first point [mm].
    tilt_deg : float
        Angle between the plane and the picture [°].
    """

    shape: float
    lean: float
    height_mm: float
    tilt_deg: float


@dataclass(frozen=True, slots=True)
class Upright:
    """A page turned to straight above.

    Parameters
    ----------
    light : array of uint16
        The page.
    um_per_px : float
        Size of its elements [µm].
    outside : array of bool
        Where the picture shows nothing of it, or too coarsely.
    corners : array
        The card on it [px], shape (4, 2).
    u_share : float
        Standard uncertainty of the scale over the page, by the corners of the card [1].
    """

    light: Floats
    um_per_px: float
    outside: Flags
    corners: Floats
    u_share: float


def homography(plane: Floats, picture: Floats) -> Floats:
    """The matrix that takes points of a plane to a picture.

    Parameters
    ----------
    plane, picture : array
        Four or more points each, shape (n, 2), in any unit.

    Returns
    -------
    array
        Shape (3, 3), its last number 1.

    Notes
    -----
    Direct linear transformation on points moved to their mean and scaled to a mean distance of the square root of two
    (Hartley, IEEE PAMI 19, 1997, 580).
    """
    (one, a), (other, b) = _even(plane), _even(picture)
    rows = []
    for (x, y), (u, v) in zip(one, other, strict=True):
        rows += [[-x, -y, -1, 0, 0, 0, u * x, u * y, u], [0, 0, 0, -x, -y, -1, v * x, v * y, v]]
    matrix = np.linalg.svd(np.array(rows))[2][-1].reshape(3, 3)
    matrix = np.linalg.inv(b) @ matrix @ a
    return matrix / matrix[2, 2]


def _even(points: Floats) -> tuple[Floats, Floats]:
    middle = points.mean(axis=0)
    scale = np.sqrt(2) / max(float(np.linalg.norm(points - middle, axis=1).mean()), 1e-12)
    return (points - middle) * scale, np.array(
        [[scale, 0, -scale * middle[0]], [0, scale, -scale * middle[1]], [0, 0, 1]]
    )


def mapped(matrix: Floats, points: Floats) -> Floats:
    """Points taken through a matrix of `homography`."""
    lifted = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    return lifted[:, :2] / lifted[:, 2:]


def pose(matrix: Floats, focal_px: float, middle: tuple[float, float]) -> Pose:
    """How a plane lies before a camera of a known focal length with square elements.

    Parameters
    ----------
    matrix : array
        From the plane [mm] to the picture [px], as of `homography`.
    focal_px : float
        Focal length [px], above 0.
    middle : (float, float)
        Where the lens looks straight on [px].

    Returns
    -------
    Pose
        Of a plane that the points do not fit, a shape off 1 or a lean off 0.
    """
    inverse = np.array([[1 / focal_px, 0, -middle[0] / focal_px], [0, 1 / focal_px, -middle[1] / focal_px], [0, 0, 1]])
    first, second, start = (inverse @ matrix).T
    a, b = float(np.linalg.norm(first)), float(np.linalg.norm(second))
    across = np.cross(first / a, second / b)
    size = 0.5 * (a + b)
    tilt = np.degrees(np.arccos(min(1.0, abs(float(across[2])) / max(float(np.linalg.norm(across)), 1e-12))))
    return Pose(a / b, float(first @ second) / (a * b), abs(float(start[2])) / size, float(tilt))


def upright(light: Floats, card: tuple[Floats, Floats], um_per_px: float, thick_share: float, off_px: float) -> Upright:
    """A page turned to straight above.

    Parameters
    ----------
    light : array of uint16
        The picture, linear.
    card : (array, array)
        Four points of the plane [mm] and of the picture [px].
    um_per_px : float
        Size that elements shall have, as the card would measure them [µm], above 0.
    thick_share : float
        By how much more an element shows on the page under the card, as a share [1], 0 or more.
    off_px : float
        Standard uncertainty of a corner [px], 0 or more.

    Returns
    -------
    Upright
        As large as the picture shows the page without elements much larger than at the card.
    """
    import cv2

    true, seen = card
    matrix = homography(true, seen)
    low, high = _span(matrix, light.shape, um_per_px)
    size = np.ceil((high - low) * 1000 / um_per_px).astype(int)
    if size[0] * size[1] > _MOST_PX:
        um_per_px *= float(np.sqrt(size[0] * size[1] / _MOST_PX))
        size = np.ceil((high - low) * 1000 / um_per_px).astype(int)
    to_mm = np.array([[um_per_px / 1000, 0, low[0]], [0, um_per_px / 1000, low[1]], [0, 0, 1]])
    to_picture = matrix @ to_mm
    flags = cv2.INTER_CUBIC | cv2.WARP_INVERSE_MAP
    ground = float(np.median(light[::9, ::9]))
    turned = cv2.warpPerspective(
        light, to_picture, tuple(int(v) for v in size), flags=flags, borderMode=cv2.BORDER_CONSTANT, borderValue=ground
    )
    outside = _outside(to_picture, (int(size[1]), int(size[0])), light.shape)
    corners = mapped(np.linalg.inv(to_mm), true)
    return Upright(turned, um_per_px * (1 + thick_share), outside, corners, _spread(true, seen, off_px, (low, high)))


def _span(matrix: Floats, shape: tuple[int, ...], um_per_px: float) -> tuple[Floats, Floats]:
    """The part of the plane that the picture shows well enough [mm]."""
    rows, columns = shape
    grid = np.stack(np.meshgrid(np.linspace(0, columns - 1, 41), np.linspace(0, rows - 1, 41)), axis=-1).reshape(-1, 2)
    back = np.linalg.inv(matrix)
    weight = np.column_stack([grid, np.ones(len(grid))]) @ back[2]
    middle = np.array([columns / 2, rows / 2, 1.0]) @ back[2]
    ahead = weight * np.sign(middle) > 0
    place, beside = mapped(back, grid), mapped(back, grid + 0.5)
    stretch = 1000 * np.linalg.norm(beside - place, axis=1) / np.sqrt(0.5) / um_per_px
    fine = ahead & (stretch < _MOST_STRETCH)
    return place[fine].min(axis=0), place[fine].max(axis=0)


def _outside(to_picture: Floats, size: tuple[int, int], shape: tuple[int, ...]) -> Flags:
    rows, columns = np.indices(size, np.float32)
    weight = to_picture[2, 0] * columns + to_picture[2, 1] * rows + to_picture[2, 2]
    x = (to_picture[0, 0] * columns + to_picture[0, 1] * rows + to_picture[0, 2]) / weight
    y = (to_picture[1, 0] * columns + to_picture[1, 1] * rows + to_picture[1, 2]) / weight
    return (x < 2) | (y < 2) | (x > shape[1] - 3) | (y > shape[0] - 3)


def _spread(true: Floats, seen: Floats, off_px: float, span: tuple[Floats, Floats]) -> float:
    """How much the scale wanders over the page when corners are off by their doubt: each one in turn, in squares."""
    low, high = span
    some = np.stack(np.meshgrid(*(np.linspace(a, b, 3) for a, b in zip(low, high, strict=True))), axis=-1).reshape(
        -1, 2
    )
    here = mapped(homography(true, seen), some)
    usual, total = _areas(true, seen, here), np.zeros(len(some))
    for corner in range(4):
        for axis in (0, 1):
            moved = seen.copy()
            moved[corner, axis] += off_px
            total += (0.5 * (_areas(true, moved, here) / usual - 1)) ** 2
    return float(np.sqrt(np.median(total)))


def _areas(true: Floats, seen: Floats, here: Floats) -> Floats:
    """What an element of the picture covers of the plane [mm²], at some places."""
    back = np.linalg.inv(homography(true, seen))
    a, b, c = (mapped(back, here + np.array(shift)) for shift in ((0, 0), (1, 0), (0, 1)))
    return np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0])
