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
    mask = marks(0)
    mask[880:884, 30:1100] = True  # a long stroke stays
    found, printed = look_for_print(mask, UM)
    assert (found.count, found.printed, found.left_out) == (240, True, 240)
    assert (printed == (mask & (np.arange(900)[:, None] < 850))).all()


def test_a_hand_s_letters_and_a_few_marks_are_not():
    found, printed = look_for_print(marks(9), UM)
    assert not found.printed
    assert printed.sum() < 0.2 * marks(9).sum()
    few = marks(0)
    few[:, 200:] = False
    assert not look_for_print(few, UM)[0].printed
    assert not look_for_print(few, UM)[1].any()
    assert look_for_print(np.zeros((50, 50), bool), UM)[0].count == 0


def test_fields_of_the_sheet_s_bar_are_no_strokes():
    def page(step):
        mask = np.zeros((300, 1200), bool)
        for k in range(4):
            mask[100:124, 60 + step * k : 178 + step * k] = True  # 10 by 2 mm
        mask[200:224, 60:178] = True
        return mask

    assert look_for_print(page(236), UM)[0].left_out == 4
    assert not look_for_print(page(236), UM)[1][200:224].any()
    assert look_for_print(page(190), UM)[0].left_out == 0
