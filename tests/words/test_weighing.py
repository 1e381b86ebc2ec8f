"""What is said of weighing, filling and leaking, where the sentence turns on its values."""

import pytest

from pentools.words import phrase
from pentools.words.weighing import mg_rate

SHARE = {"share": 0.5, "points": 4.0, "holds": "the bore", "low": 0.75, "high": 0.97, "certainty": "judged"}
DRAWN = "It draws 50 % ± 4 of the bore; sound ones draw 75 to 97 % of it (judged)"
LOSS = {"loss": 0.5, "doubt": 0.1, "limit": 0.25}


def said(key, values):
    return phrase(f"weighing.{key}", values).replace("\u202f", " ").replace("\u00a0", " ")


def test_a_loss_is_told_in_the_unit_that_gives_a_plain_number():
    assert (mg_rate(1), mg_rate(0.5)) == ("1 mg an hour", "12 mg a day")


@pytest.mark.parametrize(
    ("key", "values", "sentence"),
    [
        ("short", {**SHARE, "least": 0.75}, f"{DRAWN}. That is short."),
        ("short", {**SHARE, "least": 0.6}, f"{DRAWN}, and not below 60 % even where the feed kept some. That is short."),
        (
            "share-cannot-tell",
            {**SHARE, "least": 0.6, "feed": False},
            f"{DRAWN}. Whether it is short cannot be told. Next test: fill, empty and fill again, weigh each state three times, "
            "and measure the bore once more; no part is suspected before that.",
        ),
        ("full", SHARE, f"It fills as is usual: {DRAWN[9:]}."),
        (
            "more-than-full",
            {**SHARE, "start": "dry"},
            "It draws 50 % ± 4 of the bore, more than that and more than its feed takes beside: a dimension is wrong, or a part "
            "was on the pen the second time only.",
        ),
        ("plateau", {"stroke": 5, "plateau": 1.5, "share": None}, "It stops rising after stroke 5 at 1.50 mL."),
        ("plateau", {"stroke": 5, "plateau": 1.5, "share": 0.8}, "It stops rising after stroke 5 at 1.50 mL, 80 % of what it should hold."),
        ("suspect-head-seal", {"name": "the head", "why": "it is dry", "test": "wet it"}, "The head: it is dry. Next test: wet it."),
        (
            "leak:estimate",
            {**LOSS, "estimate": 2.0},
            "It loses 12 mg a day, give or take 2.4: more than twice the 2 mg a day that evaporation through that gap may take "
            "(an estimate). It leaks. A loss of 6 mg a day would have shown.",
        ),
        (
            "tight",
            {**LOSS, "loss": 0.0},
            "No leak of 6 mg a day or more: its mass did not change, and weighing leaves 2.4 mg a day open. A smaller one cannot "
            "be told.",
        ),
    ],
)  # fmt: skip
def test_said(key, values, sentence):
    assert said(key, values) == sentence


def test_which_way_the_mass_went():
    assert "it gained 12 mg a day, and" in said("not-sensitive", {**LOSS, "loss": -0.5})
    assert "it lost 12 mg a day, and" in said("not-sensitive", LOSS)
    assert said("gain", {**LOSS, "loss": -2.0}).startswith("It gains 2 mg an hour, more than the 2.4 mg a day that")
    assert said("leak", {**LOSS, "loss": 2.0}).startswith("It loses 2 mg an hour, give or take 0.1: milligrams")


def test_a_gain_that_cannot_be_told():
    values = {"gained_g": 0.02, "least_g": 0.05, "digit_g": 0.01}
    assert said("gain-not-told", values).startswith(
        "The gain of 0.02 g cannot be told from nothing: these weighings tell 0.05 g"
    )
    assert said("gain-not-told", {**values, "gained_g": -0.02}).startswith(
        "No gain is seen, and a small one cannot be told"
    )


def test_a_topic_that_is_no_suspect_has_no_words():
    with pytest.raises(KeyError):
        said("never-said", {})
