"""What is said of putting a pen together reads as sentences, with what is missing named."""

from pentools.calc.base.findings import Finding


def test_what_failed_says_whether_it_can_be_undone():
    said = {u: Finding("stop", "closing.failed", number=4, part="bar", passes="it is free", undone=u).text for u in ("yes", "partly", "no")}  # fmt: skip
    assert said["yes"].startswith("Step 4, the bar, did not pass (sound is: it is free). It comes apart again")
    assert "not without loss" in said["partly"]
    assert "made anew" in said["no"]


def test_what_is_missing_is_named():
    for topic in ("shut", "skipped", "held", "early"):
        text = Finding("warning", f"closing.{topic}", number=2, part="sac", missing=("It is dry.", "It fits.")).text
        assert text.endswith("It is dry. It fits.")
        assert "the sac" in text


def test_an_ink_says_how_sure_it_is():
    text = Finding("note", "closing.ink", ink="Shimmer ink", advice="not here", sure="common practice").text
    assert text == "Shimmer ink: not here (common practice)."
