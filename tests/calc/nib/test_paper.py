"""Paper under ink: its level, what is ink, which is darker."""

import numpy as np
import pytest
from drawn_lines import UM, bar, page

from pentools.calc.nib.paper import coarse_factor, read_paper


@pytest.mark.parametrize(("dpi", "factor"), [(300, 1), (600, 2), (1200, 4), (150, 1), (2400, 8)])
def test_the_coarse_page_is_at_least_so_fine(dpi, factor):
    assert coarse_factor(25400 / dpi) == factor


def test_uneven_light_is_no_ink():
    fall = np.linspace(1.0, 0.6, 600)[None, :]
    light = bar(page(), 120, 500) * fall
    paper = read_paper(light, UM)
    assert paper.level[20, 550] == pytest.approx(0.8 * fall[0, 550], rel=0.03)
    assert not paper.mask[:100].any()
    assert paper.mask[120, 60:540].all()
    assert not paper.light_on_dark


def test_a_blank_page_has_no_ink():
    noise = np.random.default_rng(3).normal(0, 0.01, (240, 600))
    paper = read_paper(page() + noise, UM)
    assert paper.typical_ink == 0
    assert not paper.mask.any()
    assert paper.noise == pytest.approx(0.0125, rel=0.1)


def test_chalk_on_a_board_is_turned_round():
    paper = read_paper(1.0 - bar(page(paper=0.95), 120, 500, ink=0.1), UM)
    assert paper.light_on_dark
    assert paper.mask[120, 60:540].all()


def test_what_is_taken_is_no_ink():
    taken = np.zeros((240, 600), bool)
    taken[100:140] = True
    assert not read_paper(bar(page(), 120, 500), UM, taken).mask.any()
