"""The sum abrasives: options in, JSON out; its example and that of the sum grade."""

import json

import pytest
from ranges import takes_only

from pentools.calc.treatment.limits import CompatibilityRow, Overrule, treatment_limits
from pentools.errors import InputError
from pentools.sums.base import Inputs, read_options
from pentools.sums.finish.abrasives import ABRASIVES, progression_answer, read_defect, read_finish, read_owned
from pentools.sums.finish.grade import GRADE
from pentools.tables import read

SHEETS = "P400; P600; P800; P1200; P2000; film 9 um; film 5 um; film 3 um"


def ask(one, **texts):
    return one.run(read_options(one.fields, texts))


def plan(**texts):
    return ask(
        ABRASIVES,
        **{"material": "celluloid", "zone": "plain barrel", "trim": "solid", "defect": "60 um", "own": SHEETS, **texts},
    )


def test_options_are_the_ones_promised():
    options = {field.option for field in ABRASIVES.fields}
    assert {"--material", "--defect", "--finish", "--own", "--zone"} <= options
    assert GRADE.positional == GRADE.fields[0].name == "grade"


def test_json_keys():
    data = json.loads(json.dumps(plan().data))
    assert {"steps", "removed_total_um", "budget_um", "findings"} <= set(data)
    assert {"scale", "grade", "particle_um", "finish_um", "ratio", "removed_um", "unmask", "wet", "note"} <= set(
        data["steps"][0]
    )
    assert data["steps"][0]["ratio"] is None
    assert data["budget_um"] == 50
    assert data["removed_total_um"] == pytest.approx(sum(s["removed_um"] for s in data["steps"]), abs=0.01)
    assert [s["grade"] for s in data["steps"] if s["unmask"]] == ["5"]
    assert data["unmask_at"] == "film 5 µm"
    assert data["findings"][0]["level"] == "stop"
    assert data["reduced"]["removed_total_high_um"] <= 50
    assert data["reduced"]["reduced"] is None


def test_every_figure_of_a_plan_stands_in_its_json():
    """34 µm, k = 0.10 (0.05 to 0.15), s = 2, a twelfth of the grain a minute with a factor of 3 either way; by hand."""
    answer = plan(defect="34 um", own="P600; P1200; film 9 um; film 5 um; film 3 um; P2000", spent="2 um")
    data = answer.data
    second = data["steps"][1]
    # 2 · 0.10 · 25.8; 2 · 0.05 · 24.8 and 2 · 0.15 · 26.8: the grade's own spread goes with it
    assert (second["removed_um"], second["removed_low_um"], second["removed_high_um"]) == (5.16, 2.48, 8.04)
    assert (second["step"], second["scale"], second["grade"], second["label"], second["ratio"]) == (
        2,
        "P",
        "1200",
        "P1200",
        1.686,
    )
    assert (second["particle_um"], second["particle_low_um"], second["particle_high_um"], second["finish_um"]) == (
        15.3,
        14.3,
        16.3,
        15.3,
    )
    assert second["cumulative_um"] == 39.16
    # 5.16/1.275, 2.48/3.825 and 8.04/0.425 min
    assert (second["minutes"], second["minutes_low"], second["minutes_high"]) == (4.047, 0.648, 18.918)
    assert (second["calibrated"], second["unmask"], second["wet"], second["direction"]) == (
        False,
        False,
        True,
        "around the barrel",
    )
    assert (data["removed_total_um"], data["removed_total_low_um"], data["removed_total_high_um"]) == (
        45.02,
        39.184,
        51.508,
    )
    assert (data["defect_um"], data["finish_um"], data["finish_low_um"], data["finish_high_um"]) == (34, 3, 2, 4)
    assert (data["budget_um"], data["budget_low_um"], data["within_budget"]) == (48, 28, False)
    assert (data["scratch_share"], data["stock_factor"]) == ({"low": 0.05, "typical": 0.1, "high": 0.15}, 2)
    assert (data["material"], data["zone"], data["trim"]) == ("celluloid", "plain barrel", "solid")
    assert data["blend"] == {"run_out_mm": 0.68, "area_low_mm": None, "area_high_mm": None}
    reduce, finer = data["alternatives"]
    # 48 - 17.508 µm of the finishing steps' upper end, in 30.492/2.15 min
    assert (reduce["kind"], reduce["left_um"], reduce["removed_um"], reduce["removed_high_um"]) == (
        "reduce",
        3.508,
        41.512,
        48,
    )
    assert (reduce["start"], reduce["first_minutes"], reduce["within_budget"]) == ("P600", 14.182, True)
    assert (finer["start"], finer["first_minutes"], finer["removed_high_um"], finer["left_um"]) == (
        "P1200",
        26.667,
        43.468,
        0,
    )
    assert data["set_aside"] == [
        {"grade": "P2000", "reason": "Not needed: it lies so near P1200 or the grade after it that it would do little."}
    ]
    assert answer.table[0] == (
        "step",
        "grade",
        "grain µm",
        "finish µm",
        "ratio",
        "removed µm",
        "so far µm",
        "min",
        "wet",
        "trim",
    )
    assert answer.table[1] == ("1", "P600", "25.8", "25.8", "", "34", "34", "16", "wet", "")
    assert answer.table[4] == ("4", "film 5 µm", "5", "5", "1.80", "1.8", "44", "4.3", "wet", "unmask")
    assert answer.sentence == (
        "P600, P1200, film 9 µm, film 5 µm, film 3 µm: about 45 µm a side (39 to 52), finish like 3 µm: possibly over the 48 µm that can be "
        "spared. Reduce the defect, do not remove it: leave about 3.5 µm of it."
    )
    cloth = plan(defect="30 um", finish="10.5 um", own="P600; cloth 2000; cloth 3000").table
    assert cloth[2][2:4] == ("23", "15")
    assert plan(material="ebonite", defect="5 um", own="film 3 um").table[1][8:] == ("dry", "unmask")


def test_the_bench_s_own_word_on_sanding_and_on_a_wheel_reach_their_own_places():
    rows = read(CompatibilityRow, "compatibility")
    may = treatment_limits(
        "celluloid", "wet sanding", rows, overrule=Overrule("limited", "a test piece", limit="by hand")
    )
    never = treatment_limits("celluloid", "buffing wheel", rows, overrule=Overrule("never", "it burnt once"))
    given = Inputs(
        read_options(
            ABRASIVES.fields, {"material": "celluloid", "zone": "plain barrel", "defect": "5 um", "own": "film 3 um"}
        )
    )
    told = {f.topic: f.text for f in progression_answer(given, sanding=may, wheel=never).findings}
    assert (told["sanding"], told["wheel"]) == ("Sanding: by hand. A test piece.", "A wheel: never. It burnt once.")


def test_a_stop_is_the_last_word_of_the_sentence():
    spent = plan(zone="near an imprint", spent="10 um", defect="10 um")
    assert spent.data["reduced"] is None
    assert ". Do not do it: Over budget: the plan takes " in spent.sentence
    given = plan(own="P600; P400", as_given="yes", defect="5 um", finish="35 um")
    assert ". Do not do it: P600 to P400 goes coarser by particle: 25.8 µm to 35 µm." in given.sentence
    both = plan(own="9 um; P600; 3 micron", defect="5 um")
    note = next(f for f in both.findings if f.topic == "film-assumed")
    assert (note.level, note.text) == (
        "note",
        "9 um and 3 micron without a word for what carries the grain: read as lapping film.",
    )


def test_sentences():
    assert "Reduce the defect, do not remove it" in plan().sentence
    assert "over" not in plan(defect="8 um").sentence
    assert plan(zone="imprint").sentence.startswith("Leave the zone")
    assert plan(zone="imprint").table == ()
    assert [row[1] for row in plan().table[1:]] == [s["label"] for s in plan().data["steps"]]


def test_the_worked_stock_sums():
    ladder = "P600; P1200; film 9 um; film 5 um; film 3 um; film 2 um"
    assert plan(defect="20 um", finish="2 um", own=ladder, scratch_share="0.10").data[
        "removed_total_um"
    ] == pytest.approx(31.62, abs=0.005)
    assert plan(defect="20 um", finish="2 um", own=ladder, scratch_share="0.15", stock_factor="3").data[
        "removed_total_um"
    ] == pytest.approx(46.145, abs=0.005)


@pytest.mark.parametrize(
    ("text", "depth"),
    [("40 um", (40, 40, 40)), ("40 ± 5 um", (30, 40, 50)), ("0.04 mm", (40, 40, 40)), ("deep scratch", (15, 22, 30))],
)
def test_defects(text, depth):
    found = read_defect(text)
    assert (found.low, found.typical, found.high) == pytest.approx(depth)


def test_how_deep_and_how_fine_a_size_may_be():
    # judged: a tenth of a micrometre is no scratch, more than 300 µm no polishing; finishes as the planner takes them
    takes_only(lambda um: read_defect(f"{um:.9g} um"), 0.1, 300)
    takes_only(lambda um: read_finish(f"{um:.9g} um"), 0.01, 100)
    takes_only(lambda um: read_finish(f"{um / 1000:.12f} mm"), 0.01, 100)
    takes_only(lambda um: read_owned(("cloth 2000",), (f"cloth 2000 = {um:.9g} um",)), 0.1, 60)
    assert read_defect("4 ± 5 um").low == 0  # the interval is twice the standard uncertainty, and no depth is below 0


@pytest.mark.parametrize("text", ["40", "big", "40 g", "4 mm", "-3 um"])
def test_defects_refused(text):
    with pytest.raises(InputError):
        read_defect(text)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("gloss", (2, 3, 4)), ("Satin", (7, 9, 13)), ("film 3 um", (2.4, 3, 3.3)), ("3 um", (2.4, 3, 3.3)),
        ("P2500", (6.72, 8.4, 9.24)), ("9 um film", (7.2, 9, 9.9)), ("0.002 mm", (1.6, 2, 2.2)), ("cloth 7000", (4, 5, 5.5)),
    ],
)  # fmt: skip
def test_finishes(text, ends):
    found = read_finish(text)
    assert (found.low, found.typical, found.high) == pytest.approx(ends)


@pytest.mark.parametrize("text", ["12000", "9", "mirror", "CAMI 1000"])
def test_finishes_refused(text):
    with pytest.raises(InputError):
        read_finish(text)


def test_own_finish_figures():
    (cloth,) = read_owned(("cushioned cloth 2000",), ("cushioned cloth 2000 = 18 um",))
    assert (cloth.particle_um, cloth.finish_um) == (23, 18)
    for bad in ("P400 = 18 um", "cushioned cloth 2000", "cushioned cloth 2000 = 18"):
        with pytest.raises(InputError):
            read_owned(("cushioned cloth 2000",), (bad,))
    data = plan(
        own="P600; cloth 2000; film 9 um; film 3 um", cushioned_finish="cloth 2000 = 18 um", defect="20 um"
    ).data
    assert (data["steps"][1]["particle_um"], data["steps"][1]["finish_um"]) == (23, 18)


def test_a_ladder_is_judged_as_given():
    data = plan(own="CAMI 320; CAMI 400; P600; P800", as_given="yes", defect="20 um").data
    assert [s["label"] for s in data["steps"]] == ["CAMI 320", "CAMI 400", "P600", "P800"]
    assert any("23 µm to 25.8 µm" in f["text"] for f in data["findings"] if f["level"] == "stop")


@pytest.mark.parametrize(
    "texts",
    [
        {"own": "400; film 9 um"},
        {"own": "CAMI 800"},
        {"own": ""},
        {"zone": "moon"},
        {"wall": "1.1"},
        {"stock_factor": "9"},
    ],
)
def test_refusals(texts):
    with pytest.raises(InputError):
        plan(**texts)


def test_wall_spent_and_length():
    data = plan(defect="10 um", wall="0.25 mm", spent="5 um", defect_length="6 mm").data
    assert data["budget_um"] == 20
    assert data["blend"] == {"run_out_mm": 0.2, "area_low_mm": 12, "area_high_mm": 18}


@pytest.mark.parametrize("one", [ABRASIVES, GRADE], ids=lambda s: s.key)
def test_the_example_works_as_it_stands(one):
    import shlex

    words = shlex.split(one.example)[3:]
    if one.positional:
        texts = {one.positional: words[0]}
    else:
        texts = {
            name.removeprefix("--").replace("-", "_"): text for name, text in zip(words[::2], words[1::2], strict=True)
        }
    assert ask(one, **texts).sentence


def texts_of(answer, *levels):
    return [f.text for f in answer.findings if f.level in levels]


def test_what_is_not_said_is_the_strictest_and_is_named():
    answer = plan(zone="", trim="", material="")
    assert answer.data["not_said"] == ["material", "zone", "trim"]
    assert answer.data["steps"] == []
    assert "named" in answer.sentence
    no_zone = plan(zone="", trim="", defect="20 um")
    assert no_zone.data["not_said"] == ["zone", "trim"]
    assert (no_zone.data["budget_um"], no_zone.data["within_budget"], no_zone.data["unmask_at"]) == (0, False, None)
    assert no_zone.sentence.startswith("Not yet: where on the pen is not said")
    assert "30 to 50 µm" in no_zone.sentence
    assert any("Name the zone" in text for text in texts_of(no_zone, "stop"))
    assert any("taken as plated" in text for text in texts_of(no_zone, "warning"))
    said = plan(defect="20 um")
    assert said.data["not_said"] == []
    assert [s["label"] for s in said.data["steps"]] == [s["label"] for s in no_zone.data["steps"]]


@pytest.mark.parametrize("material", ["cheese", "plastic", "perhaps celluloid", "unknown", "?"])
def test_a_material_that_is_not_named_takes_no_abrasive(material):
    answer = plan(material=material)
    assert answer.data["material"] == "unknown"
    assert answer.data["steps"] == []
    assert answer.findings[0].topic == "material-not-named"
    assert answer.sentence == answer.findings[0].text


@pytest.mark.parametrize(
    ("material", "name", "budget"),
    [
        ("gold-filled", "gold-filled", 0.5), ("rolled gold", "gold-filled", 0.5), ("rolled gold plate", "gold-filled", 0.5),
        ("gold plated brass", "plated metal", 0), ("plated metal", "plated metal", 0), ("chrome plated", "plated metal", 0),
        ("rhodium-plated", "plated metal", 0), ("vermeil", "plated metal", 0), ("silver overlay", "metal overlay", 0),
        ("gold-filled overlay", "metal overlay", 0), ("lacquered brass", "lacquer", 1), ("urushi", "lacquer", 1),
        ("sterling silver", "silver", 0.5), ("solid gold", "gold nib", 5), ("brass", "brass", 10), ("celluloid", "celluloid", 0),
    ],
)  # fmt: skip
def test_the_surface_decides_what_can_be_spared(material, name, budget):
    data = plan(material=material, zone="", defect="light scratch", own=SHEETS + "; paste 1 um").data
    assert (data["material"], data["budget_um"]) == (name, budget)
    # said to be a plain barrel it can spare no more than its surface
    assert plan(material=material, defect="light scratch").data["budget_um"] == (50 if name == "celluloid" else budget)
    assert plan(material=material, zone="imprint", defect="light scratch").data["budget_um"] == 0


def test_a_light_scratch_in_gold_filled_is_no_ok():
    answer = plan(material="gold-filled", zone="plain barrel", defect="light scratch", own=SHEETS + "; paste 1 um")
    assert [s["label"] for s in answer.data["steps"]] == ["paste 1 µm"]
    assert not answer.data["within_budget"]
    assert not [f for f in answer.findings if f.level == "ok"]
    assert "over the 0.5 µm" in answer.sentence


def test_silver_obeys_the_table():
    answer = plan(material="silver", zone="", defect="light scratch", own="P2000")
    assert answer.data["steps"] == []
    assert answer.findings[0].level == "stop"
    assert "takes silver away" in answer.sentence


def test_red_hard_rubber_is_always_wet():
    for words in ("red hard rubber", "coloured hard rubber", "mottled hard rubber"):
        answer = plan(material=words, defect="light scratch")
        assert {s["wet"] for s in answer.data["steps"]} == {True}
        assert any("gloves" in text for text in texts_of(answer, "note"))
    assert {s["wet"] for s in plan(material="ebonite", defect="light scratch").data["steps"]} == {False}


def test_a_satin_is_a_satin():
    data = plan(finish="satin", defect="20 um").data
    assert data["steps"][-1]["label"] == "film 9 µm"
    assert (data["finish_um"], data["finish_low_um"], data["finish_high_um"]) == (9, 7, 13)
    light = plan(finish="satin", defect="2 um").data
    assert [s["label"] for s in light["steps"]] == ["film 9 µm"]


def test_no_number_of_a_sentence_has_an_exponent():
    answer = plan(defect="290 um", own="P400; film 3 um", time_limit="240 min")
    text = " ".join(
        [answer.sentence, *(f.text for f in answer.findings), *(cell for row in answer.table for cell in row)]
    )
    assert "e+" not in text
    assert "300 µm" in text
