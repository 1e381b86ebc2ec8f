"""The capacity and leak sums through the command line: words, JSON keys, refusals."""

import json

import pytest

from pentools.calc.geometry import SYSTEMS
from pentools.cli import main
from pentools.sums import SUMS, find
from pentools.sums.capacity import dimension_fields

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
    assert set(data) >= {"volume_ml", "standard_uncertainty_ml", "expanded_uncertainty_ml", "coverage_factor", "degrees_of_freedom", "z_ml_per_g", "budget", "expected_ml", "share_filled", "implied_pressure_kpa", "findings"}
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
    code, out, _ = run(capsys, "leak", "--times", "0 h; 8 h; 24 h", "--masses", "18.214 g; 18.150 g; 18.020 g", "--readability", "0.001 g", "--json")
    data = json.loads(out)
    assert code == 0
    assert data["verdict"] == "leak"
    assert data["loss_mg_per_h"] == pytest.approx(8.09, abs=0.1)
    assert run(capsys, "leak", "--times", "0 h; 8 h", "--masses", "18.2 g")[0] == 2
