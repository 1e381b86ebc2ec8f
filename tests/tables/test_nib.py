"""The tables of nibs against themselves, and as they are read."""

import pytest

from pentools import tables
from pentools.errors import RecordError
from pentools.tables.nib import Figure, feels, figure, habits
from pentools.words import CERTAINTY


def test_what_a_tip_may_take_grows_with_how_it_feels():
    found = habits()
    assert [habit.feel for habit in found] == [key for key, _ in feels()] == ["a little toothy", "scratchy", "reshaped"]
    assert [habit.coarsest_um for habit in found] == sorted(habit.coarsest_um for habit in found)
    assert [habit.most_strokes for habit in found] == sorted(habit.most_strokes for habit in found)
    assert all(habit.check_every < habit.most_strokes and habit.finish_um <= habit.coarsest_um for habit in found)


def test_the_figures_are_in_order_and_say_how_sure_they_are():
    found = tables.read(Figure, "nib_figures")
    assert len({row.key for row in found}) == len(found)
    for row in found:
        ends = [end for end in (row.low, row.typical, row.high) if end is not None]
        assert ends, row.key
        assert ends == sorted(ends), row.key
        assert row.certainty in CERTAINTY, row.key


def test_one_figure_by_its_name():
    assert (figure("flex-most").typical, figure("cap-clearance").low, figure("gap-firm").unit) == (150, 0.5, "mm")
    with pytest.raises(RecordError, match="no figure"):
        figure("gap of a quill")
