"""Charts in one style: a finding as the title, direct labels, thin axes, text kept as text in the SVG."""

from __future__ import annotations

import io
import itertools
import re
from html import escape
from typing import TYPE_CHECKING, Any, Literal

from pentools.figures.drawing import Drawing
from pentools.figures.hatching import TEXTURES, hatch_path

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

__all__ = [
    "BRASS",
    "INK",
    "JADE",
    "OXBLOOD",
    "PAPER",
    "RULE",
    "SLATE",
    "TEXT_STYLE",
    "head",
    "new_chart",
    "say",
    "texture",
    "to_drawing",
]

INK, BRASS, JADE, OXBLOOD = "#1f3a5f", "#8f6614", "#2a7565", "#8c2f39"
SLATE, PAPER, RULE = "#5b6670", "#fbfaf6", "#d9d5c8"

TEXT_STYLE: dict[str, Any] = {"svg.fonttype": "none", "svg.hashsalt": "pentools", "font.family": ["sans-serif"]}
"""What keeps text as text and a file the same from one writing to the next; the printed sheet has it too."""
_STYLE: dict[str, Any] = {
    **TEXT_STYLE,
    "font.size": 9.0,
    "axes.titlesize": 10.5,
    "axes.titleweight": "bold",
    "axes.titlecolor": INK,
    "axes.labelcolor": SLATE,
    "axes.edgecolor": SLATE,
    "axes.linewidth": 0.6,
    "xtick.color": SLATE,
    "ytick.color": SLATE,
    "xtick.major.width": 0.6,
    "ytick.major.width": 0.6,
    "figure.facecolor": "none",
    "axes.facecolor": "none",
    "savefig.facecolor": "none",
}
_numbers = itertools.count(1)
_MM_PER_INCH = 25.4
_PT_PER_MM = 72.0 / _MM_PER_INCH
_HATCHED = re.compile(r'<g id="hatched-([a-z-]+)-\d+">\s*<path d="([^"]+)"([^>]*?)style="([^"]*)"/>')
_SIDE_MM, _LABELS_MM, _TITLE_MM = 3.0, 12.0, 7.5


def new_chart(width_mm: float = 160.0, height_mm: float = 60.0, *, bars_only: bool = False) -> tuple[Figure, Axes]:
    """A figure with one set of axes in the kit's style.

    Parameters
    ----------
    width_mm, height_mm : float
        Size as printed [mm].
    bars_only : bool
        True for lying bars with their words beside them, nothing at the left axis, one line of title and one of label:
        then the margins are known, which spares the measuring of every word (a third of the time of a chart).

    Returns
    -------
    figure, axes
        Without frame; only the bottom and left axis are drawn.
    """
    import matplotlib as mpl
    from matplotlib.figure import Figure

    with mpl.rc_context(_STYLE):
        layout: Literal["constrained"] | None = None if bars_only else "constrained"
        figure = Figure(figsize=(width_mm / _MM_PER_INCH, height_mm / _MM_PER_INCH), layout=layout)
        axes = figure.add_subplot()
        if bars_only:
            figure.subplots_adjust(
                left=_SIDE_MM / width_mm,
                right=1 - _SIDE_MM / width_mm,
                bottom=_LABELS_MM / height_mm,
                top=1 - _TITLE_MM / height_mm,
            )
    axes.spines[["top", "right"]].set_visible(False)
    return figure, axes


def head(axes: Axes, title: str, *, above: float | None = None) -> None:
    """Set the finding over a chart, from its left edge."""
    axes.set_title(title, loc="left", x=0, color=INK, fontweight="bold", fontsize=10.5, pad=above)


def texture(name: str) -> dict[str, Any]:
    """What a bar is handed so that it is hatched in its own colour.

    Parameters
    ----------
    name : str
        Key of `pentools.figures.hatching.TEXTURES`; the chart's own hatches would become pictures in print.

    Returns
    -------
    dict of str to object
        Keyword arguments of a bar without a fill.
    """
    return {"gid": f"hatched-{name}-{next(_numbers)}", "facecolor": "none"}


def say(
    axes: Axes, words: str, at: tuple[float, float], *, colour: str = INK, right: float = 0.0, up: float = 0.0
) -> None:
    """Set words beside a point of a chart: to the right of it, or centred over or under it.

    Parameters
    ----------
    axes : Axes
        Of the chart.
    words : str
        What is said.
    at : (float, float)
        The point, in the chart's own units.
    colour : str
        Of the words.
    right, up : float
        How far beside the point [pt]; words that are only moved up or down are centred on it.
    """
    place = {"va": "center"} if right else {"ha": "center", "va": "bottom" if up >= 0 else "top", "fontsize": 9}
    axes.annotate(words, at, xytext=(right, up), textcoords="offset points", color=colour, **place)


def to_drawing(figure: Figure, title: str, alt: str, width_mm: float = 160.0) -> Drawing:
    """A figure as a drawing with its own ids and its words for those who cannot see it.

    Parameters
    ----------
    title : str
        The finding, as a sentence.
    alt : str
        The finding with its numbers.
    width_mm : float
        Printed width [mm].

    Returns
    -------
    Drawing
        Inline SVG.
    """
    import matplotlib as mpl

    held = io.StringIO()
    with mpl.rc_context(_STYLE):
        figure.savefig(held, format="svg", metadata={"Date": None, "Creator": None, "Format": None, "Type": None})
    text = held.getvalue()
    text = text[text.index("<svg") :]
    text = re.sub(r"<metadata>.*?</metadata>", "", text, flags=re.DOTALL)
    text = _HATCHED.sub(_with_lines, text)
    # every chart gets ids of its own, so that several can stand on one page
    mark = f"c{next(_numbers)}-"
    text = re.sub(r'\bid="([^"]+)"', rf'id="{mark}\1"', text)
    text = re.sub(r'(xlink:href|href)="#([^"]+)"', rf'\1="#{mark}\2"', text)
    text = re.sub(r"url\(#([^)]+)\)", rf"url(#{mark}\1)", text)
    # letters were set out with a wider face than the one that is shown, so nothing can run over
    text = re.sub(r"'?DejaVu Sans'?", "Helvetica, Arial", text)
    opening_end = text.index(">") + 1
    size = re.search(r'viewBox="([^"]+)"', text[:opening_end])
    assert size is not None
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="{width_mm:g}mm" '
        f'viewBox="{size.group(1)}" role="img" aria-labelledby="{mark}title {mark}desc">'
        f'<title id="{mark}title">{escape(title)}</title><desc id="{mark}desc">{escape(alt)}</desc>'
    )
    return Drawing(opening + text[opening_end:].strip(), title, alt, width_mm)


def _with_lines(found: re.Match[str]) -> str:
    """A bar with its hatching under its edge."""
    name, outline, rest, style = found.groups()
    numbers = [float(text) for text in re.findall(r"-?\d+(?:\.\d+)?", outline)]
    corners = list(zip(numbers[::2], numbers[1::2], strict=True))
    look = TEXTURES[name]
    colour = re.search(r"stroke: (#[0-9a-f]{6})", style)
    lines = hatch_path(corners, look, _PT_PER_MM)
    drawn = f"fill: none; stroke: {colour[1] if colour else look.colour}; stroke-width: {look.width * _PT_PER_MM:.2f}"
    ends = "; stroke-linecap: round" if look.round_ends else ""
    hatching = f'<path d="{lines}"{rest}style="{drawn}{ends}"/>\n' if lines else ""
    return f'<g>{hatching}<path d="{outline}"{rest}style="{style}"/>'
