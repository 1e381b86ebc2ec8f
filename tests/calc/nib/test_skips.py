"""Ends and gaps along a stroke."""

import numpy as np
import pytest
from drawn_lines import bar, level_line, page, whole

from pentools.calc.nib.edge_model import normal_share
from pentools.calc.nib.profiles import lines_along
from pentools.calc.nib.skips import core_along, gaps_in, inked_span

ALONG = np.arange(0, 200, 0.5)


def share(*gaps, blur=1.0, left=0.0):
    ink = normal_share((ALONG - 20) / blur) - normal_share((ALONG - 180) / blur)
    for start, end in gaps:
        ink = ink - (1 - left) * (normal_share((ALONG - start) / blur) - normal_share((ALONG - end) / blur))
    return ink


def test_ends_lie_where_ink_falls_to_half():
    assert inked_span(ALONG, share()) == pytest.approx((20, 180), abs=0.02)
    assert inked_span(ALONG, np.zeros(len(ALONG))) is None
    assert inked_span(ALONG, np.ones(len(ALONG))) == (0, ALONG[-1])


@pytest.mark.parametrize("length", [2.4, 5.0, 20.0])
@pytest.mark.parametrize("blur", [0.8, 1.2])
def test_an_empty_gap_has_the_length_of_its_missing_ink(length, blur):
    (gap,) = gaps_in(ALONG, share((90, 90 + length), blur=blur), (20, 180), blur)
    assert gap.empty
    assert gap.length == pytest.approx(length, abs=0.15)
    assert 0.5 * (gap.start + gap.end) == pytest.approx(90 + length / 2, abs=0.1)


def test_a_pale_place_is_no_gap():
    (gap,) = gaps_in(ALONG, share((90, 110), left=0.35), (20, 180), 1.0)
    assert not gap.empty
    assert gaps_in(ALONG, share((90, 110), left=0.7), (20, 180), 1.0) == ()


def test_the_core_of_a_bar_is_its_ink():
    lines = lines_along(level_line(), 2.0, 6.0)
    light = bar(page(), 120, 500, start=60, end=500)
    core = core_along(whole(light), np.full(len(lines.points), 0.8 * 65535), lines)
    first = lines.points[0, 0]
    span = inked_span(core.along, core.ink / 0.95)
    assert np.array(span) + first == pytest.approx([60, 500], abs=0.1)
    assert core.ink[200:600] == pytest.approx(0.95, abs=0.01)
