"""Nibs asked from a notebook."""

from pathlib import Path

import pytest
from signatures import agree

from pentools import InputError, feed_setting, ink_flow, measure_lines, nib_flex, nib_smoothing, scanner_check
from pentools.answers.asking import answer_to
from pentools.calc.nib.summary import PageLines
from pentools.record.bench import open_bench_folder


def test_signatures_are_those_of_the_sums():
    assert agree(ink_flow, "flow")
    assert agree(measure_lines, "lines")
    assert agree(nib_flex, "flex")
    assert agree(nib_smoothing, "smoothing")
    assert agree(feed_setting, "setting")
    assert agree(scanner_check, "scanner")


def test_they_answer_as_the_command_line_does():
    assert ink_flow(23.512, 23.422, 18, readability=0.001).data == answer_to("flow", {"before": "23.512 g", "after": "23.422 g", "length": "18 m", "readability": "0.001 g"}).data  # fmt: skip
    assert nib_flex([15, 60], [0.5, 1.0], angle=45).data == answer_to("flex", {"loads": "15 gf; 60 gf", "widths": "0.5 mm; 1.0 mm", "angle": "45 deg"}).data  # fmt: skip
    assert nib_smoothing("scratchy", own="film 1 um", aligned=True).data == answer_to("smoothing", {"feel": "scratchy", "own": "film 1 um", "aligned": "yes"}).data  # fmt: skip
    assert feed_setting("ebonite", alone=True).data == answer_to("setting", {"feed": "ebonite", "alone": "yes"}).data


def test_the_benchs_own_balance_and_grades_count(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    path = bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("abrasives = []", 'abrasives = ["film 1 um"]'))
    bench = open_bench_folder(bench.folder)
    assert nib_smoothing("scratchy", bench=bench).data["from_bench"] == ["own"]
    assert "readability" in ink_flow(23.512, 23.422, 18, bench=bench).data["from_bench"]


def test_a_path_is_as_good_as_its_name(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    answer = measure_lines(Path("sample"))
    assert isinstance(answer.result, PageLines)
    assert answer.data == answer_to("lines", {"scan": "sample"}).data
    assert answer.result.median_width_um == answer.data["median_width_um"]
    assert measure_lines("sample", threshold=0.6).data["threshold"] == 0.6
    with pytest.raises(InputError, match="one of: auto"):
        measure_lines("sample", scale="thumb")
