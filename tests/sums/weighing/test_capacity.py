"""The capacity and leak sums through the command line: words, JSON keys, refusals."""

import json

import pytest

from pentools.cli import main
from pentools.sums import SUMS, find
from pentools.sums.weighing.capacity import dimension_fields
from pentools.sums.weighing.fields import needed_dimensions
from pentools.systems.registry import SYSTEMS

WEIGHED = ["--empty", "23.26 g; 23.25 g; 23,26 g", "--filled", "25.06 g"]
PISTON = ["--system", "piston", "--bore", "9.0 mm", "--stroke", "31 mm"]


def run(capsys, *words):
    code = main(["sums", *words])
    out = capsys.readouterr()
    return code, out.out, out.err


def test_in_words(capsys):
    code, out, _ = run(capsys, "capacity", *WEIGHED, *PISTON)
    assert code == 0
    assert out.startswith("It draws 1.81")
    assert "% of what the stroke sweeps" in out


def test_as_json(capsys):
    code, out, _ = run(capsys, "capacity", *WEIGHED, *PISTON, "--json")
    data = json.loads(out)
    assert code == 0
    assert set(data) >= {
        "volume_ml",
        "standard_uncertainty_ml",
        "expanded_uncertainty_ml",
        "coverage_factor",
        "degrees_of_freedom",
        "z_ml_per_g",
        "budget",
        "expected_ml",
        "share_filled",
        "implied_pressure_kpa",
        "findings",
    }
    assert data["share_filled"] == pytest.approx(data["volume_ml"] / data["expected_ml"])
    assert sum(row["share"] for row in data["budget"]) == pytest.approx(1)
    assert set(data["budget"][0]) >= {"source", "standard_uncertainty", "share"}
    assert all(set(f) >= {"level", "text"} for f in data["findings"])
    assert data["implied_pressure_kpa"] is None


def test_without_dimensions_what_it_should_hold_is_null(capsys):
    _, out, _ = run(capsys, "capacity", *WEIGHED, "--json")
    data = json.loads(out)
    assert data["expected_ml"] is None
    assert data["share_filled"] is None


def test_a_plunger_gives_the_implied_pressure_or_a_bound(capsys):
    shape = ["--system", "plunger-vacuum", "--bore", "8.5 mm", "--rod", "2.6 mm", "--stroke", "62 mm"]
    _, out, _ = run(capsys, "capacity", "--empty", "20 g", "--filled", "22.5 g", *shape, "--json")
    low = json.loads(out)
    assert low["implied_pressure_kpa"] == pytest.approx(100.7 * (1 - low["share_filled"]), abs=0.1)
    _, out, _ = run(capsys, "capacity", "--empty", "20 g", "--filled", "23.17 g", *shape, "--json")
    full = json.loads(out)
    assert full["implied_pressure_kpa"] is None
    assert full["implied_pressure_at_most_kpa"] > 0


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
    def volume(*more):
        _, out, _ = run(capsys, "capacity", *WEIGHED, "--liquid", "ink", *more, "--json")
        return json.loads(out)

    assumed = volume()
    assert any("assumed" in f["text"] for f in assumed["findings"])
    given = volume("--ink-density", "1.02 ± 0.001 g/ml")
    assert given["volume_ml"] < assumed["volume_ml"]
    assert given["standard_uncertainty_ml"] <= assumed["standard_uncertainty_ml"]
    syringe = volume("--ink-mass", "2.040 g", "--water-mass", "2.000 g")
    assert syringe["z_ml_per_g"] == pytest.approx(given["z_ml_per_g"], rel=2e-3)


def answer(capsys, *words):
    code, out, err = run(capsys, "capacity", *words, "--json")
    assert code == 0, err
    return json.loads(out)


def topics(data):
    return {f["topic"] for f in data["findings"]}


def test_nothing_typed_is_dropped_in_silence(capsys):
    assert "ink-unused" in topics(answer(capsys, *WEIGHED, "--ink-density", "1.02 g/ml"))
    assert "system-missing" in topics(answer(capsys, *WEIGHED, "--bore", "9 mm", "--stroke", "31 mm"))
    assert "dimensions-unused" in topics(answer(capsys, *WEIGHED, *PISTON, "--outside", "7 mm"))
    missing = answer(capsys, *WEIGHED, "--system", "plunger-vacuum", "--bore", "8.5 mm")
    [text] = [f["text"] for f in missing["findings"] if f["topic"] == "dimensions-missing"]
    assert "rod" in text
    assert "stroke" in text
    assert "bore" not in text
    quiet = answer(capsys, *WEIGHED, *PISTON)
    assert not topics(quiet) & {"ink-unused", "system-missing", "dimensions-unused", "dimensions-missing"}


def test_a_syringe_needs_both_liquids(capsys):
    code, _, err = run(capsys, "capacity", *WEIGHED, "--liquid", "ink", "--ink-mass", "2.0 g")
    assert code == 2
    assert "same mark" in err


def test_a_typed_uncertainty_of_a_mass_counts(capsys):
    plain = answer(capsys, "--empty", "23.26 g", "--filled", "25.06 g")
    doubtful = answer(capsys, "--empty", "23.26 ± 0.1 g", "--filled", "25.06 g")
    assert doubtful["standard_uncertainty_ml"] > 0.14 > 0.03 > plain["standard_uncertainty_ml"]


def test_wide_scatter_is_not_hidden_by_few_readings(capsys):
    data = answer(capsys, "--empty", "23.1 g; 23.4 g", "--filled", "25.06 g")
    assert "scatter-empty" in topics(data)
    assert data["expanded_uncertainty_ml"] > 0.3
    assert data["degrees_of_freedom"] < 10


def test_the_level_of_confidence_can_be_chosen(capsys):
    data = answer(capsys, *WEIGHED, "--level", "95.45 %")
    assert data["level_of_confidence"] == pytest.approx(0.9545)
    assert data["coverage_factor"] == pytest.approx(2.0, abs=1e-4)
    assert data["expanded_uncertainty_ml"] == pytest.approx(data["coverage_factor"] * data["standard_uncertainty_ml"])


def test_a_coarse_calliper_widens_what_it_should_hold(capsys):
    fine = answer(capsys, *WEIGHED, *PISTON)
    coarse = answer(capsys, *WEIGHED, *PISTON, "--caliper", "0.2 mm")
    assert coarse["expected_standard_uncertainty_ml"] > 2 * fine["expected_standard_uncertainty_ml"]
    typed = answer(capsys, *WEIGHED, "--system", "piston", "--bore", "9.0 ± 0.3 mm", "--stroke", "31 ± 0.1 mm")
    # by hand: V = π/4 9² 31 = 1.972 mL; u/V = √((2·0.3/9)² + (0.1/31)²)
    assert typed["expected_standard_uncertainty_ml"] == pytest.approx(
        1.9721 * ((0.6 / 9) ** 2 + (0.1 / 31) ** 2) ** 0.5, rel=1e-3
    )


def test_a_length_inside_is_not_believed_to_the_calliper(capsys):
    # by hand: u/V = √((2·0.02/9)² + (0.2/31)²) of 1.972 mL, the stroke being read by a depth rod
    plain = answer(capsys, *WEIGHED, *PISTON)
    assert plain["expected_standard_uncertainty_ml"] == pytest.approx(
        1.9721 * ((0.04 / 9) ** 2 + (0.2 / 31) ** 2) ** 0.5, rel=1e-3
    )


def test_a_typed_uncertainty_of_the_room_is_one_standard_uncertainty(capsys):
    # by hand: dZ/dt near 21 °C is 2.15e-4 mL/g a kelvin; 1.80 g and ± 3 °C make 1.16 µL
    data = answer(capsys, "--empty", "23.26 g", "--filled", "25.06 g", "--temperature", "21 ± 3 °C")
    [row] = [r for r in data["budget"] if r["source"] == "temperature"]
    assert row["standard_uncertainty"] == pytest.approx(1.80 * 2.15e-4 * 3, rel=0.01)


def test_the_air_outside_goes_into_a_plungers_pressure(capsys):
    shape = ["--system", "plunger-vacuum", "--bore", "8.5 mm", "--rod", "2.6 mm", "--stroke", "62 mm"]
    low = answer(capsys, "--empty", "20 g", "--filled", "22.5 g", *shape, "--pressure", "80 kPa", "--head", "0 mm")
    assert low["implied_pressure_kpa"] == pytest.approx(80 * (1 - low["share_filled"]), rel=1e-9)


def test_strokes_of_a_pump_set_what_it_should_hold(capsys):
    shape = ["--system", "diaphragm-pump", "--bore", "8 mm", "--reach", "40 mm", "--stroke-volume", "0.28 ml"]
    data = answer(capsys, "--empty", "20 g", "--filled", "20.74 g", *shape, "--strokes", "3")
    assert data["expected_ml"] == pytest.approx(0.75)
    assert data["share_filled"] == pytest.approx(0.99, abs=0.01)
    assert "what 3 strokes bring" in data["sentence"]


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_gives_a_verdict_with_reasons(capsys, system):
    some = {
        "bore": "9 mm",
        "rod": "2 mm",
        "stroke": "30 mm",
        "outside": "7 mm",
        "length": "60 mm",
        "reach": "50 mm",
        "depth": "50 mm",
    }
    words = [word for name in needed_dimensions(system) for word in (f"--{name}", some[name])]
    short = answer(capsys, "--empty", "20 g", "--filled", "20.2 g", "--system", system, *words)
    assert 0 < short["share_filled"] < 0.5
    assert "is the first suspect" in short["sentence"]
    assert sum(topic.startswith("suspect-") for topic in topics(short)) >= 2
    assert (short["implied_pressure_kpa"] is not None) == (system == "plunger-vacuum")


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_can_be_asked(system):
    fields = dimension_fields(system)
    assert fields
    known = {f.name for f in find("capacity").fields}
    assert {f.name for f in fields} <= known


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


def test_a_leak(capsys):
    code, out, _ = run(
        capsys,
        "leak",
        "--times",
        "0 h; 8 h; 24 h",
        "--masses",
        "18.214 g; 18.150 g; 18.020 g",
        "--readability",
        "0.001 g",
        "--json",
    )
    data = json.loads(out)
    assert code == 0
    assert data["verdict"] == "leak"
    assert data["loss_mg_per_h"] == pytest.approx(8.09, abs=0.1)
    assert run(capsys, "leak", "--times", "0 h; 8 h", "--masses", "18.2 g")[0] == 2


def test_the_limit_of_detection_counts_rounding_and_repeatability(capsys):
    # by hand: 3.29 √(0.001²/12 + 0.001²) / √(2·12²) g/h with nothing lost, 0.2018 mg/h
    _, out, _ = run(
        capsys,
        "leak",
        "--times",
        "0 h; 12 h; 24 h",
        "--masses",
        "18.2 g; 18.2 g; 18.2 g",
        "--readability",
        "0.001 g",
        "--json",
    )
    assert json.loads(out)["detection_limit_mg_per_h"] == pytest.approx(0.2018, abs=5e-4)


def test_a_leak_with_the_evaporation_of_a_gap(capsys):
    words = [
        "leak",
        "--times",
        "0 h; 8 h; 24 h",
        "--masses",
        "18.214 g; 18.213 g; 18.212 g",
        "--readability",
        "0.001 g",
    ]
    _, out, _ = run(capsys, *words, "--json")
    assert json.loads(out)["evaporation_estimate_mg_per_day"] is None
    _, out, _ = run(capsys, *words, "--gap", "0.05 mm", "--seat", "10 mm", "--gap-length", "5 mm", "--json")
    data = json.loads(out)
    # by hand: π · 10.05 · 0.05 = 1.579 mm² over 5 mm, 3.6 mg/day for 1 mm²
    assert data["evaporation_estimate_mg_per_day"] == pytest.approx(1.579 * 3.61, rel=0.01)
    assert any(f["topic"] == "evaporation-estimate" for f in data["findings"])
