"""The stages as registered: each under its own key, in the order of the work."""

import pytest

from pentools.errors import InputError
from pentools.record.registry import STAGES, all_stages, find_stage


def test_each_stage_is_registered_under_its_own_key():
    assert [stage.key for stage in all_stages()] == list(STAGES)


def test_the_order_is_that_of_the_work():
    keys = [stage.key for stage in all_stages()]
    assert (keys[0], keys[-2:]) == ("intake", ["release", "posting"])
    for before, after in (("agree", "open"), ("open", "clean"), ("clean", "seal"), ("seal", "fill test")):
        assert keys.index(before) < keys.index(after)


def test_a_stage_that_is_not_there_is_answered_with_those_that_are():
    with pytest.raises(InputError, match=r"one of intake, identify, .*, posting: got “polish”"):
        find_stage("polish")
