"""The sums of seals, sacs, washers, threads and tools: options in, words and JSON out."""

import json

import pytest

from pentools.calc.seal.fit import SealFit
from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.seal.knockout import KNOCKOUT
from pentools.sums.seal.rings import SEAL, seal_fit
from pentools.sums.seal.sac import SAC
from pentools.sums.seal.stock import read_stock
from pentools.sums.seal.thread import THREAD
from pentools.sums.seal.washer import WASHER

HEAD = {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}


def ask(chosen, **texts):
    answer = chosen.run(read_options(chosen.fields, texts))
    assert json.loads(json.dumps(answer.data, allow_nan=False)) == answer.data
    assert answer.data["sentence"] == answer.sentence
    assert answer.data["findings"] == [f.as_json() for f in answer.findings]
    widths = {len(row) for row in answer.table}
    assert len(widths) == 1
    return answer


def options(chosen):
    return {field.option for field in chosen.fields}


def test_options_are_those_of_the_command_line():
    assert {
        "--bore",
        "--groove",
        "--width",
        "--head",
        "--rod",
        "--housing",
        "--ovality",
        "--caliper",
        "--duty",
        "--from",
        "--stock",
        "--all",
    } <= options(SEAL)
    assert {"--barrel", "--nipple", "--depth"} <= options(SAC)
    assert {"--bore", "--rod"} <= options(WASHER)
    assert {"--pitch", "--major"} <= options(THREAD)


def test_a_head_gives_candidates_best_first():
    answer = ask(SEAL, **HEAD)
    first = answer.data["candidates"][0]
    assert first["designation"] == "008"
    assert first["verdict"] == "fits"
    needed = {
        "designation",
        "inside_mm",
        "section_mm",
        "squeeze_min",
        "squeeze_nominal",
        "squeeze_max",
        "stretch",
        "gland_fill",
        "findings",
    }
    assert all(needed <= set(c) for c in answer.data["candidates"])
    assert first["squeeze_min"] == pytest.approx(0.1212, abs=6e-5)
    assert first["squeeze_max"] == pytest.approx(0.2366, abs=6e-5)
    assert 0 < first["gland_fill"] < 1
    assert "008" in answer.sentence
    assert isinstance(answer.result, SealFit)
    assert "Lindley" in answer.data["friction_model"]


def test_all_lists_every_size_and_the_rest_is_short():
    assert len(ask(SEAL, **HEAD).data["candidates"]) == 8
    assert len(ask(SEAL, **HEAD, all="yes").data["candidates"]) == 349
    assert len(ask(SEAL, **HEAD, all="yes", **{"from": "metric"}).data["candidates"]) == 363


def test_inches_and_several_readings():
    inches = ask(SEAL, bore="0.2913 in", groove="0.1772 in", width="0.0945 in")
    assert inches.data["candidates"][0]["designation"] == "008"
    several = ask(SEAL, **HEAD | {"bore": "7.38 mm; 7.42 mm; 7.40 mm"})
    assert several.data["gland"]["ovality_mm"] == pytest.approx(0.04)
    assert several.data["candidates"][0]["squeeze_min"] < ask(SEAL, **HEAD).data["candidates"][0]["squeeze_min"]
    assert ask(SEAL, **HEAD, ovality="0.1 mm").data["gland"]["ovality_mm"] == 0.1


def test_what_is_typed_after_plus_minus_is_not_lost():
    unsure = ask(SEAL, **HEAD | {"groove": "4.50 ± 0.05 mm"})
    assert unsure.data["gland"]["caliper_mm"] == pytest.approx(0.05 * 3**0.5)
    assert ask(SEAL, **HEAD, caliper="0.02 mm").data["gland"]["caliper_mm"] == 0.02


def test_a_head_diameter_gives_the_side_that_may_let_go():
    answer = ask(SEAL, **HEAD, head="7.20 mm")
    first = answer.data["candidates"][0]
    assert first["eccentric_min"] < first["squeeze_min"]
    assert first["states"]["eccentric_least"]["offset_mm"] > 0.1
    assert ask(SEAL, **HEAD).data["candidates"][0]["eccentric_min"] is None


def test_own_rings_are_taken_as_measured():
    answer = ask(SEAL, **HEAD, stock="1.78x4.47; red = 1,70±0,01 x 4.4±0.05 mm", **{"from": "stock"})
    assert {c["designation"] for c in answer.data["candidates"]} == {"4.47x1.78", "red"}
    assert all(c["verdict"] == "fits" for c in answer.data["candidates"])


def test_nothing_fits_says_what_to_turn():
    answer = ask(SEAL, bore="8.00 mm", groove="6.10 mm", width="1.4 mm", **{"from": "metric"})
    assert answer.data["fits"] == 0
    assert answer.data["remedies"]
    assert answer.data["remedies"][0]["sentence"] in answer.sentence
    thin = next(c for c in answer.data["candidates"] if c["designation"] == "6x1.0")
    assert any("Measure this ring" in f["text"] for f in thin["findings"])


def test_another_list_is_named_where_this_one_has_nothing():
    answer = ask(SEAL, bore="6.0 mm", groove="3.12 mm", width="2.4 mm", **{"from": "metric"})
    other = ask(SEAL, bore="6.0 mm", groove="3.12 mm", width="2.4 mm", **{"from": "as568"})
    assert answer.data["fits"]
    assert not other.data["fits"]
    best = answer.data["candidates"][0]["designation"]
    assert any(best in f["text"] for f in other.data["findings"] if f["topic"] == "other-list")


def test_a_packing():
    answer = ask(SEAL, rod="3.00 mm", housing="6.15 mm", width="2.4 mm", guide="3.10 mm")
    assert answer.data["gland"]["kind"] == "packing"
    assert answer.data["gland"]["clearance_mm"] == pytest.approx(0.05)
    assert answer.data["candidates"][0]["designation"] == "006"


def test_what_it_meets_chooses_the_rubber():
    assert ask(SEAL, **HEAD, meets="mineral oil").data["elastomers"][0]["elastomer"] == "FKM"
    assert all(r["source"] for e in ask(SEAL, **HEAD).data["elastomers"] for r in e["ratings"])
    with pytest.raises(InputError, match="alcohol"):
        ask(SEAL, **HEAD, meets="honey")


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        ({}, "neither"),
        ({"bore": "7.4 mm"}, "groove must be measured"),
        ({"rod": "3 mm"}, "housing must be measured"),
        (HEAD | {"rod": "3 mm"}, "both"),
        ({"bore": "4.5 mm", "groove": "7.4 mm"}, "mixed up"),
        (HEAD | {"from": "stock"}, "at least one"),
        (HEAD | {"duty": "sliding"}, "hand-turned"),
        (HEAD | {"bore": "7.4"}, "unit is missing"),
        (HEAD | {"bore": "0.74 mm"}, "another unit|plausible|2 to 30"),
    ],
)
def test_seal_refusals(texts, words):
    with pytest.raises(InputError, match=words):
        ask(SEAL, **texts)


@pytest.mark.parametrize("text", ["5.28x1.78", "1.78", "1.78 by 5.28", "0.1x5", "x=", "1.78xfive"])
def test_stock_that_cannot_be_read(text):
    with pytest.raises(InputError, match="stock"):
        read_stock([text])


def test_stock_in_words():
    ring = read_stock(["left drawer = 1,80 ± 0.02 × 5.3+/-0.1 mm"])[0]
    assert (
        ring.designation,
        ring.section_mm,
        ring.section_half_width_mm,
        ring.inside_mm,
        ring.inside_half_width_mm,
    ) == ("left drawer", 1.8, 0.02, 5.3, 0.1)
    assert ring.measured


def test_the_function_for_notebooks():
    assert seal_fit(bore_mm=7.4, groove_mm=4.5, width_mm=2.4).best.designation == "008"
    assert seal_fit(
        bore_mm=[7.38, 7.42], groove_mm=4.5, source="stock", stock=["1.78x4.47"]
    ).gland.ovality_mm == pytest.approx(0.04)
    with pytest.raises(InputError, match="neither"):
        seal_fit()


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


def test_washers():
    data = ask(WASHER, bore="8.30 mm", rod="1.60 mm").data
    assert data["ladder_mm"][2] == data["outside_mm"] == 8.5
    assert ask(WASHER, bore="9 mm", rod="5 mm", kind="cork").data["cut_mm"] > 9.2
    assert ask(WASHER, bore="6 mm", rod="3 mm", kind="stacked", length="5 mm").data["count"] == 4
    assert ask(WASHER, bore="8.2 mm; 8.4 mm", rod="1.6 mm").data["outside_mm"] > 8.5
    with pytest.raises(InputError, match="length"):
        ask(WASHER, bore="6 mm", rod="3 mm", kind="felt")


def test_threads():
    data = ask(THREAD, pitch="0.794 mm", major="7.10 mm").data
    assert [set(n) >= {"designation", "series", "major_mm", "pitch_mm"} for n in data["nearest"]] == [True] * 3
    assert (data["nearest"][0]["series"], data["nearest"][0]["designation"]) == ("ME", "9/32 x 32")
    triple = ask(THREAD, crests="8.00 mm", major="12.95 mm", starts="3").data
    assert triple["lead_mm"] == pytest.approx(2.4)
    assert triple["nearest"][0]["designation"] == "13x0.8 triple"
    own = ask(THREAD, crests="9.3 mm", major="9.0 mm")
    assert own.data["near"] is False
    assert "maker's own" in own.sentence
    with pytest.raises(InputError, match="eleven crests"):
        ask(THREAD, pitch="0.8 mm", crests="7.1 mm")
    with pytest.raises(InputError, match="pitch"):
        ask(THREAD, major="7 mm")


def test_knock_out_tools():
    data = ask(KNOCKOUT, tail="1.80 mm", shoulder="4.20 mm", bore="5.00 mm", depth="18 mm").data
    assert data["possible"] is True
    assert data["block_low_mm"] is None
    assert "No tube" in ask(KNOCKOUT, tail="4.0 mm", shoulder="4.3 mm", bore="5.00 mm").sentence
    assert "solid" in ask(KNOCKOUT, tail="0 mm", shoulder="4.3 mm", bore="5.00 mm").sentence
