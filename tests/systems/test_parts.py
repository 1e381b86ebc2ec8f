"""Parts in trade words, and where a part named in general words is shown."""

import pytest

from pentools.errors import InputError
from pentools.systems.parts import CAP_PARTS, PART_NAMES, drawn_part, part_name, parts_of
from pentools.systems.registry import SYSTEMS


def test_the_caps_parts_come_first_and_can_be_left_out():
    assert parts_of("capillary")[:4] == CAP_PARTS == ("cap", "clip", "cap-band", "inner-cap")
    assert parts_of("capillary", cap=False) == (
        "nib", "feed", "section", "barrel", "cap-threads", "capillary-cell", "vent",
    )  # fmt: skip


def test_no_trade_name_is_of_a_part_that_no_pen_has():
    assert set(PART_NAMES) == {part for system in SYSTEMS for part in parts_of(system)}


@pytest.mark.parametrize(
    ("system", "part", "shown"),
    [
        ("piston", "seals", "head-seal"), ("lever-sac", "seals", "sac"), ("plunger-vacuum", "seals", "washer"),
        ("bulb", "seals", "bulb"), ("diaphragm-pump", "filler", "plunger"), ("safety", "section", "nib-carrier"),
        ("piston", "section", "section"), ("syringe", "blind-cap", "end-cap"), ("lever-sac", "blind-cap", "barrel"),
        ("eyedropper", "filler", "section-joint"), ("bellows", "bands", "cap-band"), ("bulb", "whole", "barrel"),
        ("bulb", "imprint", "barrel"), ("bulb", "threads", "cap-threads"), ("piston", "spindle", "spindle"),
    ],
)  # fmt: skip
def test_general_words_are_shown_at_the_part_they_mean(system, part, shown):
    assert drawn_part(system, part) == shown


@pytest.mark.parametrize("call", [lambda: drawn_part("piston", "rocket"), lambda: drawn_part("piston", "sac")])
def test_a_part_the_pen_has_not_got_is_refused_with_those_it_has(call):
    with pytest.raises(InputError, match=r"a piston filler \(cap, clip"):
        call()


def test_trade_words():
    assert (part_name("pressure-bar"), part_name("converter")) == ("pressure bar", "converter or cartridge")
    with pytest.raises(InputError, match="rocket"):
        part_name("rocket")
