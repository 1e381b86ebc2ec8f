"""A range that is taken up to its edges and no further."""

import math

import pytest

from pentools.errors import InputError


def refuses(call, *values):
    """Each value is refused in a sentence."""
    for value in values:
        with pytest.raises(InputError):
            call(value)


def takes_only(call, low, high, *, above=False):
    """`call` takes `low` (with `above` only what is above it) to `high`, and refuses what lies just beyond, and nan."""
    reach = 1e-6 * (high - low)
    call(low + reach if above else low)
    call(high)
    refuses(call, low if above else low - reach, high + reach, math.nan)
