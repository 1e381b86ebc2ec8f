"""Two aligned pictures as one pair: the same frame and scale side by side, or one half of each in one picture."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.pictures.matching import Alignment, Unlike, align

if TYPE_CHECKING:
    import numpy as np
    from PIL.Image import Image

__all__ = ["LEAST_SHARE", "Pair", "half_and_half", "pair_of"]

LEAST_SHARE = 0.3
"""The least share of the first picture that both must show for a pair to be cut to it (judged)."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two pictures of one view.

    Parameters
    ----------
    before, after : PIL.Image.Image
        Aligned: of one size, the same point at the same place. Not aligned: as they were handed in.
    alignment : Alignment or Unlike
        How they were aligned, or why not, in words.
    """

    before: Image
    after: Image
    alignment: Alignment | Unlike

    @property
    def aligned(self) -> bool:
        """Whether the same point lies at the same place in both."""
        return isinstance(self.alignment, Alignment)


def pair_of(before: Image, after: Image) -> Pair:
    """Align two pictures and cut both to what both show.

    Parameters
    ----------
    before, after : PIL.Image.Image
        In RGB, upright; the frame and the scale of the first are kept.

    Returns
    -------
    Pair
        Not aligned where the two are too unlike, or share too little.
    """
    import cv2
    import numpy as np

    found = align(before, after)
    if isinstance(found, Unlike):
        return Pair(before, after, found)
    size = (before.width, before.height)
    to_before = found.matrix(before.size, after.size)
    seen = np.full((after.height, after.width), 255, np.uint8)
    covered = np.asarray(cv2.warpPerspective(seen, to_before, size, flags=cv2.INTER_NEAREST) > 0)
    left, top, right, bottom = largest_box(covered)
    if (right - left) * (bottom - top) < LEAST_SHARE * before.width * before.height:
        return Pair(before, after, Unlike("they show the same thing, and share too small a part of it"))
    turned = cv2.warpPerspective(
        np.asarray(after), to_before, size, flags=cv2.INTER_AREA if found.scale < 1 else cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE,
    )  # fmt: skip
    from PIL import Image as Images

    box = (left, top, right, bottom)
    return Pair(before.crop(box), Images.fromarray(turned).crop(box), found)


def largest_box(covered: np.ndarray) -> tuple[int, int, int, int]:
    """The largest upright box that lies within what is covered.

    Parameters
    ----------
    covered : ndarray of bool
        Shape (height, width).

    Returns
    -------
    tuple of int
        Left, top, right, bottom [px]; right and bottom are not part of it. All 0 where nothing is covered.

    Notes
    -----
    The largest rectangle under a histogram, row by row, on a grid of some 200 cells along the long side, each covered
    only where all of it is.
    """
    import numpy as np

    step = max(1, -(-max(covered.shape) // 200))
    rows, columns = (length // step for length in covered.shape)
    fields = covered[: rows * step, : columns * step].reshape(rows, step, columns, step)
    cells = np.asarray(np.all(fields, axis=(1, 3)))
    best, box = 0, (0, 0, 0, 0)
    heights = np.zeros(columns, int)
    for row in range(rows):
        heights = np.where(cells[row], heights + 1, 0)
        stack: list[tuple[int, int]] = []
        for column, height in enumerate([*heights.tolist(), 0]):
            start = column
            while stack and stack[-1][1] >= height:
                start, tall = stack.pop()
                if tall * (column - start) > best:
                    best, box = tall * (column - start), (start, row + 1 - tall, column, row + 1)
            stack.append((start, height))
    left, top, right, bottom = (edge * step for edge in box)
    return left, top, right, bottom


def half_and_half(before: Image, after: Image) -> Image:
    """One picture of two that are aligned: the first on the left or upper half, the second on the other.

    Parameters
    ----------
    before, after : PIL.Image.Image
        Of one size.

    Returns
    -------
    PIL.Image.Image
        Parted across its long side by a line, each half named at its outer edge.
    """
    from PIL import ImageDraw, ImageFont

    made = before.copy()
    wide = made.width >= made.height
    middle = (made.width if wide else made.height) // 2
    at = (middle, 0) if wide else (0, middle)
    made.paste(after.crop((*at, after.width, after.height)), at)
    draw = ImageDraw.Draw(made, "RGBA")
    em = max(9.0, min(made.width, 2.2 * made.height) / 48)
    end = (middle, made.height) if wide else (made.width, middle)
    draw.line([at, end], fill=(251, 250, 246, 255), width=max(3, round(em / 3)))
    draw.line([at, end], fill=(31, 58, 95, 255), width=max(1, round(em / 9)))
    font = ImageFont.load_default(em)
    places = ((0.8 * em, 0.8 * em), (made.width - 0.8 * em, 0.8 * em) if wide else (0.8 * em, middle + 0.8 * em))
    for words, (x, y), right in zip(("before", "after"), places, (False, wide), strict=True):
        span = draw.textlength(words, font)
        x0 = x - span if right else x
        draw.rectangle((x0 - 0.4 * em, y - 0.25 * em, x0 + span + 0.4 * em, y + 1.25 * em), fill=(251, 250, 246, 225))
        draw.text((x0, y + 0.9 * em), words, fill=(31, 58, 95, 255), font=font, anchor="ls")
    return made
