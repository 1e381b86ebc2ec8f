"""How wide a line of text will be, how it breaks, and how a length is written on a drawing."""

from __future__ import annotations

from pentools.figures.pen.svg import TEXT_MM

__all__ = ["INCH_MM", "LINE_MM", "format_length", "text_width_mm", "wrap"]

INCH_MM = 25.4
"""Millimetres in an inch, exact by definition."""
LINE_MM = 3.9
"""Distance between two lines of text [mm]."""

# Advance widths of the common sans faces of one width, thousandths of the type size.
_NARROW: dict[str, int] = {
    **dict.fromkeys("ijl'", 222), **dict.fromkeys(" !,./:;ftI[]\\|", 278), **dict.fromkeys("r-()", 333),
    **dict.fromkeys("ckszvxyJ", 500), **dict.fromkeys("wCDHNRU", 722), **dict.fromkeys("mM", 833),
    **dict.fromkeys("ABEKPSVXY&", 667), **dict.fromkeys("FTZ", 611), **dict.fromkeys("GOQ", 778),
    "W": 944, "@": 1015, "%": 889, "…": 1000, "⌀": 900, "—": 1000, "\u2009": 200, "\u202f": 278, "\u00a0": 278,
}  # fmt: skip
_USUAL = 570
_SAFETY = 1.05


def text_width_mm(words: str, size_mm: float = TEXT_MM, bold: bool = False) -> float:
    """Width a line of text takes, a little on the safe side.

    Parameters
    ----------
    words : str
        One line.
    size_mm : float
        Height of the type [mm], above 0.
    bold : bool
        Whether it is set bold.

    Returns
    -------
    float
        Width [mm].

    Notes
    -----
    Sum of advance widths of the sans faces in the picture's stack, with 5 % added (12 % for bold). A character
    outside the Latin and Greek blocks is taken as one full type size.

    Examples
    --------
    >>> 8 < text_width_mm("section") < 12
    True
    """
    total = sum(_NARROW.get(c, _USUAL if ord(c) < 0x0530 else 1000) for c in words)
    return total / 1000.0 * size_mm * (_SAFETY * (1.07 if bold else 1.0))


def wrap(words: str, width_mm: float, size_mm: float = TEXT_MM, bold: bool = False) -> tuple[str, ...]:
    """Break text into lines no wider than a measure, at ordinary spaces only; a word too long for it is cut.

    Parameters
    ----------
    words : str
        Any text.
    width_mm : float
        Measure [mm], at least three times `size_mm`.
    size_mm : float
        Height of the type [mm].
    bold : bool
        Whether it is set bold.

    Returns
    -------
    tuple of str
        The lines; at least one.

    Examples
    --------
    >>> wrap("pressure bar", 14)
    ('pressure', 'bar')
    """
    lines: list[str] = []
    line = ""
    for word in (piece for piece in " ".join(words.splitlines()).split(" ") if piece):
        joined = f"{line} {word}".strip()
        if text_width_mm(joined, size_mm, bold) <= width_mm:
            line = joined
            continue
        if line:
            lines.append(line)
        *full, line = _cut(word, width_mm, size_mm, bold)
        lines += full
    if line or not lines:
        lines.append(line)
    return tuple(lines)


def _cut(word: str, width_mm: float, size_mm: float, bold: bool) -> list[str]:
    """A word in pieces no wider than a measure, each of one letter at least."""
    pieces, start, used = [], 0, 0.0
    for place, letter in enumerate(word):
        wide = text_width_mm(letter, size_mm, bold)
        if place > start and used + wide > width_mm:
            pieces.append(word[start:place])
            start, used = place, 0.0
        used += wide
    return [*pieces, word[start:]]


def format_length(value_mm: float, decimal_sign: str = ".") -> str:
    """A length in millimetres with inches in brackets, as the trade reads it.

    Parameters
    ----------
    value_mm : float
        Length [mm].
    decimal_sign : {".", ","}
        Sign shown.

    Returns
    -------
    str
        Hundredths of a millimetre (tenths from 100 mm) and thousandths of an inch.

    Examples
    --------
    >>> format_length(12.31).replace(chr(0x202F), " ").replace(chr(0xA0), " ")
    '12.31 mm (0.485 in)'
    """
    millimetres = f"{value_mm:.2f}" if value_mm < 100.0 else f"{value_mm:.1f}"
    shown = f"{millimetres}\u202fmm\u00a0({value_mm / INCH_MM:.3f}\u202fin)"
    return shown.replace(".", decimal_sign)
