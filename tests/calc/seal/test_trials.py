"""Trial fitting one size at a time."""

import math

import pytest

from pentools.calc.seal.trials import OUTCOMES, Trial, next_trial_size
from pentools.errors import InputError

SIZES = tuple(round(8.0 + 0.1 * i, 1) for i in range(16))


def outcome(size, right):
    return "pulls back" if abs(size - right) < 0.01 else "slides, no suction" if size < right else "too stiff"


@pytest.mark.parametrize("right", SIZES)
def test_every_size_is_found_in_few_trials(right):
    tried = []
    while (step := next_trial_size(SIZES, tried)).next_mm is not None:
        tried.append(Trial(step.next_mm, outcome(step.next_mm, right)))
        assert len(tried) <= math.ceil(math.log2(len(SIZES) + 1))
    assert step.held_mm == right


def test_it_starts_where_the_calculation_says():
    assert next_trial_size(SIZES, [], start_mm=8.42).next_mm == 8.4
    assert next_trial_size(SIZES, []).next_mm in SIZES


def test_nothing_left_between_says_what_to_cut():
    step = next_trial_size((8.1, 8.3), [Trial(8.1, "no touch"), Trial(8.3, "too stiff")])
    assert step.next_mm is None
    assert "about 8.20 mm" in step.findings[0].text
    assert "above 8.30" in next_trial_size((8.1, 8.3), [Trial(8.3, "no touch")]).findings[0].text
    assert "below 8.10" in next_trial_size((8.1, 8.3), [Trial(8.1, "too stiff")]).findings[0].text


def test_contradicting_trials_are_said_and_nothing_is_proposed():
    step = next_trial_size(SIZES, [Trial(8.3, "too stiff"), Trial(8.6, "no touch")])
    assert step.next_mm is None
    assert step.findings[0].topic == "contradiction"


def test_a_size_not_in_stock_counts_as_tried():
    step = next_trial_size((8.1, 8.2, 8.3, 8.4), [Trial(8.25, "slides, no suction")])
    assert step.next_mm == 8.3
    assert (step.too_small_mm, step.left) == (8.25, 2)


def test_refusals():
    with pytest.raises(InputError, match="at least one size"):
        next_trial_size((), [])
    with pytest.raises(InputError, match="no touch"):
        next_trial_size(SIZES, [Trial(8.1, "fine")])
    assert set(OUTCOMES.values()) == {-1, 0, 1}
