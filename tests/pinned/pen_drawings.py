"""Where everything stands in the drawings of a pen, as it was last looked at: python tests/pinned/pen_drawings.py

Run it only after the drawings were looked at as pictures: what it writes is held against what is drawn from then on.
"""

from __future__ import annotations

import csv
from pathlib import Path

from figures.pen_reading import SVG, points, tree

from pentools.figures.pen.measure_here import measure_here
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.figures.pen.weigh_here import weigh_here
from pentools.figures.pen.zones import Zone, draw_zones
from pentools.systems.shape import PenShape

FILE = Path(__file__).with_suffix(".csv")
COLUMNS = ("drawing", "number", "what", "look", "x0", "y0", "x1", "y1")
MEASURED = PenShape("piston", bore_mm=8.4, stroke_mm=31.0, rod_mm=2.6, barrel_length_mm=71.0, barrel_diameter_mm=12.8)
MARKS = (("seals", "hard and split", "4 lost"), ("nib", "bent", "2 moderate"), ("clip", "tarnished at its end, all along one side and under it", "1 slight"))  # fmt: skip
ZONES = (Zone("plain", "barrel"), Zone("imprint", "barrel", 20.0, 41.0), Zone("threads", "cap-threads"))
_LOOK = (
    "fill",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "font-weight",
    "font-style",
    "text-anchor",
    "fill-opacity",
)


def drawings():
    """A name and a drawing each: every kind that the drawn pen has."""
    yield "section", draw_pen(PenShape("lever-sac"))
    yield "survey", draw_pen(PenShape("piston"), PenOptions(marks=MARKS))
    yield "brought out", draw_pen(PenShape("diaphragm-pump"), PenOptions(highlight=("diaphragm",), capped=True))
    shown = PenOptions(dimensions=("bore", "stroke", "rod", "barrel_length"), decimal_sign=",")
    yield "dimensions", draw_pen(MEASURED, shown)
    yield "narrow", draw_pen(PenShape("plunger-vacuum"), PenOptions(width_mm=80.0, labels=("washer", "rod"), show_title=False))  # fmt: skip
    yield "zones", draw_zones(PenShape("lever-sac", barrel_length_mm=70.0), ZONES, capped=False)
    yield "zones, capped", draw_zones(PenShape("piston"), (Zone("plain", "cap"), Zone("gold-filled", "cap-band")))
    for system, dimension in (("piston", "bore"), ("piston", "groove"), ("lever-sac", "barrel_depth"), ("lever-sac", "sac_length"), ("piston", "stroke"), ("lever-sac", "wall")):  # fmt: skip
        yield f"measure {dimension}", measure_here(system, dimension)
    yield "weigh", weigh_here("lever-sac", readings=("18.92 g", ""))


def _box(node):
    if node.tag in (f"{SVG}path", f"{SVG}polyline", f"{SVG}polygon"):
        corners = points(node)
        xs, ys = [x for x, _ in corners], [y for _, y in corners]
        return min(xs), min(ys), max(xs), max(ys)
    if node.tag == f"{SVG}circle":
        x, y, r = (float(node.get(name)) for name in ("cx", "cy", "r"))
        return x - r, y - r, x + r, y + r
    if node.tag == f"{SVG}rect":
        x, y, wide, high = (float(node.get(name)) for name in ("x", "y", "width", "height"))
        return x, y, x + wide, y + high
    return (float(node.get("x")), float(node.get("y"))) * 2


def places():
    """A row for the picture's size and for each element: what it is, how it looks, where it lies [mm on paper]."""
    for name, drawing in drawings():
        root = tree(drawing)
        prefix = root.get("aria-labelledby").split("-title")[0]
        size = [f"{float(v):.2f}" for v in root.get("viewBox").split()]
        yield (name, "0", drawing.title, "", *size)
        kept = [
            n
            for n in root.iter()
            if n.tag.removeprefix(SVG) in ("path", "polyline", "polygon", "circle", "rect", "text")
        ]
        for number, node in enumerate(kept, start=1):
            what = (
                node.get("data-part")
                or node.get("data-hatch")
                or node.get("data-leader")
                or node.get("data-dimension")
                or (node.text or "")
            )
            look = " ".join(node.get(key, "") for key in _LOOK).replace(prefix, "").strip()
            yield (name, str(number), f"{node.tag.removeprefix(SVG)} {what}".strip(), look, *(f"{v + 0.0:.2f}" for v in _box(node)))  # fmt: skip


def main() -> None:
    with FILE.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(COLUMNS)
        writer.writerows(places())


if __name__ == "__main__":
    main()
