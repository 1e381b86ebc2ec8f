"""What is said of heat, soaks and mixes, where the sentence turns on its values."""

import pytest

from pentools.words import phrase
from pentools.words.treatment import CLOSING_LINE

JOINT = {"body": "acrylic", "sealant": "beeswax", "taken": "beeswax", "top": 80.0, "why": "of it"}
HAND = "by hand, with rubber for grip."


def window(**values):
    return phrase("treatment.window", {**JOINT, **values})


@pytest.mark.parametrize(
    ("values", "said"),
    [
        (
            {"kind": "open", "first": 18.0, "full": 5.0},
            "acrylic with beeswax: 18 °C of margin to first softening, 5 °C to fully soft; still warm, test, rest, and no "
            "more than 80 °C at the surface.",
        ),
        (
            {"kind": "narrow", "first": 5.0, "full": 0.0},
            "acrylic with beeswax: 5 °C of margin to first softening, none to fully soft; many short heatings to at most "
            "80 °C, tested by hand.",
        ),
        (
            {"kind": "none", "first": -9.0, "full": -15.0},
            "acrylic with beeswax: no margin; warm to at most 80 °C, 15 °C short of fully soft; test, rest, repeat, never "
            "force it.",
        ),
        (
            {"kind": "none", "first": -10.0, "full": -15.0},
            "acrylic with beeswax: no margin, 10 °C short of softening, 15 °C short of fully soft; heat will not free it "
            "safely: leave it, or find another way that the body allows.",
        ),
        (
            {"kind": "not needed", "sealant": "none", "first": None, "full": None},
            f"acrylic with no sealant: nothing seals it, so it needs no heat; {HAND}",
        ),
        (
            {"kind": "none", "body": "unknown", "sealant": "unknown", "first": 1.0, "full": 1.0},
            "unknown with an unknown sealant: no heat, because it is not named; nothing above hand-warm.",
        ),
        (
            {"kind": "none", "body": "cork", "top": None, "why": "heat dries it", "first": None, "full": None},
            "cork with beeswax: no heat, because heat dries it.",
        ),
    ],
)
def test_the_window_of_a_joint(values, said):
    assert window(**values) == said


def test_what_a_body_adds_to_its_window():
    margin = {"kind": "narrow", "first": 5.0, "full": 2.0}
    assert window(body="celluloid", **margin).endswith("by hand; each heating costs plasticiser.")
    assert window(body="casein", **margin).endswith("for casein only short and dry, for drying crazes it; never water.")
    assert "sealant: taken as shellac, which softens last: 5 °C" in window(
        sealant="unknown", **{**margin, "taken": "shellac"}
    )
    held = {"body": "acrylic", "sealant": "epoxy", "top": 80.0, "why": "epoxy sets for good", **margin}
    assert phrase("treatment.window:held", held).startswith(
        "acrylic with epoxy: epoxy sets for good, so heat alone will not free it; 5 °C of margin"
    )


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        ("soak", {"phase": "running", "elapsed": 3, "left": 6.6, "limit": 10}, "cap: 7 min left of 10."),
        ("soak", {"phase": "last", "elapsed": 9, "left": 0.6, "limit": 10}, "cap: 0.6 min left of 10."),
        ("soak", {"phase": "over", "elapsed": 12, "left": -2, "limit": 10}, "cap: 2 min over its limit of 10 min. Take it out and dry it now."),
        ("soak", {"phase": "not allowed", "elapsed": 1, "left": -1, "limit": 0}, "cap: it must not be soaked at all. Take it out and dry it now."),
        ("soak", {"phase": "running", "elapsed": 3, "left": None, "limit": None}, "cap: 3 min in. No limit is on record: set one yourself and look often."),
    ],
)  # fmt: skip
def test_a_soak(key, values, said):
    assert phrase(f"treatment.{key}", {"part": "cap", **values}) == said


def test_the_rest():
    air = {"ppm": 41.6, "jar_ml": 100.0, "room_m3": 30.0, "lowest": "the smell"}
    head = "If all 100 ml evaporated in a closed room of 30 m³ its air would hold 42 ppm, "
    assert phrase("treatment.air", {**air, "passed": []}) == f"{head}below the smell. Lid on, window open."
    assert phrase("treatment.air", {**air, "passed": ["one", "two"]}) == (
        f"{head}above one, two. Mix less of it, lid on, window open. {CLOSING_LINE}"
    )
    assert phrase("treatment.too-long", {"what": "Bath", "minutes": 14, "limit": 10}).startswith(
        "Bath: 14 min, 4 more than the limit of 10 min."
    )
    assert phrase("treatment.plasticiser", {"count": 1}).startswith("1 heating so far;")
    assert phrase("treatment.plasticiser", {"count": 2}).startswith("2 heatings so far;")
    assert phrase("treatment.not-named", {"said": ""}).startswith("The material is not named: the strictest row")
    assert phrase("treatment.not-named:body", {"said": "“Goo” is not known."}) == "“Goo” is not known."
