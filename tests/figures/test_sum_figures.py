"""The figures that go with a sum's answer."""

from pentools.figures.sum_figures import figures_for
from pentools.sums import find, read_options


def test_the_sums_have_their_figures():
    grade = find("grade")
    [chart] = figures_for("grade", grade.run(read_options(grade.fields, {"grade": "cushioned cloth 2000"})))
    assert chart.title == "cushioned cloth 2000 has a grain of 23 µm and finishes like 15 µm"
    abrasives = find("abrasives")
    answer = abrasives.run(
        read_options(abrasives.fields, {"material": "celluloid", "defect": "20 um", "own": "P600; P1200"})
    )
    assert figures_for("abrasives", answer)[0].title.startswith("2 steps would take about")
