"""The flex sum through the command line."""

import json

import pytest

from pentools.cli import main
from pentools.sums.nib.flex import ceiling_for

PAIR = ("--loads", "15 g; 60 g", "--widths", "0.50 mm; 1.00 mm")


def flex(capsys, *words):
    code = main(["sums", "flex", *words, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


def topics(data):
    return [f["topic"] for f in data["findings"]]


def test_a_pair_of_lines(capsys):
    data = flex(capsys, *PAIR, "--angle", "45 deg")
    assert data["n_per_mm"] == pytest.approx(90 * 0.00980665)
    assert (data["extra_gf"], data["extra_mm"], data["angle_deg"], data["readings"]) == (pytest.approx(45), 0.5, 45, 2)
    assert (data["straight"], data["straight_share"]) == (None, None)
    assert data["sentence"].startswith("It takes 45")
    assert "flex-angle" not in topics(data)
    assert "flex-angle" in topics(flex(capsys, *PAIR))


def test_a_gram_of_the_scale_is_a_gram_force(capsys):
    grams, forces, newtons = (
        flex(capsys, "--loads", loads, "--widths", "0.50 mm; 1.00 mm")["n_per_mm"]
        for loads in ("15 g; 60 g", "15 gf; 60 gf", "0.147 N; 0.588 N")
    )
    assert grams == forces == pytest.approx(newtons, rel=1e-3)


def test_each_option_reaches_the_sum(capsys):
    plain = flex(capsys, *PAIR)
    arm = flex(capsys, *PAIR, "--wobble", "1 %", "--width-doubt", "0.005 mm")
    assert arm["expanded_uncertainty_n_per_mm"] < 0.2 * plain["expanded_uncertainty_n_per_mm"]
    assert flex(capsys, *PAIR, "--extra", "0.2 mm")["extra_gf"] == pytest.approx(18)
    high = ("--loads", "15 g; 160 g", "--widths", "0.50 mm; 1.40 mm")
    assert "flex-load" in topics(flex(capsys, *high))
    assert "flex-load" in topics(flex(capsys, *high, "--metal", "gold"))
    assert "flex-load" not in topics(flex(capsys, *high, "--metal", "steel"))
    assert "took 100 gf as 1 N" in str(flex(capsys, *PAIR, "--printed", "0.9")["findings"])


def test_a_test_at_the_limit_is_refused(capsys):
    assert main(["sums", "flex", *PAIR, "--maximum", "yes"]) == 2
    assert "never driven to its limit" in capsys.readouterr().err
    assert flex(capsys, *PAIR, "--maximum", "no") == flex(capsys, *PAIR)


@pytest.mark.parametrize(("metal", "gold"), [(None, None), ("gold", True), ("steel", False), ("other", False)])
def test_which_metal_counts_as_gold(metal, gold):
    found = ceiling_for(metal)
    assert (found.gold, found.most_gf, found.warn_gf) == (gold, 150, 100)


def test_the_table(capsys):
    main(["sums", "flex", *PAIR, "--angle", "45 deg"])
    out = capsys.readouterr().out
    for words in ("0.8826 N/mm ± 0.23", "45 gf ± 12", "0.33 mm, by the fit", "45°"):
        assert words in out
