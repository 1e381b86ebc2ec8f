"""What the sums of seals ask: which option is needed, between what a reading is plausible, what is taken where it is not said."""

import pytest

from pentools.sums.seal.knockout import KNOCKOUT
from pentools.sums.seal.rings import SEAL
from pentools.sums.seal.sac import SAC
from pentools.sums.seal.thread import THREAD
from pentools.sums.seal.washer import WASHER

ASKED = {
    "seal": (
        SEAL, set(),
        "bore:2-30 groove:0.5-28 width:0.5-15 head:1-30 rod:0.5-15 housing:2-25 guide:0.5-20 ovality:0-1 caliper:0-0.3 "
        "hardness:20-90",
        {
            "caliper": "0.03 mm", "duty": "hand-turned", "from": "as568", "hardness": "70",
            "meets": "water-based ink; silicone grease", "all": "no",
        },
    ),
    "sac": (
        SAC, {"barrel"},
        "barrel:3-16 nipple:1.5-14 depth:10-150 nipple_length:1-25 sac:2-16 number:5-40 wall:0.1-2 mouth:1-14 bar:0-3 before:2-16",
        {"material": "latex", "pneumatic": "no"},
    ),
    "washer": (
        WASHER, {"bore", "rod"}, "bore:2-25 rod:0.5-24 backing:1-20 ovality:0-0.9 length:1-30 thickness:0.3-5",
        {"kind": "flat", "thickness": "1.5 mm"},
    ),
    "thread": (
        THREAD, set(), "pitch:0.05-6 crests:0.2-60 over:1-60 major:0.2-60 angle:30-90 starts:1-12 caliper:0.001-0.3",
        {"over": "10", "caliper": "0.03 mm"},
    ),
    "knockout": (
        KNOCKOUT, {"tail", "shoulder", "bore"},
        "tail:0-8 shoulder:0.5-14 bore:1-15 depth:0-60 front:1-16 section:3-20 clearance:0.02-1", {"clearance": "0.10 mm"},
    ),
}  # fmt: skip


@pytest.mark.parametrize("key", ASKED)
def test_what_is_asked(key):
    chosen, needed, ranges, usual = ASKED[key]
    assert {f.name for f in chosen.fields if f.required} == needed
    assert " ".join(f"{f.name}:{f.low:g}-{f.high:g}" for f in chosen.fields if f.low is not None) == ranges
    assert {f.name: f.default for f in chosen.fields if f.default} == usual
