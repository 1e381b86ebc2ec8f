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
    assert step.findings[0].text.endswith(
        "between 8.10 mm (too small) and 8.30 mm (too stiff): cut or order about 8.20 mm."
    )
    assert "above 8.30" in next_trial_size((8.1, 8.3), [Trial(8.3, "no touch")]).findings[0].text
    assert "below 8.10" in next_trial_size((8.1, 8.3), [Trial(8.1, "too stiff")]).findings[0].text


def test_contradicting_trials_are_said_and_nothing_is_proposed():
    step = next_trial_size(SIZES, [Trial(8.3, "too stiff"), Trial(8.6, "no touch")])
    assert step.next_mm is None
    assert step.findings[0].text.startswith("8.30 mm was “too stiff”, yet the larger 8.60 mm was “no touch”.")


def test_a_size_not_in_stock_counts_as_tried():
    step = next_trial_size((8.1, 8.2, 8.3, 8.4), [Trial(8.25, "slides, no suction")])
    assert step.next_mm == 8.3
    assert (step.too_small_mm, step.left) == (8.25, 2)


def test_of_two_middle_sizes_the_smaller_is_tried():
    assert [next_trial_size(SIZES[:n], []).next_mm for n in (1, 2, 3, 4, 5)] == [8.0, 8.0, 8.1, 8.1, 8.2]
    # as near to the calculation's best on either side: the smaller
    assert next_trial_size((8.0, 8.5), [], start_mm=8.25).next_mm == 8.0
    # once something was tried the bracket decides
    assert next_trial_size(SIZES, [Trial(8.0, "no touch")], start_mm=9.5).next_mm == 8.8


def test_the_smallest_that_held_and_the_bracket_are_told():
    step = next_trial_size(
        SIZES, [Trial(8.2, "no touch"), Trial(8.6, "pulls back"), Trial(8.5, "pulls back"), Trial(9.0, "too stiff")]
    )
    assert (step.held_mm, step.too_small_mm, step.too_large_mm, step.left, step.next_mm) == (8.5, 8.2, 9.0, 0, None)
    assert (step.findings[0].level, "8.50" in step.findings[0].text) == ("ok", True)
    narrowed = next_trial_size(
        SIZES, [Trial(8.2, "no touch"), Trial(8.1, "no touch"), Trial(9.0, "too stiff"), Trial(9.2, "too stiff")]
    )
    assert (narrowed.too_small_mm, narrowed.too_large_mm, narrowed.left, narrowed.next_mm) == (8.2, 9.0, 7, 8.6)
    assert narrowed.findings[0].level == "note"
    # a size within half a thousandth of what was tried is that size
    assert next_trial_size((8.1004, 8.2), [Trial(8.1, "no touch")]).next_mm == 8.2
    assert next_trial_size((8.101, 8.2), [Trial(8.1, "no touch")]).left == 2
    assert next_trial_size((8.1, 8.1996), [Trial(8.2, "too stiff")]).left == 1
    # one size tried twice may go both ways by a hair, and contradicts nothing
    assert next_trial_size(SIZES, [Trial(8.3, "no touch"), Trial(8.3, "no touch")]).findings[0].topic == "next"


def test_refusals():
    with pytest.raises(InputError, match="at least one size"):
        next_trial_size((), [])
    with pytest.raises(InputError, match="no touch"):
        next_trial_size(SIZES, [Trial(8.1, "fine")])
    assert set(OUTCOMES.values()) == {-1, 0, 1}
