"""Nibs asked from a notebook."""

from signatures import agree

from pentools import feed_setting, ink_flow, nib_flex, nib_smoothing
from pentools.answers.asking import answer_to
from pentools.record.bench import open_bench_folder


def test_signatures_are_those_of_the_sums():
    assert agree(ink_flow, "flow")
    assert agree(nib_flex, "flex")
    assert agree(nib_smoothing, "smoothing")
    assert agree(feed_setting, "setting")


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
