"""Heat on a feed: the strictest of feed, section and nipple wins."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.nib.setting import Neighbour, feed_window
from pentools.errors import InputError

SOFT = (70.0, 80.0)


def window(*limits, soft=SOFT):
    return feed_window("hard rubber", soft, 97.0, [Neighbour(f"part {n}", "stuff", c) for n, c in enumerate(limits)])


@pytest.mark.parametrize(
    ("limits", "kind", "high", "part"),
    [
        ((), "open", 97, None), ((90.0,), "open", 90, "part 0"), ((90.0, 75.0), "open", 75, "part 1"),
        ((120.0,), "open", 97, None), ((60.0, 90.0), "none", 60, "part 0"), ((70.0,), "none", 70, "part 0"),
        ((90.0, None), "none", None, "part 1"),
    ],
)  # fmt: skip
def test_the_strictest_wins(limits, kind, high, part):
    found = window(*limits)
    assert (found.kind, found.low_c, found.high_c) == (kind, 70, high)
    assert (found.strictest and found.strictest.part) == part
    assert found.findings[0].level == ("note" if kind == "open" else "stop")


def test_a_feed_of_anything_else_is_not_set_by_heat():
    found = window(90.0, soft=None)
    assert (found.kind, found.low_c, found.high_c, found.strictest) == ("never", None, None, None)
    assert found.too_hot(20.0)


@given(st.lists(st.one_of(st.none(), st.floats(20, 130)), max_size=4), st.floats(15, 130))
def test_no_neighbour_is_ever_past_its_limit(limits, surface):
    found = window(*limits)
    if not found.too_hot(surface):
        assert all(limit is not None and surface <= limit for limit in limits)
        assert surface <= 97


@given(st.lists(st.floats(20, 130), max_size=4), st.floats(20, 130))
def test_one_more_neighbour_never_widens_the_window(limits, other):
    fewer, more = window(*limits), window(*limits, other)
    assert not (fewer.kind != "open" and more.kind == "open")
    if more.kind == "open":
        assert more.high_c <= fewer.high_c


@pytest.mark.parametrize("soft", [(80.0, 70.0), (70.0, 98.0)])
def test_a_softening_that_makes_no_sense_is_refused(soft):
    with pytest.raises(InputError):
        window(soft=soft)
