"""The seal sum: options in, candidates, words and JSON out."""

import pytest
from sums.seal.asking import ask

from pentools.calc.seal.fit import SealFit
from pentools.errors import InputError
from pentools.sums.seal.rings import SEAL

HEAD = {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}


def test_options_are_those_of_the_command_line():
    wanted = "bore groove width head rod housing guide ovality caliper duty from stock drawer hardness meets all"
    assert {field.option for field in SEAL.fields} == {f"--{name}" for name in wanted.split()}


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


def first(answer):
    return answer.data["candidates"][0]


def topics(answer):
    return [f.topic for f in answer.findings]


def test_an_unsure_width_does_not_widen_bore_and_groove():
    answer = ask(SEAL, bore="7.40 mm", groove="4.50 mm", width="2.4 ± 0.1 mm")
    assert (first(answer)["designation"], first(answer)["verdict"]) == ("008", "fits")
    halves = answer.data["gland"]["half_widths_mm"]
    assert halves == {"inner": 0.03, "outer": 0.03, "width": pytest.approx(0.1 * 3**0.5), "guide": None}
    assert answer.data["gland"]["caliper_mm"] == 0.03
    sure = ask(SEAL, **HEAD)
    assert first(answer)["squeeze_min"] == first(sure)["squeeze_min"]
    assert first(answer)["gland_fill_max"] > first(sure)["gland_fill_max"]


@pytest.mark.parametrize(("name", "key"), [("bore", "outer"), ("groove", "inner"), ("head", "guide")])
def test_each_dimension_brings_its_own_half_width(name, key):
    texts = {**HEAD, "head": "7.20 mm"}
    texts[name] = texts[name].replace(" mm", " ± 0.02 mm")
    halves = ask(SEAL, **texts).data["gland"]["half_widths_mm"]
    assert halves.pop(key) == pytest.approx(0.02 * 3**0.5)
    assert set(halves.values()) == {0.03}


def test_the_largest_plus_minus_of_several_readings_counts():
    answer = ask(SEAL, **{**HEAD, "bore": "7.40 ± 0.02 mm; 7.41 ± 0.01 mm; 7.39 mm"})
    assert answer.data["gland"]["half_widths_mm"]["outer"] == pytest.approx(0.02 * 3**0.5)


def test_a_ring_with_a_reservation_is_offered_and_says_why():
    answer = ask(SEAL, bore="8.0 mm", groove="5.0 mm", width="2.4 mm")
    best = first(answer)
    assert (best["designation"], best["verdict"]) == ("009", "with a reservation")
    assert (round(best["squeeze_min"], 2), round(best["squeeze_max"], 2)) == (0.10, 0.21)
    assert answer.sentence.startswith(
        "009 (5.28 × 1.78 mm) may be tried, with a reservation: squeeze 16\u202f%, at worst 10 to 21\u202f%."
    )
    assert "Loose on the groove by 0.28 mm" in answer.sentence
    assert [f["topic"] for f in best["reservations"]] == ["loose"]
    assert (answer.data["fits"], answer.data["offered"] > 0, answer.data["remedies"]) == (0, True, [])


def test_an_odd_reading_is_named_first():
    answer = ask(SEAL, **{**HEAD, "bore": "7.40 mm; 7.41 mm; 7.39 mm; 7.70 mm; 7.40 mm; 7.41 mm"})
    assert topics(answer)[0] == "odd-reading"
    assert "Reading 4 of 6, 7.70 mm, is the odd one" in answer.findings[0].text
    assert "odd-reading" not in topics(ask(SEAL, **{**HEAD, "bore": "7.40 mm; 7.41 mm; 7.39 mm; 7.40 mm"}))
    packing = ask(SEAL, rod="3.00 mm", housing="6.15 mm; 6.15 mm; 6.16 mm; 6.14 mm; 6.55 mm; 6.15 mm", width="2.4 mm")
    assert topics(packing)[0] == "odd-reading"


def test_a_slip_that_leaves_no_gland_is_named_in_the_refusal():
    with pytest.raises(InputError, match=r"Reading 2 of 6, 9\.40 mm, is the odd one"):
        ask(SEAL, **{**HEAD, "bore": "7.40 mm; 9.40 mm; 7.39 mm; 7.40 mm; 7.41 mm; 7.40 mm"})
    with pytest.raises(InputError, match="ovality"):
        ask(SEAL, **{**HEAD, "bore": "7.40 mm; 9.40 mm"})


def test_nothing_fits_says_what_can_be_done_and_what_cannot_be_undone():
    answer = ask(SEAL, bore="8.9 mm", groove="6.9 mm", width="2.4 mm")
    assert (answer.data["fits"], answer.data["offered"]) == (0, 0)
    assert answer.data["remedies"]
    for remedy in answer.data["remedies"]:
        assert remedy["undoable"] is not ("cannot be undone" in remedy["sentence"])
    assert "wanted-ring" in topics(answer)
    assert answer.sentence.startswith("No ring of this list fits; ")
    plain = ask(SEAL, bore="6.3 mm", groove="3.3 mm", width="2.4 mm").sentence
    # what leaves the pen as it is comes before what is turned
    assert 0 < plain.index("Without touching the pen") < plain.index("would fit if")


def test_without_a_list_of_its_own_another_lists_ring_is_the_headline():
    answer = ask(SEAL, bore="7.85 mm", groove="6.10 mm", width="1.4 mm")
    others = [f for f in answer.findings if f.topic == "other-list"]
    assert others
    assert "of the common metric sizes is the one to try" in answer.sentence


def test_a_candidate_keeps_every_figure_of_its_fit():
    answer = ask(SEAL, **HEAD, head="7.20 mm")
    best, fit = first(answer), answer.result.best.fit
    low, high = fit.squeeze_interval
    assert best == {
        **best,
        "squeeze_nominal": fit.nominal.squeeze_share,
        "squeeze_standard_uncertainty": fit.squeeze_uncertainty_share,
        "squeeze_low": low,
        "squeeze_high": high,
        "squeeze_pessimist": fit.pessimist_share,
        "squeeze_pessimist_min": fit.pessimist_least_share,
        "eccentric_min": fit.eccentric_least.squeeze_share,
        "eccentric_max": fit.eccentric_most.squeeze_share,
        "stretch": fit.stretch_share,
        "section_loss": fit.section_loss_share,
        "outside_compression": fit.outside_share,
        "gland_fill": fit.fill_share,
        "gland_fill_max": fit.fill_most_share,
        "side_clearance_mm": fit.side_clearance_mm,
        "friction_running_n": answer.result.best.friction.running_n,
        "friction_breakout_n": answer.result.best.friction.breakout_n,
    }
    for name in ("least", "nominal", "most", "eccentric_least", "eccentric_most"):
        state = getattr(fit, name)
        assert best["states"][name] == {
            "inner_mm": state.inner_mm, "outer_mm": state.outer_mm, "depth_mm": state.depth_mm,
            "section_mm": state.section_mm, "squeeze": state.squeeze_share, "offset_mm": state.offset_mm,
        }  # fmt: skip
    duty = answer.result.duty
    assert answer.data["duty"] == {
        "key": "hand-turned", "low": duty.low, "high": duty.high, "floor": duty.floor, "ceiling": duty.ceiling,
        "offered_from": duty.offered_from, "offered_to": duty.offered_to, "source": duty.source,
    }  # fmt: skip
    assert answer.table[1][0] == "008"
    assert answer.table[1][3:6] == ("12.1\u202f%", "18.4\u202f%", "23.7\u202f%")


def test_the_words_of_each_verdict():
    assert (
        ask(SEAL, **HEAD).sentence
        == "008 (4.47 × 1.78 mm) is the first to try: squeeze 18\u202f%, at worst 12 to 24\u202f%."
    )
    thin = ask(SEAL, bore="7.85 mm", groove="6.10 mm", width="1.4 mm", **{"from": "metric"})
    assert "is the first to try, but measure it first" in thin.sentence
    assert thin.data["fits"] > 0


def test_the_rubber_is_told_with_the_grease_it_bears():
    """Ratings of a moulder's chart: mineral oil swells EPDM, so no grease of it is named beside it."""
    told = [f.text for f in ask(SEAL, **HEAD).findings if f.topic == "elastomer"]
    assert told == [
        "EPDM suits water-based ink and silicone grease best (its worst rating there is G); lubricant: silicone grease."
    ]
    oil = next(f for f in ask(SEAL, **HEAD, meets="mineral oil").findings if f.topic == "elastomer")
    assert oil.text.startswith("FKM suits mineral oil best (its worst rating there is E)")


def test_hardness_and_duty_are_handed_on():
    soft, hard = (first(ask(SEAL, **HEAD, hardness=h))["friction_running_n"] for h in ("50", "80"))
    assert hard > 2 * soft
    assert ask(SEAL, **HEAD, duty="static").data["duty"]["key"] == "static"
    still = ask(SEAL, **HEAD, duty="static", meets="alcohol").data["elastomers"]
    moving = ask(SEAL, **HEAD, meets="alcohol").data["elastomers"]
    assert (still[0]["elastomer"], moving[-1]["elastomer"]) == ("silicone", "silicone")


def test_the_table_of_rings_and_what_a_remedy_holds():
    answer = ask(SEAL, **HEAD)
    assert answer.table[0] == ("ring", "inside", "section", "least", "squeeze", "most", "stretch", "fill", "verdict")
    assert answer.table[1] == (
        "008",
        "4.47 mm",
        "1.78 mm",
        "12.1\u202f%",
        "18.4\u202f%",
        "23.7\u202f%",
        "0.7\u202f%",
        "71.5\u202f%",
        "fits",
    )
    assert ask(SEAL, bore="7.40 mm", groove="4.50 mm").table[1][7] == "–"
    # π/4 · 7.4² mm² at 101.325 kPa
    assert answer.data["suction_n"] == pytest.approx(4.358, abs=0.001)
    assert {**answer.data["gland"], "half_widths_mm": {}} == {
        "kind": "piston", "inner_mm": 4.5, "outer_mm": 7.4, "width_mm": 2.4, "guide_mm": None, "clearance_mm": None, "caliper_mm": 0.03,
        "half_widths_mm": {}, "ovality_mm": 0.0,
    }  # fmt: skip
    (first_remedy, *_) = ask(SEAL, bore="8.9 mm", groove="6.9 mm", width="2.4 mm").data["remedies"]
    # 2 % over 3.63 mm inside, then the middle of 8 to 15 %
    assert (first_remedy["designation"], first_remedy["groove_mm"]) == ("105", pytest.approx(3.63 * 1.02))
    assert (first_remedy["squeeze"], first_remedy["stretch"], first_remedy["undoable"]) == (
        pytest.approx(0.115),
        pytest.approx(0.02),
        False,
    )
    assert (first_remedy["sleeve_mm"], first_remedy["width_mm"]) == pytest.approx((8.32, 2.86), abs=0.005)
    assert (
        "turned down to 3.70 mm (now 6.90) and the bore were sleeved to 8.32 mm inside (a wall of 0.29 mm)"
        in first_remedy["sentence"]
    )


def test_where_no_ring_touches_there_is_no_drag():
    last = ask(SEAL, **HEAD, all="yes").data["candidates"]
    loose = next(c for c in last if c["squeeze_nominal"] <= 0)
    assert (loose["friction_running_n"], loose["friction_breakout_n"]) == (None, None)
    with pytest.raises(InputError, match=r"bore and groove of a head, or rod and housing of a packing"):
        ask(SEAL, **HEAD, rod="3 mm", housing="6 mm")


def test_of_rings_as_good_the_one_stretched_nearest_two_per_cent_comes_first():
    # 4.50 mm over 4.41 mm is 2.0 %, over 4.39 mm 2.5 %; of one section, so that squeeze and fill hardly differ
    for stock in ("1.78±0.02x4.41±0.05; 1.78±0.02x4.39±0.05", "1.78±0.02x4.39±0.05; 1.78±0.02x4.41±0.05"):
        texts = {
            "bore": "7.40 mm",
            "groove": "4.50 mm",
            "width": "2.4 mm",
            "from": "stock",
            "stock": stock,
            "all": "yes",
        }
        first, second = ask(SEAL, **texts).table[1:3]
        assert (first[1], second[1]) == ("4.41 mm", "4.39 mm")


def test_what_lies_in_the_drawer_comes_first_of_what_fits_alike_and_never_before_a_better_one():
    bare = ask(SEAL, **HEAD).data["candidates"]
    assert not any(one["in_drawer"] for one in bare)
    best = bare[0]
    again = f"mine={best['section_mm']:.2f}±0.08 x {best['inside_mm']:.2f}±0.12"  # as doubtful as the table's own
    answer = ask(SEAL, **HEAD, drawer=f"far=1.78x9.9; {again}")
    found = answer.data["candidates"]
    assert (found[0]["designation"], found[0]["in_drawer"]) == ("mine", True)
    assert found[0]["verdict"] == best["verdict"]
    assert ", in the drawer)" in answer.sentence
    whole = ask(SEAL, **HEAD, drawer="far=1.78x9.9", all="yes").data["candidates"]
    assert whole[0]["designation"] == best["designation"]
    far = next(place for place, one in enumerate(whole) if one["designation"] == "far")
    order = ("fits", "measure it", "with a reservation")
    assert whole[far]["verdict"] not in order
    # of those that do not fit, the nearest comes first wherever it lies
    assert [one["designation"] for one in whole if not one["in_drawer"]] == [one["designation"] for one in ask(SEAL, **HEAD, all="yes").data["candidates"]]  # fmt: skip
    assert whole[far - 1]["verdict"] == whole[far]["verdict"]
