"""What the sums of seals ask: which option is needed, between what a reading is plausible, what is taken where it is not said."""

import pytest
from sums.asked import asked_of, without_usual

from pentools.sums.seal.knockout import KNOCKOUT
from pentools.sums.seal.rings import SEAL
from pentools.sums.seal.sac import SAC
from pentools.sums.seal.thread import THREAD
from pentools.sums.seal.washer import WASHER

ASKED = {
    "seal": (
        SEAL, set(),
        "bore:2-30 mm groove:0.5-28 mm width:0.5-15 mm head:1-30 mm rod:0.5-15 mm housing:2-25 mm guide:0.5-20 mm ovality:0-1 mm caliper:0-0.3 mm "
        "hardness:20-90",
        {
            "caliper": "0.03 mm", "duty": "hand-turned", "from": "as568", "hardness": "70",
            "meets": "water-based ink; silicone grease", "all": "no",
        },
    ),
    "sac": (
        SAC, {"barrel"},
        "barrel:3-16 mm nipple:1.5-14 mm depth:10-150 mm nipple_length:1-25 mm sac:2-16 mm number:5-40 wall:0.1-2 mm mouth:1-14 mm bar:0-3 mm before:2-16 mm",
        {"material": "latex", "pneumatic": "no"},
    ),
    "washer": (
        WASHER, {"bore", "rod"}, "bore:2-25 mm rod:0.5-24 mm backing:1-20 mm ovality:0-0.9 mm length:1-30 mm thickness:0.3-5 mm",
        {"kind": "flat", "thickness": "1.5 mm"},
    ),
    "thread": (
        THREAD, set(), "pitch:0.05-6 mm crests:0.2-60 mm over:1-60 major:0.2-60 mm angle:30-90 deg starts:1-12 caliper:0.001-0.3 mm",
        {"over": "10", "caliper": "0.03 mm"},
    ),
    "knockout": (
        KNOCKOUT, {"tail", "shoulder", "bore"},
        "tail:0-8 mm shoulder:0.5-14 mm bore:1-15 mm depth:0-60 mm front:1-16 mm section:3-20 mm clearance:0.02-1 mm", {"clearance": "0.10 mm"},
    ),
}  # fmt: skip


@pytest.mark.parametrize("key", ASKED)
def test_what_is_asked(key):
    chosen, *wanted = ASKED[key]
    assert chosen.key == key
    assert list(asked_of(chosen)) == wanted


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (SEAL, {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}),
        (SAC, {"barrel": "8.00 mm"}),
        (WASHER, {"bore": "6 mm", "rod": "3 mm"}),
        (THREAD, {"crests": "7.94 mm", "major": "7.10 mm"}),
        (KNOCKOUT, {"tail": "1.80 mm", "shoulder": "4.20 mm", "bore": "5.00 mm", "front": "7 mm"}),
        (WASHER, {"kind": "stacked", "bore": "6 mm", "rod": "3 mm", "length": "5 mm"}),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
