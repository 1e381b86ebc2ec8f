"""What the sums of abrasives ask: what must be said, between what a figure is plausible, what is taken where it is not said."""

import pytest
from sums.asked import asked_of, without_usual

from pentools.sums.finish.abrasives import ABRASIVES
from pentools.sums.finish.grade import GRADE

# judged: walls and lengths of pens, times by hand; the scratch share of metal to that of brittle matter (0.001 to 5)
ASKED = {
    "abrasives": (
        ABRASIVES, {"defect", "own"},
        "wall:0.2-5 mm spent:0-200 um defect_length:0.1-150 mm scratch_share:0.001-5 stock_factor:1-5 time_limit:1-240 min",
        {"finish": "gloss", "stock_factor": "2", "time_limit": "15 min", "judged_by": "both", "as_given": "no"},
    ),
    "grade": (GRADE, {"grade"}, "", {}),
}  # fmt: skip


@pytest.mark.parametrize("key", ASKED)
def test_what_is_asked(key):
    chosen, *wanted = ASKED[key]
    assert chosen.key == key
    assert list(asked_of(chosen)) == wanted


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (ABRASIVES, {"defect": "20 um", "own": "P600; film 3 um", "material": "celluloid", "zone": "plain barrel"}),
        (GRADE, {"grade": "P400"}),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
