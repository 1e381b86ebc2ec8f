"""The chart of single strokes: one line a run, and where it stops."""

from pentools.figures.weighing.strokes import strokes_figure


def weigh(job, start, masses):
    job.add("fill test", "weighing", {"state": start, "mass": "16.83 g"})
    for number, mass in enumerate(masses, 1):
        job.add("fill test", "weighing", {"state": "stroke", "mass": f"{mass} g", "strokes": str(number)})


def test_nothing_weighed_is_no_figure(empty):
    assert strokes_figure(empty) is None


def test_runs_of_strokes_stand_apart(empty, drawn):
    weigh(empty, "dry", ("17.08", "17.32", "17.53", "17.53", "17.53"))
    weigh(empty, "drained", ("17.08", "17.33", "17.58", "17.83"))
    drawing = strokes_figure(empty)
    assert [len(c.lines[0].get_xdata()) for c in drawn[0].axes[0].containers] == [6, 5]
    assert drawing.title == "After stroke 4 it still rises (first after 3, at 0.70 mL)"
    assert "Run 1, stroke 0: 0.00 mL; stroke 1: 0.25 mL" in drawing.alt
    assert "stroke 4: 1.00 mL" in drawing.alt


def test_one_run_that_stops(empty, drawn):
    weigh(empty, "dry", ("17.08", "17.32", "17.53", "17.53"))
    drawing = strokes_figure(empty)
    assert drawing.title == "It stops rising after stroke 3, at 0.70 mL"
    assert "Run" not in drawing.alt
    words = [text.get_text() for text in drawn[0].axes[0].texts]
    assert words == ["0.70 mL", "no more after stroke 3"]
