"""Words, lines and parts stand where they stood when the drawings were last looked at; the first few that moved are named."""

import csv

import pytest
from pinned.pen_drawings import COLUMNS, FILE, places


def test_drawings_are_as_they_were_last_looked_at():
    with FILE.open(encoding="utf-8", newline="") as file:
        header, *rows = csv.reader(file)
    assert tuple(header) == COLUMNS
    kept = {tuple(row[:2]): row[2:] for row in rows}
    drawn = {row[:2]: list(row[2:]) for row in places()}
    moved = [
        f"{key[0]} {key[1]}: {now[0]}"
        for key, now in drawn.items()
        if kept.get(key, [""] * 6)[:2] != now[:2]
        or [float(v) for v in now[2:]] != pytest.approx([float(v) for v in kept[key][2:]], abs=0.02)
    ]
    gone = sorted(set(kept) - set(drawn))
    assert (moved[:5], gone[:5]) == ([], []), "look at them as pictures, then run python tests/pinned/pen_drawings.py"
