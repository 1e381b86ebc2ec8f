"""What every pen's drawing is made of, part by part, as it was last looked at: python tests/pinned/pen_shapes.py

Run it only after the pens were looked at as pictures: what it writes is held against what is drawn from then on.
"""

from __future__ import annotations

import csv
from pathlib import Path

from pentools.systems.assembly import anatomy_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of

FILE = Path(__file__).with_suffix(".csv")
COLUMNS = ("system", "shape", "part", "pieces", "x0", "y0", "x1", "y1", "area")
MEASURED = {
    "barrel_length_mm": 71.0, "barrel_diameter_mm": 13.1, "bore_mm": 9.3, "section_length_mm": 15.2, "nib_length_mm": 19.4,
    "rod_mm": 2.7, "sac_outside_mm": 7.1, "sac_length_mm": 43.0, "head_diameter_mm": 8.9, "breather_length_mm": 26.5,
}  # fmt: skip


def _area(points):
    following = [*points[1:], points[0]]
    return 0.5 * abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, following, strict=True)))


def shapes():
    """One row a part [mm, mm²]: how many pieces, their box, and what they cover; one where its name and each length is read."""
    for system in SYSTEMS:
        for shape, measured, capped in (("typical, capped", {}, True), ("measured, open", MEASURED, False)):
            anatomy = anatomy_of(system, proportions_of(PenShape(system, **measured)), capped=capped)[0]
            for part in dict.fromkeys(piece.part for piece in anatomy.pieces):
                own = [piece.points for piece in anatomy.pieces if piece.part == part]
                xs, ys = [x for points in own for x, _ in points], [y for points in own for _, y in points]
                figures = (min(xs), min(ys), max(xs), max(ys), sum(_area(points) for points in own))
                yield (system, shape, part, str(len(own)), *(f"{value + 0.0:.3f}" for value in figures))
            for part, (x, y) in anatomy.anchors.items():
                side = "fixed" if part in anatomy.fixed else "either side"
                yield (system, shape, f"name of {part}", side, *(f"{value + 0.0:.3f}" for value in (x, y, x, y, 0.0)))
            for name, span in anatomy.spans.items():
                ends = (*span.start, *span.end, span.size)
                yield (system, shape, f"length of {name}", "", *(f"{value + 0.0:.3f}" for value in ends))


def main() -> None:
    with FILE.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(COLUMNS)
        writer.writerows(shapes())


if __name__ == "__main__":
    main()
