"""A scanner held against a ruler, drawn by Agg."""

import json

import numpy as np
import pytest
from drawn_bars import RULES, drawn
from drawn_lines import codes
from PIL import Image

from pentools import InputError, scanner_check
from pentools.cli import main


@pytest.fixture(scope="module")
def ruler():
    return codes(drawn(RULES["mm"], strokes=False))


@pytest.fixture
def scan(tmp_path):
    def save(page, dpi):
        Image.fromarray(page).save(tmp_path / "a.png", **({} if dpi is None else {"dpi": (dpi, dpi)}))
        return tmp_path / "a.png"

    return save


@pytest.mark.parametrize(
    ("dpi", "off", "key"),
    [(300, 0.0, "true"), (297, 0.01, "broad"), (303, -0.0099, "narrow"), (298.8, 0.004, "cannot-tell")],
)
def test_the_file_s_dots_are_held_against_the_ruler(ruler, scan, dpi, off, key):
    answer = scanner_check(scan(ruler, dpi))
    (row,) = answer.data["rulers"]
    assert (row["way"], row["kind"], row["marks"]) == ("across", "ruler", 61)
    assert row["off_share"] == pytest.approx(off, abs=0.0003)
    assert 0.001 < row["u_share"] < 0.002  # the ruler's own: the other way is no doubt of this one
    assert [finding.key for finding in answer.findings] == [f"nib.scanner:{key}"]
    assert f"{abs(row['off_share']):.2%}"[:-1] in answer.findings[0].text.replace("\u202f", "")


def test_a_ruler_laid_down_says_the_other_way(ruler, scan, capsys):
    assert main(["sums", "scanner", str(scan(np.rot90(ruler).copy(), 300)), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["rulers"][0]["way"] == "down"
    assert "down 300.0" in data["sentence"]


def test_no_resolution_and_no_ruler_are_refused(ruler, scan):
    with pytest.raises(InputError, match="names its resolution"):
        scanner_check(scan(ruler, None))
    with pytest.raises(InputError, match="lay a ruler in millimetres"):
        scanner_check(scan(np.full((400, 400), 220, np.uint8), 300))
