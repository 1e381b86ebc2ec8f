"""How long a joint waits: by what was put on, the longest where that is not known."""

import pytest

from pentools import tables
from pentools.calc.closing.clock import CureRow, cure_of
from pentools.errors import InputError
from pentools.record.stages.seal.kinds import SEALANTS

ROWS = tables.read(CureRow, "cure_times")


def test_each_has_its_own_wait_and_an_unknown_one_the_longest():
    assert cure_of("shellac", "test", ROWS).proposed_h == 8
    assert cure_of("shellac", "ink", ROWS).proposed_h == 24
    assert cure_of("silicone", "test", ROWS).proposed_h == 24
    assert cure_of("rosin", "test", ROWS).proposed_h == 0
    assert cure_of("pitch", "test", ROWS).sealant == "silicone"
    with pytest.raises(InputError, match="waited for"):
        cure_of("shellac", "supper", ROWS)


def test_every_sealant_of_the_bench_that_sets_has_a_wait_for_test_and_ink():
    for key, _ in SEALANTS:
        found = {row.moment for row in ROWS if row.sealant == key}
        assert {"test", "ink"} <= found or key == "none", key


def test_waits_are_in_order_and_ink_never_comes_before_the_test():
    for row in ROWS:
        assert 0 <= row.low_h <= row.proposed_h <= row.high_h, row
    for key in {row.sealant for row in ROWS}:
        assert cure_of(key, "ink", ROWS).proposed_h >= cure_of(key, "test", ROWS).proposed_h
