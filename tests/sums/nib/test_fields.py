"""What the sums of nibs take: what must be said, the ranges, and what is taken where nothing is said."""

import pytest
from sums.asked import asked_of, without_usual

from pentools.sums.nib.flex import FLEX
from pentools.sums.nib.flow import FLOW
from pentools.sums.nib.setting import SETTING
from pentools.sums.nib.smoothing import SMOOTHING


def test_what_is_asked():
    assert asked_of(FLOW) == (
        {"before", "after", "length"},
        "before:0-200 g after:0-200 g length:0.1-2000 m readability:1e-05-1 g repeatability:0-5 g idle:0-200 mg "
        "minutes:0-1000 min density:0.9-1.3 g/ml width:0.05-6 mm",
        {"readability": "0.01 g", "density": "1.005 g/ml"},
    )
    assert asked_of(FLEX) == (
        {"loads", "widths"},
        "loads:0-500 gf widths:0.02-8 mm extra:0.05-1.5 mm wobble:0-0.5 1 width_doubt:0-0.5 mm angle:10-90 deg printed:0.001-100",
        {"extra": "0.5 mm", "wobble": "8 %", "width_doubt": "0.025 mm"},
    )
    assert asked_of(SMOOTHING) == ({"feel", "own"}, "", {})
    assert asked_of(SETTING) == (
        set(),
        "",
        {"feed": "unknown", "section": "unknown", "nipple": "unknown", "alone": "no"},
    )


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (FLOW, {"before": "23.512 g", "after": "23.422 g", "length": "18 m"}),
        (FLEX, {"loads": "15 g; 60 g", "widths": "0.5 mm; 1.0 mm"}),
        (SMOOTHING, {"feel": "scratchy", "own": "film 3 um"}),
        (SETTING, {"feed": "hard rubber"}),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
