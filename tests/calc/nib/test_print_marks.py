"""Print against strokes."""

import numpy as np

from pentools.calc.nib.print_marks import look_for_print

UM = 84.7


def marks(foot):
    mask = np.zeros((900, 1200), bool)
    draw = np.random.default_rng(6)
    for row in range(8):
        for place in range(30):
            bottom = 100 + row * 90 + round(foot * draw.normal())
            high = int(draw.integers(20, 34))
            mask[bottom - high : bottom, 40 + place * 36 : 44 + place * 36] = True
            mask[bottom - 4 : bottom, 40 + place * 36 : 58 + place * 36] = True
    return mask


def test_feet_in_even_rows_are_print():
    found = look_for_print(marks(0), UM)
    assert (found.count, found.printed) == (240, True)


def test_a_hand_s_letters_and_a_few_marks_are_not():
    assert not look_for_print(marks(9), UM).printed
    few = marks(0)
    few[:, 200:] = False
    assert not look_for_print(few, UM).printed
    assert look_for_print(np.zeros((50, 50), bool), UM).count == 0
