"""The capacity sum through the command line: words, JSON keys, what is handed on, refusals."""

import json
import math

import pytest

from pentools.cli import main
from pentools.sums import SUMS, find
from pentools.sums.base import read_options
from pentools.sums.weighing.fields import dimension_fields, needed_dimensions
from pentools.systems.registry import SYSTEMS

WEIGHED = ["--empty", "23.26 g; 23.25 g; 23,26 g", "--filled", "25.06 g"]
PISTON = ["--system", "piston", "--bore", "9.0 mm", "--stroke", "28.3 mm"]
PLUNGER = ["--system", "plunger-vacuum", "--bore", "8.5 mm", "--rod", "2.6 mm", "--stroke", "62 mm"]


def run(capsys, *words):
    code = main(["sums", *words])
    out = capsys.readouterr()
    return code, out.out, out.err


def answer(capsys, *words):
    code, out, err = run(capsys, "capacity", *words, "--json")
    assert code == 0, err
    return json.loads(out)


def worked_out(typed):
    chosen = find("capacity")
    return chosen.run(read_options(chosen.fields, typed))


def topics(data):
    return [f["topic"] for f in data["findings"]]


def pair(empty, filled):
    return ["--empty", empty, "--filled", filled]


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (WEIGHED, "It draws 1.79\u202fmL ± 0.05."),
        (
            pair("23.26 g", "25.06 g") + PISTON,
            "It draws 1.79\u202fmL ± 0.05, 100\u202f% of what the stroke sweeps, as is usual.",
        ),
        (
            pair("20.00 g", "21.13 g") + PISTON,
            "It draws 1.12\u202fmL ± 0.05, 62\u202f% of what the stroke sweeps; the head seal is the first suspect.",
        ),
        (
            [*pair("20.00 g", "21.21 g"), *PISTON, "--start", "drained"],
            "It draws 1.20\u202fmL ± 0.05, 67\u202f% of what the stroke sweeps; whether that is short cannot be told.",
        ),
        (
            pair("20.00 g", "23.00 g") + PISTON,
            "It draws 3.00\u202fmL ± 0.05, 166\u202f% of what the stroke sweeps; that is more than it can hold.",
        ),
        (pair("23.26 g", "23.27 g"), "What it draws cannot be told from nothing: at most 0.044 mL."),
        (
            pair("23.2 g", "23.3 g") + PLUNGER,
            "What it draws cannot be told from nothing: at most 0.48 mL, 15\u202f% of what the stroke sweeps beside its rod; "
            "the head seal is the first suspect.",
        ),
    ],
)
def test_the_sentence(capsys, words, sentence):
    assert answer(capsys, *words)["sentence"] == sentence


def test_as_json(capsys):
    data = answer(capsys, *WEIGHED, *PISTON)
    assert set(data) >= {
        "volume_ml", "standard_uncertainty_ml", "expanded_uncertainty_ml", "coverage_factor", "degrees_of_freedom",
        "z_ml_per_g", "gained_g", "start", "budget", "expected_ml", "share_filled", "implied_pressure_kpa", "findings",
    }  # fmt: skip
    assert data["share_filled"] == pytest.approx(data["volume_ml"] / data["expected_ml"])
    assert data["volume_ml"] == pytest.approx((data["gained_g"] + data["correction_g"]) * data["z_ml_per_g"])
    assert sum(row["share"] for row in data["budget"]) == pytest.approx(1)
    assert sum(row["standard_uncertainty"] ** 2 for row in data["budget"]) == pytest.approx(
        data["standard_uncertainty_ml"] ** 2
    )
    assert all(set(f) >= {"level", "text"} for f in data["findings"])
    assert (data["verdict"], data["first_suspect"], data["gain_told"]) == ("as usual", None, True)
    assert (data["usual_share_typical"], data["usual_share_certainty"]) == (0.88, "judged")
    assert data["implied_pressure_kpa"] is None


def test_without_dimensions_what_it_should_hold_is_null(capsys):
    data = answer(capsys, *WEIGHED)
    for key in ("expected_ml", "share_filled", "verdict", "usual_share_low", "first_suspect"):
        assert data[key] is None


def test_the_digits_typed_bound_the_readability(capsys):
    coarse = answer(capsys, *pair("23.2 g", "25.0 g"))
    assert coarse["readability_g"] == 0.1
    assert coarse["expanded_uncertainty_ml"] > 0.4
    assert topics(coarse)[0] == "digits-typed"
    fine = answer(capsys, *pair("23.20 g", "25.00 g"))
    assert fine["expanded_uncertainty_ml"] == pytest.approx(0.052, abs=0.001)
    assert "digits-typed" not in topics(fine)
    # one coarse reading among fine ones makes them all coarse, and so does a coarse one of the other state
    assert answer(capsys, *pair("23.26 g; 23.2 g", "25.06 g"))["readability_g"] == 0.1
    assert answer(capsys, *pair("23.26 g", "25 g"))["readability_g"] == 1.0
    said = answer(capsys, *pair("23.2 g", "25.0 g"), "--readability", "0.1 g")
    assert "digits-typed" not in topics(said)
    assert said["standard_uncertainty_ml"] == pytest.approx(coarse["standard_uncertainty_ml"])
    assert answer(capsys, *pair("23260 mg", "25060 mg"), "--readability", "0.001 g")["readability_g"] == 0.001


@pytest.mark.parametrize(
    ("option", "source", "times"),
    # by hand: √2/√3 of a half-width twice over; the mean of one and one reading √2; two roundings a weighing 2/√12
    [
        ("--linearity", "linearity, counted twice", 0.8165),
        ("--eccentricity", "eccentric loading, two weighings", 0.8165),
        ("--repeatability", "repeatability, two means", 1.4142),
        ("--readability", "readability, two roundings a weighing", 0.57735),
        ("--evaporation", "evaporation between weighings", 0.28868),
        ("--drop", "drop left at the nib", 0.28868),
    ],
)
def test_each_figure_reaches_its_own_line_of_the_budget(capsys, option, source, times):
    data = answer(capsys, *pair("23.26 g", "25.06 g"), option, "0.18 g")
    found = {row["source"]: row["standard_uncertainty"] for row in data["budget"]}
    assert found[source] == pytest.approx(0.18 * times * data["z_ml_per_g"], rel=1e-3)


def test_a_drop_is_taken_off_and_evaporation_added(capsys):
    assert answer(capsys, *WEIGHED)["correction_g"] == pytest.approx(-0.4 * 0.04 + 0.0025)
    assert answer(capsys, *WEIGHED, "--drop", "0 g", "--evaporation", "0.1 g")["correction_g"] == pytest.approx(0.05)


def test_drained_is_handed_on_to_the_diagnosis(capsys):
    # by hand: 0.32 mL of 1.80 mL are 17.8 points: below from drained, above from dry
    pens = {
        start: answer(capsys, *pair("23.57 g", "25.06 g"), *PISTON, "--start", start) for start in ("dry", "drained")
    }
    assert pens["drained"]["usual_share_low"] == pytest.approx(0.75 - 0.1777, abs=1e-4)
    assert pens["drained"]["usual_share_high"] == 1.0
    assert pens["dry"]["usual_share_low"] == 0.75
    assert pens["dry"]["usual_share_high"] == pytest.approx(1.1777, abs=1e-4)
    assert [pens[start]["start"] for start in pens] == ["dry", "drained"]
    assert pens["drained"]["first_suspect"] is None
    assert pens["drained"]["verdict"] == "as usual"


def test_what_this_pen_keeps_decides_what_could_not_be_told(capsys):
    words = [*pair("20.00 g", "21.21 g"), *PISTON, "--start", "drained"]
    assert answer(capsys, *words)["verdict"] == "cannot tell"
    little = answer(capsys, *words, "--kept", "0.05 ± 0.01 ml")
    assert little["verdict"] == "short"
    assert little["usual_share_low"] == pytest.approx(0.75 - 0.07 / little["expected_ml"])
    plain = answer(capsys, *words, "--kept", "0.05 ml")  # a drop's 0.03 mL where nothing was typed with it
    assert plain["usual_share_low"] == pytest.approx(0.75 - 0.11 / little["expected_ml"])


def test_a_sacs_usual_share_is_told_of_what_pressing_empties(capsys):
    sac = ["--system", "lever-sac", "--outside", "7.0 mm", "--length", "60 mm", "--start", "dry"]
    data = answer(capsys, *pair("20.00 g", "21.00 g"), *sac)
    # the table: 0.45 to 0.75 of the whole inside, 0.60 typically; the kit: three quarters of it pressed empty
    assert (data["usual_share_low"], data["usual_share_typical"]) == pytest.approx((0.6, 0.8))


def test_a_plunger_gives_the_implied_pressure_a_bound_or_nothing(capsys):
    low = answer(capsys, *pair("20.00 g", "22.50 g"), *PLUNGER)
    assert low["implied_pressure_kpa"] == pytest.approx((101.3 - 0.587) * (1 - low["share_filled"]), abs=0.01)
    assert low["implied_pressure_at_most_kpa"] is None
    full = answer(capsys, *pair("20.00 g", "23.19 g"), *PLUNGER)
    assert full["implied_pressure_kpa"] is None
    assert 0 < full["implied_pressure_at_most_kpa"] < 5
    nothing = answer(capsys, *pair("20.0 g", "20.1 g"), *PLUNGER)
    assert (nothing["implied_pressure_kpa"], nothing["implied_pressure_at_most_kpa"]) == (None, None)
    assert not any(topic.startswith("vacuum") for topic in topics(nothing))
    thin = answer(capsys, *pair("20.00 g", "22.50 g"), *PLUNGER, "--pressure", "80 kPa", "--head", "0 mm")
    assert thin["implied_pressure_kpa"] == pytest.approx(80 * (1 - thin["share_filled"]), rel=1e-9)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--empty", "23.26", "--filled", "25.06 g"], "unit is missing"),
        (["--empty", "25.06 g", "--filled", "23.26 g"], "mixed up"),
        (["--empty", "23.26 mm", "--filled", "25.06 g"], "unit of length"),
        (["--empty", "23.26 g"], "filled in"),
        (["--empty", "23.26 g", "--filled", "25 g", "--liquid", "oil"], "one of"),
        (["--empty", "23.26 g", "--filled", "25 g", "--temperature", "70 °C"], "another unit"),
        (["--empty", "23.26 g", "--filled", "25 g", "--wrong", "1"], "unrecognized"),
        ([*WEIGHED, "--liquid", "ink", "--ink-mass", "2.0 g"], "same mark"),
    ],
)
def test_refused_in_a_sentence(capsys, words, said):
    try:
        code = main(["sums", "capacity", *words])
    except SystemExit as stop:
        code = stop.code
    err = capsys.readouterr().err
    assert code == 2
    assert said in err
    assert "Traceback" not in err


def test_ink_by_assumption_density_or_syringe(capsys):
    def ink(*more):
        return answer(capsys, *WEIGHED, "--liquid", "ink", *more)

    assumed = ink()
    assert "ink-density" in topics(assumed)
    # by hand: 1/(1.005 - 0.0012) less the lift of the weights, 1.00 - 0.00015
    assert assumed["z_ml_per_g"] == pytest.approx(0.99606, abs=2e-5)
    given = ink("--ink-density", "1.02 ± 0.001 g/ml")
    assert given["z_ml_per_g"] == pytest.approx(0.98140, abs=2e-5)
    assert given["standard_uncertainty_ml"] < assumed["standard_uncertainty_ml"]
    assert "ink-density" in topics(ink("--ink-density", "1.02 g/ml"))
    syringe = ink("--ink-mass", "2.040 g", "--water-mass", "2.000 g")
    assert syringe["z_ml_per_g"] == pytest.approx(0.99821 / 1.0182 * 1.00285, rel=2e-4)
    coarse = ink("--ink-mass", "2.04 g", "--water-mass", "2.0 g")
    density = [next(r for r in d["budget"] if r["source"] == "density of the liquid") for d in (syringe, coarse)]
    assert density[1]["standard_uncertainty"] > 5 * density[0]["standard_uncertainty"]


def test_nothing_typed_is_dropped_in_silence(capsys):
    assert "ink-unused" in topics(answer(capsys, *WEIGHED, "--ink-density", "1.02 g/ml"))
    assert "system-missing" in topics(answer(capsys, *WEIGHED, "--bore", "9 mm", "--stroke", "31 mm"))
    unused = answer(capsys, *WEIGHED, *PISTON, "--outside", "7 mm")
    assert "Not used for this filling system: sac outside diameter." in [f["text"] for f in unused["findings"]]
    missing = answer(capsys, *WEIGHED, "--system", "plunger-vacuum", "--bore", "8.5 mm")
    [text] = [f["text"] for f in missing["findings"] if f["topic"] == "dimensions-missing"]
    assert text == "What it should hold is not known: measure rod and stroke."
    quiet = answer(capsys, *WEIGHED, *PISTON)
    assert not {*topics(quiet)} & {"ink-unused", "system-missing", "dimensions-unused", "dimensions-missing"}


def test_a_typed_uncertainty_of_a_mass_counts(capsys):
    plain = answer(capsys, *pair("23.26 g", "25.06 g"))
    doubtful = answer(capsys, *pair("23.26 ± 0.1 g", "25.06 g"))
    assert doubtful["standard_uncertainty_ml"] > 0.14 > 0.03 > plain["standard_uncertainty_ml"]
    fine = {row["source"]: row["standard_uncertainty"] for row in plain["budget"]}
    for row in doubtful["budget"]:
        if not row["source"].startswith("repeatability"):
            assert row["standard_uncertainty"] == pytest.approx(fine[row["source"]])


def test_wide_scatter_is_not_hidden_by_few_readings(capsys):
    data = answer(capsys, *pair("23.10 g; 23.40 g", "25.06 g"))
    assert "scatter-empty" in topics(data)
    assert data["expanded_uncertainty_ml"] > 0.3
    assert data["degrees_of_freedom"] < 10


def test_the_level_of_confidence_can_be_chosen(capsys):
    data = answer(capsys, *WEIGHED, "--level", "95.45 %")
    assert data["level_of_confidence"] == pytest.approx(0.9545)
    assert data["coverage_factor"] == pytest.approx(2.0, abs=1e-4)
    assert data["expanded_uncertainty_ml"] == pytest.approx(data["coverage_factor"] * data["standard_uncertainty_ml"])


def test_doubts_of_the_dimensions(capsys):
    # by hand: V = π/4 9² 28.3 = 1.8004 mL; u/V = √((2 u/9)² + (u/28.3)²), a stroke read by a depth rod to 0.2 mm
    def doubt(*more):
        return answer(capsys, *WEIGHED, *(more or PISTON))["expected_standard_uncertainty_ml"]

    assert doubt() == pytest.approx(1.8004 * ((0.04 / 9) ** 2 + (0.2 / 28.3) ** 2) ** 0.5, rel=1e-3)
    coarse = doubt(*PISTON, "--caliper", "0.3 mm")
    assert coarse == pytest.approx(1.8004 * ((0.6 / 9) ** 2 + (0.3 / 28.3) ** 2) ** 0.5, rel=1e-3)
    typed = doubt("--system", "piston", "--bore", "9.0 ± 0.3 mm", "--stroke", "28.3 ± 0.1 mm")
    assert typed == pytest.approx(1.8004 * ((0.6 / 9) ** 2 + (0.1 / 28.3) ** 2) ** 0.5, rel=1e-3)
    sac = ["--system", "lever-sac", "--outside", "7.0 ± 0 mm", "--length", "60 ± 0 mm", "--wall", "0.5 ± 0 mm"]
    # a share typed without ± is known to 0.05, a volume to a tenth
    data = answer(capsys, *WEIGHED, *sac, "--pressed-share", "80 %")
    assert data["expected_standard_uncertainty_ml"] / data["expected_ml"] == pytest.approx(0.05 / 0.8)
    pump = [
        "--system",
        "diaphragm-pump",
        "--bore",
        "8 mm",
        "--reach",
        "40 mm",
        "--strokes",
        "3",
        "--tube-volume",
        "0.03 ± 0 ml",
    ]
    data = answer(capsys, *pair("20.00 g", "20.74 g"), *pump, "--stroke-volume", "0.28 ml")
    assert data["expected_standard_uncertainty_ml"] == pytest.approx(3 * 0.028)


def test_a_typed_uncertainty_of_the_room_is_one_standard_uncertainty(capsys):
    # by hand: dZ/dt near 21 °C is 2.15e-4 mL/g a kelvin; 1.7865 g and ± 3 °C make 1.152 µL
    data = answer(capsys, *pair("23.26 g", "25.06 g"), "--temperature", "21 ± 3 °C", "--humidity", "20 %")
    [row] = [r for r in data["budget"] if r["source"] == "temperature"]
    assert row["standard_uncertainty"] == pytest.approx(1.7865 * 2.15e-4 * 3, rel=0.01)


def test_strokes_of_a_pump_set_what_it_should_hold(capsys):
    shape = ["--system", "diaphragm-pump", "--bore", "8 mm", "--reach", "40 mm", "--stroke-volume", "0.28 ml"]
    data = answer(capsys, *pair("20.00 g", "20.74 g"), *shape, "--strokes", "3")
    assert data["expected_ml"] == pytest.approx(0.75)
    assert data["share_filled"] == pytest.approx(0.97, abs=0.01)
    assert "what 3 strokes bring" in data["sentence"]


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_gives_a_verdict_with_reasons(capsys, system):
    some = {"bore": "9 mm", "rod": "2 mm", "stroke": "30 mm", "outside": "7 mm", "length": "60 mm", "reach": "50 mm", "depth": "50 mm"}  # fmt: skip
    words = [word for name in needed_dimensions(system) for word in (f"--{name}", some[name])]
    short = answer(capsys, *pair("20.00 g", "20.20 g"), "--system", system, *words)
    assert 0 < short["share_filled"] < 0.5
    assert short["sentence"].endswith(f"{short['first_suspect']} is the first suspect.")
    assert sum(topic.startswith("suspect-") for topic in topics(short)) >= 2
    assert (short["implied_pressure_kpa"] is not None) == (system == "plunger-vacuum")
    full = short["expected_ml"] * short["usual_share_typical"]
    sound = answer(capsys, *pair("20.00 g", f"{20 + full / 1.00285:.2f} g"), "--system", system, *words)
    assert (sound["verdict"], sound["first_suspect"]) == ("as usual", None)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_can_be_asked(system):
    fields = dimension_fields(system)
    assert fields
    assert {f.name for f in fields} <= {f.name for f in find("capacity").fields}


def test_the_table_says_how_it_was_worked_out(capsys):
    _, out, _ = run(capsys, "capacity", *pair("23.57 g", "25.06 g"), *PISTON, "--start", "drained")
    for words in (
        "1.490 g",
        "-0.013 g",
        "1.00285 mL/g",
        "k = 1.96, 95\u202f%",
        "57 to 100\u202f%",
        "of sound ones, from drained",
    ):
        assert words in out


def test_the_table_gives_each_part_of_the_doubt_in_microlitres():
    # by hand, after JCGM 100: two roundings d/√12 a weighing, two means of 0.01 g, 0.02 g and 0.01 g of half-width over
    # √3, each twice over; 1.00285 mL to a gram
    table = worked_out({"empty": "23.57 g", "filled": "25.06 g"}).table
    in_ul = {row[0].split(",")[0]: row[1] for row in table if row[1].endswith("µL")}
    by_hand = {
        "readability": 2 * 10 / math.sqrt(12),
        "repeatability": math.sqrt(2) * 10,
        "linearity": math.sqrt(2) * 20 / math.sqrt(3),
        "eccentric loading": math.sqrt(2) * 10 / math.sqrt(3),
    }
    for source, mg in by_hand.items():
        assert float(in_ul[source].split()[0]) == pytest.approx(1.00285 * mg, rel=0.03), (
            source
        )  # two figures are printed


@pytest.mark.parametrize(("level", "k"), [("95 %", 1.96), ("99 %", 2.576)])
def test_what_it_should_hold_has_the_level_asked_for(level, k):
    typed = {"empty": "23.57 g", "filled": "25.06 g", "system": "piston", "bore": "9.0 mm ± 0.15", "stroke": "28.3 mm"}
    answer = worked_out({**typed, "level": level})
    row = next(row for row in answer.table if row[0] == "it should hold")
    u = answer.data["expected_standard_uncertainty_ml"]
    assert float(row[2].split()[0]) == pytest.approx(k * u, abs=0.006), row  # two figures of 0.12 and 0.16 mL


@pytest.mark.parametrize("key", SUMS)
def test_every_sum_shows_help_and_its_example_runs(capsys, key):
    import shlex

    with pytest.raises(SystemExit) as stop:
        main(["sums", key, "--help"])
    assert stop.value.code == 0
    assert "example" in capsys.readouterr().out
    words = shlex.split(find(key).example)
    assert words[:3] == ["pentools", "sums", key]
    assert main([*words[1:], "--json"]) == 0
    json.loads(capsys.readouterr().out)


def test_the_gain_on_a_tared_balance(capsys):
    data = answer(capsys, "--gain", "0.18 g; 0.31 g; 1.20 g")
    assert data["sentence"] == "It draws 1.19\u202fmL ± 0.05 in 3 dips."
    assert data["gained_g"] == pytest.approx(1.20)
    assert [round(v, 2) for v in data["dips_ml"]] == [0.17, 0.30, 1.19]
    assert "dip-rising" in topics(data)
    assert data["budget"][0]["source"] == "readability, the tare and the reading"


def test_a_gain_is_held_against_what_it_should_hold(capsys):
    data = answer(capsys, "--gain", "1.12; 1.13 g", "--start", "drained", *PISTON)
    assert data["expected_ml"] == pytest.approx(1.80, abs=0.01)
    assert data["share_filled"] == pytest.approx(data["volume_ml"] / data["expected_ml"])
    assert data["start"] == "drained"


def test_the_digits_of_a_gain_bound_the_balance(capsys):
    data = answer(capsys, "--gain", "0.3; 1.2 g", "--readability", "0.01 g")
    assert data["readability_g"] == pytest.approx(0.1)
    assert "digits-typed" in topics(data)


def test_one_way_of_weighing_at_a_time(capsys):
    code, _, err = run(capsys, "capacity", "--gain", "1.2 g", "--empty", "15.0 g", "--filled", "16.2 g")
    assert code == 2
    assert "Leave one of the two ways empty" in err
