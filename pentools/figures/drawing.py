"""The one result every drawn figure of the kit returns: the SVG text with the words that go with it."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Drawing"]


@dataclass(frozen=True, slots=True, repr=False)
class Drawing:
    """A picture as self-contained SVG text, with its finding in words.

    Parameters
    ----------
    svg : str
        One ``<svg>`` element; it fetches nothing, and its ids are its own, so several stand on one page.
    title : str
        The finding, as a sentence.
    alt : str
        The finding with the numbers that carry it, for a reader who cannot see the picture.
    width_mm : float
        Printed width [mm].
    """

    svg: str
    title: str
    alt: str
    width_mm: float

    def _repr_svg_(self) -> str:
        return self.svg

    def __repr__(self) -> str:
        return f"<Drawing: {self.title}>"
