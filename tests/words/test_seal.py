"""What is said of seals, sacs and tools, where the sentence turns on its values."""

import pytest

from pentools.words import phrase

SURE = {"note": "swells", "certainty": "judged"}


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        (
            "reservation",
            {"ring": "008", "reasons": ["loose", "fill", "loose"]},
            "008 may be tried, with a reservation: it is loose on its seat and the groove may be full. The dry trial decides; "
            "seal nothing before it pulls back.",
        ),
        (
            "reservation",
            {"ring": "008", "reasons": []},
            "008 may be tried, with a reservation: its own size decides, so measure it. The dry trial decides; seal nothing "
            "before it pulls back.",
        ),
        (
            "nipple-large",
            {"nipple": 6.6, "stretch": 0.4, "guess": True, "better": "number 18"},
            "The nipple of 6.60 mm stretches it by 40 % (wall from memory: measure it): it may split. Of those sold, number 18 goes.",
        ),
        (
            "nipple-large",
            {"nipple": 6.6, "stretch": 0.4, "guess": False, "better": ""},
            "The nipple of 6.60 mm stretches it by 40 %: it may split. A necked sac is wanted, or a thinner nipple sleeve.",
        ),
        (
            "nipple-small",
            {"nipple": 4, "guess": False},
            "The nipple of 4.00 mm hardly stretches this sac: it slips off. Build the nipple up with a sleeve cut from a smaller sac.",
        ),
        (
            "suspect",
            {"words": "the packing", "signs": ["bubbles"], "cleared": ["the head"]},
            "The pattern points to the packing: bubbles; the head is cleared.",
        ),
        (
            "suspect",
            {"words": "the packing", "signs": ["bubbles"], "cleared": ["the head", "the rod"]},
            "The pattern points to the packing: bubbles; the head and the rod are cleared.",
        ),
        ("suspect", {"words": "the packing", "signs": ["bubbles", "drops"], "cleared": []}, "The pattern points to the packing: bubbles, drops."),
        ("not-told:one", {"how": "hold it under water"}, "One test does not name a seal. Next: hold it under water."),
        (
            "not-told:close",
            {"first": "head", "second": "packing", "how": ""},
            "Not told yet: head and packing stand too close. No test is left that separates them: change the cheaper seal and repeat.",
        ),
        ("poor:known", {"name": "Nitrile", "medium": "acetone", **SURE}, "Nitrile is poor in acetone: swells (judged)."),
        ("poor:unknown", {"name": "Nitrile", "medium": "ink", **SURE, "note": ""}, "Nitrile is not known in ink (judged)."),
        ("fair", {"name": "Nitrile", "medium": "ink", **SURE}, "Nitrile is only fair in ink: swells (judged)."),
    ],
)  # fmt: skip
def test_said(key, values, said):
    assert phrase(f"seal.{key}", values).replace("\u202f", " ").replace("\u00a0", " ") == said


def test_water_only_as_far_as_the_section_bears_it():
    assert "bears it (cold, 5 min), and" in phrase("seal.force:short", {"limit": "cold, 5 min"})
    assert "bears it, and its feed alone" in phrase("seal.force:short", {"limit": ""})
