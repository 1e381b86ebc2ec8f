"""What the sums of treatment ask: what must be said, between what a figure is plausible, what is taken where it is not said."""

import pytest
from sums.asked import asked_of, without_usual

from pentools.sums.treatment.dilute import DILUTE
from pentools.sums.treatment.heat import HEAT
from pentools.sums.treatment.limits import TREATMENT
from pentools.sums.treatment.mix import MIX
from pentools.sums.treatment.shellac import SHELLAC

# judged: a bench's jars, a workshop's rooms; a cut is pounds of flakes to a US gallon
ASKED = {
    "heat": (HEAT, {"body"}, "passes:15-150 degC", {"sealant": "unknown"}),
    "treatment": (TREATMENT, {"treatment"}, "", {"material": "unknown"}),
    "mix": (
        MIX, {"ammonia"}, "parts_water:1-200 jar:1-5000 ml room:1-1000 m3",
        {"parts_water": "9", "jar": "100 ml", "room": "30 m3"},
    ),
    "dilute": (
        DILUTE, {"liquid", "strong", "wanted"}, "strong:0.1-100 % wanted:0.05-100 % volume:1-5000 ml", {"volume": "100 ml"},
    ),
    "shellac": (SHELLAC, {"cut"}, "cut:0.1-6 alcohol:1-5000 ml thin_to:0.1-6", {"alcohol": "30 ml"}),
}  # fmt: skip


@pytest.mark.parametrize("key", ASKED)
def test_what_is_asked(key):
    chosen, *wanted = ASKED[key]
    assert chosen.key == key
    assert list(asked_of(chosen)) == wanted


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (HEAT, {"body": "celluloid"}),
        (TREATMENT, {"treatment": "dry heat"}),
        (MIX, {"ammonia": "5 %"}),
        (DILUTE, {"liquid": "peroxide", "strong": "6 %", "wanted": "3 %"}),
        (SHELLAC, {"cut": "2"}),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
