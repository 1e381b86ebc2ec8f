"""Every pen is drawn as it was last looked at; what changed is named part by part."""

import csv

import pytest
from pinned.pen_shapes import COLUMNS, FILE, shapes


def test_pens_are_drawn_as_they_were_last_looked_at():
    with FILE.open(encoding="utf-8", newline="") as file:
        header, *rows = csv.reader(file)
    assert tuple(header) == COLUMNS
    kept = {tuple(row[:3]): row[3:] for row in rows}
    drawn = {row[:3]: list(row[3:]) for row in shapes()}
    assert set(drawn) == set(kept)
    changed = [
        key
        for key, figures in drawn.items()
        if figures[0] != kept[key][0]
        or [float(v) for v in figures[1:]] != pytest.approx([float(v) for v in kept[key][1:]], abs=0.0015)
    ]
    assert changed == [], "look at them as pictures, then run python tests/pinned/pen_shapes.py"
