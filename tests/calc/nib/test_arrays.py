"""Runs end to end: nothing of one reaches into the next."""

import numpy as np

from pentools.calc.nib.arrays import grow, run_bounds, run_ids, running_mean, runs_of

BOUNDS = run_bounds(np.array([4, 1, 5]))


def test_means_stay_in_their_run():
    values = np.array([1.0, 1, 1, 1, 50, 2, 2, 2, 2, 2])
    assert running_mean(values, BOUNDS, 3).tolist() == values.tolist()
    assert np.allclose(running_mean(np.arange(10.0), BOUNDS, 2), np.arange(10.0))  # a slope is kept to its ends
    assert running_mean(np.array([0.0, 3, 0]), run_bounds(np.array([3])), 1).tolist() == [0, 1, 0]


def test_rows_are_averaged_column_by_column():
    rows = np.array([[0.0, 10], [3, 10], [0, 10]])
    assert running_mean(rows, run_bounds(np.array([3])), 1)[1].tolist() == [1, 10]


def test_flags_grow_within_their_run():
    flags = np.zeros(10, bool)
    flags[[3, 5]] = True
    assert np.nonzero(grow(flags, BOUNDS, 1))[0].tolist() == [2, 3, 5, 6]


def test_runs():
    assert runs_of(np.zeros(3, bool)) == []
    assert runs_of(np.ones(3, bool)) == [(0, 3)]
    assert run_ids(BOUNDS).tolist() == [0] * 4 + [1] + [2] * 5
