"""What the figures of a measured page say and show."""

import pytest

from pentools import measure_lines
from pentools.figures.nib.lines import along_figure, before_after_figure, lines_figures, page_figure, spread_figure


@pytest.fixture(scope="module")
def answer():
    return measure_lines("sample")


def test_three_figures_go_with_the_sum(answer):
    assert [drawing.title for drawing in answer.figures()] == [drawing.title for drawing in lines_figures(answer)]
    assert len(answer.figures()) == 3


def test_the_page_shows_strokes_and_skips(answer):
    drawing = page_figure(answer.result)
    assert drawing.title == "7 strokes, 0.39 m of them measured"
    assert "crosses: skips" in drawing.svg
    assert len(drawing.svg) < 60_000


def test_the_stroke_that_swells_most_is_shown(answer):
    assert along_figure(answer.result).title == "One stroke: 0.43 to 0.95 mm, a ratio of 2.22"


def test_light_and_pressed_are_named(answer):
    drawing = spread_figure(answer.result)
    assert "light, 5" in drawing.svg
    assert "pressed, 2" in drawing.svg


def test_before_and_after_say_whether_a_change_can_be_told(answer):
    narrow = measure_lines("sample", threshold=0.6).result
    assert before_after_figure(answer.result, narrow).title.startswith("It writes 0.02 mm finer than before")
    assert before_after_figure(narrow, answer.result).title.startswith("It writes 0.02 mm broader")
    assert "No change" in before_after_figure(answer.result, answer.result).title
