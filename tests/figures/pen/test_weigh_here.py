"""The balance with the pen on it, twice, and what was read."""

import pytest
from figures.pen_reading import SVG, points, texts, tree

from pentools.errors import InputError
from pentools.figures.pen.weigh_here import weigh_here


def test_the_balance_shows_what_was_read_or_that_nothing_was():
    drawing = weigh_here("lever-sac", readings=("18.92 g", ""))
    assert "18.92 g" in texts(drawing)
    assert "Empty: 18.92 g." in drawing.alt
    assert "Filled: not weighed yet." in drawing.alt
    with pytest.raises(InputError):
        weigh_here("rocket")


def test_both_steps_stand_side_by_side_on_one_level():
    root = tree(weigh_here("lever-sac", readings=("18.92 g", "20.11 g"), width_mm=120.0))
    read = {"".join(n.itertext()): (float(n.get("x")), float(n.get("y"))) for n in root.iter(f"{SVG}text")}
    (x0, y0), (x1, y1) = read["18.92 g"], read["20.11 g"]
    assert y0 == y1
    assert (x0, x1) == (30.0, 90.0)  # the middles of two columns of 60 mm
    plates = [points(n) for n in root.iter(f"{SVG}polygon")]
    pans = [p for p in plates if max(y for _, y in p) - min(y for _, y in p) < 2.0]
    assert len(pans) == 2
    for pan, middle in zip(pans, (30.0, 90.0), strict=True):
        assert 0.5 * (min(x for x, _ in pan) + max(x for x, _ in pan)) == pytest.approx(middle)
        assert max(x for x, _ in pan) - min(x for x, _ in pan) == pytest.approx(60.0 - 10.0)


def test_nothing_stands_outside_the_picture():
    root = tree(weigh_here("diaphragm-pump", readings=("18.92 g", "20.11 g"), width_mm=100.0))
    _, _, width, height = (float(v) for v in root.get("viewBox").split())
    for node in [*root.iter(f"{SVG}path"), *root.iter(f"{SVG}polygon")]:
        assert all(0.0 <= x <= width and 0.0 <= y <= height for x, y in points(node))


def test_a_width_that_no_page_has_is_refused():
    with pytest.raises(InputError, match="60 to 200 mm"):
        weigh_here("piston", readings=("", ""), width_mm=40.0)
