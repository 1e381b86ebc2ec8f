"""Cuts across a stroke and their edges."""

import numpy as np
import pytest
from drawn_lines import bar, chains, level_line, page, whole

from pentools.calc.nib.profiles import STEP, Cuts, cut_across, edges_of, lines_along, recentred


def test_points_are_even_and_reach_past_the_ends():
    lines = lines_along(level_line(), 1.5, 4.0)
    assert np.diff(lines.points[:, 0]) == pytest.approx(lines.step[0], abs=1e-6)
    assert lines.step[0] == pytest.approx(1.5, abs=0.01)
    assert lines.points[0, 0] == pytest.approx(40 - 6.5 - 4, abs=0.1)
    assert abs(lines.normals[:, 1]) == pytest.approx(1.0)


def test_a_ring_gets_nothing_past_its_end():
    turn = np.linspace(0, 2 * np.pi, 300)
    lines = lines_along(
        chains(np.stack([100 + 60 * np.cos(turn), 100 + 60 * np.sin(turn)], axis=1), closed=True), 1.5, 4.0
    )
    assert np.linalg.norm(lines.points - 100, axis=1) == pytest.approx(60, abs=0.8)
    radial = (lines.points - 100) / np.linalg.norm(lines.points - 100, axis=1, keepdims=True)
    assert np.abs((radial * lines.normals).sum(axis=1))[20:-20].min() > 0.999


def test_a_cut_finds_the_edges_of_a_bar():
    lines = lines_along(level_line(), 2.0, 0.0)
    rows = np.arange(20, 200)
    cuts = cut_across(whole(bar(page(), 121.3, 500)), np.full(len(lines.points), 0.8 * 65535), lines, rows, 20)
    assert cuts.ink.shape == (180, 81)
    assert cuts.first == -20
    low, high, found = edges_of(cuts, np.full(180, 0.475))
    assert found.all()
    width = 500 * 600 / 25400
    assert np.median(high - low) == pytest.approx(width, abs=0.1)
    middle = np.median(high + low) / 2
    assert abs(middle) == pytest.approx(1.3, abs=0.05)
    moved = recentred(lines, np.full(len(lines.points), middle), np.ones(len(lines.points), bool))
    assert np.median(moved.points[:, 1]) == pytest.approx(121.3, abs=0.06)


def test_ink_to_the_end_of_a_cut_and_a_bare_middle_are_not_found():
    ink = np.zeros((2, 21), np.float32)
    ink[0, 5:] = 1.0
    *_, found = edges_of(Cuts(ink, -10 * STEP), np.array([0.5, 0.5]))
    assert not found.any()
