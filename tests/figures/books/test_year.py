"""The charts of a year: their numbers stand in the alt text, and one with nothing to show is not drawn."""

import datetime as dt

from pentools.books.learning.craft import JobCraft
from pentools.books.learning.learning import learned_from
from pentools.books.learning.time_taken import JobTime
from pentools.books.learning.year import year_from
from pentools.figures.books.year import (
    activities_figure,
    filling_figure,
    learned_figures,
    months_figure,
    work_figure,
    year_figures,
)

DAY = dt.date(2026, 5, 4)
TIMES = {
    str(n): JobTime(
        work="re-sac", system="lever-sac", ending="done", ended=DAY, minutes={"seal": 40.0 + 5 * n, "test": 10.0}
    )
    for n in range(7)
} | {"x": JobTime(ending="returned", ended=dt.date(2026, 8, 1), minutes={"look": 5.0})}


def crafts(system, shares):
    return {f"{system}{n}": JobCraft(system=system, ending="done", ended=DAY, share=s) for n, s in enumerate(shares)}


def test_pens_by_month_and_ending():
    drawing = months_figure(year_from(2026, TIMES, learned_from(TIMES, {})))
    assert drawing.title == "8 pens ended in 2026, most in May"
    assert drawing.alt == f"{drawing.title}. May 7 done; August 1 returned unrepaired."
    assert "done, 7" in drawing.svg
    assert "returned unrepaired, 1" in drawing.svg
    assert months_figure(year_from(2027, TIMES, learned_from({}, {}))) is None


def test_minutes_by_work_with_their_intervals():
    drawing = work_figure(learned_from(TIMES, {}))
    assert drawing.title == "A new sac takes 65 minutes, the middle of 7 jobs"
    assert "a new sac 65 min (50 to 80), n = 7" in drawing.alt
    assert "n = 7" in drawing.svg
    assert work_figure(learned_from({"x": TIMES["x"]}, {})) is None


def test_filling_against_the_usual():
    learned = learned_from(
        {}, crafts("lever-sac", (0.58, 0.6, 0.61, 0.62, 0.63, 0.59)) | crafts("piston", (0.5, 0.52, 0.55))
    )
    drawing = filling_figure(learned)
    assert drawing.title == "They fill less than is usual: piston filler"
    assert "lever sac filler 60\u202f% (58\u202f% to 63\u202f%), n = 6, usual 45\u202f% to 75\u202f%" in drawing.alt
    assert filling_figure(learned_from({}, crafts("lever-sac", (0.6,) * 3))).title.startswith(
        "Of 1 filling system none fills less"
    )
    assert filling_figure(learned_from({}, crafts("lever-sac", (0.6,)))) is None


def test_what_was_done():
    drawing = activities_figure(learned_from(TIMES, {}))
    assert drawing.title == "85\u202f% of the time went into seals and sac"
    assert "testing 15\u202f%, in 7" in drawing.alt
    assert activities_figure(learned_from({}, {})) is None


def test_all_that_have_something_to_show():
    learned = learned_from(TIMES, {})
    assert len(learned_figures(learned)) == 2
    assert len(year_figures(year_from(2026, TIMES, learned))) == 3
    assert year_figures(year_from(2030, {}, learned_from({}, {}))) == ()


def test_the_usual_band_and_the_dot_stand_at_their_figures(monkeypatch):
    monkeypatch.setattr("pentools.figures.books.year.to_drawing", lambda figure, *_: figure)
    [axes] = filling_figure(learned_from({}, crafts("lever-sac", (0.58, 0.6, 0.62)))).axes
    [band] = axes.patches
    assert (round(band.get_x()), round(band.get_width())) == (45, 30)
    line, dot = axes.lines
    assert [round(x) for x in line.get_xdata()] == [58, 62]
    assert [round(x) for x in dot.get_xdata()] == [60]
