"""Soak clocks: where a soak stands, and what is said of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.treatment.soak import Soak, soak_clock
from pentools.errors import InputError


@pytest.mark.parametrize(
    ("limit", "seconds", "phase", "level"),
    [(5, 0, "running", "ok"), (5, 239, "running", "ok"), (5, 240, "nearly up", "warning"), (5, 300, "over", "stop"), (0, 0, "not allowed", "stop"), (None, 9e4, "no limit on record", "warning")],
)  # fmt: skip
def test_soak(limit, seconds, phase, level):
    state = soak_clock(Soak("section", 1000, limit), 1000 + seconds)
    assert (state.phase, state.finding.level) == (phase, level)


@given(st.floats(0, 1e6), st.floats(0.1, 1440), st.floats(0, 1e5))
def test_elapsed_and_left_make_the_limit(start, limit, passed):
    state = soak_clock(Soak("part", start, limit), start + passed)
    assert state.elapsed_min + state.left_min == pytest.approx(limit)
    assert state.due_s == pytest.approx(start + 60 * limit)


def test_a_clock_set_back_and_other_nonsense():
    with pytest.raises(InputError, match="clock"):
        soak_clock(Soak("part", 100, 5), 99)
    with pytest.raises(InputError):
        soak_clock(Soak("part", 0, -1), 1)
    with pytest.raises(InputError):
        soak_clock(Soak("part", 0, 1), 1, warn_share=2)


@pytest.mark.parametrize(
    ("limit", "minutes", "said"),
    [(5, 2, "section: 3 min left of 5."), (5, 4.5, "section: 0.5 min left of 5."), (1440, 1441, "section: 1 min over its limit of 1440 min. Take it out"), (0, 1, "must not be soaked"), (None, 90, "90 min in. No limit")],
)  # fmt: skip
def test_the_clock_in_words(limit, minutes, said):
    assert said in soak_clock(Soak("section", 0, limit), 60 * minutes).finding.text


@pytest.mark.parametrize("share", [0, 1])
def test_the_warning_may_come_at_once_or_never(share):
    state = soak_clock(Soak("section", 0, 10), 300, warn_share=share)
    assert state.phase == ("nearly up" if share == 0 else "running")
    with pytest.raises(InputError):
        soak_clock(Soak("section", 0, 10), 300, warn_share=1.01 if share else -0.01)


def test_the_figures_of_a_state():
    state = soak_clock(Soak("section", 60, 10), 240)
    assert (state.part, state.elapsed_min, state.left_min, state.due_s) == ("section", 3, 7, 660)
    free = soak_clock(Soak("section", 60, None), 240)
    assert (free.left_min, free.due_s) == (None, None)
    assert soak_clock(Soak("section", 60, 0), 60).left_min == 0
