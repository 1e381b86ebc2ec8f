"""The drawings a page asks for: drawn once for both pages, and none where the entries contradict each other."""

from pentools.errors import InputError
from pentools.writeup import drawn


def test_a_chart_is_drawn_once_until_the_record_changes(small_job, monkeypatch):
    asked = []
    monkeypatch.setattr(
        "pentools.figures.job.work_log.minutes_figure", lambda job: asked.append(job) or f"no. {len(asked)}"
    )
    assert [drawn.minutes_chart(small_job), drawn.minutes_chart(small_job)] == ["no. 1", "no. 1"]
    small_job.add("work log", "work", {"activity": "open", "minutes": "5 min", "done": "Drew it."})
    assert drawn.minutes_chart(small_job) == "no. 2"


def test_entries_that_contradict_each_other_give_no_drawing(small_job, monkeypatch):
    def refuse(*_, **__):
        raise InputError("cap", "shorter than the pen", "longer")

    monkeypatch.setattr("pentools.figures.pen_from_record.pen_drawing", refuse)
    monkeypatch.setattr("pentools.figures.treatment.heat.heat_figures", refuse)
    assert drawn.pen_in_section(small_job) is None
    assert drawn.pen_with_faults(small_job) is None
    assert drawn.heat_charts(small_job) == ()


def test_without_a_resting_pen_there_is_no_leak_chart(new_job):
    assert drawn.leak_chart(new_job()) is None


def test_only_so_many_charts_are_kept(monkeypatch):
    kept = {}
    monkeypatch.setattr(drawn, "_CHARTS", kept)
    for number in range(drawn.MOST_KEPT + 3):
        drawn._kept("chart", str(number), lambda: None)
    assert len(kept) == drawn.MOST_KEPT
    assert ("chart", "0") not in kept
    assert ("chart", str(drawn.MOST_KEPT + 2)) in kept


def test_what_several_forms_show_is_drawn_once_a_state(small_job, monkeypatch):
    drawn_for = []
    monkeypatch.setattr(
        "pentools.figures.dating.identify.evidence_figure", lambda result: drawn_for.append(result) or "a drawing"
    )
    assert drawn.evidence_chart(small_job) == drawn.evidence_chart(small_job) == "a drawing"
    assert len(drawn_for) == 1
    small_job.add("limits", "limit", {"part": "nib", "left": "A scratch.", "why": "Small."})
    drawn.evidence_chart(small_job)
    assert len(drawn_for) == 2
