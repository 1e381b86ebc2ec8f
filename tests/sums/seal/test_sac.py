"""The sac sum: the size by material, its length, its words."""

import pytest
from sums.seal.asking import ask

from pentools.errors import InputError
from pentools.sums.seal.sac import SAC


def test_a_sac():
    data = ask(SAC, barrel="8.00 mm", nipple="6.60 mm", depth="62 mm", nipple_length="6 mm", cleaned="yes").data
    assert data["number"] == 16
    assert data["number_by_hole"] == 20
    assert data["length_low_mm"] < data["length_mm"] < data["length_high_mm"] < 62
    assert data["cut_length_mm"] == pytest.approx(data["length_mm"] + 6)
    assert data["adhesive"] == "shellac"
    assert data["measured"] is False


def test_a_measured_sac_wins_over_its_number():
    answer = ask(SAC, barrel="8.00 mm", number="18", sac="6.60 mm")
    assert answer.data["outside_mm"] == 6.6
    assert answer.data["measured"] is True
    assert any(f.topic == "number-off" for f in answer.findings)
    assert ask(SAC, barrel="8.00 mm", number="18").data["outside_mm"] == pytest.approx(7.14, abs=0.006)


def topics(answer):
    return {f.topic for f in answer.findings}


def test_the_number_that_may_split_is_not_taken_while_the_next_clears():
    answer = ask(SAC, barrel="7.6 mm", nipple="6.2 mm")
    assert answer.data["number"] == 16
    assert "number 16 by outside diameter (6.35 mm)" in answer.sentence
    assert "may split" not in answer.sentence
    assert "nipple-large" not in topics(answer)
    by_size = {c["size"]: c for c in answer.data["choices"]}
    assert by_size["number 15"]["nipple_stretch"] > 0.25 > by_size["number 16"]["nipple_stretch"]
    rows = dict(answer.table)
    assert "may split" in rows["beside it: number 15"]
    assert "goes" in rows["beside it: number 17"]


def test_silicone_by_its_own_grid_and_adhesive():
    answer = ask(SAC, barrel="8.00 mm", nipple="6.60 mm", material="silicone")
    assert answer.data["number"] == 17
    assert "may split" not in answer.sentence
    assert "silicone adhesive" in answer.data["adhesive"]
    assert answer.data["material"] == "silicone"
    # the silicone list ends at 20, the latex one does not
    assert ask(SAC, barrel="14 mm", material="silicone").data["number"] == 20
    assert ask(SAC, barrel="13 mm").data["number"] == 31


def test_vinyl_by_tube_and_pleats_as_measured():
    vinyl = ask(SAC, barrel="8.00 mm", nipple="6.60 mm", material="PVC")
    assert (vinyl.data["number"], vinyl.data["size"], vinyl.data["outside_mm"]) == (None, "6.5 mm tube", 6.5)
    assert "In PVC, a 6.5 mm tube" in vinyl.sentence
    assert "plasticiser" in topics(vinyl)
    pleated = ask(SAC, barrel="10 mm", sac="9.2 mm", mouth="5.0 mm", nipple="5.4 mm", depth="40 mm", material="pleated")
    assert pleated.data["length_mm"] is None
    assert pleated.data["nipple_stretch"] == pytest.approx(0.08)
    assert pleated.sentence.startswith("The pleated sac of 9.20 mm leaves 0.40 mm of air")
    with pytest.raises(InputError, match="measure it over its widest place"):
        ask(SAC, barrel="10 mm", material="pleated")


def test_the_sentence_says_what_stands_in_the_way():
    assert "does not do yet" in ask(SAC, barrel="7.0 mm", sac="7.4 mm").sentence
    assert "does not do yet. Clean the old rubber" in ask(SAC, barrel="8 mm", cleaned="no").sentence
    assert "it slips off" in ask(SAC, barrel="9 mm", nipple="5.0 mm", sac="6.5 mm").sentence
    fine = ask(SAC, barrel="8.00 mm", nipple="6.60 mm", depth="62 mm", cleaned="yes")
    assert "leaves 0.83 mm of air all round; 58 mm beyond the nipple's shoulder." in fine.sentence
    cut = ask(SAC, barrel="8.00 mm", nipple="6.60 mm", depth="62 mm", nipple_length="6 mm", cleaned="yes")
    assert "cut it to 64 mm" in cut.sentence


def test_every_field_is_handed_on():
    answer = ask(
        SAC,
        barrel="8 mm",
        nipple="6.6 mm",
        depth="62 mm",
        bar="0.9 mm",
        before="7.4 mm",
        pneumatic="yes",
        wall="0.4 mm",
    )
    fit = answer.result
    assert fit.largest_mm == pytest.approx(6.6)
    assert "old-rubber" in topics(answer)
    assert (fit.length_low_mm, fit.length_high_mm) == (60, 62)
    assert fit.nipple_stretch_share == pytest.approx(6.6 / (fit.outside_mm - 0.8) - 1)
    assert answer.data["largest_outside_mm"] == fit.largest_mm
    assert "old-rubber" not in topics(ask(SAC, barrel="8 mm", cleaned="yes"))
    assert ask(SAC, barrel="8 mm", number="18").data["measured"] is False
    off = ask(SAC, barrel="8 mm", number="18", sac="7.0 mm")
    assert "number-off" not in topics(off)
