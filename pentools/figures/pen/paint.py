"""Paints pieces of a pen on paper: hatching, outline, and the heavier oxblood line of a highlighted part."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from pentools.figures.hatching import TEXTURES, hatched
from pentools.figures.pen.svg import BRASS, INK, JADE, OXBLOOD, PAPER, SLATE, Picture, element, number
from pentools.systems.anatomy import Piece
from pentools.systems.profiles import Point

__all__ = ["View", "paint_pieces"]

_FILL: dict[str, tuple[str, float]] = {
    "metal": (BRASS, 0.38), "plain": (SLATE, 0.28), "soft": (JADE, 0.8), "void": (PAPER, 1.0),
}  # fmt: skip
_LINES = {"line": 0.2, "hidden": 0.2, "spring": 0.4}  # style -> width [mm]


@dataclass(frozen=True, slots=True)
class View:
    """How millimetres of the pen become millimetres on paper.

    Parameters
    ----------
    scale : float
        Millimetres on paper for one of the pen.
    left, axis : float
        Where the pen's x = 0 and y = 0 lie on paper [mm].
    """

    scale: float
    left: float
    axis: float

    def to_paper(self, point: Point) -> Point:
        """A point of the pen on paper.

        Parameters
        ----------
        point : (float, float)
            [mm of the pen].

        Returns
        -------
        (float, float)
            [mm on paper].
        """
        return self.left + self.scale * point[0], self.axis + self.scale * point[1]


def paint_pieces(
    picture: Picture, view: View, pieces: Iterable[Piece], marked: Callable[[str], bool] = lambda _: False
) -> None:
    """Paint pieces in their order.

    Parameters
    ----------
    picture : Picture
        Painted on.
    view : View
        Scale and place.
    pieces : iterable of Piece
        From an anatomy.
    marked : callable
        Part key -> whether it is drawn in oxblood with a heavier line.
    """
    for piece in pieces:
        picture.add(_shape(view, piece, marked(piece.part)))


def _shape(view: View, piece: Piece, strong: bool) -> str:
    corners = [view.to_paper(point) for point in piece.points]
    joined = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in corners)
    if piece.style in _LINES:
        return _line(piece, joined, strong)
    ink = piece.style == "ink"
    under = "" if ink else element("path", d=f"{joined}Z", fill=PAPER, data_part=piece.part)
    if piece.style in TEXTURES:
        under += hatched(corners, piece.style)
    fill, opacity = _fill(piece, strong)
    edge = None if ink and not strong else OXBLOOD if strong else INK
    return under + element(
        "path",
        d=f"{joined}Z",
        fill=fill,
        fill_opacity=opacity,
        stroke=edge or "none",
        stroke_width=None if edge is None else 0.6 if strong else 0.26,
        stroke_linejoin="round",
        data_part=piece.part,
    )


def _line(piece: Piece, joined: str, strong: bool) -> str:
    return element(
        "path",
        d=joined,
        fill="none",
        stroke=OXBLOOD if strong else BRASS if piece.style == "spring" else INK,
        stroke_width=_LINES[piece.style] * (2.6 if strong else 1.0),
        stroke_dasharray="0.9 0.7" if piece.style == "hidden" else None,
        stroke_linejoin="round",
        data_part=piece.part,
    )


def _fill(piece: Piece, strong: bool) -> tuple[str, float | None]:
    """What a piece is filled with under its edge, and how densely (None for wholly); nothing over hatching."""
    if piece.style in TEXTURES:
        return "none", None
    fill, alpha = _FILL[piece.style]
    return OXBLOOD if strong and piece.style == "soft" else fill, None if alpha == 1.0 else alpha
