"""Kinds of entry by the names they have on disk, for tests that go through many of them."""

from pentools.record.registry import find_stage


def kind_of(stage, key):
    return find_stage(stage).kind(key)
