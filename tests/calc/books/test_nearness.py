"""Two readings of one size lie within their combined uncertainty."""

import pytest

from pentools.calc.books.nearness import COVERAGE, near
from pentools.errors import InputError


@pytest.mark.parametrize(
    ("other", "distance", "within", "share"), [(7.70, 0.1, True, 1.0), (7.71, 0.11, False, 1.1), (7.5, -0.1, True, 1.0), (7.6, 0.0, True, 0.0)]
)  # fmt: skip
def test_the_edge_is_the_root_of_the_squares(other, distance, within, share):
    found = near(7.60, 0.03, other, 0.04)
    assert (found.distance, found.window, found.within, found.share) == (
        pytest.approx(distance), pytest.approx(0.1), within, pytest.approx(share),
    )  # fmt: skip
    assert COVERAGE == 2.0


@pytest.mark.parametrize(("one", "other"), [(0.0, 0.0), (-0.1, 0.2), (0.2, -0.1)])
def test_what_is_no_uncertainty_is_refused(one, other):
    with pytest.raises(InputError, match="above 0"):
        near(7.6, one, 7.6, other)
