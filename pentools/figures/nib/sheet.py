"""The sheet that a nib is tried on, printed at true size: places for each kind of stroke, a scale bar, a place for the card."""

from __future__ import annotations

import io
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from pentools.calc.nib.bar import FIELD_MM, FIELD_SHAPE
from pentools.errors import InputError
from pentools.figures.chart import TEXT_STYLE

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["PAPERS_MM", "sheet_file", "write_sheet"]

PAPERS_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Width and height [mm] (ISO 216; ANSI/ASME Y14.1)."""
_MARGIN = 14.0
_PALE, _DARK = "#cfd6da", "#1a1a1a"  # guides are pale enough to be taken for paper beside ink
_FIELDS = 7


def write_sheet(file: str | Path, *, paper: str = "A4") -> Path:
    """Write the sheet.

    Parameters
    ----------
    file : str or Path
        Where to: a name that ends in .pdf or .svg. Print it at 100 %, without fitting it to the page.
    paper : {"A4", "Letter"}
        The paper it is printed on.

    Returns
    -------
    Path
        The file.

    Raises
    ------
    InputError
        If the name ends otherwise, the paper is another, or the file cannot be written.
    """
    path = Path(file).expanduser()
    form = path.suffix.casefold().lstrip(".")
    if form not in ("pdf", "svg"):
        raise InputError("file", "a name that ends in .pdf or .svg", str(file))
    content = sheet_file(paper, form)
    try:
        path.write_bytes(content)
    except OSError as error:
        raise InputError("file", "one that can be written", str(file), str(error.strerror or "")) from error
    return path


def sheet_file(paper: str = "A4", form: str = "svg") -> bytes:
    """The sheet as the content of a file.

    Parameters
    ----------
    paper : {"A4", "Letter"}
        The paper it is printed on.
    form : {"svg", "pdf"}
        Of the file.

    Returns
    -------
    bytes
        At true size.

    Raises
    ------
    InputError
        If the paper is another.
    """
    import matplotlib as mpl
    from matplotlib.figure import Figure

    sizes = {name.casefold(): size for name, size in PAPERS_MM.items()}
    if paper.casefold() not in sizes:
        raise InputError("paper", "one of " + ", ".join(PAPERS_MM), paper)
    wide, high = sizes[paper.casefold()]
    held = io.BytesIO()
    with mpl.rc_context({**TEXT_STYLE, "pdf.fonttype": 42}):
        figure = Figure(figsize=(wide / 25.4, high / 25.4))
        axes = figure.add_axes((0, 0, 1, 1))
        axes.set(xlim=(0, wide), ylim=(high, 0))
        axes.axis("off")
        _drawn(axes, wide, high)
        empty = {"Date": None, "Creator": None} if form == "svg" else {"CreationDate": None, "Creator": None}
        figure.savefig(held, format=form, metadata=empty)
    return held.getvalue()


def _drawn(axes: Axes, wide: float, high: float) -> None:
    left, right = _MARGIN, wide - _MARGIN
    _words(axes, left, 17, "Lines of a nib", 15, weight="bold")
    _words(
        axes,
        left,
        23,
        "Write on the pale guides, let it dry, scan flat at 600 dots an inch in greys, sharpening off.",
        8.5,
    )
    _boxes(axes, left, right, 29)
    y = 52.0
    _heading(axes, left, y, "Level lines, own weight of the pen")
    for row in range(4):
        _guide(axes, [left, right], [y + 6 + 6 * row] * 2)
    y += 31
    _heading(axes, left, y, "Ladder: each rung apart, one stroke down")
    for rung in range(24):
        foot = left + 3 + rung * (right - left - 6) / 23
        _guide(axes, [foot, foot - 3], [y + 3, y + 17])
    y += 24
    _rounds(axes, left, right, y)
    y += 31
    _pressed(axes, left, right, y)
    y += 33
    _heading(axes, left, y, "Fast, without stopping (skips show here)")
    x = np.linspace(left, right, 400)
    for row in range(2):
        _guide(axes, x, y + 8 + 11 * row + 3 * np.sin((x - left) / 4.5))
    _card_place(axes, left, high - 74)
    _bar(axes, left + 98, high - 26)
    _own_words(axes, left + 98, right, high - 72)


def _words(axes: Axes, x: float, y: float, words: str, size: float = 9.0, **more: Any) -> None:
    axes.text(x, y, words, fontsize=size, color=_DARK, va="baseline", **more)


def _heading(axes: Axes, x: float, y: float, words: str) -> None:
    _words(axes, x, y, words, 9.0, weight="bold")


def _guide(axes: Axes, x: Any, y: Any) -> None:
    axes.plot(x, y, color=_PALE, linewidth=0.5, linestyle=(0, (1, 3)))


def _boxes(axes: Axes, left: float, right: float, top: float) -> None:
    """Where nib, ink, paper and angle are written down."""
    step = (right - left) / 4
    for place, word in enumerate(
        ("pen and nib", "ink", "paper", "angle to paper, load", "date", "worked on?", "temperature, damp", "by")
    ):
        x, y = left + step * (place % 4), top + 9 * (place // 4)
        _words(axes, x, y + 2.5, word, 7.5)
        axes.plot([x, x + step - 4], [y + 7.5] * 2, color=_PALE, linewidth=0.6)


def _rounds(axes: Axes, left: float, right: float, y: float) -> None:
    _heading(axes, left, y, "Circles, then eights: round and round once")
    turn = np.linspace(0, 2 * np.pi, 200)
    middle = 0.5 * (left + right)
    for place in range(4):
        _guide(axes, left + 9 + 21 * place + 8 * np.cos(turn), y + 14 + 8 * np.sin(turn))
        _guide(axes, middle + 13 + 22.5 * place + 9 * np.sin(turn), y + 14 + 9 * np.sin(2 * turn) * 0.8)


def _pressed(axes: Axes, left: float, right: float, y: float) -> None:
    """Strokes that swell to a width that is drawn, so that nobody asks a nib for its utmost."""
    _heading(
        axes, left, y, "Light, a little pressed, light again: no more than the pale shape, never to the nib's limit"
    )
    x = np.linspace(left, right, 300)
    half = 0.2 + 0.25 * (0.5 - 0.5 * np.cos(2 * np.pi * (x - left) / (right - left) * 4))
    for row in range(3):
        level = y + 8 + 8 * row
        axes.fill_between(x, level - half, level + half, color=_PALE, alpha=0.6, linewidth=0)


def _card_place(axes: Axes, left: float, top: float) -> None:
    """Marks about the place of a card: none of them makes an outline that could be taken for one."""
    _heading(axes, left, top - 3, "Lay a bank card here for the scan")
    for x, out in ((left, 1), (left + 90, -1)):
        for y, down in ((top, 1), (top + 58, -1)):
            axes.plot([x, x + 6 * out], [y, y], color=_PALE, linewidth=1.2)
            axes.plot([x, x], [y, y + 6 * down], color=_PALE, linewidth=1.2)


def _bar(axes: Axes, left: float, y: float) -> None:
    """A bar of fields of ten millimetres, dark and empty in turn, dark at both ends; the dark alone is read as a scale."""
    high = FIELD_MM / FIELD_SHAPE
    for field in range(_FIELDS + 1):
        x = left + FIELD_MM * field
        if field < _FIELDS and field % 2 == 0:
            axes.fill_between([x, x + FIELD_MM], y, y + high, color=_DARK, linewidth=0)
        axes.text(
            x,
            y + high + 3.2,
            f"{FIELD_MM * field:.0f}" + (" mm" if field == _FIELDS else ""),
            fontsize=7,
            ha="center",
            color=_DARK,
        )
    _words(axes, left, y - 2, "Hold a ruler to it: was it printed at 100 %?", 7.5)


def _own_words(axes: Axes, left: float, right: float, top: float) -> None:
    _heading(axes, left, top, "A sentence of your own")
    for row in range(4):
        axes.plot([left, right], [top + 9 + 9 * row] * 2, color=_PALE, linewidth=0.5)
