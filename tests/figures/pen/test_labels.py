"""Labels beside a drawing: in order, apart, and with room for their tags."""

import pytest

from pentools.errors import InputError
from pentools.figures.pen.labels import Label, place_row, spread
from pentools.figures.pen.lettering import LINE_MM
from pentools.figures.pen.marks import TAG_MM, mark_of


def test_spread_keeps_order_and_distance_and_moves_as_little_as_it_can():
    places = spread([3.0, 3.5, 40.0], [6.0, 4.0, 2.0], 0.0, 60.0, 1.0)
    assert places == sorted(places)
    assert places[1] - places[0] >= 6.0 - 1e-9
    assert places[2] == 40.0
    assert places[0] >= 3.0


def label(key, x, **more):
    return Label(key, (key,), (x, -3.0), **more)


def test_labels_that_have_room_stand_over_their_points():
    placed, height = place_row([label("bore", 20.0), label("rod", 90.0)], 0.0, 120.0)
    assert [item.middle for item in placed] == pytest.approx([20.0, 90.0])
    assert {item.top for item in placed} == {3.4}
    assert height == pytest.approx(3.4 + LINE_MM)


def test_labels_too_many_for_a_row_are_broken_and_then_moved_outwards():
    names = [f"a long name {n}" for n in range(8)]
    placed, height = place_row([label(name, 10.0 + n) for n, name in enumerate(names)], 0.0, 70.0)
    assert sorted(item.label.key for item in placed) == sorted(names)
    assert len({item.top for item in placed}) > 1
    assert height > 3.4 + LINE_MM
    for one in placed:
        assert 0.0 <= one.left < one.right <= 70.0 + 1e-9


def test_more_than_five_rows_of_labels_are_refused():
    with pytest.raises(InputError, match="Name fewer parts"):
        place_row([label(f"a very long name of a part {n}", 5.0) for n in range(60)], 0.0, 60.0)


def test_tags_widen_a_label_and_raise_its_row():
    mark = mark_of(1, "sac", "hard", "3")
    plain, tagged = label("sac", 10.0), label("sac", 10.0, marks=(mark, mark))
    assert tagged.width_mm() - plain.width_mm() == pytest.approx(2 * TAG_MM)
    assert (plain.height_mm(), tagged.height_mm()) == (LINE_MM, TAG_MM)
    assert label("x", 0.0).narrowed().marks == ()
    assert tagged.narrowed().marks == (mark, mark)


def test_a_label_is_broken_at_its_longest_word():
    broken = Label("k", ("cap thread diameter",), (0.0, 0.0)).narrowed()
    assert broken.lines == ("cap", "thread", "diameter")


def test_spread_keeps_within_the_row():
    assert spread([], [], 0.0, 10.0) == []
    assert spread([0.0, 0.0], [4.0, 4.0], 0.0, 20.0, 1.0) == [2.0, 7.0]
    assert spread([19.0], [4.0], 0.0, 20.0) == [18.0]
