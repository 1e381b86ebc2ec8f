"""Reads a pen drawing back from its SVG text, for the tests beside this file."""

from __future__ import annotations

import itertools
import re
import xml.etree.ElementTree as ET

SVG = "{http://www.w3.org/2000/svg}"


def tree(drawing):
    root = ET.fromstring(drawing.svg)
    assert root.tag == f"{SVG}svg"
    return root


def texts(drawing):
    return ["".join(node.itertext()) for node in tree(drawing).iter(f"{SVG}text")]


def ids(drawing):
    return [node.get("id") for node in tree(drawing).iter() if node.get("id")]


def points(node):
    raw = node.get("d") or node.get("points")
    numbers = [float(v) for v in re.findall(r"-?\d+\.?\d*", raw)]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def extent(drawing, part):
    """Box of a part: x0, y0, x1, y1 on paper."""
    found = [p for node in tree(drawing).iter(f"{SVG}path") if node.get("data-part") == part for p in points(node)]
    return min(x for x, _ in found), min(y for _, y in found), max(x for x, _ in found), max(y for _, y in found)


def boxes(drawing):
    found = {}
    for node in tree(drawing).iter(f"{SVG}g"):
        if node.get("data-label"):
            assert node.get("data-label") not in found
            found[node.get("data-label")] = [float(v) for v in node.get("data-box").split()]
    return found


def overlapping(drawing):
    return [
        (one, two)
        for (one, a), (two, b) in itertools.combinations(boxes(drawing).items(), 2)
        if min(a[2], b[2]) - max(a[0], b[0]) > 0.01 and min(a[3], b[3]) - max(a[1], b[1]) > 0.01
    ]


def leaders(drawing):
    return {
        node.get("data-leader"): points(node)
        for node in tree(drawing).iter(f"{SVG}polyline")
        if node.get("data-leader")
    }


def crossing(drawing):
    """Pairs of leaders that cross."""
    found = []
    for (one, a), (two, b) in itertools.combinations(leaders(drawing).items(), 2):
        for p, q in itertools.pairwise(a):
            for r, s in itertools.pairwise(b):
                if _turn(p, q, r) * _turn(p, q, s) < -1e-9 and _turn(r, s, p) * _turn(r, s, q) < -1e-9:
                    found.append((one, two))
    return found


def through_labels(drawing):
    """Leaders that run through the words of another label."""
    found = []
    for name, line in leaders(drawing).items():
        for other, (x0, y0, x1, y1) in boxes(drawing).items():
            for (xa, ya), (xb, yb) in itertools.pairwise(line):
                for step in range(41):
                    x, y = xa + (xb - xa) * step / 40, ya + (yb - ya) * step / 40
                    if other != name and x0 < x < x1 and y0 + 0.2 < y < y1 - 0.2:
                        found.append((name, other))
    return sorted(set(found))


def _turn(a, b, c):
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
